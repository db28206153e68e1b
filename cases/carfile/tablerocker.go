package carfile

import "sixlink/members/fasteners"

// The words for the part of the pivot's bolt that bends and shears.
const (
	boltShank   = "shank"
	boltThreads = "threads"
)

var rockerPlatesKey = Key{
	Name: "plates", Kind: Mapping, Absent: "the rocker's plates are not checked", Doc: "what the rocker is made of",
	Keys: []Key{
		{Name: "count", Kind: Choice, Required: true, Choices: []string{"1", "2"}, Doc: "the number of plates"},
		rockerSize("thickness", "the thickness of each plate"),
		{Name: "spacing", Kind: Number, Dimension: Length, Range: Range{Max: 500, Above: true}, Absent: "one plate", Doc: "the distance of the middles of two plates"},
		{Name: "joined", Kind: Flag, Default: "false", Doc: "true where webs or walls join two plates along the arms, so that they carry a load along the axis as a couple"},
		{Name: "material", Kind: Text, Required: true, Doc: "the name of the material"},
		{Name: "pivot", Kind: Mapping, Required: true, Doc: "the plate at the pivot", Keys: []Key{
			{Name: "bore", Kind: Number, Dimension: Length, Range: Range{Max: 500}, Required: true, Doc: "the bore of the plate at the pivot, 0 for none"},
			rockerSize("width", "the smallest width of the plate through the middle of the pivot"),
		}},
		rockerEye("rod"), rockerEye("spring"), rockerEye("anti_roll"), rockerEye("third"),
	},
}

func rockerEye(name string) Key {
	return Key{Name: name, Kind: Mapping, Absent: "this eye is not checked", Doc: "the eye of the " + name, Keys: []Key{
		rockerSize("hole", "the hole of the eye"),
		rockerSize("width", "the smallest width of the plate through the middle of the hole"),
		rockerSize("edge", "the smallest distance from the middle of the hole to the edge of the plate"),
	}}
}

func rockerSize(name, doc string) Key {
	return Key{Name: name, Kind: Number, Dimension: Length, Range: Range{Max: 500, Above: true}, Required: true, Doc: doc}
}

var rockerBearingsKey = Key{
	Name: "bearings", Kind: Mapping, Absent: "the bearings of the pivot are not checked", Doc: "each of the two bearings of the pivot",
	Keys: []Key{
		{Name: "part", Kind: Text, Doc: "the part number; without radial_rating that of an entry of the list parts", Also: []string{"part_number"}},
		{Name: "radial_rating", Kind: Number, Dimension: Force, Range: Range{Max: 1e6, Above: true}, Absent: "that of the part in the list parts", Doc: "the maker's static radial rating"},
		{Name: "thrust_rating", Kind: Number, Dimension: Force, Range: Range{Max: 1e6, Above: true}, Absent: "the thrust is not checked", Doc: "the maker's static thrust rating", Also: []string{"axial_rating"}},
		{Name: "source", Kind: Text, Absent: "that of the part in the list parts", Doc: "where the ratings come from, needed with radial_rating: the maker's document, edition and page", Also: []string{"reference"}},
	},
}

var torsionBarKey = Key{
	Name: "torsion_bar_section", Kind: Mapping, With: "torsion_bar", Absent: "the torsion bar is not checked", Doc: "the working section of the torsion bar",
	Keys: []Key{
		rockerSize("diameter", "the outer diameter"),
		{Name: "bore", Kind: Number, Dimension: Length, Range: Range{Max: 500}, Default: "0", Doc: "the bore, 0 for a solid bar"},
		{Name: "material", Kind: Text, Required: true, Doc: "the name of the material"},
		{Name: "shear_strength", Kind: Number, Dimension: Stress, Range: Range{Min: 1, Max: 5000}, Absent: "the yield strength of the material over √3", Doc: "the yield strength in shear"},
	},
}

var pivotBoltKey = Key{
	Name: "pivot_bolt", Kind: Mapping, Absent: "the bolt of the pivot is not checked", Doc: "the bolt on which the rocker turns, held on both sides",
	Keys: []Key{
		{Name: "size", Kind: Text, Required: true, Doc: "the thread of the bolt, such as M8 or M10x1.25", Also: []string{"thread"}},
		{Name: "class", Kind: Choice, Required: true, Choices: fasteners.ClassNames, Doc: "the property class", Also: []string{"grade"}},
		rockerSize("support", "the span of the two supports of the bolt on the chassis, middle to middle"),
		{Name: "section", Kind: Choice, Default: boltThreads, Choices: []string{boltThreads, boltShank}, Doc: "the part of the bolt that bends and shears"},
	},
}
