package carfile

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"sixlink/members/stock"
)

// A heading is what the first row says of the cells below it.
type heading struct {
	key  *Key // nil: a heading with a fault
	unit string
}

// readStockCSV reads a list with a heading; commas, semicolons or tabs stand between the
// cells, whichever the heading has. Lines that begin with # are left out.
func readStockCSV(name string, src []byte, own []string) (stock.List, error) {
	text := strings.TrimPrefix(string(src), "\ufeff")
	r := &reader{source: newSource(name, []byte(text[:min(len(text), maxBytes)])), own: own}
	if f, at := unreadable([]byte(text)); f != nil {
		line, col := r.place([]byte(text[:at]))
		return stock.List{}, Faults{r.source.fault(line, col, "", *f)}
	}
	in := csv.NewReader(strings.NewReader(text))
	in.Comment, in.FieldsPerRecord, in.Comma = '#', -1, r.separator()
	in.TrimLeadingSpace = in.Comma != '\t'
	var columns []heading
	var list stock.List
	for {
		cells, err := in.Read()
		if errors.Is(err, io.EOF) || r.stopped {
			break
		}
		if err != nil {
			r.csvFault(err)
			break
		}
		at := func(i int) place { return r.cell(in, i) }
		if columns == nil {
			columns = r.headings(&list, cells, at)
			continue
		}
		if len(list.Sizes) == mostTubes {
			r.fault(at(0), "", flaw{fmt.Sprintf("the list has more than %d tubes", mostTubes), "put them into several files"})
			break
		}
		r.row(&list, columns, cells, at)
	}
	if len(list.Sizes) == 0 && len(r.faults) == 0 {
		r.fault(place{line: 1, column: 1}, "", flaw{"the list has no tubes", "write a heading such as od (mm), wall (mm), material, price, part, and a row for each tube"})
	}
	return r.stock(list)
}

// separator returns what stands between the cells of the heading.
func (s source) separator() rune {
	for _, line := range s.lines {
		if strings.HasPrefix(line, "#") || strings.TrimSpace(line) == "" {
			continue
		}
		for _, c := range []rune{';', '\t'} {
			if strings.ContainsRune(line, c) {
				return c
			}
		}
		break
	}
	return ','
}

// cell returns the place of a cell of the row last read.
func (r *reader) cell(in *csv.Reader, i int) place {
	line, bytes := in.FieldPos(i)
	column := bytes
	if line <= len(r.lines) {
		text := r.lines[line-1]
		column = utf8.RuneCountInString(text[:min(max(bytes-1, 0), len(text))]) + 1
	}
	return place{line: line, column: column}
}

func (r *reader) csvFault(err error) {
	var e *csv.ParseError
	if !errors.As(err, &e) {
		r.fault(place{line: 1, column: 1}, "", flaw{"this is not CSV: " + err.Error(), "correct the file"})
		return
	}
	r.fault(place{line: e.Line, column: e.Column}, "", flaw{"this is not CSV: " + e.Err.Error(), `put a text with quotation marks in it between quotation marks and double those inside: "0.875"""`})
}

// headings reads the first row.
func (r *reader) headings(list *stock.List, cells []string, at func(int) place) []heading {
	row := Key{Kind: Mapping, Keys: sizeKeys}
	columns := make([]heading, len(cells))
	if len(cells) > maxColumns {
		r.fault(at(maxColumns), "", flaw{fmt.Sprintf("the list has %d columns, more than %d", len(cells), maxColumns), "keep od, wall, material, price, part and source, and see that commas, semicolons or tabs stand between the cells"})
		r.stopped = true
		return columns
	}
	used := map[string]bool{}
	for i, cell := range cells {
		name, unit := titled(cell)
		k := row.find(name)
		switch {
		case k == nil:
			r.fault(at(i), "", flaw{"unknown heading " + quoted(cell), row.suggest(name, used).remedy})
		case used[k.Name]:
			r.fault(at(i), "", flaw{"duplicate heading " + quoted(cell), "keep one of the two"})
			k = nil
		default:
			used[k.Name] = true
			r.unitOf(list, k, unit, at(i))
		}
		columns[i] = heading{k, unit}
	}
	for _, k := range sizeKeys {
		if k.Required && !used[k.Name] {
			r.fault(at(0), "", flaw{"heading " + k.Name + " is missing", "add a column " + k.Name + " (mm)"})
		}
	}
	return columns
}

// titled splits a heading into its name and the unit behind it: "od (mm)", "od [mm]",
// "od, mm" or "od mm".
func titled(cell string) (name, unit string) {
	cell = strings.TrimSpace(cell)
	end := strings.IndexAny(cell, " ,([")
	if end < 0 {
		return strings.ToLower(cell), ""
	}
	return strings.ToLower(cell[:end]), strings.Trim(cell[end:], " ,()[]")
}

// unitOf holds the unit of a heading to the dimension of its column; that of a price is
// any currency, of a metre.
func (r *reader) unitOf(list *stock.List, k *Key, unit string, at place) {
	switch {
	case unit == "":
	case k.Name == "price" && strings.HasSuffix(unit, "/m"):
		list.PriceUnit = unit
	case k.Name == "price":
		r.fault(at, "", flaw{"the unit " + quoted(unit) + " is not that of a price of a metre", "write price, or the currency of a metre, such as price (EUR/m)"})
	case k.Kind != Number:
		r.fault(at, "", flaw{k.Name + " is text and has no unit " + quoted(unit), "write " + k.Name})
	case !k.Dimension.has(unit):
		r.fault(at, "", flaw{quoted(unit) + " is no unit of " + k.Dimension.String(), "write " + nearUnit(unit, k.Dimension)})
	}
}

// row reads one tube.
func (r *reader) row(list *stock.List, columns []heading, cells []string, at func(int) place) {
	e := &item{key: &Key{Kind: Mapping, Keys: sizeKeys}, fields: map[string]*item{}, given: true, good: true}
	if len(cells) != len(columns) {
		r.fault(at(0), "", flaw{fmt.Sprintf("%d cells in this row, and %d headings", len(cells), len(columns)), "give each heading a cell, empty where there is nothing to say, and put a text with a comma in it between quotation marks"})
		return
	}
	for i, c := range columns {
		text := strings.TrimSpace(cells[i])
		if c.key == nil || text == "" && !c.key.Required {
			continue
		}
		p := at(i)
		f := &item{key: c.key, path: c.key.Name, place: p, given: true, good: true}
		e.fields[c.key.Name] = f
		if text == "" {
			r.refuse(f, "no value", c.key.advice())
			continue
		}
		if c.key.Kind == Number && c.unit != "" && c.unit != c.key.Dimension.Bare() && c.key.Name != "price" && decimal.FindString(text) == text {
			text += " " + c.unit
		}
		if flaw := f.set(text, false); flaw != nil {
			r.refuse(f, flaw.text, flaw.remedy)
		}
		f.text = text
	}
	r.addSize(list, e)
}
