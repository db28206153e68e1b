package reports

import (
	"fmt"
	"math"
	"strings"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/loads/motion"
)

// A Travel is what the corners of a car do as wheels travel and racks move.
type Travel struct {
	Screen                Screen // on which the text is shown
	Version, File, SHA256 string
	Car                   cases.Car
	Curves                []cases.Curves
	LeftOut               []string // cases whose reserve factors are left out
}

// Passes tells whether no reserve factor that was found is below 1.
func (t Travel) Passes() bool {
	for _, c := range t.Curves {
		for _, r := range c.Reserves {
			if r.Refused != "" || r.Link >= 0 && !(r.Reserve >= 1) {
				return false
			}
		}
	}
	return true
}

// head is the report by whose heading and notes the outputs go.
func (t Travel) head() Report {
	r := Report{Version: t.Version, File: t.File, SHA256: t.SHA256}
	r.Car = t.Car
	note := func(s cases.Severity, text string) { r.Notes = append(r.Notes, cases.Note{Severity: s, Text: text}) }
	for _, d := range t.Car.Doubts {
		note(cases.Warning, d)
	}
	note(cases.Remark, "the links are rigid; the chassis stands still, and what it does on the road is no part of this; the contact point is the lowest point of the wheel")
	note(cases.Remark, "rod force and travel ratio are those of an upward contact force on a rolling wheel, both wheels of the axle alike, so they are per rise of the contact point, which rises a little more or less than the wheel centre, whose rise is the travel; the end of an anti-roll link on its bar is free to follow")
	if t.judged() {
		note(cases.Remark, "lowest RF: of the members of the corner over all load cases, each with its own contact forces, whatever travel and rack the case gives; rockers and the angles of bearings are not in it")
	}
	for _, name := range t.LeftOut {
		note(cases.Remark, fmt.Sprintf("case %q is not in the lowest RF: its wheel loads belong to springs at one travel", name))
	}
	r.NotChecked = []string{"elastic movement of links, joints, chassis and tyre; bodies that foul one another; friction"}
	if !t.judged() {
		r.NotChecked = append(r.NotChecked, "strength: no reserve factor is in this (--checks)")
	}
	return r
}

func (t Travel) judged() bool {
	for _, c := range t.Curves {
		if c.Reserves != nil {
			return true
		}
	}
	return false
}

// A curveColumn is one quantity over travel and rack.
type curveColumn struct {
	Column
	key string // in JSON
	of  func(c *cases.Curves, i int) any
}

// curveColumns are the quantities, in their order.
func curveColumns(bar, rocker bool) []curveColumn {
	at := func(of func(p *motion.Position) float64) func(*cases.Curves, int) any {
		return func(c *cases.Curves, i int) any { return of(&c.Positions[i]) }
	}
	ratio, per := "travel of the spring per rise of the contact point", "mm/mm"
	switch {
	case bar:
		ratio, per = "turn of the torsion bar per rise of the contact point", "rad/mm"
	case !rocker:
		ratio = "shortening of the rod per rise of the contact point"
	}
	out := []curveColumn{
		{Column{"travel", "mm", Tenth}, "travel", at(func(p *motion.Position) float64 { return p.Travel })},
		{Column{"rack", "mm", Tenth}, "rack", at(func(p *motion.Position) float64 { return p.Rack })},
		{Column{"rod force per wheel force", "N/N", Full}, "rod_force_per_wheel_force", at((*motion.Position).RodForce)},
		{Column{ratio, per, Full}, "travel_ratio", at(func(p *motion.Position) float64 { return p.Ratio().Ratio })},
		{Column{"change of that from the position drawn", "%", Full}, "travel_ratio_change_percent", func(c *cases.Curves, i int) any { return 100 * c.Change(&c.Positions[i]) }},
		{Column{"spring length", "mm", Full}, "spring_length", at(func(p *motion.Position) float64 { return p.SpringLength })},
		{Column{"rocker angle", "°", Full}, "rocker_deg", at(func(p *motion.Position) float64 { return degrees(p.Rocker) })},
		{Column{"camber", "°", Full}, "camber_deg", at(func(p *motion.Position) float64 { return degrees(p.Camber) })},
		{Column{"toe", "°", Full}, "toe_deg", at(func(p *motion.Position) float64 { return degrees(p.Toe) })},
		{Column{"steer", "°", Full}, "steer_deg", at(func(p *motion.Position) float64 { return degrees(p.Steer) })},
		{Column{"caster", "°", Full}, "caster_deg", at(func(p *motion.Position) float64 { return degrees(p.Caster) })},
		{Column{"track change", "mm", Full}, "track_change", at(func(p *motion.Position) float64 { return p.TrackChange })},
	}
	for i, name := range loads.LinkNames {
		out = append(out, curveColumn{Column{words(name) + " angle", "°", Full}, name + "_deg", at(func(p *motion.Position) float64 { return degrees(p.LinkAngles[i]) })})
	}
	return out
}

// reserveColumns are those of a sweep with checks.
var reserveColumns = []curveColumn{
	{Column{"lowest RF", "", Reserve}, "lowest_reserve_factor", func(c *cases.Curves, i int) any { return c.Reserves[i].Reserve }},
	{Column{"of", "", Text}, "lowest_of", func(c *cases.Curves, i int) any {
		if r := c.Reserves[i]; r.Link >= 0 {
			return words(loads.LinkNames[r.Link])
		}
		return c.Reserves[i].Refused
	}},
	{Column{"check", "", Text}, "lowest_check", func(c *cases.Curves, i int) any { return c.Reserves[i].Check }},
	{Column{"case", "", Text}, "lowest_case", func(c *cases.Curves, i int) any { return c.Reserves[i].Case }},
}

// columnsOf are the columns of one corner.
func columnsOf(c *cases.Curves) []curveColumn {
	rk := c.Drawn.Corner.Rocker
	out := curveColumns(rk != nil && rk.Spring == nil, rk != nil)
	if c.Reserves != nil {
		out = append(out, reserveColumns...)
	}
	return out
}

// curveTable is the table of one corner.
func curveTable(c *cases.Curves) Table {
	name := words(cases.CornerNames[c.Corner])
	t := Table{Name: name, Title: "Travel and rack of the " + name + " corner. Signs: " + motionSigns}
	columns := columnsOf(c)
	for _, k := range columns {
		t.Columns = append(t.Columns, k.Column)
	}
	for i := range c.Positions {
		var row []any
		for _, k := range columns {
			row = append(row, k.of(c, i))
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

// reachWords say how far a corner goes, and what stops it.
func reachWords(c *cases.Curves) string {
	end := func(x float64, s motion.Stop) string { return fmt.Sprintf("%s mm (%s)", Tenth.number(x), s.Text) }
	return fmt.Sprintf("reach: the wheel from %s to %s with the rack as drawn; the rack from %s to %s with the wheel as drawn",
		end(c.Reach.Low.Travel, c.Reach.Low), end(c.Reach.High.Travel, c.Reach.High), end(c.Lock.Low.Rack, c.Lock.Low), end(c.Lock.High.Rack, c.Lock.High))
}

// Text returns the curves for a terminal: the reach, the table, and charts.
func (t Travel) Text() ([]byte, error) {
	p, r := newPage(t.Screen), t.head()
	p.line("%s", r.title())
	p.files(r, "")
	p.fold("", "", "Signs: "+motionSigns+".")
	for i := range t.Curves {
		c := &t.Curves[i]
		p.line("\n%s", words(cases.CornerNames[c.Corner]))
		p.fold("", "  ", reachWords(c))
		p.line("")
		t.textRows(p, c)
	}
	p.line("")
	r.closing(p)
	return p.Bytes(), nil
}

// textColumns are the keys that a terminal shows, with short headings; the files have all.
var textColumns = []struct{ key, head string }{
	{"rod_force_per_wheel_force", "rod/wheel"},
	{"travel_ratio", "ratio"},
	{"travel_ratio_change_percent", "change, %"},
	{"rocker_deg", "rocker"},
	{"camber_deg", "camber"},
	{"toe_deg", "toe"},
	{"track_change", "track, mm"},
	{"lowest_reserve_factor", "RF"},
}

// textRows writes a line for each position, with a chart of the ratio and of the camber.
func (t Travel) textRows(p *page, c *cases.Curves) {
	show := map[string]curveColumn{}
	for _, k := range columnsOf(c) {
		show[k.key] = k
	}
	shown := thinned(c.Positions)
	if len(shown) < len(c.Positions) {
		p.line("%d positions of %d are shown, travels and racks thinned each by itself; --csv, --json and --workbook have them all", len(shown), len(c.Positions))
	}
	var marks []marked
	for _, key := range []string{"rod_force_per_wheel_force", "camber_deg"} {
		marks = append(marks, marksOf(c, show[key]))
	}
	head := []string{"travel", "rack"}
	for _, k := range textColumns {
		if _, ok := show[k.key]; ok {
			head = append(head, k.head)
		}
	}
	rows := [][]string{append(head, marks[0].head("rod/wheel"), marks[1].head("camber"))}
	for _, i := range shown {
		row := []string{Tenth.number(c.Positions[i].Travel), Tenth.number(c.Positions[i].Rack)}
		for _, k := range textColumns {
			if column, ok := show[k.key]; ok {
				row = append(row, shortNumber(column, column.of(c, i)))
			}
		}
		rows = append(rows, append(row, marks[0].at(i), marks[1].at(i)))
	}
	p.folded(rows)
	p.line("  charts: %s, %s", marks[0].ends("rod/wheel"), marks[1].ends("camber, °"))
}

// shortNumber shows four digits on a terminal.
func shortNumber(k curveColumn, v any) string {
	x, ok := v.(float64)
	switch {
	case !ok:
		return k.cell(v)
	case k.Format == Reserve:
		return Reserve.number(x)
	case math.IsNaN(x):
		return dash
	}
	return sign(trimZeros(fmt.Sprintf("%.4f", x)))
}

// marked is a quantity as marks between its ends, for a chart of characters.
type marked struct {
	low, high float64
	values    []float64
}

const markWidth = 16

func marksOf(c *cases.Curves, k curveColumn) marked {
	m := marked{low: math.Inf(1), high: math.Inf(-1)}
	for i := range c.Positions {
		x, _ := k.of(c, i).(float64)
		m.values, m.low, m.high = append(m.values, x), math.Min(m.low, x), math.Max(m.high, x)
	}
	return m
}

func (m marked) head(name string) string {
	return name + fmt.Sprintf("%*s", max(0, markWidth-len([]rune(name))), "")
}

func (m marked) ends(name string) string {
	return fmt.Sprintf("%s from %s to %s", name, Full.number(m.low), Full.number(m.high))
}

// at is the line of one position: o at its place between the ends.
func (m marked) at(i int) string {
	out := []rune(strings.Repeat("·", markWidth))
	place := 0.0
	if m.high > m.low {
		place = (m.values[i] - m.low) / (m.high - m.low)
	}
	if !math.IsNaN(place) {
		out[int(math.Round(place*(markWidth-1)))] = 'o'
	}
	return "|" + string(out) + "|"
}
