package carfile

import (
	"fmt"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members/ends"
)

// axialShare reads how much of the joint's force acts along its bearing and bolt. A
// rating that the file leaves without use is a doubt.
func (b *builder) axialShare(it *item, part *part) float64 {
	share := it.at("axial_share")
	if share.given && !it.at("bearing").given && !it.at("bolt").given {
		b.refuse(share, "the end has neither bearing nor bolt along which a force could act", "give bearing or bolt, or take axial_share out")
	}
	if part != nil && part.bearing.Axial > 0 && !share.given {
		b.doubt(fmt.Sprintf("part %s: its axial rating is not checked at an end that gives no axial_share", quoted(part.bearing.Part)))
	}
	return share.number()
}

// misalignment reads the angle at which the joint stands; nil: not stated. A limit that
// the file leaves without use is a doubt.
func (b *builder) misalignment(it *item, part *part) *ends.Misalignment {
	angle := it.at("misalignment")
	switch {
	case !angle.given && part != nil && part.limit > 0 && b.moves:
		// the angle over the travel is
	case !angle.given && part != nil && part.limit > 0:
		b.doubt(fmt.Sprintf("part %s: its angle of misalignment is not checked at an end that gives none", quoted(part.bearing.Part)))
	case angle.given && !it.at("bearing").given:
		b.refuse(angle, "the end has no bearing that the angle could misalign", "give bearing, or take misalignment out")
	case angle.given && part != nil && !part.limited:
		b.refuse(angle, "the part "+cut(part.bearing.Part)+" gives no angle to hold this one to", "give the part its misalignment in the list parts, or take this one out")
	case angle.good && part != nil && part.limit > 0:
		return &ends.Misalignment{Angle: angle.number(), Limit: part.limit}
	}
	return nil
}

// bentInsert refuses an insert where the moment of the rod bends the leg of the wishbone
// that carries it: the bond would be peeled, which no check knows.
func (b *builder) bentInsert(it *item, carrier loads.Carrier, link int) {
	front, rear, ok := carrier.Legs()
	if !ok || link != front && link != rear {
		return
	}
	for _, name := range []string{"outer", "both"} {
		if insert := it.at(name).at("insert"); insert.given {
			b.refuse(insert, "the rod bends this leg at its outer end, and the bond of an insert is not checked for the peel of that moment", "weld the outer end: weld, or let the upright carry the rod")
		}
	}
}

// shankLength reads how far the shank of a rod end stands out; 0: not given.
func (b *builder) shankLength(it *item, th *ends.Thread) float64 {
	length := it.at("shank_length")
	if length.given && length.good && th == nil && !it.at("thread").given && (it.at("bearing").good || !it.at("bearing").given) {
		b.refuse(length, "the end has no thread whose shank could be bent", "give thread, or a rod end with a thread, or take shank_length out")
	}
	return length.number()
}

// welds refuses a weld on a laminate.
func (b *builder) welds(it *item, p cases.Part) bool {
	if p.Laminate == nil {
		return true
	}
	b.refuse(it, "a laminate is not welded, and this member is of "+cut(p.Laminate.Name), "take weld out, or bond an insert into the tube: insert")
	return false
}
