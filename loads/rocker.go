package loads

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// minLever is the smallest lever arm about the rocker's axis, as a share of the
// point's distance from the pivot, that a force may have to be carried by it:
// below it a hardpoint's tolerance decides the force. Common practice, no published
// source.
const minLever = 1e-3

// rockerArms are the torques about the axis, positive where they belong to a wheel
// pushed up, per unit of each force on the rocker, mm.
type rockerArms struct {
	axis                   r3.Vec  // unit vector
	sense                  float64 // +1 where the positive torque is about +axis, −1 where about −axis
	rod, spring, antiRoll  float64
	third                  float64
	springDir, antiRollDir r3.Vec // of the force on the rocker: spring in compression, link in tension
	thirdDir               r3.Vec // in compression
}

// prepareRocker finds the lever arms. The sense of the torques is that of the rod's
// torque on the rocker under an upward contact force on a rolling wheel.
func (s *Statics) prepareRocker() error {
	rk, rod := s.Corner.Rocker, s.Corner.Links[Rod]
	a := rockerArms{axis: r3.Unit(rk.Axis)}
	lever := func(at, dir r3.Vec) float64 { return lever(a.axis, rk.Pivot, at, dir) }

	up := s.Solve(WheelLoad{Force: r3.Vec{Z: 1}, Released: true}).Axial[Rod]
	a.rod = lever(rod.Inner, r3.Scale(-1, rod.Direction()))
	if err := leverFault("rod", "rod", a.rod, r3.Sub(rod.Inner, rk.Pivot)); err != nil {
		return err
	}
	if carriesNothing(up) {
		return &RockerFault{
			Path:   "rod",
			Text:   fmt.Sprintf("the rod takes %.2g of an upward contact force, less than %g: it does not carry the wheel", math.Abs(up), minLever),
			Remedy: "move rod.outer or rod.inner so that the rod resists the wheel",
		}
	}
	a.sense = math.Copysign(1, a.rod*up)
	a.rod *= a.sense
	if l := rk.Spring; l != nil {
		a.springDir = r3.Unit(r3.Sub(l.Rocker, l.Far))
		a.spring = a.sense * lever(l.Rocker, a.springDir)
		if err := leverFault("spring", "rocker.spring", a.spring, r3.Sub(l.Rocker, rk.Pivot)); err != nil {
			return err
		}
	}
	if l := rk.AntiRoll; l != nil {
		a.antiRollDir = r3.Unit(r3.Sub(l.Far, l.Rocker))
		a.antiRoll = a.sense * lever(l.Rocker, a.antiRollDir)
		if err := leverFault("anti-roll link", "rocker.anti_roll", a.antiRoll, r3.Sub(l.Rocker, rk.Pivot)); err != nil {
			return err
		}
	}
	if l := rk.Third; l != nil {
		a.thirdDir = r3.Unit(r3.Sub(l.Rocker, l.Far))
		a.third = a.sense * lever(l.Rocker, a.thirdDir)
		if err := leverFault("third spring", "rocker.third", a.third, r3.Sub(l.Rocker, rk.Pivot)); err != nil {
			return err
		}
	}
	s.rocker = a
	return nil
}

// lever is the torque about an axis through a pivot of a unit force at a point, mm.
func lever(axis, pivot, at, dir r3.Vec) float64 {
	return r3.Dot(axis, r3.Cross(r3.Sub(at, pivot), dir))
}

// carriesNothing tells of a rod, by its force under a unit upward contact force, that it
// does not carry the wheel.
func carriesNothing(up float64) bool { return math.Abs(up) < minLever }

// tooShort tells whether a lever arm cannot carry a force, by the place of its point from
// the pivot.
func tooShort(arm float64, from r3.Vec) (limit float64, short bool) {
	limit = minLever * r3.Norm(from)
	return limit, !(math.Abs(arm) >= limit && limit > 0)
}

// A RockerFault is the error for a rocker that cannot pass the load on.
type RockerFault struct {
	Path         string // of the part at fault below its axle: "rocker", "rocker.spring"
	Text, Remedy string
}

func (e *RockerFault) Error() string { return e.Text }

func leverFault(what, path string, arm float64, from r3.Vec) error {
	limit, short := tooShort(arm, from)
	if !short {
		return nil
	}
	return &RockerFault{
		Path:   path,
		Text:   fmt.Sprintf("the %s has a lever arm of %.3g mm about the rocker's axis, less than the %.3g mm that can carry a force", what, math.Abs(arm), limit),
		Remedy: "move its point on the rocker, or turn the axis",
	}
}

// doubtLever is the share of a point's distance from the pivot below which a lever
// arm gets a doubt. Common practice, no published source.
const doubtLever = 0.05

// ShortLever returns the force on the rocker with the least lever arm, as a share of
// its point's distance from the pivot; false where none is short.
func (s *Statics) ShortLever() (what string, share float64, short bool) {
	rk := s.Corner.Rocker
	if rk == nil {
		return "", 0, false
	}
	share = math.Inf(1)
	hold := func(name string, arm float64, at r3.Vec) {
		if x := math.Abs(arm) / r3.Norm(r3.Sub(at, rk.Pivot)); x < share {
			what, share = name, x
		}
	}
	hold("rod", s.rocker.rod, s.Corner.Links[Rod].Inner)
	if rk.Spring != nil {
		hold("spring", s.rocker.spring, rk.Spring.Rocker)
	}
	if rk.AntiRoll != nil {
		hold("anti-roll link", s.rocker.antiRoll, rk.AntiRoll.Rocker)
	}
	if rk.Third != nil {
		hold("third spring", s.rocker.third, rk.Third.Rocker)
	}
	return what, share, share < doubtLever
}
