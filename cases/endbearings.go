package cases

import (
	"fmt"
	"strings"

	"sixlink/loads"
	"sixlink/members/ends"
)

// An EndBearing is the bearing of one end of a member.
type EndBearing struct {
	Link, End int // as loads.LinkNames and EndNames
	ends.Bearing

	// Shares tells that it is the bearing of the leg before, at the joint of both.
	Shares bool
}

// EndBearings lists the bearings of the ends of a corner's members. The legs of a
// wishbone meet in one joint: where both name the same part there, it is one bearing.
func (r *Results) EndBearings(corner int) (out []EndBearing) {
	side := r.Car.Side(corner)
	for i, p := range side.Parts {
		for k, end := range p.Ends {
			if end.Bearing == nil {
				continue
			}
			b := EndBearing{Link: i, End: k, Bearing: *end.Bearing}
			front, rear, _, _ := loads.Wishbone(i)
			if _, meets := side.Corner.Joint(i); meets && k == OuterEnd && i == rear {
				before := side.Parts[front].Ends[OuterEnd].Bearing
				b.Shares = before != nil && before.Part == b.Part
			}
			out = append(out, b)
		}
	}
	return out
}

// HasEnds tells whether the file gives anything of an end of a member or of a rocker:
// whether the fitting factor is in any capacity.
func (c Car) HasEnds() bool {
	for _, s := range c.Stations() {
		if s.Rocker != nil {
			return true
		}
		for _, p := range s.Parts {
			if p.Ends[OuterEnd].Given() || p.Ends[InnerEnd].Given() {
				return true
			}
		}
	}
	return false
}

// remarkMisalignment holds the angle of each joint in the position drawn to the limit
// of its bearing. It grows with no load, so that it has no reserve factor.
func (r *Results) remarkMisalignment() {
	var within []string
	for _, p := range r.Car.places() {
		name, m := p.member()+", "+EndNames[p.end], p.Misalignment
		switch {
		case m == nil || r.Car.Axles[axleOf(p.station.At)].Motion != nil: // over the motion, then
		case !(m.Clearance() >= 0):
			r.note(Warning, "%s: the joint stands at %.4g°, above the %.4g° that %s allows", name, m.Angle, m.Limit, p.Bearing.Part)
		default:
			within = append(within, fmt.Sprintf("%s %.4g° (%.4g° of %.4g°)", name, m.Clearance(), m.Angle, m.Limit))
		}
	}
	if len(within) > 0 {
		r.note(Remark, "clearance of joints up to the limit of their bearings, in the position drawn alone (the travel takes its part of it): %s", strings.Join(within, "; "))
	}
}
