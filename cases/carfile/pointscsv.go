package carfile

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
)

// maxPoints bounds the rows of a list of hardpoints: our own choice, a hundred times what a
// car can have.
const maxPoints = 10_000

// A pointTable is a list of hardpoints in the reading.
type pointTable struct {
	*reader // of the list: its text and its faults
	form    drawnIn
	columns []pointColumn
	axes    *turn // nil: those of the car file
	points  []listedPoint

	lines  map[string]int // by path: where the point stands
	tell   func(path string)
	rows   int
	others []string // names of points that are left out
	bare   bool     // what is wrong with the unit is told
	broken bool     // what should have been read after a fault is not known
}

// readPoints reads a list of hardpoints: CSV with a heading; commas, semicolons or tabs stand
// between the cells, whichever the heading has. Lines that begin with # are left out.
func (r *reader) readPoints(name string, text []byte, form drawnIn) *pointTable {
	plain := strings.TrimPrefix(string(text), "\ufeff")
	lines := strings.Split(strings.ReplaceAll(plain[:min(len(plain), maxBytes)], "\r\n", "\n"), "\n")
	t := &pointTable{form: form, axes: form.axes, lines: map[string]int{}, tell: r.tell}
	t.reader = &reader{source: source{name: placedBeside(r.name, name), lines: lines, beside: true}}
	if f, at := notPoints(plain); f != nil {
		line, column := t.place([]byte(plain[:at]))
		t.fault(place{line: line, column: column}, "", *f)
		t.broken = true
	} else {
		t.read(plain)
	}
	if t.broken || t.stopped {
		r.tellNone()
	}
	r.faults = append(r.faults, t.faults...)
	r.points.doubts = t.doubts(name)
	r.points.file.Says = t.says()
	return t
}

// notPoints returns what keeps the text from being read as a list at all, and where.
func notPoints(text string) (*flaw, int) {
	if len(text) > maxBytes {
		return &flaw{fmt.Sprintf("the file has more than %d bytes", maxBytes), "give the points of the car alone; a row takes some fifty bytes"}, 0
	}
	if strings.HasPrefix(text, "PK\x03\x04") {
		return &flaw{"this is a workbook or an archive, and no CSV", "export the sheet of points as CSV, and name that file"}, 0
	}
	if f, at := unreadable([]byte(text)); f != nil {
		return f, at
	}
	for i := range text {
		if text[i] == '\r' && !strings.HasPrefix(text[i+1:], "\n") {
			return &flaw{"a carriage return ends the line", "save the file with the line ends of Unix (LF) or of Windows (CR LF)"}, i
		}
	}
	return nil, 0
}

// read reads the heading and the rows.
func (t *pointTable) read(text string) {
	in := csv.NewReader(strings.NewReader(text))
	in.Comment, in.FieldsPerRecord, in.Comma, in.ReuseRecord = '#', -1, t.separator(), true
	in.TrimLeadingSpace = in.Comma != '\t'
	for !t.stopped && !t.broken {
		cells, err := in.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.csvFault(err)
			t.broken = true
			break
		}
		at := func(i int) place {
			p := t.cell(in, min(i, len(cells)-1))
			p.of = &t.source
			return p
		}
		switch n := filled(cells); {
		case n == 0:
		case t.columns == nil:
			t.heading(cells[:n], at)
		default:
			t.row(cells[:n], at)
		}
	}
	if t.rows == 0 && len(t.faults) == 0 {
		t.fault(place{line: 1, column: 1}, "", flaw{"the file has no points", "write a heading such as name, x (mm), y (mm), z (mm), and a row for each point, such as front.rod.inner, 0, 270, 470"})
		t.broken = true
	}
}

// filled is the number of cells up to the last one with something in it.
func filled(cells []string) int {
	n := len(cells)
	for n > 0 && strings.TrimSpace(cells[n-1]) == "" {
		n--
	}
	return n
}

// row reads one point.
func (t *pointTable) row(cells []string, at func(int) place) {
	if t.rows++; t.rows > maxPoints {
		t.fault(at(0), "", flaw{fmt.Sprintf("the file has more than %d rows", maxPoints), "give the points of the car alone"})
		t.broken = true
		return
	}
	if len(cells) > len(t.columns) {
		t.fault(at(len(t.columns)), "", flaw{fmt.Sprintf("%d cells in this row, and %d headings", len(cells), len(t.columns)), "give each column a heading, write decimals with a point, and put a text with a comma in it between quotation marks"})
		t.broken = len(t.faults) == 1 // what follows is likely to be alike
		return
	}
	p := listedPoint{}
	name := ""
	for i, c := range t.columns {
		if c.what == nameColumn && i < len(cells) {
			name, p.at = strings.TrimSpace(cells[i]), at(i)
		}
	}
	if name == "" {
		t.fault(at(0), "", flaw{"the point has no name", "give it one, such as front.rod.inner"})
		return
	}
	if p.path = t.known(name, p.at); p.path != "" && t.coordinates(&p, cells, at) {
		t.points = append(t.points, p)
	}
}

// known returns the path of the point of that name; empty: it is not to be read on.
func (t *pointTable) known(name string, at place) string {
	m := namesOfPoints().find(name)
	if line, again := t.lines[m.path]; again {
		t.fault(at, m.path, flaw{fmt.Sprintf("%s names a point that stands in line %d already", quoted(name), line), "keep one of the two"})
		return ""
	}
	switch {
	case m.path != "":
		t.lines[m.path] = at.line
	case t.form.others && len(m.near) == 0:
		t.others = append(t.others, name)
	default:
		t.unknown(name, m, at)
	}
	return m.path
}

// unknown refuses the name of no point, or of several.
func (t *pointTable) unknown(name string, m match, at place) {
	remedy := "write the path of the point, such as front.rod.inner, or other_points: " + ignoreOthers + " under hardpoints in the car file"
	if len(m.near) > 0 {
		t.fault(at, "", flaw{quoted(name) + " may mean " + alternatives(m.near), "write the path of the point"})
	} else {
		taken := map[string]bool{}
		for path := range t.lines {
			taken[path] = true
		}
		if len(t.faults) < shownFaults {
			m.near = namesOfPoints().nearest(name, taken)
		}
		if len(m.near) > 0 {
			remedy = "perhaps " + alternatives(m.near) + " is meant; otherwise " + remedy
		}
		t.fault(at, "", flaw{quoted(name) + " is no hardpoint", remedy})
	}
	for _, path := range m.near {
		t.tell(path)
	}
}

// coordinates reads the three numbers of a point; false: they have faults.
func (t *pointTable) coordinates(p *listedPoint, cells []string, at func(int) place) bool {
	good := true
	for i, c := range t.columns {
		axis := slices.Index(xyz, c.what)
		if axis < 0 {
			continue
		}
		k := pointRow.find(c.what)
		p.places[axis] = at(min(i, len(cells)))
		if i >= len(cells) || strings.TrimSpace(cells[i]) == "" {
			t.fault(p.places[axis], p.path, flaw{c.what + ": no value", k.advice()})
			good = false
			continue
		}
		text := strings.TrimSpace(cells[i])
		v, f := k.measure(t.withUnit(text, c, p.places[axis]))
		if f != nil {
			if notFinite.MatchString(text) { // there is no key to take out
				f.remedy = "write " + Length.example()
			}
			t.fault(p.places[axis], p.path, flaw{c.what + ": " + f.text, f.remedy})
			good = false
		}
		p.numbers[axis] = v
	}
	if !good {
		t.tell(p.path)
	}
	return good
}

// withUnit adds the unit of a column to a bare number. Where there is none anywhere, that is
// told once.
func (t *pointTable) withUnit(text string, c pointColumn, at place) string {
	if decimal.FindString(text) != text {
		return text
	}
	if c.unit == "" && !t.bare {
		t.bare, t.broken = true, true
		t.fault(at, "", flaw{"nothing says in which unit " + c.what + " is", "write the unit into the heading, such as " + c.what + " (mm), or under hardpoints in the car file, such as unit: mm"})
	}
	return text + " " + c.unit
}

// says tells in a sentence what was read.
func (t *pointTable) says() string {
	units := []string{}
	for _, c := range t.columns {
		if u := c.unit; u != "" && !slices.Contains(units, u) && slices.Contains(xyz, c.what) {
			units = append(units, u)
		}
	}
	unit := "each with its unit"
	if len(units) > 0 {
		unit = "unit " + together(units)
	}
	axes := "axes of the car file"
	if t.axes != nil {
		axes = "axes " + t.axes.String()
	}
	out := fmt.Sprintf("%d hardpoints were read; %s; %s", len(t.points), unit, axes)
	if o := t.form.origin; o[0] != 0 || o[1] != 0 || o[2] != 0 {
		out += "; the origin of the car file lies at [" + exact(o...) + "] mm in it"
	}
	return out
}

// namedOthers is how many of the points that are left out are named.
const namedOthers = 5

// searchedOthers is for how many of them the points that may be meant are looked for.
const searchedOthers = 200

// doubts says which points are left out.
func (t *pointTable) doubts(name string) []string {
	if len(t.others) == 0 {
		return nil
	}
	var named []string
	for _, o := range t.others[:min(len(t.others), namedOthers)] {
		named = append(named, quoted(o))
	}
	text := together(named)
	if more := len(t.others) - len(named); more > 0 {
		text = strings.Join(named, ", ") + fmt.Sprintf(" and %d more", more)
	}
	out := []string{cut(name) + ": points that are no hardpoints of a car file are left out: " + text}
	taken := map[string]bool{}
	for path := range t.lines {
		taken[path] = true
	}
	for _, o := range t.others[:min(len(t.others), searchedOthers)] {
		if near := namesOfPoints().nearest(o, taken); len(near) > 0 && len(out) <= namedOthers {
			out = append(out, cut(name)+": "+quoted(o)+" is left out; perhaps "+alternatives(near)+" is meant: then write that")
		}
	}
	return out
}
