package cases

import (
	"fmt"
	"math"
	"strings"
)

// usualFactors is the basis of wheel factors that come without one.
const usualFactors = "wheel factors: common practice, no published source"

// basis says where the numbers of a case come from.
func (v variant) basis() string {
	switch {
	case v.Basis != "":
		return v.Basis
	case v.Kind == WheelFactors:
		return usualFactors
	case v.Kind == Manoeuvre:
		return "whole-car equilibrium at the stated acceleration and speed"
	case v.Kind == SpringForces:
		return "wheel load that belongs to the forces of spring, bump stop and damper of the car file"
	}
	return "contact forces as stated in the car file, no basis given"
}

// state puts a case into words.
func (v variant) state() string {
	if f := v.loadFactor(); f != 1 {
		return fmt.Sprintf("%s; all loads × %.4g", v.unscaled(), f)
	}
	return v.unscaled()
}

func (v variant) unscaled() string {
	switch v.Kind {
	case WheelFactors:
		return v.factorWords() + v.unsprungWords()
	case ContactForces:
		var named []string
		for i, f := range v.Contact {
			if f != nil {
				named = append(named, CornerNames[i])
			}
		}
		return "stated at " + strings.Join(named, ", ") + v.unsprungWords()
	case SpringForces:
		return "load of the springs, " + v.damperWords() + v.unsprungWords()
	}
	var parts []string
	switch ax := v.Acceleration[0]; {
	case ax < 0:
		parts = append(parts, fmt.Sprintf("slowing at %.4g g", -ax))
	case ax > 0:
		parts = append(parts, fmt.Sprintf("gaining speed at %.4g g", ax))
	}
	if ay := v.Acceleration[1]; ay != 0 {
		turn := "left"
		if ay < 0 {
			turn = "right"
		}
		parts = append(parts, fmt.Sprintf("%s turn at %.4g g", turn, math.Abs(ay)))
	}
	return strings.Join(append(parts, fmt.Sprintf("%.4g m/s", v.Speed)), ", ") + v.unsprungWords()
}

// factorWords names the parts of wheel factors that are not zero.
func (v variant) factorWords() string {
	names := [3][2]string{{"forward", "rearward"}, {"inward", "outward"}, {"up", "down"}}
	var parts []string
	for _, i := range []int{2, 0, 1} {
		if f := v.Factors[i]; f > 0 {
			parts = append(parts, fmt.Sprintf("%.4g %s", f, names[i][0]))
		} else if f < 0 {
			parts = append(parts, fmt.Sprintf("%.4g %s", -f, names[i][1]))
		}
	}
	if parts == nil {
		return "no contact force"
	}
	words := "static wheel load × " + strings.Join(parts, ", ")
	switch v.side {
	case +1:
		return words + ", left wheels; right wheels at rest"
	case -1:
		return words + ", right wheels; left wheels at rest"
	}
	return words
}

// unsprungWords name an acceleration of the unsprung masses that the case states.
func (v variant) unsprungWords() string {
	if v.Unsprung == nil {
		return ""
	}
	return fmt.Sprintf(", unsprung mass at [%.4g, %.4g, %.4g] g", v.Unsprung.X, v.Unsprung.Y, v.Unsprung.Z)
}

// damperWords name the speeds of the dampers, and the wheels of which a case speaks.
func (v variant) damperWords() string {
	d := v.Damper
	if d.Of == [NumCorners]bool{true, true, true, true} {
		return "damper speed " + eachWheel(d.Speed, "m/s")
	}
	var out []string
	for i, of := range d.Of {
		if of {
			out = append(out, cornerWords(i)+" damper "+signed(d.Speed[i], "m/s"))
		}
	}
	return strings.Join(out, ", ") + "; the other wheels at rest"
}
