package rocker

import (
	"math"

	"sixlink/members/check"
	"sixlink/members/fasteners"
)

// A Bolt is the bolt or pin on which the rocker turns. The chassis holds it at two
// supports, the rocker's bearings load it; both pairs have the middle of the pivot
// between them. Supports nearer together than the bearings leave the bolt overhung.
type Bolt struct {
	fasteners.Thread
	Class       fasteners.Class
	Support     float64 // span of the supports, middle to middle, mm
	BearingSpan float64 // span of the bearings, middle to middle, mm
	Threads     bool    // threads lie where it bends and shears
}

// A PivotBolt is a bolt with the forces of one case: of each bearing outward to the
// rod's eye and across, with their signs, the first bearing on the side to which the axis
// points; the thrust is a size. N.
type PivotBolt struct {
	Bolt
	check.Factors
	Outward, Across [2]float64
	Thrust          float64
}

// Lever returns the distance from a support to the bearing beside it, mm; negative where
// the bearing is overhung.
//
//	c = (S − s)/2
func (b Bolt) Lever() float64 { return (b.Support - b.BearingSpan) / 2 }

// part returns one part of the reactions of the two supports to that part of the forces.
func (b Bolt) part(f [2]float64) (first, second float64) {
	c := b.Lever()
	a1, b1 := Reactions(f[0], c, b.Support)
	a2, b2 := Reactions(f[1], b.Support-c, b.Support)
	return a1 + a2, b1 + b2
}

// Reactions returns the sizes of the supports' reactions, N.
//
//	R_1 = |B_1·(1 − c/S) + B_2·c/S|;  R_2 = |B_1·c/S + B_2·(1 − c/S)|    statics, vectors
func (b PivotBolt) Reactions() (first, second float64) {
	x1, x2 := b.part(b.Outward)
	y1, y2 := b.part(b.Across)
	return math.Hypot(x1, y1), math.Hypot(x2, y2)
}

// Loads returns the sizes of the forces of the bearings, N.
func (b PivotBolt) Loads() (first, second float64) {
	return math.Hypot(b.Outward[0], b.Across[0]), math.Hypot(b.Outward[1], b.Across[1])
}

// Middle returns the shear force between the bearings, N.
//
//	H = |R_1 − B_1|
func (b PivotBolt) Middle() float64 {
	x, _ := b.part(b.Outward)
	y, _ := b.part(b.Across)
	return math.Hypot(x-b.Outward[0], y-b.Across[0])
}

// Moment returns the largest bending moment, N·mm: at a bearing, or, where the bearings
// are overhung, at a support. The moment is linear between them, so it is largest there.
//
//	M = c·max(R_1; R_2);  M = −c·max(B_1; B_2) where c < 0
func (b PivotBolt) Moment() float64 {
	if c := b.Lever(); c < 0 {
		return -c * math.Max(b.Loads())
	}
	return b.Lever() * math.Max(b.Reactions())
}

// Shear returns the largest shear force, N: beside a support, or between the bearings.
func (b PivotBolt) Shear() float64 {
	outer := math.Max(b.Reactions())
	if b.Lever() < 0 {
		outer = math.Max(b.Loads())
	}
	return math.Max(outer, b.Middle())
}

// diameter returns that of the section which bends and shears, mm: the shank's, or
// that of the stress area.
func (b Bolt) diameter() float64 {
	if b.Threads {
		return b.StressDiameter()
	}
	return b.Thread.Diameter
}

func (b PivotBolt) area() float64    { return fasteners.Circle(b.diameter()) }
func (b PivotBolt) modulus() float64 { return fasteners.Modulus(b.diameter()) }

func (b PivotBolt) bendingCapacity() float64 {
	return fasteners.PinBendingStrength(b.modulus(), b.Class.NominalYield) / (b.Yield * b.AtFitting())
}

func (b PivotBolt) shearCapacity() float64 {
	return fasteners.ShearStrength(b.shearFactor(), b.Class.NominalUltimate, b.area()) / (b.Ultimate * b.AtFitting())
}

// shearFactor is α_v: 0.6 of a shank, as of a pin, and that of the class where threads
// are sheared, EN 1993-1-8:2005, Table 3.4.
func (b PivotBolt) shearFactor() float64 { return b.Class.ShearShare(b.Threads) }

func (b PivotBolt) tensionCapacity() float64 {
	return fasteners.TensionStrength(b.Class.NominalUltimate, b.StressArea()) / (b.Ultimate * b.AtFitting())
}

func (b PivotBolt) bendingShare() float64 { return b.Moment() / b.bendingCapacity() }
func (b PivotBolt) shearShare() float64   { return b.Shear() / b.shearCapacity() }

func (b PivotBolt) combined() float64 {
	return fasteners.PinCombined(b.bendingShare(), b.shearShare())
}
