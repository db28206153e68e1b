package carfile

var casesKey = Key{
	Name: "cases", Kind: List, Most: maxLoadCases, Required: true, Doc: "the load cases", Also: []string{"load_cases", "loadcases"},
	OneOf: []string{"wheel_factors", "acceleration", "contact_forces", "damper_speed"},
	Keys: []Key{
		{Name: "name", Kind: Text, Required: true, Doc: "the name of the load case, each a different one", Also: []string{"case", "title"}},
		{Name: "basis", Kind: Text, Doc: "where the numbers of the case come from", Also: []string{"source"}},
		{Name: "wheel_factors", Kind: Numbers, Parts: []string{"forward", "towards the centreline", "up"}, Range: Range{Min: -50, Max: 50}, Doc: "the contact force in multiples of the static wheel load", Also: []string{"factors"}},
		{Name: "acceleration", Kind: Numbers, Parts: []string{"x", "y"}, Dimension: Acceleration, Range: Range{Min: -10, Max: 10}, Doc: "the acceleration of the car along the two horizontal axes of the file", Also: []string{"accel", "g"}},
		{Name: "contact_forces", Kind: Mapping, Doc: "the road's force on each tyre that is named", Keys: []Key{
			contact("front_left"), contact("front_right"), contact("rear_left"), contact("rear_right"),
		}, Also: []string{"forces", "wheel_forces"}},
		eachWheel(Key{
			Name: "damper_speed", Kind: Number, Dimension: Speed, Range: Range{Min: -20, Max: 20},
			Doc: "the speed of the dampers, shortening positive, for the wheel load that belongs to their force and that of the springs at the travel", Also: []string{"spring_load"},
		}, "damper speed"),
		{Name: "speed", Kind: Number, Dimension: Speed, Range: Range{Max: 150}, Default: "0", With: "acceleration", Doc: "the speed of the car", Also: []string{"velocity"}},
		{Name: "both_ways", Kind: Flag, Default: "false", With: "acceleration", Doc: "true for two cases: a left turn and a right turn"},
		{Name: "one_side", Kind: Flag, Default: "false", With: "wheel_factors", Doc: "true for two cases: the left wheels alone and the right wheels alone"},
		{Name: "wheel", Kind: Choice, Choices: []string{"rolling", "braked", "driven"}, Absent: "braked or driven in a manoeuvre where the axle has such a force, rolling otherwise", Doc: "what the wheel does with a torque about its spin axis", Also: []string{"wheel_state"}},
		eachWheel(travelKey, "travel"), rackKey,
		{Name: "unsprung_acceleration", Kind: Vector, Parts: xyz, Dimension: Acceleration, Range: Range{Min: -500, Max: 500}, Absent: "that of the car in a manoeuvre, otherwise none", Doc: "the acceleration of the unsprung masses"},
	},
}

func contact(corner string) Key {
	return Key{Name: corner, Kind: Mapping, Absent: "the static load of the wheel", Doc: "the road's force on the " + corner + " tyre", Keys: []Key{
		{Name: "force", Kind: Vector, Parts: xyz, Dimension: Force, Range: Range{Min: -1e6, Max: 1e6}, Required: true, Doc: "the force of the road on the tyre"},
		{Name: "moment", Kind: Vector, Parts: xyz, Dimension: Moment, Range: Range{Min: -1e5, Max: 1e5}, Default: "[0, 0, 0]", Doc: "the moment of the road on the tyre about the contact point"},
	}}
}
