package check

import "math"

// Tie is how much lower a reserve factor must be to govern in place of an earlier
// one: more than the rounding of two checks that say the same.
const Tie = 1e-12

// Lower tells whether a reserve factor governs in place of another; one that is not a
// number does.
func Lower(a, b float64) bool {
	if math.IsNaN(a) || math.IsNaN(b) {
		return !math.IsNaN(b)
	}
	return a < b*(1-Tie)
}
