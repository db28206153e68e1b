package cases

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
	"sixlink/members/check"
	"sixlink/members/rocker"
)

// A Rocker is what the car file says of a rocker beyond its points. What is nil is not
// given, and not judged.
type Rocker struct {
	Plates   *RockerPlates
	Bearings *rocker.Ratings
	Bar      *rocker.Bar
	Bolt     *rocker.Bolt // its BearingSpan is that of the corner
}

// RockerPlates are the plates with their openings.
type RockerPlates struct {
	rocker.Plates
	Pivot rocker.Cut                  // smallest width through the pivot, and its bore
	Eyes  [loads.NumEyes]*rocker.Hole // as loads.EyeNames; nil: not given
}

// RockerItems returns what is judged at the rocker of a corner in one case: the plates
// through the pivot and at each eye, the bearings, the bolt and the torsion bar.
func (r *Results) RockerItems(corner, k int) []check.Item {
	c, parts := r.Corners[corner], r.Car.Side(corner).Rocker
	f, s := c.Forces[k], c.In(k)
	if parts == nil || f.Rocker == nil {
		return nil
	}
	var items []check.Item
	if p := parts.Plates; p != nil {
		items = append(items, r.pivotItems(*p, s, f)...)
		items = append(items, r.eyeItems(*p, s, f)...)
	}
	if b := parts.Bearings; b != nil {
		items = append(items, check.ItemOf("pivot bearings", rocker.BearingChecks, r.bearings(*b, *f.Rocker), rocker.BearingGivens))
	}
	if b := parts.Bolt; b != nil {
		items = append(items, check.ItemOf("pivot bolt", rocker.PivotBoltChecks, r.pivotBolt(*b, s, f), rocker.PivotBoltGivens))
	}
	if parts.Bar != nil && c.Statics.Corner.Rocker.Spring == nil {
		bar := rocker.TorsionBar{Bar: *parts.Bar, Factors: r.Car.Factors, Torque: math.Abs(f.Rocker.TorsionBar)}
		items = append(items, check.ItemOf("torsion bar", rocker.TorsionBarChecks, bar, rocker.TorsionBarGivens))
	}
	return items
}

// pivotItems are the cuts through the pivot: square to the arm of each eye with the load
// of that eye, and, where other eyes lie on its side of the cut, with theirs too.
func (r *Results) pivotItems(p RockerPlates, s *loads.Statics, f loads.Forces) []check.Item {
	var items []check.Item
	for i, name := range loads.EyeNames {
		if _, ok := s.Eye(f, i); !ok {
			continue
		}
		arm, side := s.Section(f, i, false), s.Section(f, i, true)
		items = append(items, r.sectionItem("pivot, "+eyeWords(name)+" arm", p, arm))
		if len(side.Eyes) > 1 {
			items = append(items, r.sectionItem("pivot, "+eyeWords(name)+" side", p, side))
		}
	}
	return items
}

func eyeWords(name string) string { return strings.ReplaceAll(name, "_", "-") }

func (r *Results) sectionItem(at string, p RockerPlates, c loads.Section) check.Item {
	return check.ItemOf(at, rocker.SectionChecks, rocker.Section{
		Plates: p.Plates, Cut: p.Pivot, Factors: r.Car.Factors,
		Outward: math.Abs(c.Outward), Across: math.Abs(c.Across), Along: math.Abs(c.Along),
		InPlane: math.Abs(c.InPlane), Lift: math.Abs(c.Lift), Offset: c.Offset,
	}, rocker.SectionGivens)
}

// eyeItems are the eyes that the file describes: as a lug, and cut through the hole.
func (r *Results) eyeItems(p RockerPlates, s *loads.Statics, f loads.Forces) []check.Item {
	var items []check.Item
	for i, name := range loads.EyeNames {
		e, ok := s.Eye(f, i)
		if !ok || p.Eyes[i] == nil {
			continue
		}
		cut := rocker.Section{
			Plates: p.Plates, Cut: p.Eyes[i].Cut, Factors: r.Car.Factors, Offset: math.Abs(e.Offset),
			Outward: math.Abs(e.Outward), Across: math.Abs(e.Across), Along: math.Abs(e.Along),
		}
		eye := rocker.Eye{Section: cut, Edge: p.Eyes[i].Edge}
		at := eyeWords(name) + " eye"
		items = append(items, rocker.EyeItem(at, eye), check.ItemOf(at+", cut", rocker.SectionChecks, cut, rocker.SectionGivens))
	}
	return items
}

func (r *Results) bearings(b rocker.Ratings, f loads.RockerForces) rocker.Bearings {
	return rocker.Bearings{
		Ratings: b, Factors: r.Car.Factors,
		Radial1: r3.Norm(f.Bearings[0]), Radial2: r3.Norm(f.Bearings[1]), Axial: math.Abs(f.Thrust),
	}
}

func (r *Results) pivotBolt(b rocker.Bolt, s *loads.Statics, f loads.Forces) rocker.PivotBolt {
	out := rocker.PivotBolt{Bolt: b, Factors: r.Car.Factors, Thrust: math.Abs(f.Rocker.Thrust)}
	out.BearingSpan = s.Corner.Rocker.BearingSpan
	out.Outward, out.Across = s.BearingParts(f)
	return out
}
