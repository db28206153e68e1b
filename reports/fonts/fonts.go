// Package fonts holds the letters of drawings and documents, so that they look alike
// everywhere and can be measured: subsets of DejaVu Sans, its bold and its mono. Its
// licence stands beside the files, in LICENSE.
package fonts

import (
	_ "embed"
	"strings"
	"sync"
	"unicode"

	"codeberg.org/go-pdf/fpdf"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// A Face is one of the fonts. In Mono a combining mark takes a place of its own.
type Face int

// The faces.
const (
	Sans Face = iota
	Bold
	Mono
)

// The names under which Add gives the faces to a PDF: Family with style "" and "B",
// and MonoFamily with style "".
const (
	Family     = "dejavu"
	MonoFamily = "dejavumono"
)

// Missing stands for a character that the fonts do not have.
const Missing = '\uFFFD'

//go:embed DejaVuSans.ttf
var sans []byte

//go:embed DejaVuSans-Bold.ttf
var bold []byte

//go:embed DejaVuSansMono.ttf
var mono []byte

var files = [...][]byte{Sans: sans, Bold: bold, Mono: mono}

var parsed = sync.OnceValue(func() (out [len(files)]*sfnt.Font) {
	for i, data := range files {
		f, err := sfnt.Parse(data)
		if err != nil {
			panic("the font built into the program cannot be read: " + err.Error())
		}
		out[i] = f
	}
	return out
})

// Outlines returns the parsed font of a face. It may be used by several at once, each
// with a buffer of its own.
func (f Face) Outlines() *sfnt.Font { return parsed()[f] }

// Add gives all faces to a PDF.
func Add(pdf *fpdf.Fpdf) {
	pdf.AddUTF8FontFromBytes(Family, "", files[Sans])
	pdf.AddUTF8FontFromBytes(Family, "B", files[Bold])
	pdf.AddUTF8FontFromBytes(MonoFamily, "", files[Mono])
}

// Shown returns a text with Missing in place of control characters, of characters that
// steer the direction of writing, and of those that the face has no picture of.
func (f Face) Shown(text string) string {
	advances := advancesOf[f]()
	return strings.Map(func(r rune) rune {
		if r >= 0 && int(r) < len(advances) && advances[r] >= 0 {
			return r
		}
		return Missing
	}, text)
}

// Width returns the length of a text as Shown, in the unit of the size of the letters.
func (f Face) Width(text string, size float64) float64 {
	advances := advancesOf[f]()
	width := 0
	for _, r := range f.Shown(text) {
		width += advances[r]
	}
	return float64(width) * size / float64(f.Outlines().UnitsPerEm())
}

// advancesOf are the widths of the characters of each face, in units of its design; −1
// where it has none to show.
var advancesOf = [len(files)]func() []int{
	Sans: sync.OnceValue(Sans.advances), Bold: sync.OnceValue(Bold.advances), Mono: sync.OnceValue(Mono.advances),
}

func (f Face) advances() []int {
	var buffer sfnt.Buffer
	outlines := f.Outlines()
	// At this size, 26.6 fixed point reads as whole units of the design.
	units := fixed.I(int(outlines.UnitsPerEm()))
	out := make([]int, Missing+1)
	for r := range out {
		out[r] = -1
		i, err := outlines.GlyphIndex(&buffer, rune(r))
		if err != nil || i == 0 || unicode.In(rune(r), unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp) {
			continue
		}
		if advance, err := outlines.GlyphAdvance(&buffer, i, units, font.HintingNone); err == nil {
			out[r] = advance.Round()
		}
	}
	return out
}
