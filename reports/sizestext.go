package reports

import (
	"fmt"

	"sixlink/cases"
	"sixlink/loads"
)

// Text returns the sizing for a terminal: before and after, how the tubes were found,
// and always the doubts, what is not checked and the caution.
func (s Sizes) Text() ([]byte, error) {
	p := newPage(s.Screen)
	r := s.report()
	p.line("%s", r.title())
	p.files(r, "")
	f := s.After.Car.Factors
	p.line("design factors, in every reserve factor: yield %g, ultimate %g, buckling %g", f.Yield, f.Ultimate, f.Buckling)
	p.fold("", "  ", s.terms())
	p.line("")
	r.textCases(p)
	sides := "left and right alike, RF the worse of the two"
	if !s.Before.Car.Mirrors() {
		sides = s.sides()
	}
	p.line("Lightest tubes; %s; masses of one side, kg", sides)
	for _, at := range s.Before.Car.Stations() {
		p.line("\n%s", at.Title())
		s.textAxle(p, at)
		if at.Both || at.At%2 == cases.Right {
			p.fold("  ", "    ", s.thinWalls(at.At/2))
			p.fold("  ", "    ", s.settling(at.At/2))
		}
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

func (s Sizes) textAxle(p *page, at cases.Station) {
	p.table(func(row func(cells ...string)) {
		row("member", "before, mm", "mass", "RF", "after, mm", "mass", "RF", "governed by", "saved", "")
		for link, member := range loads.LinkNames {
			was, is := sidesOf(s.Before, at, link), s.after(at, link)
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
		lead := s.groupName(g) + " "
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

// groupName says on which side of which axle a group is.
func (s Sizes) groupName(g cases.Group) string {
	name := cases.AxleNames[g.Axle]
	if s.Before.Car.Axles[g.Axle].Right == nil {
		return name
	}
	for side, other := range [2]int{cases.Right, cases.Left} {
		if len(g.Sides[other]) == 0 {
			return name + " " + cases.SideNames[side]
		}
	}
	return name + ", left and right,"
}
