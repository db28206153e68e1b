package reports

import (
	"bytes"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members"
)

// A change is a number of the car file and the cell that holds it: on a sheet of parts in
// the column of a unit, or on the sheet of materials.
type change struct {
	sheet, unit, symbol string
	value               float64
}

// changes of cells, and the same in the car file. All rods of that car are on the
// uprights: no force depends on a section.
var changes = []struct {
	name  string
	cells []change
	edits []string
}{
	{
		"tubes", []change{
			{"Members", "front upper front leg", "OD", 22},
			{"Members", "front upper front leg", "t", 2.5},
			{"Members", "front upper rear leg", "OD", 14},
			{"Members", "front upper rear leg", "t", 1},
			{"Members", "rear track rod", "OD", 7}, // from Johnson to Euler, and beyond the Euler load: amplified demands have no bound
			{"Members", "rear track rod", "t", 1},
			{"Members", "rear rod", "OD", 28},
			{"Members", "rear rod", "t", 0.5},
			{"Laminates", "front rod", "OD", 24},
			{"Ends", "front rod, outer end", "D_b", 20.6},
			{"Ends", "front rod, inner end", "D_b", 20.6},
		}, []string{
			"tube: [16, 1.5]", "tube: [22, 2.5]", "tube: [16, 1.5]", "tube: [14, 1]", "tube: [20, 1.5]\n      laminate", "tube: [24, 1.5]\n      laminate",
			"diameter: 16.6", "diameter: 20.6", "\n      tube: [16, 1.5]\n      material: E355+N\n      part: HC-111", "\n      tube: [7, 1]\n      material: E355+N\n      part: HC-111", "tube: [20, 1.5]", "tube: [28, 0.5]",
		},
	},
	{
		"sections", []change{
			{"Members", "front lower front leg", "b", 30},
			{"Members", "front lower front leg", "h", 12},
			{"Members", "front lower rear leg", "c", 36},
			{"Members", "front lower rear leg", "d", 14},
			{"Members", "front lower rear leg", "t", 1.2},
			{"Members", "front lower rear leg", "e_N", 0.2},
			{"Members", "front track rod", "OD", 8},
			{"Members", "rear upper front leg", "d", 12},
			{"Members", "rear upper rear leg", "b", 14},
			{"Members", "rear upper rear leg", "h", 14},
			{"Members", "rear upper rear leg", "e₀", 0.8},
			{"Members", "rear lower front leg", "I", 3000},
			{"Members", "rear lower rear leg", "q", 0.3},
			{"Members", "rear lower rear leg", "e_N", 2.5},
		}, []string{
			"[25, 15, 1.5]", "[30, 12, 1.5]", "[30, 15, 1.5]}\n      material: Test steel\n      eccentricity: 0.5", "[36, 14, 1.2]}\n      material: Test steel\n      eccentricity: 0.2",
			"bar: 12", "bar: 8", "[32, 14, 1.5]", "[32, 12, 1.5]", "square_tube: [16, 1.5]", "square_tube: [14, 1.5]",
			"crookedness: 0.5", "crookedness: 0.8", "inertia: 4000", "inertia: 3000",
			"eccentricity: 1\n      side_load: 0.1", "eccentricity: 2.5\n      side_load: 0.3",
		},
	},
	{
		"strengths", []change{
			{materialsSheet, "Test steel", "Sy", 380},
			{materialsSheet, "Test steel", "Su", 470},
			{materialsSheet, "Test steel", "Scy", 340},
			{materialsSheet, "Test steel", "E", 190000},
			{materialsSheet, "Test steel", "ρ", 7000},
			{materialsSheet, "Test brittle", "Sy", 450},
			{"Laminates", "front rod", "Y", 400}, // another ply fails first
			{"Laminates", "front rod", "X", 900},
			{"Laminates", "front rod", "k", 0.4},
			{"Ends", "front rod, outer end", "τ_b", 22},
		}, []string{
			"youngs_modulus: 205 GPa, poisson_ratio: 0.29, yield_strength: 420, ultimate_strength: 560, compressive_yield: 400, density: 7850",
			"youngs_modulus: 190 GPa, poisson_ratio: 0.29, yield_strength: 380, ultimate_strength: 470, compressive_yield: 340, density: 7000",
			"yield_strength: 500", "yield_strength: 450", "tension_across: 40", "tension_across: 400", "tension_along: 1500", "tension_along: 900",
			"knockdown: 0.5", "knockdown: 0.4",
			"        both:\n          insert: {length: 40, diameter: 16.6, bond_thickness: 0.2, shear_modulus: 1000, shear_strength: 30,",
			"        inner:\n          insert: {length: 40, diameter: 16.6, bond_thickness: 0.2, shear_modulus: 1000, shear_strength: 30, material: 7075-T6, source: invented for this test}\n        outer:\n          insert: {length: 40, diameter: 16.6, bond_thickness: 0.2, shear_modulus: 1000, shear_strength: 22,",
		},
	},
	{
		"factors and joints", []change{
			{materialsSheet, "", "f_y", 1.4},
			{materialsSheet, "", "f_u", 1.35},
			{materialsSheet, "", "f_b", 1.8},
			{materialsSheet, "", "f_f", 1.25},
			{"Ends", "front upper rear leg, outer end", "a_p", 8},
			{"Ends", "front upper rear leg, outer end", "e_l", 11}, // the shear-out coefficient instead of that of bearing
			{"Ends", "front upper rear leg, inner end", "e_t", 0.8},
			{"Rocker parts", "front rocker, pivot, rod arm", "t", 10},
			{"Rocker parts", "rear rocker, pivot, rod arm", "s", 30},
			{"Rocker parts", "rear rocker, pivot bolt", "S", 60}, // from overhung to within the supports
		}, []string{
			"design_factors: {yield: 1.25, ultimate: 1.5, buckling: 1.5, fitting: 1.15}", "design_factors: {yield: 1.4, ultimate: 1.35, buckling: 1.8, fitting: 1.25}",
			"plates: {outer: 6, inner: 9,", "plates: {outer: 8, inner: 9,", "edge: 16, material: Test steel, shear_strength", "edge: 11, material: Test steel, shear_strength", "offset: 0.3", "offset: 0.8",
			"{count: 1, thickness: 12", "{count: 1, thickness: 10", "thickness: 8, spacing: 24", "thickness: 8, spacing: 30", "support: 30", "support: 60",
		},
	},
}

const changedCar = "testdata/every-check.yaml"

// A number changed in a cell gives what check gives for a car file with that number.
func TestChangedCellsGiveWhatCheckGives(t *testing.T) {
	base := reportOf(t, changedCar)
	book, err := base.Workbook()
	if err != nil {
		t.Fatal(err)
	}
	books := map[string][]byte{"turned": turned(t, book, base)}
	for _, c := range changes {
		books[c.name] = edit(t, book, func(f *excelize.File) {
			for _, cell := range c.cells {
				sheet, at := locate(t, f, cell)
				if err := f.SetCellValue(sheet, at, cell.value); err != nil {
					t.Fatal(err)
				}
			}
		})
	}
	got := recalculate(t, books)
	for _, c := range changes {
		changed := reportOf(t, changedCar, c.edits...)
		if moved := differing(base, changed); moved < 20 {
			t.Errorf("%s: the change moves %d reserve factors only", c.name, moved)
		}
		holdToRun(t, c.name, got[c.name], changed)
	}
	holdTurned(t, got["turned"], base)
}

func differing(a, b Report) (n int) {
	x, y := reserves(a), reserves(b)
	for i := range min(len(x), len(y)) {
		if x[i].Reserve != y[i].Reserve {
			n++
		}
	}
	return n
}

func edit(t *testing.T, book []byte, change func(f *excelize.File)) []byte {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(book))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	change(f)
	var out bytes.Buffer
	if err := f.Write(&out); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// locate finds the cell of an input.
func locate(t *testing.T, f *excelize.File, c change) (sheet, cell string) {
	t.Helper()
	rows, err := f.GetRows(c.sheet)
	if err != nil {
		t.Fatal(err)
	}
	column, wanted := -1, false
	for i, row := range rows {
		switch {
		case c.sheet == materialsSheet && c.unit == "" && len(row) > 0 && row[0] == c.symbol:
			return c.sheet, cellName(factorColumn, i+1)
		case c.sheet == materialsSheet:
			if len(row) > 1 && c.unit != "" && row[1] == c.unit {
				col := metalColumns[c.symbol]
				if c.symbol == "Scy" {
					col-- // as given, not as used
				}
				return c.sheet, cellName(col, i+1)
			}
		case len(row) > 0 && row[0] == "symbol":
			wanted = false
			for j, head := range row {
				if head == c.unit {
					column, wanted = j, true
				}
			}
		case wanted && len(row) > column && row[0] == c.symbol:
			at := cellName(column, i+1)
			if formula, _ := f.GetCellFormula(c.sheet, at); formula != "" {
				t.Fatalf("%v: %s is no input: %s", c, at, formula)
			}
			return c.sheet, at
		}
	}
	t.Fatalf("%v: no such cell", c)
	return "", ""
}

// turnedForces are axial forces put into the cells of the member forces, with the other
// sign than the load path has them: other checks then apply.
const turnedCase = 2

func turned(t *testing.T, book []byte, r Report) []byte {
	return edit(t, book, func(f *excelize.File) {
		rows, err := f.GetRows(forcesSheet)
		if err != nil {
			t.Fatal(err)
		}
		for i, row := range rows {
			if i+1 >= caseStart && row[0] == strconv.Itoa(turnedCase+1) {
				corner, link := indexOf(row[2], row[3])
				if err := f.SetCellValue(forcesSheet, cellName(caseLeaders, i+1), -1.5*r.Corners[corner].Members[link].Loads[turnedCase].Axial); err != nil {
					t.Fatal(err)
				}
			}
		}
	})
}

func indexOf(corner, member string) (int, int) {
	for i := range cases.CornerNames {
		for j := range loads.LinkNames {
			if words(cases.CornerNames[i]) == corner && words(loads.LinkNames[j]) == member {
				return i, j
			}
		}
	}
	return -1, -1
}

// holdTurned holds the reserve factors of members of metal with turned forces to the
// checks of the same strut under that force.
func holdTurned(t *testing.T, got recalculated, r Report) {
	rows := got["Member checks"]
	heads := rows[caseStart-2]
	held := 0
	for _, row := range rows[caseStart-1:] {
		if row[0] != strconv.Itoa(turnedCase+1) {
			continue
		}
		corner, link := indexOf(row[2], row[3])
		m := r.Corners[corner].Members[link]
		load := m.Loads[turnedCase]
		load.Axial *= -1.5
		want := map[string]float64{}
		for _, f := range members.Judge(members.Subject{Strut: m.Strut, Load: load, Factors: r.Car.Factors}) {
			want[f.Check] = f.Reserve
		}
		for i := caseLeaders + 2; !strings.Contains(heads[i], ","); i++ {
			x, applies := want[heads[i]]
			if applies && !nearly(row[i], x, 1e-9) || !applies && row[i] != dash && row[i] != "" {
				t.Errorf("%s %s turned, %s: %s, want %.12g (%t)", row[2], row[3], heads[i], row[i], x, applies)
			}
			delete(want, heads[i])
			held++
		}
		if len(want) > 0 {
			t.Errorf("%s %s turned: no column for %v", row[2], row[3], want)
		}
	}
	if held < 100 {
		t.Errorf("%d reserve factors held", held)
	}
}
