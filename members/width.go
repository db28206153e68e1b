package members

import "math"

// Width returns how wide a section is across the flow, mm: the diameter of a round
// one, the thickness of a streamlined one, which is taken to lie along the flow, the
// greater side of a rectangular one, whose position is not known. Of an own section,
// whose outline is not known, it is the diameter of the solid bar of its area.
func (s Strut) Width() float64 { return s.size("thickness") }

// Breadth returns how broad a section is where it is broadest, mm, as Width does.
func (s Strut) Breadth() float64 { return s.size("") }

// size returns the dimension of that name where the section has it, else the greatest
// outer one.
func (s Strut) size(name string) float64 {
	if s.Shape() == "own" {
		return math.Sqrt(4 * s.Area() / math.Pi)
	}
	widest := 0.0
	for _, d := range s.Size() {
		switch {
		case d.Name == name:
			return d.Value
		case outer[d.Name]:
			widest = math.Max(widest, d.Value)
		}
	}
	return widest
}

// outer are the names of outer dimensions.
var outer = map[string]bool{"od": true, "diameter": true, "side": true, "width": true, "height": true, "chord": true}
