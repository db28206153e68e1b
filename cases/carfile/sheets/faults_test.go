package sheets_test

import (
	"errors"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/xuri/excelize/v2"

	"sixlink/cases/carfile"
	"sixlink/cases/carfile/sheets"
)

var update = flag.Bool("update", false, "write testdata/faults.golden anew; read the difference before keeping it")

// A faulty workbook, made of the car with push rods.
type faulty struct {
	name    string
	changes []change
	raw     func(t testing.TB, book []byte) []byte // after the changes
	faults  int                                    // 0: one
}

// cellFaults are workbooks with one cell that is wrong, or one sheet.
var cellFaults = []faulty{
	{name: "decimal comma as text", changes: []change{set("Members", "D5", "1,5")}},
	{name: "number as text", changes: []change{set("Members", "D5", "1.5")}},
	{name: "wall below zero", changes: []change{set("Members", "D5", -1.5)}},
	{name: "wall more than half of od", changes: []change{set("Members", "D5", 9)}},
	{name: "unit of another dimension", changes: []change{set("Members", "D5", "1.5 kg")}},
	{name: "unknown unit", changes: []change{set("Members", "D5", "1.5 mmm")}},
	{name: "truth for a number", changes: []change{set("Members", "D5", true)}},
	{name: "date", changes: []change{formatted("Members", "D5", 45000, "dd.mm.yyyy")}},
	{name: "time", changes: []change{formatted("Members", "D5", 1.5, "[h]:mm")}},
	{name: "percentage", changes: []change{formatted("Members", "D5", 1.5, "0 %")}},
	{name: "another unit in the format", changes: []change{formatted("Members", "D5", 1.5, `0.00" in"`)}},
	{name: "thousands left out", changes: []change{formatted("Members", "D5", 1.5, "0.000,")}},
	{name: "digits in the format", changes: []change{formatted("Members", "D5", 1.5, `"2"0.0`)}},
	{name: "format without a sign", changes: []change{formatted("Hardpoints", "C7", -14, "0.0;0.0")}},
	{name: "format that shows nothing", changes: []change{formatted("Members", "D5", 1.5, ";;;")}},
	{name: "condition in the format", changes: []change{formatted("Members", "D5", 1.5, `[>1]"2.5";0.0`)}},
	{name: "error value", raw: rawCell("Members", "D5", `t="e"`, "<f>A1+#REF!</f><v>#REF!</v>")},
	{name: "division by zero", raw: rawCell("Members", "C5", `t="e"`, "<f>1/0</f><v>#DIV/0!</v>")},
	{name: "formula without result", raw: rawCell("Members", "D5", "", "<f>3/2</f>")},
	{name: "formula with an empty result", raw: rawCell("Members", "D5", "", "<f>3/2</f><v></v>")},
	{name: "no value of its type", raw: rawCell("Members", "D5", "", "<v>one</v>")},
	{name: "not finite", raw: rawCell("Members", "D5", "", "<v>1e999</v>")},
	{name: "no such shared text", raw: rawCell("Members", "E5", `t="s"`, "<v>999999</v>")},
	{name: "unknown type of cell", raw: rawCell("Members", "D5", `t="z"`, "<v>1</v>")},
	{name: "no wall", changes: []change{set("Members", "D5", nil)}},
	{name: "no tube at all", changes: []change{set("Members", "C5", nil), set("Members", "D5", nil)}},
	{name: "no material", changes: []change{set("Members", "G5", nil)}},
	{name: "unknown material", changes: []change{set("Members", "G5", "E355+Q")}},
	{name: "number for a name", changes: []change{set("Members", "G5", 1.0/3)}},
	{name: "truth for a name", changes: []change{set("Members", "G5", false)}},
	{name: "unknown axle", changes: []change{set("Members", "A5", "frnt")}, faults: 1},
	{name: "no axle", changes: []change{set("Members", "A5", nil)}, faults: 1},
	{name: "unknown member", changes: []change{set("Members", "B5", "upper_front_log")}},
	{name: "a member twice", changes: []change{set("Members", "B6", "upper_front_leg")}, faults: 4},
	{name: "empty coordinate", changes: []change{set("Hardpoints", "D7", nil)}},
	{name: "empty point", changes: []change{set("Hardpoints", "C7", nil), set("Hardpoints", "D7", nil), set("Hardpoints", "E7", nil)}},
	{name: "point of the other side", changes: []change{set("Hardpoints", "D7", -655)}},
	{name: "unknown point", changes: []change{set("Hardpoints", "B7", "uper_wishbone.outer")}},
	{name: "choice that is none", changes: []change{set("Cases", "L7", "rollin")}},
	{name: "flag in words", changes: []change{set("Cases", "J13", "yes")}},
	{name: "flag as a number", changes: []change{set("Cases", "J13", 1)}},
	{name: "two cases of one name", changes: []change{set("Cases", "A7", "Bump")}},
	{name: "a case of two kinds", changes: []change{set("Cases", "F7", 1.5), set("Cases", "G7", 0)}},
	{name: "a case without a name", changes: []change{set("Cases", "A7", nil)}},
	{name: "speed beyond its limit", changes: []change{set("Cases", "I10", 400)}},
}

// keyFaults are wrong in a sheet of keys.
var keyFaults = []faulty{
	{name: "another format", changes: []change{set("Vehicle", "B5", "sixlink/9")}},
	{name: "no mass", changes: []change{set("Vehicle", "B11", nil)}},
	{name: "mass as text", changes: []change{set("Vehicle", "B11", "560 kg!")}},
	{name: "unit that is none of a mass", changes: []change{set("Vehicle", "C11", "mm")}},
	{name: "unit of a share", changes: []change{set("Vehicle", "C12", "kg")}},
	{name: "unit of a name", changes: []change{set("Vehicle", "C6", "mm")}},
	{name: "unknown key", changes: []change{set("Vehicle", "A11", "vehicle.masss")}},
	{name: "no path", changes: []change{set("Vehicle", "A11", "vehicle..mass")}},
	{name: "number for a key", changes: []change{set("Vehicle", "A11", 12)}},
	{name: "value without a key", changes: []change{set("More", "B8", 12)}},
	{name: "key given twice", changes: []change{set("More", "A6", "vehicle.mass"), set("More", "B6", 570)}},
	{name: "key of a table given twice", changes: []change{set("More", "A6", "front.members.rod.tube.wall"), set("More", "B6", 2)}},
	{name: "value for a mapping", changes: []change{set("More", "A6", "front.rocker"), set("More", "B6", "yes")}},
	{name: "value for a list", changes: []change{set("More", "A6", "front.inboard"), set("More", "B6", "rocker")}},
	{name: "a list without brackets", changes: []change{set("More", "A6", "cases.speed"), set("More", "B6", 3)}},
	{name: "brackets of no list", changes: []change{set("More", "A6", "vehicle[0].mass"), set("More", "B6", 3)}},
	{name: "unknown entry", changes: []change{set("More", "A6", "cases[Bumb].travel"), set("More", "B6", 3)}},
	{name: "entry too far", changes: []change{set("More", "A6", "front.inboard[3].mass"), set("More", "B6", 3)}},
	{name: "a number after the list", changes: []change{set("More", "A6", "front.motion.travel[2]"), set("More", "B6", 3)}},
	{name: "a step after a number", changes: []change{set("More", "A6", "front.rod.inner.x.y"), set("More", "B6", 3)}},
	{name: "commas between numbers", changes: []change{set("More", "A6", "front.motion.travel"), set("More", "B6", "-30, 30")}},
	{name: "too few numbers", changes: []change{set("More", "A6", "front.motion.travel"), set("More", "B6", "-30")}, faults: 1},
	{name: "single value and mapping", changes: []change{set("Cases", "N6", 12), set("More", "A6", "cases[Bump].rack.front"), set("More", "B6", 3)}},
	{name: "escape sequence in a name", changes: []change{set("Vehicle", "B6", "a\u202eb")}},
}

// sheetFaults are wrong in the sheets as such.
var sheetFaults = []faulty{
	{name: "unknown sheet", changes: []change{func(f *excelize.File) error { return f.SetSheetName("Members", "Membres") }}, faults: 1},
	{name: "sheet of another purpose", changes: []change{func(f *excelize.File) error { _, err := f.NewSheet("Sheet1"); return err }}},
	{name: "hidden sheet", changes: []change{func(f *excelize.File) error { return f.SetSheetVisible("Members", false) }}, faults: 1},
	{name: "hidden row", changes: []change{func(f *excelize.File) error { return f.SetRowVisible("Cases", 8, false) }}},
	{name: "row without height", changes: []change{func(f *excelize.File) error { return f.SetRowHeight("Cases", 8, 0) }}},
	{name: "column without width", changes: []change{func(f *excelize.File) error { return f.SetColWidth("Hardpoints", "D", "D", 0) }}},
	{name: "case above the headings", changes: []change{set("Cases", "A3", "Bump twice"), set("Cases", "B3", 6)}},
	{name: "number above the headings", changes: []change{set("Members", "D3", 1.5)}},
	{name: "hidden column", changes: []change{func(f *excelize.File) error { return f.SetColVisible("Hardpoints", "D", false) }}},
	{name: "merged cells", changes: []change{func(f *excelize.File) error { return f.MergeCell("Members", "H5", "H6") }}},
	{name: "value without a heading", changes: []change{set("Members", "P6", "light"), set("Members", "P7", "lighter")}},
	{name: "unknown heading", changes: []change{set("Members", "D4", "wal (mm)")}},
	{name: "duplicate heading", changes: []change{set("Members", "P4", "od (mm)")}},
	{name: "unit of a heading of text", changes: []change{set("Members", "G4", "material (mm)")}},
	{name: "unit of a heading", changes: []change{set("Members", "D4", "wall (kg)")}},
	{name: "no headings", changes: []change{set("Hardpoints", "A4", nil), set("Hardpoints", "B4", nil), set("Hardpoints", "C4", nil), set("Hardpoints", "D4", nil)}},
	{name: "error in a heading", raw: rawCell("Members", "D4", `t="e"`, "<v>#NAME?</v>")},
	{name: "no cases", changes: []change{func(f *excelize.File) error { return f.DeleteSheet("Cases") }}},
	{name: "empty table of cases", changes: []change{emptied("Cases", 5, 20, "ABCDEFGHIJKLMNOPQRST")}},
}

func rawCell(sheet, cell, attributes, content string) func(testing.TB, []byte) []byte {
	return func(t testing.TB, book []byte) []byte { return raw(t, book, sheet, cell, attributes, content) }
}

func emptied(sheet string, from, to int, columns string) change {
	return func(f *excelize.File) error {
		for row := from; row <= to; row++ {
			for _, c := range columns {
				name, err := excelize.JoinCellName(string(c), row)
				if err == nil {
					err = f.SetCellValue(sheet, name, nil)
				}
				if err != nil {
					return err
				}
			}
		}
		return nil
	}
}

// TestFaults holds the messages for faulty workbooks to testdata/faults.golden: what is
// wrong, in which cell, and what to do about it.
func TestFaults(t *testing.T) {
	good := workbook(t, valuesOf(t, pushRod))
	golden := filepath.Join("testdata", "faults.golden")
	want, got := readGolden(t, golden), map[string]string{}
	var order []string
	for _, table := range [][]faulty{cellFaults, keyFaults, sheetFaults} {
		for _, x := range table {
			t.Run(x.name, func(t *testing.T) {
				book := good
				if len(x.changes) > 0 {
					book = changed(t, book, x.changes...)
				}
				if x.raw != nil {
					book = x.raw(t, book)
				}
				got[x.name] = faultsOf(t, book, max(1, x.faults))
				order = append(order, x.name)
				if d := cmp.Diff(want[x.name], got[x.name]); d != "" && !*update {
					t.Errorf("message (-want +got):\n%s", d)
				}
			})
		}
	}
	if len(got) != len(order) || len(got) < 75 {
		t.Errorf("%d faulty workbooks under %d names, want a name for each and 75 at least", len(order), len(got))
	}
	if *update {
		writeGolden(t, golden, order, got)
	} else if len(want) != len(got) {
		t.Errorf("%s has %d messages, want %d", golden, len(want), len(got))
	}
}

// faultsOf reads a faulty workbook and returns its message.
func faultsOf(t *testing.T, book []byte, n int) string {
	t.Helper()
	_, err := sheets.Read("car.xlsx", book)
	var faults carfile.Faults
	if !errors.As(err, &faults) {
		t.Fatalf("Read gave error %v, want Faults", err)
	}
	if len(faults) != n {
		t.Errorf("%d faults, want %d:\n%v", len(faults), n, err)
	}
	for i, f := range faults {
		if f.Cell == "" || f.Text == "" || f.Remedy == "" {
			t.Errorf("fault %+v lacks a cell, a text or a remedy", f)
		}
		if i > 0 && f.Line < faults[i-1].Line {
			t.Errorf("fault in %s stands behind that in %s", f.Cell, faults[i-1].Cell)
		}
	}
	return err.Error() + "\n"
}

const goldenMark = "=== "

func readGolden(t *testing.T, path string) map[string]string {
	t.Helper()
	messages := map[string]string{}
	text, err := os.ReadFile(path)
	if err != nil && !*update {
		t.Fatal(err)
	}
	for _, section := range strings.Split(string(text), goldenMark)[1:] {
		name, message, _ := strings.Cut(section, "\n")
		messages[name] = strings.TrimSuffix(message, "\n")
	}
	return messages
}

func writeGolden(t *testing.T, path string, order []string, messages map[string]string) {
	t.Helper()
	var b strings.Builder
	for _, name := range order {
		b.WriteString(goldenMark + name + "\n" + messages[name] + "\n")
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(b.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}
