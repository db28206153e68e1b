package carfile

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"go.yaml.in/yaml/v4"

	"sixlink/cases"
	"sixlink/members/laminate"
)

// stacks are the laminates of the file.
type stacks struct {
	own  map[string]*laminate.Laminate // nil for one with a fault, for which no further fault is due
	lost bool                          // some could not be read at all: any name may be among them
}

// series reads a list of any number of numbers.
func (r *reader) series(it *item, n *yaml.Node) {
	k := it.key
	switch {
	case len(n.Content) == 0:
		r.refuse(it, "the list is empty", k.advice())
		return
	case len(n.Content) > k.Most:
		r.refuse(it, fmt.Sprintf("%d numbers are more than %d", len(n.Content), k.Most), "shorten the list")
		return
	}
	for i, c := range n.Content {
		c = target(c)
		at := r.where(c)
		v, f := it.component(c)
		if f != nil {
			r.fault(at, it.path, flaw{fmt.Sprintf("number %d: %s", i+1, f.text), f.remedy})
			it.good = false
		}
		it.numbers, it.places = append(it.numbers, v), append(it.places, at)
	}
}

func (b *builder) laminates(it *item) {
	b.stacks = stacks{own: make(map[string]*laminate.Laminate), lost: it.given && !it.good}
	for _, e := range it.entries {
		name := e.at("name")
		if !name.good {
			b.stacks.lost = true
			continue
		}
		text := b.taken(name.text)
		if _, twice := b.stacks.own[name.text]; twice {
			text = quoted(name.text) + " is the name of another laminate of this list"
		}
		if text != "" {
			b.refuse(name, text, "give the laminate a name of its own")
			continue
		}
		b.stacks.own[name.text] = b.laminate(e)
	}
}

// laminate returns a laminate, or nil where something of it could not be read.
func (b *builder) laminate(e *item) *laminate.Laminate {
	ply, ok := b.ply(e.at("ply"))
	if !ok || !whole(e, e.at("layup"), e.at("symmetric"), e.at("knockdown"), e.at("interaction"), e.at("source")) {
		return nil
	}
	l := &laminate.Laminate{
		Name: e.at("name").text, Ply: ply, Angles: slices.Clone(e.at("layup").numbers),
		Knockdown: e.at("knockdown").number(), Interaction: e.at("interaction").number(), Source: e.at("source").text,
	}
	if e.at("symmetric").flag {
		other := slices.Clone(l.Angles)
		slices.Reverse(other)
		l.Angles = append(l.Angles, other...)
	}
	return l
}

// firm is the largest ν12·ν21 of a ply that can be read: a body gives no work for
// nothing, so that it is below 1, and near 1 the stiffness is lost in rounding.
const firm = 0.999

func (b *builder) ply(it *item) (p laminate.Ply, ok bool) {
	number := func(name string) float64 {
		ok = ok && it.at(name).good
		return it.at(name).number()
	}
	ok = it.good
	p = laminate.Ply{
		E1: number("longitudinal_modulus"), E2: number("transverse_modulus"), G12: number("shear_modulus"), Nu12: number("poisson_ratio"),
		Thickness: number("thickness"), Density: number("density"),
		TensionAlong: number("tension_along"), CompressionAlong: number("compression_along"),
		TensionAcross: number("tension_across"), CompressionAcross: number("compression_across"), Shear: number("shear"),
	}
	if ratio := it.at("poisson_ratio"); ok && !(p.Nu12*p.Nu21() < firm) {
		b.refuse(ratio, fmt.Sprintf("%s is not less than %s, the root of longitudinal_modulus/transverse_modulus: no such ply exists", short(math.Abs(p.Nu12)), short(math.Sqrt(p.E1/p.E2))),
			"give the larger modulus as longitudinal_modulus, with the strain across the fibres for a stress along them")
		ok = false
	}
	return p, ok
}

// sameWall is how far, relative, the wall of a tube may be from the sum of its plies.
const sameWall = 0.01

// ofLaminate makes a member of the laminate that it names, if it names one.
func (b *builder) ofLaminate(p *cases.Part, it *item) {
	name := it.at("laminate")
	if !name.good {
		return
	}
	if material := it.at("material"); material.given {
		b.refuse(name, "material and laminate exclude each other", "give exactly one of material or laminate")
		return
	}
	if rule := it.at("column"); rule.given && rule.good && !rule.at("crookedness").given {
		b.refuse(rule, "a rule for columns goes with material, not with laminate", "take it out, or give the bow of the axis at mid-length as column: {crookedness: …}")
	}
	if section := it.at("section"); section.given {
		b.refuse(section, "a laminate is judged as a round tube alone", "give tube: [od, wall] instead of section")
		return
	}
	l, known := b.stacks.own[name.text]
	if l == nil {
		if !known && !b.stacks.lost {
			b.refuse(name, "there is no laminate "+quoted(name.text), b.offered())
		}
		return
	}
	b.fits(it.at("tube"), l)
	p.Laminate, p.Strut.Metal = l, l.Metal()
}

// offered says which laminates there are to be named.
func (b *builder) offered() string {
	if len(b.stacks.own) == 0 {
		return "give the laminate under laminates with its source"
	}
	names := slices.Sorted(maps.Keys(b.stacks.own))
	for i, name := range names {
		names[i] = cut(name)
	}
	return "write one of " + alternatives(names) + ", or give the laminate under laminates with its source"
}

// fits refuses a tube whose wall is not the sum of the plies.
func (b *builder) fits(tube *item, l *laminate.Laminate) {
	if !tube.good || len(tube.numbers) != 2 {
		return
	}
	if wall, h := tube.numbers[1], l.Thickness(); !(math.Abs(wall-h) <= sameWall*h) {
		b.fault(tube.places[1], tube.path, flaw{
			fmt.Sprintf("wall: %s mm is not %s mm, the thickness of the %d plies of %s", short(wall), short(h), len(l.Angles), cut(l.Name)),
			"give the wall as the sum of the plies, within 1 %, or correct the layup",
		})
		tube.good = false
	}
}
