package reports

import (
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

// A chart is one corner's bars in the making.
type chart struct {
	strings.Builder
	rows int
	y    int
}

// newChart begins the drawing of one corner; id makes its pattern's name its own.
func newChart(id, title string, rows int, grid []float64) *chart {
	c := &chart{rows: rows}
	fmt.Fprintf(c, "<figure><figcaption>%s</figcaption><svg class=\"chart\" width=\"100%%\" height=\"%d\" role=\"img\" aria-label=\"%s\">", escaped(words(id)), rows*chartRow+chartFoot, escaped(title))
	for _, x := range grid {
		fmt.Fprintf(c, "<line class=\"grid\" x1=\"%s\" x2=\"%[1]s\" y1=\"0\" y2=\"%d\"/>", percent(x), rows*chartRow)
	}
	return c
}

// percent is a share of the chart's width.
func percent(share float64) string { return strconv.FormatFloat(100*share, 'f', 2, 64) + "%" }

// row begins a row: a name at the left and a text at the right.
func (c *chart) row(name, text, kind string) {
	fmt.Fprintf(c, "\n<text x=\"0\" y=\"%d\">%s</text><text x=\"100%%\" y=\"%[1]d\" text-anchor=\"end\"%s>%s</text>", c.y+chartText, escaped(name), class(kind != "", kind), escaped(text))
	c.y += chartRow
}

// bar draws a bar of the row begun last, from one share of the width to another.
func (c *chart) bar(kind string, from, to float64) {
	fmt.Fprintf(c, "<rect class=\"%s\" x=\"%s\" width=\"%s\" y=\"%d\" height=\"%d\"/>", kind, percent(min(from, to)), percent(math.Abs(to-from)), c.y-chartRow+chartBar, chartHigh)
}

// mark is a line down the whole chart.
func (c *chart) mark(x float64) {
	fmt.Fprintf(c, "<line class=\"zero\" x1=\"%s\" x2=\"%[1]s\" y1=\"0\" y2=\"%d\"/>", percent(x), c.rows*chartRow+4)
}

// tick writes a number below the axis.
func (c *chart) tick(x float64, text string) {
	anchor := "middle"
	if x <= 0 {
		anchor = "start"
	} else if x >= 1 {
		anchor = "end"
	}
	fmt.Fprintf(c, "<text class=\"tick\" x=\"%s\" y=\"%d\" text-anchor=\"%s\">%s</text>", percent(x), c.rows*chartRow+chartFoot-7, anchor, escaped(text))
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
	scale := roundUp(largest)
	share := func(force float64) float64 { return 0.5 + force/(2*scale) }
	var out strings.Builder
	for i, corner := range r.Corners {
		c := newChart(cases.CornerNames[i], "largest tension and compression of the members of the "+words(cases.CornerNames[i])+" corner; the table Envelope has the numbers",
			loads.NumLinks, []float64{0, 0.25, 0.75, 1})
		for j, m := range corner.Members {
			tension, compression, inT, inC := m.Extremes()
			c.row(words(loads.LinkNames[j]), withCase(Whole.number(compression), inC)+"  |  "+withCase(Whole.number(tension), inT), "")
			if inC >= 0 {
				c.bar("compression", 0.5, share(compression))
			}
			if inT >= 0 {
				c.bar("tension", 0.5, share(tension))
			}
		}
		c.mark(0.5)
		c.tick(0, Whole.number(-scale)+" N")
		c.tick(0.5, "0")
		c.tick(1, Whole.number(scale)+" N")
		out.WriteString(c.end())
	}
	return template.HTML(out.String()) //nolint:gosec // every text in it is escaped
}

// roundUp returns the next of 1, 2, 5, 10, 20 … not below x; 1 where x is nothing.
func roundUp(x float64) float64 {
	if !(x > 0) || math.IsInf(x, 0) {
		return 1
	}
	power := math.Pow(10, math.Floor(math.Log10(x)))
	for _, step := range []float64{1, 1.5, 2, 3, 4, 5, 6, 8, 10} {
		if step*power >= x {
			return step * power
		}
	}
	return 10 * power
}

// reserveEnd is the reserve factor at which the bars of the chart end.
const reserveEnd = 4.0

// reserveCharts draws the lowest reserve factor of every member and rocker, one chart
// for each corner.
func (r Report) reserveCharts() template.HTML {
	var out strings.Builder
	for i := range r.Corners {
		rows := loads.NumLinks
		if r.HasRocker(i) {
			rows++
		}
		c := newChart(cases.CornerNames[i], "lowest reserve factors of the "+words(cases.CornerNames[i])+" corner; the table Envelope has the numbers", rows, []float64{0, 0.5, 0.75, 1})
		for j := range rows {
			name := words(cases.MemberNames[j])
			g, ok := r.Judged(i, j).Governs()
			if !ok {
				c.row(name, "not checked", "")
				continue
			}
			text, kind := "RF "+withCase(Reserve.number(g.Reserve), g.Case), ""
			bar := "reserve"
			if !(g.Reserve >= 1) {
				text, kind, bar = text+" FAIL", "hot", "short"
			}
			c.row(name, text, kind)
			length := g.Reserve
			if !(length >= 0) {
				length = 0
			}
			c.bar(bar, 0, min(length/reserveEnd, 1))
		}
		c.mark(1 / reserveEnd)
		c.tick(0, "0")
		c.tick(1/reserveEnd, "1")
		c.tick(2/reserveEnd, "2")
		c.tick(3/reserveEnd, "3")
		c.tick(1, "4 and more")
		out.WriteString(c.end())
	}
	return template.HTML(out.String()) //nolint:gosec // every text in it is escaped
}
