package loads

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// The eyes of a rocker, in the order of every array and every report.
const (
	RodEye = iota
	SpringEye
	AntiRollEye
	ThirdEye
	NumEyes
)

// EyeNames are the names of the eyes in files and reports.
var EyeNames = [NumEyes]string{"rod", "spring", "anti_roll", "third"}

// An Eye is a point of the rocker, in the rocker's own plane through its pivot and
// square to its axis, with the force on the rocker there. Seen from the pivot, outward is
// towards the eye, across is square to that in the plane, along is along the axis:
// outward × across = along.
type Eye struct {
	Radius float64 // of the eye about the axis, mm
	Offset float64 // of the eye from the plane, positive where the axis points, mm

	// The force on the rocker, N.
	Outward, Across, Along float64
}

// A Section is the rocker cut through its pivot, square to the plane and to the line
// from the axis to one eye. It carries all that acts on the eyes on the far side of the
// cut from the rest of the rocker. Forces in N, moments in N·mm.
type Section struct {
	Outward, Across, Along float64 // sums of the forces of the eyes

	InPlane float64 // moment about the axis
	Lift    float64 // moment about the cut of the forces along the axis: force times distance from the cut
	Offset  float64 // largest distance of an eye from the plane, mm, not negative
	Eyes    []int   // which eyes, in order
}

// rockerPlace returns the point of an eye and the force on the rocker there; false:
// the rocker has no such eye.
func (s *Statics) rockerPlace(f Forces, eye int) (at, force r3.Vec, ok bool) {
	rk := s.Corner.Rocker
	switch {
	case rk == nil || f.Rocker == nil:
	case eye == RodEye:
		return s.Corner.Links[Rod].Inner, f.Chassis[Rod], true
	case eye == SpringEye && rk.Spring != nil:
		return rk.Spring.Rocker, r3.Scale(-1, f.Rocker.SpringOn), true
	case eye == AntiRollEye && rk.AntiRoll != nil:
		return rk.AntiRoll.Rocker, r3.Scale(-1, f.Rocker.AntiRollOn), true
	case eye == ThirdEye && rk.Third != nil:
		return rk.Third.Rocker, r3.Scale(-1, f.Rocker.ThirdOn), true
	}
	return r3.Vec{}, r3.Vec{}, false
}

// A rockerFrame is the rocker's own: outward, across and along.
type rockerFrame struct{ outward, across, along r3.Vec }

func (s *Statics) rockerFrame(at r3.Vec) (fr rockerFrame, radius, offset float64) {
	from, axis := r3.Sub(at, s.Corner.Rocker.Pivot), s.rocker.axis
	offset = r3.Dot(from, axis)
	in := r3.Sub(from, r3.Scale(offset, axis))
	radius = r3.Norm(in)
	fr.along, fr.outward = axis, r3.Scale(1/radius, in)
	fr.across = r3.Cross(axis, fr.outward)
	return fr, radius, offset
}

func (fr rockerFrame) parts(v r3.Vec) (outward, across, along float64) {
	return r3.Dot(v, fr.outward), r3.Dot(v, fr.across), r3.Dot(v, fr.along)
}

// Eye returns the place of an eye in the rocker's own frame, and the force on the
// rocker resolved into it; false: the corner has no such eye.
func (s *Statics) Eye(f Forces, eye int) (Eye, bool) {
	at, force, ok := s.rockerPlace(f, eye)
	if !ok {
		return Eye{}, false
	}
	fr, radius, offset := s.rockerFrame(at)
	e := Eye{Radius: radius, Offset: offset}
	e.Outward, e.Across, e.Along = fr.parts(force)
	return e, true
}

// Section returns what the cut through the pivot square to the line to an eye
// carries: the eye by itself, or with side all eyes on its side of the cut. The corner
// must have the eye.
//
//	N = Σ F·e,  V = Σ F·t,  W = Σ F·a,  M = Σ (r×F)·a,  Q = Σ (r·e)·(F·a)
//
// M and Q are 0 where they are no more than the rounding of Σ |r|·|F|. r is from the pivot to an eye, a the axis, e towards the eye of the cut, t = a×e.
func (s *Statics) Section(f Forces, eye int, side bool) Section {
	at, _, _ := s.rockerPlace(f, eye)
	fr, _, _ := s.rockerFrame(at)
	var out Section
	size := 0.0
	for i := range NumEyes {
		at, force, ok := s.rockerPlace(f, i)
		from := r3.Sub(at, s.Corner.Rocker.Pivot)
		outward, _, offset := fr.parts(from)
		if !ok || i != eye && (!side || !(outward > 0)) {
			continue
		}
		n, v, w := fr.parts(force)
		out.Outward, out.Across, out.Along = out.Outward+n, out.Across+v, out.Along+w
		out.InPlane += r3.Dot(r3.Cross(from, force), fr.along)
		out.Lift += outward * w
		out.Offset = math.Max(out.Offset, math.Abs(offset))
		out.Eyes = append(out.Eyes, i)
		size += r3.Norm(from) * r3.Norm(force)
	}
	out.InPlane, out.Lift = unrounded(out.InPlane, size), unrounded(out.Lift, size)
	return out
}

// rounding is the share of what was summed up below which a sum is none.
const rounding = 1e-12

// unrounded returns a sum of moments, or 0 where it is no more than the rounding of what
// was summed up: moments that cancel leave no load to be judged. One that is not a number
// stays.
func unrounded(sum, size float64) float64 {
	if math.Abs(sum) <= rounding*size {
		return 0
	}
	return sum
}

// BearingParts returns the radial forces of the two bearings on the rocker, resolved
// outward to the rod's eye and across, N. The corner must have a rocker.
func (s *Statics) BearingParts(f Forces) (outward, across [2]float64) {
	fr, _, _ := s.rockerFrame(s.Corner.Links[Rod].Inner)
	for i, b := range f.Rocker.Bearings {
		outward[i], across[i], _ = fr.parts(b)
	}
	return outward, across
}
