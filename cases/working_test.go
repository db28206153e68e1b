package cases_test

import (
	"testing"

	"sixlink/cases"
	"sixlink/members/check"
	"sixlink/members/check/equation"
)

// Every equation between the case and the load on the upright yields the number that
// stands beside it, for every kind of case and every corner.
func TestContactWorkingFollows(t *testing.T) {
	car := sprung(t)
	car.Vehicle.Drive.FrontShare = 0.2
	loose, scaled := byDamper(cases.Placing{Given: true, Travel: [4]float64{2: -24, 3: -24}}, 0, 0), byDamper(cases.Placing{Given: true, Travel: [4]float64{2: 24, 3: 14}, Rack: [2]float64{9, 0}}, 1, 0.5)
	loose.Name, scaled.Name = "loose", "scaled"
	car.Axles[cases.Rear].Spring.Preload = 100
	scaled.Scale(1.25)
	car.Cases = append(car.Cases, loose, scaled, byDamper(cases.Placing{}, 0, 0.4),
		cases.Case{Name: "one side", Kind: cases.WheelFactors, Factors: [3]float64{-1, 0.5, 2}, OneSide: true, Wheel: cases.Braked},
		cases.Case{Name: "stated", Kind: cases.ContactForces, Contact: [cases.NumCorners]*cases.ContactForce{cases.RearRight: {}}},
		cases.Case{Name: "three wheels", Kind: cases.Manoeuvre, Acceleration: [2]float64{-0.2, 2.48}, Speed: 5, BothWays: true},
	)
	car.Cases[len(car.Cases)-2].Contact[cases.RearRight].Force.Z = 1234
	r, err := cases.Run(car)
	if err != nil {
		t.Fatal(err)
	}
	lifted := false
	for k, lc := range r.Cases {
		for corner, w := range lc.Wheels {
			lifted = lifted || w.Force.Z == 0 && lc.Name != "Droop stop"
			scope := map[string]float64{}
			steps := r.ContactWorking(k, corner)
			for _, fault := range follow(steps, scope) {
				t.Errorf("%s, %s: %v", lc.Name, cases.CornerNames[corner], fault)
			}
			for symbol, want := range map[string]float64{"F_x": w.Force.X, "F_y": w.Force.Y, "F_z": w.Force.Z} {
				if got, ok := scope[symbol]; !ok || got != want {
					t.Errorf("%s, %s: the working ends in %s = %g, the results have %g", lc.Name, cases.CornerNames[corner], symbol, got, want)
				}
			}
			upright := r.UprightWorking(k, corner)
			delete(scope, "g")
			for _, fault := range follow(upright, scope) {
				t.Errorf("%s, %s: %v", lc.Name, cases.CornerNames[corner], fault)
			}
			if at := r.Corners[corner].In(k).Corner; scope["r_z"] != at.Contact.Z-at.Centre.Z || scope["r_y"] != at.Contact.Y-at.Centre.Y {
				t.Errorf("%s, %s: the working has the contact point %g, %g from the wheel centre, and stands otherwise", lc.Name, cases.CornerNames[corner], scope["r_y"], scope["r_z"])
			}
		}
	}
	if !lifted {
		t.Error("no wheel lifts: the working of a lifted wheel was not followed")
	}
}

// follow passes over what a line of three says once for all.
func follow(steps []check.Step, scope map[string]float64) []error {
	for i := range steps {
		if steps[i].What == "" {
			steps[i].What = "the line above"
		}
	}
	return equation.Follow(steps, scope, 1e-9)
}
