// Package compliance says how far an upright gives way under a load on its wheel, and
// which parts of the corner give: links, the legs of a wishbone that carries the rod, the
// rocker's pivot, the chassis' pick-ups, the locked spring.
//
// Quantities are plain float64: N, mm, N·mm, rad. Axes: ISO 8855. All is linear, about
// the position of the corner: small displacements, forces from the geometry without load.
//
// The spring or torsion bar is locked: rigid, or of a stated stiffness. Anti-roll link and
// third spring carry nothing, as on a test rig where solid bars take the place of the
// springs and the bar is disconnected (common practice, no published source). Upright,
// wheel, rocker and the joints themselves are rigid.
package compliance

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
)

// Stiffness is that of what holds the links, N/mm. 0: rigid.
type Stiffness struct {
	PickUps      [loads.NumLinks]r3.Vec // of the chassis at the inner joints, along x, y and z; of the rod only where there is no rocker
	SpringPickUp r3.Vec                 // of the chassis at the spring's far point, along x, y and z
	Bearing      float64                // of each bearing of the rocker's pivot, radially
	Thrust       float64                // of the rocker's pivot along its axis
	Spring       float64                // of the locked spring; of a torsion bar N·mm/rad
}

// A Matrix holds displacement of the upright at the wheel centre (rows: x, y, z, mm, and
// turn about them, rad) per load there (columns: force along x, y, z, N, and moment, N·mm).
type Matrix [6][6]float64

// A Kind says what gives way in a part.
type Kind int

// The kinds of part.
const (
	Length       Kind = iota // a link along itself: L/EA
	Bending                  // a leg built into the apex of a carrying wishbone, across itself: L³/3EI
	PickUp                   // the chassis at a link's inner joint
	Pivot                    // bearings and thrust of the rocker's pivot
	Spring                   // the locked spring or torsion bar
	SpringPickUp             // the chassis at the spring's far point
)

// KindNames are the names of the kinds in files and reports.
var KindNames = [...]string{"length", "bending", "pick_up", "rocker_pivot", "spring", "spring_pick_up"}

// A Part is what one part of the corner adds to the compliance: the sum over all parts is
// the whole.
type Part struct {
	Kind Kind
	Link int // of loads.LinkNames; -1: no link
	Matrix
}

// A Compliance is that of one corner.
type Compliance struct {
	Matrix
	Parts []Part // in the order of the kinds of each link, then the rocker; rigid ones are left out

	statics *loads.Statics
}

// New works out the compliance of a corner. Its error is that of the statics, or tells of
// a stiffness that is none.
//
//	C = Σ φₖ·fₖ·fₖᵀ
//
// by virtual work with unit loads (any textbook on the mechanics of structures): f are the
// forces in an elastic element under the six unit loads, φ is its flexibility.
func New(c loads.Corner, k Stiffness) (*Compliance, error) {
	if err := check(c, k); err != nil {
		return nil, err
	}
	if c.Rocker != nil {
		rk := *c.Rocker
		rk.AntiRoll, rk.Third = nil, nil
		c.Rocker = &rk
	}
	s, err := loads.NewStatics(c)
	if err != nil {
		return nil, err
	}
	out := &Compliance{statics: s}
	all := elements(c, k)
	var unit [6][]float64
	for j := range unit {
		unit[j] = all.under(unitForces(s, j))
	}
	all.release(c, &unit)
	for e, el := range all {
		if el.flexibility > 0 {
			out.add(el, &unit, e)
		}
	}
	return out, nil
}

// unitForces returns the forces in the corner under one of the six unit loads at the wheel
// centre. The other side of the axle carries nothing.
func unitForces(s *loads.Statics, j int) loads.Forces {
	axis := [3]r3.Vec{{X: 1}, {Y: 1}, {Z: 1}}[j%3]
	w := loads.WheelLoad{Inertia: axis} // acts at the wheel centre
	if j >= 3 {
		w = loads.WheelLoad{Moment: axis}
	}
	f, _ := loads.SolveAxle(s, s, w, loads.WheelLoad{})
	return f
}

// add takes one element into its part and the whole.
func (c *Compliance) add(el element, unit *[6][]float64, e int) {
	last := len(c.Parts) - 1
	if last < 0 || c.Parts[last].Kind != el.kind || c.Parts[last].Link != el.link {
		c.Parts = append(c.Parts, Part{Kind: el.kind, Link: el.link})
		last++
	}
	for i := range 6 {
		for j := range 6 {
			x := el.flexibility * unit[i][e] * unit[j][e]
			c.Matrix[i][j] += x
			c.Parts[last].Matrix[i][j] += x
		}
	}
}

// check refuses what has no stiffness.
func check(c loads.Corner, k Stiffness) error {
	front, rear, carried := c.Carrier.Legs()
	for i, l := range c.Links {
		name := loads.LinkNames[i]
		if !(l.EA > 0) {
			return fmt.Errorf("%s: E·A is %g N, not above 0: give its section", name, l.EA)
		}
		if carried && (i == front || i == rear) && !(l.EI > 0) {
			return fmt.Errorf("%s: E·I is %g N·mm², not above 0: give its section", name, l.EI)
		}
		if err := holds(name+" pick-up", k.PickUps[i].X, k.PickUps[i].Y, k.PickUps[i].Z); err != nil {
			return err
		}
	}
	if err := holds("spring pick-up", k.SpringPickUp.X, k.SpringPickUp.Y, k.SpringPickUp.Z); err != nil {
		return err
	}
	return holds("rocker's pivot or spring", k.Bearing, k.Thrust, k.Spring)
}

func holds(what string, stiffness ...float64) error {
	for _, k := range stiffness {
		if !(k >= 0) || math.IsInf(k, 0) {
			return fmt.Errorf("%s: a stiffness of %g N/mm is none: give one above 0 N/mm, or leave it out for a rigid one", what, k)
		}
	}
	return nil
}
