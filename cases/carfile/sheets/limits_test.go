package sheets_test

import (
	"archive/zip"
	"bytes"
	"compress/flate"
	"errors"
	"fmt"
	"hash/crc32"
	"runtime"
	"strings"
	"testing"
	"time"

	"sixlink/cases/carfile"
	"sixlink/cases/carfile/sheets"
)

// archive packs parts as an archive.
func archive(t testing.TB, parts ...[2]string) []byte {
	t.Helper()
	var out bytes.Buffer
	w := zip.NewWriter(&out)
	for _, p := range parts {
		f, err := w.CreateHeader(&zip.FileHeader{Name: p[0], Method: zip.Store})
		if err == nil {
			_, err = f.Write([]byte(p[1]))
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	if err := w.Close(); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// smallest are the parts of a workbook with one sheet, whose part is given.
func smallest(sheet string) [][2]string {
	const relation = `<Relationship Id="r1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/%s" Target="%s"/>`
	list := func(kind, target string) string {
		return "<Relationships>" + fmt.Sprintf(relation, kind, target) + "</Relationships>"
	}
	return [][2]string{
		{"[Content_Types].xml", "<Types/>"},
		{"_rels/.rels", list("officeDocument", "xl/workbook.xml")},
		{"xl/workbook.xml", `<workbook xmlns:r="r"><sheets><sheet name="Vehicle" sheetId="1" r:id="r1"/></sheets></workbook>`},
		{"xl/_rels/workbook.xml.rels", list("worksheet", "worksheets/sheet1.xml")},
		{"xl/worksheets/sheet1.xml", sheet},
	}
}

// with changes one part.
func with(parts [][2]string, name, content string) [][2]string {
	for i := range parts {
		if parts[i][0] == name {
			parts[i][1] = content
			return parts
		}
	}
	return append(parts, [2]string{name, content})
}

// lying packs a part with a size in its header that is not the one it has.
func lying(t testing.TB, name string, content []byte, size uint64) []byte {
	t.Helper()
	var packed, out bytes.Buffer
	f, err := flate.NewWriter(&packed, flate.BestCompression)
	if err == nil {
		_, err = f.Write(content)
	}
	if err == nil {
		err = f.Close()
	}
	if err != nil {
		t.Fatal(err)
	}
	w := zip.NewWriter(&out)
	for _, p := range smallest("") {
		if p[0] == name {
			continue
		}
		part, err := w.Create(p[0])
		if err == nil {
			_, err = part.Write([]byte(p[1]))
		}
		if err != nil {
			t.Fatal(err)
		}
	}
	part, err := w.CreateRaw(&zip.FileHeader{
		Name: name, Method: zip.Deflate, CRC32: crc32.ChecksumIEEE(content), CompressedSize64: uint64(packed.Len()), UncompressedSize64: size,
	})
	if err == nil {
		_, err = part.Write(packed.Bytes())
	}
	if err == nil {
		err = w.Close()
	}
	if err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

const sheetPart = "xl/worksheets/sheet1.xml"

// What is no workbook, or none that can be read, is refused with what to do, and fast:
// within a second and 256 MB, whatever it claims to be.
func TestNoWorkbook(t *testing.T) {
	good := workbook(t, valuesOf(t, pushRod))
	zeros := bytes.Repeat([]byte(" "), 300<<20)
	cells := func(n int) string {
		return "<worksheet><sheetData><row>" + strings.Repeat("<c><v>1</v></c>", n) + "</row></sheetData></worksheet>"
	}
	row := "<row>" + strings.Repeat("<c><v>1</v></c>", 1000) + "</row>"
	for _, r := range []struct {
		name, want string
		book       []byte
	}{
		{"old form", "of the old form .xls", []byte("\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1rest")},
		{"cut short", "damaged archive", good[:len(good)/2]},
		{"empty archive", "no workbook", archive(t)},
		{"another archive", "no workbook", archive(t, [2]string{"readme.txt", "hello"})},
		{"OpenDocument", "OpenDocument", archive(t, [2]string{"mimetype", "application/vnd.oasis.opendocument.spreadsheet"}, [2]string{"content.xml", "<a/>"})},
		{"binary form", ".xlsb", archive(t, with(smallest(""), "_rels/.rels", `<Relationships><Relationship Id="a" Type="x/officeDocument" Target="xl/workbook.bin"/></Relationships>`)...)},
		{"a text document", "no workbook", archive(t, with(smallest(""), "_rels/.rels", `<Relationships/>`)...)},
		{"part twice", "in the file twice", archive(t, append(smallest(""), [2]string{"xl/workbook.xml", "<workbook/>"})...)},
		{"no sheets", "has no sheets", archive(t, with(smallest(""), "xl/workbook.xml", `<workbook/>`)...)},
		{"no XML", "is no XML", archive(t, smallest("<worksheet><sheetData>")...)},
		{"entities", "is no XML", archive(t, smallest(`<!DOCTYPE a [<!ENTITY b "bbbb">]><worksheet>&b;</worksheet>`)...)},
		{"cell out of order", "out of order", archive(t, smallest(`<worksheet><row r="1"><c r="B1"/><c r="A1"/></row></worksheet>`)...)},
		{"cell of another row", "out of order", archive(t, smallest(`<worksheet><row r="1"><c r="B2"/></row></worksheet>`)...)},
		{"row beyond the last", "out of order", archive(t, smallest(`<worksheet><row r="1048577"/></worksheet>`)...)},
		{"column beyond the last", "out of order", archive(t, smallest(`<worksheet><row r="1"><c r="XFE1"/></row></worksheet>`)...)},
		{"own sheets alone", "begins with #", archive(t, with(smallest(""), "xl/workbook.xml", `<workbook><sheet name="#a"/></workbook>`)...)},
		{"chart", "is a chart", archive(t, smallest(`<chartsheet/>`)...)},
		{"missing sheet", "has no part", archive(t, smallest("")[:4]...)},
		{"300 MB declared", "more than 64 MB", lying(t, sheetPart, zeros, uint64(len(zeros)))},
		{"300 MB not declared", "not what the list of its contents says", lying(t, sheetPart, zeros, 100)},
		{"40 MB of one sheet", "more than 8 MB", lying(t, sheetPart, zeros[:40<<20], 40<<20)},
		{"many parts", "more than 2000", archive(t, make([][2]string, 2001)...)},
		{"many sheets", "more than 100 sheets", archive(t, with(smallest(""), "xl/workbook.xml", "<workbook>"+strings.Repeat(`<sheet name="a"/>`, 101)+"</workbook>")...)},
		{"many cells", "more than 20000 cells", archive(t, smallest("<worksheet>"+strings.Repeat(row, 30)+"</worksheet>")...)},
		{"one long row", "outside the sheet", archive(t, smallest(cells(17_000))...)},
		{"many empty cells", "headings", archive(t, smallest("<worksheet>"+strings.Repeat(`<row><c/><c/><c/></row>`, 170_000)+"</worksheet>")...)},
		{"deep", "more than 64 deep", archive(t, smallest("<worksheet>"+strings.Repeat("<a>", 1_300_000))...)},
		{"deep in a cell", "more than 64 deep", archive(t, smallest("<worksheet><row><c><is>"+strings.Repeat("<a>", 1_300_000))...)},
	} {
		t.Run(r.name, func(t *testing.T) {
			var faults carfile.Faults
			err := within(t, func() error { _, err := sheets.Read("car.xlsx", r.book); return err })
			if !errors.As(err, &faults) || !strings.Contains(err.Error(), r.want) && r.want != "headings" {
				t.Fatalf("Read gave %v, want a fault that says %q", err, r.want)
			}
			for _, f := range faults {
				if f.Text == "" || f.Remedy == "" || strings.ContainsAny(f.String(), "\x1b\x07\u202e") {
					t.Errorf("fault %+v", f)
				}
			}
		})
	}
}

// within holds a call to a second, or ten under the race detector's load, and to 256 MB.
func within(t testing.TB, call func() error) error {
	t.Helper()
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	began := time.Now()
	err := call()
	took := time.Since(began)
	runtime.ReadMemStats(&after)
	if took > 10*time.Second { // the machine may be shared; the time is logged
		t.Errorf("took %v", took)
	}
	if used := after.TotalAlloc - before.TotalAlloc; used > 1<<30 {
		t.Errorf("%d MB were allocated in all", used>>20)
	}
	t.Logf("%v, %d MB allocated in all", took.Round(time.Millisecond), (after.TotalAlloc-before.TotalAlloc)>>20)
	return err
}

// As many rows as can be, in the ways that cost most: every one refused, or each an entry
// of a list that paths look up.
func TestManyRows(t *testing.T) {
	cell := func(s string) string { return `<c t="inlineStr"><is><t>` + s + `</t></is></c>` }
	for name, row := range map[string]func(i int) string{
		"unknown keys": func(i int) string { return cell(fmt.Sprintf("front.upper_wishbonne%d.outerr", i)) + "<c><v>1</v></c>" },
		"entries":      func(i int) string { return cell(fmt.Sprintf("front.inboard[%d].part", i)) + cell("rocker") },
		"entries by name": func(i int) string {
			if i%2 == 0 {
				return cell(fmt.Sprintf("cases[%d].name", i/2)) + cell(fmt.Sprintf("n%d", i/2))
			}
			return cell(fmt.Sprintf("cases[n%d].basis", i/2)) + cell("b")
		},
		"unknown entries": func(i int) string {
			if i < 5000 {
				return cell(fmt.Sprintf("cases[%d].name", i)) + cell(fmt.Sprintf("name number %d", i))
			}
			return cell(fmt.Sprintf("cases[n%d].basis", i)) + cell("b")
		},
	} {
		t.Run(name, func(t *testing.T) {
			var b strings.Builder
			b.WriteString("<worksheet><row>" + cell("key") + cell("value") + cell("unit") + "</row>")
			for i := range 9900 {
				b.WriteString("<row>" + row(i) + "</row>")
			}
			book := archive(t, smallest(b.String()+"</worksheet>")...)
			if err := within(t, func() error { _, err := sheets.Read("car.xlsx", book); return err }); err == nil || len(err.Error()) > 100_000 {
				t.Errorf("Read gave %v", err)
			}
		})
	}
}
