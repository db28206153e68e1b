package reports_test

import (
	"bytes"
	"crypto/sha256"
	"encoding/xml"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode/utf16"

	"sixlink/reports"
)

// tool runs one of poppler's tools on a PDF: they share nothing with what wrote it.
func tool(t *testing.T, data []byte, name string, flags ...string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		if os.Getenv("SIXLINK_NEED_TOOLS") != "" {
			t.Fatalf("%s is not on this machine, and SIXLINK_NEED_TOOLS is set", name)
		}
		t.Skipf("%s is not on this machine", name)
	}
	file := filepath.Join(t.TempDir(), "pack.pdf")
	if err := os.WriteFile(file, data, 0o600); err != nil {
		t.Fatal(err)
	}
	args := append(flags, file)
	if name == "pdftotext" {
		args = append(args, "-")
	}
	cmd := exec.Command(path, args...)
	var warnings strings.Builder
	cmd.Stderr = &warnings
	out, err := cmd.Output()
	if err != nil || warnings.Len() > 0 {
		t.Fatalf("%s: %v\n%s", name, err, warnings.String())
	}
	return string(out)
}

// A paperPage is a page as pdftotext reads it, sizes in points from the upper left.
type paperPage struct {
	Width  float64     `xml:"width,attr"`
	Height float64     `xml:"height,attr"`
	Words  []paperWord `xml:"word"`
}

type paperWord struct {
	X1   float64 `xml:"xMin,attr"`
	Y1   float64 `xml:"yMin,attr"`
	X2   float64 `xml:"xMax,attr"`
	Y2   float64 `xml:"yMax,attr"`
	Text string  `xml:",chardata"`
}

// text is all words of a page, as they follow each other in the file.
func (p paperPage) text() string {
	var words []string
	for _, w := range p.Words {
		words = append(words, w.Text)
	}
	return strings.Join(words, " ")
}

// rows are the words that stand side by side on one line, from left to right.
func (p paperPage) rows() (out []string) {
	words := slices.Clone(p.Words)
	slices.SortStableFunc(words, func(a, b paperWord) int {
		if d := a.Y2 - b.Y2; d > 1 || d < -1 {
			return int(d / max(d, -d))
		}
		return int(a.X1 - b.X1)
	})
	for i, w := range words {
		if d := 0.0; i > 0 {
			if d = w.Y2 - words[i-1].Y2; d < 1 && d > -1 {
				out[len(out)-1] += " " + w.Text
				continue
			}
		}
		out = append(out, w.Text)
	}
	return out
}

func pack(t *testing.T, r reports.Report) []byte {
	t.Helper()
	data, err := r.PDF()
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// read remembers the pages of each pack: reading takes longer than writing.
var read = map[[sha256.Size]byte][]paperPage{}

func pages(t *testing.T, data []byte) []paperPage {
	t.Helper()
	hash := sha256.Sum256(data)
	if p, ok := read[hash]; ok {
		return p
	}
	var doc struct {
		Pages []paperPage `xml:"body>doc>page"`
	}
	text := tool(t, data, "pdftotext", "-bbox")
	text = text[strings.Index(text, "<html"):]
	d := xml.NewDecoder(strings.NewReader(text))
	d.Strict, d.AutoClose, d.Entity = false, xml.HTMLAutoClose, xml.HTMLEntity
	if err := d.Decode(&doc); err != nil {
		t.Fatal(err)
	}
	if len(doc.Pages) == 0 {
		t.Fatal("pdftotext finds no page")
	}
	read[hash] = doc.Pages
	return doc.Pages
}

// wholeText is the text of all pages, one space between words.
func wholeText(p []paperPage) string {
	var out []string
	for _, page := range p {
		out = append(out, page.text())
	}
	return strings.Join(out, " ")
}

// pageCount is the number of pages that pdfinfo finds.
func pageCount(t *testing.T, data []byte) int {
	t.Helper()
	m := regexp.MustCompile(`(?m)^Pages:\s+(\d+)$`).FindStringSubmatch(tool(t, data, "pdfinfo"))
	if m == nil {
		t.Fatal("pdfinfo gives no number of pages")
	}
	n, err := strconv.Atoi(m[1])
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// bookmarks are the titles of the outline, which stand in the file as UTF-16.
func bookmarks(t *testing.T, data []byte) (out []string) {
	t.Helper()
	data = bytes.Clone(data)
	parts := bytes.Split(data, []byte("<</Title (\xfe\xff"))
	for _, raw := range parts[1:] {
		var units []byte
		for i := 0; i < len(raw) && raw[i] != ')'; i++ {
			if raw[i] == '\\' {
				i++
				if raw[i] == 'r' {
					raw[i] = '\r'
				}
			}
			units = append(units, raw[i])
		}
		var title []uint16
		for i := 0; i+1 < len(units); i += 2 {
			title = append(title, uint16(units[i])<<8|uint16(units[i+1]))
		}
		out = append(out, string(utf16.Decode(title)))
	}
	if len(out) < 10 {
		t.Fatalf("%d bookmarks found", len(out))
	}
	return out
}

// oneSided adds a case of which one wheel alone has the load.
var oneSided = []string{"\ncases:\n", "\ncases:\n  - {name: Measured, contact_forces: {front_left: {force: [-4000, -2100, 5000]}}}\n"}

const hostile = "<script>alert(1)</script> (\\) %PDF endstream endobj {nb} \x1b[31m \u202e 😀 漢字 e\u0301 x"
