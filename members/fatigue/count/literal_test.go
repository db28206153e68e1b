package count

import "math"

// The rules of ASTM E1049-85 as they are written, on a list of all reversals: three points
// and a starting point, where the counter looks at four points and keeps a residue.

// literalReversals drops every point that is not a peak, a valley or an end.
func literalReversals(samples []float64) []float64 {
	out := append([]float64(nil), samples...)
	for i := 1; i < len(out); {
		middle := i+1 < len(out) && (out[i-1] < out[i] && out[i] < out[i+1] || out[i-1] > out[i] && out[i] > out[i+1])
		if out[i] == out[i-1] || middle {
			out = append(out[:i], out[i+1:]...)
			i = max(i-1, 1)
			continue
		}
		i++
	}
	return out
}

// literalOnce is 5.4.4. The first point that is left is always the starting point S: only
// rule 5 moves it, and it discards the points before.
func literalOnce(samples []float64) (out []Cycle) {
	cycle := func(a, b, n float64) Cycle { return Cycle{Range: math.Abs(a - b), Mean: (a + b) / 2, Count: n} }
	var p []float64
	for _, next := range literalReversals(samples) { // rule 1
		p = append(p, next)
		for len(p) >= 3 { // rule 2
			a, b, c := p[len(p)-3], p[len(p)-2], p[len(p)-1]
			if math.Abs(c-b) < math.Abs(b-a) { // rule 3
				break
			}
			if len(p) == 3 { // rule 5: Y contains S
				out = append(out, cycle(a, b, 0.5))
				p = p[1:]
				continue
			}
			out = append(out, cycle(a, b, 1)) // rule 4
			p = append(p[:len(p)-3], c)
		}
	}
	for i := 1; i < len(p); i++ { // rule 6
		out = append(out, cycle(p[i-1], p[i], 0.5))
	}
	return out
}

// literalRepeated is 5.4.5: the history starts at its highest peak and ends there again,
// and every range that is counted is one cycle.
func literalRepeated(samples []float64) (out []Cycle) {
	if len(samples) == 0 {
		return nil
	}
	top := 0
	for i, x := range samples {
		if x > samples[top] {
			top = i
		}
	}
	var p []float64
	around := append(append([]float64(nil), samples[top:]...), samples[:top+1]...)
	for _, next := range literalReversals(around) {
		p = append(p, next)
		for len(p) >= 3 && math.Abs(p[len(p)-1]-p[len(p)-2]) >= math.Abs(p[len(p)-2]-p[len(p)-3]) {
			a, b, c := p[len(p)-3], p[len(p)-2], p[len(p)-1]
			out = append(out, Cycle{Range: math.Abs(a - b), Mean: (a + b) / 2, Count: 1})
			p = append(p[:len(p)-3], c)
		}
	}
	return out
}
