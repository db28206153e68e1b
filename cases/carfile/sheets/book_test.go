package sheets_test

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io"
	"os"
	"regexp"
	"testing"

	"github.com/xuri/excelize/v2"
	"go.yaml.in/yaml/v4"

	"sixlink/cases/carfile"
	"sixlink/cases/carfile/sheets"
	"sixlink/reports"
)

const pushRod = "../../../examples/hillclimb-pushrod.yaml"

// valuesOf returns the values of a car file in text.
func valuesOf(t testing.TB, path string) *yaml.Node {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	values, err := carfile.Values(path, text, nil)
	if err != nil {
		t.Fatal(err)
	}
	return values
}

// workbook writes values as a workbook.
func workbook(t testing.TB, values *yaml.Node) []byte {
	t.Helper()
	out, err := reports.CarBook{Version: "test", Car: "Test", Pages: sheets.Pages(values)}.Workbook()
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// A change is made in an open workbook.
type change func(f *excelize.File) error

// set gives a cell a value; nil empties it.
func set(sheet, cell string, value any) change {
	return func(f *excelize.File) error {
		if value == nil {
			return f.SetCellValue(sheet, cell, nil)
		}
		return f.SetCellValue(sheet, cell, value)
	}
}

// formatted gives a cell a number in a number format.
func formatted(sheet, cell string, value float64, format string) change {
	return func(f *excelize.File) error {
		id, err := f.NewStyle(&excelize.Style{CustomNumFmt: &format})
		if err != nil {
			return err
		}
		if err := f.SetCellStyle(sheet, cell, cell, id); err != nil {
			return err
		}
		return f.SetCellValue(sheet, cell, value)
	}
}

// changed makes changes in a workbook with a library that shares nothing with the reader.
func changed(t testing.TB, book []byte, changes ...change) []byte {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(book))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for _, c := range changes {
		if err := c(f); err != nil {
			t.Fatal(err)
		}
	}
	var out bytes.Buffer
	if err := f.Write(&out); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// repacked writes an archive anew with its parts changed; do returns the part as it is to
// be, or nil to leave it out.
func repacked(t testing.TB, book []byte, do func(name string, data []byte) []byte) []byte {
	t.Helper()
	in, err := zip.NewReader(bytes.NewReader(book), int64(len(book)))
	if err != nil {
		t.Fatal(err)
	}
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for _, f := range in.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		data, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		if data = do(f.Name, data); data == nil {
			continue
		}
		part, err := w.Create(f.Name)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := part.Write(data); err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

var sheetEntry = regexp.MustCompile(`<sheet name="([^"]*)" sheetId="(\d+)"`)

// partOf returns the part of a sheet of a workbook as it is written here.
func partOf(t testing.TB, book []byte, sheet string) (part string) {
	t.Helper()
	repacked(t, book, func(name string, data []byte) []byte {
		if name == "xl/workbook.xml" {
			for _, m := range sheetEntry.FindAllStringSubmatch(string(data), -1) {
				if m[1] == sheet {
					part = "xl/worksheets/sheet" + m[2] + ".xml"
				}
			}
		}
		return data
	})
	if part == "" {
		t.Fatalf("there is no sheet %s", sheet)
	}
	return part
}

// raw puts a cell as it would stand in the file in the place of one that is there: its
// attributes, and what is in it.
func raw(t testing.TB, book []byte, sheet, cell, attributes, content string) []byte {
	t.Helper()
	old := regexp.MustCompile(fmt.Sprintf(`<c r="%s"[^>]*?(?:/>|>.*?</c>)`, cell))
	part := partOf(t, book, sheet)
	return repacked(t, book, func(name string, data []byte) []byte {
		if name != part {
			return data
		}
		if n := len(old.FindAll(data, -1)); n != 1 {
			t.Fatalf("%s!%s stands %d times in the sheet, want once", sheet, cell, n)
		}
		return old.ReplaceAllLiteral(data, []byte(fmt.Sprintf(`<c r="%s" %s>%s</c>`, cell, attributes, content)))
	})
}
