package carfile

import "sixlink/cases"

var inboardKey = Key{
	Name: "inboard", Kind: List, Absent: "the mass of the inboard parts is not known", Doc: "rockers, springs, dampers and what else sits inboard, left-hand side",
	Keys: []Key{
		{Name: "part", Kind: Text, Required: true, Doc: "what it is: rocker, spring, damper", Also: []string{"name"}},
		{Name: "mass", Kind: Number, Dimension: Mass, Range: Range{Max: 500, Above: true}, Required: true, Doc: "the mass of the part", Also: []string{"weight"}},
		point("at", "its centre of gravity", "position", "cg"),
		{Name: "centre", Kind: Flag, Default: "false", Doc: "true for a part that the two sides share, which is counted once"},
	},
}

func (b *builder) inboard(it *item) (out []cases.InboardPart) {
	for _, e := range it.entries {
		out = append(out, cases.InboardPart{
			Name: e.at("part").text, Mass: e.at("mass").number(), At: b.vector(e.at("at")), Centre: e.at("centre").flag,
		})
	}
	return out
}
