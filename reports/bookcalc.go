package reports

import (
	"fmt"
	"slices"
	"strings"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members"
	"sixlink/members/check"
)

// A calculation is all that the workbook recalculates.
type calculation struct {
	r        Report
	factors  map[string]*quantity
	metals   metalRows
	families []*family // in the order of their sheets
	kinds    map[string]*family

	stations        []station // by index: what of an axle is told apart
	forces, members [][loads.NumLinks]*unit
	rockers         [][]*unit
	reactions       [][loads.NumLinks]*quantity // at the ends of members, of side load, own weight and inertia
	shared          map[string]*quantity
	found           map[findingKey]check.Finding
}

// A station is one side of an axle, or both where they are mirror images.
type station struct{ cases.Station }

// stands tells whether it is about a corner.
func (s station) stands(corner int) bool { return corner == s.At || s.Both && corner == s.At+1 }

// corners are those that it is about.
func (s station) corners() []int {
	if s.Both {
		return []int{s.At, s.At + 1}
	}
	return []int{s.At}
}

// stationOf is the index of the station of a corner.
func (c *calculation) stationOf(corner int) int {
	return slices.IndexFunc(c.stations, func(s station) bool { return s.stands(corner) })
}

// A findingKey names a finding: the corner, the member, the part, the check, the case.
type findingKey struct {
	corner, member int
	at, check      string
	k              int
}

// The kinds of subjects that have links of their own; others have their givens of each
// case as inputs.
const (
	kindMember   = "members.Subject"
	kindLaminate = "laminate.Subject"
	kindEnd      = "ends.Subject"
	kindSection  = "rocker.Section"
	kindEye      = "rocker: ends.Subject"
	kindBar      = "rocker.TorsionBar"
)

const forcesSheet = "Member forces"

// familyNames are the sheets of the kinds: of what belongs to the parts, and of what depends
// on the load; several kinds may share the first.
var familyNames = map[string][2]string{
	kindMember:         {"Members", "Member checks"},
	kindLaminate:       {"Laminates", "Laminate checks"},
	kindEnd:            {"Ends", "End checks"},
	kindSection:        {"Rocker parts", "Rocker sections"},
	kindEye:            {"Rocker parts", "Rocker eyes"},
	"rocker.Bearings":  {"Rocker parts", "Pivot bearings"},
	"rocker.PivotBolt": {"Rocker parts", "Pivot bolts"},
	kindBar:            {"Rocker parts", "Torsion bars"},
}

// newCalculation builds the calculation of a report and works it out.
func newCalculation(r Report) (*calculation, error) {
	c := &calculation{
		r: r, kinds: map[string]*family{}, shared: map[string]*quantity{}, found: map[findingKey]check.Finding{},
		factors: factorsOf(r.Car.Factors), metals: metalRowsOf(r.Car.Metals()),
	}
	for _, s := range r.Car.Stations() {
		c.stations = append(c.stations, station{s})
	}
	n := len(c.stations)
	c.forces, c.members = make([][loads.NumLinks]*unit, n), make([][loads.NumLinks]*unit, n)
	c.rockers, c.reactions = make([][]*unit, n), make([][loads.NumLinks]*quantity, n)
	c.findings()
	forces := &family{cases: forcesSheet}
	c.families = append(c.families, forces)
	for st := range c.stations {
		for link := range loads.NumLinks {
			c.addForces(forces, st, link)
			if err := c.addMember(st, link); err != nil {
				return nil, err
			}
		}
	}
	for st := range c.stations {
		for link := range loads.NumLinks {
			if err := c.addEnds(st, link); err != nil {
				return nil, err
			}
		}
	}
	for st := range c.stations {
		if err := c.addRocker(st); err != nil {
			return nil, err
		}
	}
	return c, nil
}

func (c *calculation) findings() {
	for corner, each := range c.r.Corners {
		for m := range cases.MemberNames {
			j := each.Rocker
			if m < loads.NumLinks {
				j = each.Members[m].Judged
			}
			for _, f := range j.Checks {
				c.found[findingKey{corner, m, f.At, f.Check, f.Case}] = f.Finding
			}
		}
	}
}

// family returns the family of a kind.
func (c *calculation) family(kind string) *family {
	if f := c.kinds[kind]; f != nil {
		return f
	}
	names, known := familyNames[kind]
	if !known {
		names = [2]string{sheetName("Parts of " + kind), sheetName("Checks of " + kind)}
	}
	f := &family{parts: names[0], cases: names[1], at: kind != kindMember && kind != kindLaminate}
	c.kinds[kind] = f
	c.families = append(c.families, f)
	return f
}

// sheetName makes the name of a sheet of a text: it has at most 31 characters, and some
// are not among them (ECMA-376, part 1, 18.2.19).
func sheetName(s string) string {
	out := []rune(strings.Map(func(r rune) rune {
		if strings.ContainsRune(`:\/?*[]'`, r) {
			return ' '
		}
		return r
	}, printable(s)))
	return strings.TrimSpace(string(out[:min(len(out), 31)]))
}

// addItem adds an item of a member or rocker as a unit.
func (c *calculation) addItem(u *unit, kind string, live check.Live, links map[string]link) (*unit, error) {
	c.family(kind).add(u)
	u.scope = map[string]*quantity{}
	for symbol, q := range c.factors {
		u.scope[symbol] = q
	}
	if u.metal != nil {
		u.metal = u.keep(u.metal)
	}
	if err := u.given(live.Givens, links); err != nil {
		return nil, fmt.Errorf("%s: %w", u.title, err)
	}
	u.givens = len(u.quantities)
	for _, s := range live.Sheets {
		if err := u.check(s); err != nil {
			return nil, err
		}
	}
	u.work(len(c.r.Cases))
	return u, nil
}

// addForces adds what the load path gives for a member: inputs in every case.
func (c *calculation) addForces(f *family, st, link int) {
	u := f.add(&unit{station: c.stations[st], st: st, member: link, scope: map[string]*quantity{}})
	add := func(symbol, what, unit string, value func(corner, k int) float64) {
		q := &quantity{Step: check.Step{Symbol: symbol, What: what, Unit: unit, Source: "load path"}, of: u, each: true}
		any := false
		for _, corner := range u.corners() {
			for k := range c.r.Cases {
				x := value(corner, k)
				any = any || x != 0
				q.values[corner%2] = append(q.values[corner%2], x)
			}
		}
		if any || symbol == "N" {
			u.scope[symbol] = u.keep(q)
		}
	}
	load := func(corner, k int) members.Load { return c.r.Corners[corner].Members[link].Loads[k] }
	add("N", "axial force, tension positive", "N", func(corner, k int) float64 { return load(corner, k).Axial })
	add("M_a", "bending at the apex of a carrying wishbone", "N·mm", func(corner, k int) float64 { return load(corner, k).Bending })
	add("u", "acceleration square to the member, gravity included", "g", func(corner, k int) float64 { return load(corner, k).Across })
	if !c.hasEnds(st, link) {
		c.forces[st][link] = u
		return
	}
	if c.bent(st, link) {
		add("V_t", "shear of a carrying wishbone's leg", "N", func(corner, k int) float64 { return c.r.Transverse(corner, link, k) })
	}
	if joint, shared := c.stations[st].Corner.Joint(link); shared {
		add("F_j", "force through the ball joint that two legs share", "N", func(corner, k int) float64 { return c.r.JointForce(corner, joint, k) })
	}
	c.forces[st][link] = u
}

func (c *calculation) hasEnds(st, link int) bool {
	ends := c.stations[st].Parts[link].Ends
	return ends[0].Given() || ends[1].Given()
}

// bent tells whether the free bodies bend a member in any case; of others the force
// square to the axis is rounding.
func (c *calculation) bent(st, link int) bool {
	for _, corner := range c.stations[st].corners() {
		for _, l := range c.r.Corners[corner].Members[link].Loads {
			if l.Bending > 0 {
				return true
			}
		}
	}
	return false
}
