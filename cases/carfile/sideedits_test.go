package carfile

// rearAxle begins the rear axle of the example car: what stands before it belongs to front.
const rearAxle = "\nrear:\n  unsprung_mass: 21\n"

// rightEdit gives the front axle of the example car a right-hand side.
func rightEdit(name, right string, faults int) edit {
	return edit{name: "right: " + name, old: rearAxle, new: "  right:\n" + right + rearAxle, faults: faults}
}

var sideEdits = []edit{
	rightEdit("empty", "", 1),
	rightEdit("a point with the sign of the left", "    rod: {outer: [2, 640, 196]}\n", 1),
	rightEdit("several points with the sign of the left", "    upper_wishbone: {outer: [-14, 655, 400], front: [150, 265, 372], rear: [-190, 285, 362]}\n", 3),
	rightEdit("contact point with the sign of the left", "    wheel: {contact: [0, 740, 0]}\n", 1),
	rightEdit("contact point near the centreline", "    wheel: {contact: [0, -74, 0]}\n", 1),
	rightEdit("contact point ahead of the left", "    wheel: {contact: [20, -740, 0]}\n", 1),
	rightEdit("contact point below the left", "    wheel: {contact: [0, -740, -3]}\n", 1),
	rightEdit("pick-ups exchanged", "    lower_wishbone: {front: [-230, -210, 138], rear: [190, -200, 140]}\n", 1),
	rightEdit("outer joint inboard of the mirrored inner one", "    rod: {outer: [0, -200, 470]}\n", 1),
	rightEdit("outer joint on the mirrored inner one", "    rod: {outer: [0, -270, 470]}\n", 1),
	rightEdit("unknown material", "    members: {rod: {material: E999}}\n", 1),
	rightEdit("wall thicker than the tube", "    members: {rod: {tube: [20, 11]}}\n", 1),
	rightEdit("what the sides share", "    rocker: {anti_roll: {roll_share: 0.4}}\n", 1),
	rightEdit("mass of a corner", "    unsprung_mass: 18\n", 1),
	rightEdit("a side within a side", "    right: {rod: {outer: [2, -640, 196]}}\n", 1),
	rightEdit("spring in the place of the torsion bar, half of it", "    rocker: {spring: {rocker: [0, -205, 462]}}\n", 1),
	rightEdit("end without a part of the list", "    members: {rod: {ends: {outer: {bearing: no such part}}}}\n", 1),
	rightEdit("section and tube", "    members: {rod: {tube: [20, 1.5], section: {bar: 12}}}\n", 1),
	rightEdit("key misspelt", "    wheel: {center: [0, -741, 285]}\n", 1),
	{
		name: "right: a fault of the left is told once", faults: 1,
		old: "rod: {outer: [2, 630, 196], inner: [0, 270, 470], carried_by: upright}",
		new: "rod: {outer: [0, 270, 470], inner: [2, 630, 196], carried_by: upright}\n  right: {track_rod: {inner: [88, -230, 186]}}",
	},
	{
		name: "right: a rocker on one side alone", faults: 1,
		old: "    pivot: [0, 234, 422]\n    axis: [1, 0, 0]\n    bearing_span: 40\n    torsion_bar: true\n    anti_roll: {rocker: [0, 205, 462], link: [0, 205, 330], roll_share: 0.45}\n",
		new: "    pivot: [0, 234, 422]\n    axis: [1, 0, 0]\n    bearing_span: 40\n    torsion_bar: true\n  right:\n    rocker: {anti_roll: {rocker: [0, -205, 462], link: [0, -205, 330]}}\n",
	},
}

// linkEdit gives the front axle of the example car another upper wishbone.
func linkEdit(name, wishbone string, faults int) edit {
	return edit{name: "links: " + name, old: "upper_wishbone: {outer: [-14, 655, 400], front: [150, 265, 372], rear: [-190, 285, 362]}", new: "upper_wishbone: " + wishbone, faults: faults}
}

// The legs of two links in the place of the upper wishbone of the front axle.
const (
	frontLeg = "front_leg: {outer: [12, 652, 402], inner: [150, 265, 372]}"
	rearLeg  = "rear_leg: {outer: [-40, 658, 396], inner: [-190, 285, 362]}"
)

var linkEdits = []edit{
	linkEdit("one of two", "{"+frontLeg+"}", 1),
	linkEdit("the rear one alone", "{"+rearLeg+", front: [150, 265, 372]}", 2),
	linkEdit("beside a ball joint", "{outer: [-14, 655, 400], "+frontLeg+", "+rearLeg+"}", 1),
	linkEdit("without an inner joint", "{front_leg: {outer: [12, 652, 402]}, "+rearLeg+"}", 1),
	linkEdit("joints exchanged", "{front_leg: {inner: [12, 652, 402], outer: [150, 265, 372]}, "+rearLeg+"}", 1),
	linkEdit("pick-ups exchanged", "{front_leg: {outer: [12, 652, 402], inner: [-190, 285, 362]}, rear_leg: {outer: [-40, 658, 396], inner: [150, 265, 372]}}", 1),
	linkEdit("below the lower wishbone", "{front_leg: {outer: [12, 652, 150], inner: [150, 265, 150]}, rear_leg: {outer: [-40, 658, 150], inner: [-190, 285, 150]}}", 1),
	{
		name: "links: carrying the rod", faults: 1,
		old: "lower_wishbone: {outer: [-2555, 670, 170], front: [-2330, 210, 150], rear: [-2730, 205, 145]}",
		new: "lower_wishbone: {front_leg: {outer: [-2545, 670, 170], inner: [-2330, 210, 150]}, rear_leg: {outer: [-2565, 670, 170], inner: [-2730, 205, 145]}}",
	},
	{
		name: "links: carrying the rod on the right-hand side", faults: 1,
		old: "\n# The usual",
		new: "\n  right:\n    lower_wishbone: {front_leg: {outer: [-2545, -670, 170], inner: [-2330, -210, 150]}, rear_leg: {outer: [-2565, -670, 170], inner: [-2730, -205, 145]}}\n\n# The usual",
	},
	{
		name: "links: one of two on the right-hand side", faults: 1,
		old: "\n# The usual",
		new: "\n  right:\n    upper_wishbone: {front_leg: {outer: [-2545, -650, 420], inner: [-2380, -280, 385]}}\n\n# The usual",
	},
}

// thirdEdit gives the front rocker of the example car a third spring.
func thirdEdit(name, third string, faults int) edit {
	return edit{name: "third spring: " + name, old: "    torsion_bar: true\n", new: "    torsion_bar: true\n    third: " + third + "\n", faults: faults}
}

var thirdEdits = []edit{
	thirdEdit("on the centreline", "{rocker: [0, 0, 464], heave_share: 0.4}", 1),
	thirdEdit("on the pivot", "{rocker: [0, 234, 422], heave_share: 0.4}", 1),
	thirdEdit("without a share", "{rocker: [0, 190, 464]}", 1),
	thirdEdit("with more than all of it", "{rocker: [0, 190, 464], heave_share: 1.4}", 1),
	thirdEdit("with an end on the chassis", "{rocker: [0, 190, 464], chassis: [0, 0, 464], heave_share: 0.4}", 1),
	{
		name: "third spring: in the place of corner springs", faults: 1,
		old: "    torsion_bar: true\n", new: "    third: {rocker: [0, 190, 464], heave_share: 1}\n",
	},
	{
		name: "third spring: on the right-hand side alone", faults: 1,
		old: rearAxle, new: "  right:\n    rocker: {third: {rocker: [0, -190, 464]}}\n" + rearAxle,
	},
	{
		name: "third spring: an eye of the plates without it", faults: 1,
		old: "    torsion_bar: true\n",
		new: "    torsion_bar: true\n    plates: {count: 1, thickness: 8, material: E355+N, pivot: {bore: 20, width: 40}, third: {hole: 8, width: 24, edge: 12}}\n",
	},
}
