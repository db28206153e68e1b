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

// A Spectrum is what a detail sees in a lap: cycles of stress by range and mean, load
// factor included; of the worst fibre where several are followed.
type Spectrum struct {
	Cells  *count.Matrix // MPa, cycles a lap
	CutOff float64       // range below which a cycle does no damage, MPa; 0: there is none
	Small  float64       // cycles a lap below it, which are in no cell
}

// A Class is the cycles whose ranges lie between two limits, whatever their means.
type Class struct {
	From, To float64 // MPa, from the cut-off on; To belongs to the class above
	Cycles   float64 // a lap
	Above    float64 // cycles a lap of this class and of all above it
}

// Classes are the ranges of the cells, from the smallest to the largest, empty ones between
// them included. Where they would be more than so many, pairs of bins go together.
func (s *Spectrum) Classes(most int) (out []Class) {
	if s.Cells == nil {
		return nil
	}
	width := s.Cells.Range
	for {
		out = out[:0]
		for c := range s.Cells.Cells {
			at := int(c.RangeLow / width)
			for len(out) <= at {
				out = append(out, Class{From: float64(len(out)) * width, To: float64(len(out)+1) * width})
			}
			out[at].Cycles += c.Count
		}
		for len(out) > 0 && out[0].Cycles == 0 {
			out = out[1:]
		}
		if len(out) <= most {
			break
		}
		width *= 2
	}
	if len(out) > 0 {
		out[0].From = max(out[0].From, s.CutOff)
	}
	sum := 0.0
	for i := len(out) - 1; i >= 0; i-- {
		sum += out[i].Cycles
		out[i].Above = sum
	}
	return out
}
