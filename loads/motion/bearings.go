package motion

import (
	"math"

	"gonum.org/v1/gonum/num/quat"
	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
)

// The spherical bearings of a corner, in the order of every array.
const (
	UpperBallJoint = iota
	LowerBallJoint
	UpperFrontPickUp
	UpperRearPickUp
	LowerFrontPickUp
	LowerRearPickUp
	TrackRodOuter
	TrackRodInner
	RodOuter
	RodInner
	NumBearings
)

// BearingNames are the names of the bearings in files and reports.
var BearingNames = [NumBearings]string{
	"upper_ball_joint", "lower_ball_joint",
	"upper_front_leg_inner", "upper_rear_leg_inner", "lower_front_leg_inner", "lower_rear_leg_inner",
	"track_rod_outer", "track_rod_inner", "rod_outer", "rod_inner",
}

// Bolts are the axes of the bolts through the balls of the bearings in the drawn
// position, of any length and either sense. The bolt stands on the upright at a ball
// joint, on the chassis at the pick-up of a leg, on what the rod or the track rod is
// joined to at theirs. The zero vector is an axis that is not given: the bolt is then
// assumed square to its member in the drawn position, and of the axes that are, at the
// joints of a wishbone square to its plane, at the ends of track rod and rod the one that
// is misaligned most. Common practice, no published source.
type Bolts [NumBearings]r3.Vec

// AngleBetween returns the misalignment of a bearing whose housing and bolt each are fixed
// to a body, rad: the angle between the two axes, as lines. A turn about the axis is none.
func AngleBetween(housing, bolt r3.Vec) float64 {
	return math.Atan2(r3.Norm(r3.Cross(housing, bolt)), math.Abs(r3.Dot(housing, bolt)))
}

// AngleFromSquare returns the misalignment of a bearing at the end of a member that turns
// freely about its own axis, rad: how far the bolt is from square to the member. The
// housing follows the rest; two ends that are clocked to each other may leave less.
func AngleFromSquare(member, bolt r3.Vec) float64 {
	return math.Atan2(math.Abs(r3.Dot(member, bolt)), r3.Norm(r3.Cross(member, bolt)))
}

// AngleOfSwing returns the largest misalignment of any bolt that was square to such a
// member, rad: the angle between the member and where it would stand had it moved with the
// body of the bolt; at most a right angle.
func AngleOfSwing(member, drawn r3.Vec) float64 { return AngleBetween(member, drawn) }

// A rotor is one body of the corner, by its turn from the drawn position.
type rotor func(r3.Vec) r3.Vec

func fixed(v r3.Vec) r3.Vec { return v }

func about(axis r3.Vec, angle float64) rotor {
	return func(v r3.Vec) r3.Vec { return r3.Add(v, swung(angle, axis, v)) }
}

func (p *Position) upright(v r3.Vec) r3.Vec {
	return r3.Add(v, strayed(quat.Number(p.Upright), v))
}

// Misalignments returns the angle of each bearing at a position of the linkage, rad.
func (l *Linkage) Misalignments(p *Position, bolts Bolts) [NumBearings]float64 {
	var out [NumBearings]float64
	for i, w := range l.wishbones {
		if w.parted {
			l.partedAngles(&out, p, bolts, i)
			continue
		}
		wishbone := about(w.axis, p.Wishbones[i])
		plane := r3.Cross(w.axis, w.arm)
		rigid := func(bearing int, bolted rotor) {
			bolt := bolts[bearing]
			if bolt == (r3.Vec{}) {
				bolt = plane
			}
			out[bearing] = AngleBetween(wishbone(bolt), bolted(bolt))
		}
		rigid(UpperBallJoint+i, p.upright)
		for _, leg := range legs[i] {
			rigid(UpperFrontPickUp+leg, fixed)
		}
	}
	out[TrackRodOuter] = l.free(p, loads.TrackRod, bolts[TrackRodOuter], p.upright)
	out[TrackRodInner] = l.free(p, loads.TrackRod, bolts[TrackRodInner], fixed)
	out[RodOuter] = l.free(p, loads.Rod, bolts[RodOuter], l.carrierRotor(p))
	out[RodInner] = l.free(p, loads.Rod, bolts[RodInner], l.rockerRotor(p))
	return out
}

// free returns the misalignment at an end of a link that turns about its own axis, rad.
func (l *Linkage) free(p *Position, link int, bolt r3.Vec, bolted rotor) float64 {
	now := p.Corner.Links[link].Direction()
	if bolt == (r3.Vec{}) {
		return AngleOfSwing(now, bolted(l.drawn.Links[link].Direction()))
	}
	return AngleFromSquare(now, bolted(bolt))
}

// partedAngles are those of two legs with outer joints of their own: at the upright, where
// they share a place in the list, the larger of the two.
func (l *Linkage) partedAngles(out *[NumBearings]float64, p *Position, bolts Bolts, i int) {
	for _, leg := range legs[i] {
		out[UpperBallJoint+i] = math.Max(out[UpperBallJoint+i], l.free(p, leg, bolts[UpperBallJoint+i], p.upright))
		out[UpperFrontPickUp+leg] = l.free(p, leg, bolts[UpperFrontPickUp+leg], fixed)
	}
}

func (l *Linkage) carrierRotor(p *Position) rotor {
	if i, ok := l.carrier(); ok {
		return about(l.wishbones[i].axis, p.Wishbones[i])
	}
	return p.upright
}

func (l *Linkage) rockerRotor(p *Position) rotor {
	if l.rocker == nil {
		return fixed
	}
	return about(l.rocker.axis, l.rising*p.Rocker)
}

// A Misalignment is the largest angle of a bearing, rad, and where it is met.
type Misalignment struct{ Angle, Travel, Rack float64 }

// Largest returns the largest misalignment of each bearing over positions of the linkage;
// the first of them where several are alike.
func (l *Linkage) Largest(positions []Position, bolts Bolts) [NumBearings]Misalignment {
	var out [NumBearings]Misalignment
	for i := range positions {
		p := &positions[i]
		for b, angle := range l.Misalignments(p, bolts) {
			if i == 0 || !(angle <= out[b].Angle) {
				out[b] = Misalignment{angle, p.Travel, p.Rack}
			}
		}
	}
	return out
}
