package duty_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/cases/duty"
	"sixlink/loads"
)

// Second origin: in every load case of a car whose cases move wheels and racks, a block has
// the axial force of every link that the full run has where the wheels stand, and of every
// leg that bends the shear of the full run at its inner joint, direction by direction: so
// that the stress of every fibre is that of the full run. The tolerance is 1e-9 of the
// largest force of the car.
func TestBlocksStandWhereTheirCasesStand(t *testing.T) {
	for _, name := range []string{"hillclimb-pushrod-travel.yaml", "hillclimb-pushrod-duty.yaml", "hillclimb-pullrod-complete.yaml"} {
		_, r := readCar(t, "../../examples/"+name)
		moved, bent := 0, 0
		for k := range r.Cases {
			got := duty.InCase(&r, k)
			for c := range got {
				place, f := r.Corners[c].In(k).Corner, r.Corners[c].Forces[k]
				if r.Corners[c].Moved(k) != nil {
					moved++
				}
				size := 0.0
				for _, x := range f.Axial {
					size = math.Max(size, math.Abs(x))
				}
				front, rear, carried := place.Carrier.Legs()
				for link, x := range got[c] {
					want := [3]float64{f.Axial[link]}
					if carried && (link == front || link == rear) {
						bent++
						normal := r3.Unit(r3.Cross(place.Links[front].Direction(), place.Links[rear].Direction()))
						shear := r3.Scale(-place.Links[link].Length(), f.Chassis[link]) // on the member
						want[1], want[2] = r3.Dot(shear, normal), r3.Dot(shear, r3.Cross(place.Links[link].Direction(), normal))
					}
					for j, w := range want {
						unit := [3]float64{1, place.Links[link].Length(), place.Links[link].Length()}[j]
						if !(math.Abs(x[j]-w) <= 1e-9*size*unit) {
							t.Errorf("%s, %s, %s of corner %d, part %d: %g, want %g", name, r.Cases[k].Name, loads.LinkNames[link], c, j, x[j], w)
						}
					}
				}
			}
		}
		if name == "hillclimb-pushrod-travel.yaml" && (moved < 4 || bent < 8) {
			t.Errorf("%s: %d corners moved, %d legs bent", name, moved, bent)
		}
	}
}

// Law: a block of two cases is a cycle between the two stresses that sixlink check finds
// where the wheels stand, and the travel of a case counts.
func TestTravelOfACaseCounts(t *testing.T) {
	f, r := readCar(t, "../../examples/hillclimb-pushrod-travel.yaml")
	drawn := f.Car
	drawn.Cases = append([]cases.Case(nil), f.Car.Cases...)
	moved := -1
	for k, c := range r.Cases {
		if c.Place.Moved() && f.Car.Cases[c.Index].Kind != cases.SpringForces {
			moved = k
		}
	}
	if moved < 0 {
		t.Fatal("no case moves a wheel")
	}
	for i := range drawn.Cases {
		drawn.Cases[i].Place = cases.Placing{}
	}
	flat, err := cases.Run(drawn)
	if err != nil {
		t.Fatal(err)
	}
	d := plain(r.Cases[0].Name, r.Cases[moved].Name)
	there, here := find(t, d, &r, duty.Run{}), find(t, d, &flat, duty.Run{})
	differ := 0
	for i, x := range there.Rows {
		a, b := r.Corners[x.Corner].Forces[0], r.Corners[x.Corner].Forces[moved]
		if b.Bending[x.Link] == 0 {
			want := math.Abs(b.Axial[x.Link]-a.Axial[x.Link]) / r.Car.Side(x.Corner).Parts[x.Link].Strut.Area()
			if !near(x.Widest, want, 1e-9) {
				t.Errorf("%s of corner %d: range %g MPa, want %g", loads.LinkNames[x.Link], x.Corner, x.Widest, want)
			}
		}
		if !near(x.Widest, here.Rows[i].Widest, 0.02) {
			differ++
		}
	}
	if differ < 4 {
		t.Errorf("only %d details differ from those of the position drawn", differ)
	}
}
