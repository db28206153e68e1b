package reports

import (
	"encoding/csv"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// alwaysRecalculate makes LibreOffice work every formula out anew when it opens a
// workbook; without it, it believes the numbers beside the formulas.
const alwaysRecalculate = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>`

// A recalculated is the sheets of a workbook by name, as another program works them out.
type recalculated map[string][][]string

// recalculate has workbooks worked out by a program that shares nothing with the one
// that wrote them (LibreOffice Calc), all in one start of it.
func recalculate(t *testing.T, books map[string][]byte) map[string]recalculated {
	t.Helper()
	office, err := exec.LookPath("soffice")
	if err != nil {
		if os.Getenv("SIXLINK_NEED_TOOLS") != "" {
			t.Fatal("soffice is not on this machine, and SIXLINK_NEED_TOOLS is set")
		}
		t.Skip("soffice is not on this machine")
	}
	dir := t.TempDir()
	write := func(name string, data []byte) string {
		path := filepath.Join(dir, name)
		if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, data, 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	write("profile/user/registrymodifications.xcu", []byte(alwaysRecalculate))
	// every sheet as comma-separated text, numbers as they are and not as shown
	const filter = `csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1`
	args := []string{"--headless", "-env:UserInstallation=file://" + dir + "/profile", "--convert-to", filter, "--outdir", dir}
	for name, data := range books {
		args = append(args, write(name+".xlsx", data))
	}
	if out, err := exec.Command(office, args...).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	out := map[string]recalculated{}
	for name := range books {
		out[name] = sheetsOf(t, dir, name)
	}
	return out
}

func sheetsOf(t *testing.T, dir, name string) recalculated {
	t.Helper()
	out := recalculated{}
	files, err := filepath.Glob(filepath.Join(dir, name+"-*.csv"))
	if err != nil || len(files) < 8 {
		t.Fatalf("%s: %d sheets (%v)", name, len(files), err)
	}
	for _, path := range files {
		file, err := os.Open(path)
		if err != nil {
			t.Fatal(err)
		}
		reader := csv.NewReader(file)
		reader.FieldsPerRecord = -1
		rows, err := reader.ReadAll()
		file.Close()
		if err != nil {
			t.Fatal(err)
		}
		sheet := strings.TrimSuffix(strings.TrimPrefix(filepath.Base(path), name+"-"), ".csv")
		out[sheet] = rows
		for i, row := range rows {
			for j, cell := range row {
				for _, fault := range []string{"#REF!", "#VALUE!", "#NAME?", "#DIV/0!", "#NUM!", "#N/A", "Err:"} {
					if strings.HasPrefix(cell, fault) {
						t.Errorf("%s, sheet %s, %s: %s", name, sheet, cellName(j, i+1), cell)
					}
				}
			}
		}
	}
	return out
}
