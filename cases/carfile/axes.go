package carfile

import (
	"strings"

	"gonum.org/v1/gonum/spatial/r3"
)

// A turn takes vectors from the axes of a file into ISO 8855, component by component.
type turn struct {
	axis [3]int     // the ISO 8855 axis along which each axis of the file runs
	sign [3]float64 // −1 where it runs the other way
}

// iso is the turn of a file that is drawn in ISO 8855.
var iso = turn{axis: [3]int{0, 1, 2}, sign: [3]float64{1, 1, 1}}

// directions are the words for the axes of ISO 8855 and for their opposites.
var directions = map[string]struct {
	axis int
	sign float64
}{
	"forward": {0, 1}, "rearward": {0, -1},
	"left": {1, 1}, "right": {1, -1},
	"up": {2, 1}, "down": {2, -1},
}

// vector turns a vector.
func (t turn) vector(v []float64) r3.Vec {
	var out [3]float64
	for i, x := range v {
		out[t.axis[i]] = t.sign[i]*x + 0 // + 0 makes a zero of a negative zero
	}
	return r3.Vec{X: out[0], Y: out[1], Z: out[2]}
}

// rightHanded tells whether x × y = z in the axes of the file.
func (t turn) rightHanded() bool {
	x, y, z := t.vector([]float64{1, 0, 0}), t.vector([]float64{0, 1, 0}), t.vector([]float64{0, 0, 1})
	return r3.Dot(r3.Cross(x, y), z) > 0
}

// RightHanded tells whether the axes of the file are right-handed.
func (f File) RightHanded() bool { return f.turn.rightHanded() }

// axes reads the axes of the file, and says in the car what they are unless they are
// those of ISO 8855.
func (b *builder) axes(it *item) {
	b.turn = iso
	if !it.given {
		return
	}
	var t turn
	var words []string
	runs := map[int]string{} // along each axis of ISO 8855: which axis of the file
	for i, name := range xyz {
		f := it.at(name)
		if !f.good {
			b.lost = true
			return
		}
		d := directions[f.text]
		if other, taken := runs[d.axis]; taken {
			b.refuse(f, name+" and "+other+" run along the same line", "give each of forward or rearward, left or right, up or down to one of x, y and z")
			b.lost = true
			return
		}
		runs[d.axis] = name
		t.axis[i], t.sign[i] = d.axis, d.sign
		words = append(words, name+" "+f.text)
	}
	if t == iso {
		return
	}
	b.turn = t
	b.car.Axes = strings.Join(words, ", ")
	b.doubt("every vector of the file, accelerations and contact forces included, was read in the axes " + b.car.Axes)
}

// vector returns a vector of the file in ISO 8855; zero where it could not be read.
func (b *builder) vector(it *item) r3.Vec {
	if !it.good || len(it.numbers) != 3 {
		return r3.Vec{}
	}
	return b.turn.vector(it.numbers)
}

// shortestAxis is the length below which a vector has no direction.
const shortestAxis = 1e-6

// axis returns a direction of the file in ISO 8855.
func (b *builder) axis(it *item) r3.Vec {
	v := b.vector(it)
	if it.good && it.given && r3.Norm(v) < shortestAxis {
		b.refuse(it, "the vector has no length", it.key.advice())
	}
	return v
}

// placed tells whether hardpoints could be read and their axes are known.
func (b *builder) placed(points ...*item) bool { return !b.lost && whole(points...) }
