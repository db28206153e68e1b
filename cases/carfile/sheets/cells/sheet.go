package cells

import (
	"encoding/xml"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// A sheetReader reads one sheet (ECMA-376-1, 18.3).
type sheetReader struct {
	*book
	out         Sheet
	row, column int // of the last row and cell
	left        *int
}

// sheet reads one sheet; left is how many cells there may still be.
func (b *book) sheet(entry sheetEntry, left *int) (Sheet, error) {
	r := sheetReader{book: b, left: left, out: Sheet{Name: entry.name, Hidden: entry.hidden, HiddenRows: map[int]bool{}}}
	if entry.part == "" {
		return r.out, refused("the sheet has no part in the file", saveAgain)
	}
	err := b.walk(entry.part, func(e xml.StartElement, d *tokens) error {
		switch e.Name.Local {
		case "chartsheet", "dialogsheet":
			return refused("the sheet is a chart and has no cells", "take the sheet out, or begin its name with #")
		case "col":
			r.hiddenColumns(e)
		case "row":
			return r.beginRow(e)
		case "c":
			return r.cell(e, d)
		case "mergeCell":
			r.out.Merged = append(r.out.Merged, attribute(e, "ref"))
		}
		return nil
	})
	return r.out, err
}

func (r *sheetReader) hiddenColumns(e xml.StartElement) {
	low, _ := strconv.Atoi(attribute(e, "min"))
	high, _ := strconv.Atoi(attribute(e, "max"))
	if last := len(r.out.HiddenColumns) - 1; !yes(attribute(e, "hidden")) && !zero(attribute(e, "width")) {
		return
	} else if last >= 0 && r.out.HiddenColumns[last][1]+1 == low {
		r.out.HiddenColumns[last][1] = high
		return
	}
	if len(r.out.HiddenColumns) < maxSpans {
		r.out.HiddenColumns = append(r.out.HiddenColumns, [2]int{low, high})
	}
}

// zero tells whether a width or height is stated, and none.
func zero(s string) bool {
	x, err := strconv.ParseFloat(s, 64)
	return err == nil && x == 0
}

func yes(s string) bool { return s == "1" || s == "true" }

func (r *sheetReader) beginRow(e xml.StartElement) error {
	next := r.row + 1
	if at := attribute(e, "r"); at != "" {
		n, err := strconv.Atoi(at)
		if err != nil || n < next || n > maxRow {
			return refused("the row "+quoted(at)+" is out of order, or no row", saveAgain)
		}
		next = n
	}
	r.row, r.column = next, 0
	if yes(attribute(e, "hidden")) || zero(attribute(e, "ht")) {
		r.out.HiddenRows[next] = true
	}
	return nil
}

// cell reads one cell, and keeps it if there is something in it.
func (r *sheetReader) cell(e xml.StartElement, d *tokens) error {
	c := Cell{Row: r.row, Column: r.column + 1}
	if name := attribute(e, "r"); name != "" {
		row, column, ok := Place(name)
		if !ok || row != r.row || column <= r.column {
			return refused("the cell "+quoted(name)+" is out of order, or no cell", saveAgain)
		}
		c.Column = column
	}
	if r.column = c.Column; r.column > maxColumn || r.row < 1 {
		return refused("a cell stands outside the sheet", saveAgain)
	}
	value, err := r.content(&c, attribute(e, "t"), d)
	if err != nil {
		return err
	}
	r.value(&c, attribute(e, "t"), value)
	if c.Kind == Number {
		r.format(&c, attribute(e, "s"))
	}
	if c.Kind == Empty {
		return nil
	}
	if *r.left--; *r.left < 0 {
		return &Error{Cell: c.Name(), Text: fmt.Sprintf("more than %d cells have something in them", MaxCells), Remedy: "take out what is not the car's, or begin the name of its sheet with #, and it is not read"}
	}
	r.out.Cells = append(r.out.Cells, c)
	return nil
}

// content reads what is in a cell: its value, and whether there is a formula.
func (r *sheetReader) content(c *Cell, kind string, d *tokens) (value string, err error) {
	for {
		t, err := d.next()
		if err != nil {
			return "", err
		}
		e, begins := t.(xml.StartElement)
		if _, ends := t.(xml.EndElement); ends {
			return value, nil
		}
		if !begins {
			continue
		}
		text := ""
		switch e.Name.Local {
		case "v":
			text, err = plainText(d)
		case "is":
			text, err = richText(d)
		default:
			c.Formula = c.Formula || e.Name.Local == "f"
			err = d.skip()
		}
		if err != nil {
			return "", err
		}
		if e.Name.Local == "v" && kind != "inlineStr" || e.Name.Local == "is" && kind == "inlineStr" {
			value = text
		}
	}
}

// plainText reads the text of an element to its end.
func plainText(d *tokens) (string, error) {
	var out strings.Builder
	for {
		t, err := d.next()
		if err != nil {
			return "", err
		}
		switch t := t.(type) {
		case xml.CharData:
			out.Write(t)
		case xml.StartElement:
			if err := d.skip(); err != nil {
				return "", err
			}
		case xml.EndElement:
			return out.String(), nil
		}
	}
}

// value turns the text of a cell of a type (ECMA-376-1, 18.18.11) into what it means.
func (r *sheetReader) value(c *Cell, kind, text string) {
	set := func(k Kind, s string) {
		c.Kind, c.Text = k, s
	}
	switch trimmed := strings.TrimSpace(text); {
	case kind == "inlineStr": // richText has read it
		set(Text, text)
	case kind == "str":
		set(Text, unescaped(text))
	case trimmed == "" && c.Formula:
		set(Unknown, "")
	case trimmed == "":
	case kind == "s":
		if i, err := strconv.Atoi(trimmed); err == nil && i >= 0 && i < len(r.strings) {
			set(Text, r.strings[i])
		} else {
			set(Damaged, trimmed)
		}
	case kind == "b" && (trimmed == "1" || trimmed == "0"):
		set(Truth, strconv.FormatBool(trimmed == "1"))
	case kind == "e":
		set(Failed, trimmed)
	case kind == "d":
		set(Date, trimmed)
	case kind == "" || kind == "n":
		v, err := strconv.ParseFloat(trimmed, 64)
		if err != nil || math.IsNaN(v) || math.IsInf(v, 0) || strings.ContainsAny(trimmed, "_xXpP") {
			set(Damaged, trimmed)
			return
		}
		set(Number, shortest(v))
	default:
		set(Damaged, trimmed)
	}
	if c.Kind == Text && strings.TrimSpace(c.Text) == "" {
		c.Kind = Empty
	}
}

// shortest is the shortest decimal that gives a number: programs write one and the same
// number with 15, 16 or 17 digits.
func shortest(v float64) string {
	s := strconv.FormatFloat(v+0, 'f', -1, 64)
	if len(s) > 24 {
		s = strconv.FormatFloat(v, 'g', -1, 64)
	}
	return s
}

func (r *sheetReader) format(c *Cell, style string) {
	i, err := strconv.Atoi(style)
	if err != nil || i < 0 || i >= len(r.formats) {
		return
	}
	f := r.formats[i]
	c.Percent, c.Shown, c.Misleads = f.percent, f.shown, f.misleads
	if f.date {
		c.Kind = Date
	}
}

// Place reads the name of a cell, such as C7: its row and column, from 1.
func Place(name string) (row, column int, ok bool) {
	i := 0
	for ; i < len(name) && i < 4 && name[i] >= 'A' && name[i] <= 'Z'; i++ {
		column = 26*column + int(name[i]-'A') + 1
	}
	row, err := strconv.Atoi(name[i:])
	return row, column, err == nil && i > 0 && row > 0 && row <= maxRow && column <= maxColumn && name[i] != '+'
}
