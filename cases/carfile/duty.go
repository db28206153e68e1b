package carfile

import (
	"fmt"
	"slices"
	"strings"

	"sixlink/cases"
	"sixlink/cases/duty"
	"sixlink/loads"
	"sixlink/members/fatigue"
)

// duty reads what a lap does to the car; nil: the file does not say.
func (b *builder) duty(it *item) *duty.Duty {
	if !it.given {
		return nil
	}
	d := &duty.Duty{
		LapLength: it.at("lap_length").number(), Wanted: it.at("wanted").number(), LifeFactor: it.at("life_factor").number(),
		LoadFactor: it.at("load_factor").number(), Inspection: it.at("inspection").number(), Survival: it.at("survival").number(),
	}
	blocks, histories := it.at("blocks").entries, it.at("histories").entries
	if len(blocks)+len(histories) == 0 && it.good {
		b.refuse(it, "a lap in which nothing happens", "give blocks of load cases, or histories")
	}
	names := map[string]int{}
	for _, e := range blocks {
		b.ownName(e, names)
		d.Blocks = append(d.Blocks, b.block(e))
	}
	for _, e := range histories {
		b.ownName(e, names)
		d.Histories = append(d.Histories, b.history(e))
	}
	clear(names)
	for _, e := range it.at("details").entries {
		b.ownName(e, names)
		d.Details = append(d.Details, b.detail(e))
	}
	return d
}

// ownName refuses a name that an entry before has.
func (b *builder) ownName(e *item, lines map[string]int) {
	name := e.at("name")
	if !name.good {
		return
	}
	if line, taken := lines[name.text]; taken {
		b.refuse(name, fmt.Sprintf("the name %s is that of %s too", quoted(name.text), b.rowName(line)), "give each one a name of its own")
		return
	}
	lines[name.text] = name.line
}

func (b *builder) block(e *item) duty.Block {
	out := duty.Block{Name: e.at("name").text, Times: e.at("times").number()}
	sequence := e.at("sequence")
	for _, s := range sequence.entries {
		name := s.at("case")
		if name.given && name.good {
			b.knownCase(name)
		}
		out.Cases = append(out.Cases, name.text)
	}
	if sequence.good && len(out.Cases) == 1 {
		b.refuse(sequence, "one load case alone is no cycle", "give the load case too that comes before it, such as that of the car standing still")
	}
	return out
}

// knownCase refuses the name of a load case that the file does not have.
func (b *builder) knownCase(it *item) {
	var all []string
	for _, c := range b.car.Cases {
		if c.Name == it.text && len(c.Names()) > 1 {
			b.refuse(it, quoted(it.text)+" unfolds into two load cases", "write "+alternatives([]string{quoted(c.Names()[0]), quoted(c.Names()[1])}))
			return
		}
		all = append(all, c.Names()...)
	}
	if !slices.Contains(all, it.text) {
		for i := range all {
			all[i] = cut(all[i])
		}
		b.refuse(it, "there is no load case "+quoted(it.text), "write one of "+strings.Join(all, "; "))
	}
}

func (b *builder) history(e *item) duty.History {
	h := duty.History{
		Name: e.at("name").text, File: e.at("file").text, Laps: e.at("laps").number(), Part: e.at("share").number(),
		Wheel:    duty.Wheel(max(0, slices.Index(duty.WheelNames, e.at("wheel").text))),
		UnitsRow: e.at("units_row").flag, LongStep: e.at("long_step").number(), BadRows: int(e.at("bad_rows").number()),
	}
	columns := e.at("columns")
	for q := duty.Time; q <= duty.Speed; q++ {
		b.logged(columns.at(duty.QuantityNames[q]), duty.Channel{Corner: duty.Car, What: q}, &h)
	}
	car := len(h.Columns) > 1
	for i, corner := range cases.CornerNames {
		for q := duty.ForceX; q <= duty.UnsprungZ; q++ {
			b.logged(columns.at(corner).at(duty.QuantityNames[q]), duty.Channel{Corner: i, What: q}, &h)
		}
	}
	b.measured(columns, car, &h)
	return h
}

// measured holds the columns to one of the two kinds of history.
func (b *builder) measured(columns *item, car bool, h *duty.History) {
	if !columns.good || !columns.given {
		return
	}
	both := columns.at("acceleration_x").given && columns.at("acceleration_y").given
	switch forces := slices.ContainsFunc(h.Columns, func(c duty.Column) bool { return c.Corner >= 0 }); {
	case forces && car:
		b.refuse(columns, "the columns are those of the whole car and of wheels too", "give acceleration_x, acceleration_y and speed, or the forces of wheels")
	case !forces && !both:
		b.refuse(columns, "the columns say nothing of the loads", "give acceleration_x and acceleration_y, with speed, or the forces of wheels, such as front_left")
	}
}

// logged reads one column; its factor leads to the unit of the channel.
func (b *builder) logged(it *item, c duty.Channel, h *duty.History) {
	if !it.given {
		return
	}
	factor := it.at("scale").number()
	d := dimensionOfChannel(c.What)
	if unit := it.at("unit"); unit.given && unit.good {
		v, f := quantity("1 "+unit.text, d)
		if f != nil {
			b.refuse(unit, quoted(unit.text)+" is no unit of "+d.String(), "write "+nearUnit(unit.text, d))
		}
		factor *= v
	}
	if d == Moment {
		factor *= newtonMillimetres
	}
	if scale := it.at("scale"); scale.good && scale.number() == 0 {
		b.refuse(scale, "a factor of 0 leaves nothing of the column", "give a factor, such as -1")
	}
	h.Columns = append(h.Columns, duty.Column{Channel: c, Name: it.at("column").text, Factor: factor})
}

func dimensionOfChannel(q duty.Quantity) Dimension {
	switch q {
	case duty.Time:
		return Duration
	case duty.AccelerationX, duty.AccelerationY:
		return Acceleration
	case duty.Speed:
		return Speed
	}
	return dimensionOf(q)
}

// ruleFits refuses a rule that a curve does not have.
func (b *builder) ruleFits(it *item, c *duty.Curve) {
	var fits []string
	switch c.Kind {
	case duty.ByDetail, duty.ByHandbook:
		b.refuse(it, "how a mean stress counts is part of this curve", "take mean_stress out")
		return
	case duty.ByStrain:
		fits = []string{"swt", "morrow"}
	case duty.ByStress:
		fits = []string{"goodman", "gerber", "swt", "walker", "morrow", "none"}
	case duty.ByEstimate:
		fits = []string{"goodman", "gerber", "swt", "walker", "none"}
	}
	if !slices.Contains(fits, it.text) {
		b.refuse(it, "the constants of this curve do not have what "+quoted(it.text)+" needs", "write "+alternatives(fits))
	}
}

// exponentFits refuses an exponent that no rule has.
func (b *builder) exponentFits(it *item, c *duty.Curve) {
	c.Exponent = it.number()
	if it.given && it.good && c.Rule != fatigue.Walker {
		b.refuse(it, "it is the exponent of walker, and mean_stress is another rule", "take it out, or write mean_stress: walker")
	}
}

// meanRules are the words of the file for the rules.
var meanRules = map[string]fatigue.MeanRule{
	"goodman": fatigue.Goodman, "gerber": fatigue.Gerber, "swt": fatigue.SWT, "walker": fatigue.Walker, "morrow": fatigue.Morrow, "none": fatigue.NoMean,
}

func (b *builder) detail(e *item) duty.Detail {
	d := duty.Detail{
		Name: e.at("name").text,
		Axle: slices.Index(cases.AxleNames[:], e.at("axle").text), Link: slices.Index(loads.LinkNames[:], e.at("member").text),
		Place:  duty.Place(max(0, slices.Index(duty.PlaceNames, e.at("at").text))),
		Throat: e.at("throat").number(),
		Curve: duty.Curve{
			Partial: e.at("partial_factor").number(), Relieved: e.at("relieved").flag, Kt: e.at("stress_concentration").number(),
			Radius: e.at("notch_radius").number(), Surface: e.at("surface").text, Survival: e.at("survival").number(),
		},
	}
	if th := e.at("thread"); th.given {
		t := b.size(th)
		d.Thread, d.StressArea = t.Size, t.StressArea()
		if d.Throat > 0 {
			b.refuse(th, "a stress is that of a thread or that of the throat of a weld", "take one of the two out")
		}
	}
	b.curve(e, &d.Curve)
	b.carried(e, &d)
	return d
}

// carried refuses a detail of EN 1993-1-9 whose range is that of another section or kind
// of stress than the one that is judged.
func (b *builder) carried(e *item, d *duty.Detail) {
	it := e.at("detail")
	row, err := fatigue.FindDetail(it.text)
	switch {
	case !it.given || !it.good || err != nil:
	case row.Shear:
		b.refuse(it, "the range of "+quoted(it.text)+" is that of a shear stress, and stresses along the member are judged here", "take a detail of direct stress; judge the shear by hand")
	case row.Name == "bolt in tension" && !e.at("thread").given:
		b.refuse(it, "the range of a bolt is that of its stress area", "give thread, such as M8")
	case row.Name == "root" && !e.at("throat").given:
		b.refuse(it, "the range of a root is that of the throat of the weld", "give throat")
	}
}

// curve reads which curve a detail has.
func (b *builder) curve(e *item, c *duty.Curve) {
	at := slices.IndexFunc(curveKeys, func(k string) bool { return e.at(k).given })
	if at < 0 {
		return
	}
	it := e.at(curveKeys[at])
	c.Kind, c.Row = [...]duty.Kind{duty.ByDetail, duty.ByStrain, duty.ByStress, duty.ByEstimate, duty.ByHandbook}[at], it.text
	if c.Kind == duty.ByEstimate && it.good && !it.flag {
		b.refuse(it, "no curve is given", "write steel_estimate: true, or give detail, strain_life, stress_life or handbook in its place")
	}
	rule := e.at("mean_stress")
	c.Rule = fatigue.SWT
	switch {
	case rule.given && rule.good:
		c.Rule = meanRules[rule.text]
		b.ruleFits(rule, c)
		b.exponentFits(e.at("walker_exponent"), c)
	case c.Kind == duty.ByEstimate:
		c.Rule = fatigue.Goodman
	}
}

// misfits refuses details that members of the car cannot have.
func (b *builder) misfits(d *duty.Duty, top *item) {
	if d == nil {
		return
	}
	for _, m := range d.Misfits(&b.car) {
		b.refuse(top.lookUp(m.Path), m.Text, m.Remedy)
	}
}
