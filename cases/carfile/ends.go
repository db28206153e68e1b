package carfile

import (
	"errors"
	"fmt"
	"math"

	"sixlink/cases"
	"sixlink/materials"
	"sixlink/members"
	"sixlink/members/ends"
	"sixlink/members/fasteners"
)

// ends reads both ends of a member, of which the rest is known.
func (b *builder) ends(it *item, p cases.Part) (out [2]ends.End) {
	both := it.at("both")
	if both.given && (it.at("outer").given || it.at("inner").given) {
		b.refuse(both, "both stands beside outer or inner", "give both alone, or outer and inner")
		return out
	}
	if both.given {
		e := b.end(both, p)
		return [2]ends.End{e, e}
	}
	for i, name := range []string{"outer", "inner"} {
		if e := it.at(name); e.given {
			out[i] = b.end(e, p)
		}
	}
	return out
}

func (b *builder) end(it *item, p cases.Part) (e ends.End) {
	strut := p.Strut
	part := b.partOf(it.at("bearing"))
	if part != nil {
		e.Bearing = &part.bearing
	}
	e.AxialShare = b.axialShare(it, part)
	e.Misalignment = b.misalignment(it, part)
	e.Thread = b.thread(it, part)
	if shank := b.shankLength(it, e.Thread); e.Thread != nil {
		e.Thread.Shank = shank
	}
	if bolt := it.at("bolt"); bolt.given {
		e.Bolt = b.bolt(bolt)
	}
	if lug := it.at("lug"); lug.given {
		e.Lug = b.lug(lug)
	}
	if weld := it.at("weld"); weld.given && b.welds(weld, p) && b.round(weld, strut) {
		e.Weld = b.weld(weld, strut)
	}
	if insert := it.at("insert"); insert.given && b.round(insert, strut) {
		tube, _ := strut.Round()
		e.Insert = b.insert(insert, tube)
	}
	if e.Bolt != nil && e.Lug != nil && e.Lug.Hole > 0 && e.Bolt.Diameter > 0 {
		b.passes(it, e.Bolt.Diameter, e.Lug.Hole)
	}
	return e
}

// clearance is the largest clearance of a bolt in a lug's hole, as a share of the bolt's
// diameter: our own choice, with no published source. The checks of lug and bolt take
// the bolt to fill its hole.
const clearance = 0.05

// passes holds a bolt to the hole of the lug through which it passes.
func (b *builder) passes(it *item, bolt, hole float64) {
	switch most := bolt * (1 + clearance); {
	case bolt > hole:
		b.refuse(it.at("bolt").at("size"), fmt.Sprintf("the bolt of %s mm does not go through the lug's hole of %s mm", short(bolt), short(hole)),
			"correct bolt.size or lug.hole")
	case hole > most*(1+1e-9):
		b.refuse(it.at("lug").at("hole"), fmt.Sprintf("%s mm is more than %s mm, the bolt of %s mm and 5 %% of it", short(hole), short(most), short(bolt)),
			"correct lug.hole or bolt.size, or press a bush into the hole and give its bore")
	}
}

// round refuses what is checked on round tubes alone.
func (b *builder) round(it *item, strut members.Strut) bool {
	if _, ok := strut.Round(); ok || strut.Section == nil {
		return ok
	}
	b.refuse(it, "a "+it.key.Name+" is checked on a round tube alone, and this section is none", "take it out and check it by hand, or give the member a tube")
	return false
}

// solid returns the metal of something of that thickness, for which the table may have
// bands as it has them for walls.
func (b *builder) solid(name *item, thickness float64) materials.Metal {
	if !name.good {
		return materials.Metal{}
	}
	m := b.find(name, thick(name, thickness))
	if m.Doubt != "" {
		b.doubt(m.Name + ": " + m.Doubt)
	}
	return m
}

// thick is a thickness as that of a wall, which decides the band of its material.
func thick(from *item, mm float64) wall {
	known := from.good && mm > 0
	return wall{&item{key: from.key, path: from.path, good: known}, from.place, mm, known}
}

// size reads the size of a thread.
func (b *builder) size(it *item) fasteners.Thread {
	if !it.good {
		return fasteners.Thread{}
	}
	th, err := fasteners.FindThread(it.text)
	if err != nil {
		b.refuseUnknown(it, err)
	}
	return th
}

// refuseUnknown refuses a size or class for the error of fasteners.
func (b *builder) refuseUnknown(it *item, err error) {
	var unknown *fasteners.UnknownError
	if errors.As(err, &unknown) {
		b.refuse(it, unknown.Text, unknown.Remedy)
	}
}

// strength reads what a thread or bolt of that diameter is made of.
func (b *builder) strength(it *item, diameter float64) ends.Strength {
	if class := it.at("class"); class.given && class.good && diameter > 0 {
		c, err := fasteners.FindClass(class.text, diameter)
		if err != nil {
			b.refuseUnknown(class, err)
		}
		return ends.StrengthOf(c)
	}
	if name := it.at("material"); name.given {
		m := b.solid(name, diameter)
		return ends.StrengthOfMetal(m)
	}
	return ends.Strength{}
}

// thread reads the thread of an end, which may be that of its rod end; nil: none.
func (b *builder) thread(it *item, part *part) *ends.Thread {
	given, offset := it.at("thread"), it.at("offset")
	size := given.at("size")
	var th ends.Thread
	switch {
	case given.given && size.given:
		th.Thread = b.size(size)
		th.Strength = b.strength(given, th.Diameter)
		b.oneStrength(given)
		if part != nil && part.thread != nil && part.thread.Size != th.Size && size.good {
			b.refuse(size, fmt.Sprintf("%s is not the thread of %s, which is %s", th.Size, cut(part.bearing.Part), part.thread.Size), "correct one of the two, or take size and strength out here")
		}
	case part != nil && part.thread != nil:
		th = *part.thread
		if given.at("class").given || given.at("material").given {
			b.refuse(given, "class or material without size", "add size, or take them out: they are those of "+cut(part.bearing.Part))
		}
	case given.given && given.good && (it.at("bearing").good || !it.at("bearing").given):
		b.refuse(given, "size is missing, and the end has no rod end with a thread", "add size: "+threadSize(true).Doc)
		return nil
	default:
		if offset.given && offset.good && !given.given && (it.at("bearing").good || !it.at("bearing").given) {
			b.refuse(offset, "the end has no thread that an offset could bend", "give thread, or a rod end with a thread, or take offset out")
		}
		return nil
	}
	th.Offset, th.Engagement = offset.number(), given.at("engagement").number()
	if in := given.at("in"); in.given {
		th.Nut = b.solid(in, th.Diameter)
		if !given.at("engagement").given {
			b.refuse(in, "in without engagement", "add engagement, the length of engaged thread, or take in out")
		}
	}
	return &th
}

// oneStrength holds a thread to exactly one of the two ways to say what it is made of.
func (b *builder) oneStrength(it *item) {
	class, material := it.at("class"), it.at("material")
	switch {
	case class.given && material.given:
		b.refuse(it, together(strengthKeys)+" exclude each other", "give exactly one of "+alternatives(strengthKeys))
	case !class.given && !material.given:
		b.refuse(it, "there is neither "+join(strengthKeys, " nor "), "give exactly one of "+alternatives(strengthKeys))
	}
}

func (b *builder) bolt(it *item) *ends.Bolt {
	o := &ends.Bolt{Thread: b.size(it.at("size")), Planes: 1, ThreadsInShear: it.at("threads_in_shear").flag}
	o.Strength = b.strength(it, o.Diameter)
	if it.at("shear").text == doubleShear {
		o.Planes = 2
	}
	if p := it.at("plates"); p.given {
		o.Plates = &ends.Plates{Outer: p.at("outer").number(), Inner: p.at("inner").number(), Gap: p.at("gap").number()}
		o.Plates.OuterMetal = b.solid(p.at("material"), o.Plates.Outer)
		if inner := p.at("inner_material"); inner.given {
			o.Plates.InnerMetal = b.solid(inner, o.Plates.Inner)
		}
	}
	return o
}

func (b *builder) lug(it *item) *ends.Lug {
	width, hole, edge := it.at("width"), it.at("hole"), it.at("edge")
	l := &ends.Lug{
		Width: width.number(), Thickness: it.at("thickness").number(), Hole: hole.number(), Edge: edge.number(),
		Shear: it.at("shear_strength").number(), Bearing: it.at("bearing_strength").number(),
		NetCoefficient: it.at("coefficients").at("net_section").number(), ShearCoefficient: it.at("coefficients").at("shear_bearing").number(),
		CoefficientSource: it.at("coefficients").at("source").text,
	}
	l.Metal = b.solid(it.at("material"), l.Thickness)
	if whole(width, hole) && !(l.Width > l.Hole) {
		b.refuse(width, fmt.Sprintf("%s mm is not more than the hole, %s mm", short(l.Width), short(l.Hole)), "correct lug.width or lug.hole")
	}
	if whole(edge, hole) && !(l.Edge > l.Hole/2) {
		b.refuse(edge, fmt.Sprintf("%s mm is not more than half of the hole, %s mm", short(l.Edge), short(l.Hole/2)), "give the distance from the hole's centre to the end of the lug")
	}
	if whole(edge, hole) && l.ShearCoefficient > 0 && l.Far() && !it.at("bearing_strength").given {
		b.refuse(it.at("coefficients"), "shear_bearing multiplies the bearing strength where edge is at least 1.5 times hole, and there is no bearing_strength", "add bearing_strength, or take shear_bearing out")
	}
	return l
}

func (b *builder) weld(it *item, strut members.Strut) *ends.Weld {
	tube, _ := strut.Round()
	w := &ends.Weld{Throat: it.at("throat").number(), Filler: it.at("strength").number()}
	m := strut.Metal
	if k := it.at("knockdown"); k.given {
		w.KnockYield, w.KnockUltimate, w.KnockSource = k.at("yield_share").number(), k.at("ultimate_share").number(), k.at("source").text
		return w
	}
	w.Process = it.at("process").text
	haz, known := materials.Weld(m, tube.Wall, it.at("process").text)
	w.KnockYield, w.KnockUltimate, w.KnockSource = haz.Yield, haz.Ultimate, haz.Source
	switch {
	case known || !it.at("process").good || m.E == 0 || tube.Wall == 0: // the rest are faults of their own
	case materials.Soft(m):
		w.KnockYield, w.KnockUltimate, w.KnockSource = 1, 1, "none: the strengths of the tube, normalized or annealed, are taken beside the weld"
		b.doubt(m.Name + ": the tube is taken to keep its strengths beside the weld, for it is normalized or annealed: prove it by the qualification of the weld, or give weld.knockdown with its source")
	default:
		b.refuse(it, fmt.Sprintf("there are no values for %s beside a weld in a wall of %s mm", cut(m.Name), short(tube.Wall)),
			"add knockdown: "+it.key.find("knockdown").value()+", or weld another material, such as a normalized steel")
	}
	return w
}

func (b *builder) insert(it *item, tube members.Tube) *ends.Insert {
	diameter, bore := it.at("diameter"), it.at("bore")
	d := diameter.number()
	if whole(diameter) && tube.OD > 0 && !(d < tube.ID()) {
		b.refuse(diameter, fmt.Sprintf("%s mm is not less than the inner diameter of the tube, %s mm", short(d), short(tube.ID())), "give the outer diameter of the insert, which leaves room for the adhesive")
	}
	if whole(diameter, bore) && !(bore.number() < d) {
		b.refuse(bore, fmt.Sprintf("%s mm is not less than the diameter of the insert, %s mm", short(bore.number()), short(d)), "correct insert.bore or insert.diameter")
	}
	wall := (d - bore.number()) / 2
	m := b.solid(it.at("material"), wall)
	return &ends.Insert{
		Length: it.at("length").number(), Diameter: d, Bond: it.at("bond_thickness").number(),
		Modulus: it.at("shear_modulus").number(), Strength: it.at("shear_strength").number(),
		Stiffness: m.E * members.Tube{OD: d, Wall: math.Max(0, wall)}.Area(), Metal: m, Source: it.at("source").text,
	}
}
