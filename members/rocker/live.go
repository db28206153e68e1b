package rocker

import "sixlink/members/check"

// What a sheet that recalculates needs: probes under which every check applies that may
// ever apply, and the equations of the pivot's bolt with the choice between supports
// within the bearings and outside them.

// Probes loads the section in every way.
func (s Section) Probes() []Section {
	s.Outward, s.Across, s.Along, s.InPlane, s.Lift = 1, 1, 1, 1, 1
	return []Section{s}
}

// Probes loads both bearings, and one along the axis.
func (b Bearings) Probes() []Bearings {
	b.Radial1, b.Radial2, b.Axial = 1, 1, 1
	return []Bearings{b}
}

// Probes loads the bolt in every way.
func (b PivotBolt) Probes() []PivotBolt {
	b.Outward, b.Across, b.Thrust = [2]float64{1, 1}, [2]float64{1, 1}, 1
	return []PivotBolt{b}
}

// Probes twists the bar.
func (b TorsionBar) Probes() []TorsionBar {
	b.Torque = 1
	return []TorsionBar{b}
}

func overhung(otherwise, equation string) string {
	return "if(c < 0; " + equation + "; " + otherwise + ")"
}

var liveMoment = []boltRow{check.Line("M", "largest bending moment, at a bearing or, where the bearings are overhung, at a support", overhung(momentWithin, momentOverhung), "N·mm", "statics", PivotBolt.Moment)}

var liveForce = []boltRow{check.Line("V", "largest shear force", overhung(shearWithin, shearOverhung), "N", "statics", PivotBolt.Shear)}

func boltBendingLive(b PivotBolt) []check.Step  { return bendingBy(b, liveMoment) }
func boltShearLive(b PivotBolt) []check.Step    { return shearBy(b, liveForce) }
func boltCombinedLive(b PivotBolt) []check.Step { return combinedBy(b, liveMoment, liveForce) }
