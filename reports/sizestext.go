package reports

import (
	"fmt"

	"sixlink/cases"
	"sixlink/loads"
)

// Text returns the sizing for a terminal: before and after, how the tubes were found,
// and always the doubts, what is not checked and the caution.
func (s Sizes) Text() ([]byte, error) {
	p := &page{}
	r := s.report()
	p.line("%s", r.title())
	p.line("car file %s, SHA-256 %s", printable(s.File), s.SHA256)
	f := s.After.Car.Factors
	p.line("design factors, in every reserve factor: yield %g, ultimate %g, buckling %g", f.Yield, f.Ultimate, f.Buckling)
	p.fold("", "  ", s.terms())
	p.line("")
	r.textCases(p)
	p.line("Lightest tubes; left and right alike, RF the worse of the two; masses of one side, kg")
	for axle, name := range cases.AxleNames {
		p.line("\n%s axle", name)
		s.textAxle(p, axle)
		p.fold("  ", "    ", s.thinWalls(axle))
		p.fold("  ", "    ", s.settling(axle))
	}
	p.line("")
	s.textOpen(p)
	p.fold("", "      ", s.massWords())
	lead := "with these tubes: "
	if r.Incomplete != "" {
		lead = ""
	}
	p.fold(lead, "      ", r.summary())
	p.line("")
	r.textMaterials(p)
	p.notes(s.notes())
	r.closing(p)
	return p.Bytes(), nil
}

func (s Sizes) textAxle(p *page, axle int) {
	p.table(func(row func(cells ...string)) {
		row("member", "before, mm", "mass", "RF", "after, mm", "mass", "RF", "governed by", "saved", "")
		for link, member := range loads.LinkNames {
			was, is := s.governing(s.Before, axle, link), s.after(axle, link)
			row(words(member),
				was.section, Milli.number(was.mass), Reserve.number(was.reserve),
				is.section, Milli.number(is.mass), Reserve.number(is.reserve), governedBy(is),
				Milli.number(s.lighter(was, is)), is.verdict)
		}
	})
}

func governedBy(s sided) string {
	if s.check == nil {
		return dash
	}
	return fmt.Sprintf("%v [%v]", s.check, s.at)
}

// textOpen names the members that were left as they are, and those that no tube carries.
func (s Sizes) textOpen(p *page) {
	for _, g := range s.Groups {
		text := s.groupRemark(g)
		if text == "" {
			continue
		}
		lead := cases.AxleNames[g.Axle] + " "
		for i, link := range g.Links {
			if i > 0 {
				lead += " and "
			}
			lead += words(loads.LinkNames[link])
		}
		if g.Kept == "" && g.Size == nil {
			lead = "NO TUBE: " + lead
		}
		p.fold(lead+": ", "  ", text)
	}
}
