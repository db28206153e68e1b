package reports

import (
	"testing"

	"sixlink/loads/motion"
)

// Law: what is left of a grid of travels and racks is a grid again, with the position drawn
// in it: every rack that is shown has every travel that is shown.
func TestThinnedPositionsAreAGrid(t *testing.T) {
	for _, n := range [][2]int{{1, 1}, {9, 7}, {21, 5}, {5, 21}, {41, 41}, {101, 3}, {201, 1}, {1, 201}} {
		var all []motion.Position
		for rack := range n[1] {
			for travel := range n[0] {
				all = append(all, motion.Position{Travel: float64(5 * (travel - n[0]/2)), Rack: float64(2 * (rack - n[1]/2))})
			}
		}
		travels, racks, drawn := map[float64]bool{}, map[float64]bool{}, false
		shown := thinned(all)
		for _, i := range shown {
			travels[all[i].Travel], racks[all[i].Rack] = true, true
			drawn = drawn || all[i].Travel == 0 && all[i].Rack == 0
		}
		if len(shown) != len(travels)*len(racks) || !drawn || len(shown) > mostLines || 4*len(shown) < min(mostLines, len(all)) {
			t.Errorf("%v: %d positions of %d travels and %d racks, the one drawn %v", n, len(shown), len(travels), len(racks), drawn)
		}
	}
}
