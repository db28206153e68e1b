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

// directionNames are those words, in the order in which a choice offers them.
var directionNames = []string{"forward", "rearward", "left", "right", "up", "down"}

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

// back takes a vector of ISO 8855 into the axes of the file.
func (t turn) back(v r3.Vec) (out [3]float64) {
	of := [3]float64{v.X, v.Y, v.Z}
	for i, axis := range t.axis {
		out[i] = t.sign[i]*of[axis] + 0
	}
	return out
}

// String says the axes in words: "x rearward, y right, z up".
func (t turn) String() string {
	var words []string
	for i, name := range xyz {
		for _, word := range directionNames {
			if d := directions[word]; d.axis == t.axis[i] && d.sign == t.sign[i] {
				words = append(words, name+" "+word)
			}
		}
	}
	return strings.Join(words, ", ")
}

// oneLine is what to do where two axes run along the same line.
const oneLine = "give each of forward or rearward, left or right, up or down to one of x, y and z"

// turnAlong returns the turn of axes that run in these directions; where two run along the
// same line, clash is the second and first the other.
func turnAlong(words [3]string) (t turn, clash, first int) {
	runs := map[int]int{} // along each axis of ISO 8855: which axis of the file
	for i, word := range words {
		d := directions[word]
		if other, taken := runs[d.axis]; taken {
			return iso, i, other
		}
		runs[d.axis] = i
		t.axis[i], t.sign[i] = d.axis, d.sign
	}
	return t, -1, -1
}

// turnOf reads axes; false: they could not be read.
func (r *reader) turnOf(it *item) (turn, bool) {
	var words [3]string
	for i, name := range xyz {
		if !it.at(name).good {
			return iso, false
		}
		words[i] = it.at(name).text
	}
	t, clash, first := turnAlong(words)
	if clash >= 0 {
		r.refuse(it.at(xyz[clash]), xyz[clash]+" and "+xyz[first]+" run along the same line", oneLine)
	}
	return t, clash < 0
}

// axes reads the axes of the file, and says in the car what they are unless they are
// those of ISO 8855.
func (b *builder) axes(it *item) {
	b.turn = iso
	if !it.given {
		return
	}
	t, ok := b.turnOf(it)
	if !ok {
		b.lost = true
		return
	}
	if t == iso {
		return
	}
	b.turn = t
	b.car.Axes = t.String()
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
