package reports_test

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"sixlink/loads"
)

type partsOf struct {
	Members []struct {
		Corner, Member, Part, Certificate, Section, Material, Notes string
		Length, Mass                                                float64
	}
	Corners []struct {
		Corner string
		Mass   float64
	}
	Mass float64
}

// The parts list says what the car file says of each member; the mass of a tube is that
// of π/4·(D² − d²)·L·ρ, and the sums are sums.
func TestParts(t *testing.T) {
	r := report(t, "track_rod:       {tube: [14, 1.5], material: E355+N}", "track_rod:       {tube: [14, 1.5], material: E355+N, part: HC-7, certificate: heat 4711, notes: spare}")
	data, err := r.JSON()
	if err != nil {
		t.Fatal(err)
	}
	var got struct {
		Parts partsOf
		Notes []struct{ Text string }
	}
	if err := json.Unmarshal(data, &got); err != nil {
		t.Fatal(err)
	}
	p := got.Parts.Members[loads.TrackRod]
	if p.Corner != "front_left" || p.Member != "track_rod" || p.Part != "HC-7" || p.Certificate != "heat 4711" || p.Section != "14 × 1.5" || p.Material != "E355+N" || p.Notes != "spare" {
		t.Errorf("track rod %+v", p)
	}
	length := math.Sqrt(7*7 + 440*440 + 19*19) // [95, 672, 205] to [88, 232, 186], as in the example
	mass := math.Pi / 4 * (14*14 - 11*11) * length * 7850e-9
	if !(math.Abs(p.Length-length) <= 1e-9) || !(math.Abs(p.Mass-mass) <= 1e-12) {
		t.Errorf("length %g mm, mass %g kg, want %g, %g", p.Length, p.Mass, length, mass)
	}
	corners, all := map[string]float64{}, 0.0
	for _, m := range got.Parts.Members {
		corners[m.Corner] += m.Mass
		all += m.Mass
	}
	if len(got.Parts.Members) != 24 || len(got.Parts.Corners) != 4 || !(math.Abs(got.Parts.Mass-all) <= 1e-12) {
		t.Errorf("%d members, %d corners, %g kg; want 24, 4, %g", len(got.Parts.Members), len(got.Parts.Corners), got.Parts.Mass, all)
	}
	for _, c := range got.Parts.Corners {
		if !(math.Abs(c.Mass-corners[c.Corner]) <= 1e-12) {
			t.Errorf("%s: %g kg, want %g", c.Corner, c.Mass, corners[c.Corner])
		}
	}
	const want = "without a part number: front upper_front_leg, front upper_rear_leg, front lower_front_leg, front lower_rear_leg, front rod, rear upper_front_leg"
	if !strings.Contains(string(data), want) {
		t.Errorf("no note %q", want)
	}
}

// Nobody is told of part numbers who uses none.
func TestNoPartNumbersNoNote(t *testing.T) {
	if got := text(t, report(t)); strings.Contains(got, "part number") {
		t.Error("a note on part numbers, and the file has none")
	}
}

// The sheet has a line for each member, then the sums, as the JSON has them.
func TestPartsSheet(t *testing.T) {
	r := report(t)
	rows, err := workbook(t, r).GetRows("Parts", excelize.Options{RawCellValue: true})
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != 4+24+4+1 {
		t.Fatalf("%d rows, want 33", len(rows))
	}
	last := rows[len(rows)-1]
	if mass, err := strconv.ParseFloat(last[7], 64); err != nil || !(math.Abs(mass-r.MembersMass()) <= 1e-12) || last[0] != "all four" {
		t.Errorf("last row %q (%v), want %g kg", last, err, r.MembersMass())
	}
	if got := rows[4]; got[0] != "front left" || got[1] != "upper front leg" || got[4] != "16 × 1.5" {
		t.Errorf("first member %q", got)
	}
}
