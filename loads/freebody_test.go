package loads

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// What acts on each free body sums to nothing about any point.
func TestFreeBodiesAreInEquilibrium(t *testing.T) {
	eachSide(t, func(t *rapid.T, s *Statics, w WheelLoad, f Forces, tol float64) {
		about := vector(t, 1000, "about")
		for _, body := range s.FreeBodies(w, f) {
			force, moment := body.Sum(about)
			b := balance{about, force, moment}
			b.check(t, body.Name, tol)
		}
		if got := s.audit(w, f); !(f.Residual <= 1e-9) || f.Residual != got {
			t.Fatalf("residual %.3g, limit 1e-9; the audit of the same forces finds %.3g", f.Residual, got)
		}
	})
}

// A sum of actions by hand: 3 N along z at (2, 0, 0) has the moment (0, −6, 0) about the
// origin, (0, −3, 0) about (1, 0, 0), and a couple has its moment about every point.
func TestSumOfActions(t *testing.T) {
	b := FreeBody{Actions: []Action{{At: vec(2, 0, 0), Force: vec(0, 0, 3)}, {At: vec(5, 5, 5), Couple: vec(7, 0, 0)}}}
	for _, tt := range []struct{ about, want r3.Vec }{{vec(0, 0, 0), vec(7, -6, 0)}, {vec(1, 0, 0), vec(7, -3, 0)}, {vec(2, 9, 0), vec(7-27, 0, 0)}} {
		force, moment := b.Sum(tt.about)
		if force != vec(0, 0, 3) || moment != tt.want {
			t.Errorf("about %v: force %v, moment %v; want (0, 0, 3), %v", tt.about, force, moment, tt.want)
		}
	}
}

func names[T any](list []T, name func(T) string) []string {
	var out []string
	for _, x := range list {
		out = append(out, name(x))
	}
	return out
}

// The bodies and what acts on them, for a reader of the working.
func TestFreeBodiesNameTheirActions(t *testing.T) {
	upright := hillclimb(Upright)
	upright.Rocker = nil
	carried := hillclimb(LowerWishbone)
	bar := hillclimb(UpperWishbone)
	bar.Rocker.Spring, bar.Rocker.AntiRoll = nil, nil
	const road, inertia, torque = "road on tyre", "inertia and weight of the unsprung mass", "torque about the spin axis, not held by the upright"
	for _, tt := range []struct {
		name     string
		corner   Corner
		released bool
		want     map[string][]string
	}{
		{"rod on the upright, no rocker", upright, false, map[string][]string{
			"upright":      {road, inertia, "upper_front_leg", "upper_rear_leg", "lower_front_leg", "lower_rear_leg", "track_rod", "rod"},
			"whole corner": {road, inertia, "upper_front_leg", "upper_rear_leg", "lower_front_leg", "lower_rear_leg", "track_rod", "rod"},
		}},
		{"rod on the lower wishbone", carried, true, map[string][]string{
			"upright":           {road, inertia, torque, "upper_front_leg", "upper_rear_leg", "track_rod", "lower_ball_joint"},
			"carrying wishbone": {"lower_ball_joint", "lower_front_leg", "lower_rear_leg", "rod"},
			"rocker":            {"rod", "spring", "anti_roll_link", "bearing 1", "bearing 2", "thrust"},
			"whole corner": {
				road, inertia, torque, "upper_front_leg", "upper_rear_leg", "lower_front_leg", "lower_rear_leg", "track_rod",
				"spring", "anti_roll_link", "bearing 1", "bearing 2", "thrust",
			},
		}},
		{"rod on the upper wishbone, torsion bar", bar, false, map[string][]string{
			"upright":           {road, inertia, "lower_front_leg", "lower_rear_leg", "track_rod", "upper_ball_joint"},
			"carrying wishbone": {"upper_ball_joint", "upper_front_leg", "upper_rear_leg", "rod"},
			"rocker":            {"rod", "bearing 1", "bearing 2", "thrust", "torsion bar"},
			"whole corner": {
				road, inertia, "upper_front_leg", "upper_rear_leg", "lower_front_leg", "lower_rear_leg", "track_rod",
				"bearing 1", "bearing 2", "thrust", "torsion bar",
			},
		}},
	} {
		s := mustStatics(t, tt.corner)
		w := WheelLoad{Force: vec(1, 2, 3000), Released: tt.released}
		f, _ := SolveAxle(s, s, w, w)
		bodies := s.FreeBodies(w, f)
		if len(bodies) != len(tt.want) {
			t.Errorf("%s: %d bodies, want %d", tt.name, len(bodies), len(tt.want))
		}
		for _, b := range bodies {
			if got := names(b.Actions, func(a Action) string { return a.Name }); !slices.Equal(got, tt.want[b.Name]) {
				t.Errorf("%s: on the %s act %q, want %q", tt.name, b.Name, got, tt.want[b.Name])
			}
		}
	}
}

// Where the chassis is loaded: at the pick-ups, and beyond the rocker where there is one.
func TestChassisPoints(t *testing.T) {
	legs := []string{"upper_front_leg", "upper_rear_leg", "lower_front_leg", "lower_rear_leg", "track_rod"}
	all := hillclimb(Upright)
	none, bar := all, all
	none.Rocker = nil
	bar.Rocker = &Rocker{Pivot: all.Rocker.Pivot, Axis: all.Rocker.Axis, BearingSpan: 40}
	pivot, spring, antiRoll, rod := all.Rocker.Pivot, all.Rocker.Spring.Far, all.Rocker.AntiRoll.Far, all.Links[Rod].Inner
	for _, tt := range []struct {
		name   string
		corner Corner
		want   []string
		at     []r3.Vec
	}{
		{"spring and anti-roll bar", all, []string{"rocker", "spring", "anti_roll_link"}, []r3.Vec{pivot, spring, antiRoll}},
		{"torsion bar alone", bar, []string{"rocker"}, []r3.Vec{pivot}},
		{"no rocker", none, []string{"rod"}, []r3.Vec{rod}},
	} {
		s := mustStatics(t, tt.corner)
		f, _ := SolveAxle(s, s, upwards, upwards)
		points := s.ChassisForces(f)
		if got, want := names(points, func(p PointForce) string { return p.Name }), slices.Concat(legs, tt.want); !slices.Equal(got, want) {
			t.Fatalf("%s: points %q, want %q", tt.name, got, want)
		}
		for i, at := range tt.at {
			if p := points[len(legs)+i]; p.At != at {
				t.Errorf("%s: %s at %v, want %v", tt.name, p.Name, p.At, at)
			}
		}
		for i := range legs {
			if points[i].At != tt.corner.Links[i].Inner || points[i].Force != f.Chassis[i] {
				t.Errorf("%s: %s at %v with %v N, want %v, %v N", tt.name, legs[i], points[i].At, points[i].Force, tt.corner.Links[i].Inner, f.Chassis[i])
			}
		}
	}
}

// forcesOf lists every force vector and torque that the audit of a corner is made of.
func forcesOf(c Corner, f *Forces) map[string]*float64 {
	out := map[string]*float64{}
	for i, name := range LinkNames {
		out["chassis force of "+name] = &f.Chassis[i].X
	}
	if c.Carrier != Upright {
		out["force at the ball joint"] = &f.Upright[c.Carrier.joint()].Y
	}
	out["bearing 1"], out["bearing 2"] = &f.Rocker.Bearings[0].Y, &f.Rocker.Bearings[1].Z
	out["thrust"] = &f.Rocker.Thrust
	if c.Rocker.Spring != nil {
		out["spring"] = &f.Rocker.SpringOn.Z
	} else {
		out["torsion bar"] = &f.Rocker.TorsionBar
	}
	out["anti-roll link"] = &f.Rocker.AntiRollOn.X
	return out
}

// The audit sees a fault of any force that it sums, however late in the corner, and a
// force that is not a number.
func TestAuditSeesEveryForce(t *testing.T) {
	everyCarrier(t, func(t *testing.T, c Corner) {
		for _, spring := range []*Line{c.Rocker.Spring, nil} {
			r := *c.Rocker
			r.Spring = spring
			c.Rocker = &r
			s := mustStatics(t, c)
			w := WheelLoad{Force: vec(-500, 900, 3000)}
			f, _ := SolveAxle(s, s, w, w)
			if sound := s.audit(w, f); !(sound <= 1e-12) {
				t.Errorf("residual %.3g of a sound result, want 1e-12 at most", sound)
			}
			for name, x := range forcesOf(c, &f) {
				sound := *x
				*x += 1e-3*w.size() + 1e-3*math.Abs(sound)
				if got := s.audit(w, f); !(got >= 1e-5) {
					t.Errorf("%s 0.1 %% off: residual %.3g, want 1e-5 at least", name, got)
				}
				*x = math.NaN()
				if got := s.audit(w, f); got <= 1e-9 {
					t.Errorf("%s is NaN: residual %.3g passes, want a failure", name, got)
				}
				*x = sound
			}
		}
	})
}

// The residual is relative to the load: it is what is left of force, or of moment on the
// longest lever, by the sum of force and inertia. A wheel in the air has none.
func TestResidualIsRelative(t *testing.T) {
	c := hillclimb(Upright)
	c.Rocker = nil
	s := mustStatics(t, c)
	w := WheelLoad{Force: vec(0, 0, 3000), Inertia: vec(0, 0, -1000)}
	f := s.Solve(w)
	f.Chassis[TrackRod].Y += 4 // of 4000 N; its moment about the contact point is on a shorter lever than the longest
	if got := s.audit(w, f); !near(got, 1e-3, 1e-9) {
		t.Errorf("residual %.10g, want 0.001", got)
	}
	f = s.Solve(w)
	aimed := r3.Unit(r3.Sub(c.Contact, c.Links[TrackRod].Inner)) // at the point about which moments are taken
	f.Chassis[TrackRod] = r3.Add(f.Chassis[TrackRod], r3.Scale(4, aimed))
	if got := s.audit(w, f); !near(got, 1e-3, 1e-9) {
		t.Errorf("force without moment: residual %.10g, want 0.001", got)
	}
	longest := 0.0
	for _, l := range c.Links {
		longest = math.Max(longest, r3.Norm(r3.Sub(l.Inner, c.Contact)))
	}
	w = WheelLoad{Moment: vec(0, 0, 4000*longest)}
	f = s.Solve(w)
	f.Chassis[TrackRod].Y += 4
	if got := s.audit(w, f); !near(got, 1e-3, 1e-9) {
		t.Errorf("under a couple: residual %.10g, want 0.001", got)
	}
	if f, _ := SolveAxle(s, s, WheelLoad{}, WheelLoad{}); f.Residual != 0 {
		t.Errorf("residual %.3g without a load, want 0", f.Residual)
	}
}

// A wheel that carries next to nothing has the rocker forces of the other side through
// the anti-roll bar: its residual is no larger for that.
func TestResidualOfALightWheel(t *testing.T) {
	left := mustStatics(t, hillclimb(Upright))
	right := mustStatics(t, left.Corner.Mirrored())
	for _, up := range []float64{5000, 1, 1e-3, 1e-6, 1e-9, 0} {
		_, f := SolveAxle(left, right, WheelLoad{Force: vec(0, 0, 5000)}, WheelLoad{Force: vec(0, 0, up)})
		if !(f.Residual <= 1e-9) {
			t.Errorf("%g N on the wheel: residual %.3g, limit 1e-9", up, f.Residual)
		}
	}
}
