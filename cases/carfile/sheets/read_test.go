package sheets_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/xuri/excelize/v2"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/cases/carfile/sheets"
	"sixlink/loads"
	"sixlink/members"
)

func readGood(t testing.TB, book []byte) carfile.File {
	t.Helper()
	file, err := sheets.Read("car.xlsx", book)
	if err != nil {
		t.Fatal(err)
	}
	return file
}

// Cells may be filled in other ways that mean the same; what they mean is plain.
func TestWaysToFillIn(t *testing.T) {
	good := workbook(t, valuesOf(t, pushRod))
	want := readGood(t, good).Car
	tube := func(c cases.Car) members.Tube {
		round, _ := c.Axles[cases.Front].Parts[loads.UpperFrontLeg].Strut.Round()
		return round
	}
	for _, r := range []struct {
		name string
		book []byte
		is   func(c cases.Car) bool // nil: the same car
	}{
		{"result of a formula", raw(t, good, "Members", "D5", "", "<f>B1+1</f><v>1.75</v>"), func(c cases.Car) bool { return tube(c).Wall == 1.75 }},
		{"text of a formula", raw(t, good, "Members", "G5", `t="str"`, "<f>B1</f><v>E235+N</v>"), func(c cases.Car) bool {
			return strings.HasPrefix(c.Axles[cases.Front].Parts[loads.UpperFrontLeg].Strut.Metal.Name, "E235")
		}},
		{"shared formula", raw(t, good, "Members", "D5", "", `<f t="shared" si="0"/><v>1.25</v>`), func(c cases.Car) bool { return tube(c).Wall == 1.25 }},
		// 1.100000000000000088817841970012523 is the double nearest to 1.1: IEEE 754-2019, table 3.5; programs write 15 to 17 digits of it.
		{"17 digits", raw(t, good, "Members", "D5", "", "<v>1.1000000000000001</v>"), func(c cases.Car) bool { return tube(c).Wall == 1.1 }},
		{"an exponent", raw(t, good, "Members", "D5", "", "<v>1.5E0</v>"), nil},
		// 1 in = 25.4 mm exactly: NIST SP 811, B.8, from memory.
		{"unit in the heading", changed(t, good, set("Members", "C4", "od [in]"), inches("Members", "C", 5, 16)), func(c cases.Car) bool { return tube(c).OD == 25.4*0.5 }},
		{"unit in the cell", changed(t, good, set("Members", "C5", "0.625 in")), func(c cases.Car) bool { return tube(c).OD == 25.4*0.625 }},
		{"unit beside the cell", changed(t, good, set("Vehicle", "B11", 1000), set("Vehicle", "C11", "lb")), func(c cases.Car) bool { return c.Vehicle.Mass == 453.59237 }},
		{"unit in the format that counts", changed(t, good, formatted("Members", "D5", 1.5, `0.0" mm"`)), nil},
		{"a share in per cent", changed(t, good, formatted("Vehicle", "B12", 0.47, "0 %")), nil},
		{"thousands in the format", changed(t, good, formatted("Vehicle", "B11", 560, `#,##0.00_-;[Red]-#,##0.00\-`)), nil},
		{"text in runs, with a reading aid", raw(t, good, "Members", "G5", `t="inlineStr"`, "<is><r><t>E355</t></r><rPh><t>zz</t></rPh><r><t>+N</t></r></is>"), nil},
		{"escaped character", raw(t, good, "Members", "G5", `t="inlineStr"`, "<is><t>E355_x002B_N</t></is>"), nil}, // ECMA-376-1, 22.9.2.19: U+002B is +
		{"a case whose name begins with the mark", changed(t, good, set("Cases", "A7", "#1")), func(c cases.Car) bool { return c.Cases[2].Name == "#1" }},
		{"headings of another spelling", changed(t, good, set("Members", "C4", "TUBE.OD, mm"), set("Members", "A4", " Axle ")), nil},
		{"another place", changed(t, good, func(f *excelize.File) error { return f.InsertRows("Members", 1, 3) }), nil},
		{"another order of columns", swapped(t, good), nil},
		{"another order of sheets", changed(t, good, func(f *excelize.File) error { return f.MoveSheet("Cases", "#Read me") }), nil},
		{"a sheet of one's own", changed(t, good, func(f *excelize.File) error { _, err := f.NewSheet("#calc"); return err }, set("#calc", "A1", "x")), nil},
		{"a column of one's own", changed(t, good, set("Members", "P4", "# supplier"), set("Members", "P6", "local")), nil},
		{"a row of one's own", changed(t, good, set("Members", "A17", "# below: spares"), set("Members", "C17", 99)), nil},
		{"an empty row between", changed(t, good, func(f *excelize.File) error { return f.InsertRows("Members", 8, 2) }), nil},
		{"a merged title", changed(t, good, func(f *excelize.File) error { return f.MergeCell("Members", "A1", "H2") }), nil},
		{"an empty hidden row", changed(t, good, func(f *excelize.File) error { return f.SetRowVisible("Members", 30, false) }), nil},
		{"a formula without a text", raw(t, good, "Members", "M5", `t="str"`, "<f>A1</f><v> </v>"), nil},
		{"a list in one cell", changed(t, good, set("More", "A5", "front.motion.travel"), set("More", "B5", "-30; 1 in")), func(c cases.Car) bool {
			return c.Axles[cases.Front].Motion.Travel == [2]float64{-30, 25.4}
		}},
		{"entries by number and name", changed(t, good, set("More", "A5", "cases[Bump].travel.front"), set("More", "B5", 12), set("More", "A6", "cases[1].travel.rear"), set("More", "B6", 10)), func(c cases.Car) bool {
			return c.Cases[1].Place.Travel == [4]float64{12, 12, 10, 10}
		}},
		{"an entry that is made", changed(t, good, set("More", "A5", "front.inboard[0].part"), set("More", "B5", "rocker"), set("More", "A6", "front.inboard[0].mass"), set("More", "B6", 0.4), set("More", "A7", "front.inboard[0].at"), set("More", "B7", "0; 200; 400")), func(c cases.Car) bool {
			return len(c.Axles[cases.Front].Inboard) == 1 && c.Axles[cases.Front].Inboard[0].At.Z == 400
		}},
	} {
		t.Run(r.name, func(t *testing.T) {
			got := readGood(t, r.book).Car
			same := cmp.Equal(want, got, all, cmpopts.EquateNaNs())
			if r.is == nil && !same {
				t.Errorf("another car (-want +got):\n%s", cmp.Diff(want, got, all, cmpopts.EquateNaNs()))
			}
			if r.is != nil && (same || !r.is(got)) {
				t.Errorf("the value did not come to its place: %+v", tube(got))
			}
		})
	}
}

// inches gives every cell of a column half an inch.
func inches(sheet, column string, from, to int) change {
	return func(f *excelize.File) error {
		for row := from; row <= to; row++ {
			if err := f.SetCellValue(sheet, fmt.Sprintf("%s%d", column, row), 0.5); err != nil {
				return err
			}
		}
		return nil
	}
}

// swapped exchanges two columns of the sheet of hardpoints.
func swapped(t testing.TB, book []byte) []byte {
	return changed(t, book, func(f *excelize.File) error {
		for row := 4; row <= 60; row++ {
			a, b := fmt.Sprintf("C%d", row), fmt.Sprintf("E%d", row)
			x, _ := f.GetCellValue("Hardpoints", a, excelize.Options{RawCellValue: true})
			z, _ := f.GetCellValue("Hardpoints", b, excelize.Options{RawCellValue: true})
			for cell, text := range map[string]string{a: z, b: x} {
				var v any = text
				var number float64
				if n, _ := fmt.Sscan(text, &number); n == 1 && row > 4 {
					v = number
				} else if text == "" {
					v = nil
				}
				if err := f.SetCellValue("Hardpoints", cell, v); err != nil {
					return err
				}
			}
		}
		return nil
	})
}
