package cases

import (
	"math"
	"slices"

	"sixlink/loads"
	"sixlink/members/stock"
)

// A Sizing says from what the tubes of a car are chosen, and what they must reach.
type Sizing struct {
	Stock    stock.List
	Limits   stock.Limits
	Target   float64 // reserve factor of every check of a member and of its ends
	Separate bool    // every member has a tube of its own; otherwise both legs of a wishbone share
}

// A Sized is a car with the lightest tubes of a stock.
type Sized struct {
	Sizing
	Before, After Results
	Groups        []Group      // front axle first, in the order of the links
	Settled       [2]*Settling // by axle; nil: its forces do not depend on the sections
}

// A Group is one member of an axle, or several that share a tube. Left and right share it
// unless the car file gives the right-hand member a section of its own.
type Group struct {
	Axle  int
	Links []int
	Sides [2][]int // its links on the left-hand and on the right-hand side
	Kept  string   // why it was left as it is; empty: it was sized

	Size    *stock.Size // nil: left as it is, or no tube of the stock carries it
	First   bool        // no lighter tube is offered: the loads ask for less than the stock has
	Offered int         // sizes within the limits of which its members can be made
	Nearest *Nearest    // where no tube carries it: how far the stock goes; nil: nothing is offered
}

// A Nearest is the tube of a stock that comes nearest to carrying a group.
type Nearest struct {
	Size         stock.Size
	Corner, Link int
	Finding      Finding // the lowest of the group
}

// Carries tells whether every group that was sized has its tube.
func (s Sized) Carries() bool {
	for _, g := range s.Groups {
		if g.Kept == "" && g.Size == nil {
			return false
		}
	}
	return true
}

// Lacks tells whether no tube of the stock carries a member that was sized.
func (s Sized) Lacks(corner, link int) bool {
	g := s.Of(corner, link)
	return g != nil && g.Kept == "" && g.Size == nil
}

// Saved returns the mass that the members of the car lose, kg.
func (s Sized) Saved() float64 { return s.Before.MembersMass() - s.After.MembersMass() }

// Joined tells what of the ends of the members that were sized bounds the tubes: a bonded
// insert, which fits one bore alone, and a thread, round which a wall must be left.
func (s Sized) Joined() (insert, thread bool) {
	for corner := range NumCorners {
		for link := range loads.NumLinks {
			g := s.Of(corner, link)
			for _, end := range s.Before.Car.Part(corner, link).Ends {
				insert = insert || g != nil && g.Kept == "" && end.Insert != nil
				thread = thread || g != nil && g.Kept == "" && end.Thread != nil
			}
		}
	}
	return insert, thread
}

// Agrees tells whether another run finds what the sizing found: the same tubes, and the
// same lowest reserve factor of each member.
func (s Sized) Agrees(r Results) bool {
	for i := range r.Corners {
		for j, m := range r.Corners[i].Members {
			n := s.After.Corners[i].Members[j]
			f, okF := m.Governs()
			g, okG := n.Governs()
			if m.Strut.Section != n.Strut.Section || okF != okG || okF && !(math.Abs(f.Reserve-g.Reserve) <= 1e-9*g.Reserve) {
				return false
			}
		}
	}
	return true
}

// Of returns the group of a member; nil: it is in none.
func (s Sized) Of(corner, link int) *Group {
	for i := range s.Groups {
		g := &s.Groups[i]
		if g.Axle == axleOf(corner) && slices.Contains(g.Sides[corner%2], link) {
			return g
		}
	}
	return nil
}

// Chosen returns the size of a member; nil: it was left as it is.
func (s Sized) Chosen(corner, link int) *stock.Size {
	if g := s.Of(corner, link); g != nil {
		return g.Size
	}
	return nil
}

// Size chooses the lightest tube of a stock for each member, under all cases and all
// checks of the member and of its ends. Where the forces depend on the sections, which
// they do in a corner whose wishbone carries the rod, it goes on until they agree, and
// then tries whatever is lighter. The error is that of Run.
func Size(car Car, o Sizing) (Sized, error) {
	before, err := Run(car)
	if err != nil {
		return Sized{}, err
	}
	s := Sized{Sizing: o, Before: before}
	for axle := range car.Axles {
		t := newTrial(before, axle, o.Target)
		groups := o.groups(&car.Axles[axle], axle)
		s.Settled[axle] = t.choose(groups)
		for _, g := range groups {
			s.Groups = append(s.Groups, g.Group)
		}
		car.Axles[axle] = t.Car.Axles[axle]
	}
	s.After, err = Run(car)
	return s, err
}
