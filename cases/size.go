package cases

import (
	"math"

	"sixlink/loads"
	"sixlink/members"
	"sixlink/members/sizing"
	"sixlink/members/stock"
)

// A Sizing says from what the tubes of a car are chosen, and what they must reach.
type Sizing struct {
	Stock    stock.List
	Limits   stock.Limits
	Target   float64 // reserve factor of every check of a member and of its ends
	Separate bool    // every member of an axle has a tube of its own; otherwise both legs of a wishbone share
}

// A Sized is a car with the lightest tubes of a stock.
type Sized struct {
	Sizing
	Before, After Results
	Groups        []Group      // front axle first, in the order of the links
	Settled       [2]*Settling // by axle; nil: its forces do not depend on the sections
}

// A Group is one member of an axle, or several that share a tube; left and right always do.
type Group struct {
	Axle  int
	Links []int
	Kept  string // why it was left as it is; empty: it was sized

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
func (s Sized) Lacks(axle, link int) bool {
	for _, g := range s.Groups {
		for _, l := range g.Links {
			if g.Axle == axle && l == link {
				return g.Kept == "" && g.Size == nil
			}
		}
	}
	return false
}

// Saved returns the mass that the members of the car lose, kg.
func (s Sized) Saved() float64 { return s.Before.MembersMass() - s.After.MembersMass() }

// Joined tells what of the ends of the members that were sized bounds the tubes: a bonded
// insert, which fits one bore alone, and a thread, round which a wall must be left.
func (s Sized) Joined() (insert, thread bool) {
	for _, g := range s.Groups {
		for _, link := range g.Links {
			for _, end := range s.Before.Car.Axles[g.Axle].Parts[link].Ends {
				insert = insert || g.Kept == "" && end.Insert != nil
				thread = thread || g.Kept == "" && end.Thread != nil
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

// Chosen returns the size of a member; nil: it was left as it is.
func (s Sized) Chosen(axle, link int) *stock.Size {
	for _, g := range s.Groups {
		for _, l := range g.Links {
			if g.Axle == axle && l == link {
				return g.Size
			}
		}
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
		groups := o.groups(car.Axles[axle], axle)
		s.Settled[axle] = t.choose(groups)
		for _, g := range groups {
			s.Groups = append(s.Groups, g.Group)
		}
		car.Axles[axle] = t.Car.Axles[axle]
	}
	s.After, err = Run(car)
	return s, err
}

// shared are the links of an axle that share a tube unless they are sized separately.
var shared = [][]int{
	{loads.UpperFrontLeg, loads.UpperRearLeg}, {loads.LowerFrontLeg, loads.LowerRearLeg}, {loads.TrackRod}, {loads.Rod},
}

// groups returns the groups of an axle with what the stock offers each.
func (o Sizing) groups(a Axle, axle int) (out []*group) {
	for _, links := range shared {
		var sized []int
		for _, link := range links {
			if why := unsized(a.Parts[link]); why != "" {
				out = append(out, &group{Group: Group{Axle: axle, Links: []int{link}, Kept: why}, chosen: none})
				continue
			}
			sized = append(sized, link)
		}
		for len(sized) > 0 {
			n := len(sized)
			if o.Separate {
				n = 1
			}
			out = append(out, o.group(a, axle, sized[:n]))
			sized = sized[n:]
		}
	}
	return out
}

// unsized says why a member keeps its section; empty: it is sized.
func unsized(p Part) string {
	_, round := p.Strut.Round()
	switch {
	case p.Laminate != nil:
		return "a laminate, which no stock of tubes has"
	case !round:
		return "no round tube"
	}
	return ""
}

func (o Sizing) group(a Axle, axle int, links []int) *group {
	var struts []members.Strut
	for _, link := range links {
		struts = append(struts, a.Parts[link].Strut)
	}
	g := &group{Group: Group{Axle: axle, Links: links}, chosen: none}
	g.options = a.Side.fitting(links, sizing.Options(o.Stock, o.Limits, struts))
	g.Offered = len(g.options)
	for _, s := range struts {
		g.present.Struts, g.present.Mass = append(g.present.Struts, s), g.present.Mass+s.Mass()
	}
	return g
}

// none is the index of the tube that a group has in the car file.
const none = -1

// A group is a Group that is being sized.
type group struct {
	Group
	options []sizing.Option // lightest first
	present sizing.Option   // of the car file
	chosen  int             // index in options
}

// option returns the option of an index; none: the tubes of the car file.
func (g *group) option(i int) sizing.Option {
	if i == none {
		return g.present
	}
	return g.options[i]
}
