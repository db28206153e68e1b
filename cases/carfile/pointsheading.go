package carfile

import (
	"fmt"
	"slices"
	"strings"
)

// The columns that are no coordinate.
const (
	nameColumn  = "name"
	notesColumn = "notes"
)

// maxColumns bounds the columns of a list: our own choice.
const maxColumns = 100

// A pointColumn is what the heading says of the cells below it.
type pointColumn struct {
	what      string // a key of pointRow; empty: a heading with a fault
	unit      string // of bare numbers; empty: none is known
	direction string // of an axis; empty: the heading does not say
}

// heading reads the first row: name, x, y, z in any order, with unit and direction of each
// axis as far as the car file does not say them: x (in), x rearward (in).
func (t *pointTable) heading(cells []string, at func(int) place) {
	if len(cells) > maxColumns {
		t.fault(at(0), "", flaw{fmt.Sprintf("the heading has %d columns, more than %d", len(cells), maxColumns), "give the columns name, x, y, z alone"})
		t.broken = true
		return
	}
	t.columns = make([]pointColumn, len(cells))
	used := map[string]bool{}
	known := 0
	for i, cell := range cells {
		words := strings.FieldsFunc(cell, func(r rune) bool { return strings.ContainsRune(" \t,()[]/_:;", r) })
		if len(words) == 0 {
			t.fault(at(i), "", flaw{"the heading is empty", "write " + nameColumn + ", x, y, z or " + notesColumn})
			continue
		}
		if what := columnOf(words[0]); what != "" && !used[what] {
			known++
			used[what] = true
			t.columns[i] = t.column(what, words[1:], at(i))
		} else if what != "" {
			t.fault(at(i), "", flaw{"duplicate heading " + quoted(cell), "keep one of the two"})
		} else {
			t.fault(at(i), "", flaw{"unknown heading " + quoted(cell), "take the column out, or head it " + notesColumn + "; the columns here are name, x, y, z and " + notesColumn})
		}
	}
	if known == 0 {
		t.faults = nil
		t.fault(at(0), "", flaw{"the first row is no heading", "write one such as name, x (mm), y (mm), z (mm)"})
		t.broken = true
		return
	}
	for _, k := range pointRow.Keys {
		if k.Required && !used[k.Name] {
			t.fault(at(0), "", flaw{"heading " + k.Name + " is missing", "add a column " + k.Name + ": " + k.Doc})
		}
	}
	t.directions(at)
	t.broken = len(t.faults) > 0
}

// columnOf returns the column that goes by a name; empty: none does.
func columnOf(word string) string {
	for _, k := range pointRow.Keys {
		if slices.ContainsFunc(k.names(), func(n string) bool { return plainName(n) == plainName(word) }) {
			return k.Name
		}
	}
	return ""
}

// column reads what stands behind the name of a column.
func (t *pointTable) column(what string, words []string, at place) pointColumn {
	c := pointColumn{what: what, unit: t.form.unit}
	for _, w := range words {
		_, way := directions[strings.ToLower(w)]
		switch {
		case !slices.Contains(xyz, what):
			if what != nameColumn || columnOf(w) != nameColumn { // point name
				t.fault(at, "", flaw{"unknown heading: " + quoted(w) + " behind " + what, "write " + what})
			}
		case way && c.direction == "":
			c.direction = strings.ToLower(w)
		case !Length.has(w):
			t.fault(at, "", flaw{quoted(w) + " is neither a unit of length nor a direction", "write " + nearUnit(w, Length) + ", and " + alternatives(directionNames)})
		case t.form.unit != "" && !sameUnit(t.form.unit, w):
			if !t.bare { // once, for the other columns are likely to be alike
				t.fault(at, "", flaw{"the heading says " + quoted(w) + ", and hardpoints.unit in the car file says " + t.form.unit, "correct one of the two, or take it out"})
			}
			t.bare = true
		default:
			c.unit = named(w)[0].Name
		}
	}
	return c
}

// sameUnit tells whether two names of units of length are those of one unit.
func sameUnit(a, b string) bool {
	x, _ := quantity("1 "+a, Length)
	y, _ := quantity("1 "+b, Length)
	return x == y
}

// directions reads the axes that the heading gives, and holds them to those of the car file.
func (t *pointTable) directions(at func(int) place) {
	var words [3]string
	var of [3]place
	given := 0
	for i, c := range t.columns {
		if axis := slices.Index(xyz, c.what); axis >= 0 {
			words[axis], of[axis] = c.direction, at(i)
			if c.direction != "" {
				given++
			}
		}
	}
	if given == 0 || len(t.faults) > 0 {
		return
	}
	if i := slices.Index(words[:], ""); i >= 0 {
		t.fault(of[i], "", flaw{"the heading says where other axes run, and not where " + xyz[i] + " does", "write the direction of each, such as x rearward (in), or of none"})
		return
	}
	axes, clash, first := turnAlong(words)
	if clash >= 0 {
		t.fault(of[clash], "", flaw{xyz[clash] + " and " + xyz[first] + " run along the same line", oneLine})
		return
	}
	if t.form.axes != nil && *t.form.axes != axes {
		t.fault(of[0], "", flaw{"the heading says " + axes.String() + ", and hardpoints.axes in the car file says " + t.form.axes.String(), "correct one of the two, or take it out"})
		return
	}
	t.axes = &axes
}
