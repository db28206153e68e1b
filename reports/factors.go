package reports

import "fmt"

// factors are the design factors in words; the fitting factor is among them where
// something is given in whose capacity it stands.
func (r Report) factors() string {
	f := r.Car.Factors
	text := fmt.Sprintf("yield %g, ultimate %g, buckling %g", f.Yield, f.Ultimate, f.Buckling)
	if r.Car.HasEnds() {
		text += fmt.Sprintf(", and fitting %g on top at joints", f.Fitting)
	}
	return text
}

func (r Report) toFactors() jsonFactors {
	f := r.Car.Factors
	out := jsonFactors{Yield: f.Yield, Ultimate: f.Ultimate, Buckling: f.Buckling}
	if r.Car.HasEnds() {
		out.Fitting = &f.Fitting
	}
	return out
}
