package studies

import (
	"sixlink/cases"
	"sixlink/cases/variants"
	"sixlink/loads"
)

// Full judges by the whole check of the car of each sample.
func Full(car Maker) Judge {
	return func(x []float64, out *Outcome) {
		*out = Outcome{}
		c, err := car(x)
		var r cases.Results
		if err == nil {
			r, err = cases.Run(c)
		}
		if err != nil {
			out.Refused = oneLine(err)
			return
		}
		for i, corner := range r.Corners {
			for j, m := range corner.Members {
				out.put(i*loads.NumLinks+j, m.Judged)
			}
			out.put(numMembers+i, corner.Rocker)
		}
	}
}

func (o *Outcome) put(i int, j cases.Judged) {
	if f, ok := j.Governs(); ok {
		o.Reserve[i], o.Judged[i] = f.Reserve, true
	}
}

// Fast judges by an engine where the values are within what it can set, and by another
// judge where not. An engine does not judge rockers: it is for a car that says nothing of
// them.
func Fast(engine *variants.Engine, within func(x []float64) bool, other Judge) Judge {
	var e variants.Envelope
	return func(x []float64, out *Outcome) {
		if !within(x) {
			other(x, out)
			return
		}
		*out = Outcome{}
		engine.Evaluate(x, &e)
		if out.Refused = e.Refused; e.Refused != "" {
			return
		}
		for i := range e.Reserve {
			out.Reserve[i], out.Judged[i] = e.Reserve[i], e.Check[i] >= 0
		}
	}
}
