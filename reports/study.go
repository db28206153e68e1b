package reports

import (
	"fmt"
	"strings"

	"sixlink/cases"
	"sixlink/cases/studies"
	"sixlink/loads"
)

// A Study is a study of a car with the writers of its outputs: text, CSV, JSON and a
// workbook.
type Study struct {
	studies.Study
	Screen Screen // on which the text is shown
}

// head is the report of the car itself, for what every output says of it.
func (s Study) head() Report {
	h := s.Head
	return Report{Version: h.Version, File: h.File, SHA256: h.SHA256, Results: cases.Results{
		Car:   cases.Car{Name: h.Car, Revision: h.Revision, Factors: h.Factors, Files: h.Also},
		Notes: h.Notes, NotChecked: h.NotChecked,
	}}
}

// partNames are the corners and names of the members and rockers of a study, in the
// order of its lists.
func partNames() (out [][2]string) {
	for _, corner := range cases.CornerNames {
		for _, link := range loads.LinkNames {
			out = append(out, [2]string{corner, link})
		}
	}
	for _, corner := range cases.CornerNames {
		out = append(out, [2]string{corner, "rocker"})
	}
	return out
}

// partWords names a member or rocker in a sentence; a dash for none.
func partWords(i int) string {
	names := partNames()
	if i < 0 || i >= len(names) {
		return dash
	}
	return words(names[i][0]) + " " + words(names[i][1])
}

// caseName names a load case as the other reports do; a dash for none.
func (s Study) caseName(k int) string {
	if k < 0 || k >= len(s.Head.Cases) {
		return dash
	}
	return fmt.Sprintf("[%d] %s", k+1, s.Head.Cases[k])
}

// lead begins every text of a study.
func (s Study) lead(p *page, what string) {
	r := s.head()
	p.line("%s", r.title())
	p.files(r, "")
	f := r.Car.Factors
	p.line("design factors, in every reserve factor: yield %g, ultimate %g, buckling %g", f.Yield, f.Ultimate, f.Buckling)
	p.fold("", "  ", what)
	if text := s.state(); text != "" {
		p.fold("", "  ", text)
	}
	p.line("")
}

// state says what a study lacks; empty: nothing.
func (s Study) state() string {
	var out []string
	if s.Shard.N > 1 {
		out = append(out, fmt.Sprintf("SHARD %d of %d: a part of the study; sixlink merge joins the parts.", s.Shard.I, s.Shard.N))
	}
	if !s.Complete {
		out = append(out, "INCOMPLETE: the study was stopped before its end, and what follows is the part that was done.")
	}
	return strings.Join(out, " ")
}

// Text returns the study for a terminal. Corner is the one whose members are shown with
// their forces; −1: none.
func (s Study) Text(corner int) ([]byte, error) {
	if s.Vary != nil {
		return s.varyText(corner)
	}
	return s.toleranceText()
}

// CSV returns the study as comma-separated values (RFC 4180) under lines that begin with
// #: numbers at full precision, nothing where there is no value.
func (s Study) CSV() ([]byte, error) {
	if s.Vary != nil {
		return s.varyCSV()
	}
	return s.toleranceCSV()
}

// JSON returns the study for other programs.
func (s Study) JSON() ([]byte, error) {
	if s.Vary != nil {
		return s.varyJSON()
	}
	return s.toleranceJSON()
}
