package carfile

import (
	"fmt"
	"slices"
	"strconv"

	"sixlink/cases"
	"sixlink/loads"
)

// factorRange holds the factors on strengths and loads: our own limits.
var factorRange = Range{Max: 100, Above: true}

// factor returns the value of a path that names a factor.
func (f File) factor(path string, steps []step) (Value, bool) {
	v := Value{Path: path, Base: 1, Range: factorRange, Relative: true, Dimension: Share, steps: steps}
	last := steps[len(steps)-1].text
	switch {
	case last == "strength" && len(steps) >= 4:
		v.does = f.strengthens(steps)
		return v, v.does != nil
	case len(steps) == 3 && last == "load" && steps[0].text == "cases":
		for i, c := range f.Car.Cases {
			if c.Name == steps[1].text || strconv.Itoa(i) == steps[1].text {
				v.Path = f.named(fmt.Sprintf("cases[%d].load", i))
				v.does = func(c *cases.Car, factor float64) { c.Cases[i].Scale(factor) }
				return v, true
			}
		}
	}
	return Value{}, false
}

// strengthens returns what multiplies the strengths of a member: of both sides where the
// file has one part for both; nil: the path is none of a member.
func (f File) strengthens(steps []step) func(c *cases.Car, factor float64) {
	axle, of, right := slices.Index(cases.AxleNames[:], steps[0].text), steps[1:], false
	if len(of) == 4 && of[0].text == "right" {
		of, right = of[1:], true
	}
	if len(of) != 3 || of[0].text != "members" || axle < 0 {
		return nil
	}
	link := slices.Index(loads.LinkNames[:], of[1].text)
	if link < 0 {
		return nil
	}
	given := f.top.at(cases.AxleNames[axle]).at("right")
	own := ownPart(given, of[1].text)
	if right && !own {
		return nil
	}
	return func(c *cases.Car, factor float64) {
		a := &c.Axles[axle]
		if own {
			a.Unpair()
		}
		if !right {
			a.Side.Parts[link].Strengthen(factor)
		}
		if a.Right != nil && (right || !own) {
			a.Right.Parts[link].Strengthen(factor)
		}
	}
}
