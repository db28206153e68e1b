package reports

import (
	"fmt"
	"math"
	"strings"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members/check"
	"sixlink/members/sizing"
)

// Sizes shows the tubes of a car before and after sizing.
type Sizes struct {
	Version string // of the program
	File    string // name of the car file
	SHA256  string // of the car file's bytes, hexadecimal
	Screen  Screen // on which the text is shown
	cases.Sized
}

// report is the report of the car with the chosen tubes.
func (s Sizes) report() Report {
	return Report{Version: s.Version, File: s.File, SHA256: s.SHA256, Results: s.After, Incomplete: s.incomplete()}
}

// incomplete says which members have no tube; empty: all have one.
func (s Sizes) incomplete() string {
	var without []string
	for _, at := range s.Before.Car.Stations() {
		for link := range loads.LinkNames {
			if s.Lacks(at.At, link) {
				without = append(without, at.Member(link))
			}
		}
	}
	if len(without) == 0 {
		return ""
	}
	return "the sizing is incomplete: no tube of the stock carries " + strings.Join(without, ", ") +
		"; there is no car to judge, and no mass is saved; the other members were judged beside the tubes that the file has there"
}

// Tables returns the blocks of the report in their order: the sizing, then what check
// shows of the car with the chosen tubes; where a member has none there is no such car.
func (s Sizes) Tables() []Table {
	if r := s.report(); r.Incomplete != "" {
		return []Table{s.membersTable(), s.howTable(), r.remarks()}
	}
	return append([]Table{s.membersTable(), s.howTable()}, s.report().Tables()...)
}

// membersTable has a line for each member of an axle, left and right together where they
// are mirror images.
func (s Sizes) membersTable() Table {
	t := Table{
		Name: "Sizing", Title: "Members before and after sizing: " + s.sides() + "; masses of one side",
		Columns: []Column{
			{"axle", "", Text},
			{"member", "", Text},
			{"material", "", Text},
			{"section before", "mm", Text},
			{"mass before", "kg", Milli},
			{"governed by", "", Text},
			{"in case", "", Text},
			{"RF before", "", Reserve},
			{"section after", "mm", Text},
			{"mass after", "kg", Milli},
			{"governed by", "", Text},
			{"in case", "", Text},
			{"RF after", "", Reserve},
			{"saved", "kg", Milli},
			{"verdict", "", Text},
			{"remark", "", Text},
			{"cost of both", strings.TrimSuffix(s.Stock.PriceUnit, "/m"), Tenth},
			{"source of the size", "", Text},
		},
	}
	for _, at := range s.Before.Car.Stations() {
		for link, member := range loads.LinkNames {
			was, is := sidesOf(s.Before, at, link), s.after(at, link)
			cost, source := nan, any(nil)
			if size := s.Chosen(at.At, link); size != nil {
				cost, source = at.Count()*sizing.Cost(*size, is.member.Strut.Length), size.Source
			}
			t.Rows = append(t.Rows, []any{
				at.Name, words(member), is.member.Strut.Metal.Name,
				was.section, was.mass, was.check, was.at, was.reserve,
				is.section, is.mass, is.check, is.at, is.reserve,
				s.lighter(was, is), is.verdict, s.remarkOf(at.At, link), cost, source,
			})
		}
	}
	return t
}

// sides says what of left and right is shown.
func (s Sizes) sides() string {
	if s.Before.Car.Mirrors() {
		return "left and right alike, the worse of the two"
	}
	return "of an axle whose sides are mirror images the worse of the two"
}

// A sided is the worse of a member and its mirror image.
type sided struct {
	member    cases.Member
	corner    int
	check, at any
	reserve   float64
	section   string
	mass      float64 // kg
	verdict   string
}

// lighter is the mass that a member loses, kg; none where the sizing is incomplete.
func (s Sizes) lighter(was, is sided) float64 {
	if !s.Carries() {
		return nan
	}
	return was.mass - is.mass
}

// after is a member with its chosen tube; without values where no tube carries it.
func (s Sizes) after(at cases.Station, link int) sided {
	out := sidesOf(s.After, at, link)
	out.section = s.sizeOf(at.At, link, out.member)
	if s.Lacks(at.At, link) {
		return sided{member: out.member, corner: out.corner, reserve: nan, section: dash, mass: nan, verdict: "NO TUBE"}
	}
	return out
}

func sidesOf(r cases.Results, at cases.Station, link int) sided {
	out := sided{member: r.Corners[at.At].Members[link], corner: at.At, reserve: math.NaN()}
	for corner := at.At; corner < at.At+int(at.Count()); corner++ {
		m := r.Corners[corner].Members[link]
		if g, ok := m.Governs(); ok && (out.check == nil || check.Lower(g.Reserve, out.reserve)) {
			out = sided{member: m, corner: corner, check: g.Title(), at: caseNo(g.Case), reserve: g.Reserve}
		}
	}
	strut := out.member.Strut
	out.section, out.mass, out.verdict = sectionWords(strut), strut.Mass(), verdictOf(out.member.Judged)
	return out
}

// sizeOf names the section of a member, by the stock where it is of it.
func (s Sizes) sizeOf(corner, link int, m cases.Member) string {
	if size := s.Chosen(corner, link); size != nil {
		return sizeWords(*size)
	}
	return sectionWords(m.Strut)
}

// remarkOf says why a member has the tube that it has, where it is not simply the
// lightest that carries.
func (s Sizes) remarkOf(corner, link int) string {
	if g := s.Of(corner, link); g != nil {
		return s.groupRemark(*g)
	}
	return ""
}

func (s Sizes) groupRemark(g cases.Group) string {
	switch {
	case g.Kept != "":
		return "kept: " + g.Kept
	case g.Size == nil && g.Nearest == nil:
		return "no tube: the stock has none within the limits of which it can be made"
	case g.Size == nil:
		n := g.Nearest
		return fmt.Sprintf("no tube of the stock carries it; nearest %s: RF %s, %s [%d]", sizeWords(n.Size), Reserve.number(n.Finding.Reserve), n.Finding.Title(), n.Finding.Case+1)
	case g.First:
		return "the lightest of the stock: the loads would do with less"
	}
	return ""
}

// howTable says how the tubes were found.
func (s Sizes) howTable() Table {
	t := Table{Name: "How", Title: "How the tubes were found", Columns: []Column{{"about", "", Text}, {"text", "", Text}}}
	t.Rows = append(t.Rows, []any{"terms", s.terms()})
	for axle, name := range cases.AxleNames {
		t.Rows = append(t.Rows, []any{name + " axle", s.settling(axle)})
	}
	t.Rows = append(t.Rows, []any{"mass", s.massWords()})
	for _, n := range s.notes() {
		t.Rows = append(t.Rows, []any{"note", n})
	}
	return t
}

func (s Sizes) terms() string {
	text := termWords(s.Stock, s.Limits, s.Target)
	own := ""
	if !s.Before.Car.Mirrors() {
		own = "; a right-hand member to which the car file gives a section of its own has a tube of its own"
	}
	if s.Separate {
		return text + "; every member of an axle by itself, left and right alike" + own
	}
	return text + "; both legs of a wishbone share a tube, and so do left and right" + own
}

func (s Sizes) massWords() string {
	if !s.Carries() {
		return "members of all four corners " + Milli.number(s.Before.MembersMass()) + " kg before; after: not known, for not every member has its tube"
	}
	return fmt.Sprintf("members of all four corners %s kg before, %s kg after: %s kg saved",
		Milli.number(s.Before.MembersMass()), Milli.number(s.After.MembersMass()), Milli.number(s.Saved()))
}

// settling tells how the sections and forces of an axle came to agree.
func (s Sizes) settling(axle int) string {
	x := s.Settled[axle]
	if x == nil {
		return "the forces do not depend on the sections that were sized: one round; every lighter tube of the stock was judged and does not carry"
	}
	text := fmt.Sprintf("the sections change the forces of the wishbone that carries the rod: sized and solved again, they settled after %s", plural(x.Rounds, "round"))
	if x.Cycle > 0 {
		text = fmt.Sprintf("the sections change the forces of the wishbone that carries the rod: sized and solved again, they did not settle but came round every %d rounds; the heaviest of those was taken", x.Cycle)
	}
	switch {
	case !s.carried(axle):
		text += "; no combination of tubes that was tried carries all of its members"
	case x.Better && x.Complete:
		text += "; a lighter combination carries and was taken instead, and none is lighter than that"
	case x.Better:
		text += "; a lighter combination carries and was taken instead"
	case x.Complete:
		text += "; no lighter combination carries"
	}
	if !x.Complete && s.carried(axle) {
		text += "; there are too many lighter combinations to try them all: what is shown carries, and a lighter one may too"
	}
	return text + fmt.Sprintf(" (%d solved)", x.Tried)
}

// carried tells whether every group of an axle that was sized has its tube.
func (s Sizes) carried(axle int) bool {
	for _, g := range s.Groups {
		if g.Axle == axle && g.Kept == "" && g.Size == nil {
			return false
		}
	}
	return true
}

func plural(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// notes are those of the stock and of the sizing; those of the results follow them.
func (s Sizes) notes() (out []string) {
	out = append(out, s.Stock.Remark)
	for axle := range cases.AxleNames {
		if text := s.thinWalls(axle); text != "" {
			out = append(out, text)
			break
		}
	}
	insert, thread := s.Joined()
	if insert {
		out = append(out, "a member with a bonded insert was given tubes of its present bore alone, which the insert fits")
	}
	if thread {
		out = append(out, "a member with a thread at its end was given tubes wider than that thread alone")
	}
	return append(out,
		"the masses of the car are as the file has them: lighter members do not lighten the loads here; joints, ends and rockers stay, and whether the ends can be joined to another tube is for the drawing",
		"the rockers, and what else the car file gives, are judged with the chosen tubes too, but the target holds for the members and their ends alone")
}

// thinWalls is what goes with the table of an axle that has a thin wall in it.
func (s Sizes) thinWalls(axle int) string {
	for _, g := range s.Groups {
		if g.Axle == axle && g.Size != nil && g.Size.Tube.Wall < sizing.ThinWall {
			return sizing.ThinRemark
		}
	}
	return ""
}
