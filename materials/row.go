package materials

import (
	"fmt"
	"slices"
	"strings"
)

// A row is one line of the table, cell by column.
type row map[string]string

// metal reads the row, or returns all that is wrong with it.
func (r row) metal() (m Metal, faults []error) {
	for _, name := range required {
		if r[name] == "" {
			faults = append(faults, fmt.Errorf("%s is empty: fill it in", name))
		}
	}
	if len(faults) > 0 {
		return m, faults
	}
	value := func(name string, units []unit) float64 {
		v, err := quantity(r[name], units)
		if err != nil {
			faults = append(faults, fmt.Errorf("%s: %s: %w", r["name"], name, err))
		}
		return v
	}
	m = Metal{
		Name: r["name"], Form: r["form"], Basis: r["basis"],
		Source: r.source(), Doubt: r.doubt(), Published: r.published(),
	}
	for _, f := range fields {
		if r[f.column] != "" {
			*f.of(&m) = value(f.column, f.units)
		}
	}
	if r["wall_to"] != "" {
		m.WallTo = value("wall_to", length)
	}
	return m, append(faults, r.sense(m)...)
}

// sense refuses what cannot be, though each cell can be read.
func (r row) sense(m Metal) (faults []error) {
	refuse := func(format string, args ...any) {
		faults = append(faults, fmt.Errorf("%s: "+format, append([]any{m.Name}, args...)...))
	}
	if m.Su < m.Sy {
		refuse("su %s is below sy %s: exchange them or correct one", r["su"], r["sy"])
	}
	if m.Ssu > m.Su {
		refuse("ssu %s is above su %s: correct one", r["ssu"], r["su"])
	}
	for i, at := range [...]string{EdgeNear: "15", EdgeFar: "20"} {
		if m.Sbru[i] > 0 && m.Sbru[i] < m.Sbry[i] {
			refuse("sbru%s %s is below sbry%s %s: exchange them or correct one", at, r["sbru"+at], at, r["sbry"+at])
		}
	}
	if m.Nu >= 0.5 {
		refuse("nu %g is not below 0.5: correct it", m.Nu)
	}
	if !slices.Contains(bases, m.Basis) {
		refuse("basis %q is not known: write one of %q", m.Basis, bases)
	}
	for _, word := range r.memory() {
		if !slices.Contains(memorable(), word) {
			refuse("from_memory %q is not known: write one of %q", word, memorable())
		}
	}
	return faults
}

// doubt says why the strengths need a second look; empty: they do not.
func (r row) doubt() string {
	var words []string
	for _, word := range r.memory() {
		if word == strengths || slices.ContainsFunc(fields, func(f field) bool { return f.symbol == word && f.strength() }) {
			words = append(words, word)
		}
	}
	var memory string
	if len(words) > 0 {
		memory = strings.Join(words, ", ") + " from memory of " + r["strength_source"] + ": confirm against the document before release"
	}
	return remarks(memory, BasisDoubt(r["basis"]), r["remark"])
}

// remarks joins those remarks that say something.
func remarks(all ...string) string {
	return strings.Join(slices.DeleteFunc(all, func(s string) bool { return s == "" }), "; ")
}
