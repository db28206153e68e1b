package carfile

// axle returns the row of one axle.
func axle(name, doc string) Key {
	k := Key{Name: name, Kind: Mapping, Required: true, Doc: doc, Keys: []Key{
		{Name: "unsprung_mass", Kind: Number, Dimension: Mass, Range: Range{Max: 1000}, Required: true, Doc: "the unsprung mass of one corner"},
		{Name: "wheel", Kind: Mapping, Required: true, Doc: "the wheel", Keys: []Key{
			point("centre", "the wheel centre"),
			point("contact", "the contact point of the tyre", "contact_patch", "contact_point"),
			{Name: "spin_axis", Kind: Vector, Parts: xyz, Range: Range{Min: -10000, Max: 10000}, Absent: "across the car: [0, 1, 0] in ISO 8855", Doc: "the direction of the wheel's spin axis"},
		}},
		wishbone("upper"), wishbone("lower"),
		{Name: "track_rod", Kind: Mapping, Required: true, Doc: "the track rod; on a rear axle the toe link", Keys: joints(), Also: []string{"toe_link", "tie_rod", "steering_rod"}},
		{Name: "rod", Kind: Mapping, Required: true, Doc: "the push rod or pull rod", Keys: append(joints(), Key{
			Name: "carried_by", Kind: Choice, Required: true, Choices: []string{"upright", "upper_wishbone", "lower_wishbone"},
			Doc: "the body on which the outer end of the rod sits",
		}), Also: []string{"push_rod", "pull_rod"}},
		rockerKey, inboardKey, motionKey, membersKey, stiffnessKey,
	}}
	k.Keys = append(k.Keys, rightOf(k.Keys))
	return k
}

// Coordinates end where no car does.
var reach = Range{Min: -20000, Max: 20000}

func point(name, doc string, also ...string) Key {
	return Key{Name: name, Kind: Vector, Parts: xyz, Dimension: Length, Range: reach, Required: true, Doc: doc, Also: also}
}

func joints() []Key {
	return []Key{
		point("outer", "the joint at the wheel's end", "outboard", "upright"),
		point("inner", "the joint at the chassis' end", "inboard", "chassis"),
	}
}

func wishbone(name string) Key {
	outer := point("outer", "the ball joint at the upright", "outboard", "upright", "ball_joint")
	front := point("front", "the front pick-up on the chassis", "fore")
	rear := point("rear", "the rear pick-up on the chassis", "aft")
	outer.Unless, front.Unless, rear.Unless = "front_leg", "front_leg", "front_leg"
	return Key{Name: name + "_wishbone", Kind: Mapping, Required: true, Doc: "the " + name + " wishbone, or two links in its place", Keys: []Key{
		outer, front, rear, leg("front", "rear"), leg("rear", "front"),
	}, Also: []string{name + "_arm", name + "_control_arm", name + "_a_arm"}}
}

// leg returns the row of a link with an outer joint of its own.
func leg(name, other string) Key {
	return Key{
		Name: name + "_leg", Kind: Mapping, NeededWith: other + "_leg", Instead: []string{"outer", "front", "rear"}, Keys: joints(),
		Absent: "both legs meet in one ball joint", Doc: "the " + name + " link, which has a joint of its own at the upright",
	}
}

var rockerKey = Key{
	Name: "rocker", Kind: Mapping, Absent: "the rod ends on the chassis", Doc: "the rocker between the rod and the spring",
	Also:  []string{"bellcrank", "bell_crank"},
	OneOf: []string{"spring", "torsion_bar"}, Neither: "a third spring takes the place of neither: what carries roll at each corner would not be known",
	Keys: []Key{
		point("pivot", "the middle of the pivot between its two bearings"),
		{Name: "axis", Kind: Vector, Parts: xyz, Range: Range{Min: -10000, Max: 10000}, Required: true, Doc: "the direction of the pivot's axis"},
		{Name: "bearing_span", Kind: Number, Dimension: Length, Range: Range{Min: 1, Max: 1000}, Required: true, Doc: "the distance between the two bearings of the pivot"},
		{Name: "spring", Kind: Mapping, Doc: "the spring", Keys: append([]Key{
			point("rocker", "the spring's point on the rocker"),
			point("chassis", "the spring's point on the chassis"),
		}, springKeys...), Also: []string{"damper", "shock"}},
		{Name: "torsion_bar", Kind: Flag, Default: "false", Doc: "true where a torsion bar on the pivot takes the place of the spring", Also: []string{"torsion"}},
		{Name: "anti_roll", Kind: Mapping, Absent: "no anti-roll bar", Doc: "the link to the anti-roll bar", Keys: []Key{
			point("rocker", "the link's point on the rocker"),
			point("link", "the link's point on the anti-roll bar"),
			share("roll_share", "the share of the roll part of the torque that the anti-roll bar carries"),
		}, Also: []string{"arb", "anti_roll_bar", "sway_bar"}},
		{Name: "third", Kind: Mapping, Absent: "no third spring", Doc: "the third spring, from this rocker to that of the other side", Keys: []Key{
			point("rocker", "the third spring's point on this rocker"),
			share("heave_share", "the share of the heave part of the torque that the third spring carries"),
		}, Also: []string{"third_spring", "heave_spring", "centre_spring"}},
		torsionBarSpringKey,
		rockerPlatesKey, rockerBearingsKey, torsionBarKey, pivotBoltKey,
	},
}

var membersKey = Key{
	Name: "members", Kind: Mapping, Required: true, Doc: "what the six members are made of",
	Keys: []Key{
		member("upper_front_leg"), member("upper_rear_leg"), member("lower_front_leg"), member("lower_rear_leg"),
		member("track_rod", "toe_link", "tie_rod"), member("rod", "push_rod", "pull_rod"),
	},
}

func member(name string, also ...string) Key {
	return Key{Name: name, Kind: Mapping, Required: true, Doc: "what the " + name + " is made of", Also: also, OneOf: []string{"tube", "section"}, Keys: []Key{
		tubeKey, sectionKey, eccentricityKey, sideLoadKey,
		{Name: "material", Kind: Text, Required: true, Unless: "laminate", Doc: "the name of the material"},
		laminateKey,
		{Name: "effective_length_factor", Kind: Number, Range: Range{Min: 0.5, Max: 4}, Default: "1", Doc: "the effective length factor of the column, 1 between spherical joints", Also: []string{"k", "length_factor"}},
		columnKey,
		endsKey,
		{Name: "part", Kind: Text, Doc: "the part number", Also: []string{"part_number"}},
		certificateKey,
		{Name: "notes", Kind: Prose, Doc: "notes for the reader", Also: []string{"comment", "remarks"}},
	}}
}

// The word that follows the name of the standard is the curve.
const (
	eulerJohnson = "euler-johnson"
	curvePrefix  = "EN 1993-1-1 "
)

var columnKey = Key{
	Name: "column", Kind: Choice, Default: eulerJohnson, Doc: "the rule by which the member is judged as a column",
	Choices: []string{eulerJohnson, curvePrefix + "a0", curvePrefix + "a", curvePrefix + "b", curvePrefix + "c", curvePrefix + "d"},
	Keys: []Key{
		{Name: "crookedness", Kind: Number, Dimension: Length, Range: Range{Max: 100, Above: true}, Required: true, Doc: "the bow of the axis at mid-length"},
	},
}
