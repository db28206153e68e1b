package cases

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
)

// remark fills what is not checked and the notes that travel with the results.
func (r *Results) remark() {
	r.NotChecked = r.gaps()
	for _, d := range r.Car.Doubts {
		r.note(Warning, "%s", d)
	}
	for _, f := range r.Car.Files {
		r.note(Remark, "%s: %s", f.Name, f.Says)
	}
	r.remarkEnds()
	r.remarkReactions()
	r.remarkInertia()
	r.remarkMisalignment()
	r.remarkMaterials()
	r.remarkLaminates()
	r.remarkSections()
	r.remarkCompression()
	r.remarkParts()
	r.remarkStiffness()
	r.remarkGeometry()
	r.remarkPlaces()
	r.remarkSwings()
	r.remarkSprings()
	r.remarkStance()
	r.remarkCases()
	r.remarkFriction()
	r.note(Remark, "the rack is taken to lie along the y axis; the force along it is the y part of the track rod's force on the chassis")
}

func (r *Results) note(s Severity, format string, args ...any) {
	text := fmt.Sprintf(format, args...)
	for _, n := range r.Notes {
		if n.Text == text {
			return
		}
	}
	r.Notes = append(r.Notes, Note{s, text})
}

// remarkMaterials carries the doubts of the materials, each once.
func (r *Results) remarkMaterials() {
	for _, m := range r.Car.Metals() {
		if m.Doubt != "" {
			r.note(Warning, "%s: %s", m.Name, m.Doubt)
		}
	}
}

// remarkGeometry warns of a corner whose forces hang on millimetres.
func (r *Results) remarkGeometry() {
	for _, station := range r.Car.Stations() {
		r.remarkLevers(station.Title(), r.Corners[station.At].Statics)
	}
	for k, lc := range r.Cases {
		for i := range r.Corners {
			if c := &r.Corners[i]; c.Moved(k) != nil {
				r.remarkLevers(fmt.Sprintf("case %q, %s", lc.Name, cornerWords(i)), c.In(k))
			}
		}
	}
}

// remarkLevers warns of short lever arms in one place of a corner.
func (r *Results) remarkLevers(name string, s *loads.Statics) {
	if what, share, ok := s.ShortLever(); ok {
		r.note(Warning, "%s: the %s has a lever arm of only %.1f %% of its distance from the rocker's pivot: small errors of a point change the forces much", name, what, 100*share)
	}
	if s.Cond > loads.CondDoubt {
		r.note(Warning, "%s: the links hold the upright on short lever arms (condition number %.0f; a healthy corner has less than %d): small errors of a hardpoint change the forces much", name, s.Cond, loads.CondDoubt)
	}
}

// remarkStance says what is taken of a car whose wheels do not stand alike.
func (r *Results) remarkStance() {
	for axle, name := range AxleNames {
		if r.Car.rests(2*axle) != 0.5 {
			r.note(Remark, "%s axle: its contact points lie at unequal distances from the centreline; the CG is taken to lie on the centreline, and each axle to be in balance by itself: the left-hand wheel carries %.1f %% of it at rest", name, 100*r.Car.rests(2*axle))
		}
	}
}

// remarkCases says what the kinds of case leave out.
func (r *Results) remarkCases() {
	for n, c := range r.Cases {
		k := r.Car.Cases[c.Index]
		if k.Kind == WheelFactors && k.Basis == "" {
			r.note(Remark, "wheel factors without a basis are common practice with no published source: replace them with measured loads")
		}
		if k.Kind != Manoeuvre && k.Kind != SpringForces && k.Unsprung == nil {
			r.note(Remark, "cases from wheel factors and contact forces leave the weight and inertia of the unsprung mass out, which is on the safe side for loads that push the wheel up, unless they give unsprung_acceleration")
		}
		r.remarkTorque(n, k)
		if k.Kind == Manoeuvre && c.lifts() {
			r.note(Remark, "case %q: an inner wheel lifts; the other axle takes the rest of the roll couple", c.Name)
		}
	}
}

// remarkTorque warns of a torque about the spin axis that the case has and its wheel
// does not hold: it reaches no member.
func (r *Results) remarkTorque(n int, k Case) {
	c := r.Cases[n]
	for i, w := range c.Wheels {
		if !w.Released {
			continue
		}
		spin := r3.Unit(r.Corners[i].In(n).Corner.Spin)
		if m := r3.Dot(spin, w.Moment); math.Abs(m) > 1e-6*r3.Norm(w.Moment) && m != 0 {
			r.note(Warning, "case %q: the stated moment of %.0f N·m about the spin axis at %s reaches no member, for nothing on the upright holds a %s wheel", c.Name, m/1000, CornerNames[i], TorqueNames[w.State])
		}
		if k.Kind == ContactForces && k.Wheel == ByCase && w.Force.X != 0 {
			r.note(Warning, "case %q: it does not state wheel:, so wheels with a longitudinal force are taken to roll freely, and its torque reaches no member; a wheel that is braked or driven on its upright loads the members otherwise, often far more: write wheel: rolling, braked or driven", c.Name)
		}
		if k.Kind == Manoeuvre && k.Wheel == Rolling && w.Force.X != 0 {
			r.note(Warning, "case %q: its wheels are stated to roll freely, so the torque of their longitudinal forces reaches no member", c.Name)
		}
	}
}

// lifts tells whether a wheel carries nothing.
func (c LoadCase) lifts() bool {
	for _, w := range c.Wheels {
		if w.Force.Z == 0 {
			return true
		}
	}
	return false
}

// remarkFriction warns of each case that asks more of a tyre than it can give.
func (r *Results) remarkFriction() {
	limit := r.Car.Vehicle.TyreFriction
	if limit == 0 {
		return
	}
	for _, c := range r.Cases {
		most, at := 0.0, 0
		for i, w := range c.Wheels {
			if w.Force.Z <= 0 && (w.Force.X != 0 || w.Force.Y != 0) {
				r.note(Warning, "case %q asks a horizontal force of %s, which nothing presses on the road", c.Name, CornerNames[i])
			}
			if w.Friction > most { // false for NaN
				most, at = w.Friction, i
			}
		}
		if most > limit {
			r.note(Warning, "case %q needs a friction of %.2f at %s, above the tyre_friction of %g: the tyre cannot give it", c.Name, most, CornerNames[at], limit)
		}
	}
}

// Extremes returns the largest tension and compression of a member, N, with the
// cases in which they occur; NaN and -1 where there is none.
func (m Member) Extremes() (tension, compression float64, inTension, inCompression int) {
	tension, compression, inTension, inCompression = math.NaN(), math.NaN(), -1, -1
	for k, l := range m.Loads {
		if l.Axial > 0 && !(l.Axial <= tension) {
			tension, inTension = l.Axial, k
		}
		if l.Axial < 0 && !(l.Axial >= compression) {
			compression, inCompression = l.Axial, k
		}
	}
	return tension, compression, inTension, inCompression
}
