package cases

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
	"sixlink/loads/compliance"
)

// A Stiffness is what the car file says of how stiffly the chassis holds the links of an
// axle, and how far its wheels may give way.
type Stiffness struct {
	compliance.Stiffness
	Limits []GiveLimit
}

// A GiveLimit is the most that an angle of a wheel may change under a load.
type GiveLimit struct {
	Load  int     // index in GiveLoads
	Angle int     // index in GiveAngles
	Most  float64 // °/kN, either way
}

// The loads under which it is shown how far a wheel gives way.
const (
	BrakingForce = iota
	RollingForce
	LateralForce
	VerticalForce
	NumLimited // the loads before this one can have limits
)

// A GiveLoad is 1 kN or 1 kN·m on a wheel, alike at mirror images.
type GiveLoad struct {
	Name, Words, Unit string // Unit: that of the load
	wheel             func(left float64) loads.WheelLoad
}

// GiveLoads are the loads, in the order of every table.
var GiveLoads = []GiveLoad{
	{"braking", "force rearwards at the contact point, its torque held by the upright", "kN", func(float64) loads.WheelLoad {
		return loads.WheelLoad{Force: r3.Vec{X: -1000}}
	}},
	{"driving", "force forwards at the contact point of a wheel whose torque the upright does not hold", "kN", func(float64) loads.WheelLoad {
		return loads.WheelLoad{Force: r3.Vec{X: 1000}, Released: true}
	}},
	{"lateral", "force towards the centreline at the contact point", "kN", func(left float64) loads.WheelLoad {
		return loads.WheelLoad{Force: r3.Vec{Y: -1000 * left}}
	}},
	{"vertical", "force upwards at the contact point of a rolling wheel", "kN", func(float64) loads.WheelLoad {
		return loads.WheelLoad{Force: r3.Vec{Z: 1000}, Released: true}
	}},
	{"overturning", "moment about x that leans the top of the wheel outwards", "kN·m", func(left float64) loads.WheelLoad {
		return loads.WheelLoad{Moment: r3.Vec{X: -1e6 * left}}
	}},
	{"torque", "moment about y in the sense of a wheel that rolls forwards, held by the upright", "kN·m", func(float64) loads.WheelLoad {
		return loads.WheelLoad{Moment: r3.Vec{Y: 1e6}}
	}},
	{"aligning", "moment about z that turns the front of the wheel inwards", "kN·m", func(left float64) loads.WheelLoad {
		return loads.WheelLoad{Moment: r3.Vec{Z: -1e6 * left}}
	}},
}

// The angles of a wheel that can have limits.
const (
	Toe = iota
	Camber
	Caster
	NumGiveAngles
)

// GiveAngles are their names.
var GiveAngles = [NumGiveAngles]string{"toe", "camber", "caster"}

// A Give is how far a wheel gives way under one load.
type Give struct {
	Whole compliance.Movement
	Parts []compliance.Movement // as Stiff.Parts; their sum is Whole
}

// A Stiff is the stiffness of one corner at its drawn position.
type Stiff struct {
	Parts  []compliance.Part
	Gives  []Give // as GiveLoads
	Limits []GiveFinding
}

// A GiveFinding is what was found for one limit, °/kN.
type GiveFinding struct {
	GiveLimit
	Change  float64 // signed
	Reserve float64 // limit over size of the change
}

// Passes tells whether the limit is held.
func (f GiveFinding) Passes() bool { return f.Reserve >= 1 } // false for NaN

// AngleOf returns one of GiveAngles of a movement, °.
func AngleOf(m compliance.Movement, angle int) float64 {
	return [NumGiveAngles]float64{m.Toe, m.Camber, m.Caster}[angle] * 180 / math.Pi
}

// stiffen works out the stiffness of the corners whose axle gives it, and holds it to its
// limits. One that cannot be worked out fails.
func (r *Results) stiffen() {
	for i := range r.Corners {
		given := r.Car.Axles[axleOf(i)].Stiffness
		if given == nil {
			continue
		}
		c, err := compliance.New(r.Car.Side(i).Corner, given.Stiffness)
		if err != nil {
			r.note(Warning, "%s: its stiffness is not known: %v", CornerNames[i], err)
			r.Pass = false
			continue
		}
		r.Corners[i].Stiff = stiffOf(c, given.Limits, float64(side(i)))
		for _, f := range r.Corners[i].Stiff.Limits {
			r.Pass = r.Pass && f.Passes()
		}
	}
}

func stiffOf(c *compliance.Compliance, limits []GiveLimit, left float64) *Stiff {
	out := &Stiff{Parts: c.Parts}
	for _, l := range GiveLoads {
		var g Give
		g.Whole, g.Parts = c.Under(l.wheel(left))
		out.Gives = append(out.Gives, g)
	}
	for _, l := range limits {
		change := AngleOf(out.Gives[l.Load].Whole, l.Angle)
		out.Limits = append(out.Limits, GiveFinding{l, change, l.Most / math.Abs(change)})
	}
	return out
}

// stiffnessGap is what no check knows of the stiffness of the car.
func (r *Results) stiffnessGap() string {
	var open []string
	for i := range r.Car.Axles {
		if r.Car.Axles[i].Stiffness == nil {
			open = append(open, AxleNames[i])
		}
	}
	switch len(open) {
	case 0:
		return ""
	case 1:
		return ", and the stiffness of the " + open[0] + " axle's assembly"
	}
	return ", and the stiffness of the assembly"
}

// remarkStiffness says what the stiffness leaves out.
func (r *Results) remarkStiffness() {
	for i := range r.Car.Axles {
		if r.Car.Axles[i].Stiffness != nil {
			r.note(Remark, "stiffness: about the drawn position, springs and torsion bars locked, anti-roll bar and third spring disconnected; upright, hub, wheel, tyre, rocker, joints and what the car file does not give are rigid: the real assembly gives way more. Pick-ups that give way shift load between the legs of a wishbone that carries the rod; the forces of the load cases are those of rigid pick-ups")
		}
	}
}
