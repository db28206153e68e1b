package carfile

import "slices"

// rightOf returns the row of the right-hand side of an axle, made of the rows of the axle:
// nothing of it is required, and nothing holds by itself, for what is not given is the
// mirror image of the left-hand side.
func rightOf(axle []Key) Key {
	k := Key{
		Name: "right", Kind: Mapping, Absent: "the mirror image of the left-hand side",
		Doc: "what of the right-hand side is no mirror image, in its own coordinates",
	}
	for _, o := range axle {
		if slices.Contains(oneSided, o.Name) {
			k.Keys = append(k.Keys, loosened(o))
		}
	}
	return k
}

// oneSided are the keys of an axle that right may have.
var oneSided = []string{"wheel", "upper_wishbone", "lower_wishbone", "track_rod", "rod", "rocker", "members"}

// shared are the keys of what the two sides have between them: right does not have them.
var shared = []string{"roll_share", "heave_share"}

// entire are the keys that right replaces as a whole, for half of one and half of another
// make no sense.
var entire = []string{"section", "column", "ends", "laminate", "bump_stop", "damper"}

// loosened returns a row of which the file may give any part.
func loosened(k Key) Key {
	k.Required, k.Unless, k.NeededWith, k.Default, k.With = false, "", "", "", ""
	k.Absent = "that of the left-hand side, mirrored"
	if k.Kind != Mapping || slices.Contains(entire, k.Name) {
		return k
	}
	k.OneOf = nil
	rows := k.Keys
	k.Keys = nil
	for _, o := range rows {
		if !slices.Contains(shared, o.Name) {
			k.Keys = append(k.Keys, loosened(o))
		}
	}
	return k
}
