package reports

import (
	"strings"

	"sixlink/loads"
	"sixlink/materials"
	"sixlink/members/check"
)

// addRocker adds what is judged at the rocker of a station. Its forces are inputs.
func (c *calculation) addRocker(st int) error {
	for _, item := range c.rockerItems(st) {
		kind := item.Kind
		if kind == kindEnd {
			kind = kindEye
		}
		u := &unit{
			station: c.stations[st], st: st, member: loads.NumLinks, part: item.At, title: c.stations[st].Member(loads.NumLinks) + ", " + item.At,
			inputs: c.inputs(st, loads.NumLinks, item.At, item.Kind),
		}
		links := c.rockerLinks(st, kind, item.At)
		if _, err := c.addItem(u, kind, item.Live(), links); err != nil {
			return err
		}
		c.share(st, kind, u)
		c.rockers[st] = append(c.rockers[st], u)
	}
	return nil
}

// rockerItems are the items of a station's rocker that there are in any case.
func (c *calculation) rockerItems(st int) (out []check.Item) {
	type key struct{ at, kind string }
	seen := map[key]bool{}
	for _, corner := range c.stations[st].corners() {
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
func (c *calculation) inputs(st, member int, at, kind string) func(symbol string) [2][]float64 {
	var values [2][]map[string]float64
	for _, corner := range c.stations[st].corners() {
		side := corner % 2
		values[side] = make([]map[string]float64, len(c.r.Cases))
		for k := range c.r.Cases {
			for _, item := range c.r.items(corner, member, k) {
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
func (c *calculation) share(st int, kind string, u *unit) {
	for _, q := range u.quantities {
		if name := shareName(kind, u.part, q.Symbol); name != "" && !q.each && !q.found {
			c.shared[c.stations[st].Name+": "+name] = q
		}
	}
}

// rockerLinks link the inputs that an earlier unit has already, and the metals.
func (c *calculation) rockerLinks(st int, kind, at string) map[string]link {
	out := map[string]link{"d_p": {equation: "D_l"}}
	for _, symbol := range []string{"n", "t", "s", "w", "d", "w_l", "t_l", "D_l"} {
		name := shareName(kind, at, symbol)
		if q := c.shared[c.stations[st].Name+": "+name]; name != "" && q != nil {
			out[symbol] = sameAs(q)
		}
	}
	rocker := c.stations[st].Rocker
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
