package drawing_test

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"image"
	"image/png"
	"io"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"sixlink/reports/drawing"
	"sixlink/reports/fonts"
)

const hostile = `</text><script>alert("1")</script> & 'x' ]]> ` + "\x00\u202e"

// sample has a mark of every kind, and text that would like to be markup.
func sample() drawing.Drawing {
	return drawing.Drawing{Width: 100, Height: 60, Title: hostile, Description: hostile, Marks: []drawing.Mark{
		{Kind: drawing.Polygon, Points: []drawing.Point{{X: 10, Y: 10}, {X: 40, Y: 10}, {X: 40, Y: 30}, {X: 10, Y: 30}}, Fill: drawing.Tension},
		{Kind: drawing.Polyline, Points: []drawing.Point{{X: 10, Y: 50}, {X: 50, Y: 50}}, Stroke: drawing.Stroke{Ink: drawing.Compression, Width: 2, Dash: []float64{3, 1}}, Key: `rod"><b>`, Title: hostile},
		{Kind: drawing.Circle, Points: []drawing.Point{{X: 70, Y: 25}}, Radius: 10, Stroke: drawing.Stroke{Ink: drawing.Line, Width: 0.7}, Key: `rod"><b>`},
		{Kind: drawing.Text, Points: []drawing.Point{{X: 90, Y: 58}}, Size: 4, Text: hostile, Anchor: drawing.End, Turn: 10, Fill: drawing.Hot, Bold: true},
	}}
}

// elements reads a text as XML, which must be well formed, and returns its elements.
func elements(t *testing.T, data []byte) (out []xml.StartElement, words string) {
	t.Helper()
	for d := xml.NewDecoder(bytes.NewReader(data)); ; {
		token, err := d.Token()
		if err == io.EOF {
			return out, words
		}
		if err != nil {
			t.Fatalf("not well formed: %v", err)
		}
		switch e := token.(type) {
		case xml.StartElement:
			out = append(out, e.Copy())
		case xml.CharData:
			words += string(e)
		}
	}
}

// A text of the user's stays text, in elements and in attributes, in a file and in a page.
func TestSVGEscapes(t *testing.T) {
	for name, data := range map[string][]byte{"file": sample().SVG(), "page": sample().Inline(`a"b`)} {
		found, words := elements(t, data)
		ids := map[string]bool{}
		for _, e := range found {
			if !strings.Contains("svg title desc rect g polygon polyline circle text", e.Name.Local) {
				t.Errorf("%s: an element <%s>", name, e.Name.Local)
			}
			for _, a := range e.Attr {
				if strings.HasPrefix(a.Name.Local, "on") || a.Name.Local == "style" {
					t.Errorf("%s: attribute %s", name, a.Name.Local)
				}
				if a.Name.Local == "id" && ids[a.Value] {
					t.Errorf("%s: id %q twice", name, a.Value)
				}
				ids[a.Value] = ids[a.Value] || a.Name.Local == "id"
			}
		}
		want := strings.NewReplacer("\x00", "\uFFFD", "\u202e", "\uFFFD").Replace(hostile)
		if n := strings.Count(words, want); n != 4 {
			t.Errorf("%s: the text stands %d times, want 4 (title, description, group, text): %q", name, n, words)
		}
	}
}

// The marks of a member are one group that can be reached by key; colours have classes.
func TestSVGGroups(t *testing.T) {
	found, _ := elements(t, sample().Inline("d1"))
	groups, classes := 0, ""
	for _, e := range found {
		attr := map[string]string{}
		for _, a := range e.Attr {
			attr[a.Name.Local] = a.Value
		}
		classes += attr["class"] + "|"
		if e.Name.Local == "g" {
			if groups++; attr["data-key"] != `rod"><b>` || attr["tabindex"] != "0" || attr["aria-label"] == "" {
				t.Errorf("group %v", e.Attr)
			}
		}
		if e.Name.Local == "svg" && (attr["viewBox"] != "0 0 100 60" || attr["aria-labelledby"] != "d1-title" || attr["aria-describedby"] != "d1-desc") {
			t.Errorf("drawing %v", e.Attr)
		}
	}
	if groups != 1 || classes != "drawing|||fill-tension|||stroke-compression|hit|stroke-line|fill-hot|" {
		t.Errorf("%d groups, want 1; classes %q", groups, classes)
	}
}

func picture(t *testing.T, d drawing.Drawing, dpi float64) image.Image {
	t.Helper()
	data, err := d.PNG(dpi)
	if err != nil {
		t.Fatal(err)
	}
	again, err := d.PNG(dpi)
	if err != nil || !bytes.Equal(data, again) {
		t.Errorf("the same drawing gives other bytes (%v)", err)
	}
	img, err := png.Decode(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	return img
}

// inked is the area of a drawing that is not paper, mm², points at the edge by their share.
func inked(t *testing.T, m drawing.Mark) float64 {
	t.Helper()
	const dpi = 254 // 10 points to the millimetre
	img := picture(t, drawing.Drawing{Width: 60, Height: 60, Marks: []drawing.Mark{m}}, dpi)
	if b := img.Bounds(); b.Dx() != 600 || b.Dy() != 600 {
		t.Fatalf("picture %v, want 600 × 600", b)
	}
	_, _, most, _ := img.At(0, 0).RGBA()
	least, sum := most, 0.0
	for y := range 600 {
		for x := range 600 {
			_, _, b, _ := img.At(x, y).RGBA()
			least = min(least, b)
			sum += float64(most - b)
		}
	}
	return sum / float64(most-least) / 100
}

// glyphO is the area of the letter O, units of the design squared: of the outlines of the
// full font, by Python's fontTools (AreaPen).
const glyphO = 785710

// bend is a line 30 mm long that turns once by an angle, degrees, and goes on for 25 mm.
func bend(turn, width float64) drawing.Mark {
	sin, cos := math.Sincos(turn * math.Pi / 180)
	points := []drawing.Point{{X: 5, Y: 30}, {X: 35, Y: 30}, {X: 35 + 25*cos, Y: 30 + 25*sin}}
	return drawing.Mark{Kind: drawing.Polyline, Points: points, Stroke: drawing.Stroke{Ink: drawing.Line, Width: width}}
}

// bent is its area: of two strips, less what they share on the inner side, and a sector
// on the outer side.
func bent(turn, width float64) float64 {
	angle, half := turn*math.Pi/180, width/2
	return (30+25)*width - half*half*math.Tan(angle/2) + half*half*angle/2
}

// Areas in a picture are those of geometry: polygons, discs, rings, strips with and
// without dashes, corners of a line.
func TestPNGAreas(t *testing.T) {
	p := func(xy ...float64) (out []drawing.Point) {
		for i := 0; i < len(xy); i += 2 {
			out = append(out, drawing.Point{X: xy[i], Y: xy[i+1]})
		}
		return out
	}
	line := func(width float64, dash ...float64) drawing.Stroke {
		return drawing.Stroke{Ink: drawing.Line, Width: width, Dash: dash}
	}
	for _, tt := range []struct {
		name string
		mark drawing.Mark
		want float64
	}{
		{"triangle", drawing.Mark{Kind: drawing.Polygon, Points: p(5, 5, 45, 5, 5, 35), Fill: drawing.Line}, 600},
		{"disc", drawing.Mark{Kind: drawing.Circle, Points: p(30, 30), Radius: 20, Fill: drawing.Line}, math.Pi * 400},
		{"ring", drawing.Mark{Kind: drawing.Circle, Points: p(30, 30), Radius: 20, Stroke: line(2)}, math.Pi * (21*21 - 19*19)},
		{"strip", drawing.Mark{Kind: drawing.Polyline, Points: p(10, 10, 50, 40), Stroke: line(3)}, 150},
		{"strip with dashes of 3 in 4", drawing.Mark{Kind: drawing.Polyline, Points: p(10, 10, 42, 34), Stroke: line(2, 3, 1)}, 60},
		{"frame with round corners", drawing.Mark{Kind: drawing.Polygon, Points: p(10, 10, 50, 10, 50, 40, 10, 40), Stroke: line(2)}, 40*30 - 38*28 + 2*(40+30) + math.Pi},
		{"corner to the right", bend(90, 4), bent(90, 4)},
		{"corner to the left", bend(-60, 8), bent(60, 8)},
		{"blunt corner", bend(40, 8), bent(40, 8)},
		{"letter O", drawing.Mark{Kind: drawing.Text, Points: p(10, 50), Text: "O", Size: 40, Fill: drawing.Line}, glyphO * 40 * 40 / 2048 / 2048},
	} {
		if got := inked(t, tt.mark); !(math.Abs(got-tt.want) <= 0.002*tt.want) {
			t.Errorf("%s: %.2f mm², want %.2f", tt.name, got, tt.want)
		}
	}
}

// A text stands where its anchor says and is as long as measured: the letter H has its
// stems 201 and 1339 units of 2048 from its start (bounds of the glyph, by fontTools).
func TestPNGText(t *testing.T) {
	for _, tt := range []struct {
		anchor      drawing.Anchor
		left, right float64 // of the ink from the point, in widths and units
	}{{drawing.Start, 201, 1339}, {drawing.Middle, 201 - 1540.0/2, 1339 - 1540.0/2}, {drawing.End, 201 - 1540, 1339 - 1540}} {
		m := drawing.Mark{Kind: drawing.Text, Points: []drawing.Point{{X: 30, Y: 40}}, Text: "H", Size: 20, Fill: drawing.Line, Anchor: tt.anchor}
		img := picture(t, drawing.Drawing{Width: 60, Height: 60, Marks: []drawing.Mark{m}}, 254)
		left, right, top, bottom := 600, 0, 600, 0
		for y := range 600 {
			for x := range 600 {
				if r, _, _, _ := img.At(x, y).RGBA(); r < 0x8000 {
					left, right, top, bottom = min(left, x), max(right, x+1), min(top, y), max(bottom, y+1)
				}
			}
		}
		for name, d := range map[string][2]float64{
			"left": {float64(left) / 10, 30 + tt.left*20/2048}, "right": {float64(right) / 10, 30 + tt.right*20/2048},
			"bottom": {float64(bottom) / 10, 40}, "top": {float64(top) / 10, 40 - 1493*20/2048.0},
		} {
			if !(math.Abs(d[0]-d[1]) <= 0.11) {
				t.Errorf("anchor %d: %s edge at %g mm, want %g", tt.anchor, name, d[0], d[1])
			}
		}
	}
}

func TestPNGBounds(t *testing.T) {
	for _, dpi := range []float64{0, -1, 1e-9, 1e6, math.NaN(), math.Inf(1)} {
		if _, err := sample().PNG(dpi); err == nil {
			t.Errorf("%g dpi is taken", dpi)
		}
	}
}

// In a PDF the marks stand where the sheet is put: points of 1/72 in, from the lower edge
// (ISO 32000-1, 8.3.2.3), and the text can be read.
func TestPDF(t *testing.T) {
	pdf := fpdf.New("P", "mm", "A4", "")
	pdf.SetCompression(false)
	pdf.SetCreationDate(time.Unix(0, 0))
	fonts.Add(pdf)
	pdf.AddPage()
	sample().PDF(pdf, 20, 30, 50) // at half size
	var b bytes.Buffer
	if err := pdf.Output(&b); err != nil {
		t.Fatal(err)
	}
	const k = 72 / 25.4
	sin, cos := math.Sincos(-10 * math.Pi / 180) // counter-clockwise, as ISO 32000-1, 8.3.3 has it
	end := 65 - 0.5*fonts.Bold.Width(hostile, 4)
	for _, want := range []string{
		// the strip from (10, 50) to (50, 50), 2 wide, dashes 3 and 1
		decimals(25*k, (297-55)*k) + " m", decimals(45*k, (297-55)*k) + " l", decimals(1*k) + " w", "[" + decimals(1.5*k, 0.5*k) + "] 0.00 d",
		decimals(25*k, (297-35)*k) + " m", "0.000 0.447 0.698 rg", // the area: 0, 114, 178 of 255
		" " + decimals(4*0.5*k) + " Tf", fmt.Sprintf("%.5f %.5f %.5f %.5f ", cos, sin, -sin, cos), "BT " + decimals(end*k, (297-59)*k) + " Td", // the text
	} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("page lacks %q:\n%s", want, regexp.MustCompile(`(?s)stream.*?endstream`).FindString(b.String()))
		}
	}
}

func decimals(values ...float64) string {
	var out []string
	for _, v := range values {
		out = append(out, strconv.FormatFloat(v, 'f', 2, 64))
	}
	return strings.Join(out, " ")
}
