// Package reports shows results to people and to other programs: on a terminal, as
// JSON, as a workbook, and as a hand calculation. It computes nothing that decides
// pass or fail; all formats of numbers live here.
package reports

import (
	"fmt"

	"sixlink/cases"
	"sixlink/loads"
)

// A Report is the results of one run with what identifies it.
type Report struct {
	Version string // of the program
	File    string // name of the car file
	SHA256  string // of the car file's bytes, hexadecimal
	cases.Results
}

// Caution goes with every output, on screen and in every file. No option removes it.
const Caution = "CAUTION. sixlink is a calculation aid. It checks only the parts and load cases listed here, " +
	"from the numbers it was given, and knows nothing of anything else. The failure of one suspension member can kill. " +
	"Before anyone drives the car: have the loads, materials, welds and these results reviewed and signed off by a qualified " +
	"structural engineer; follow the technical regulations of your series and the law where you run; and prove the parts by " +
	"test and inspection."

// worst returns the corner, member and finding with the lowest reserve factor;
// false where nothing has a demand.
func (r Report) worst() (corner, link int, f cases.Finding, ok bool) {
	for i, c := range r.Corners {
		for j, m := range c.Members {
			if g, has := m.Governs(); has && (!ok || g.Reserve < f.Reserve) {
				corner, link, f, ok = i, j, g, true
			}
		}
	}
	return corner, link, f, ok
}

// summary is the verdict in a sentence.
func (r Report) summary() string {
	failed := 0
	for _, c := range r.Corners {
		for _, m := range c.Members {
			if !m.Passes() {
				failed++
			}
		}
	}
	lowest := "no member has a load"
	if corner, link, f, ok := r.worst(); ok {
		lowest = fmt.Sprintf("lowest RF %s: %s %s, %s, [%d] %s", Reserve.number(f.Reserve),
			words(cases.CornerNames[corner]), words(loads.LinkNames[link]), f.Check, f.Case+1, r.Cases[f.Case].Name)
	}
	if r.Pass {
		return "PASS: every check of every member has RF ≥ 1; " + lowest
	}
	return fmt.Sprintf("FAIL: %d of %d members have RF < 1; %s", failed, cases.NumCorners*loads.NumLinks, lowest)
}
