package materials

import (
	"fmt"
	"slices"
	"strings"
)

// A row is one line of the table, cell by column.
type row map[string]string

// memorable are the words of the column from_memory; all but the first are the
// elastic constants.
var memorable = []string{"strengths", "E", "nu", "density"}

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
		Sy: value("sy", stress), Su: value("su", stress),
		E: value("e", modulus), Nu: value("nu", ratio), Density: value("density", density),
		Source: r.source(), Doubt: r.doubt(), Published: r.published(),
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
	if m.Nu >= 0.5 {
		refuse("nu %g is not below 0.5: correct it", m.Nu)
	}
	if !slices.Contains(bases, m.Basis) {
		refuse("basis %q is not known: write one of %q", m.Basis, bases)
	}
	for _, word := range r.memory() {
		if !slices.Contains(memorable, word) {
			refuse("from_memory %q is not known: write one of %q", word, memorable)
		}
	}
	return faults
}

// memory returns the values for which nobody had the page open.
func (r row) memory() []string { return strings.Fields(r["from_memory"]) }

func (r row) strengthsFromMemory() bool { return slices.Contains(r.memory(), memorable[0]) }

// source names both documents, and which values are from memory of them.
func (r row) source() string {
	s := "strengths: " + r["strength_source"]
	if r.strengthsFromMemory() {
		s += " (from memory)"
	}
	s += "; elastic constants: " + r["elastic_source"]
	elastic := slices.DeleteFunc(r.memory(), func(word string) bool { return word == memorable[0] })
	if len(elastic) > 0 {
		s += " (" + strings.Join(elastic, ", ") + " from memory)"
	}
	return s
}

// doubt says why the strengths need a second look; empty: they do not.
func (r row) doubt() string {
	var memory, basis string
	if r.strengthsFromMemory() {
		memory = "strengths from memory of " + r["strength_source"] + ": confirm against the document before release"
	}
	if r["basis"] == typical {
		basis = "strengths are typical values, not minima: confirm against a specified minimum before release"
	}
	return remarks(memory, basis)
}

// remarks joins those remarks that say something.
func remarks(all ...string) string {
	return strings.Join(slices.DeleteFunc(all, func(s string) bool { return s == "" }), "; ")
}

// published is the row as its source prints it.
func (r row) published() string {
	return fmt.Sprintf("Sy %s, Su %s, E %s, nu %s, density %s", r["sy"], r["su"], r["e"], r["nu"], r["density"])
}
