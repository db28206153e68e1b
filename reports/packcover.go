package reports

import (
	"fmt"
	"slices"

	"sixlink/reports/fonts"
	"sixlink/reports/paper"
)

// cover is the first page: what this is about, the result, the caution, and who answers
// for it. A name that is long stands below its heading in full.
func (p *pack) cover() {
	r := p.r
	p.Text(fonts.Sans, 11, "Suspension structures: forces and reserve factors")
	name := p.AtMost(fonts.Bold, 20, r.Car.Name, 3)
	p.Text(fonts.Bold, 20, name)
	revision := r.Car.Revision
	if revision == "" {
		revision = "not stated"
	}
	var fields [][2]string
	if name != r.Car.Name {
		fields = append(fields, [2]string{"Car", r.Car.Name})
	}
	p.Fields(slices.Concat(fields, [][2]string{
		{"Revision", revision},
		{"Date", r.Date},
		{"Car file", r.File},
		{"SHA-256 of the file", r.SHA256},
	}, r.fileFields(), [][2]string{
		{"Calculated with", "sixlink " + r.Version},
		{"Design factors", r.factors() + "; they are in every reserve factor"},
		{"Free-body audit", fmt.Sprintf("worst residual %.1e of the load", r.Audit.Worst)},
	}))
	p.Boxed(fonts.Bold, 10.5, p.AtMost(fonts.Bold, 10.5, r.summary(), 5))
	p.Boxed(fonts.Sans, paper.BodySize, Caution)
	p.Text(fonts.Sans, paper.BodySize, r.Car.Notes)
	p.SignOff("Sign-off", [3]string{"name", "date", "signature"},
		[]string{"Calculated by", "Loads reviewed by", "Structural engineer, qualified", "Proved by test and inspection"})
}
