package reports

import (
	"fmt"
	"html/template"
	"math"
	"strconv"
	"strings"
)

// longTable is the number of rows above which a table stands folded on the page.
const longTable = 2000

// A block is one table of the report on the page.
type block struct {
	ID, Name, Title string
	Rows            int
	Folded          bool
	Table           template.HTML
}

// blocks are the tables of the report, all of them.
func (r Report) blocks() []block { return blocksOf(r.Tables()) }

func blocksOf(tables []Table) (out []block) {
	for _, t := range tables {
		id := "t-" + strings.ToLower(strings.ReplaceAll(t.Name, " ", "-"))
		out = append(out, block{ID: id, Name: t.Name, Title: t.Title, Rows: len(t.Rows), Folded: len(t.Rows) > longTable, Table: t.html(id)})
	}
	return out
}

// html writes a table. What it holds goes through escaped, without exception.
func (t Table) html(id string) template.HTML {
	var b strings.Builder
	fmt.Fprintf(&b, "<table id=\"%s\"><caption>%s</caption><thead>%s<tr>", escaped(id), escaped(t.Title), printedCaution(len(t.Columns)))
	number := make([]bool, len(t.Columns))
	for i, c := range t.Columns {
		head := c.Head
		if c.Unit != "" {
			head += ", " + c.Unit
		}
		number[i] = c.Format != Text
		fmt.Fprintf(&b, "<th scope=\"col\"%s>%s</th>", class(number[i], "n"), escaped(head))
	}
	b.WriteString("</tr></thead><tbody>\n")
	for _, row := range t.Rows {
		b.WriteString("<tr>")
		for i, v := range row {
			text := t.Columns[i].cell(v)
			b.WriteString("<td" + class(number[i], "n") + class(text == verdict(false), "fail") + exact(t.Columns[i].Format, v) + ">" + escaped(text))
		}
		b.WriteByte('\n')
	}
	b.WriteString("</tbody></table>")
	return template.HTML(b.String())
}

// printedCaution is a row that heads a table on every printed page, wherever the browser
// prints no footing.
func printedCaution(columns int) template.HTML {
	return template.HTML(fmt.Sprintf("<tr class=\"printed\"><td colspan=\"%d\">%s</td></tr>", columns, escaped(ShortCaution)))
}

func escaped(s string) string { return template.HTMLEscapeString(s) }

func class(is bool, name string) string {
	if is {
		return ` class="` + name + `"`
	}
	return ""
}

// exact is the number of a cell for sorting, where its format shows less of it than
// would tell it from its neighbours.
func exact(f Format, v any) string {
	x, ok := v.(float64)
	if !ok || f == Full || f == Text || math.IsNaN(x) || math.IsInf(x, 0) {
		return ""
	}
	return ` data-v="` + strconv.FormatFloat(x, 'g', 9, 64) + `"`
}
