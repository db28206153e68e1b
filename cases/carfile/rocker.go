package carfile

import (
	"fmt"
	"strings"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/materials"
	"sixlink/members/fasteners"
	"sixlink/members/rocker"
)

// rockerParts reads what a rocker is made of; nil: the file says nothing of it.
func (b *builder) rockerParts(it *item) *cases.Rocker {
	var out cases.Rocker
	if plates := it.at("plates"); plates.given {
		out.Plates = b.plates(plates, it)
	}
	if bearings := it.at("bearings"); bearings.given {
		out.Bearings = b.pivotBearings(bearings)
	}
	if bar := it.at("torsion_bar_section"); bar.given {
		out.Bar = b.torsionBar(bar, it)
	}
	if bolt := it.at("pivot_bolt"); bolt.given {
		out.Bolt = b.pivotBolt(bolt)
	}
	if out == (cases.Rocker{}) {
		return nil
	}
	return &out
}

func (b *builder) plates(it, parent *item) *cases.RockerPlates {
	thickness, pivot := it.at("thickness"), it.at("pivot")
	p := &cases.RockerPlates{Plates: rocker.Plates{
		Count: 1, Thickness: thickness.number(), Spacing: it.at("spacing").number(), Joined: it.at("joined").flag,
		Metal: b.metalFor(it.at("material"), thickness, thickness.number()),
	}}
	if it.at("count").text == "2" {
		p.Count = 2
	}
	b.plateCount(it)
	p.Pivot = rocker.Cut{Width: pivot.at("width").number(), Opening: pivot.at("bore").number()}
	b.wider(pivot.at("width"), pivot.at("bore"), "the bore")
	for i, name := range loads.EyeNames {
		if eye := it.at(name); eye.given {
			p.Eyes[i] = b.eye(eye)
			if name != loads.EyeNames[loads.RodEye] && !parent.at(name).given {
				b.fault(eye.place, eye.path, flaw{"the rocker has no " + name, "take it out, or give rocker." + name})
			}
		}
	}
	return p
}

// plateCount holds what belongs to two plates to their number.
func (b *builder) plateCount(it *item) {
	count, spacing, joined := it.at("count"), it.at("spacing"), it.at("joined")
	if !whole(count) {
		return
	}
	two := count.text == "2"
	switch thickness := it.at("thickness"); {
	case two && !spacing.given:
		b.refuse(it, "spacing is missing, which two plates need", "add spacing: the distance of the middles of the two plates")
	case two && whole(spacing, thickness) && spacing.number() < thickness.number():
		b.refuse(spacing, fmt.Sprintf("%s mm is less than the thickness of a plate, %s mm", short(spacing.number()), short(thickness.number())),
			"give the distance from the middle of one plate to the middle of the other")
	case !two && spacing.given:
		b.refuse(spacing, "one plate has no spacing", "take it out, or write count: 2")
	case !two && joined.flag:
		b.refuse(joined, "one plate has nothing to be joined with", "take it out, or write count: 2")
	}
}

func (b *builder) eye(it *item) *rocker.Hole {
	hole, width, edge := it.at("hole"), it.at("width"), it.at("edge")
	b.wider(width, hole, "the hole")
	if whole(hole, edge) && edge.number() <= hole.number()/2 {
		b.refuse(edge, fmt.Sprintf("%s mm is not more than %s mm, half of the hole: nothing is left of the eye", short(edge.number()), short(hole.number()/2)),
			"give the distance from the middle of the hole to the edge of the plate")
	}
	return &rocker.Hole{Cut: rocker.Cut{Width: width.number(), Opening: hole.number()}, Edge: edge.number()}
}

// wider refuses a width that leaves nothing beside the opening.
func (b *builder) wider(width, opening *item, what string) {
	if whole(width, opening) && width.number() <= opening.number() {
		b.refuse(width, fmt.Sprintf("%s mm is not more than %s, %s mm", short(width.number()), what, short(opening.number())),
			"give the width of the plate with the opening in it")
	}
}

// pivotBearings reads the ratings of the pivot's bearings, which the file gives there or
// in the list of parts.
func (b *builder) pivotBearings(it *item) *rocker.Ratings {
	part, radial := it.at("part"), it.at("radial_rating")
	out := &rocker.Ratings{
		Part: part.text, Radial: radial.number(), Thrust: it.at("thrust_rating").number(), Source: it.at("source").text,
	}
	known := b.parts.own[part.text]
	if part.given && known != nil && known.rodEnd {
		b.refuse(part, "a "+rodEnd+" is no bearing of a pivot", "name a "+sphericalBearing+" of the list parts, or give the maker's part number with radial_rating and source")
		return out
	}
	if radial.given {
		if radial.good && !it.at("source").given {
			b.refuse(radial, "the rating has no source", "add source: where the ratings come from, the maker's document, edition and page")
		}
		return out
	}
	if !part.given && it.good {
		b.refuse(it, "there is neither radial_rating nor part", "add radial_rating: "+it.key.find("radial_rating").value())
	}
	if p := b.partOf(part); p != nil {
		out.Radial = p.bearing.Radial
		if p.bearing.Axial > 0 && !it.at("thrust_rating").given {
			b.doubt(fmt.Sprintf("part %s: its axial rating is not checked at a pivot that gives no thrust_rating", quoted(p.bearing.Part)))
		}
		if out.Source == "" {
			out.Source = p.bearing.Source
		}
	}
	return out
}

func (b *builder) torsionBar(it, parent *item) *rocker.Bar {
	diameter, bore := it.at("diameter"), it.at("bore")
	if whole(diameter, bore) && bore.number() >= diameter.number() {
		b.refuse(bore, fmt.Sprintf("%s mm is not less than the diameter, %s mm", short(bore.number()), short(diameter.number())), "correct one of the two")
	}
	if bar := parent.at("torsion_bar"); bar.good && bar.given && !bar.flag {
		b.fault(it.place, it.path, flaw{"the rocker has no torsion bar: torsion_bar is false", "take it out, or write torsion_bar: true"})
	}
	wall := (diameter.number() - bore.number()) / 2
	return &rocker.Bar{
		Diameter: diameter.number(), Bore: bore.number(), ShearStrength: it.at("shear_strength").number(),
		Metal: b.metalFor(it.at("material"), diameter, wall),
	}
}

func (b *builder) pivotBolt(it *item) *rocker.Bolt {
	out := &rocker.Bolt{Support: it.at("support").number(), Threads: it.at("section").text != boltShank}
	size, class := it.at("size"), it.at("class")
	if !size.good {
		return out
	}
	thread, err := fasteners.FindThread(size.text)
	if err != nil {
		b.refuseBy(size, err)
		return out
	}
	out.Thread = thread
	if class.good {
		out.Class, err = fasteners.FindClass(class.text, thread.Diameter)
	}
	if err != nil {
		b.refuseBy(class, err)
	}
	return out
}

// refuseBy refuses an item for an error that ends in what to do.
func (b *builder) refuseBy(it *item, err error) {
	text, remedy := halves(err)
	b.refuse(it, text, remedy)
}

// halves splits an error that ends in what to do.
func halves(err error) (text, remedy string) {
	text, remedy = err.Error(), "correct it"
	if at := strings.LastIndex(text, ": "); at >= 0 {
		text, remedy = text[:at], text[at+2:]
	}
	return text, remedy
}

// metalFor returns the metal of that name for a part whose thickness, mm, an item gives.
func (b *builder) metalFor(name, from *item, thickness float64) materials.Metal {
	if !name.good {
		return materials.Metal{}
	}
	return b.find(name, thick(from, thickness))
}
