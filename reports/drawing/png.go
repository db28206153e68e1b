package drawing

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"math"
	"slices"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"
)

// MaxPixels bounds a picture: 100 million points take 400 MB.
const MaxPixels = 100e6

// PNG returns the drawing as a picture of so many points to the inch.
func (d Drawing) PNG(dpi float64) ([]byte, error) {
	scale := dpi / 25.4
	w, h := math.Round(d.Width*scale), math.Round(d.Height*scale)
	if !(w >= 1 && h >= 1 && w*h <= MaxPixels) {
		return nil, fmt.Errorf("picture of %.0f × %.0f points at %g dpi: must be from 1 to %.0f million points: give another resolution", w, h, dpi, MaxPixels/1e6)
	}
	c := canvas{image.NewRGBA(image.Rect(0, 0, int(w), int(h))), scale}
	draw.Draw(c.image, c.image.Bounds(), image.NewUniform(colours[Paper].rgba()), image.Point{}, draw.Src)
	for _, m := range d.Marks {
		if m.Kind == Text {
			c.fill(m.Fill, m.letters())
			continue
		}
		if m.Kind != Polyline {
			c.fill(m.Fill, []outline{m.area()})
		}
		if m.Stroke.drawn() {
			c.fill(m.Stroke.Ink, m.line())
		}
	}
	var b bytes.Buffer
	if err := png.Encode(&b, c.image); err != nil {
		return nil, fmt.Errorf("picture: %w", err)
	}
	return b.Bytes(), nil
}

func (c colour) rgba() color.RGBA { return color.RGBA{c[0], c[1], c[2], 255} }

// An outline is a closed line, mm. Where outlines of one mark lie over each other they
// must turn the same way, or they cancel.
type outline []Point

// A canvas is a picture with its points to the millimetre.
type canvas struct {
	image *image.RGBA
	scale float64
}

// fill paints outlines, which are one area together.
func (c canvas) fill(ink Ink, outlines []outline) {
	box := image.Rectangle{}
	for _, o := range outlines {
		for _, p := range o {
			x, y := int(math.Floor(p.X*c.scale)), int(math.Floor(p.Y*c.scale))
			box = box.Union(image.Rect(x-1, y-1, x+2, y+2))
		}
	}
	box = box.Intersect(c.image.Bounds())
	if ink == None || box.Empty() {
		return
	}
	r := vector.NewRasterizer(box.Dx(), box.Dy())
	for _, o := range outlines {
		for i, p := range o {
			x, y := float32(p.X*c.scale-float64(box.Min.X)), float32(p.Y*c.scale-float64(box.Min.Y))
			if i == 0 {
				r.MoveTo(x, y)
			} else {
				r.LineTo(x, y)
			}
		}
		r.ClosePath()
	}
	r.Draw(c.image, box, image.NewUniform(colours[ink].rgba()), image.Point{})
}

// round is a circle as a polygon, its sides closer to the circle than a hundredth of a
// millimetre for any on a sheet.
func round(at Point, radius float64) (out outline) {
	n := 16 + int(8*math.Sqrt(radius))*4
	for i := range n {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		out = append(out, Point{at.X + radius*cos, at.Y + radius*sin})
	}
	return out
}

func (m Mark) area() outline {
	if m.Kind == Circle {
		return round(m.Points[0], m.Radius)
	}
	return m.Points
}

// line is the stroke as an area: a strip along each piece, and a round filling on the
// outer side of each corner.
func (m Mark) line() (out []outline) {
	points, half := m.Points, m.Stroke.Width/2
	if m.Kind == Circle {
		if len(m.Stroke.Dash) == 0 && m.Radius > half {
			inner := round(m.Points[0], m.Radius-half)
			slices.Reverse(inner)
			return []outline{round(m.Points[0], m.Radius+half), inner}
		}
		points = round(m.Points[0], m.Radius)
	}
	closed := m.Kind != Polyline && len(points) > 1
	if closed {
		points = append(points[:len(points):len(points)], points[0])
	}
	for _, piece := range dashed(points, m.Stroke.Dash) {
		for i := 1; i < len(piece); i++ {
			out = append(out, strip(piece[i-1], piece[i], half))
			if i > 1 {
				out = append(out, corner(piece[i-2], piece[i-1], piece[i], half))
			}
		}
	}
	if closed && len(m.Stroke.Dash) == 0 {
		out = append(out, corner(points[len(points)-2], points[0], points[1], half))
	}
	return slices.DeleteFunc(out, func(o outline) bool { return o == nil })
}

// corner fills the gap on the outer side where the strips of two pieces meet; it turns
// as round does.
func corner(a, p, b Point, half float64) outline {
	before, after := math.Atan2(p.Y-a.Y, p.X-a.X), math.Atan2(b.Y-p.Y, b.X-p.X)
	if a == p || p == b {
		return nil
	}
	turned := math.Remainder(after-before, 2*math.Pi)
	from, to := before-math.Pi/2, before-math.Pi/2+turned
	if turned < 0 {
		from, to = before+math.Pi/2+turned, before+math.Pi/2
	}
	const pieces = 8
	out := outline{p}
	for i := range pieces + 1 {
		sin, cos := math.Sincos(from + (to-from)*float64(i)/pieces)
		out = append(out, Point{p.X + half*cos, p.Y + half*sin})
	}
	return out
}

// strip is a rectangle about a piece of a line; it turns as round does.
func strip(a, b Point, half float64) outline {
	length := math.Hypot(b.X-a.X, b.Y-a.Y)
	if length == 0 {
		return nil
	}
	x, y := -(b.Y-a.Y)/length*half, (b.X-a.X)/length*half
	return outline{{a.X - x, a.Y - y}, {b.X - x, b.Y - y}, {b.X + x, b.Y + y}, {a.X + x, a.Y + y}}
}

// dashed cuts a line into the pieces that are drawn.
func dashed(points []Point, dash []float64) (out [][]Point) {
	period := 0.0
	for _, l := range dash {
		period += l
	}
	if !(period > 0) || len(points) < 2 {
		return [][]Point{points}
	}
	on, k, left := true, 0, dash[0]
	piece := []Point{points[0]}
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		length, done := math.Hypot(b.X-a.X, b.Y-a.Y), 0.0
		for length-done > left {
			done += left
			at := Point{a.X + (b.X-a.X)*done/length, a.Y + (b.Y-a.Y)*done/length}
			if on {
				out = append(out, append(piece, at))
			}
			on, k = !on, (k+1)%len(dash)
			left, piece = dash[k], []Point{at}
		}
		left -= length - done
		piece = append(piece, b)
	}
	if on {
		out = append(out, piece)
	}
	return out
}

// letters are the outlines of a text.
func (m Mark) letters() (out []outline) {
	if len(m.Points) == 0 {
		return nil
	}
	var buffer sfnt.Buffer
	face := m.face().Outlines()
	units := fixed.I(int(face.UnitsPerEm()))
	sin, cos := math.Sincos(m.Turn * math.Pi / 180)
	along := -m.start()
	for _, r := range m.face().Shown(m.Text) {
		glyph, err := face.GlyphIndex(&buffer, r)
		if err != nil {
			continue
		}
		segments, err := face.LoadGlyph(&buffer, glyph, units, nil)
		if err != nil {
			continue
		}
		perUnit := m.Size / float64(units)
		place := func(p fixed.Point26_6) Point {
			x, y := along+float64(p.X)*perUnit, float64(p.Y)*perUnit
			return Point{m.Points[0].X + x*cos - y*sin, m.Points[0].Y + x*sin + y*cos}
		}
		out = append(out, contours(segments, place)...)
		if advance, err := face.GlyphAdvance(&buffer, glyph, units, font.HintingNone); err == nil {
			along += float64(advance) * perUnit
		}
	}
	return out
}

// contours turns the curves of a glyph into straight pieces.
func contours(segments sfnt.Segments, place func(fixed.Point26_6) Point) (out []outline) {
	const pieces = 6
	var o outline
	for _, s := range segments {
		switch s.Op {
		case sfnt.SegmentOpMoveTo:
			if len(o) > 0 {
				out = append(out, o)
			}
			o = outline{place(s.Args[0])}
		case sfnt.SegmentOpLineTo:
			o = append(o, place(s.Args[0]))
		case sfnt.SegmentOpQuadTo:
			a, b, c := o[len(o)-1], place(s.Args[0]), place(s.Args[1])
			for i := 1; i <= pieces; i++ {
				t := float64(i) / pieces
				u, v, w := (1-t)*(1-t), 2*t*(1-t), t*t
				o = append(o, Point{u*a.X + v*b.X + w*c.X, u*a.Y + v*b.Y + w*c.Y})
			}
		}
	}
	if len(o) > 0 {
		out = append(out, o)
	}
	return out
}
