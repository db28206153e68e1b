package motion

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
)

// A Position is where a corner is. Angles in rad; a float without a value is NaN.
type Position struct {
	Travel, Rack float64 // mm

	// Corner is the corner there: all points moved, stiffnesses as they were. The statics
	// run on it as on a drawn one. The far end of a third spring, on the rocker of the other
	// side, is left where it is drawn.
	Corner loads.Corner

	Upright   r3.Rotation           // turn of the upright from its drawn position
	Wishbones [NumWishbones]float64 // turns about the axes from rear to front pick-up; NaN where the legs have outer joints of their own

	Angles
	TrackChange float64 // movement of the contact point outwards, mm
	// LinkAngles are those of the links to the horizontal, positive where the outer joint
	// is the higher one.
	LinkAngles   [loads.NumLinks]float64
	Rocker       float64 // turn, positive as a wheel rising from the drawn position turns it; NaN without a rocker
	SpringLength float64 // mm; without a rocker the rod's; NaN with a torsion bar
	AntiRoll     float64 // movement of the link's end on the bar, away from the rocker, mm; NaN without one

	PerTravel, PerRack Rates // per mm of travel with the rack at rest, and the other way round
}

// At returns the position at a travel and a rack displacement, mm: the one to which the
// linkage moves from its drawn position, the rack first. At no travel and no rack it is the
// drawn position to the last digit. Its error is *Beyond.
func (l *Linkage) At(travel, rack float64) (Position, error) {
	w := l.walk()
	if !w.to(0, rack) || !w.to(travel, rack) {
		return Position{}, w.beyond(travel, rack)
	}
	return l.position(&w.state), nil
}

// Sweep returns the positions at all travels for each displacement of the rack, mm: those
// at the first one first, in the order given. Each is reached from the one before. Its
// error is *Beyond, with the positions up to there.
func (l *Linkage) Sweep(travels, racks []float64) ([]Position, error) {
	out := make([]Position, 0, len(travels)*len(racks))
	straight := l.walk()
	for _, rack := range racks {
		if !straight.to(0, rack) {
			return out, straight.beyond(0, rack)
		}
		w := l.walkFrom(straight.state)
		for _, travel := range travels {
			if !w.to(travel, rack) {
				return out, w.beyond(travel, rack)
			}
			out = append(out, l.position(&w.state))
		}
	}
	return out, nil
}

// position places everything.
func (l *Linkage) position(s *state) Position {
	p := Position{Travel: s.travel, Rack: s.rack, Corner: l.drawn, Upright: r3.Rotation(s.pose.turn)}
	nan := math.NaN()
	p.Rocker, p.SpringLength, p.AntiRoll = nan, nan, nan
	c := &p.Corner
	for i := range numHeld {
		c.Links[i].Outer = l.moved(&s.pose, c.Links[i].Outer)
	}
	c.Links[loads.TrackRod].Inner.Y += s.rack
	c.Links[loads.Rod].Outer = l.rodOuter(s)
	for i := range p.Wishbones {
		p.Wishbones[i] = l.swing(s, i)
	}
	l.placeWheel(&p, s)
	if l.rocker != nil {
		l.placeRocker(&p, s)
	} else {
		p.SpringLength = c.Links[loads.Rod].Length()
	}
	for i, link := range c.Links {
		p.LinkAngles[i] = math.Asin((link.Outer.Z - link.Inner.Z) / link.Length())
	}
	v := l.velocities(s)
	p.PerTravel, p.PerRack = v[0], v[1]
	return p
}

func (l *Linkage) placeWheel(p *Position, s *state) {
	c := &p.Corner
	c.Centre = r3.Add(c.Centre, s.pose.shift)
	c.Spin = r3.Add(c.Spin, strayed(s.pose.turn, c.Spin))
	f := l.wheelFrame(s)
	gone := r3.Add(s.pose.shift, l.wheel.contactGone(f))
	c.Contact = r3.Add(c.Contact, gone)
	p.TrackChange = l.wheel.left * gone.Y
	p.Angles = l.wheel.angles(f, l.moved(&s.pose, l.wishbones[Upper].middle), l.moved(&s.pose, l.wishbones[Lower].middle))
	if l.wishbones[Upper].parted || l.wishbones[Lower].parted {
		p.Caster = math.NaN()
	}
}

// wheelFrame returns the frame of the wheel where it is.
func (l *Linkage) wheelFrame(s *state) wheelFrame {
	return l.wheel.stand(r3.Add(l.wheel.frame.spin, strayed(s.pose.turn, l.wheel.frame.spin)))
}

func (l *Linkage) placeRocker(p *Position, s *state) {
	rk := *p.Corner.Rocker
	rod := &p.Corner.Links[loads.Rod]
	turn := s.toggle.turn
	rod.Inner = l.rocker.moved(turn, rod.Inner)
	p.Rocker = 0 + l.rising*turn // never −0
	if rk.Spring != nil {
		rk.Spring = &loads.Line{Rocker: l.rocker.moved(turn, rk.Spring.Rocker), Far: rk.Spring.Far}
		p.SpringLength = r3.Norm(r3.Sub(rk.Spring.Far, rk.Spring.Rocker))
	}
	if a := l.antiRoll; a != nil {
		rk.AntiRoll = &loads.Line{Rocker: l.rocker.moved(turn, rk.AntiRoll.Rocker), Far: r3.Add(rk.AntiRoll.Far, r3.Scale(s.bar, a.dir))}
		p.AntiRoll = s.bar
	}
	if rk.Third != nil {
		rk.Third = &loads.Line{Rocker: l.rocker.moved(turn, rk.Third.Rocker), Far: rk.Third.Far}
	}
	p.Corner.Rocker = &rk
}

// Ratio returns how the spring or torsion bar moves with the wheel at the position, from
// the motion alone; the statics of the position give the same by virtual work
// (loads.Statics.Travel). Here the ratio changes its sign where the rocker, or the spring
// upon it, turns back. Without a rocker the rod is the spring.
//
//	−ds/dz, or dφ/dz, with z the height of the contact point of a rolling wheel
func (p *Position) Ratio() loads.Travel {
	r := &p.PerTravel
	t := loads.Travel{Ratio: -r.SpringLength / r.Rise}
	if math.IsNaN(r.SpringLength) {
		t = loads.Travel{Bar: true, Ratio: r.Rocker / r.Rise}
	}
	t.Force = 1 / t.Ratio
	return t
}

// RodForce returns the axial force of the rod, tension positive, per upward contact force
// on a rolling wheel, N/N, by virtual work: with the rod's inner joint held, the force F
// and the force T of the rod are in balance where
//
//	F·δz − T·δL = 0  ⇒  T/F = (dz/dt)/(dL/dt)
func (p *Position) RodForce() float64 { return p.PerTravel.Rise / p.PerTravel.Rod }
