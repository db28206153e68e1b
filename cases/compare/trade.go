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
		Forces: changes(first, other, Member.Peak), Masses: changes(first, other, mass), Needed: changes(first, other, Member.Needed),
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
				if !same(r.First.Value, r.Other.Value) {
					out = append(out, r)
				}
			}
		}
	}
	return out
}

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
