package materials

import "strings"

// A Basis is what a published strength is.
type Basis struct{ Name, Meaning string }

// Bases are the meanings that a strength of the table may have, named as published.
// A and B: 14 CFR and CS 25.613(b); which of two bases of one row is meant is not
// known value by value.
var Bases = []Basis{
	{"specification minimum", "the least that the product standard allows"},
	{"characteristic", "the value that Eurocode 9 gives for design, before its partial factors"},
	{"S", "the minimum of the procurement specification; its statistics are not known (MIL-HDBK-5J, 9.1, from memory)"},
	{"A", "99 % of the population is above it, with 95 % confidence: for a single load path (25.613(b))"},
	{"B", "90 % of the population is above it, with 95 % confidence: for redundant structure alone (25.613(b))"},
	{"S/A", "S for some values or sizes, A for the others"},
	{"A/S", "A for some values or sizes, S for the others"},
	{typical, "an average, not a minimum: half of all pieces are weaker"},
}

const (
	typical  = "typical"
	basisB   = "B"
	typicals = "strengths are typical values, not minima: confirm against a specified minimum before release"
	bValues  = "strengths are B values, for redundant structure alone, and a link of a suspension is a single load path: take A values (14 CFR 25.613(b))"
)

// BasisDoubt returns the doubt that a basis raises, also one in the user's own words;
// empty: none.
func BasisDoubt(basis string) string {
	words := strings.ToLower(strings.TrimSpace(basis))
	first, _, _ := strings.Cut(strings.ReplaceAll(words, "-", " "), " ")
	switch {
	case strings.Contains(words, typical):
		return typicals
	case first == strings.ToLower(basisB):
		return bValues
	}
	return ""
}

// bases are the names of Bases.
var bases = func() (names []string) {
	for _, b := range Bases {
		names = append(names, b.Name)
	}
	return names
}()
