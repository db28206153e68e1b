package reports

import (
	"strings"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/materials"
	"sixlink/members/check"
)

// addRocker adds what is judged at the rocker of an axle. Its forces are inputs.
func (c *calculation) addRocker(axle int) error {
	for _, item := range c.rockerItems(axle) {
		kind := item.Kind
		if kind == kindEnd {
			kind = kindEye
		}
		u := &unit{
			axle: axle, member: loads.NumLinks, part: item.At, title: words(cases.AxleNames[axle]) + " rocker, " + item.At,
			inputs: c.inputs(axle, loads.NumLinks, item.At, item.Kind),
		}
		links := c.rockerLinks(axle, kind, item.At)
		if _, err := c.addItem(u, kind, item.Live(), links); err != nil {
			return err
		}
		c.share(axle, kind, u)
		c.rockers[axle] = append(c.rockers[axle], u)
	}
	return nil
}

// rockerItems are the items of an axle's rocker that there are in any case.
func (c *calculation) rockerItems(axle int) (out []check.Item) {
	type key struct{ at, kind string }
	seen := map[key]bool{}
	for corner := 2 * axle; corner < 2*axle+2; corner++ {
		for k := range c.r.Cases {
			for _, item := range c.r.RockerItems(corner, k) {
				if at := (key{item.At, item.Kind}); !seen[at] {
					seen[at] = true
					out = append(out, item)
				}
			}
		}
	}
	return out
}

// inputs returns the givens of an item by side and case; 0 in cases without the item,
// and where its givens leave the symbol out.
func (c *calculation) inputs(axle, member int, at, kind string) func(symbol string) [2][]float64 {
	var values [2][]map[string]float64
	for side := range values {
		values[side] = make([]map[string]float64, len(c.r.Cases))
		for k := range c.r.Cases {
			for _, item := range c.r.items(2*axle+side, member, k) {
				if item.At != at || item.Kind != kind {
					continue
				}
				values[side][k] = map[string]float64{}
				for _, s := range item.Givens() {
					values[side][k][s.Symbol] = s.Value
				}
			}
		}
	}
	return func(symbol string) (out [2][]float64) {
		for side := range out {
			for _, v := range values[side] {
				out[side] = append(out[side], v[symbol])
			}
		}
		return out
	}
}

// shareName names an input that several checks of a rocker share; empty: it is their own.
func shareName(kind, at, symbol string) string {
	hole, _, _ := strings.Cut(at, ", ")
	switch {
	case kind == kindSection && strings.Contains("n t s", symbol), kind == kindEye && symbol == "s":
		return "plates " + symbol
	case kind == kindEye && symbol == "t_l":
		return "plates t"
	case kind == kindSection && (symbol == "w" || symbol == "d"):
		return hole + " " + symbol
	case kind == kindEye && symbol == "w_l":
		return hole + " w"
	case kind == kindEye && symbol == "D_l":
		return hole + " d"
	}
	return ""
}

// share keeps the inputs of a unit that others share.
func (c *calculation) share(axle int, kind string, u *unit) {
	for _, q := range u.quantities {
		if name := shareName(kind, u.part, q.Symbol); name != "" && !q.each && !q.found {
			c.shared[words(cases.AxleNames[axle])+name] = q
		}
	}
}

// rockerLinks link the inputs that an earlier unit has already, and the metals.
func (c *calculation) rockerLinks(axle int, kind, at string) map[string]link {
	out := map[string]link{"d_p": {equation: "D_l"}}
	for _, symbol := range []string{"n", "t", "s", "w", "d", "w_l", "t_l", "D_l"} {
		name := shareName(kind, at, symbol)
		if q := c.shared[words(cases.AxleNames[axle])+name]; name != "" && q != nil {
			out[symbol] = sameAs(q)
		}
	}
	rocker := c.r.Car.Axles[axle].Rocker
	metal := func(m materials.Metal, pairs ...string) {
		for i := 0; i < len(pairs); i += 2 {
			out[pairs[i]] = link{raw: c.metals.cell(m, metalColumns[pairs[i+1]])}
		}
	}
	switch {
	case kind == kindSection:
		metal(rocker.Plates.Metal, "Sy", "Sy", "Su", "Su")
	case kind == kindEye:
		metal(rocker.Plates.Metal, "S_yl", "Sy", "S_ul", "Su")
	case kind == kindBar:
		metal(rocker.Bar.Metal, "Sy", "Sy")
	}
	return out
}
