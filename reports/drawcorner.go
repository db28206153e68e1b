package reports

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
	"sixlink/reports/drawing"
)

// A CornerDrawing is the layout of a drawing of one corner. It is the same for every
// load case: from case to case only weights, patterns, arrows and words change, and places
// where a case moves the corner, so that the marks of two cases correspond one to one.
type CornerDrawing struct {
	report Report
	corner int
	there  *loads.Corner // where a case moves the corner; nil: as drawn
	items  []item
	heavy  float64 // force of the heaviest line, N
	strong float64 // force of the longest arrow, N
	letter float64 // size of the letters, mm

	scale         float64 // mm on the sheet per mm of the car
	width, height float64 // mm
	cells         []cell
	strip         *strip // nil: a view without frame and title block
}

// A cell is the room of one view.
type cell struct {
	view    View
	area    box
	gutter  float64 // width of the room for labels on either side, mm
	project projection
	places  []drawing.Place
	room    drawing.Gutters
}

const (
	longestArrow = 15.0 // mm
	cornerRoom   = 15.0 // below the labels, for axes and scale bar, mm
	leaderShelf  = 1.5  // level piece of a leader beside its label, mm
	cellGap      = 3.0  // between gutter and drawing, mm
)

func (r Report) newCornerDrawing(corner int, letter float64) *CornerDrawing {
	d := &CornerDrawing{report: r, corner: corner, items: r.drawItems(corner), letter: letter}
	d.heavy, d.strong = r.heaviest()
	return d
}

// CornerView lays out one view of a corner for a page: so many mm wide, as high as it
// needs, letters of the given size in mm. It has no title block and no caution: the page
// must have them.
func (r Report) CornerView(corner int, view View, width, letter float64) *CornerDrawing {
	d := r.newCornerDrawing(corner, letter)
	gutter := d.gutter()
	room := math.Max(width-2*(gutter+cellGap), 10)
	d.scale = 1
	flat := d.shape(view) // at scale 1:1 without arrows
	d.scale = math.Max(room-2*longestArrow, room/3) / math.Max(flat.width(), flat.height()/1.4)
	for range 4 { // the arrows keep their length: a few steps to fill the room
		d.scale *= room / d.bounds(view.projection(corner, d.scale)).width()
	}
	if b := d.bounds(view.projection(corner, d.scale)); b.height() > 1.6*width {
		d.scale *= 1.6 * width / b.height()
	}
	b := d.bounds(view.projection(corner, d.scale))
	d.width, d.height = width, d.titleHeight()+d.cellHeight(b)
	d.addCell(view, box{max: drawing.Point{X: width, Y: d.height}}, gutter, b)
	return d
}

// shape bounds a view without arrows.
func (d *CornerDrawing) shape(view View) box {
	strong := d.strong
	d.strong = 0
	defer func() { d.strong = strong }()
	return d.bounds(view.projection(d.corner, d.scale))
}

// Case draws a load case, by its index.
func (d *CornerDrawing) Case(k int) drawing.Drawing {
	d = d.in(k)
	out := drawing.Drawing{Width: d.width, Height: d.height, Title: d.title(k), Description: d.description(k)}
	s := &sheet{&out}
	if d.strip != nil {
		d.drawStrip(s, k)
	}
	for _, c := range d.cells {
		d.drawCell(s, c, k)
	}
	return out
}

func (d *CornerDrawing) geometry() loads.Corner {
	if d.there != nil {
		return *d.there
	}
	return d.report.Corners[d.corner].Statics.Corner
}

// in returns the layout with everything where a case has it; leaders follow what they
// point at.
func (d *CornerDrawing) in(k int) *CornerDrawing {
	p := d.report.Corners[d.corner].Moved(k)
	if p == nil {
		return d
	}
	out := *d
	out.there = &p.Corner
	out.items = d.report.drawItemsIn(d.corner, p.Corner)
	out.cells = slices.Clone(d.cells)
	for i := range out.cells {
		c := &out.cells[i]
		c.places = slices.Clone(c.places)
		for j := range c.places {
			for n, t := range d.items[j].targets {
				if c.project.at(t) == c.places[j].Target {
					c.places[j].Target = c.project.at(out.items[j].targets[n])
					break
				}
			}
		}
	}
	return &out
}

func (d *CornerDrawing) rowHeight() float64   { return 3.3 * d.letter }
func (d *CornerDrawing) titleHeight() float64 { return 3 * d.letter }

// gutter is the width of the widest label of any case.
func (d *CornerDrawing) gutter() (width float64) {
	for _, it := range d.items {
		for k := range d.report.Cases {
			width = math.Max(width, d.label(it, k).width)
		}
	}
	return width + leaderShelf + 1
}

// cellHeight is what a view needs below its title: the drawing, and the labels in two gutters.
func (d *CornerDrawing) cellHeight(b box) float64 {
	rows := math.Ceil(float64(len(d.items)) / 2)
	return math.Max(b.height()+4, rows*d.rowHeight()+cornerRoom)
}

// addCell puts a view into an area; b bounds what is drawn, about the car's origin.
func (d *CornerDrawing) addCell(view View, area box, gutter float64, b box) {
	c := cell{view: view, area: area, gutter: gutter, project: view.projection(d.corner, d.scale)}
	top := area.min.Y + d.titleHeight()
	c.project.origin = drawing.Point{
		X: (area.min.X+area.max.X)/2 - (b.min.X+b.max.X)/2,
		Y: (top+area.max.Y)/2 - (b.min.Y+b.max.Y)/2,
	}
	c.room = drawing.Gutters{
		Left:  drawing.Gutter{X: area.min.X + gutter, Top: top, Bottom: area.max.Y - cornerRoom},
		Right: drawing.Gutter{X: area.max.X - gutter, Top: top, Bottom: area.max.Y - cornerRoom},
		Row:   d.rowHeight(),
	}
	var callouts []drawing.Callout
	var obstacles []drawing.Obstacle
	for i, it := range d.items {
		callout := drawing.Callout{Owner: i}
		for _, t := range it.targets {
			callout.Targets = append(callout.Targets, c.project.at(t))
		}
		callouts = append(callouts, callout)
		if it.kind != forceItem {
			obstacles = append(obstacles, drawing.Obstacle{A: c.project.at(it.ends[0]), B: c.project.at(it.ends[1]), Owner: i})
		}
	}
	c.places = c.room.Place(callouts, obstacles)
	d.cells = append(d.cells, c)
}

// tail is the far end of an arrow whose point is where the force acts.
func (d *CornerDrawing) tail(p projection, it item, k int) drawing.Point {
	tip := p.at(it.ends[0])
	if !(d.strong > 0) {
		return tip
	}
	along := p.along(r3.Scale(longestArrow/d.strong, it.vector(k)))
	return drawing.Point{X: tip.X - along.X, Y: tip.Y - along.Y}
}
