package carfile

import "sixlink/cases"

// Wheels go no further than this, mm: our own limit, to catch a slip of the unit.
var strokes = Range{Min: -500, Max: 500}

var travelKey = Key{
	Name: "travel", Kind: Number, Dimension: Length, Range: strokes, Absent: "every wheel as drawn",
	Doc: "the travel of the wheel centres from the position drawn, bump positive", Also: []string{"wheel_travel", "bump", "heave"},
}

var rackKey = Key{
	Name: "rack", Kind: Number, Dimension: Length, Range: strokes, Absent: "no rack is moved",
	Doc: "the displacement of the front rack, to the left positive", Also: []string{"rack_travel", "steer", "steering"},
	Keys: []Key{axleNumber("front", rackOf), axleNumber("rear", rackOf)},
}

// rackOf says of which axle a displacement is.
func rackOf(name string) string {
	return "the displacement of the " + name + " rack, to the left positive"
}

func axleNumber(name string, doc func(string) string) Key {
	return Key{Name: name, Kind: Number, Dimension: Length, Range: strokes, Doc: doc(name)}
}

// eachWheel lets a number be one of all wheels, of each axle, or of each wheel.
func eachWheel(k Key, of string) Key {
	for _, name := range cases.AxleNames {
		k.Keys = append(k.Keys, Key{Name: name, Kind: Number, Dimension: k.Dimension, Range: k.Range, Doc: "the " + of + " of both " + name + " wheels"})
	}
	for _, name := range cases.CornerNames {
		k.Keys = append(k.Keys, Key{Name: name, Kind: Number, Dimension: k.Dimension, Range: k.Range, Doc: "the " + of + " of the " + name + " wheel"})
	}
	return k
}

var motionKey = Key{
	Name: "motion", Kind: Mapping, Absent: "the angles of the bearings and the room between the links are not looked at over the travel", Also: []string{"range", "stroke"},
	Doc: "how far the wheels of the axle move, for the angles of the bearings and the room between the links",
	Keys: []Key{
		{Name: "travel", Kind: Numbers, Parts: []string{"droop", "bump"}, Dimension: Length, Range: strokes, Required: true, Doc: "the travel from full droop to full bump, bump positive"},
		{Name: "rack", Kind: Numbers, Parts: []string{"right", "left"}, Dimension: Length, Range: strokes, Default: "[0, 0]", Doc: "the displacement of the rack from lock to lock, to the left positive"},
		{Name: "clearance", Kind: Number, Dimension: Length, Range: Range{Max: 200}, Default: "0", Doc: "the room that must be left between two links, surface to surface"},
	},
}
