// Package drawing is a sheet of marks in millimetres and the writers that put it on
// screen and paper: SVG, PNG and PDF from the same marks, so that no two forms differ.
package drawing

import "sixlink/reports/fonts"

// A Point is a place on the sheet, mm: x to the right, y down.
type Point struct{ X, Y float64 }

// An Ink is what a colour says. The writers choose the colours.
type Ink int

// The inks.
const (
	None        Ink = iota // not drawn, not filled
	Paper                  // the colour of the sheet
	Line                   // outlines and words
	Faint                  // what stands behind: wheel, scale, leaders
	Tension                // members that pull
	Compression            // members that push
	Load                   // forces from outside
	Hot                    // a reserve factor below 1
)

// A Stroke is a line; Width 0 draws none.
type Stroke struct {
	Ink   Ink
	Width float64   // mm
	Dash  []float64 // lengths of line and gap in turn, mm; none: solid
}

// A Kind says what a mark is.
type Kind int

// The kinds of mark.
const (
	Polyline Kind = iota
	Polygon
	Circle // about the first point
	Text   // its baseline at the first point
)

// An Anchor says which part of a text stands at its point.
type Anchor int

// The anchors.
const (
	Start Anchor = iota
	Middle
	End
)

// A Mark is one thing on the sheet. Later marks cover earlier ones.
type Mark struct {
	Kind   Kind
	Points []Point
	Radius float64 // of a circle, mm
	Stroke Stroke
	Fill   Ink // of an area, or of the letters

	Text   string
	Size   float64 // of the letters, mm
	Bold   bool
	Anchor Anchor
	Turn   float64 // of a text about its point, degrees, clockwise

	Key   string // what the mark belongs to, such as a member; marks of one key that follow each other are one group
	Title string // accessible name of the group, on its first mark: a reader can step to it
}

// A Drawing is a sheet of marks.
type Drawing struct {
	Width, Height      float64 // mm
	Title, Description string  // accessible name and description
	Marks              []Mark
}

// face is the font of a text.
func (m Mark) face() fonts.Face {
	if m.Bold {
		return fonts.Bold
	}
	return fonts.Sans
}

// TextWidth is the length of a text, mm.
func (m Mark) TextWidth() float64 { return m.face().Width(m.Text, m.Size) }

// start is how far left of its point a text begins, mm.
func (m Mark) start() float64 {
	switch m.Anchor {
	case Middle:
		return m.TextWidth() / 2
	case End:
		return m.TextWidth()
	}
	return 0
}

// A colour is red, green and blue, 0 to 255.
type colour [3]uint8

// colours are those of white paper. Tension and compression are the blue and the
// vermilion of Okabe and Ito's palette for all kinds of colour vision
// (https://jfly.uni-koeln.de/color/, 2008).
var colours = [...]colour{
	Paper: {255, 255, 255}, Line: {26, 26, 26}, Faint: {140, 140, 140},
	Tension: {0, 114, 178}, Compression: {213, 94, 0}, Load: {0, 97, 70}, Hot: {158, 27, 0},
}

var inkNames = [...]string{None: "none", Paper: "paper", Line: "line", Faint: "faint", Tension: "tension", Compression: "compression", Load: "load", Hot: "hot"}

// String is the name of the ink, as in the classes of the SVG: stroke-tension, fill-line.
func (i Ink) String() string { return inkNames[i] }
