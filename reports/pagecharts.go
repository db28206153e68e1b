package reports

import (
	"cmp"
	"fmt"
	"html/template"
	"math"
	"strconv"
	"strings"

	"sixlink/cases"
	"sixlink/loads"
)

// The measures of a chart, in CSS pixels; across, everything is in per cent, so that
// letters keep their size on every screen.
const (
	chartRow  = 38 // one member: a line of text, and its bar below
	chartText = 13 // from the top of a row to the foot of its text
	chartBar  = 18 // from the top of a row to its bar
	chartHigh = 11 // height of a bar
	chartFoot = 24 // the axis
)

// A chart is one corner's bars in the making. Places across are shares of its width.
type chart struct {
	strings.Builder
	grid   []float64
	thick  float64 // where the bars begin or must end
	height int     // so far
}

// A span is a bar, drawn from one share of the width to another.
type span struct {
	kind     string // class
	from, to float64
}

// newChart begins the drawing of one corner.
func newChart(corner, title string, rows int, grid []float64, thick float64) *chart {
	c := &chart{grid: grid, thick: thick}
	fmt.Fprintf(c, "<figure><figcaption>%s</figcaption><svg class=\"chart\" width=\"100%%\" height=\"%d\" role=\"img\" aria-label=\"%s: %s\">\n",
		escaped(corner), rows*chartRow+chartFoot, escaped(corner), escaped(title))
	return c
}

// percent is a share of the chart's width.
func percent(share float64) string { return strconv.FormatFloat(100*share, 'f', 2, 64) + "%" }

// row adds a row: a name at the left, a text at the right, and bars below.
func (c *chart) row(name, text, kind string, bars ...span) {
	fmt.Fprintf(c, "<text x=\"0\" y=\"%d\">%s</text>", c.height+chartText, escaped(name))
	fmt.Fprintf(c, "<text x=\"100%%\" y=\"%d\" text-anchor=\"end\"%s>%s</text>", c.height+chartText, class(kind != "", kind), escaped(text))
	for _, x := range c.grid {
		c.upright("grid", x, c.height+chartBar-2, c.height+chartBar+chartHigh+2)
	}
	for _, b := range bars {
		fmt.Fprintf(c, "<rect class=\"%s\" x=\"%s\" width=\"%s\" y=\"%d\" height=\"%d\"/>", b.kind, percent(min(b.from, b.to)), percent(math.Abs(b.to-b.from)), c.height+chartBar, chartHigh)
	}
	c.upright("thick", c.thick, c.height+chartBar-2, c.height+chartBar+chartHigh+2)
	c.WriteByte('\n')
	c.height += chartRow
}

func (c *chart) upright(class string, x float64, from, to int) {
	fmt.Fprintf(c, "<line class=\"%s\" x1=\"%s\" x2=\"%[2]s\" y1=\"%[3]d\" y2=\"%[4]d\"/>", class, percent(x), from, to)
}

// tick writes a number below the axis.
func (c *chart) tick(x float64, text string) {
	anchor := "middle"
	if x <= 0 {
		anchor = "start"
	} else if x >= 1 {
		anchor = "end"
	}
	fmt.Fprintf(c, "<text class=\"tick\" x=\"%s\" y=\"%d\" text-anchor=\"%s\">%s</text>", percent(x), c.height+chartFoot-7, anchor, escaped(text))
}

func (c *chart) end() string { return c.String() + "</svg></figure>\n" }

// envelopeCharts draws the largest tension and compression of every member, one chart
// for each corner, all to one scale.
func (r Report) envelopeCharts() template.HTML {
	largest := 0.0
	for _, corner := range r.Corners {
		for _, m := range corner.Members {
			tension, compression, _, _ := m.Extremes()
			largest = max(largest, tension, -compression)
		}
	}
	scale := cmp.Or(roundUp(largest), 1)
	share := func(force float64) float64 { return 0.5 + force/(2*scale) }
	var out strings.Builder
	for i, corner := range r.Corners {
		c := newChart(words(cases.CornerNames[i]), "largest tension and compression of the members; the numbers are in the table Envelope", loads.NumLinks, []float64{0, 0.25, 0.75, 1}, 0.5)
		for j, m := range corner.Members {
			tension, compression, inT, inC := m.Extremes()
			var bars []span
			if inC >= 0 {
				bars = append(bars, span{"compression", 0.5, share(compression)})
			}
			if inT >= 0 {
				bars = append(bars, span{"tension", 0.5, share(tension)})
			}
			c.row(words(loads.LinkNames[j]), withCase(Whole.number(compression), inC)+"  |  "+withCase(Whole.number(tension), inT), "", bars...)
		}
		c.tick(0, Whole.number(-scale)+" N")
		c.tick(0.5, "0")
		c.tick(1, Whole.number(scale)+" N")
		out.WriteString(c.end())
	}
	return template.HTML(out.String())
}

// reserveEnd is the reserve factor at which the bars of the chart end.
const reserveEnd = 4.0

// reserveCharts draws the lowest reserve factor of every member and rocker, one chart
// for each corner.
func (r Report) reserveCharts() template.HTML {
	var out strings.Builder
	for i := range r.Corners {
		judged := r.judgedAt(i)
		c := newChart(words(cases.CornerNames[i]), "lowest reserve factors; the numbers are in the table Envelope", len(judged), []float64{0, 0.5, 0.75, 1}, 1/reserveEnd)
		for j, x := range judged {
			name := words(cases.MemberNames[j])
			g, ok := x.Governs()
			text := "RF " + withCase(Reserve.number(g.Reserve), g.Case)
			length := min(max(g.Reserve, 0)/reserveEnd, 1)
			switch {
			case !ok:
				c.row(name, "not checked", "")
			case g.Reserve >= 1:
				c.row(name, text, "", span{"reserve", 0, length})
			case math.IsNaN(length):
				c.row(name, text+" FAIL", "hot")
			default:
				c.row(name, text+" FAIL", "hot", span{"short", 0, length})
			}
		}
		for n := range int(reserveEnd) {
			c.tick(float64(n)/reserveEnd, strconv.Itoa(n))
		}
		c.tick(1, "≥ "+Whole.number(reserveEnd))
		out.WriteString(c.end())
	}
	return template.HTML(out.String())
}
