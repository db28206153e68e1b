package duty

import "sixlink/members/fatigue/count"

// Spectra are the cycles of each slot by range and mean, MPa; nil where a slot is there for
// a thicker tube.
type spectra []*count.Matrix

func (p *plan) newSpectra() spectra {
	out := make(spectra, len(p.slots))
	for i, s := range p.slots {
		if !p.judges[s.judge].thicker {
			out[i] = count.NewMatrix()
		}
	}
	return out
}

// join adds what the parts of a history hold, so many times a lap. They hold whole numbers,
// which add up alike in any order: the parts may be those of workers.
func (all spectra) join(parts []spectra, times float64) {
	for i, m := range all {
		if m == nil {
			continue
		}
		sum := count.NewMatrix()
		for _, p := range parts {
			sum.Join(p[i], 1)
		}
		m.Join(sum, times)
	}
}
