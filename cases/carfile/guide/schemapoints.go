package guide

import "sixlink/cases/carfile"

// away tells whether a file of hardpoints may give all that must be in a key: it is a point,
// or a mapping that needs nothing but points.
func away(k *carfile.Key) bool {
	if k.Point() {
		return true
	}
	if k.Kind != carfile.Mapping {
		return false
	}
	points := false
	for i := range k.Keys {
		o := &k.Keys[i]
		switch a := away(o); {
		case o.Required && !a:
			return false
		case a:
			points = true
		}
	}
	return points
}

// awayIn tells that of a key of a mapping; entries of lists have their points themselves.
func awayIn(k *carfile.Key, name string) bool {
	for i := range k.Keys {
		if o := &k.Keys[i]; o.Name == name {
			return k.Kind == carfile.Mapping && away(o)
		}
	}
	return false
}

// everyPoint says what a car file must have beside the rest where it names no file of
// hardpoints: all its points.
func everyPoint(top *carfile.Key) object {
	return object{{"if", needing("hardpoints")}, {"else", needed(top)}}
}

// needed says which points a mapping needs at and below it; empty: none.
func needed(k *carfile.Key) (out object) {
	var properties object
	var required []string
	for i := range k.Keys {
		o := &k.Keys[i]
		if o.Kind == carfile.Mapping {
			if below := needed(o); len(below) > 0 {
				properties = append(properties, member{o.Name, below})
			}
		}
		if o.Required && o.Unless == "" && awayIn(k, o.Name) {
			required = append(required, o.Name)
		}
	}
	if len(properties) > 0 {
		out = append(out, member{"properties", properties})
	}
	if len(required) > 0 {
		out = append(out, member{"required", required})
	}
	return append(out, rules(k, true)...)
}
