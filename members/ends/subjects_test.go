package ends

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"sixlink/materials"
	"sixlink/members"
	"sixlink/members/check"
	"sixlink/members/fasteners"
)

// near reports whether |got − want| ≤ rel·|want|; with a NaN it does not.
func near(got, want, rel float64) bool { return math.Abs(got-want) <= rel*math.Abs(want) }

// within reports whether |got − want| ≤ tol; with a NaN it does not.
func within(got, want, tol float64) bool { return math.Abs(got-want) <= tol }

// ones are design factors that leave a capacity the strength itself.
var ones = check.Factors{Yield: 1, Ultimate: 1, Buckling: 1, Fitting: 1}

func thread(t rapid.TB, size string) fasteners.Thread {
	t.Helper()
	th, err := fasteners.FindThread(size)
	if err != nil {
		t.Fatal(err)
	}
	return th
}

func strength(t rapid.TB, class string, d float64) Strength {
	t.Helper()
	c, err := fasteners.FindClass(class, d)
	if err != nil {
		t.Fatal(err)
	}
	return StrengthOf(c)
}

// metal has the strengths alone, for what bears, bends and tears.
func metal(sy, su float64) materials.Metal { return materials.Metal{Name: "test", Sy: sy, Su: su} }

// A drawing draws one part of an end after another.
type drawing struct{ t *rapid.T }

func (d drawing) float(name string, lo, hi float64) float64 {
	return rapid.Float64Range(lo, hi).Draw(d.t, name)
}

func (d drawing) bool(name string) bool { return rapid.Bool().Draw(d.t, name) }

// maybe is 0 or a value, for what the car file may leave out.
func (d drawing) maybe(name string, lo, hi float64) float64 {
	if d.bool(name + " given") {
		return d.float(name, lo, hi)
	}
	return 0
}

func (d drawing) thread() fasteners.Thread {
	size := rapid.SampledFrom([]string{"M5", "M8", "M10x1.25", "1/4-28", "M12"}).Draw(d.t, "size")
	return thread(d.t, size)
}

func (d drawing) strength() Strength {
	s := Strength{Proof: d.float("S_p", 300, 1000), Hard: d.bool("hard"), Source: "drawn"}
	s.Yield = s.Proof * d.float("f_y/S_p", 1, 1.2)
	s.Ultimate = s.Yield * d.float("f_u/f_y", 1, 1.4)
	return s
}

func (d drawing) metal() materials.Metal {
	m := materials.Metal{Name: "drawn", E: d.float("E", 60e3, 210e3), Sy: d.float("Sy", 100, 1200)}
	m.Su = m.Sy * d.float("Su/Sy", 1, 1.8)
	m.Sbry = d.bearing()
	return m
}

// bearing draws the yield strengths in bearing: both, one or none.
func (d drawing) bearing() (out [2]float64) {
	out[materials.EdgeNear] = d.maybe("Sbry1.5", 100, 1500)
	if d.bool("Sbry2.0 given") {
		out[materials.EdgeFar] = math.Max(out[materials.EdgeNear], 100) * d.float("Sbry2.0/1.5", 1, 1.5)
	}
	return out
}

func (d drawing) bolt() *Bolt {
	b := &Bolt{Thread: d.thread(), Strength: d.strength(), Planes: 1, ThreadsInShear: d.bool("threads in shear")}
	if d.bool("double shear") {
		b.Planes = 2
	}
	if d.bool("plates") {
		b.Plates = &Plates{
			Outer: d.float("outer", 1, 10), Inner: d.float("inner", 2, 20), Gap: d.maybe("gap", 0.1, 3),
			OuterMetal: metal(d.float("f_yo", 100, 1000), 0), InnerMetal: metal(d.maybe("f_yi", 100, 1000), 0),
		}
		b.Plates.OuterMetal.Sbry, b.Plates.InnerMetal.Sbry = d.bearing(), d.bearing()
	}
	return b
}

func (d drawing) lug() *Lug {
	l := &Lug{Hole: d.float("D", 4, 20), Thickness: d.float("t", 2, 12), Metal: d.metal()}
	l.Width, l.Edge = l.Hole*d.float("w/D", 1.3, 4), l.Hole*d.float("e/D", 0.7, 3)
	l.Shear, l.Bearing = d.maybe("Ssu", 60, 700), d.maybe("Fbru", 200, 2000)
	l.NetCoefficient = d.maybe("K_n", 0.3, 1)
	if !l.Far() || l.Bearing > 0 {
		l.ShearCoefficient = d.maybe("K_l", 0.3, 2)
	}
	return l
}

// end draws an end with every part, each as the car file may give it.
func (d drawing) end() End {
	th := &Thread{Thread: d.thread(), Strength: d.strength(), Offset: d.maybe("offset", 0.1, 10), Shank: d.maybe("l_t", 1, 40), Engagement: d.maybe("L_e", 3, 30)}
	th.Nut = metal(0, d.maybe("f_ui", 100, 900))
	return End{
		AxialShare: d.maybe("axial share", 0.001, 1),
		Bearing:    &Bearing{Part: "drawn", Radial: d.float("rating", 1e3, 1e5), Axial: d.maybe("axial rating", 1e2, 1e4), Source: "drawn"},
		Thread:     th,
		Bolt:       d.bolt(),
		Lug:        d.lug(),
		Weld: &Weld{
			Throat: d.float("throat", 1, 5), Filler: d.maybe("filler", 150, 900),
			KnockYield: d.float("ρ_y", 0.3, 1), KnockUltimate: d.float("ρ_u", 0.3, 1), KnockSource: "drawn",
		},
		Insert: &Insert{
			Length: d.float("L_b", 5, 60), Diameter: d.float("D_b", 8, 40), Bond: d.float("t_b", 0.05, 0.5),
			Modulus: d.float("G_b", 100, 2000), Strength: d.float("τ_b", 5, 50), Stiffness: d.float("EA_i", 1e6, 1e8), Source: "drawn",
		},
	}
}

// loadings are the loads that an end may have, by the sign of the axial force.
var loadings = []struct {
	name                   string
	axial                  float64
	sheared, shared, bends bool
}{
	{"tension", 1, false, false, false},
	{"compression", -1, false, false, false},
	{"compression with shear and bending", -1, true, false, true},
	{"compression at a shared joint", -1, false, true, false},
	{"tension with everything", 1, true, true, true},
}

// everyLoading holds a law to drawn ends under every kind of load.
func everyLoading(t *testing.T, law func(t *rapid.T, s Subject)) {
	for _, l := range loadings {
		t.Run(l.name, rapid.MakeCheck(func(t *rapid.T) {
			d := drawing{t}
			s := Subject{End: d.end(), Metal: d.metal(), Stiffness: d.float("EA_t", 1e6, 1e8)}
			s.Tube = members.Tube{OD: d.float("OD", 10, 50)}
			s.Tube.Wall = s.Tube.OD * d.float("wall/OD", 0.02, 0.5)
			s.Factors = check.Factors{Yield: d.float("f_y", 1, 2), Ultimate: d.float("f_u", 1, 2), Fitting: d.float("f_f", 1, 1.5)}
			s.Axial = l.axial * d.float("N", 1, 1e5)
			s.Load.End = math.Abs(s.Axial)
			if l.sheared {
				s.Load.End *= d.float("shear", 1.01, 2)
			}
			if l.shared {
				s.Shared = s.Load.End * d.float("F_s/N_e", 0.5, 2)
			}
			if l.bends {
				s.Bending = d.float("M", 1, 1e6)
				s.Shear, s.Reaction = d.float("V", 0, 1e4), d.maybe("R", 1, 1e3)
			}
			law(t, s)
		}))
	}
}

// finding returns the finding of the named check, which must apply.
func finding(t rapid.TB, s Subject, name string) check.Finding {
	t.Helper()
	for _, f := range Judge(s) {
		if f.Check == name {
			return f
		}
	}
	t.Fatalf("no finding of %s", name)
	return check.Finding{}
}
