package materials

import (
	_ "embed"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"sync"
)

//go:embed metals.csv
var metalsCSV string

// builtIn is metals.csv, read once. A defect of it is a defect of the program.
var builtIn = sync.OnceValue(func() table {
	t, err := parse(strings.NewReader(metalsCSV))
	if err != nil {
		panic("metals.csv: " + err.Error())
	}
	return t
})

// A table is what metals.csv says.
type table struct {
	metals  []Metal // in file order: the bands of one material together, ascending
	entries []Entry // the same with what stands behind them
	titles  []title // in file order
}

// A title is one of the names by which a material is found.
type title struct {
	key  string // of the name, see key
	name string // canonical name of the material
	bare bool   // the name leaves the condition open
}

var columns = []string{
	"name", "aliases", "bare_names", "form", "wall_to",
	"su", "sy", "scy", "ssu", "sbru15", "sbry15", "sbru20", "sbry20", "elongation", "basis", "strength_source",
	"e", "ec", "g", "nu", "density", "elastic_source", "from_memory", "remark",
}

var required = []string{"name", "form", "su", "basis", "strength_source", "e", "nu", "density", "elastic_source"}

// parse reads a table and returns every fault that it finds, in file order, each
// with its line.
func parse(r io.Reader) (table, error) {
	in := csv.NewReader(r)
	in.Comment = '#'
	in.FieldsPerRecord = len(columns)
	head, err := in.Read()
	if err != nil {
		return table{}, fmt.Errorf("heading: %w", err)
	}
	if !slices.Equal(head, columns) {
		return table{}, fmt.Errorf("heading is %q: write %q", head, columns)
	}
	var t table
	var faults []error
	for {
		fields, err := in.Read()
		if err == io.EOF {
			break
		}
		if err != nil {
			return table{}, errors.Join(append(faults, err)...)
		}
		line, _ := in.FieldPos(0)
		for _, fault := range t.add(fields) {
			faults = append(faults, fmt.Errorf("line %d: %w", line, fault))
		}
	}
	if len(t.metals) == 0 && len(faults) == 0 {
		faults = append(faults, errors.New("table has no rows: give at least one"))
	}
	return t, errors.Join(faults...)
}

// add appends one row, or returns what is wrong with it.
func (t *table) add(fields []string) []error {
	r := row{}
	for i, name := range columns {
		r[name] = strings.TrimSpace(fields[i])
	}
	m, faults := r.metal()
	if len(faults) == 0 {
		faults = t.place(m)
	}
	if len(faults) > 0 {
		return faults
	}
	t.metals = append(t.metals, m)
	t.entries = append(t.entries, Entry{m, append(list(r["aliases"], ";"), list(r["bare_names"], ";")...), r.values(m)})
	return t.name(m.Name, r)
}

// place refuses a row that does not continue the table: the bands of one material
// stand together and ascend, and nothing follows a band without limit.
func (t *table) place(m Metal) []error {
	n := len(t.metals)
	if n > 0 && t.metals[n-1].Name == m.Name {
		before := t.metals[n-1].WallTo
		if before == 0 || m.WallTo != 0 && !(m.WallTo > before) {
			return []error{fmt.Errorf("%s: wall_to %g mm after %g mm (0: no limit): let the bands ascend", m.Name, m.WallTo, before)}
		}
		return nil
	}
	if slices.ContainsFunc(t.metals, func(o Metal) bool { return o.Name == m.Name }) {
		return []error{fmt.Errorf("%s: stands in two places: put its rows together", m.Name)}
	}
	return nil
}

// name enters the titles of a row, and refuses one that means another material.
func (t *table) name(canonical string, r row) (faults []error) {
	enter := func(name string, bare bool) {
		add := title{key(name), canonical, bare}
		at := slices.IndexFunc(t.titles, func(o title) bool { return o.key == add.key })
		switch {
		case add.key == "":
			faults = append(faults, fmt.Errorf("%s: name %q has no letter or digit: correct it", canonical, name))
		case at < 0:
			t.titles = append(t.titles, add)
		case t.titles[at].name != canonical || t.titles[at].bare != bare:
			faults = append(faults, fmt.Errorf("%s: name %q already stands for %s: keep one", canonical, name, t.titles[at].name))
		}
	}
	enter(canonical, false)
	for _, alias := range list(r["aliases"], ";") {
		enter(alias, false)
	}
	for _, bare := range list(r["bare_names"], ";") {
		enter(bare, true)
	}
	return faults
}

// list splits a cell; an empty cell has no items.
func list(cell, sep string) []string {
	if cell == "" {
		return nil
	}
	return strings.Split(cell, sep)
}
