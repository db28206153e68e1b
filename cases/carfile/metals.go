package carfile

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"sixlink/cases"
	"sixlink/materials"
	"sixlink/members"
)

// metals are the user's own materials.
type metals struct {
	own  map[string]materials.Metal // those with a fault too, for which no further fault is due
	lost bool                       // some could not be read at all: any name may be among them
}

// doubtBasis is the doubt of a material of the user's own that leaves its basis open;
// others are those of materials.BasisDoubt. They travel with every result.
const doubtBasis = "the file does not say what the strengths are (basis): confirm that they are minima before release"

func (b *builder) materials(it *item) {
	b.metals = metals{own: make(map[string]materials.Metal), lost: it.given && !it.good}
	for _, e := range it.entries {
		name := e.at("name")
		if !name.good {
			b.metals.lost = true
			continue
		}
		if text := b.taken(name.text); text != "" {
			b.refuse(name, text, "give the material a name of its own")
			continue
		}
		b.metals.own[name.text] = b.metal(e)
	}
}

// taken says by whom a name is taken; empty: by nobody.
func (b *builder) taken(name string) string {
	if title, ok := materials.Canonical(name); ok {
		return quoted(name) + " is the name of a built-in material, " + title
	}
	if _, ok := b.metals.own[name]; ok {
		return quoted(name) + " is the name of another material of this list"
	}
	return ""
}

func (b *builder) metal(e *item) materials.Metal {
	m := materials.Metal{
		Name: e.at("name").text, Form: e.at("form").text, WallTo: e.at("max_wall").number(),
		E: e.at("youngs_modulus").number(), Nu: e.at("poisson_ratio").number(),
		Sy: e.at("yield_strength").number(), Su: e.at("ultimate_strength").number(),
		Density: e.at("density").number(), Basis: e.at("basis").text, Source: e.at("source").text,
	}
	if m.Doubt = materials.BasisDoubt(m.Basis); m.Basis == "" {
		m.Doubt = doubtBasis
	}
	b.moreStrengths(e, &m)
	if u := e.at("ultimate_strength"); whole(u, e.at("yield_strength")) && m.Su < m.Sy {
		b.refuse(u, fmt.Sprintf("%s MPa is less than the yield strength, %s MPa", short(m.Su), short(m.Sy)), "exchange the two, or correct one")
	}
	return m
}

// part reads what a member is made of; its length is not known here.
func (b *builder) part(it *item) cases.Part {
	p := cases.Part{Number: it.at("part").text, Certificate: it.at("certificate").text, Notes: it.at("notes").text}
	p.Strut.K = it.at("effective_length_factor").number()
	p.Strut.Column = column(it.at("column"))
	p.Sources.Eccentricity, p.Sources.SideLoad = it.at("eccentricity").number(), it.at("side_load").number()
	section, wall := b.section(it)
	p.Strut.Section = section
	if material := it.at("material"); material.good {
		p.Strut.Metal = b.find(material, wall)
	}
	b.ofLaminate(&p, it)
	p.Ends = b.ends(it.at("ends"), p)
	return p
}

func column(it *item) members.Column {
	if bow := it.at("crookedness"); bow.given {
		return members.Column{Crookedness: bow.number()}
	}
	if curve, ok := strings.CutPrefix(it.text, curvePrefix); ok {
		return members.Column{Curve: curve}
	}
	return members.Column{}
}

// find returns the metal of that name for a wall: one of the file, or a built-in one.
func (b *builder) find(name *item, wall wall) materials.Metal {
	m, own := b.metals.own[name.text]
	_, builtIn := materials.Canonical(name.text)
	switch {
	case own && wall.known && m.WallTo > 0 && wall.mm > m.WallTo:
		b.tooThick(wall, m.WallTo, m.Name)
	case own && wall.good() && !wall.known && m.WallTo > 0:
		b.doubt(fmt.Sprintf("%s gives no wall: that it is at most %s mm, for which %s has strengths, is not checked", wall.of.path, short(m.WallTo), cut(m.Name)))
	case own || b.metals.lost && !builtIn || builtIn && !wall.good():
		return m
	default:
		return b.builtIn(name, wall)
	}
	return m
}

func (b *builder) builtIn(name *item, wall wall) materials.Metal {
	m, err := materials.Find(name.text, max(wall.mm, 1))
	switch {
	case wall.known:
		m, err = materials.Find(name.text, wall.mm)
	case wall.good():
		m, err = b.weakest(name, wall)
	}
	var unknown *materials.UnknownError
	var thick *materials.WallError
	var weak *materials.NoYieldError
	switch {
	case errors.As(err, &unknown):
		b.refuse(name, "there is no material "+quoted(name.text), perhaps(b.near(unknown)))
	case errors.As(err, &thick):
		b.tooThick(wall, thick.Limit, thick.Name)
	case errors.As(err, &weak):
		b.refuse(name, "there is no yield strength of "+weak.Name+" in the table, for its source gives none", "choose another condition, or give the material under materials with the yield strength of its certificate")
	case err != nil:
		b.refuse(name, err.Error(), "correct the name, or give the material under materials with its source")
	}
	return m
}

// perhaps offers names: those that are like the one that was asked for.
func perhaps(names []string) string {
	const own = "give the material under materials with its source"
	switch {
	case len(names) == 0:
		return "write one of the names that sixlink materials lists, or " + own
	case len(names) <= 3:
		return "write " + alternatives(names) + " if that is meant, or " + own
	}
	return "write one of " + alternatives(names) + ", or " + own
}

// near returns the names that may be meant: those of the file, then those built in.
func (b *builder) near(e *materials.UnknownError) []string {
	var names []string
	for name := range b.metals.own {
		if distance(plainName(name), plainName(e.Name)) <= max(1, len(name)/3) {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	for i, name := range names {
		names[i] = cut(name)
	}
	return append(names, e.Near...)
}

func (b *builder) tooThick(wall wall, limit float64, name string) {
	what, remedy := "wall", "choose a thinner wall"
	if wall.of.key.Name == "bar" {
		what, remedy = "half of the diameter", "choose a thinner bar"
	}
	b.fault(wall.at, wall.of.path, flaw{
		fmt.Sprintf("%s: %s mm is more than %s mm, the thickest for which %s has strengths", what, short(wall.mm), short(limit), cut(name)),
		remedy + ", or give the material under materials with its source",
	})
	wall.of.good = false
}
