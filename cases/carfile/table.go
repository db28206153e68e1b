package carfile

// Format is the value of the key format that this package reads.
const Format = "sixlink/1"

// Keys returns the table of the car file: the rows of the top level, each with the
// rows beneath it, in the order in which a file is best written. It is not to be
// changed.
func Keys() []Key { return car.Keys }

// car is the table.
var car = Key{Kind: Mapping, Doc: "the car file", Keys: []Key{
	{Name: "format", Kind: Choice, Required: true, Choices: []string{Format}, Doc: "the format of the file and its version"},
	{Name: "car", Kind: Text, Required: true, Doc: "the name of the car", Also: []string{"name", "title"}},
	{Name: "revision", Kind: Text, Doc: "the revision of the file", Also: []string{"version", "issue"}},
	{Name: "notes", Kind: Prose, Doc: "notes for the reader", Also: []string{"comment", "remarks", "description"}},
	axesKey,
	hardpointsKey,
	vehicleKey,
	{Name: "design_factors", Kind: Mapping, Absent: "all three at their starting values", Keys: []Key{
		factor("yield", "1.25", "the design factor on yield"),
		factor("ultimate", "1.5", "the design factor on ultimate strength"),
		factor("buckling", "1.5", "the design factor on buckling"),
		factor("fitting", "1.15", "the fitting factor, which goes on top of the others at the ends of members"),
	}, Doc: "the design factors that divide each capacity", Also: []string{"safety_factors", "factors"}},
	axle("front", "the front axle, left-hand side"),
	axle("rear", "the rear axle, left-hand side"),
	{Name: "materials", Kind: List, Keys: append(materialKeys, moreMaterialKeys...), Absent: "the built-in materials alone", Doc: "materials of your own, each with its source"},
	laminatesKey,
	partsKey,
	ownInertiaKey,
	casesKey,
	dutyKey,
	scatterKey,
}}

var axesKey = Key{
	Name: "axes", Kind: Mapping, Absent: "ISO 8855: x forward, y left, z up",
	Doc: "the axes in which the file is drawn", Also: []string{"coordinates", "coordinate_system"},
	Keys: []Key{direction("x"), direction("y"), direction("z")},
}

func direction(name string) Key {
	return Key{
		Name: name, Kind: Choice, Required: true, Doc: "the direction of " + name,
		Choices: directionNames,
	}
}

func factor(name, value, doc string) Key {
	return Key{Name: name, Kind: Number, Range: Range{Min: 1, Max: 10}, Default: value, Doc: doc}
}

func share(name, doc string) Key {
	return Key{Name: name, Kind: Number, Dimension: Share, Range: Range{Max: 1}, Required: true, Doc: doc}
}

var vehicleKey = Key{
	Name: "vehicle", Kind: Mapping, Required: true, Doc: "the car as one body",
	Keys: []Key{
		{Name: "mass", Kind: Number, Dimension: Mass, Range: Range{Max: 10000, Above: true}, Required: true, Doc: "the mass of the car with driver and fuel", Also: []string{"weight", "total_mass"}},
		share("front_weight_share", "the share of the static weight that rests on the front axle"),
		{Name: "cg_height", Kind: Number, Dimension: Length, Range: Range{Min: 50, Max: 3000}, Required: true, Doc: "the height of the centre of gravity above the ground", Also: []string{"cog_height", "centre_of_gravity_height"}},
		{Name: "wheelbase", Kind: Number, Dimension: Length, Range: Range{Min: 500, Max: 10000}, Required: true, Doc: "the distance between the axles along the car"},
		share("front_roll_couple_share", "the share of the roll couple that the front axle carries"),
		{Name: "tyre_friction", Kind: Number, Range: Range{Max: 10, Above: true}, Absent: "no warning that a case is out of the tyre's reach", Doc: "the peak friction of the tyres", Also: []string{"friction", "mu"}},
		aeroKey, brakesKey, driveKey,
	},
}

var aeroKey = Key{
	Name: "aero", Kind: Mapping, Absent: "no aerodynamic forces", Doc: "the aerodynamic constants", Also: []string{"aerodynamics"},
	Keys: []Key{
		{Name: "lift_area", Kind: Number, Dimension: Area, Range: Range{Min: -50, Max: 50}, Absent: "no downforce", Doc: "the downforce divided by the dynamic pressure", Also: []string{"downforce_area", "cla"}},
		{Name: "drag_area", Kind: Number, Dimension: Area, Range: Range{Max: 50}, Absent: "no drag", Doc: "the drag divided by the dynamic pressure", Also: []string{"cda"}},
		{Name: "front_share", Kind: Number, Dimension: Share, Range: Range{Max: 1}, NeededWith: "lift_area", Doc: "the share of the downforce on the front axle"},
		// ISO 2533, standard atmosphere at sea level.
		{Name: "air_density", Kind: Number, Dimension: Density, Range: Range{Max: 2, Above: true}, Default: "1.225", Doc: "the density of the air", Also: []string{"rho"}},
		{Name: "drag_height", Kind: Number, Dimension: Length, Range: Range{Max: 3000}, Absent: "the height of the centre of gravity", Doc: "the height of the drag's line of action above the ground"},
	},
}

var brakesKey = Key{
	Name: "brakes", Kind: Mapping, Absent: "no brakes: a braked case is refused", Doc: "the brakes",
	Keys: []Key{
		share("front_share", "the share of the braking force at the front axle"),
		seat("front"), seat("rear"),
	},
}

func seat(name string) Key {
	return Key{
		Name: name, Kind: Choice, Default: "outboard", Choices: []string{"outboard", "inboard"},
		Doc: "where the " + name + " brakes sit: on the upright or on the chassis",
	}
}

var driveKey = Key{
	Name: "drive", Kind: Mapping, Absent: "rear drive by shafts, and every report says so", Doc: "the drive", Also: []string{"drivetrain", "transmission"},
	Keys: []Key{
		{Name: "front_share", Kind: Number, Dimension: Share, Range: Range{Max: 1}, Default: "0", Doc: "the share of the driving force at the front axle"},
		{Name: "by", Kind: Choice, Default: "shafts", Choices: []string{"shafts", "hub"}, Doc: "what drives the wheels: shafts from the chassis or motors in the hubs"},
	},
}

// The limits of the elastic constants and of the density are wide enough for every
// structural metal and narrow enough to catch a number in the wrong unit.
var materialKeys = []Key{
	{Name: "name", Kind: Text, Required: true, Doc: "the name of the material"},
	stress("youngs_modulus", 1000, 1e6, "Young's modulus", "e", "modulus", "elastic_modulus"),
	{Name: "poisson_ratio", Kind: Number, Range: Range{Max: 0.5}, Default: "0.3", Doc: "Poisson's ratio", Also: []string{"nu", "poissons_ratio"}},
	stress("yield_strength", 1, 10000, "the yield or 0.2 % proof strength in tension", "yield", "sy", "proof_strength"),
	stress("ultimate_strength", 1, 10000, "the ultimate strength in tension", "ultimate", "su", "tensile_strength"),
	{Name: "density", Kind: Number, Dimension: Density, Range: Range{Min: 500, Max: 25000}, Required: true, Doc: "the density", Also: []string{"rho"}},
	{Name: "form", Kind: Text, Doc: "the product form and condition", Also: []string{"condition", "temper"}},
	{Name: "basis", Kind: Text, Absent: "the reports say that it is not stated", Doc: "what the strengths are: specification minimum, typical or another basis"},
	{Name: "max_wall", Kind: Number, Dimension: Length, Range: Range{Max: 500, Above: true}, Absent: "no limit", Doc: "the thickest wall for which the strengths hold"},
	{Name: "source", Kind: Text, Required: true, Doc: "where the values come from: document, edition and table, or the certificate", Also: []string{"reference"}},
}

func stress(name string, min, max float64, doc string, also ...string) Key {
	return Key{Name: name, Kind: Number, Dimension: Stress, Range: Range{Min: min, Max: max}, Required: true, Doc: doc, Also: also}
}
