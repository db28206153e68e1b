package carfile

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"sixlink/cases"
	"sixlink/loads"
)

// A Scatter is how one value of the file scatters about the number in the file.
type Scatter struct {
	Value
	Distribution string  // "normal" or "uniform"
	Deviation    float64 // standard deviation, or half of the width, in the unit of the value
}

// scatter reads how the values of a file scatter: those of the groups in the order of the
// table, then those by their path, which take the place of what a group says of them.
func (b *builder) scatter(f File, it *item) (out []Scatter) {
	b.reader.faults = nil // there are none, or the file would not be one
	for _, g := range groups {
		if group := it.at(g.name); group.given && group.good {
			for _, v := range g.values(f) {
				if s, ok := b.deviation(group, v); ok {
					out = append(out, s)
				}
			}
		}
	}
	lines := map[string]int{} // of the values by their path
	for _, e := range it.at("values").entries {
		path := e.at("path")
		v, err := f.Value(path.text)
		if err != nil {
			b.refuse(path, strings.TrimPrefix(err.Error(), clean(path.text)+": "), "correct the path")
			continue
		}
		if line, twice := lines[v.Path]; twice {
			b.refuse(path, "the scatter of "+clean(v.Path)+" stands in "+b.rowName(line)+" too", "keep one of the two")
			continue
		}
		lines[v.Path] = path.line
		s, ok := b.deviation(e, v)
		at := slices.IndexFunc(out, func(o Scatter) bool { return o.Path == s.Path })
		switch {
		case !ok:
		case at >= 0:
			out[at] = s
		default:
			out = append(out, s)
		}
	}
	return out
}

// groups are the values of which scatter can speak together.
var groups = []struct {
	name   string
	values func(File) []Value
}{
	{"hardpoints", func(f File) []Value {
		return f.numbers(func(it *item, _ int) bool {
			return it.key.Kind == Vector && it.key.Dimension == Length && !strings.Contains(it.path, ".wheel.")
		})
	}},
	{"walls", func(f File) []Value { return f.metalTubes("wall") }},
	{"diameters", func(f File) []Value { return f.metalTubes("od") }},
	{"strengths", func(f File) (out []Value) {
		f.eachMember(func(side, link string) { out = append(out, f.mustValue(side+".members."+link+".strength")) })
		return out
	}},
	{"loads", func(f File) (out []Value) {
		for i := range f.Car.Cases {
			out = append(out, f.mustValue(fmt.Sprintf("cases[%d].load", i)))
		}
		return out
	}},
}

// numbers returns the numbers of the axles that are of some kind.
func (f File) numbers(kind func(it *item, index int) bool) (out []Value) {
	for _, axle := range cases.AxleNames {
		f.top.at(axle).each(func(it *item, i int) {
			if kind(it, i) {
				out = append(out, f.mustValue(it.valuePath(i)))
			}
		})
	}
	return out
}

// metalTubes returns a dimension of all sections of members of metal.
func (f File) metalTubes(part string) (out []Value) {
	f.eachMember(func(side, link string) {
		f.top.lookUp(side + ".members." + link).each(func(it *item, i int) {
			path := it.valuePath(i)
			if strings.HasSuffix(path, "."+part) && !strings.Contains(path, ".ends.") {
				out = append(out, f.mustValue(path))
			}
		})
	})
	return out
}

// eachMember calls do for every member of metal, and for those that right gives for
// itself; side is "front" or "front.right".
func (f File) eachMember(do func(side, link string)) {
	for i := range f.Car.Axles {
		left, name := f.Car.Axles[i].At(cases.Left), cases.AxleNames[i]
		right, given := f.Car.Axles[i].At(cases.Right), f.top.at(name).at("right")
		for j, link := range loads.LinkNames {
			if left.Parts[j].Laminate == nil {
				do(name, link)
			}
			if ownPart(given, link) && right.Parts[j].Laminate == nil {
				do(name+".right", link)
			}
		}
	}
}

// mustValue returns the value at a path that was made from the file.
func (f File) mustValue(path string) Value {
	v, err := f.Value(path)
	if err != nil {
		panic("carfile: " + err.Error())
	}
	return v
}

// deviation reads what a group or an entry says of one value.
func (b *builder) deviation(it *item, v Value) (Scatter, bool) {
	s := Scatter{Value: v}
	for _, name := range deviationKeys {
		d := it.at(name)
		if !d.given || !d.good {
			continue
		}
		s.Distribution = name
		text := strings.TrimSpace(d.text)
		share, ofBase := strings.CutSuffix(text, "%")
		dimension := v.Dimension
		if ofBase || v.Relative {
			dimension = Share
		}
		x, f := quantity(text, dimension)
		if f != nil {
			b.refuse(d, f.text, f.remedy)
			return s, false
		}
		if s.Deviation = x; ofBase && !v.Relative {
			s.Deviation = x * math.Abs(v.Base)
		}
		switch {
		case ofBase && v.Dimension == Length && v.key.Kind == Vector:
			b.refuse(d, quoted(share+"%")+" of a coordinate depends on where the origin lies", "give a length, such as 0.5 mm")
		case !(s.Deviation > 0):
			b.refuse(d, quoted(text)+" of "+short(v.Base)+v.Dimension.suffix()+" is no scatter", "give a number above 0, or take the key out")
		case v.Relative && x > 1:
			b.refuse(d, quoted(text)+" is more than 100 % of the value", "give a share, such as 4 %")
		default:
			return s, true
		}
		return s, false
	}
	return s, false
}
