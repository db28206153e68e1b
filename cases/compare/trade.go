package compare

import (
	"cmp"
	"math"
	"slices"

	"sixlink/cases"
	"sixlink/loads"
)

// A Trade is what changes from the first car to another: what one member saves and
// what another pays for it. What does not change is left out.
type Trade struct {
	Forces   []Change   // largest axial forces, N, largest change first
	Masses   []Change   // of the tubes as the files have them, kg, largest change first
	Needed   []Change   // of the tubes needed at equal reserve factor, kg, largest change first
	Reserves []Reserves // by corner, member and check
}

// A Change is what one number of a member was and is; NaN: it has no value there.
type Change struct {
	Corner, Link int
	First, Other float64
}

// By returns by how much the size grows; negative: it falls.
func (c Change) By() float64 { return math.Abs(c.Other) - math.Abs(c.First) }

// Reserves are the lowest reserve factors of one check over all cases, in two cars.
type Reserves struct {
	Corner, Member int    // Member: index in cases.MemberNames
	Check          string // its title; empty: the lowest of all checks
	First, Other   Peak   // no value: not checked, or no load
}

// alike is the share to which two numbers that say the same may differ by rounding.
const alike = 1e-9

// Noise is the share of the largest member force of both cars below which a change of a
// force is none: what is left of other numbers by the way they are worked out, and less
// than any table shows. A reserve factor above 1/Noise is that of such a force. Our own
// choice, no published source.
const Noise = 1e-5

// same tells whether two numbers agree to rounding, or are both without value.
func same(a, b float64) bool {
	if math.IsNaN(a) || math.IsNaN(b) {
		return math.IsNaN(a) && math.IsNaN(b)
	}
	return a == b || math.Abs(a-b) <= alike*math.Max(math.Abs(a), math.Abs(b))
}

func trade(first, other Car) Trade {
	mass := func(m Member) float64 { return m.Strut.Mass() }
	return Trade{
		Forces: forceChanges(first, other), Masses: changes(first, other, mass), Needed: changes(first, other, Member.Needed),
		Reserves: reserveChanges(first, other),
	}
}

// changes lists the members whose number changes, the largest change first, those of
// one size in the order of the car; where there is no difference, last.
func changes(first, other Car, of func(Member) float64) (out []Change) {
	for i := range cases.NumCorners {
		for j := range loads.NumLinks {
			c := Change{i, j, of(first.Corners[i].Members[j]), of(other.Corners[i].Members[j])}
			if !same(c.First, c.Other) {
				out = append(out, c)
			}
		}
	}
	slices.SortStableFunc(out, func(a, b Change) int { // NaN is less than any number
		if same(a.By(), b.By()) || same(math.Abs(a.By()), math.Abs(b.By())) {
			return 0
		}
		return cmp.Compare(math.Abs(b.By()), math.Abs(a.By()))
	})
	return out
}

// forceChanges are the changes of the largest forces, without noise.
func forceChanges(first, other Car) []Change {
	largest := 0.0
	for _, car := range []Car{first, other} {
		for _, c := range car.Corners {
			for _, m := range c.Members {
				largest = math.Max(largest, zero(math.Abs(m.Peak())))
			}
		}
	}
	return slices.DeleteFunc(changes(first, other, Member.Peak), func(c Change) bool {
		return math.Abs(zero(c.Other)-zero(c.First)) <= Noise*largest
	})
}

// zero is a force, 0 where there is none.
func zero(v float64) float64 {
	if math.IsNaN(v) {
		return 0
	}
	return v
}

// Sum adds the rises and the falls up, each on its own and together, left and right.
func Sum(list []Change) (rises, falls, together float64) {
	for _, c := range list {
		if by := c.By(); by > 0 {
			rises += by
		} else if by < 0 {
			falls += by
		}
	}
	return rises, falls, rises + falls
}

// reserveChanges lists the reserve factors that change: of each member and rocker the
// lowest of all first, then each of its checks.
func reserveChanges(first, other Car) (out []Reserves) {
	for i := range cases.NumCorners {
		for j := range cases.MemberNames {
			a, b := first.Judged(i, j), other.Judged(i, j)
			for _, check := range titles(a, b) {
				r := Reserves{i, j, check, lowestOf(a, check), lowestOf(b, check)}
				if !same(r.First.Value, r.Other.Value) && !(idle(r.First) && idle(r.Other)) && !nearly(r.First.Value, r.Other.Value) {
					out = append(out, r)
				}
			}
		}
	}
	return out
}

// idle tells whether a reserve factor is that of no force but noise.
func idle(p Peak) bool { return p.Case < 0 || p.Value > 1/Noise }

// nearly tells whether two reserve factors differ by no more than noise.
func nearly(a, b float64) bool { return math.Abs(a-b) <= Noise*math.Min(a, b) }

// titles are those of the checks of either car, after the empty one, in report order.
func titles(lists ...cases.Judged) []string {
	out := []string{""}
	for _, j := range lists {
		for _, f := range j.Checks {
			if t := f.Title(); !slices.Contains(out, t) {
				out = append(out, t)
			}
		}
	}
	return out
}

// lowestOf returns the lowest reserve factor of one check; of all where it is empty.
func lowestOf(j cases.Judged, check string) Peak {
	if g, ok := j.Governs(); check == "" && ok {
		return Peak{g.Reserve, g.Case}
	}
	out := none
	for _, f := range j.Checks {
		unknown := out.Case >= 0 && math.IsNaN(out.Value) // the worst there is
		if f.Title() == check && !unknown && !(f.Reserve >= out.Value) {
			out = Peak{f.Reserve, f.Case}
		}
	}
	return out
}
