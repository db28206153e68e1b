package reports

import (
	"math"
	"slices"

	"sixlink/loads/motion"
)

// thinned returns the positions that a text shows, by their indices: every travel and every
// rack where there are few, else every second, third … one of the longer of the two, the
// position drawn always among them.
func thinned(all []motion.Position) (out []int) {
	var travels, racks []float64
	for i := range all {
		travels, racks = grown(travels, all[i].Travel), grown(racks, all[i].Rack)
	}
	stepTravel, stepRack := 1, 1
	for {
		out = out[:0]
		for i := range all {
			if kept(travels, all[i].Travel, stepTravel) && kept(racks, all[i].Rack, stepRack) {
				out = append(out, i)
			}
		}
		switch long := len(travels)/stepTravel >= len(racks)/stepRack; {
		case len(out) <= mostLines || stepTravel > len(travels) && stepRack > len(racks):
			return out
		case long:
			stepTravel++
		default:
			stepRack++
		}
	}
}

func grown(values []float64, x float64) []float64 {
	if slices.Contains(values, x) {
		return values
	}
	return append(values, x)
}

// kept tells whether a value is among every so many of a list, counted both ways from the
// one nearest to 0.
func kept(values []float64, x float64, step int) bool {
	drawn := 0
	for i, v := range values {
		if math.Abs(v) < math.Abs(values[drawn]) {
			drawn = i
		}
	}
	return (slices.Index(values, x)-drawn)%step == 0
}
