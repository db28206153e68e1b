// Package reports shows results to people and to other programs: on a terminal, as
// JSON, as a workbook, and as a hand calculation. It computes nothing that decides
// pass or fail; all formats of numbers live here.
package reports

import (
	"fmt"
	"math"
	"strings"

	"sixlink/cases"
	"sixlink/loads"
)

// A Report is the results of one run with what identifies it.
type Report struct {
	Version string // of the program
	File    string // name of the car file
	SHA256  string // of the car file's bytes, hexadecimal
	Date    string // that the user gives the report, YYYY-MM-DD; empty: a line to fill in
	Screen  Screen // on which texts are shown
	cases.Results
	Incomplete string // why there is no verdict on the car; empty: there is one
}

// Caution goes with every output, on screen and in every file. No option removes it.
const Caution = "CAUTION. sixlink is a calculation aid. It checks only the parts and load cases listed here, " +
	"from the numbers it was given, and knows nothing of anything else. The failure of one suspension member can kill. " +
	"Before anyone drives the car: have the loads, materials, welds and these results reviewed and signed off by a qualified " +
	"structural engineer; follow the technical regulations of your series and the law where you run; and prove the parts by " +
	"test and inspection."

// A judged is a member or rocker by name, with what was found.
type judged struct {
	corner, name string
	cases.Judged
}

// judgeds lists every member and every rocker, corner by corner.
func (r Report) judgeds() (out []judged) {
	for i, c := range r.Corners {
		corner := words(cases.CornerNames[i])
		for j, m := range c.Members {
			out = append(out, judged{corner, words(loads.LinkNames[j]), m.Judged})
		}
		out = append(out, judged{corner, "rocker", c.Rocker})
	}
	return out
}

// summary is the verdict in a sentence.
func (r Report) summary() string {
	if r.Incomplete != "" {
		return "NO VERDICT: " + r.Incomplete
	}
	failed, checked, lowest, least := 0, 0, "nothing has a load", math.Inf(1)
	for _, j := range r.judgeds() {
		if !j.Passes() {
			failed++
		}
		f, ok := j.Governs()
		if ok {
			checked++
		}
		if ok && !(f.Reserve >= least) {
			least = f.Reserve
			lowest = fmt.Sprintf("lowest RF %s: %s %s, %s, [%d] %s", Reserve.number(f.Reserve), j.corner, j.name, f.Title(), f.Case+1, r.Cases[f.Case].Name)
		}
	}
	if checked == 0 {
		return "NOT CHECKED: no load case puts a load on any member"
	}
	if r.Pass {
		return "PASS: every check has RF ≥ 1" + r.stiffnessVerdict() + "; " + lowest
	}
	turned := r.beyondAngle()
	stiff := r.stiffnessVerdict()
	if failed == 0 {
		return "FAIL: " + strings.TrimPrefix(turned+stiff, ", ") + "; every check has RF ≥ 1; " + lowest
	}
	if turned != "" {
		lowest = turned + "; " + lowest
	}
	return fmt.Sprintf("FAIL: %d of the %d members and rockers with a load have RF < 1%s; %s", failed, checked, stiff, lowest)
}

// beyondAngle counts the joints that turn beyond the angle of their bearing; empty: none.
func (r Report) beyondAngle() string {
	n := 0
	for _, s := range r.Swings {
		if !s.Passes() {
			n++
		}
	}
	switch n {
	case 0:
		return ""
	case 1:
		return "1 joint turns beyond the angle of its bearing"
	}
	return fmt.Sprintf("%d joints turn beyond the angle of their bearing", n)
}
