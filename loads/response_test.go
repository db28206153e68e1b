package loads

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// sameForces holds a response to what Statics finds, relative to the largest member force.
func sameForces(t *rapid.T, axial, bending [NumLinks]float64, want Forces, arm float64) {
	size := 0.0
	for i := range want.Axial {
		size = math.Max(size, math.Max(math.Abs(want.Axial[i]), want.Bending[i]/arm))
	}
	for i, name := range LinkNames {
		if !within(axial[i], want.Axial[i], 1e-11*size) || !within(bending[i], want.Bending[i], 1e-11*size*arm) {
			t.Errorf("%s: %.17g N, %.17g N·mm; Statics %.17g N, %.17g N·mm", name, axial[i], bending[i], want.Axial[i], want.Bending[i])
		}
	}
}

func within(got, want, tol float64) bool { return math.Abs(got-want) <= tol }

// The closed forms answer as the equations of Statics do, on both sides of the car.
func TestResponseIsThatOfStatics(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		left := drawStatics(t)
		right, err := NewStatics(left.Corner.Mirrored())
		if err != nil {
			t.Fatal(err)
		}
		var r Response
		if fault := r.Set(&left.Corner); fault != Sound {
			t.Fatalf("fault %d", fault)
		}
		if !(left.Cond <= r.Bound*(1+1e-12)) || !(r.Bound <= 60*left.Cond) {
			t.Errorf("condition number %g, bound %g", left.Cond, r.Bound)
		}
		w := drawLoad(t, "load")
		var axial, bending [NumLinks]float64
		r.Solve(&w, &axial, &bending)
		sameForces(t, axial, bending, left.Solve(w), r.frame.length)
		mirrored := w
		mirrored.Mirror()
		r.Solve(&mirrored, &axial, &bending)
		sameForces(t, axial, bending, right.Solve(w), r.frame.length)
	})
}

// What one refuses the other refuses: corners on the way to a mechanism, and rockers on
// the way to a rod through the pivot.
func TestResponseRefusesAlike(t *testing.T) {
	seen := map[Fault]int{}
	rapid.Check(t, func(t *rapid.T) {
		c := drawCorner(t)
		joint := c.Links[LowerFrontLeg].Outer
		if c.Carrier == LowerWishbone {
			joint = c.Links[UpperFrontLeg].Outer
		}
		share := math.Pow(10, -rapid.Float64Range(0, 7).Draw(t, "−lg share"))
		switch rapid.IntRange(0, 2).Draw(t, "what") {
		case 0: // the track rod runs ever nearer to a ball joint
			l := &c.Links[TrackRod]
			l.Outer = r3.Add(joint, r3.Scale(share, r3.Sub(l.Outer, joint)))
			l.Inner = r3.Add(joint, r3.Scale(2, r3.Sub(c.Links[LowerFrontLeg].Inner, joint)))
		case 1: // the rod runs ever nearer to the pick-ups of the lower wishbone
			l := &c.Links[Rod]
			inner := r3.Scale(0.5, r3.Add(c.Links[LowerFrontLeg].Inner, c.Links[LowerRearLeg].Inner))
			l.Inner = r3.Add(inner, r3.Scale(share, r3.Sub(l.Inner, inner)))
		default:
			if c.Rocker != nil { // the rod runs ever nearer to the pivot
				l := &c.Links[Rod]
				c.Rocker.Pivot = r3.Add(l.Inner, r3.Scale(0.3, r3.Sub(l.Inner, l.Outer)))
				c.Rocker.Pivot.Z += 100 * share
			}
		}
		var r Response
		fault := r.Set(&c)
		_, err := NewStatics(c)
		want := Sound
		switch err.(type) {
		case *Mechanism:
			want = Free
		case *RockerFault:
			want = Unlevered
		}
		seen[fault]++
		if fault != want {
			t.Fatalf("fault %d, Statics: %v", fault, err)
		}
	})
	for _, f := range []Fault{Sound, Free, Unlevered} {
		if seen[f] == 0 {
			t.Errorf("fault %d never came up", f)
		}
	}
}

func BenchmarkResponse(b *testing.B) {
	for carrier, name := range CarrierNames {
		c := hillclimb(Carrier(carrier))
		w := WheelLoad{Force: vec(-1500, 900, 4000)}
		var r Response
		b.Run("Set/"+name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if r.Set(&c) != Sound {
					b.Fatal()
				}
			}
		})
		b.Run("Solve/"+name, func(b *testing.B) {
			b.ReportAllocs()
			var axial, bending [NumLinks]float64
			for b.Loop() {
				r.Solve(&w, &axial, &bending)
			}
		})
	}
}
