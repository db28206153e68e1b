package ends

import (
	"testing"

	"sixlink/materials"
)

// The same thread at the apex of a carrying leg, by hand: M = 3 N·m adds 3000/62.286 MPa,
// and 100 N square to the member, 25 mm before the section where the shank is held, add
// 2500/62.286 MPa. Without a length the shear bends nothing.
func TestThreadBentByHand(t *testing.T) {
	th := &Thread{Thread: thread(t, "M10"), Strength: strength(t, "10.9", 10)}
	s := Subject{End: End{Thread: th}, Load: Load{Axial: -5000, Bending: 3000, Shear: 100}, Factors: ones}
	if f := finding(t, s, "thread, proof"); !near(f.Demand, 5000/57.990+3000/62.286, 1e-4) {
		t.Errorf("with the moment of the member: %.3f MPa", f.Demand)
	}
	th.Shank = 25
	if f := finding(t, s, "thread, proof"); !near(f.Demand, 5000/57.990+5500/62.286, 1e-4) {
		t.Errorf("with its shear: %.3f MPa", f.Demand)
	}
	s.Load = Load{Bending: 3000}
	if f := finding(t, s, "thread, proof"); !near(f.Demand, 3000/62.286, 1e-4) {
		t.Errorf("with a moment alone: %.3f MPa", f.Demand)
	}
}

// A bond of 20 mm diameter and 30 mm length, A = 1884.956 mm², under 5 kN and 10 N·m, by
// hand: 5000/1884.956 = 2.6526 MPa and M/(π·10²·30) = 10 000/9424.78 = 1.0610 MPa.
func TestBondBentByHand(t *testing.T) {
	i := &Insert{Length: 30, Diameter: 20, Bond: 0.2, Modulus: 1000, Strength: 20, Stiffness: 9e6}
	s := Subject{End: End{Insert: i}, Stiffness: 5e6, Load: Load{Axial: 5000, Bending: 10e3}, Factors: ones}
	if f := finding(t, s, "bond, mean shear"); !near(f.Demand, 2.6526+1.0610, 1e-4) {
		t.Errorf("mean shear %.4f MPa", f.Demand)
	}
	if f := finding(t, s, "bond, peak shear"); !near(f.Demand, i.Peak(5e6)*(2.6526+1.0610), 1e-4) {
		t.Errorf("peak shear %.4f MPa", f.Demand)
	}
}

// End reactions of 50 N join the force of the end, whatever its direction, by hand.
func TestReactionsByHand(t *testing.T) {
	s := Subject{End: End{Bearing: &Bearing{Part: "x", Radial: 95e3, Source: "x"}}, Load: Load{Axial: -900, End: 1000, Reaction: 50}, Factors: ones}
	if f := finding(t, s, "bearing, radial"); f.Demand != 1050 {
		t.Errorf("demand %g N, want 1050", f.Demand)
	}
	if s.Shared = 1100; finding(t, s, "bearing, radial").Demand != 1100 {
		t.Errorf("the shared joint's force does not govern")
	}
}

// Bearing on yield of 7075-T6 bar, Fty 66 ksi, Fbry 86 ksi at e/D 1.5 and 92 at 2.0
// (MIL-HDBK-5J, Table 3.7.6.0, from memory): 1.5·66 = 99 ksi is above all of them. A lug
// of 10 mm hole and 5 mm thickness, by hand; one of a metal without such values bears
// 1.5·Sy (EN 1993-1-8:2005, Table 3.10). With a bearing strength both are judged.
func TestBearingOnYieldByHand(t *testing.T) {
	const ksi = 6.894757
	bar := metal(66*ksi, 77*ksi)
	bar.Sbry = [2]float64{materials.EdgeNear: 86 * ksi, materials.EdgeFar: 92 * ksi}
	for _, tt := range []struct{ edge, want float64 }{{15, 86}, {17.5, 89}, {25, 92}, {12, 68.8}} {
		l := &Lug{Width: 30, Thickness: 5, Hole: 10, Edge: tt.edge, Metal: bar, Bearing: 900}
		s := Subject{End: End{Lug: l}, Load: Load{Axial: 1}, Factors: ones}
		if f := finding(t, s, "lug, bearing yield"); !near(f.Capacity, tt.want*ksi*50, 1e-9) {
			t.Errorf("e = %g: %.1f N, want %.1f", tt.edge, f.Capacity, tt.want*ksi*50)
		}
		if f := finding(t, s, "lug, bearing ultimate"); f.Capacity != 900*50 {
			t.Errorf("bearing ultimate: %g N", f.Capacity)
		}
		l.Metal.Sbry = [2]float64{}
		if f := finding(t, s, "lug, bearing yield"); !near(f.Capacity, 99*ksi*50, 1e-9) {
			t.Errorf("without published values: %g N", f.Capacity)
		}
	}
	th := thread(t, "M10")
	p := &Plates{Outer: 4, Inner: 6, OuterMetal: bar, InnerMetal: bar}
	s := Subject{End: End{Bolt: &Bolt{Thread: th, Strength: strength(t, "10.9", 10), Planes: 2, Plates: p}}, Load: Load{Axial: 1}, Factors: ones}
	if f := finding(t, s, "bolt, bearing on the outer plates"); !near(f.Capacity, 2*86*ksi*40, 1e-9) {
		t.Errorf("outer plates: %g N", f.Capacity)
	}
	if f := finding(t, s, "bolt, bearing on the inner plate"); !near(f.Capacity, 86*ksi*60, 1e-9) {
		t.Errorf("inner plate: %g N", f.Capacity)
	}
}

// A bolt of 10 mm in a hole of 10.4 mm bears on 10 mm, by hand; without a bolt the hole
// speaks for the pin, and a bolt beyond the hole for no more than it.
func TestPinInTheLug(t *testing.T) {
	l := &Lug{Width: 30, Thickness: 5, Hole: 10.4, Edge: 20, Metal: metal(400, 480), Bearing: 900, ShearCoefficient: 0.9}
	for _, tt := range []struct {
		bolt string
		want float64
	}{{"M10", 10}, {"", 10.4}, {"M12", 10.4}} {
		s := Subject{End: End{Lug: l}, Load: Load{Axial: 1}, Factors: ones}
		if tt.bolt != "" {
			s.Bolt = &Bolt{Thread: thread(t, tt.bolt), Strength: strength(t, "10.9", 10), Planes: 2}
		}
		for name, stress := range map[string]float64{"lug, bearing yield": 600, "lug, bearing ultimate": 900, "lug, shear and bearing by coefficient": 810} {
			if f := finding(t, s, name); !near(f.Capacity, stress*tt.want*5, 1e-9) {
				t.Errorf("bolt %q, %s: %g N, want %g", tt.bolt, name, f.Capacity, stress*tt.want*5)
			}
		}
	}
}
