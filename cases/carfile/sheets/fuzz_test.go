package sheets_test

import (
	"archive/zip"
	"bytes"
	"errors"
	"hash/crc32"
	"io"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/cases/carfile/sheets"
)

// holdRead holds what comes of any workbook: faults that have a text and a remedy and
// cannot act on a terminal, or a car that can be carried through and comes out the same
// again; in bounded time.
func holdRead(t *testing.T, book []byte) {
	began := time.Now()
	file, err := sheets.Read("car.xlsx", book)
	if took := time.Since(began); took > 10*time.Second { // the machine may be shared
		t.Errorf("took %v", took)
	}
	if err == nil {
		if _, err := cases.Run(file.Car); err != nil && strings.TrimSpace(err.Error()) == "" {
			t.Error("refused without a word")
		}
		if crc32.ChecksumIEEE(book)%8 != 0 { // to write it takes far longer than to read it
			return
		}
		values, err := sheets.Values("car.xlsx", book, nil)
		if err != nil {
			t.Fatal(err)
		}
		again, err := sheets.Values("car.xlsx", workbook(t, values), nil)
		if err != nil || !carfile.Equal(values, again) {
			t.Errorf("written and read again it is another car (%v)", err)
		}
		return
	}
	var faults carfile.Faults
	if !errors.As(err, &faults) || len(faults) == 0 {
		t.Fatalf("error %v is no Faults", err)
	}
	for _, f := range faults {
		if f.Text == "" || f.Remedy == "" {
			t.Errorf("fault %+v lacks a text or a remedy", f)
		}
	}
	if m := err.Error(); !utf8.ValidString(m) || strings.ContainsAny(m, "\x1b\a\r\x00\x7f\u202e") || len(m) > 200_000 {
		t.Errorf("message %q can act on a terminal, or is too long", m[:min(len(m), 500)])
	}
}

// Any bytes: most are no archive, and damaged ones must be told.
func FuzzWorkbook(f *testing.F) {
	good := workbook(f, valuesOf(f, pushRod))
	f.Add(good)
	f.Add(good[:len(good)-30])
	f.Add(archive(f, smallest("<worksheet/>")...))
	f.Add([]byte("\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1"))
	f.Fuzz(holdRead)
}

// Any part of a workbook, in an archive that is sound: sheets, texts, styles, relations.
func FuzzPart(f *testing.F) {
	good := workbook(f, valuesOf(f, pushRod))
	parts := lean(f, good)
	for i, p := range parts {
		if len(p[1]) < 40_000 {
			f.Add(byte(i), p[1])
		}
	}
	for _, sheet := range []string{
		`<worksheet><sheetData><row><c t="inlineStr"><is><t>key</t></is></c><c t="inlineStr"><is><r><t>val</t></r><r><t>ue</t></r><rPh><t>x</t></rPh></is></c></row><row r="7"><c t="str"><v>vehicle.mass</v></c><c><f>1</f><v>5</v></c></row></sheetData></worksheet>`,
		`<worksheet><cols><col min="1" max="3" hidden="1"/></cols><sheetData><row r="1" hidden="true"><c r="A1" t="b"><v>1</v></c></row></sheetData><mergeCells><mergeCell ref="A1:B2"/></mergeCells></worksheet>`,
	} {
		f.Add(byte(250), sheet)
	}
	f.Fuzz(func(t *testing.T, at byte, content string) {
		changed := slices.Clone(parts)
		i := int(at) % len(parts)
		if at == 250 {
			for j, p := range parts {
				if strings.HasSuffix(p[0], "sheet2.xml") {
					i = j
				}
			}
		}
		changed[i][1] = content
		holdRead(t, archive(t, changed...))
	})
}

// Any value in any cell of a good workbook.
func FuzzCell(f *testing.F) {
	parts := lean(f, workbook(f, valuesOf(f, pushRod)))
	good := archive(f, parts...)
	pages := []string{"Vehicle", "Axles", "Hardpoints", "Members", "Cases", "Materials", "More"}
	var inSheet []int // of the parts
	for _, page := range pages {
		part := partOf(f, good, page)
		inSheet = append(inSheet, slices.IndexFunc(parts, func(p [2]string) bool { return p[0] == part }))
	}
	for i, s := range []string{"1.5", "front", "12,5", "#REF!", "vehicle.mass", "cases[Bump].travel", "{}", "0; 45", "1e308", "TRUE", "\u202e", "0.875 in", ""} {
		f.Add(byte(i), uint16(20+7*i), byte(i), s)
	}
	types := []string{"", "n", "inlineStr", "str", "b", "e", "d", "s"}
	f.Fuzz(func(t *testing.T, page byte, cell uint16, kind byte, text string) {
		of := inSheet[int(page)%len(inSheet)]
		pieces := strings.SplitAfter(parts[of][1], "</c>")
		i := int(cell) % (len(pieces) - 1)
		begin := strings.LastIndex(pieces[i], "<c r=")
		if begin < 0 {
			return
		}
		name, _, _ := strings.Cut(pieces[i][begin+len(`<c r="`):], `"`)
		value := "<v>" + escaped(text) + "</v>"
		if types[int(kind)%len(types)] == "inlineStr" {
			value = "<is><t>" + escaped(text) + "</t></is>"
		}
		pieces[i] = pieces[i][:begin] + `<c r="` + name + `" t="` + types[int(kind)%len(types)] + `">` + value + "</c>"
		changed := slices.Clone(parts)
		changed[of][1] = strings.Join(pieces, "")
		holdRead(t, archive(t, changed...))
	})
}

func escaped(s string) string {
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;").Replace(strings.ToValidUTF8(s, "?"))
}

// lean are the parts of a workbook that are read, without the cells that are empty.
func lean(t testing.TB, book []byte) (out [][2]string) {
	t.Helper()
	blank := regexp.MustCompile(`<c r="[A-Z]+[0-9]+" s="[0-9]+"></c>|<row r="[0-9]+"[^>]*></row>`)
	about := regexp.MustCompile(`(?s)<c r="D[0-9]+"[^>]*><is><t xml:space="preserve">[^<]{30,}</t></is></c>`)
	for _, p := range unpacked(t, book) {
		if strings.HasPrefix(p[0], "xl/worksheets/sheet") || strings.HasPrefix(p[0], "xl/workbook") || strings.HasSuffix(p[0], "rels/.rels") ||
			p[0] == "xl/_rels/workbook.xml.rels" || p[0] == "xl/styles.xml" || p[0] == "[Content_Types].xml" || p[0] == "xl/sharedStrings.xml" {
			for range 2 {
				p[1] = blank.ReplaceAllString(about.ReplaceAllString(p[1], ""), "")
			}
			out = append(out, p)
		}
	}
	return out
}

// unpacked are the parts of an archive.
func unpacked(t testing.TB, book []byte) (out [][2]string) {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(book), int64(len(book)))
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		data, err := io.ReadAll(r)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, [2]string{f.Name, string(data)})
	}
	return out
}
