package members

import "sixlink/members/check"

type row = check.Row[Subject]

// Givens returns what the car file, the tables and the load path give for a subject,
// and what every check of it uses: the section's properties and the compression.
func Givens(s Subject) []check.Step {
	out := check.Put(s, givenRows)
	if s.Bending > 0 {
		out = append(out, check.Put(s, bendingGiven)...)
	}
	if s.Column.Crookedness > 0 {
		out = append(out, check.Put(s, crookednessGiven)...)
	}
	return append(out, check.Put(s, compressiveRows(s.Metal), sectionRows)...)
}
