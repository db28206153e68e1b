package carfile

var scatterKey = Key{
	Name: "scatter", Kind: Mapping, Absent: "nothing scatters, and there is no study of tolerance", Doc: "how far the values of the car scatter, for sixlink tolerance", Also: []string{"tolerances", "scatters"},
	Keys: []Key{
		scatterGroup("hardpoints", "every coordinate of every joint of links and rockers, a length"),
		scatterGroup("walls", "every wall of a tube of metal, a length or a share in %"),
		scatterGroup("diameters", "every outer diameter of a round tube of metal, a length or a share in %"),
		scatterGroup("strengths", "the strengths of each member's metal, by one factor, a share in %"),
		scatterGroup("loads", "each load case, by one factor on all of its loads, a share in %"),
		{Name: "values", Kind: List, Doc: "values by their path, in place of what their group says", Keys: append([]Key{
			{Name: "path", Kind: Text, Required: true, Doc: "the path of the value, such as vehicle.cg_height"},
		}, deviations("in the unit of the value or a share in %")...), OneOf: deviationKeys},
	},
}

var deviationKeys = []string{"normal", "uniform"}

func scatterGroup(name, doc string) Key {
	return Key{Name: name, Kind: Mapping, Doc: "the scatter of " + doc, OneOf: deviationKeys, Keys: deviations("such as 0.5 mm or 3 %")}
}

func deviations(form string) []Key {
	return []Key{
		{Name: "normal", Kind: Text, Doc: "the standard deviation of a normal distribution, " + form},
		{Name: "uniform", Kind: Text, Doc: "half of the width of a uniform distribution, " + form},
	}
}
