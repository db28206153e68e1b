package duty

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"sixlink/cases"
)

// readHeading finds the columns in the heading of a file.
func readHeading(text string, columns []Column) (f form, fault headingFault) {
	f = form{separator: ',', speed: slices.IndexFunc(columns, func(c Column) bool { return c.What == Speed })}
	for _, s := range []byte{';', '\t'} {
		if strings.IndexByte(text, s) >= 0 {
			f.separator = s
			break
		}
	}
	var heads []string
	for _, h := range strings.Split(strings.TrimPrefix(text, "\ufeff"), string(f.separator)) {
		heads = append(heads, strings.Trim(strings.TrimSpace(h), `"`))
	}
	f.factors, f.heads = make([]float64, len(columns)), len(heads)
	for i, c := range columns {
		at := slices.Index(heads, c.Name)
		switch {
		case at < 0:
			return f, headingFault{i, fmt.Sprintf("there is no column %q", clip(c.Name)), missing(heads)}
		case slices.Index(heads[at+1:], c.Name) >= 0:
			return f, headingFault{i, fmt.Sprintf("there are two columns %q", clip(c.Name)), "give each column of the log a name of its own"}
		}
		for len(f.wanted) <= at {
			f.wanted, f.names = append(f.wanted, -1), append(f.names, "")
		}
		if f.wanted[at] >= 0 {
			return f, headingFault{i, fmt.Sprintf("the column %q is named for two channels", clip(c.Name)), "name a column for each"}
		}
		f.wanted[at], f.names[at], f.factors[i] = i, c.Name, c.Factor
	}
	return f, headingFault{}
}

// A headingFault is what is wrong with one of the columns that a history asks for.
type headingFault struct {
	column       int
	text, remedy string // no text: nothing is wrong
}

// missing names the columns that are there, as many whole names as a message holds.
func missing(heads []string) string {
	if len(heads) == 1 {
		return fmt.Sprintf("the heading is one column, %q: separate columns by comma, semicolon or tab", clip(heads[0]))
	}
	said, n := "", 0
	for ; n < len(heads) && len(said) < mostNamed; n++ {
		said += ", " + printable(clip(heads[n]))
	}
	if n < len(heads) {
		said += fmt.Sprintf(" and %d more", len(heads)-n)
	}
	return "write one of " + strings.TrimPrefix(said, ", ")
}

// mostNamed is from how many bytes of names on a message names no more columns.
const mostNamed = 200

// mostShown is how much of a text of a file a message shows, in characters.
const mostShown = 60

// printable puts a mark in the place of what cannot be printed.
func printable(s string) string {
	return strings.Map(func(r rune) rune {
		if strconv.IsPrint(r) {
			return r
		}
		return '\ufffd'
	}, s)
}

func clip(s string) string {
	s = strings.ToValidUTF8(s, "\ufffd")
	if utf8.RuneCountInString(s) <= mostShown {
		return s
	}
	return string([]rune(s)[:mostShown]) + "…"
}

// heading reads the lines up to the first sample.
func (r *reading) heading() error {
	if err := r.legible(); err != nil {
		return err
	}
	text, err := r.headLine()
	if err != nil {
		return err
	}
	f, fault := readHeading(string(text), r.history.Columns)
	if fault.text != "" {
		c := &r.history.Columns[fault.column]
		return r.misfit(c.key()+".column", fmt.Sprintf("%s:%d: %s", r.history.File, r.line, fault.text), fault.remedy)
	}
	r.form = f
	if r.history.UnitsRow {
		return r.units()
	}
	return nil
}

// headLine returns the next line that is neither empty nor a comment.
func (r *reading) headLine() ([]byte, error) {
	for {
		text, err := r.in.ReadSlice('\n')
		switch {
		case errors.Is(err, bufio.ErrBufferFull):
			return nil, r.fault(RowFault{Text: fmt.Sprintf("the line is longer than %d bytes", r.in.Size()), Remedy: "give a CSV file with a heading of names"}, r.line+1)
		case len(text) == 0 && !errors.Is(err, io.EOF):
			return nil, err
		case len(text) == 0 && r.form.heads > 0:
			return nil, r.fault(RowFault{Text: "the file has no row of units", Remedy: "give rows, or take units_row out of the car file"}, r.line+1)
		case len(text) == 0:
			return nil, r.fault(RowFault{Text: "the file has no heading", Remedy: "give a CSV file whose first row has the names of the columns"}, r.line+1)
		}
		r.line++
		if text = bytes.TrimRight(text, "\r\n"); !passed(text) {
			return text, nil
		}
	}
}

// units passes over the row of units. One that is all numbers is a sample.
func (r *reading) units() error {
	text, err := r.headLine()
	if err != nil {
		return err
	}
	cells := bytes.Split(text, []byte{r.form.separator})
	for i, place := range r.form.wanted {
		if place < 0 || i >= len(cells) {
			continue
		}
		if _, number := parse(cells[i]); !number {
			return nil
		}
	}
	return r.misfit("units_row", fmt.Sprintf("%s:%d: the row below the heading holds numbers, not units", r.history.File, r.line), "take units_row out")
}

// legible refuses what is no text of lines.
func (r *reading) legible() error {
	begin, err := r.in.Peek(r.in.Size())
	if err != nil && !errors.Is(err, io.EOF) {
		return err
	}
	refuse := func(text, remedy string) error { return r.fault(RowFault{Text: text, Remedy: remedy}, 1) }
	for _, mark := range []string{"\xff\xfe", "\xfe\xff"} {
		if bytes.HasPrefix(begin, []byte(mark)) {
			return refuse("the file is text in UTF-16", "save it as CSV in UTF-8")
		}
	}
	if i := bytes.IndexFunc(begin, func(c rune) bool { return c < ' ' && !strings.ContainsRune("\t\n\r\f", c) }); i >= 0 && bytes.Count(begin[:i], []byte{'\n'}) == 0 {
		return refuse(fmt.Sprintf("the file is no text: byte %d is %#02x", i+1, begin[i]), "save the log as CSV in UTF-8")
	}
	if bytes.IndexByte(begin, '\n') < 0 && bytes.Count(begin, []byte{'\r'}) > 1 {
		return refuse("its lines end with a carriage return alone", "save it with line feeds, or with both")
	}
	return nil
}

// key is the path of a channel in the history of a car file.
func (c *Column) key() string {
	if c.Corner == Car {
		return "columns." + QuantityNames[c.What]
	}
	return "columns." + cases.CornerNames[c.Corner] + "." + QuantityNames[c.What]
}

// misfit is the error for a history, at a key of its own in the car file.
func (r *reading) misfit(key, text, remedy string) error {
	return r.plan.duty.historyMisfit(r.history, key, text, remedy)
}

func (d *Duty) historyMisfit(h *History, key, text, remedy string) *Misfit {
	at := slices.IndexFunc(d.Histories, func(o History) bool { return o.Name == h.Name })
	return &Misfit{fmt.Sprintf("duty.histories[%d].%s", at, key), text, remedy}
}
