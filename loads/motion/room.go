package motion

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
)

// Between returns the distance between the axes of two links, joint to joint, mm. Of the
// closest points of two lines each is moved into its link, and then the other after it:
// Ericson, Real-Time Collision Detection, 5.1.9, from memory.
//
//	p = a + s·u, q = b + t·v:  s = ((u·v)(v·w) − (v·v)(u·w))/((u·u)(v·v) − (u·v)²),  w = a − b
func Between(a, b loads.Link) float64 {
	u, v, w := r3.Sub(a.Inner, a.Outer), r3.Sub(b.Inner, b.Outer), r3.Sub(a.Outer, b.Outer)
	uu, vv, uv, uw, vw := r3.Norm2(u), r3.Norm2(v), r3.Dot(u, v), r3.Dot(u, w), r3.Dot(v, w)
	s := 0.0
	if d := uu*vv - uv*uv; d > nearlyParallel*uu*vv {
		s = within((uv*vw - vv*uw) / d)
	}
	t := (uv*s + vw) / vv
	if t != within(t) {
		t = within(t)
		s = within((uv*t - uw) / uu)
	}
	return r3.Norm(r3.Add(w, r3.Sub(r3.Scale(s, u), r3.Scale(t, v))))
}

// nearlyParallel is the square of the sine below which lines count as parallel.
const nearlyParallel = 1e-14

func within(x float64) float64 { return math.Max(0, math.Min(1, x)) }
