package cases

import (
	"fmt"
	"math"
	"strings"
)

// A Placing says where the wheels are in a case: the zero value in the position drawn.
type Placing struct {
	Given  bool                // the case states it
	Travel [NumCorners]float64 // of each wheel centre against the chassis, mm, bump positive
	Rack   [2]float64          // of each axle, mm, positive to the left
}

// Moved tells whether a wheel or a rack is anywhere but where it is drawn.
func (p *Placing) Moved() bool {
	return p.Travel != [NumCorners]float64{} || p.Rack != [2]float64{}
}

// mirrored returns the mirror image: the wheels change sides, the racks their direction.
func (p Placing) mirrored() Placing {
	out := p
	for corner := range p.Travel {
		out.Travel[corner^1] = p.Travel[corner]
	}
	for axle := range p.Rack {
		out.Rack[axle] = 0 - p.Rack[axle] // never −0
	}
	return out
}

// alone returns the placing with the wheels of the other side as drawn; +1 left, −1 right.
func (p Placing) alone(of int) Placing {
	for corner := range p.Travel {
		if side(corner) != of {
			p.Travel[corner] = 0
		}
	}
	return p
}

// words puts the placing into words; empty where the case states none.
func (p Placing) words() string {
	if !p.Given {
		return ""
	}
	parts := []string{"travel " + eachWheel(p.Travel, "mm")}
	for axle, name := range AxleNames {
		if x := p.Rack[axle]; x != 0 {
			way := "left"
			if x < 0 {
				way = "right"
			}
			rack := "rack"
			if axle == Rear {
				rack = name + " rack"
			}
			parts = append(parts, fmt.Sprintf("%s %.4g mm to the %s", rack, math.Abs(x), way))
		}
	}
	return ", " + strings.Join(parts, ", ")
}

// eachWheel writes a number of each wheel in as few words as it can.
func eachWheel(x [NumCorners]float64, unit string) string {
	say := func(v float64) string { return signed(v, unit) }
	switch {
	case x[FrontLeft] == x[FrontRight] && x[RearLeft] == x[RearRight] && x[FrontLeft] == x[RearLeft]:
		return say(x[FrontLeft])
	case x[FrontLeft] == x[FrontRight] && x[RearLeft] == x[RearRight]:
		return "front " + say(x[FrontLeft]) + ", rear " + say(x[RearLeft])
	}
	var out []string
	for i, name := range CornerNames {
		out = append(out, strings.ReplaceAll(name, "_", " ")+" "+say(x[i]))
	}
	return strings.Join(out, ", ")
}

// signed writes a number with its sign and unit.
func signed(v float64, unit string) string {
	if v == 0 {
		return "0 " + unit
	}
	return strings.Replace(fmt.Sprintf("%+.4g %s", v, unit), "-", "−", 1)
}
