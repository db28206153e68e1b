package motion

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"sixlink/loads"
)

// statics prepares the corner of a position; false: it is on short lever arms there.
func statics(t rapid.TB, p *Position) (*loads.Statics, bool) {
	t.Helper()
	s, err := loads.NewStatics(p.Corner)
	var mechanism *loads.Mechanism
	var rocker *loads.RockerFault
	switch {
	case errors.As(err, &mechanism), errors.As(err, &rocker):
		return nil, false
	case err != nil:
		t.Fatal(err)
	}
	return s, s.Cond <= loads.CondDoubt
}

// upwards is a load of one newton up at the contact point of a rolling wheel.
var upwards = loads.WheelLoad{Force: r3.Vec{Z: 1}, Released: true}

// checkWork holds the motion to the statics of the position by virtual work: the rod's
// force and the travel ratio under a unit load, the rod and the rack under any load.
func checkWork(t rapid.TB, p *Position, load loads.WheelLoad) bool {
	t.Helper()
	s, ok := statics(t, p)
	if !ok {
		return false
	}
	off := func(what string, got, want float64) {
		if !near(got, want, 1e-6*math.Max(1, math.Abs(want))) {
			t.Fatalf("travel %g, rack %g: %s %.10g, by the statics %.10g", p.Travel, p.Rack, what, got, want)
		}
	}
	off("rod force", p.RodForce(), s.Solve(upwards).Axial[loads.Rod])
	if want, ok := s.Travel(); ok {
		got := p.Ratio()
		if got.Bar { // the statics count the torque of a risen wheel positive
			got.Force = math.Abs(got.Force)
		}
		off("force of spring or bar", got.Force, want.Force)
	}

	// all forces on the upright, and what they do as it moves with the rod's inner joint held
	f := s.Solve(load)
	c := &p.Corner
	power := func(r *Rates) float64 {
		moment := r3.Add(load.Moment, r3.Cross(r3.Sub(c.Contact, c.Centre), load.Force))
		if load.Released {
			spin := r3.Unit(c.Spin)
			moment = r3.Sub(moment, r3.Scale(r3.Dot(spin, moment), spin))
		}
		return r3.Dot(r3.Add(load.Force, load.Inertia), r.Centre) + r3.Dot(moment, r.Turn)
	}
	size := r3.Norm(load.Force) + r3.Norm(load.Inertia) + r3.Norm(load.Moment)/300
	off("rod force under any load", power(&p.PerTravel)/p.PerTravel.Rod/size, f.Axial[loads.Rod]/size)
	rack := -f.Axial[loads.TrackRod] * c.Links[loads.TrackRod].Direction().Y // of the rack on the track rod
	off("force on the rack", (f.Axial[loads.Rod]*p.PerRack.Rod-power(&p.PerRack))/size, -rack/size)
	return true
}

func drawLoad(t *rapid.T) loads.WheelLoad {
	return loads.WheelLoad{
		Force: vector(t, 8000, "force"), Moment: vector(t, 4e5, "moment"), Inertia: vector(t, 1500, "inertia"),
		Released: rapid.Bool().Draw(t, "released"),
	}
}

// Statics and motion of each position are two sides of one equation. A law: virtual work.
func TestVirtualWork(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := mustNew(t, drawLinks(t))
		travel, rack := drawPlace(t, l)
		p := mustAt(t, l, travel, rack)
		if !checkWork(t, &p, drawLoad(t)) {
			t.Skip("on short lever arms")
		}
	})
}

// The same at every position of the examples, wheel on lock or straight.
func TestVirtualWorkOverTravel(t *testing.T) {
	everyCarrier(t, func(t *testing.T, c loads.Corner) {
		for _, c := range []loads.Corner{c, c.Mirrored()} {
			l := mustNew(t, c)
			positions, err := l.Sweep(grid(-40, 40, 41), []float64{-18, 0, 18})
			if err != nil {
				t.Fatal(err)
			}
			done := 0
			for i := range positions {
				if checkWork(t, &positions[i], loads.WheelLoad{Force: vec(-1500, 900, 4000), Moment: vec(0, 0, 6e4)}) {
					done++
				}
			}
			if done != len(positions) {
				t.Errorf("%d of %d positions could be compared", done, len(positions))
			}
		}
	})
}
