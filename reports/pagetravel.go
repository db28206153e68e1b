package reports

import (
	"fmt"
	"html/template"

	"sixlink/cases"
	"sixlink/loads/motion"
	"sixlink/reports/drawing"
)

// A travelSheet is one corner on its way, on the page: a drawing that two sliders move
// through positions that are held as changes, and charts.
type travelSheet struct {
	Index       int // among those of the page
	Name, Reach string
	Drawing     template.HTML
	Says        string
	Sliders     []slider
	Keys        []sample
	Charts      []template.HTML
}

// A slider goes through the positions from one on.
type slider struct {
	Name           string
	From, At, Last int // of the first position; the places of the drawn position and of the last, from 0
}

// travelSheets returns the corners whose axles give their motion. The positions go to the
// facts, as changes.
func (r Report) travelSheets(f *facts) (out []travelSheet, err error) {
	for n := range r.Curves {
		c := &r.Curves[n]
		s := travelSheet{Index: n, Name: words(cases.CornerNames[c.Corner]), Reach: reachWords(c)}
		m := motionViewOf(c, pageView)
		s.Says = m.says(&c.Drawn)
		drawn := m.draw(&c.Drawn)
		id := fmt.Sprintf("motion-%d", n)
		s.Drawing = template.HTML(drawn.Inline(id))
		frames := &travelFacts{}
		for _, x := range slides(c) {
			s.Sliders = append(s.Sliders, x.slider)
			for _, p := range x.positions {
				found, err := drawn.Changes(m.draw(p))
				if err != nil {
					return nil, fmt.Errorf("%s: %w", id, err)
				}
				frames.Changes, frames.Says = append(frames.Changes, f.changes(found)), append(frames.Says, m.says(p))
			}
		}
		f.Travel = append(f.Travel, frames)
		strokes, names := rackSamples(c)
		for i, stroke := range strokes {
			line := drawing.Drawing{Width: 20, Height: 3, Title: names[i], Marks: []drawing.Mark{
				{Kind: drawing.Polyline, Points: []drawing.Point{{X: 0, Y: 1.5}, {X: 20, Y: 1.5}}, Stroke: stroke},
			}}
			s.Keys = append(s.Keys, sample{template.HTML(line.Inline(fmt.Sprintf("motion-%d-line-%d", n, i))), names[i]})
		}
		for i, x := range chartedCurves {
			s.Charts = append(s.Charts, template.HTML(curveChart(c, x.key, x.title, 85, 58).Inline(fmt.Sprintf("motion-%d-chart-%d", n, i))))
		}
		out = append(out, s)
	}
	return out, nil
}

// travelFacts are the positions of one corner: what changes in its drawing, and what is
// said of each.
type travelFacts struct {
	Changes [][]int  `json:"changes"`
	Says    []string `json:"says"`
}

// A slide is a slider with its positions.
type slide struct {
	slider
	positions []*motion.Position
}

// slides are the travel with the rack as drawn, and the rack with the wheel as drawn.
func slides(c *cases.Curves) (out []slide) {
	atRest := func(list []float64) (at int) {
		for i, x := range list {
			if x == 0 {
				at = i
			}
		}
		return at
	}
	travel, rack := atRest(c.Travels), atRest(c.Racks)
	x := slide{slider: slider{"Travel, from droop to bump", 0, travel, len(c.Travels) - 1}}
	for i := range c.Travels {
		x.positions = append(x.positions, c.At(i, rack))
	}
	out = append(out, x)
	if len(c.Racks) > 1 {
		y := slide{slider: slider{"Rack, from right lock to left lock", len(c.Travels), rack, len(c.Racks) - 1}}
		for i := range c.Racks {
			y.positions = append(y.positions, c.At(travel, i))
		}
		out = append(out, y)
	}
	return out
}
