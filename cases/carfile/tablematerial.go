package carfile

// certificateKey ties a member to the paper of its material.
var certificateKey = Key{
	Name: "certificate", Kind: Text, Doc: "the heat number or certificate of the material",
	Also: []string{"heat", "heat_number", "cert"},
}

// moreMaterialKeys are the strengths of a material of the user's own that not every
// source gives.
var moreMaterialKeys = []Key{
	spare(stress("compressive_yield", 1, 10000, "the yield strength in compression", "scy", "compression_yield"), "the yield strength in tension takes its place, and the reports say so"),
	spare(stress("shear_ultimate", 1, 10000, "the ultimate strength in shear", "ssu", "shear_strength"), "not given"),
	{
		Name: "bearing_ultimate", Kind: Numbers, Dimension: Stress, Range: Range{Min: 1, Max: 20000}, Absent: "not given",
		Parts: []string{"at e/D 1.5", "at e/D 2.0"}, Doc: "the ultimate strength in bearing", Also: []string{"sbru", "bearing_strength"},
	},
	{
		Name: "elongation", Kind: Number, Dimension: Share, Range: Range{Max: 1, Above: true}, Absent: "not given",
		Doc: "the elongation after fracture", Also: []string{"elongation_at_break"},
	},
}

// spare makes a key one that may be left out.
func spare(k Key, absent string) Key {
	k.Required, k.Absent = false, absent
	return k
}
