package variants

import "sixlink/cases"

// CarOf returns the car of a variant, in an engine's copy.
func CarOf(e *Engine, x []float64, apply func(*cases.Car, []float64)) cases.Car {
	apply(&e.car, x)
	refresh(&e.car)
	return e.car
}
