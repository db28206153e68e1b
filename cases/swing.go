package cases

import (
	"errors"
	"math"
	"strings"

	"sixlink/loads"
	"sixlink/loads/motion"
)

// A Motion is how far the wheels of an axle move, mm: from full droop to full bump, and
// the rack from right lock to left lock.
type Motion struct {
	Travel, Rack [2]float64
	Clearance    float64 // room that must be left between two links
}

// A Swing is how far a bearing is misaligned over the motion of its axle, degrees. It
// grows with no load, so that it has a clearance and no reserve factor.
type Swing struct {
	Corner, Link, End int     // as CornerNames, loads.LinkNames, EndNames; of a joint that two legs share one of them
	Joint             string  // as motion.BearingNames
	Part              string  // of the bearing; empty: not given
	Drawn             float64 // as the file has it for the position drawn; 0: not given
	Motion            float64 // what the motion adds to it
	Limit             float64 // of the bearing; NaN: not given
	Travel, Rack      float64 // where it is largest, mm
}

// Angle is the largest misalignment, degrees: that of the position drawn and that of the
// motion as sizes, for their planes are not known, which is on the safe side.
func (s Swing) Angle() float64 { return s.Drawn + s.Motion }

// Clearance is what is left up to the limit, degrees; NaN: no limit.
func (s Swing) Clearance() float64 { return s.Limit - s.Angle() }

// Passes tells whether the bearing stays within its limit, or has none.
func (s Swing) Passes() bool { return math.IsNaN(s.Limit) || s.Clearance() >= 0 }

// The positions at which a motion is looked at: the ends and the drawn position among them.
const travelSteps, rackSteps = 10, 4 // to either side

// Sides returns travels or racks from one end of a range to the other through 0, in so
// many steps to either side.
func Sides(ends [2]float64, steps int) (out []float64) {
	for i := -steps; i <= steps; i++ {
		end := ends[1]
		if i < 0 {
			end = -ends[0]
		}
		if x := end * float64(i) / float64(steps); len(out) == 0 || x > out[len(out)-1] {
			out = append(out, x+0)
		}
	}
	return out
}

// move looks at the bearings and the links of every axle over its motion. It returns every
// refusal.
func (r *Results) move() (refused []error) {
	for corner := range r.Corners {
		a := &r.Car.Axles[axleOf(corner)]
		if a.Motion == nil {
			continue
		}
		l, c, err := sweep(&r.Car, corner)
		if err != nil {
			refused = append(refused, err)
			continue
		}
		r.swing(corner, l, c.Positions)
		r.remarkRoom(corner, a.Motion, c.Positions)
		if corner%2 == Left || a.Right != nil {
			r.Curves = append(r.Curves, c)
		}
	}
	return refused
}

// sweep moves a corner over the motion of its axle. Its error is a *Refusal.
func sweep(c *Car, corner int) (*motion.Linkage, Curves, error) {
	m := c.Axles[axleOf(corner)].Motion
	l, err := motion.New(c.Side(corner).Corner)
	if err != nil {
		return nil, Curves{}, unled(c, corner, err)
	}
	out, err := curvesOf(l, corner, Sides(m.Travel, travelSteps), Sides(m.Rack, rackSteps))
	var r *Refusal
	if errors.As(err, &r) {
		r.Path = AxleNames[axleOf(corner)] + ".motion"
	}
	return l, out, err
}

// jointOf is the bearing of the linkage at an end of a link.
func jointOf(link, end int) int {
	switch {
	case link == loads.TrackRod:
		return motion.TrackRodOuter + end
	case link == loads.Rod:
		return motion.RodOuter + end
	case end == InnerEnd:
		return motion.UpperFrontPickUp + link
	case link == loads.UpperFrontLeg || link == loads.UpperRearLeg:
		return motion.UpperBallJoint
	}
	return motion.LowerBallJoint
}

// swing finds the misalignment of every bearing of a corner.
func (r *Results) swing(corner int, l *motion.Linkage, positions []motion.Position) {
	largest := l.Largest(positions, motion.Bolts{})
	side := r.Car.Side(corner)
	for link, p := range side.Parts {
		for end, e := range p.Ends {
			front, _, _, _ := loads.Wishbone(link)
			if _, shared := side.Corner.Joint(link); shared && end == OuterEnd && link != front {
				before := side.Parts[front].Ends[OuterEnd].Bearing
				if e.Bearing == nil || before != nil && before.Part == e.Bearing.Part {
					continue // it is that of the leg before
				}
			}
			at := largest[jointOf(link, end)]
			s := Swing{
				Corner: corner, Link: link, End: end, Joint: motion.BearingNames[jointOf(link, end)],
				Motion: at.Angle * 180 / math.Pi, Limit: math.NaN(), Travel: at.Travel, Rack: at.Rack,
			}
			if b := e.Bearing; b != nil {
				s.Part = b.Part
				if b.Tilt > 0 {
					s.Limit = b.Tilt
				}
			}
			if e.Misalignment != nil {
				s.Drawn = e.Misalignment.Angle
			}
			r.Swings = append(r.Swings, s)
			r.Pass = r.Pass && s.Passes()
		}
	}
}

// remarkRoom points out the links of a corner that come nearer to one another than they
// may. Links that meet in a joint, and the rod with the legs that carry it, are left out.
func (r *Results) remarkRoom(corner int, m *Motion, positions []motion.Position) {
	side := r.Car.Side(corner)
	for i := range loads.NumLinks {
		for j := range i {
			if !apart(&side.Corner, i, j) {
				continue
			}
			least, at := math.Inf(1), 0
			for k := range positions {
				links := &positions[k].Corner.Links
				if d := motion.Between(links[i], links[j]); d < least {
					least, at = d, k
				}
			}
			least -= (side.Parts[i].Strut.Breadth() + side.Parts[j].Strut.Breadth()) / 2
			if !(least >= m.Clearance) {
				r.note(Warning, "%s: %s and %s come as near as %.1f mm, surface to surface, at travel %s, rack %s, and %.4g mm must be left: they may foul; sections are taken as round as they are broad, and the room of rod ends, nuts and brackets is not in it",
					cornerWords(corner), linkWords(j), linkWords(i), least, signed(positions[at].Travel, "mm"), signed(positions[at].Rack, "mm"), m.Clearance)
			}
		}
	}
}

func linkWords(link int) string { return strings.ReplaceAll(loads.LinkNames[link], "_", " ") }

// apart tells whether two links neither meet in a joint nor hang on one another.
func apart(c *loads.Corner, i, j int) bool {
	a, b := c.Links[i], c.Links[j]
	if a.Outer == b.Outer || a.Inner == b.Inner {
		return false
	}
	front, rear, carried := c.Carrier.Legs()
	legs := func(x int) bool { return carried && (x == front || x == rear) }
	return !(i == loads.Rod && legs(j) || j == loads.Rod && legs(i))
}

// remarkSwings says what is taken of the bearings over the motion, and which fail.
func (r *Results) remarkSwings() {
	for _, s := range r.Swings {
		if !s.Passes() {
			r.note(Warning, "%s %s: the joint turns by %.1f° at travel %s, rack %s, above the %.4g° that %s allows: it FAILS", cornerWords(s.Corner), strings.ReplaceAll(s.Joint, "_", " "), s.Angle(), signed(s.Travel, "mm"), signed(s.Rack, "mm"), s.Limit, s.Part)
		}
	}
	if len(r.Swings) > 0 {
		r.note(Remark, "angles of bearings over the motion: at %d × %d positions of travel and rack; bolts are taken square to their member, at the joints of a wishbone square to its plane, in the position drawn; an angle stated for that position is added as a size", 2*travelSteps+1, 2*rackSteps+1)
	}
}
