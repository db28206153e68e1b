package reports_test

import (
	"encoding/csv"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// The workbook opens in a program that shares nothing with the one that wrote it
// (LibreOffice Calc), with every reserve factor in its place and no error cell.
func TestWorkbookOpensElsewhere(t *testing.T) {
	office, err := exec.LookPath("soffice")
	if err != nil {
		if os.Getenv("SIXLINK_NEED_TOOLS") != "" {
			t.Fatal("soffice is not on this machine, and SIXLINK_NEED_TOOLS is set")
		}
		t.Skip("soffice is not on this machine")
	}
	r := report(t)
	data, err := r.Workbook()
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "car.xlsx"), data, 0o600); err != nil {
		t.Fatal(err)
	}
	// every sheet as comma-separated text, numbers as they are and not as shown
	const filter = `csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1`
	cmd := exec.Command(office, "--headless", "-env:UserInstallation=file://"+dir+"/profile", "--convert-to", filter, "--outdir", dir, filepath.Join(dir, "car.xlsx"))
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	file, err := os.Open(filepath.Join(dir, "car-Checks.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	reader := csv.NewReader(file)
	reader.FieldsPerRecord = -1
	rows, err := reader.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	i := 4
	for _, c := range r.Corners {
		for _, m := range c.Members {
			for _, f := range m.Checks {
				if i >= len(rows) {
					t.Fatalf("%d rows only", len(rows))
				}
				rf, err := strconv.ParseFloat(rows[i][8], 64)
				if err != nil || rows[i][4] != f.Title() || !(math.Abs(rf-f.Reserve) <= 1e-9*f.Reserve) {
					t.Errorf("row %d: %q, want %s with RF %g", i+1, rows[i], f.Title(), f.Reserve)
				}
				i++
			}
		}
	}
	sheets, err := filepath.Glob(filepath.Join(dir, "*.csv"))
	if err != nil || len(sheets) < 8 {
		t.Errorf("%d sheets (%v)", len(sheets), err)
	}
	for _, name := range sheets {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		for _, fault := range []string{"#REF!", "#VALUE!", "#NAME?", "#DIV/0!", "Err:"} {
			if strings.Contains(string(text), fault) {
				t.Errorf("%s has %s", filepath.Base(name), fault)
			}
		}
	}
}
