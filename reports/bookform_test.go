package reports

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"strconv"
	"strings"
	"testing"

	"github.com/xuri/excelize/v2"

	"sixlink/members"
	"sixlink/members/ends"
	"sixlink/members/laminate"
	"sixlink/members/rocker"
)

// Every file of the archive is well-formed XML; a formula that gives a number has one
// beside it as a number, and one that gives a text a text (ECMA-376, part 1, 18.18.11);
// none has an error. The same report gives the same bytes.
func TestWorkbookForm(t *testing.T) {
	r := reportOf(t, changedCar)
	data, err := r.Workbook()
	if err != nil {
		t.Fatal(err)
	}
	again, err := r.Workbook()
	if err != nil || !bytes.Equal(data, again) {
		t.Errorf("two workbooks of one report differ (%v)", err)
	}
	in, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	formulas := 0
	for _, f := range in.File {
		eachCell(t, f, func(c cellXML) {
			if c.F == "" {
				return
			}
			formulas++
			_, err := strconv.ParseFloat(c.V, 64)
			if number := err == nil; number != (c.T == "") || !number && c.T != "str" {
				t.Errorf("%s, %s: type %q beside %q, formula %s", f.Name, c.R, c.T, c.V, c.F)
			}
		})
	}
	if formulas < 50000 {
		t.Errorf("%d formulas", formulas)
	}
}

// A cellXML is a cell as it stands in the file.
type cellXML struct {
	R string `xml:"r,attr"`
	T string `xml:"t,attr"`
	F string `xml:"f"`
	V string `xml:"v"`
}

// eachCell reads a file of the archive through, and the cells of a sheet.
func eachCell(t *testing.T, f *zip.File, look func(c cellXML)) {
	d := xml.NewDecoder(bytes.NewReader(content(t, f)))
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		if err != nil {
			t.Fatalf("%s: %v", f.Name, err)
		}
		start, ok := token.(xml.StartElement)
		if !ok || start.Name.Local != "c" || !strings.HasPrefix(f.Name, "xl/worksheets/") {
			continue
		}
		var c cellXML
		if err := d.DecodeElement(&c, &start); err != nil {
			t.Fatalf("%s: %v", f.Name, err)
		}
		look(c)
	}
}

// The car of the tests has every check of the project among those that have a demand.
func TestEveryCheckIsInTheBook(t *testing.T) {
	var names []string
	add := func(name string) { names = append(names, name) }
	for _, c := range members.Checks {
		add(c.Name)
	}
	for _, c := range ends.Checks {
		add(c.Name)
	}
	for _, c := range laminate.Checks {
		add(c.Name)
	}
	for _, c := range rocker.SectionChecks {
		add(c.Name)
	}
	for _, c := range rocker.BearingChecks {
		add(c.Name)
	}
	for _, c := range rocker.PivotBoltChecks {
		add(c.Name)
	}
	for _, c := range rocker.TorsionBarChecks {
		add(c.Name)
	}
	found := map[string]bool{}
	r := reportOf(t, changedCar)
	for _, f := range reserves(r) {
		found[f.Check] = true
	}
	for _, name := range names {
		if !found[name] {
			t.Errorf("%s has no demand in %s", name, changedCar)
		}
	}
}

// A text of the car file stays a text, the date is the user's or a line to fill in, and
// nothing else.
func TestCoverOfTheWorkbook(t *testing.T) {
	for _, date := range []string{"", "2026-02-28"} {
		r := reportOf(t, changedCar)
		r.Date = date
		data, err := r.Workbook()
		if err != nil {
			t.Fatal(err)
		}
		f, err := excelize.OpenReader(bytes.NewReader(data))
		if err != nil {
			t.Fatal(err)
		}
		defer f.Close()
		found := map[string]string{}
		rows, err := f.GetRows("Cover")
		if err != nil {
			t.Fatal(err)
		}
		for i, row := range rows {
			if len(row) > 0 {
				found[row[0]] = strings.Join(row[1:], "")
			}
			for j := range row {
				if formula, _ := f.GetCellFormula("Cover", cellName(j, i+1)); formula != "" {
					t.Errorf("a formula on the cover: %s", formula)
				}
			}
		}
		if got := found["Date"]; got != date {
			t.Errorf("date %q on the cover, want %q", got, date)
		}
		if got := found["Remarks of the car file"]; got != "=1+1 is a text" {
			t.Errorf("remarks %q", got)
		}
		if got := found["Car"] + found["Revision"]; got != r.Car.Name+r.Car.Revision {
			t.Errorf("car and revision %q", got)
		}
	}
}

// A kind of subject that the workbook does not know has its givens of every case as
// inputs, and its checks are live all the same.
func TestUnknownKindsAreLive(t *testing.T) {
	r := reportOf(t, changedCar)
	saved := familyNames
	defer func() { familyNames = saved }()
	familyNames = map[string][2]string{kindMember: saved[kindMember], kindLaminate: saved[kindLaminate], kindEnd: saved[kindEnd]}
	if n := standsAlone(t, r); n > 0 {
		t.Errorf("%d reserve factors stand alone", n)
	}
	if _, err := r.Workbook(); err != nil {
		t.Error(err)
	}
}
