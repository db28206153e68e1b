package reports_test

import (
	"bytes"
	"encoding/json"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/reports"
)

// stiffCar is the car of the second origin with pick-ups that give way at its front axle,
// and limits of the toe by braking.
func stiffCar(t *testing.T, most float64) reports.Report {
	t.Helper()
	car := testCar(t, "third-spring").Car
	given := &cases.Stiffness{Limits: []cases.GiveLimit{{Load: cases.BrakingForce, Angle: cases.Toe, Most: most}}}
	for i := range given.PickUps[:5] {
		given.PickUps[i] = r3.Vec{X: 15000, Y: 15000, Z: 15000}
	}
	car.Axles[cases.Front].Stiffness = given
	r, err := cases.Run(car)
	if err != nil {
		t.Fatal(err)
	}
	return reports.Report{Version: "test", File: "car.yaml", SHA256: strings.Repeat("0", 64), Results: r}
}

// A limit that is exceeded fails the car and says so; one that is held does not. The table
// has what the run found, its parts add up to the whole, and a car without the block has
// neither table nor JSON of it.
func TestStiffnessIsShown(t *testing.T) {
	bare, held, exceeded := testCar(t, "third-spring"), stiffCar(t, 99), stiffCar(t, 1e-6)
	if exceeded.Pass || held.Pass != bare.Pass {
		t.Errorf("pass: %v with a limit of 1e-6 °/kN, %v of 99 °/kN, %v without", exceeded.Pass, held.Pass, bare.Pass)
	}
	out, err := exceeded.Text()
	if err != nil || !strings.Contains(strings.Join(strings.Fields(string(out)), " "), "2 of the 2 limits of stiffness are exceeded") {
		t.Errorf("the text does not tell of the limit: %v\n%s", err, out)
	}
	for _, x := range []struct {
		r    reports.Report
		want bool
	}{{bare, false}, {held, true}} {
		out, err := x.r.JSON()
		if err != nil || bytes.Contains(out, []byte(`"stiffness"`)) != x.want {
			t.Errorf("stiffness in the JSON: want %v, %v", x.want, err)
		}
		found := false
		for _, table := range x.r.Tables() {
			if table.Name == "Stiffness" {
				found = true
				holdSums(t, table)
			}
		}
		if found != x.want {
			t.Errorf("table of the stiffness: %v, want %v", found, x.want)
		}
	}
	holdJSON(t, held)
}

// holdSums holds each line of all parts to the sum of the lines below it.
func holdSums(t *testing.T, table reports.Table) {
	t.Helper()
	for i := 0; i < len(table.Rows); {
		whole, sum := table.Rows[i], make([]float64, len(table.Columns))
		for i++; i < len(table.Rows) && table.Rows[i][3] != whole[3]; i++ {
			for j := 4; j < len(sum); j++ {
				sum[j] += table.Rows[i][j].(float64)
			}
		}
		for j := 4; j < len(sum); j++ {
			if d := sum[j] - whole[j].(float64); !(math.Abs(d) <= 1e-12) {
				t.Errorf("%v %v, column %d: the parts sum to %g, all to %g", whole[0], whole[1], j, sum[j], whole[j])
			}
		}
	}
}

func holdJSON(t *testing.T, r reports.Report) {
	t.Helper()
	out, err := r.JSON()
	if err != nil {
		t.Fatal(err)
	}
	var got struct {
		Stiffness struct {
			Gives  []struct{ Whole struct{ Toe float64 } }
			Limits []struct{ Change, Limit float64 }
		}
	}
	if err := json.Unmarshal(out, &got); err != nil {
		t.Fatal(err)
	}
	want := r.Corners[cases.FrontLeft].Stiff.Gives[0].Whole.Toe * 180 / math.Pi
	s := got.Stiffness
	if len(s.Gives) != 2*len(cases.GiveLoads) || len(s.Limits) != 2 || s.Gives[0].Whole.Toe != want || s.Limits[0].Change != want || s.Limits[0].Limit != 99 {
		t.Errorf("%d changes, %d limits, toe %g °/kN, want %g", len(s.Gives), len(s.Limits), s.Gives[0].Whole.Toe, want)
	}
	if !(want < 0) {
		t.Errorf("toe by braking %g °, want toe-out: the contact point lies outboard of the steering axis, and all that gives is elastic", want)
	}
}
