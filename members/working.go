package members

import "sixlink/members/check"

type row = check.Row[Subject]

// Givens returns what the car file, the tables and the load path give for a subject,
// and what every check of it uses: the section's properties, the compression, and the
// moment of its sources of bending.
func Givens(s Subject) []check.Step {
	out := append(s.given(), check.Put(s, givenRows)...)
	if s.Bending > 0 && s.Sources == (Sources{}) {
		out = append(out, check.Put(s, bendingGiven)...)
	}
	if s.Column.Crookedness > 0 {
		out = append(out, check.Put(s, crookednessGiven)...)
	}
	sources, sum := sourceSteps(s)
	out = append(append(out, sources...), s.found()...)
	return append(append(out, check.Put(s, compressiveRows(s.Metal), compressionRows)...), sum...)
}
