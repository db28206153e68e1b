package compare

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members/sizing"
)

// Remarks say what the numbers of a comparison are and leave out.
func (c Comparison) Remarks() []string {
	out := []string{
		fmt.Sprintf("the tube needed at a reserve factor of %g: %s; a dash where nothing loads the member, nothing carries, or it is no round tube of metal", c.Reserve, c.Measure),
		"masses of links are those of the bare sections between joint centres, without ends; their heights are those of the middles, above the contact point",
		"frontal area: the links of one corner, each as wide as its section, what lies behind another counted once; streamlined sections are taken to lie along the flow, rectangular ones to show their greater side; ends, rocker, bodywork and the wheel are left out",
		"travel ratio: of the drawn position alone, both wheels of the axle alike, from the virtual work of an upward force on a rolling wheel: shortening of the spring, or turn of the torsion bar, per rise of the wheel",
		fmt.Sprintf("what changes: differences of less than %g %% of the largest member force of the two cars, or of a reserve factor, are left out as rounding, and so are reserve factors above %g", 100*Noise, 1/Noise),
		"rises and falls are changes of size; the comparison ends with the numbers and weighs them against nothing",
	}
	var without []string
	for i, car := range c.Cars {
		for j, axle := range car.Axles {
			if !axle.Masses.Given {
				without = append(without, Letter(i)+" "+cases.AxleNames[j])
			}
		}
	}
	if len(without) > 0 {
		out = append(out, "no inboard parts are given in the car file, and their mass is left out: "+strings.Join(without, ", "))
	}
	return append(append(out, c.Doubts...), c.walls()...)
}

// walls says what no check knows of the walls of the tubes needed.
func (c Comparison) walls() (out []string) {
	slender := map[string]bool{}
	for _, car := range c.Cars {
		for i, corner := range car.Corners {
			for j, m := range corner.Members {
				if m.Need == nil {
					continue
				}
				if class, ok := m.Need.Strut.WallClass(); ok && !class.Holds() {
					slender[cases.AxleNames[i/2]+" "+loads.LinkNames[j]] = true
				}
			}
		}
	}
	if c.ThinWalls() {
		out = append(out, ThinWalls)
	}
	if names := slices.Sorted(maps.Keys(slender)); len(names) > 0 {
		out = append(out, "tubes needed with a wall of class 4 (EN 1993-1-1:2005, Table 5.2), which may buckle before it yields and needs a check as a shell: "+strings.ReplaceAll(strings.Join(names, ", "), "_", " "))
	}
	return out
}

// ThinWalls is the remark on tubes needed that have a thin wall.
const ThinWalls = "tubes needed: " + sizing.ThinRemark

// ThinWalls tells whether a tube needed has a thin wall.
func (c Comparison) ThinWalls() bool {
	for _, car := range c.Cars {
		for _, corner := range car.Corners {
			for _, m := range corner.Members {
				if m.Need != nil && m.Need.Tube.Wall < sizing.ThinWall {
					return true
				}
			}
		}
	}
	return false
}

// Letter names a car of a comparison: A for the first.
func Letter(car int) string { return string(rune('A' + car)) }
