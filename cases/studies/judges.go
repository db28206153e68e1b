package studies

import (
	"sixlink/cases"
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
