package sizing

import (
	"fmt"
	"math"
	"slices"

	"sixlink/materials"
	"sixlink/members/stock"
)

// A Study is what a rod needs in one or several materials, and the same over lengths.
type Study struct {
	Rod
	Answers []Answer // in the order of the materials
	Lengths []OfLength
}

// An OfLength is what a rod of another length needs.
type OfLength struct {
	Length  float64 // mm
	Answers []Answer
}

// Study sizes the rod of each material, at its own length and at others.
func (r Rod) Study(metals []materials.Metal, lengths []float64) Study {
	s := Study{Rod: r, Answers: r.answers(metals)}
	for _, length := range lengths {
		r.Length = length
		s.Lengths = append(s.Lengths, OfLength{length, r.answers(metals)})
	}
	return s
}

func (r Rod) answers(metals []materials.Metal) (out []Answer) {
	for _, m := range metals {
		out = append(out, r.Answer(m))
	}
	return out
}

// Carries tells whether the stock has a tube for everything that is asked of every
// material.
func (s Study) Carries() bool {
	all := slices.Clone(s.Answers)
	for _, l := range s.Lengths {
		all = append(all, l.Answers...)
	}
	for _, a := range all {
		for _, p := range a.Picks {
			if p != nil && !p.Carries {
				return false
			}
		}
	}
	return true
}

// An Exchange is what a rod that is pushed weighs more than one that is pulled.
type Exchange struct {
	Difference float64 // compression less tension, kg
	Ratio      float64 // compression over tension
}

// Exchange sets compression against tension; false: one of them is not asked for, or no
// tube carries it.
func (a Answer) Exchange() (Exchange, bool) {
	push, pull := a.Picks[InCompression], a.Picks[InTension]
	if push == nil || pull == nil || !push.Carries || !pull.Carries {
		return Exchange{}, false
	}
	return Exchange{push.Mass - pull.Mass, push.Mass / pull.Mass}, true
}

// Lightest returns the index in Answers of the lightest material for a direction, -1:
// there is none.
func (s Study) Lightest(direction int) int {
	best := -1
	for i, a := range s.Answers {
		p := a.Picks[direction]
		if p != nil && p.Carries && (best < 0 || weighed(p.Mass) < weighed(s.Answers[best].Picks[direction].Mass)) {
			best = i
		}
	}
	return best
}

// Cost returns what a length of a size costs, in the unit of its list without "/m"; NaN:
// the list gives no price.
//
//	price of a metre · length
func Cost(size stock.Size, length float64) float64 { return size.Price * length / 1000 }

// Span returns the lengths from one to another, both within, in steps, mm. The error
// says what is wrong with the three.
func Span(from, to, step float64) ([]float64, error) {
	const most = 200
	n := math.Floor((to-from)/step*(1+1e-9)) + 1
	switch {
	case !(step > 0):
		return nil, fmt.Errorf("the step is %g mm: give one above 0", step)
	case !(to >= from):
		return nil, fmt.Errorf("%g mm to %g mm runs backwards: give the shorter length first", from, to)
	case !(n <= most):
		return nil, fmt.Errorf("%.0f lengths are more than %d: give a larger step", n, most)
	}
	var out []float64
	for i := range int(n) {
		out = append(out, from+float64(i)*step)
	}
	return out, nil
}

// Notes are the doubts and remarks that must travel with the answers.
func (s Study) Notes() (out []string) {
	add := func(format string, args ...any) {
		if text := fmt.Sprintf(format, args...); !slices.Contains(out, text) {
			out = append(out, text)
		}
	}
	add("%s", s.Stock.Remark)
	for _, a := range s.Answers {
		if a.Metal.Doubt != "" {
			add("%s: %s", a.Metal.Name, a.Metal.Doubt)
		}
		if !(a.Metal.Scy > 0) {
			add("no compressive yield strength is given for %s: compression is judged with the yield strength in tension", a.Metal.Name)
		}
		for d, p := range a.Picks {
			if p == nil || p.Offered == 0 {
				continue
			}
			if p.Size.Tube.Wall < ThinWall {
				add("%s", ThinRemark)
			}
			if class, ok := p.Strut().WallClass(); ok && !class.Holds() {
				add("%s, %s: the wall is of class 4: %s = %.1f is above %.1f, the limit of class 3 for its yield strength of %g MPa; it may buckle before it yields, and needs a check as a shell, EN 1993-1-6 [%s]; --wall-limit leaves such walls out",
					a.Metal.Name, DirectionNames[d], class.Measure, class.Ratio, class.Limit, p.Strut().Metal.Sy, class.Source)
			}
		}
	}
	return out
}

// ThinWall is the wall below which ThinRemark goes with a tube, mm: common practice, no
// published source.
const ThinWall = 1

// ThinRemark is what no check of a thin wall knows.
const ThinRemark = "walls below 1 mm are among the tubes: they dent from a touch, rust through soon and are hard to weld, and no check knows that; --wall-limit 1: leaves them out (common practice, no published source)"

// NotChecked says what no check of a rod covers.
func (s Study) NotChecked() []string {
	return []string{
		"the ends: spherical bearings, rod ends, threads, bolts, inserts, welds and lugs; they may need a larger tube than the forces do",
		"bending: eccentric ends, side loads, the rod's own weight and inertia",
		"walls that buckle together with the column, holes and dents, corrosion, wear and fatigue; what a shop can make and weld",
		"whether the two forces are those of one car: another layout has other forces in its other members too",
	}
}
