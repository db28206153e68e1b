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
	tube := it.at("tube")
	if tube.good {
		p.Strut.Tube = members.Tube{OD: tube.numbers[0], Wall: tube.numbers[1]}
		if od, wall := p.Strut.OD, p.Strut.Wall; wall > od/2 {
			b.fault(tube.places[1], tube.path, flaw{
				fmt.Sprintf("wall: %s mm is more than %s mm, half of the outer diameter", short(wall), short(od/2)),
				"give the outer diameter first and then the wall; a solid bar has a wall of half its diameter",
			})
			tube.good = false
		}
	}
	if material := it.at("material"); material.good {
		p.Strut.Metal = b.find(material, tube)
	}
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

// find returns the metal of that name for a tube: one of the file, or a built-in one.
func (b *builder) find(name, tube *item) materials.Metal {
	wall := 0.0
	if tube.good {
		wall = tube.numbers[1]
	}
	m, own := b.metals.own[name.text]
	_, builtIn := materials.Canonical(name.text)
	switch {
	case own && tube.good && m.WallTo > 0 && wall > m.WallTo:
		b.tooThick(tube, wall, m.WallTo, m.Name)
	case own || b.metals.lost && !builtIn || builtIn && !tube.good:
		return m
	default:
		return b.builtIn(name, tube, wall)
	}
	return m
}

func (b *builder) builtIn(name, tube *item, wall float64) materials.Metal {
	m, err := materials.Find(name.text, max(wall, 1))
	if tube.good {
		m, err = materials.Find(name.text, wall)
	}
	var unknown *materials.UnknownError
	var thick *materials.WallError
	var weak *materials.NoYieldError
	switch {
	case errors.As(err, &unknown):
		b.refuse(name, "there is no material "+quoted(name.text), perhaps(b.near(unknown)))
	case errors.As(err, &thick):
		b.tooThick(tube, wall, thick.Limit, thick.Name)
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

func (b *builder) tooThick(tube *item, wall, limit float64, name string) {
	b.fault(tube.places[1], tube.path, flaw{
		fmt.Sprintf("wall: %s mm is more than %s mm, the thickest for which %s has strengths", short(wall), short(limit), cut(name)),
		"choose a thinner wall, or give the material under materials with its source",
	})
	tube.good = false
}
