package carfile

// Dimensions of a section end where no member of a car does.
var (
	sizes        = Range{Max: 500, Above: true}
	sectionArea  = Range{Max: 1e6, Above: true}
	sectionPower = Range{Max: 1e10, Above: true}
)

var tubeKey = Key{
	Name: "tube", Kind: Numbers, Parts: []string{"od", "wall"}, Dimension: Length, Range: sizes,
	Doc: "the outer diameter and the wall of the tube", Also: []string{"size", "round_tube"},
}

var sectionKey = Key{
	Name: "section", Kind: Mapping, Doc: "the section of a member that is no round tube", Also: []string{"profile", "cross_section"},
	OneOf: []string{"square_tube", "rectangular_tube", "bar", "ellipse_tube", "lens_tube", "own"},
	Keys: []Key{
		shape("square_tube", "the outer side and the wall of the square tube", "side", "wall"),
		shape("rectangular_tube", "the outer width and height and the wall of the rectangular tube", "width", "height", "wall"),
		{Name: "bar", Kind: Number, Dimension: Length, Range: sizes, Doc: "the diameter of the solid round bar", Also: []string{"rod", "solid"}},
		shape("ellipse_tube", "the chord, the thickness and the wall of the elliptical tube", "chord", "thickness", "wall"),
		shape("lens_tube", "the chord, the thickness and the wall of the tube of two circular arcs", "chord", "thickness", "wall"),
		{Name: "own", Kind: Mapping, Doc: "a section by its properties", Keys: []Key{
			{Name: "area", Kind: Number, Dimension: SectionArea, Range: sectionArea, Required: true, Doc: "the area of the section", Also: []string{"a"}},
			{Name: "inertia", Kind: Number, Dimension: SecondMoment, Range: sectionPower, Required: true, Doc: "the least second moment of area", Also: []string{"i", "second_moment"}},
			{Name: "modulus", Kind: Number, Dimension: SectionModulus, Range: sectionPower, Required: true, Doc: "the least elastic section modulus", Also: []string{"z", "section_modulus"}},
			{Name: "wall", Kind: Number, Dimension: Length, Range: sizes, Absent: "the weakest band of walls of the material", Doc: "the thickest wall, for the strengths of the material"},
		}},
	},
}

func shape(name, doc string, parts ...string) Key {
	return Key{Name: name, Kind: Numbers, Parts: parts, Dimension: Length, Range: sizes, Doc: doc}
}

var (
	eccentricityKey = Key{
		Name: "eccentricity", Kind: Number, Dimension: Length, Range: Range{Max: 500}, Absent: "the axial force runs along the axis",
		Doc: "the distance of the axial force's line of action from the axis, at both ends", Also: []string{"offset"},
	}
	sideLoadKey = Key{
		Name: "side_load", Kind: Number, Dimension: ForcePerLength, Range: Range{Max: 1000}, Absent: "no side load",
		Doc: "the load along the member, square to its axis, in every load case", Also: []string{"lateral_load", "distributed_load"},
	}
	ownInertiaKey = Key{
		Name: "own_inertia", Kind: Flag, Default: "false",
		Doc: "true to bend every member by its own weight and inertia", Also: []string{"self_weight"},
	}
)
