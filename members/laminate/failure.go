package laminate

import "math"

// The two senses of a line load along the tube.
const (
	pull = +1.0
	push = -1.0
)

// A criterion gives the line load along the tube at which a ply fails, N/mm, from the
// strains in the ply's own axes for a line load of 1 N/mm.
type criterion int

const (
	maxStrain criterion = iota
	tsaiWu
	criteria
)

func (c criterion) lineLoad(l Laminate, e Vector) float64 {
	if c == maxStrain {
		return byMaxStrain(l, e)
	}
	return byTsaiWu(l, e)
}

// byMaxStrain fails a ply where its first strain reaches what its strength allows.
//
//	n = 1/max(e1·E1/X; −e1·E1/X′; e2·E2/Y; −e2·E2/Y′; |g12|·G12/S)
//
// Jones, 2nd ed., ch. 2, from memory; the strains at failure are the strengths over
// the moduli, linear up to failure.
func byMaxStrain(l Laminate, e Vector) float64 { return 1 / l.Ply.strainUse(e) }

// strainUse is the share of the strain at failure that is used.
func (p Ply) strainUse(e Vector) float64 {
	along := math.Max(e[0]*p.E1/p.TensionAlong, -e[0]*p.E1/p.CompressionAlong)
	across := math.Max(e[1]*p.E2/p.TensionAcross, -e[1]*p.E2/p.CompressionAcross)
	return math.Max(math.Max(along, across), math.Abs(e[2])*p.G12/p.Shear)
}

// byTsaiWu fails a ply where the stresses σ for 1 N/mm, times the line load n, give
//
//	F11·σ1² + F22·σ2² + F66·σ6² + 2·F12·σ1·σ2 + F1·σ1 + F2·σ2 = 1,
//
// which is q₂·n² + q₁·n = 1: n = 2/(q₁ + √(q₁² + 4·q₂)). Tsai and Wu (1971); Tsai and
// Hahn (1980), ch. 7; from memory.
func byTsaiWu(l Laminate, e Vector) float64 {
	q2, q1 := l.tsaiWuTerms(l.Ply.Q().times(e))
	return 2 / (q1 + math.Sqrt(q1*q1+4*q2))
}

// tensors hold the coefficients of the Tsai–Wu criterion.
type tensors struct{ f1, f2, f11, f22, f66, f12 float64 }

// tensors returns the coefficients that meet the five strengths of the ply.
//
//	F1 = 1/X − 1/X′;  F11 = 1/(X·X′);  F2 = 1/Y − 1/Y′;  F22 = 1/(Y·Y′);  F66 = 1/S²
//	F12 = i·√(F11·F22), i the Interaction
func (l Laminate) tensors() tensors {
	p := l.Ply
	t := tensors{
		f1: 1/p.TensionAlong - 1/p.CompressionAlong, f11: 1 / (p.TensionAlong * p.CompressionAlong),
		f2: 1/p.TensionAcross - 1/p.CompressionAcross, f22: 1 / (p.TensionAcross * p.CompressionAcross),
		f66: 1 / sq(p.Shear),
	}
	t.f12 = l.Interaction * math.Sqrt(t.f11*t.f22)
	return t
}

func (l Laminate) tsaiWuTerms(s Vector) (q2, q1 float64) {
	f := l.tensors()
	q2 = f.f11*sq(s[0]) + f.f22*sq(s[1]) + f.f66*sq(s[2]) + 2*f.f12*s[0]*s[1]
	return q2, f.f1*s[0] + f.f2*s[1]
}

// A ruin is the failure of the first ply.
type ruin struct {
	sense    float64 // pull or push
	angle    float64 // of the ply, degrees
	strains  Vector  // in its own axes, for a line load of 1 N/mm, 1/(N/mm)
	lineLoad float64 // at which it fails, N/mm, positive; without the knock-down
}

// firstPly returns the failure of the ply that fails first under a line load along
// the tube alone (Ny = Nxy = 0) of the given sense, a being the compliance of the wall.
func (l Laminate) firstPly(a Matrix, by criterion, sense float64) ruin {
	first := ruin{lineLoad: math.Inf(1)}
	for _, angle := range l.distinct() {
		e := own(Vector{sense * a[0][0], sense * a[1][0], sense * a[2][0]}, angle)
		if n := by.lineLoad(l, e); !(n >= first.lineLoad) {
			first = ruin{sense, angle, e, n}
		}
	}
	return first
}

// FirstPly returns the line load along the tube at which the first ply fails, N/mm,
// by maximum strain and by Tsai–Wu: in tension, or in compression. The knock-down is
// not in it.
func (l Laminate) FirstPly(compression bool) (byStrain, byTsaiWu float64) {
	sense := pull
	if compression {
		sense = push
	}
	a := l.Stiffness().Inverse
	return l.firstPly(a, maxStrain, sense).lineLoad, l.firstPly(a, tsaiWu, sense).lineLoad
}
