package sheets_test

import (
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/xuri/excelize/v2"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/cases/carfile/sheets"
	"sixlink/loads"
)

// saved opens workbooks in LibreOffice Calc, which calculates what has no result, and saves
// them as it writes workbooks itself.
func saved(t *testing.T, books map[string][]byte) map[string][]byte {
	t.Helper()
	office, err := exec.LookPath("soffice")
	if err != nil {
		if os.Getenv("SIXLINK_NEED_TOOLS") != "" {
			t.Fatal("soffice is not on this machine, and SIXLINK_NEED_TOOLS is set")
		}
		t.Skip("soffice is not on this machine")
	}
	dir := t.TempDir()
	args := []string{"--headless", "-env:UserInstallation=file://" + dir + "/profile", "--convert-to", "xlsx:Calc MS Excel 2007 XML", "--outdir", filepath.Join(dir, "out")}
	for name, book := range books {
		path := filepath.Join(dir, name+".xlsx")
		if err := os.WriteFile(path, book, 0o600); err != nil {
			t.Fatal(err)
		}
		args = append(args, path)
	}
	if out, err := exec.Command(office, args...).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	out := map[string][]byte{}
	for name := range books {
		if out[name], err = os.ReadFile(filepath.Join(dir, "out", name+".xlsx")); err != nil {
			t.Fatal(err)
		}
	}
	return out
}

// Workbooks that another program has saved are the same cars: of those that have most in them,
// and of one whose numbers take more digits than the program saves, but for those. Formulas
// that it works out are read.
func TestSavedByLibreOffice(t *testing.T) {
	values := map[string][]byte{}
	books := map[string][]byte{}
	for _, path := range []string{
		"../../../examples/hillclimb-pullrod-complete.yaml", "../../../examples/hillclimb-pushrod-duty.yaml", "../../../examples/hillclimb-pushrod-travel.yaml",
		"../../testdata/numpy/cars/unequal-sides.yaml", "../../testdata/numpy/cars/five-links.yaml", "../../../reports/testdata/every-check.yaml",
	} {
		name := filepath.Base(path)
		books[name] = workbook(t, valuesOf(t, path))
		values[name] = books[name]
	}
	good := workbook(t, valuesOf(t, pushRod))
	formula := func(sheet, cell, f string) change {
		return func(b *excelize.File) error {
			if err := b.SetCellValue(sheet, cell, nil); err != nil {
				return err
			}
			return b.SetCellFormula(sheet, cell, f)
		}
	}
	books["digits"] = changed(t, good, set("#Read me", "D1", "x"))
	books["digits"] = raw(t, books["digits"], "Vehicle", "B11", "", "<v>560.10000000000002</v>")
	books["digits"] = raw(t, books["digits"], "Vehicle", "B13", "", "<v>290.33333333333331</v>")
	books["formulas"] = changed(t, good, formula("Members", "C5", "8*2"), formula("Vehicle", "B11", "SUM(500;60)/3*3+0.1"), formula("Members", "G5", `"E355"&"+N"`), formula("Members", "M5", `IF(1=1,"","x")`))
	if _, err := sheets.Read("car.xlsx", books["formulas"]); err == nil {
		t.Error("formulas without a result are read")
	}
	books["formulas"] = changed(t, books["formulas"], formula("Vehicle", "B11", "SUM(500,60)/3*3+0.1"))
	for name, book := range saved(t, books) {
		t.Run(name, func(t *testing.T) {
			file, err := sheets.Read("car.xlsx", book)
			if err != nil {
				t.Fatal(err)
			}
			switch name {
			case "digits":
				// The program itself writes 15 digits of a number: seen with LibreOffice 7.4.
				if v := file.Car.Vehicle; v.Mass != 560.1 || !(math.Abs(v.CGHeight-290.33333333333331) <= 1e-12) {
					t.Errorf("mass %v, height %v: digits were lost", v.Mass, v.CGHeight)
				}
			case "formulas":
				tube, _ := file.Car.Axles[cases.Front].Parts[loads.UpperFrontLeg].Strut.Round()
				if v := file.Car.Vehicle; tube.OD != 16 || v.Mass != 560.0/3*3+0.1 {
					t.Errorf("od %v, mass %v", tube.OD, v.Mass)
				}
			default:
				holdSame(t, values[name], file)
			}
		})
	}
}

// holdSame holds a file to the one that a workbook has.
func holdSame(t *testing.T, book []byte, got carfile.File) {
	t.Helper()
	want := readGood(t, book)
	if d := cmp.Diff(want.Car, got.Car, all, cmpopts.EquateNaNs()); d != "" {
		t.Errorf("the car differs (-before +after):\n%s", d)
	}
	if c := carfile.Changes(want, got); len(c) > 0 {
		t.Errorf("%d keys differ: %+v", len(c), c)
	}
	if a, b := results(t, want), results(t, got); a != b {
		t.Error("the results differ")
	}
}
