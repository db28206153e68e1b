package reports

import (
	"fmt"
	"slices"

	"sixlink/cases"
	"sixlink/cases/compare"
	"sixlink/loads"
)

// A Comparison shows cars side by side, a column for each. It gives no verdict beyond
// that of each car.
type Comparison struct {
	Version string // of the program
	Screen  Screen // on which the text is shown
	Reports []Report
	compare.Comparison
	Keys [][]compare.KeyChange // of the file of each car but the first, against the first
}

// letter names a car in the headings: A for the first.
func letter(car int) string { return compare.Letter(car) }

// Passes tells whether every car passes.
func (c Comparison) Passes() bool {
	return !slices.ContainsFunc(c.Reports, func(r Report) bool { return !r.Pass })
}

// A line is one number of every car, side by side.
type line struct {
	where, item, what, unit string
	format                  Format
	values                  []any // for each car: float64, string, or nil
	cases                   []int // for each car, −1: none; nil: in no case
}

// lineOf asks each car for its value.
func (c Comparison) lineOf(l line, of func(compare.Car) any) line {
	for _, car := range c.Cars {
		l.values = append(l.values, of(car))
	}
	return l
}

// peakLine asks each car for an extreme.
func (c Comparison) peakLine(l line, of func(compare.Car) compare.Peak) line {
	for _, car := range c.Cars {
		p := of(car)
		l.values, l.cases = append(l.values, p.Value), append(l.cases, p.Case)
	}
	return l
}

// forceLines are the extremes of one member.
func (c Comparison) forceLines(where string, corner, link int) []line {
	l := line{where: where, item: words(loads.LinkNames[link]), unit: "N", format: Whole}
	l.what = "tension"
	tension := c.peakLine(l, func(car compare.Car) compare.Peak { return car.Corners[corner].Members[link].Tension })
	l.what = "compression"
	return []line{tension, c.peakLine(l, func(car compare.Car) compare.Peak { return car.Corners[corner].Members[link].Compression })}
}

// reserveLines are what governs a member or rocker, the check and the part of it that
// the check looks at, and the lowest reserve factor.
func (c Comparison) reserveLines(where string, corner, member int) []line {
	l := line{where: where, item: words(cases.MemberNames[member])}
	at, check, rf := l, l, l
	at.what, check.what, rf.what, rf.format = "governed at", "governed by", "RF", Reserve
	for _, car := range c.Cars {
		place, name, k, reserve := any(nil), any(nil), -1, any(nil)
		if g, ok := car.Judged(corner, member).Governs(); ok {
			name, k, reserve = g.Check, g.Case, g.Reserve
			if g.At != "" {
				place = g.At
			}
		}
		at.values, rf.values = append(at.values, place), append(rf.values, reserve)
		check.values, check.cases = append(check.values, name), append(check.cases, k)
	}
	return []line{at, check, rf}
}

// massLines are the tube and the mass of a member, as it is and at equal reserve factor.
func (c Comparison) massLines(where string, corner, link int) []line {
	member := func(car compare.Car) compare.Member { return car.Corners[corner].Members[link] }
	l := func(what, unit string, format Format) line {
		return line{where: where, item: words(loads.LinkNames[link]), what: what, unit: unit, format: format}
	}
	at := fmt.Sprintf(" at RF %s", Full.number(c.Reserve))
	return []line{
		c.lineOf(l("section", "mm", Text), func(car compare.Car) any { return sectionWords(member(car).Strut) }),
		c.lineOf(l("mass", "kg", Milli), func(car compare.Car) any { return member(car).Strut.Mass() }),
		c.lineOf(l("tube"+at, "mm", Text), func(car compare.Car) any {
			if n := member(car).Need; n != nil {
				return Tenth.number(n.Tube.OD) + " × " + Tenth.number(n.Tube.Wall)
			}
			return nil
		}),
		c.lineOf(l("mass"+at, "kg", Milli), func(car compare.Car) any { return member(car).Needed() }),
	}
}

// handedLines are the largest forces at the rocker, on the chassis and on the upright of
// one corner, for every place that one of the cars has.
func (c Comparison) handedLines(where string, corner int) (out []line) {
	for _, group := range []struct {
		name string
		of   func(compare.Corner) []compare.Force
	}{
		{"rocker", func(x compare.Corner) []compare.Force { return x.Rocker }},
		{"on chassis", func(x compare.Corner) []compare.Force { return x.Chassis }},
		{"on upright", func(x compare.Corner) []compare.Force { return x.Upright }},
	} {
		for _, place := range c.places(corner, group.of) {
			l := line{where: where, item: group.name, what: words(place.Name), unit: place.Unit, format: Whole}
			for _, car := range c.Cars {
				value, k := any(nil), -1
				for _, f := range group.of(car.Corners[corner]) {
					if f.Name == place.Name {
						value, k = f.Value, f.Case
					}
				}
				l.values, l.cases = append(l.values, value), append(l.cases, k)
			}
			out = append(out, l)
		}
	}
	return out
}

// places are those of all cars, each once.
func (c Comparison) places(corner int, of func(compare.Corner) []compare.Force) (out []compare.Force) {
	for _, car := range c.Cars {
		for _, f := range of(car.Corners[corner]) {
			if !slices.ContainsFunc(out, func(o compare.Force) bool { return o.Name == f.Name }) {
				out = append(out, f)
			}
		}
	}
	return out
}

// layoutLines are masses, heights, frontal area and travel of the axles and the car.
func (c Comparison) layoutLines() (out []line) {
	for i, axle := range cases.AxleNames {
		out = append(out, c.weightLines(axle+" axle", func(car compare.Car) compare.Masses { return car.Axles[i].Masses })...)
		out = append(out, c.movedLines(i)...)
	}
	return append(out, c.weightLines("car", func(car compare.Car) compare.Masses { return car.Masses })...)
}

// movedLines are frontal area and travel of an axle, of each side where those of a car
// are no mirror images.
func (c Comparison) movedLines(axle int) (out []line) {
	sides := []string{"axle"}
	if slices.ContainsFunc(c.Cars, func(car compare.Car) bool { return car.Axles[axle].Right != nil }) {
		sides = cases.SideNames[:]
	}
	for side, name := range sides {
		where := cases.AxleNames[axle] + " " + name
		out = append(out,
			c.lineOf(line{where: where, item: "frontal area", what: "links of one corner", unit: "mm²", format: Whole}, func(car compare.Car) any { return car.Axles[axle].At(side).FrontalArea }),
		)
		out = append(out, c.travelLines(where, axle, side)...)
	}
	return out
}

func (c Comparison) weightLines(where string, of func(compare.Car) compare.Masses) (out []line) {
	for _, part := range []struct {
		name  string
		of    func(compare.Masses) compare.Body
		given bool
	}{
		{"links", func(m compare.Masses) compare.Body { return m.Links }, true},
		{"inboard parts", func(m compare.Masses) compare.Body { return m.Inboard }, false},
		{"links and inboard", func(m compare.Masses) compare.Body { return m.Both }, false},
	} {
		body := func(value func(compare.Body) float64) func(compare.Car) any {
			return func(car compare.Car) any {
				if m := of(car); part.given || m.Given {
					return value(part.of(m))
				}
				return nil
			}
		}
		out = append(out,
			c.lineOf(line{where: where, item: part.name, what: "mass, both sides", unit: "kg", format: Milli}, body(func(b compare.Body) float64 { return b.Mass })),
			c.lineOf(line{where: where, item: part.name, what: "height of CG", unit: "mm", format: Tenth}, body(func(b compare.Body) float64 { return b.Height })),
		)
	}
	return out
}

// travelLines are the travel ratios, of springs and of torsion bars apart, for their
// units differ; what no car has is left out.
func (c Comparison) travelLines(where string, axle, side int) (out []line) {
	for _, bar := range []bool{false, true} {
		of, travel, force := travelWords(bar)
		value := func(f func(*loads.Travel) float64) func(compare.Car) any {
			return func(car compare.Car) any {
				if t := car.Axles[axle].At(side).Travel; t != nil && t.Bar == bar {
					return f(t)
				}
				return nil
			}
		}
		lines := []line{
			c.lineOf(line{where: where, item: of, what: "travel ratio to wheel", unit: travel, format: Full}, value(func(t *loads.Travel) float64 { return t.Ratio })),
			c.lineOf(line{where: where, item: of, what: "per contact force", unit: force, format: Full}, value(func(t *loads.Travel) float64 { return t.Force })),
		}
		if slices.ContainsFunc(lines[0].values, func(v any) bool { return v != nil }) {
			out = append(out, lines...)
		}
	}
	return out
}

// travelWords are what turns or shortens, the unit of its travel ratio, and that of its
// force or torque per contact force.
func travelWords(bar bool) (of, travel, force string) {
	if bar {
		return "torsion bar", "rad/mm", "N·mm/N"
	}
	return "spring", "mm/mm", "N/N"
}
