package studies

import (
	"fmt"
	"math"
	"strconv"

	"gonum.org/v1/gonum/spatial/r3"
)

// MostPoints bounds a range and a grid, so that all of its points, with the text of every
// form of output, take about a gigabyte of memory at most.
const MostPoints = 40_000

// An Axis is one thing that varies: a value of the car file, or an end that moves along
// a line or an arc.
type Axis struct {
	Name   string    `json:"name"`  // the path of the value, or of the end that moves
	Unit   string    `json:"unit"`  // of Values
	Paths  []string  `json:"paths"` // of the values that change
	Base   []float64 `json:"base"`  // of the values at those paths, as the file has them
	Values []float64 `json:"values"`

	Line *r3.Vec `json:"line,omitempty"` // the direction of a line, in the axes of the file
	Arc  *Arc    `json:"arc,omitempty"`
}

// An Arc is a circle about an axis, in the axes of the file. A turn is positive by the
// right-hand rule about the direction of the axis on the car: the same turn of the car's
// parts whatever the axes in which the file is drawn.
type Arc struct {
	Through, Axis r3.Vec
	LeftHanded    bool `json:",omitempty"` // the axes of the file
}

// Range returns the values from one to another in equal steps; the last is the one that
// is not past the end.
func Range(from, to, step float64) ([]float64, error) {
	switch n := (to - from) / step; {
	case math.IsNaN(n) || math.IsInf(n, 0):
		return nil, fmt.Errorf("the step is %g: give a step other than 0", step)
	case n < 0:
		return nil, fmt.Errorf("steps of %g from %g lead away from %g: change the sign of the step", step, from, to)
	case n >= MostPoints:
		return nil, fmt.Errorf("%.0f steps are more than %d: give a longer step", n, MostPoints)
	}
	var out []float64
	for i := range int((to-from)/step*(1+1e-12)+1e-9) + 1 {
		out = append(out, tidy(from+float64(i)*step))
	}
	return out, nil
}

// tidy takes the rounding of a sum off a number: twelve digits are kept.
func tidy(x float64) float64 {
	out, _ := strconv.ParseFloat(strconv.FormatFloat(x, 'g', 12, 64), 64)
	return out + 0
}

// put sets the values at the paths of an axis for one of its Values.
func (a Axis) put(dst []float64, v float64) {
	var p r3.Vec
	if len(a.Base) == 3 {
		p = r3.Vec{X: a.Base[0], Y: a.Base[1], Z: a.Base[2]}
	}
	switch {
	case a.Line != nil && v != 0:
		p = r3.Add(p, r3.Scale(v, r3.Unit(*a.Line)))
	case a.Arc != nil && v != 0:
		angle := v * math.Pi / 180
		if a.Arc.LeftHanded { // the formula turns the other way there
			angle = -angle
		}
		turn := r3.NewRotation(angle, a.Arc.Axis)
		p = r3.Add(a.Arc.Through, turn.Rotate(r3.Sub(p, a.Arc.Through)))
	case a.Line == nil && a.Arc == nil:
		dst[0] = v
		return
	}
	dst[0], dst[1], dst[2] = p.X, p.Y, p.Z
}
