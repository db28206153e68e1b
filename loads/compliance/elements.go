package compliance

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
)

// An element is a spring with one force.
type element struct {
	kind        Kind
	link        int
	flexibility float64 // mm/N; of a torsion bar rad/(N·mm); 0: rigid
	force       func(loads.Forces) float64
}

// structure is all elements of a corner.
type structure []element

// elements lists what gives way in a corner, links first.
func elements(c loads.Corner, k Stiffness) structure {
	var s structure
	front, rear, carried := c.Carrier.Legs()
	for i, l := range c.Links {
		dir := l.Direction()
		along := func(f loads.Forces) float64 { return r3.Dot(dir, f.Chassis[i]) }
		s = append(s, element{Length, i, l.Length() / l.EA, along})
		if carried && (i == front || i == rear) {
			tip := math.Pow(l.Length(), 3) / (3 * l.EI)
			s.vector(Bending, i, r3.Vec{X: tip, Y: tip, Z: tip}, func(f loads.Forces) r3.Vec {
				return r3.Sub(f.Chassis[i], r3.Scale(along(f), dir))
			})
		}
		if i != loads.Rod || c.Rocker == nil {
			s.vector(PickUp, i, flexible(k.PickUps[i]), func(f loads.Forces) r3.Vec { return f.Chassis[i] })
		}
	}
	if c.Rocker != nil {
		s.rocker(c.Rocker, k)
	}
	return s
}

// rocker adds the pivot and the locked spring.
func (s *structure) rocker(rk *loads.Rocker, k Stiffness) {
	radial := flexibility(k.Bearing)
	for i := range 2 {
		s.vector(Pivot, none, r3.Vec{X: radial, Y: radial, Z: radial}, func(f loads.Forces) r3.Vec { return f.Rocker.Bearings[i] })
	}
	*s = append(*s, element{Pivot, none, flexibility(k.Thrust), func(f loads.Forces) float64 { return f.Rocker.Thrust }})
	if rk.Spring == nil {
		*s = append(*s, element{Spring, none, flexibility(k.Spring), func(f loads.Forces) float64 { return f.Rocker.TorsionBar }})
		return
	}
	*s = append(*s, element{Spring, none, flexibility(k.Spring), func(f loads.Forces) float64 { return f.Rocker.Spring }})
	s.vector(SpringPickUp, none, flexible(k.SpringPickUp), func(f loads.Forces) r3.Vec { return f.Rocker.SpringOn })
}

// none is the link of a part that is no link.
const none = -1

// vector adds the three elements of a force in space.
func (s *structure) vector(kind Kind, link int, flex r3.Vec, force func(loads.Forces) r3.Vec) {
	*s = append(*s,
		element{kind, link, flex.X, func(f loads.Forces) float64 { return force(f).X }},
		element{kind, link, flex.Y, func(f loads.Forces) float64 { return force(f).Y }},
		element{kind, link, flex.Z, func(f loads.Forces) float64 { return force(f).Z }})
}

func flexible(k r3.Vec) r3.Vec {
	return r3.Vec{X: flexibility(k.X), Y: flexibility(k.Y), Z: flexibility(k.Z)}
}

func flexibility(stiffness float64) float64 {
	if stiffness == 0 {
		return 0
	}
	return 1 / stiffness
}

// under returns the forces of the elements.
func (s structure) under(f loads.Forces) []float64 {
	out := make([]float64, len(s))
	for i, el := range s {
		out[i] = el.force(f)
	}
	return out
}

// release gives a carrying wishbone the one force that statics leave free, x, with which
// its pick-ups press on each other along the line between them: it is the one of least
// strain energy, with what the chassis gives. The member forces of the load cases are those
// of rigid pick-ups.
//
//	x = −(gᵀφf)/(gᵀφg)
//
// with g the forces of the elements for x = 1 (Castigliano's second theorem).
func (s structure) release(c loads.Corner, unit *[6][]float64) {
	front, rear, carried := c.Carrier.Legs()
	if !carried {
		return
	}
	line := r3.Unit(r3.Sub(c.Links[front].Inner, c.Links[rear].Inner))
	press := loads.Forces{Rocker: &loads.RockerForces{}}
	press.Chassis[front], press.Chassis[rear] = line, r3.Scale(-1, line)
	g := s.under(press)
	for j := range unit {
		with, own := 0.0, 0.0
		for e, el := range s {
			with += el.flexibility * g[e] * unit[j][e]
			own += el.flexibility * g[e] * g[e]
		}
		for e := range s {
			unit[j][e] -= with / own * g[e]
		}
	}
}
