package members

import (
	"math"

	"sixlink/members/check"
)

// A Resistance is what a round metal tube sets against load: the numbers that the checks
// take from the strut and from the design factors and not from the load. Whoever judges
// one strut under many loads works them out once. The zero value is of use after Set.
type Resistance struct {
	area, modulus, euler, column   float64 // mm², mm³, N, N with its design factor
	yield, ultimate, fibre, squash float64 // allowable stresses, MPa: Sy/f_y, Su/f_u, min(Sy; Scy)/f_y, Scy/f_y
	wallAxial, wallBending         float64 // limits of the wall, MPa
	buckling, crookedness          float64 // design factor; mm
	density, length                float64 // kg/m³, mm
	ea, ei                         float64 // E·A, N; E·I, N·mm²

	capacity [numForms]float64 // of the checks in proportion to the axial force, N
	least    [2]leastCapacity  // in tension, in compression
}

// A leastCapacity is the least of the capacities in proportion to the axial force.
type leastCapacity struct {
	capacity float64
	row      int
}

// A form is how a check that Resistance knows asks of it.
type form int

const (
	tensionYieldForm form = iota
	tensionUltimateForm
	compressionYieldForm
	columnForm
	wallForm
	numForms // those above are in proportion to the axial force; those below know the moment too

	bendingYieldForm
	bendingUltimateForm
	beamColumnForm
	wallBendingForm
	eccentricForm // known to apply to eccentric ends alone, and made by its row
)

// forms are the checks that Resistance knows, by name. A check that is not here is none
// the less made, by its row of Checks: see Unknown.
var forms = map[string]form{
	"tension yield": tensionYieldForm, "tension ultimate": tensionUltimateForm,
	"compression yield": compressionYieldForm, "column": columnForm, "wall buckling": wallForm,
	"bending yield": bendingYieldForm, "bending ultimate": bendingUltimateForm,
	"beam column": beamColumnForm, "wall buckling in bending": wallBendingForm,
	"eccentric ends": eccentricForm,
}

// A formRow is a row of Checks with its form.
type formRow struct {
	row  int
	form form
}

var (
	inProportion [2][]formRow // in tension, in compression
	withMoment   [2][]formRow // in tension or without axial force, in compression
	unknownRows  [2][]int     // of a strut without and with eccentric ends
)

func init() {
	for i, c := range Checks {
		f, ok := forms[c.Name]
		switch {
		case !ok:
			unknownRows[0], unknownRows[1] = append(unknownRows[0], i), append(unknownRows[1], i)
		case f == eccentricForm:
			unknownRows[1] = append(unknownRows[1], i)
		case f == beamColumnForm:
			withMoment[1] = append(withMoment[1], formRow{i, f})
		case f > numForms:
			withMoment[0], withMoment[1] = append(withMoment[0], formRow{i, f}), append(withMoment[1], formRow{i, f})
		case f < compressionYieldForm:
			inProportion[0] = append(inProportion[0], formRow{i, f})
		default:
			inProportion[1] = append(inProportion[1], formRow{i, f})
		}
	}
}

// Unknown returns the indices in Checks of the checks of a strut with given sources of
// bending that Resistance does not make. Those of them that apply are to be made by their
// rows.
func Unknown(s *Sources) []int {
	if s.Eccentricity > 0 {
		return unknownRows[1]
	}
	return unknownRows[0]
}

// Set works out the resistance of a strut, which must be a round tube.
func (r *Resistance) Set(s *Strut, t Tube, f *check.Factors) {
	m := &s.Metal
	scy := m.Sy
	if m.Scy > 0 {
		scy = m.Scy
	}
	r.density, r.length, r.crookedness = m.Density, s.Length, s.Column.Crookedness
	gyration := t.Gyration()
	r.area = t.Area()
	inertia := t.inertia(r.area, gyration)
	r.modulus, r.ea, r.ei = t.modulus(inertia), m.E*r.area, m.E*inertia
	r.euler = eulerLoad(m.E, inertia, s.K*s.Length)
	r.yield, r.ultimate, r.squash, r.buckling = m.Sy/f.Yield, m.Su/f.Ultimate, scy/f.Yield, f.Buckling
	r.fibre = min(m.Sy, scy) / f.Yield
	squash := r.area * scy
	load := s.Column.load(columnTerms{
		area: r.area, modulus: r.modulus, squash: squash, euler: r.euler,
		slenderness: s.K * s.Length / gyration, e: m.E, scy: scy,
	})
	loss := wallLoss(t.wallPhi())
	elastic := t.wallStress(knockDown(KnockDownAxial, loss), m.E, m.Nu)
	bent := t.wallStress(knockDown(KnockDownBending, loss), m.E, m.Nu)
	r.wallAxial, r.wallBending = wallLimitOf(elastic, f.Buckling, r.squash), wallLimitOf(bent, f.Buckling, r.squash)
	r.column = load / f.Buckling
	r.capacity[tensionYieldForm], r.capacity[tensionUltimateForm] = r.area*m.Sy/f.Yield, r.area*m.Su/f.Ultimate
	r.capacity[compressionYieldForm], r.capacity[columnForm] = squash/f.Yield, r.column
	r.capacity[wallForm] = wallCap(elastic, scy) * r.area / f.Buckling
	r.least[0], r.least[1] = r.leastOf(inProportion[0]), r.leastOf(inProportion[1])
}

func (r *Resistance) leastOf(rows []formRow) leastCapacity {
	out := leastCapacity{math.NaN(), -1}
	for _, c := range rows {
		if x := r.capacity[c.form]; out.row < 0 || check.Lower(x, out.capacity) {
			out = leastCapacity{x, c.row}
		}
	}
	return out
}

// Mass returns the mass of the strut, kg, as Strut.Mass.
func (r *Resistance) Mass() float64 { return massOf(r.density, r.area, r.length) }

// Stiffness returns E·A, N, and E·I, N·mm².
func (r *Resistance) Stiffness() (ea, ei float64) { return r.ea, r.ei }

// Moment returns the largest moment of all sources together, N·mm, as Strut.Moment.
func (r *Resistance) Moment(l *Load) float64 {
	return l.Bending + endMoment(*l) + (sideMoment(l.SideLoad, r.length) + sideMoment(ownLoad(r.density, r.area, l.Across), r.length))
}

// Stress returns the greatest stress of a force and a moment, MPa, without amplification.
func (r *Resistance) Stress(axial, moment float64) float64 {
	return axialStressOf(axial, r.area) + bendingStressOf(moment, r.modulus)
}

// Axial returns the least reserve factor under an axial force alone, N, and the index in
// Checks of the check that governs; NaN and -1 without force.
func (r *Resistance) Axial(axial float64) (reserve float64, row int) {
	switch {
	case axial > 0:
		return r.least[0].capacity / axial, r.least[0].row
	case axial < 0:
		return r.least[1].capacity / -axial, r.least[1].row
	}
	return math.NaN(), -1
}

// Bent returns the same under an axial force, N, and a bending moment above 0, N·mm: that
// of all sources together.
func (r *Resistance) Bent(axial, moment float64) (reserve float64, row int) {
	reserve, row = r.Axial(axial)
	sign := 0
	if axial < 0 {
		sign = 1
	}
	compression := 0.0
	if axial < 0 {
		compression = -axial
	}
	n, a := axialStressOf(axial, r.area), compression/r.euler
	t := bentTerms{n: n, a: a, compression: compression, straight: bendingStressOf(moment, r.modulus)}
	t.m = bendingStressOf(moment+bowMomentOf(compression, r.crookedness), r.modulus)
	for _, c := range withMoment[sign] {
		x := r.multiplier(c.form, &t)
		if row < 0 || check.Lower(x, reserve) || !check.Lower(reserve, x) && c.row < row {
			reserve, row = x, c.row
		}
	}
	return reserve, row
}

// bentTerms are the stresses of the axial force and of the moment, that of a stated
// crookedness included and not, MPa; the share of the Euler load; and the compression, N.
type bentTerms struct{ n, m, straight, a, compression float64 }

// multiplier is the reserve factor of a form that knows the moment.
func (r *Resistance) multiplier(f form, t *bentTerms) float64 {
	switch f {
	case bendingYieldForm:
		return Multiplier(t.n, t.m, t.a, r.fibre)
	case bendingUltimateForm:
		return Multiplier(t.n, t.m, t.a, r.ultimate)
	case beamColumnForm:
		return Multiplier(t.compression/r.column, t.straight/r.fibre, r.buckling*t.a, 1)
	}
	return Multiplier(t.compression/r.area/r.wallAxial, t.m/r.wallBending, t.a, 1)
}
