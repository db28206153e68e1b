package reports

import (
	"math"

	"sixlink/reports/drawing"
)

// Sheet sizes, mm (ISO 216), lying: all views on A3, one view on A4.
const (
	a3Width, a3Height = 420.0, 297.0
	a4Width, a4Height = 297.0, 210.0
	sheetMargin       = 10.0
	sheetLetter       = 2.7
	columnGap         = 6.0
)

// scales are the scales of sheets, 1 to so many: those of ISO 5455, and steps between
// them, for a corner seldom fills a sheet at one of those.
var scales = []float64{1, 2, 2.5, 3, 4, 5, 6, 7, 8, 9, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100, 200, 500, 1000}

// CornerSheet lays out a sheet of one corner, with frame, title block and caution: one
// view, or all of them where none is named. All stand as in first-angle projection (ISO
// 5456-2): the side view in the middle, the front view beside it on the far side of the
// front, the top view below.
func (r Report) CornerSheet(corner int, views ...View) *CornerDrawing {
	d := r.newCornerDrawing(corner, sheetLetter)
	d.width, d.height = a3Width, a3Height
	if len(views) == 1 {
		d.width, d.height = a4Width, a4Height
	} else {
		views = []View{Side, Front, Top, Oblique}
	}
	d.strip = d.newStrip(len(views) == 1)
	room := box{drawing.Point{X: sheetMargin + 2, Y: sheetMargin + 2}, drawing.Point{X: d.width - sheetMargin - 2, Y: d.strip.top - 1}}
	gutter := d.gutter()
	for i, n := range scales {
		d.scale, d.strip.scale = 1/n, n
		g := d.grid(views)
		if g.fits(room, gutter) || i == len(scales)-1 {
			g.spread(room, gutter)
			for i, v := range views {
				d.addCell(v, g.cell(i, room, onLeft(corner)), gutter, g.bounds[i])
			}
			break
		}
	}
	return d
}

// A grid is the views in two columns, or one view.
type grid struct {
	bounds  []box     // of the views, those that stand in line made alike
	columns []float64 // widths with gutters, mm
	rows    []float64 // heights with titles, mm
}

// grid sizes rows and columns at the scale of the drawing.
func (d *CornerDrawing) grid(views []View) grid {
	var g grid
	for _, v := range views {
		g.bounds = append(g.bounds, d.bounds(v.projection(d.corner, d.scale)))
	}
	if b := g.bounds; len(b) == 4 {
		b[0].min.X = math.Min(b[0].min.X, b[2].min.X)
		b[0].max.X = math.Max(b[0].max.X, b[2].max.X)
		b[2].min.X, b[2].max.X = b[0].min.X, b[0].max.X
		b[0].min.Y = math.Min(b[0].min.Y, b[1].min.Y)
		b[0].max.Y = math.Max(b[0].max.Y, b[1].max.Y)
		b[1].min.Y, b[1].max.Y = b[0].min.Y, b[0].max.Y
	}
	g.columns, g.rows = make([]float64, min(2, len(views))), make([]float64, (len(views)+1)/2)
	for i, b := range g.bounds {
		g.columns[i%2] = math.Max(g.columns[i%2], b.width()+2*cellGap)
		g.rows[i/2] = math.Max(g.rows[i/2], d.titleHeight()+d.cellHeight(b))
	}
	return g
}

func (g grid) fits(room box, gutter float64) bool {
	n := float64(len(g.columns))
	return sum(g.columns)+2*gutter*n+columnGap*(n-1) <= room.width() && sum(g.rows) <= room.height()
}

// spread shares out the room that is left, and adds the gutters.
func (g grid) spread(room box, gutter float64) {
	n := float64(len(g.columns))
	wide := (room.width() - sum(g.columns) - 2*gutter*n - columnGap*(n-1)) / n
	high := (room.height() - sum(g.rows)) / float64(len(g.rows))
	for i := range g.columns {
		g.columns[i] += wide + 2*gutter
	}
	for i := range g.rows {
		g.rows[i] += high
	}
}

// cell is the area of view i; of a corner on the right the columns change places.
func (g grid) cell(i int, room box, left bool) box {
	out := room
	row, column := i/2, i%2
	if row == 1 {
		out.min.Y += g.rows[0]
	}
	out.max.Y = out.min.Y + g.rows[row]
	if before := len(g.columns) == 2 && (column == 1) == left; before {
		out.min.X += g.columns[1-column] + columnGap
	}
	out.max.X = out.min.X + g.columns[column]
	return out
}

func sum(values []float64) (out float64) {
	for _, v := range values {
		out += v
	}
	return out
}
