package cases

import (
	"slices"

	"sixlink/loads"
	"sixlink/members"
	"sixlink/members/sizing"
)

// shared are the links of an axle that share a tube unless they are sized separately.
var shared = [][]int{
	{loads.UpperFrontLeg, loads.UpperRearLeg}, {loads.LowerFrontLeg, loads.LowerRearLeg}, {loads.TrackRod}, {loads.Rod},
}

// A spot is a member of an axle, as the car holds it: the left-hand one stands for both
// where the sides are mirror images.
type spot struct{ side, link int }

// groups returns the groups of an axle with what the stock offers each.
func (o Sizing) groups(a *Axle, axle int) (out []*group) {
	for _, links := range shared {
		for _, together := range a.wishbones(links) {
			for _, spots := range a.tubes(together) {
				out = append(out, o.split(a, axle, spots)...)
			}
		}
	}
	return out
}

// wishbones splits two legs that are no wishbone, for each has a joint of its own.
func (a *Axle) wishbones(links []int) [][]int {
	for _, s := range a.Held() {
		if _, meet := s.Corner.Joint(links[0]); !meet && len(links) == 2 {
			return [][]int{links[:1], links[1:]}
		}
	}
	return [][]int{links}
}

// tubes splits members by whose tube they have: that of the left-hand side, or the right
// one's own.
func (a *Axle) tubes(links []int) [][]spot {
	var left, right []spot
	for _, link := range links {
		left = append(left, spot{Left, link})
	}
	if a.Right == nil {
		return [][]spot{left}
	}
	for _, link := range links {
		if a.Right.Own[link] {
			right = append(right, spot{Right, link})
		} else {
			left = append(left, spot{Right, link})
		}
	}
	return [][]spot{left, right}
}

// split makes groups of members: those that are not sized by themselves, and the others
// together or, sized separately, link by link.
func (o Sizing) split(a *Axle, axle int, spots []spot) (out []*group) {
	var sized []spot
	seen := map[int]bool{}
	for _, at := range spots {
		why := unsized(a.own(at.side).Parts[at.link])
		if why == "" {
			sized = append(sized, at)
			continue
		}
		if !seen[at.link] {
			seen[at.link] = true
			alone := slices.DeleteFunc(slices.Clone(spots), func(s spot) bool { return s.link != at.link })
			out = append(out, &group{Group: a.group(axle, alone, why), spots: alone, chosen: none})
		}
	}
	for len(sized) > 0 {
		together := sized
		if o.Separate {
			together = slices.DeleteFunc(slices.Clone(sized), func(s spot) bool { return s.link != sized[0].link })
		}
		out = append(out, o.group(a, axle, together))
		sized = slices.DeleteFunc(slices.Clone(sized), func(s spot) bool { return slices.Contains(together, s) })
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

// group names the members of a group.
func (a *Axle) group(axle int, spots []spot, kept string) Group {
	g := Group{Axle: axle, Kept: kept}
	for _, at := range spots {
		g.Sides[at.side] = append(g.Sides[at.side], at.link)
		if !slices.Contains(g.Links, at.link) {
			g.Links = append(g.Links, at.link)
		}
	}
	if a.Right == nil {
		g.Sides[Right] = g.Sides[Left]
	}
	return g
}

func (o Sizing) group(a *Axle, axle int, spots []spot) *group {
	var struts []members.Strut
	for _, at := range spots {
		struts = append(struts, a.own(at.side).Parts[at.link].Strut)
	}
	g := &group{Group: a.group(axle, spots, ""), spots: spots, chosen: none}
	g.options = a.fitting(spots, sizing.Options(o.Stock, o.Limits, struts))
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
	spots   []spot          // its members, as the struts of its options
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
