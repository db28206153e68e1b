package studies

import (
	"fmt"

	"sixlink/cases"
	"sixlink/cases/variants"
	"sixlink/loads"
	"sixlink/members/sizing"
)

// Sized is a Sizer that chooses from a stock.
func Sized(o cases.Sizing) Sizer {
	return func(c cases.Car) (cases.Car, error) {
		s, err := cases.Size(c, o)
		if err != nil {
			return c, err
		}
		for _, g := range s.Groups {
			if g.Kept == "" && g.Size == nil {
				return c, fmt.Errorf("no tube of the stock carries the %s %s", cases.AxleNames[g.Axle], loads.LinkNames[g.Links[0]])
			}
		}
		return s.After.Car, nil
	}
}

// SizedFrom says from which stock, for every report of what was sized.
func SizedFrom(o cases.Sizing) cases.Note {
	text := fmt.Sprintf("tubes are the lightest of the stock %s that carry every case with a reserve factor of %g at least; both legs of a wishbone share one, and so do left and right where the file has one for both", o.Stock.Name, o.Target)
	if o.Limits.Wall.Min < sizing.ThinWall {
		text += "; " + sizing.ThinRemark
	}
	if o.Stock.Remark != "" {
		text += "; " + o.Stock.Remark
	}
	return cases.Note{Severity: cases.Remark, Text: text}
}

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
