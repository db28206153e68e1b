package compare

import (
	"sixlink/cases"
	"sixlink/members"
	"sixlink/members/sizing"
	"sixlink/members/stock"
)

// Stocked is a Sizer: the lightest tube of a stock, within limits.
type Stocked struct {
	List   stock.List
	Limits stock.Limits
}

// Measure says what the tubes are.
func (s Stocked) Measure() string {
	return "the lightest tube of the stock " + s.List.Name + " that carries, of the material of the file, the forces as they are (where a wishbone carries the rod, other tubes would share its load otherwise)"
}

// Remarks are those of the stock.
func (s Stocked) Remarks() []string { return []string{s.List.Remark} }

// Need tries the tubes of the stock, the lightest first.
func (s Stocked) Need(r *cases.Results, corner, link int, reserve float64) (Need, bool) {
	m := r.Corners[corner].Members[link]
	if !sizable(m) {
		return Need{}, false
	}
	for _, o := range sizing.Options(s.List, s.Limits, []members.Strut{m.Strut}) {
		if strut := o.Struts[0]; sizing.Carries(lowest(r, m.Loads, strut), reserve) {
			return Need{o.Size.Tube, strut}, true
		}
	}
	return Need{}, false
}
