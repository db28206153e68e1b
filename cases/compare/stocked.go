package compare

import (
	"fmt"

	"sixlink/cases"
	"sixlink/members/stock"
)

// Stocked is a Sizer: the lightest tubes of a stock, as cases.Size chooses them.
type Stocked struct {
	List     stock.List
	Limits   stock.Limits
	Separate bool // every member has a tube of its own; otherwise both legs of a wishbone share
}

// Measure says what the tubes are.
func (s Stocked) Measure() string {
	legs := "both legs of a wishbone share"
	if s.Separate {
		legs = "each member has its own"
	}
	return "the lightest tube of the stock " + s.List.Name + " with which the member and its ends carry, of the material of the file; left and right share, " + legs +
		"; where a wishbone carries the rod, with the forces that those tubes bring about"
}

// Needs sizes the car.
func (s Stocked) Needs(r *cases.Results, reserve float64) (Needs, error) {
	sized, err := cases.Size(r.Car, cases.Sizing{Stock: s.List, Limits: s.Limits, Target: reserve, Separate: s.Separate})
	if err != nil {
		return Needs{}, err
	}
	out := Needs{Doubts: []string{s.List.Remark}}
	if !r.Car.Mirrors() {
		out.Doubts = append(out.Doubts, "tubes needed: a right-hand member to which the car file gives a section of its own does not share with the left")
	}
	for i := range out.Tubes {
		for j := range out.Tubes[i] {
			if size := sized.Chosen(i, j); size != nil {
				out.Tubes[i][j] = &Need{size.Tube, sized.After.Corners[i].Members[j].Strut}
			}
		}
	}
	for _, settled := range sized.Settled {
		if settled != nil && !settled.Complete {
			out.Doubts = append(out.Doubts, fmt.Sprintf("tubes needed where a wishbone carries the rod: the search for lighter ones ended after %d combinations; a lighter one may be left", settled.Tried))
		}
	}
	return out, nil
}
