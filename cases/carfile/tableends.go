package carfile

import (
	"sixlink/materials"
	"sixlink/members/fasteners"
)

// The kinds of entries of parts.
const (
	sphericalBearing = "spherical bearing"
	rodEnd           = "rod end"
)

// The words of bolt.shear.
const (
	singleShear = "single"
	doubleShear = "double"
)

var partsKey = Key{
	Name: "parts", Kind: List, Absent: "no bearings or rod ends", Doc: "bearings and rod ends with the ratings of their makers", Also: []string{"bearings", "rod_ends"},
	Keys: []Key{
		{Name: "part", Kind: Text, Required: true, Doc: "the part number, by which an end names it", Also: []string{"name", "part_number"}},
		{Name: "kind", Kind: Choice, Required: true, Choices: []string{sphericalBearing, rodEnd}, Doc: "the kind of part"},
		{Name: "radial_rating", Kind: Number, Dimension: Force, Range: Range{Min: 100, Max: 1e6}, Required: true, Doc: "the static radial rating", Also: []string{"rating", "static_rating"}},
		{Name: "axial_rating", Kind: Number, Dimension: Force, Range: Range{Min: 1, Max: 1e6}, Doc: "the static axial rating, for the ends that give axial_share"},
		{Name: "misalignment", Kind: Number, Dimension: Angle, Range: Range{Max: 90, Above: true}, Doc: "the largest angle of misalignment, for the ends that give theirs"},
		{Name: "thread", Kind: Mapping, Absent: "no check of the shank", Doc: "the thread of a rod end", OneOf: strengthKeys, Keys: append([]Key{threadSize(true)}, strengths("thread")...)},
		{Name: "mass", Kind: Number, Dimension: Mass, Range: Range{Max: 100, Above: true}, Doc: "the mass of the part, for the parts list"},
		{Name: "source", Kind: Text, Required: true, Doc: "where the ratings come from: the maker's document, edition and page", Also: []string{"reference"}},
	},
}

// strengthKeys are the two ways to say what a thread or bolt is made of.
var strengthKeys = []string{"class", "material"}

func strengths(of string) []Key {
	return []Key{
		{Name: "class", Kind: Choice, Choices: fasteners.ClassNames, Doc: "the property class of the " + of + ", ISO 898-1", Also: []string{"grade"}},
		{Name: "material", Kind: Text, Doc: "the name of the material of the " + of},
	}
}

func threadSize(required bool) Key {
	return Key{Name: "size", Kind: Text, Required: required, Doc: "the size of the thread, such as M8, M10x1.25 or 1/4-28"}
}

func size(name string, max float64, doc string, also ...string) Key {
	return Key{Name: name, Kind: Number, Dimension: Length, Range: Range{Max: max, Above: true}, Required: true, Doc: doc, Also: also}
}

// optional makes a required row one that may be left out.
func optional(k Key, absent string) Key {
	k.Required, k.Absent = false, absent
	return k
}

var endsKey = Key{
	Name: "ends", Kind: Mapping, Absent: "the ends are not checked", Doc: "what joins the member to its neighbours", Also: []string{"joints"},
	Keys: []Key{
		end("outer", "the end at the wheel"),
		end("inner", "the end at the chassis; of the rod, at the rocker"),
		end("both", "both ends, where they are the same"),
	},
}

func end(name, doc string) Key {
	return Key{Name: name, Kind: Mapping, Doc: doc, Keys: []Key{
		{Name: "bearing", Kind: Text, Doc: "the part of a bearing or rod end of the list parts"},
		{Name: "offset", Kind: Number, Dimension: Length, Range: Range{Max: 200}, Absent: "the thread in line with the member", Doc: "the distance of the member's axis from that of the thread"},
		{Name: "shank_length", Kind: Number, Dimension: Length, Range: Range{Max: 300, Above: true}, Absent: "the shank is not bent by the shear of the member", Doc: "the distance from the ball's centre to the section where the shank of the rod end is held"},
		{Name: "axial_share", Kind: Number, Dimension: Share, Range: Range{Max: 1}, Default: "0", Doc: "the share of the joint's force that acts along the axis of its bearing and bolt"},
		{Name: "misalignment", Kind: Number, Dimension: Angle, Range: Range{Max: 90}, Absent: "the bearing's limit is not looked at", Doc: "the angle at which the joint stands in the position drawn"},
		threadKey, boltKey, lugKey, weldKey, insertKey,
	}}
}

var threadKey = Key{
	Name: "thread", Kind: Mapping, Absent: "that of the rod end, if there is one", Doc: "the thread in line with the member",
	Keys: append([]Key{threadSize(false)}, append(strengths("thread"),
		optional(size("engagement", 500, "the length of engaged thread"), "no check of stripping"),
		Key{Name: "in", Kind: Text, Absent: "no check of the internal thread", Doc: "the name of the material of the part with the internal thread"},
	)...),
}

var boltKey = Key{
	Name: "bolt", Kind: Mapping, Doc: "the bolt across the joint", Also: []string{"pin"}, OneOf: strengthKeys,
	Keys: append([]Key{threadSize(true)}, append(strengths("bolt"),
		Key{Name: "shear", Kind: Choice, Required: true, Choices: []string{singleShear, doubleShear}, Doc: "how the bolt is held: on one side or on both"},
		Key{Name: "threads_in_shear", Kind: Flag, Default: "true", Doc: "false where no shear plane passes through the threads"},
		Key{Name: "plates", Kind: Mapping, Absent: "no check of bearing and bending", Doc: "the plates that the bolt holds", Also: []string{"clamped"}, Keys: []Key{
			size("outer", 500, "the thickness of the outer plate, or of each of the two"),
			size("inner", 500, "the thickness of the inner plate, or the width of the ball"),
			{Name: "gap", Kind: Number, Dimension: Length, Range: Range{Max: 200}, Default: "0", Doc: "the gap on each side of the inner plate"},
			{Name: "material", Kind: Text, Required: true, Doc: "the name of the material of the outer plates"},
			{Name: "inner_material", Kind: Text, Absent: "no check of bearing on it", Doc: "the name of the material of the inner plate"},
		}},
	)...),
}

var lugKey = Key{
	Name: "lug", Kind: Mapping, Doc: "the lug, pulled towards its end",
	Keys: []Key{
		size("width", 1000, "the width of the lug at the hole"),
		size("thickness", 500, "the thickness of the lug"),
		size("hole", 500, "the diameter of the hole", "bore"),
		size("edge", 1000, "the distance from the hole's centre to the end of the lug", "e"),
		{Name: "material", Kind: Text, Required: true, Doc: "the name of the material"},
		ultimateOf("shear_strength", "the ultimate strength in shear", "ultimate strength in tension / √3"),
		ultimateOf("bearing_strength", "the ultimate strength in bearing", "bearing on yield alone"),
		{Name: "coefficients", Kind: Mapping, Absent: "1 on the net section, and no check of shear-out with bearing", Doc: "the coefficients read from published curves for lugs", Keys: []Key{
			{Name: "net_section", Kind: Number, Range: Range{Max: 1, Above: true}, Absent: "1", Doc: "the coefficient of the net section"},
			{Name: "shear_bearing", Kind: Number, Range: Range{Max: 5, Above: true}, Absent: "no check by coefficient", Doc: "the coefficient of shear-out and bearing"},
			{Name: "source", Kind: Text, Required: true, Doc: "the curves: document, edition and figure"},
		}},
	},
}

func ultimateOf(name, doc, absent string) Key { return optional(stress(name, 1, 10000, doc), absent) }

var weldKey = Key{
	Name: "weld", Kind: Mapping, Doc: "the fillet weld all round the tube",
	Keys: []Key{
		size("throat", 50, "the throat of the weld"),
		{Name: "process", Kind: Choice, Required: true, Choices: []string{materials.MIG, materials.TIG}, Doc: "the process of welding"},
		ultimateOf("strength", "the ultimate strength of the filler in tension", "that of the tube beside the weld"),
		{Name: "knockdown", Kind: Mapping, Absent: "the table of welds", Doc: "what the weld leaves of the tube's strengths", Keys: []Key{
			knock("yield_share", "the share of the yield strength that is left"),
			knock("ultimate_share", "the share of the ultimate strength that is left"),
			{Name: "source", Kind: Text, Required: true, Doc: "where the shares come from: document, edition and table, or the test"},
		}},
	},
}

func knock(name, doc string) Key {
	return Key{Name: name, Kind: Number, Dimension: Share, Range: Range{Max: 1, Above: true}, Required: true, Doc: doc}
}

var insertKey = Key{
	Name: "insert", Kind: Mapping, Doc: "the insert bonded into the tube",
	Keys: []Key{
		size("length", 1000, "the length of the bond"),
		size("diameter", 500, "the outer diameter of the insert"),
		{Name: "bore", Kind: Number, Dimension: Length, Range: Range{Max: 500}, Default: "0", Doc: "the bore of the insert"},
		size("bond_thickness", 5, "the thickness of the adhesive"),
		stress("shear_modulus", 1, 10000, "the shear modulus of the adhesive"),
		stress("shear_strength", 0.1, 200, "the shear strength of the adhesive"),
		{Name: "material", Kind: Text, Required: true, Doc: "the name of the material of the insert"},
		{Name: "source", Kind: Text, Required: true, Doc: "where the values of the adhesive come from", Also: []string{"reference"}},
	},
}
