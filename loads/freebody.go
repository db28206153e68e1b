package loads

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// A FreeBody is a body cut free, with everything that acts on it. In equilibrium
// the sum of its actions is zero about every point.
type FreeBody struct {
	Name    string
	Actions []Action
}

// An Action is a force on a body at a point, and a couple.
type Action struct {
	Name   string
	At     r3.Vec // mm
	Force  r3.Vec // N
	Couple r3.Vec // N·mm
}

// Moment returns the moment of the action about a point, N·mm.
func (a Action) Moment(about r3.Vec) r3.Vec {
	return r3.Add(a.Couple, r3.Cross(r3.Sub(a.At, about), a.Force))
}

// Sum returns the resultant of all actions and their moment about a point.
func (b FreeBody) Sum(about r3.Vec) (force, moment r3.Vec) {
	for _, a := range b.Actions {
		force = r3.Add(force, a.Force)
		moment = r3.Add(moment, a.Moment(about))
	}
	return force, moment
}

// FreeBodies returns the bodies of the corner under a load, from the forces as they
// are printed: the upright, a carrying wishbone, the rocker, and the corner as a whole.
func (s *Statics) FreeBodies(w WheelLoad, f Forces) []FreeBody {
	load := s.outside(w)
	bodies := []FreeBody{{"upright", append(load, s.onUprightJoints(f)...)}}
	if _, _, carried := s.Corner.Carrier.Legs(); carried {
		bodies = append(bodies, FreeBody{"carrying wishbone", s.onWishbone(f)})
	}
	whole := append([]Action{}, load...)
	for _, p := range s.ChassisForces(f) {
		if p.Name != rockerPoint {
			whole = append(whole, Action{Name: p.Name, At: p.At, Force: r3.Scale(-1, p.Force)})
		}
	}
	whole = append(whole, s.fromThird(f)...)
	if f.Rocker != nil {
		bodies = append(bodies, FreeBody{"rocker", append(s.onRocker(f), s.fromPivot(f)...)})
		whole = append(whole, s.fromPivot(f)...)
	}
	return append(bodies, FreeBody{"whole corner", whole})
}

// outside are the actions of the road and the wheel on the upright.
func (s *Statics) outside(w WheelLoad) []Action {
	out := []Action{
		{"road on tyre", s.Corner.Contact, w.Force, w.Moment},
		{Name: "inertia and weight of the unsprung mass", At: s.Corner.Centre, Force: w.Inertia},
	}
	if w.Released {
		moment := out[0].Moment(s.Corner.Centre)
		out = append(out, Action{Name: "torque about the spin axis, not held by the upright", At: s.Corner.Centre, Couple: r3.Scale(-1, s.released(moment))})
	}
	return out
}

// onUprightJoints are the actions of the links on the upright.
func (s *Statics) onUprightJoints(f Forces) []Action {
	front, rear, carried := s.Corner.Carrier.Legs()
	var out []Action
	for i, l := range s.Corner.Links {
		if !carried || (i != front && i != rear && i != Rod) {
			out = append(out, Action{Name: LinkNames[i], At: l.Outer, Force: r3.Scale(-1, f.Chassis[i])})
		}
	}
	if carried {
		j := s.Corner.Carrier.joint()
		out = append(out, Action{Name: JointNames[j], At: s.Corner.Links[front].Outer, Force: f.Upright[j]})
	}
	return out
}

// onWishbone are the actions on a wishbone that carries the rod.
func (s *Statics) onWishbone(f Forces) []Action {
	front, rear, _ := s.Corner.Carrier.Legs()
	links, j := s.Corner.Links, s.Corner.Carrier.joint()
	return []Action{
		{Name: JointNames[j], At: links[front].Outer, Force: r3.Scale(-1, f.Upright[j])},
		{Name: LinkNames[front], At: links[front].Inner, Force: r3.Scale(-1, f.Chassis[front])},
		{Name: LinkNames[rear], At: links[rear].Inner, Force: r3.Scale(-1, f.Chassis[rear])},
		{Name: LinkNames[Rod], At: links[Rod].Outer, Force: r3.Scale(-1, f.Chassis[Rod])},
	}
}

// onRocker are the actions of the rod, the springs and the anti-roll link on the rocker.
func (s *Statics) onRocker(f Forces) []Action {
	rk, rf := s.Corner.Rocker, f.Rocker
	out := []Action{{Name: LinkNames[Rod], At: s.Corner.Links[Rod].Inner, Force: f.Chassis[Rod]}}
	if rk.Spring != nil {
		out = append(out, Action{Name: "spring", At: rk.Spring.Rocker, Force: r3.Scale(-1, rf.SpringOn)})
	}
	if rk.AntiRoll != nil {
		out = append(out, Action{Name: "anti_roll_link", At: rk.AntiRoll.Rocker, Force: r3.Scale(-1, rf.AntiRollOn)})
	}
	return append(out, s.fromThird(f)...)
}

// fromThird is the action of the third spring on the rocker, if there is one.
func (s *Statics) fromThird(f Forces) []Action {
	if f.Rocker == nil || s.Corner.Rocker.Third == nil {
		return nil
	}
	return []Action{{Name: "third_spring", At: s.Corner.Rocker.Third.Rocker, Force: r3.Scale(-1, f.Rocker.ThirdOn)}}
}

// fromPivot are the actions of the chassis on the rocker: bearings, thrust and the
// couple of a torsion bar.
func (s *Statics) fromPivot(f Forces) []Action {
	rk, rf, axis := s.Corner.Rocker, f.Rocker, s.rocker.axis
	half := r3.Scale(rk.BearingSpan/2, axis)
	out := []Action{
		{Name: "bearing 1", At: r3.Add(rk.Pivot, half), Force: rf.Bearings[0]},
		{Name: "bearing 2", At: r3.Sub(rk.Pivot, half), Force: rf.Bearings[1]},
		{Name: "thrust", At: rk.Pivot, Force: r3.Scale(rf.Thrust, axis)},
	}
	if rk.Spring == nil {
		out = append(out, Action{Name: "torsion bar", At: rk.Pivot, Couple: r3.Scale(-s.rocker.sense*rf.TorsionBar, axis)})
	}
	return out
}

// audit sums the actions on every free body again, about the contact point, which
// no equation of the solution used, and returns the largest residual of force or
// moment, relative to the load; NaN where a force is NaN. The load is that of the
// road and the wheel, and that of the anti-roll link and the third spring, which comes
// from the other side.
func (s *Statics) audit(w WheelLoad, f Forces) float64 {
	about := s.Corner.Contact
	arm := r3.Norm(r3.Sub(s.Corner.Centre, about))
	for _, l := range s.Corner.Links {
		arm = math.Max(arm, r3.Norm(r3.Sub(l.Inner, about)))
	}
	size := r3.Norm(w.Force) + r3.Norm(w.Inertia) + r3.Norm(w.Moment)/arm
	if f.Rocker != nil {
		size += r3.Norm(f.Rocker.AntiRollOn) + r3.Norm(f.Rocker.ThirdOn)
	}
	if size == 0 {
		return 0
	}
	worst := 0.0
	for _, b := range s.FreeBodies(w, f) {
		force, moment := b.Sum(about)
		worst = math.Max(worst, math.Max(r3.Norm(force)/size, r3.Norm(moment)/(size*arm))) // Max keeps NaN
	}
	return worst
}
