package loads

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"
)

// A Mechanism is the error for links that leave the upright, or a carrying
// wishbone, free or nearly free to move.
type Mechanism struct {
	Body    string  // the body that moves most: "upright" or "carrying wishbone"
	Turns   bool    // it turns about Axis; otherwise it slides along it
	Axis    r3.Vec  // unit vector
	Through r3.Vec  // a point on the axis of a turn, mm
	Pitch   float64 // advance along the axis, mm per radian
	Shares  [NumLinks]float64
	Cond    float64 // condition number of the scaled equations; +Inf where they are singular
}

// Error says what is left free and which links share the fault.
func (m *Mechanism) Error() string {
	motion := fmt.Sprintf("slide along (%s) in ISO 8855 axes", digits(m.Axis, 3))
	if m.Turns {
		motion = fmt.Sprintf("turn about the axis (%s) through (%s) mm in ISO 8855 axes", digits(m.Axis, 3), digits(m.Through, 1))
	}
	return fmt.Sprintf("the links leave the %s free to %s (condition number %.3g, limit %.0e): links that share the fault: %s",
		m.Body, motion, m.Cond, CondRefuse, m.blame())
}

// blame lists the links by their share, largest first.
func (m *Mechanism) blame() string {
	order := []int{0, 1, 2, 3, 4, 5}
	sort.SliceStable(order, func(a, b int) bool { return m.Shares[order[a]] > m.Shares[order[b]] })
	var out []string
	for _, i := range order {
		if m.Shares[i] >= 0.05 {
			out = append(out, fmt.Sprintf("%s %.2f", LinkNames[i], m.Shares[i]))
		}
	}
	return strings.Join(out, ", ")
}

func digits(v r3.Vec, n int) string {
	return fmt.Sprintf("%.*f, %.*f, %.*f", n, v.X, n, v.Y, n, v.Z)
}

// judge finds the condition of the equations and explains a corner past the limit.
// The left singular vector of the smallest singular value is the motion that the
// links resist least; the right one holds the share of each reaction in it.
func (s *Statics) judge(a *mat.Dense, f frame) error {
	var svd mat.SVD
	if !svd.Factorize(a, mat.SVDFull) {
		return fmt.Errorf("the equilibrium equations could not be factorised: check the hardpoints")
	}
	values := svd.Values(nil)
	last := len(values) - 1
	s.Cond = values[0] / values[last]
	if s.Cond <= CondRefuse { // false for NaN and +Inf
		return nil
	}
	var u, v mat.Dense
	svd.UTo(&u)
	svd.VTo(&v)
	m := &Mechanism{Cond: s.Cond}
	m.motion(mat.Col(nil, last, &u), f)
	for j, x := range s.fault(&v, last) {
		if r := s.reactions[j]; r.kind != joint {
			m.Shares[r.link] = math.Hypot(m.Shares[r.link], x)
		}
	}
	return m
}

// fault returns the share of each reaction in the motion left free, from the right
// singular vectors. In a redundant corner that is singular, the vectors of the motion
// and of the self-stress span one space: the self-stress is taken out.
func (s *Statics) fault(v *mat.Dense, last int) []float64 {
	stress := s.selfStress()
	var best []float64
	for j := last; j < len(s.reactions); j++ {
		x := mat.Col(nil, j, v)
		if stress != nil {
			floats.AddScaled(x, -floats.Dot(x, stress), stress)
		}
		if best == nil || floats.Norm(x, 2) > floats.Norm(best, 2) {
			best = x
		}
	}
	floats.Scale(1/floats.Norm(best, 2), best)
	return best
}

// selfStress returns the reactions that balance with no load, of unit size: opposite
// forces at the pick-ups of a carrying wishbone, along the line that joins them; nil
// for a rod on the upright.
func (s *Statics) selfStress() []float64 {
	front, rear, carried := s.Corner.Carrier.Legs()
	if !carried {
		return nil
	}
	apart := r3.Sub(s.Corner.Links[front].Inner, s.Corner.Links[rear].Inner)
	if r3.Norm(apart) == 0 {
		return nil
	}
	line := r3.Unit(apart)
	out := make([]float64, len(s.reactions))
	for j, r := range s.reactions {
		switch {
		case r.link == front && r.kind != joint:
			out[j] = r3.Dot(line, r.dir)
		case r.link == rear && r.kind != joint:
			out[j] = -r3.Dot(line, r.dir)
		}
	}
	floats.Scale(1/floats.Norm(out, 2), out)
	return out
}

// motion reads a virtual motion, six scaled components for each body, as a screw.
func (m *Mechanism) motion(twist []float64, f frame) {
	m.Body = "upright"
	if len(twist) > 6 {
		if floats.Norm(twist[6:], 2) > floats.Norm(twist[:6], 2) {
			m.Body, twist = "carrying wishbone", twist[6:]
		}
		twist = twist[:6]
	}
	shift := r3.Vec{X: twist[0], Y: twist[1], Z: twist[2]}
	turn := r3.Scale(1/f.length, r3.Vec{X: twist[3], Y: twist[4], Z: twist[5]})
	if r3.Norm(turn)*100*f.length < r3.Norm(shift) {
		m.Axis = forward(r3.Unit(shift))
		return
	}
	m.Turns = true
	m.Through = r3.Add(f.origin, r3.Scale(1/r3.Norm2(turn), r3.Cross(turn, shift)))
	m.Pitch = r3.Dot(turn, shift) / r3.Norm2(turn)
	m.Axis = forward(r3.Unit(turn))
}

// forward turns a direction so that its largest component is positive.
func forward(v r3.Vec) r3.Vec {
	largest := v.X
	for _, c := range []float64{v.Y, v.Z} {
		if math.Abs(c) > math.Abs(largest)+1e-9 {
			largest = c
		}
	}
	if largest < 0 {
		return r3.Scale(-1, v)
	}
	return v
}
