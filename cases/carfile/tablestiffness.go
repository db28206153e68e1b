package carfile

import (
	"slices"

	"sixlink/cases"
	"sixlink/loads"
)

// springPoint is the pick-up of the spring among those of the links.
const springPoint = "spring"

var stiffnessKey = Key{
	Name: "stiffness", Kind: Mapping, Absent: "the stiffness of the axle is not worked out", Doc: "how stiffly the chassis holds the axle, both sides alike, and how far its wheels may give way",
	Keys: []Key{
		{Name: "pick_ups", Kind: Mapping, Absent: "rigid", Doc: "the stiffness of the chassis at the inner joints", Keys: pickUpKeys(), Also: []string{"pickups", "chassis"}},
		{Name: "pivot", Kind: Mapping, Absent: "rigid", Doc: "the stiffness of the rocker's pivot", Keys: []Key{
			hold("radial", "the radial stiffness of each of the two bearings with its seat"),
			hold("axial", "the stiffness of the pivot along its axis"),
		}},
		{Name: "limits", Kind: Mapping, Absent: "no limit", Doc: "the most that the angles of a wheel may change, either way", Keys: limitKeys()},
	},
}

func pickUpKeys() (out []Key) {
	for _, name := range append(slices.Clone(loads.LinkNames[:]), springPoint) {
		out = append(out, hold(name, "the stiffness of the chassis in every direction where the "+name+" is held"))
	}
	return out
}

func hold(name, doc string) Key {
	return Key{Name: name, Kind: Number, Dimension: ForcePerLength, Range: Range{Min: 10, Max: 1e8}, Absent: "rigid", Doc: doc}
}

func limitKeys() (out []Key) {
	for _, load := range cases.GiveLoads[:cases.NumLimited] {
		k := Key{Name: load.Name, Kind: Mapping, Absent: "no limit", Doc: "the most by a " + load.Words}
		for _, angle := range cases.GiveAngles {
			k.Keys = append(k.Keys, Key{
				Name: angle, Kind: Number, Dimension: AnglePerForce, Range: Range{Max: 100, Above: true}, Absent: "no limit",
				Doc: "the largest change of " + angle + ", either way",
			})
		}
		out = append(out, k)
	}
	return out
}
