package reports

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"iter"
	"math"
	"strconv"

	"sixlink/cases/studies"
)

// full writes a number so that it reads back as the same float64; nothing where there is
// no value.
func full(x studies.Number) string {
	f := float64(x)
	if math.IsNaN(f) || math.IsInf(f, 0) {
		return ""
	}
	return strconv.FormatFloat(f+0, 'g', -1, 64)
}

// remarks are the lines at the head of a CSV.
func (s Study) remarks(buf *bytes.Buffer, what string) {
	line := func(text string) { fmt.Fprintf(buf, "# %s\r\n", printable(text)) }
	r := s.head()
	line(r.title())
	for _, text := range r.fileLines() {
		line(text)
	}
	line(what)
	if text := s.state(); text != "" {
		line(text)
	}
	line(Caution)
	for _, n := range r.Notes {
		line(string(n.Severity) + ": " + n.Text)
	}
	for _, n := range r.NotChecked {
		line("not checked: " + n)
	}
}

// varyColumns are the columns of a table of points, with their units.
func (s Study) varyColumns() (out []Column) {
	for _, a := range s.Vary.Axes {
		out = append(out, axisHead(a))
	}
	out = append(
		out, Column{"lowest RF", "", Reserve}, Column{"of", "", Text}, Column{"check", "", Text}, Column{"case", "", Text},
		Column{"mass of members", "kg", Milli}, Column{"refused", "", Text},
	)
	for i, name := range partNames() {
		at := name[0] + "." + name[1]
		if i < len(studies.Point{}.Members) {
			out = append(out, Column{at + " tension", "N", Whole}, Column{at + " compression", "N", Whole})
			if s.Vary.Sized {
				out = append(out, Column{at + " od", "mm", Tenth}, Column{at + " wall", "mm", Tenth})
			}
		}
		out = append(out, Column{at + " RF", "", Reserve})
	}
	return out
}

// varyRow is the row of one point.
func (s Study) varyRow(p studies.Point) (out []any) {
	for _, x := range p.At {
		out = append(out, x)
	}
	out = append(out, float64(p.Lowest.Reserve), partName(p.Lowest.Member), p.Lowest.Check, s.caseOf(p.Lowest.Case), float64(p.Mass), p.Refused)
	for _, m := range p.Members {
		out = append(out, float64(m.Tension), float64(m.Compression))
		if s.Vary.Sized {
			od, wall := math.NaN(), math.NaN()
			if m.Tube != nil {
				od, wall = float64(m.Tube[0]), float64(m.Tube[1])
			}
			out = append(out, od, wall)
		}
		out = append(out, float64(m.Lowest.Reserve))
	}
	for _, r := range p.Rockers {
		out = append(out, float64(r.Reserve))
	}
	return out
}

func partName(i int) string {
	if i < 0 {
		return ""
	}
	name := partNames()[i]
	return name[0] + "." + name[1]
}

func (s Study) caseOf(k int) string {
	if k < 0 {
		return ""
	}
	return s.Head.Cases[k]
}

func (s Study) varyCSV() ([]byte, error) {
	var buf bytes.Buffer
	s.remarks(&buf, s.varied())
	return writeCSV(&buf, s.varyColumns(), func(yield func([]any) bool) {
		for _, p := range s.Vary.Points {
			if !yield(s.varyRow(p)) {
				return
			}
		}
	})
}

// writeCSV writes a table at full precision.
func writeCSV(buf *bytes.Buffer, columns []Column, rows iter.Seq[[]any]) ([]byte, error) {
	w := csv.NewWriter(buf)
	w.UseCRLF = true
	var head []string
	for _, c := range columns {
		text := c.Head
		if c.Unit != "" {
			text += ", " + c.Unit
		}
		head = append(head, printable(text))
	}
	if err := w.Write(head); err != nil {
		return nil, err
	}
	for row := range rows {
		cells := make([]string, 0, len(row))
		for _, v := range row {
			switch x := v.(type) {
			case float64:
				cells = append(cells, full(studies.Number(x)))
			case string:
				cells = append(cells, printable(x))
			default:
				cells = append(cells, fmt.Sprint(x))
			}
		}
		if err := w.Write(cells); err != nil {
			return nil, err
		}
	}
	w.Flush()
	return buf.Bytes(), w.Error()
}
