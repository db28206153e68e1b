package cases

import (
	"strings"

	"sixlink/loads"
	"sixlink/members/ends"
)

// A place is one end of one member of a station.
type place struct {
	station   Station
	link, end int
	ends.End
	Part
	carrying bool // a leg of the wishbone that carries the rod
}

func (p place) name() string { return p.member() + " " + EndNames[p.end] }

func (p place) member() string { return p.station.Member(p.link) }

// places lists the ends of all stations in their order.
func (c Car) places() (out []place) {
	for _, s := range c.Stations() {
		front, rear, carries := s.Corner.Carrier.Legs()
		for j, p := range s.Parts {
			for k, end := range p.Ends {
				out = append(out, place{s, j, k, end, p, carries && (j == front || j == rear)})
			}
		}
	}
	return out
}

// endGaps are what no check covers at an end of which the file says something.
var endGaps = []struct {
	what string
	open func(place) bool
}{
	{"bearing or rod end", func(p place) bool { return p.Bearing == nil }},
	{"axial load of the bearing (no axial_rating)", func(p place) bool { return p.Bearing != nil && p.Bearing.Axial == 0 }},
	{"radial and axial load of the bearing together", func(p place) bool { return p.Bearing != nil && p.Bearing.Axial > 0 && p.AxialShare > 0 }},
	{"bolt", func(p place) bool { return p.Bolt == nil }},
	{"bending of the bolt and bearing on its plates (no plates)", func(p place) bool { return p.Bolt != nil && p.Bolt.Plates == nil }},
	{"bearing on the inner plate (no inner_material)", func(p place) bool {
		return p.Bolt != nil && p.Bolt.Plates != nil && p.Bolt.Plates.InnerMetal.Sy == 0 && p.Bearing == nil // with a bearing it is the ball
	}},
	{"lug", func(p place) bool { return p.Lug == nil }},
	{"thread, weld or insert", func(p place) bool { return p.Thread == nil && p.Weld == nil && p.Insert == nil }},
	{"stripping of the thread (no engagement)", func(p place) bool { return p.Thread != nil && p.Thread.Engagement == 0 }},
	{"the internal thread (no in)", func(p place) bool {
		return p.Thread != nil && p.Thread.Engagement > 0 && p.Thread.Nut.Su == 0
	}},
	{"what holds the thread in the tube (no weld or insert)", func(p place) bool {
		return p.Thread != nil && p.Weld == nil && p.Insert == nil && p.Strut.Shape() != "bar"
	}},
	{"bending of the shank by the shear of the leg (no shank_length)", func(p place) bool {
		return p.Thread != nil && p.Thread.Shank == 0 && p.carrying
	}},
	{"peel of the bond", func(p place) bool { return p.Insert != nil }},
}

// openJoints names in one line what no check covers at the ends of members.
func (r *Results) openJoints() []string {
	var silent, given []place
	for _, p := range r.Car.places() {
		if p.End.Given() {
			given = append(given, p)
		} else {
			silent = append(silent, p)
		}
	}
	const whatever = "spherical bearings, rod ends, threads, bolts, inserts, welds and lugs"
	if len(given) == 0 {
		return []string{"joints: " + whatever}
	}
	var out []string
	if len(silent) > 0 {
		out = append(out, "all of "+whatever+" at "+r.where(silent))
	}
	for _, gap := range endGaps {
		var open []place
		for _, p := range given {
			if gap.open(p) {
				open = append(open, p)
			}
		}
		if len(open) > 0 {
			out = append(out, gap.what+" at "+r.where(open))
		}
	}
	if out == nil {
		return nil
	}
	return []string{"joints: " + strings.Join(out, "; ")}
}

// where names places in as few words as it can: all of them, those of a station at one
// end, both ends of a member, or the end itself.
func (r *Results) where(places []place) string {
	stations := r.Car.Stations()
	in := map[[3]int]bool{}
	for _, p := range places {
		in[[3]int{p.station.At, p.link, p.end}] = true
	}
	if len(in) == 2*len(stations)*loads.NumLinks {
		return "every end"
	}
	var out []string
	for _, s := range stations {
		for end, name := range EndNames {
			all := true
			for link := range loads.NumLinks {
				all = all && in[[3]int{s.At, link, end}]
			}
			if all {
				out = append(out, "every "+s.Name+" "+name)
				for link := range loads.NumLinks {
					delete(in, [3]int{s.At, link, end})
				}
			}
		}
	}
	for _, p := range places {
		here, other := [3]int{p.station.At, p.link, p.end}, [3]int{p.station.At, p.link, OuterEnd + InnerEnd - p.end}
		switch {
		case in[here] && in[other]:
			out = append(out, p.member())
			delete(in, other)
		case in[here]:
			out = append(out, p.name())
		}
		delete(in, here)
	}
	return strings.Join(out, ", ")
}
