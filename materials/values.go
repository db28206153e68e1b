package materials

import (
	"fmt"
	"slices"
	"strings"
)

// A Value is one number of a material as its source prints it.
type Value struct {
	Symbol, What string
	Published    string  // number and unit of the source
	Value        float64 // in Unit
	Unit         string  // of this package; empty: a pure number
	Source       string  // document, edition, table
	FromMemory   bool    // nobody had the page open
}

// An Entry is one row of the table with the names and the values behind it.
type Entry struct {
	Metal
	Also   []string // other names, on the first row of a material
	Values []Value  // those that the sources give
}

// A field is a number of the table: its column, the word that column from_memory and
// people have for it, what it is, and where it stands in a Metal.
type field struct {
	column, symbol, what string
	units                []unit
	elastic              bool // its document is elastic_source
	optional             bool
	of                   func(*Metal) *float64
}

// fields are the numbers of a row in the order in which they are shown. Bearing
// strengths are those of MIL-HDBK-5J, 1.4.7: on the projected area of the pin, at a
// distance e of the hole's centre from the edge, D the diameter of the hole.
var fields = []field{
	{column: "sy", symbol: "Sy", what: "yield or 0.2 % proof strength in tension", units: stress, optional: true, of: func(m *Metal) *float64 { return &m.Sy }},
	{column: "su", symbol: "Su", what: "ultimate strength in tension", units: stress, of: func(m *Metal) *float64 { return &m.Su }},
	{column: "scy", symbol: "Scy", what: "yield strength in compression", units: stress, optional: true, of: func(m *Metal) *float64 { return &m.Scy }},
	{column: "ssu", symbol: "Ssu", what: "ultimate strength in shear", units: stress, optional: true, of: func(m *Metal) *float64 { return &m.Ssu }},
	{column: "sbru15", symbol: "Sbru1.5", what: "ultimate strength in bearing, e/D 1.5", units: stress, optional: true, of: func(m *Metal) *float64 { return &m.Sbru[EdgeNear] }},
	{column: "sbru20", symbol: "Sbru2.0", what: "ultimate strength in bearing, e/D 2.0", units: stress, optional: true, of: func(m *Metal) *float64 { return &m.Sbru[EdgeFar] }},
	{column: "sbry15", symbol: "Sbry1.5", what: "yield strength in bearing, e/D 1.5", units: stress, optional: true, of: func(m *Metal) *float64 { return &m.Sbry[EdgeNear] }},
	{column: "sbry20", symbol: "Sbry2.0", what: "yield strength in bearing, e/D 2.0", units: stress, optional: true, of: func(m *Metal) *float64 { return &m.Sbry[EdgeFar] }},
	{column: "elongation", symbol: "elongation", what: "elongation after fracture", units: percent, optional: true, of: func(m *Metal) *float64 { return &m.Elongation }},
	{column: "e", symbol: "E", what: "Young's modulus", units: modulus, elastic: true, of: func(m *Metal) *float64 { return &m.E }},
	{column: "ec", symbol: "Ec", what: "Young's modulus in compression", units: modulus, elastic: true, optional: true, of: func(m *Metal) *float64 { return &m.Ec }},
	{column: "g", symbol: "G", what: "shear modulus", units: modulus, elastic: true, optional: true, of: func(m *Metal) *float64 { return &m.G }},
	{column: "nu", symbol: "nu", what: "Poisson's ratio", units: ratio, elastic: true, of: func(m *Metal) *float64 { return &m.Nu }},
	{column: "density", symbol: "density", what: "density", units: density, elastic: true, of: func(m *Metal) *float64 { return &m.Density }},
}

// strengths is the word of from_memory that stands for every strength of the row.
const strengths = "strengths"

func (f field) strength() bool { return !f.elastic && f.column != "elongation" }

// memorable are the words of the column from_memory.
func memorable() []string {
	words := []string{strengths}
	for _, f := range fields {
		words = append(words, f.symbol)
	}
	return words
}

// memory returns the words of from_memory.
func (r row) memory() []string { return strings.Fields(r["from_memory"]) }

// recalled tells whether nobody had the page open for a number.
func (r row) recalled(f field) bool {
	return slices.Contains(r.memory(), f.symbol) || f.strength() && slices.Contains(r.memory(), strengths)
}

// values returns the numbers of the row as published, beside those of m.
func (r row) values(m Metal) (out []Value) {
	for _, f := range fields {
		if r[f.column] == "" {
			continue
		}
		v := Value{
			Symbol: f.symbol, What: f.what, Published: r[f.column], Value: *f.of(&m),
			Source: r["strength_source"], FromMemory: r.recalled(f),
		}
		if f.elastic {
			v.Source = r["elastic_source"]
		}
		for _, u := range f.units {
			if u.size == 1 { // the package's own
				v.Unit = u.name
			}
		}
		out = append(out, v)
	}
	return out
}

// published is the row as its source prints it.
func (r row) published() string {
	var out []string
	for _, f := range fields {
		if r[f.column] != "" {
			out = append(out, f.symbol+" "+r[f.column])
		}
	}
	return strings.Join(out, ", ")
}

// source names both documents, and which values are from memory of them.
func (r row) source() string {
	return fmt.Sprintf("strengths: %s%s; elastic constants: %s%s",
		r["strength_source"], r.recall(false), r["elastic_source"], r.recall(true))
}

// recall says in brackets which values of one of the documents are from memory.
func (r row) recall(elastic bool) string {
	var words []string
	for _, word := range r.memory() {
		isElastic := slices.ContainsFunc(fields, func(f field) bool { return f.symbol == word && f.elastic })
		if isElastic == elastic {
			words = append(words, word)
		}
	}
	switch {
	case len(words) == 0:
		return ""
	case words[0] == strengths:
		return " (from memory)" // of the whole entry, elongation included
	}
	return " (" + strings.Join(words, ", ") + " from memory)"
}
