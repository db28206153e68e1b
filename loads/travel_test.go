package loads

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// A pose is a small turn (rotation vector, rad) and shift (mm) of the upright.
type pose [6]float64

func (p pose) move(at, about r3.Vec) r3.Vec {
	turned := turnedBy(r3.Sub(at, about), vec(p[0], p[1], p[2]))
	return r3.Add(about, r3.Add(turned, vec(p[3], p[4], p[5])))
}

// turnedBy turns a vector by a rotation vector.
func turnedBy(v, by r3.Vec) r3.Vec {
	if r3.Norm(by) == 0 {
		return v
	}
	return r3.NewRotation(r3.Norm(by), by).Rotate(v)
}

// withTriangle moves a point that is rigid with a triangle from its old to its new place.
func withTriangle(p, a, b, c, newC r3.Vec) r3.Vec {
	frame := func(c r3.Vec) (x, y, z r3.Vec) {
		x = r3.Unit(r3.Sub(b, a))
		z = r3.Unit(r3.Cross(x, r3.Sub(c, a)))
		return x, r3.Cross(z, x), z
	}
	x, y, z := frame(c)
	d := r3.Sub(p, a)
	u, v, w := frame(newC)
	return r3.Add(a, r3.Add(r3.Scale(r3.Dot(d, x), u), r3.Add(r3.Scale(r3.Dot(d, y), v), r3.Scale(r3.Dot(d, z), w))))
}

// stretch returns by how much each link of a corner would change its length, mm, with
// the upright in a pose and the rocker turned.
func stretch(c Corner, p pose, turn float64) (out [NumLinks]float64) {
	for i, l := range c.Links {
		outer, inner := p.move(l.Outer, c.Centre), l.Inner
		if i == Rod {
			inner = r3.Add(c.Rocker.Pivot, turnedBy(r3.Sub(inner, c.Rocker.Pivot), r3.Scale(turn, r3.Unit(c.Rocker.Axis))))
			if front, rear, carried := c.Carrier.Legs(); carried {
				joint := c.Links[front].Outer
				outer = withTriangle(l.Outer, c.Links[front].Inner, c.Links[rear].Inner, joint, p.move(joint, c.Centre))
			}
		}
		out[i] = r3.Norm(r3.Sub(outer, inner)) - l.Length()
	}
	return out
}

// posed finds the pose of the upright for a turn of the rocker, all links rigid, by
// Newton's method: geometry alone, no statics.
func posed(t testing.TB, c Corner, turn float64) (p pose) {
	for range 20 {
		off := stretch(c, p, turn)
		j := mat.NewDense(NumLinks, 6, nil)
		for k := range p {
			const h = 1e-6
			up, down := p, p
			up[k] += h
			down[k] -= h
			a, b := stretch(c, up, turn), stretch(c, down, turn)
			for i := range off {
				j.Set(i, k, (a[i]-b[i])/(2*h))
			}
		}
		var step mat.VecDense
		if err := step.SolveVec(j, mat.NewVecDense(NumLinks, off[:])); err != nil {
			t.Fatal(err)
		}
		for k := range p {
			p[k] -= step.AtVec(k)
		}
	}
	off := stretch(c, p, turn)
	if worst := mat.Norm(mat.NewVecDense(NumLinks, off[:]), math.Inf(1)); !(worst <= 1e-9) {
		t.Fatalf("links are off by %g mm", worst)
	}
	return p
}

// rise is how far the contact point of a rolling wheel rises with the upright in a pose:
// the wheel does not turn with the upright about the spin axis.
func (p pose) rise(c Corner) float64 {
	spin, turned := r3.Unit(c.Spin), vec(p[0], p[1], p[2])
	turned = r3.Sub(turned, r3.Scale(r3.Dot(spin, turned), spin))
	return pose{turned.X, turned.Y, turned.Z, p[3], p[4], p[5]}.move(c.Contact, c.Centre).Z - c.Contact.Z
}

// The travel ratio from virtual work is that of the moved linkage: the rocker turned a
// little both ways, the wheel's rise and the spring's length taken from the geometry.
func TestTravelIsThatOfTheLinkage(t *testing.T) {
	everyCarrier(t, func(t *testing.T, c Corner) {
		const turn = 1e-3
		c.Contact, c.Spin = r3.Add(c.Contact, vec(25, 8, 0)), vec(0.02, 1, -0.06) // trail, offset, toe and camber
		spring := *c.Rocker.Spring
		length := func(turn float64) float64 {
			on := r3.Add(c.Rocker.Pivot, turnedBy(r3.Sub(spring.Rocker, c.Rocker.Pivot), r3.Scale(turn, r3.Unit(c.Rocker.Axis))))
			return r3.Norm(r3.Sub(on, spring.Far))
		}
		up, down := posed(t, c, turn), posed(t, c, -turn)
		rise := up.rise(c) - down.rise(c)
		got, ok := mustStatics(t, c).Travel()
		if want := -(length(turn) - length(-turn)) / rise; !ok || got.Bar || !near(got.Ratio, want, 1e-5) || !near(got.Force*got.Ratio, 1, 1e-12) {
			t.Errorf("spring: %+v, want %.8f mm/mm", got, want)
		}
		bar := *c.Rocker
		bar.Spring, c.Rocker = nil, &bar
		got, ok = mustStatics(t, c).Travel()
		if want := math.Abs(2 * turn / rise); !ok || !got.Bar || !near(got.Ratio, want, 1e-5*want) || !near(got.Force*got.Ratio, 1, 1e-12) {
			t.Errorf("torsion bar: %+v, want %.8f rad/mm", got, want)
		}
	})
}

// The mirror image travels alike; in a larger car of the same shape a spring too, and a
// torsion bar turns less for the same rise.
func TestTravelMirroredAndScaled(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawStatics(t)
		want, ok := s.Travel()
		image, there := s.mirrored(t).Travel()
		if ok != (s.Corner.Rocker != nil) || there != ok || !near(image.Ratio, want.Ratio, 1e-9*math.Abs(want.Ratio)) || image.Bar != want.Bar {
			t.Fatalf("%+v %v, mirror image %+v %v", want, ok, image, there)
		}
		if !ok {
			return
		}
		k := rapid.Float64Range(0.3, 3).Draw(t, "scale")
		larger := mapped(s.Corner, func(p r3.Vec) r3.Vec { return r3.Scale(k, p) }, func(d r3.Vec) r3.Vec { return d })
		prepared, err := NewStatics(larger)
		if err != nil {
			t.Fatal(err)
		}
		grown, _ := prepared.Travel()
		ratio := want.Ratio
		if want.Bar {
			ratio /= k
		}
		if !near(grown.Ratio, ratio, 1e-8*math.Abs(ratio)) {
			t.Errorf("%g times as large: %g, want %g", k, grown.Ratio, ratio)
		}
	})
}
