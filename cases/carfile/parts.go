package carfile

import (
	"slices"

	"sixlink/members/ends"
)

// parts are the entries of the user's own list.
type parts struct {
	own  map[string]*part
	lost bool // some could not be read at all: any name may be among them
}

// A part is a bearing or rod end.
type part struct {
	bearing ends.Bearing
	thread  *ends.Thread // nil: none
	limit   float64      // of misalignment, degrees; 0: not given, or not read
	limited bool         // a limit stands in the file, be it with a fault
	rodEnd  bool
}

func (b *builder) readParts(it *item) {
	b.parts = parts{own: make(map[string]*part), lost: it.given && !it.good}
	for _, e := range it.entries {
		name := e.at("part")
		if !name.good {
			b.parts.lost = true
			continue
		}
		if b.parts.own[name.text] != nil {
			b.refuse(name, quoted(name.text)+" is the name of another part of this list", "give the part a name of its own")
			b.parts.lost = true
			continue
		}
		b.parts.own[name.text] = b.readPart(e)
	}
}

func (b *builder) readPart(e *item) *part {
	p := &part{rodEnd: e.at("kind").text == rodEnd, limit: e.at("misalignment").number(), limited: e.at("misalignment").given, bearing: ends.Bearing{
		Tilt: e.at("misalignment").number(),
		Part: e.at("part").text, Radial: e.at("radial_rating").number(), Axial: e.at("axial_rating").number(),
		Mass: e.at("mass").number(), Source: e.at("source").text,
	}}
	th := e.at("thread")
	if th.given && e.at("kind").text == sphericalBearing {
		b.refuse(th, "a "+sphericalBearing+" has no thread", "take thread out, or write kind: "+rodEnd)
	}
	if th.given {
		size := b.size(th.at("size"))
		p.thread = &ends.Thread{Thread: size, Strength: b.strength(th, size.Diameter)}
	}
	return p
}

// partOf returns the part of that name; nil where there is none.
func (b *builder) partOf(it *item) *part {
	if !it.given || !it.good {
		return nil
	}
	p := b.parts.own[it.text]
	if p == nil && !b.parts.lost {
		b.refuse(it, "there is no part "+quoted(it.text), b.nearPart(it.text))
	}
	return p
}

// nearPart says what to do about a part that is not there.
func (b *builder) nearPart(name string) string {
	var near, all []string
	for own := range b.parts.own {
		all = append(all, cut(own))
		if distance(plainName(own), plainName(name)) <= max(1, len(own)/3) {
			near = append(near, cut(own))
		}
	}
	if len(near) > 0 {
		all = near
	}
	slices.Sort(all)
	if len(all) == 0 {
		return "give the part in the list parts, with its rating and source"
	}
	return perhaps(all) + ", or give the part in the list parts, with its rating and source"
}
