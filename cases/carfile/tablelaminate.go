package carfile

// mostPlies bounds the layup of one laminate: our own choice, with no published source.
const mostPlies = 200

var laminateKey = Key{
	Name: "laminate", Kind: Text, Absent: "the member is of a material",
	Doc: "the name of the laminate, in place of a material",
}

var laminatesKey = Key{
	Name: "laminates", Kind: List, Absent: "every member is of a material", Doc: "the laminates of composite tubes, each with its source",
	Keys: []Key{
		{Name: "name", Kind: Text, Required: true, Doc: "the name of the laminate"},
		plyKey,
		{
			Name: "layup", Kind: Numbers, Parts: []string{"first", "second", "…"}, Most: mostPlies, Dimension: Angle, Range: Range{Min: -90, Max: 90}, Required: true,
			Doc: "the angles of the plies from the tube's axis through the wall", Also: []string{"angles", "stack", "stacking"},
		},
		{Name: "symmetric", Kind: Flag, Default: "false", Doc: "true where the layup is one half of the wall, the other half its mirror image"},
		{Name: "knockdown", Kind: Number, Dimension: Share, Range: Range{Max: 1, Above: true}, Required: true, Doc: "the share of the ply strengths that is left in the part after environment, impact, holes and manufacture", Also: []string{"knock_down", "reduction"}},
		{Name: "interaction", Kind: Number, Range: Range{Min: -0.99, Max: 0.99}, Default: "-0.5", Doc: "F12/√(F11·F22) of the Tsai–Wu criterion", Also: []string{"f12"}},
		{Name: "source", Kind: Text, Required: true, Doc: "where the values come from: document, edition and table, or the test report", Also: []string{"reference"}},
	},
}

var plyKey = Key{
	Name: "ply", Kind: Mapping, Required: true, Doc: "one ply, of which all plies are", Also: []string{"lamina", "layer"},
	Keys: []Key{
		stress("longitudinal_modulus", 1000, 1e6, "Young's modulus along the fibres", "e1", "axial_modulus"),
		stress("transverse_modulus", 100, 1e6, "Young's modulus across the fibres", "e2"),
		stress("shear_modulus", 50, 5e5, "the shear modulus in the plane of the ply", "g12"),
		{Name: "poisson_ratio", Kind: Number, Range: Range{Min: -0.5, Max: 1}, Required: true, Doc: "the strain across the fibres for a stress along them", Also: []string{"nu12", "nu"}},
		{Name: "thickness", Kind: Number, Dimension: Length, Range: Range{Max: 10, Above: true}, Required: true, Doc: "the thickness of the cured ply"},
		stress("tension_along", 1, 10000, "the strength in tension along the fibres", "xt"),
		stress("compression_along", 1, 10000, "the strength in compression along the fibres", "xc"),
		stress("tension_across", 1, 10000, "the strength in tension across the fibres", "yt"),
		stress("compression_across", 1, 10000, "the strength in compression across the fibres", "yc"),
		stress("shear", 1, 10000, "the shear strength in the plane of the ply", "shear_strength", "s12"),
		{Name: "density", Kind: Number, Dimension: Density, Range: Range{Min: 500, Max: 25000}, Required: true, Doc: "the density", Also: []string{"rho"}},
	},
}
