package reports

import (
	"fmt"
	"maps"
	"math"
	"strings"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/materials"
	"sixlink/members"
	"sixlink/members/check"
	"sixlink/members/ends"
)

// addMember adds a member with its links: its loads from the sheet of forces, its
// material by number.
func (c *calculation) addMember(st, at int) error {
	item := c.r.LiveItems(c.stations[st].Station, at)[0]
	forces, part := c.forces[st][at].scope, c.stations[st].Parts[at]
	u := &unit{station: c.stations[st], st: st, member: at, title: c.stations[st].Member(at)}
	u.metal = &quantity{Step: check.Step{Symbol: "no.", What: "material: its number on the sheet Materials", Source: "car file", Value: float64(c.metals.number(part.Strut.Metal))}, of: u}
	u.metal.value = u.metal.Value
	links := map[string]link{}
	for symbol, column := range metalColumns {
		links[symbol] = link{raw: c.metals.look(column), source: "sheet Materials", always: true}
	}
	for symbol, q := range forces {
		links[symbol] = sameAs(q)
	}
	links["M"] = c.apex(forces)
	maps.Copy(links, ellipseLinks(part.Strut.Shape()))
	live := item.Live()
	if part.Laminate != nil {
		live.Givens = c.laminateMoment(live.Givens, st, at, links)
		u.finds = map[string]string{"n_e": "first ply in compression, maximum strain", "n_q": "first ply in compression, Tsai–Wu"}
		u.fixed = map[string]link{}
		for _, symbol := range laminateTheory {
			links[symbol], u.fixed[symbol] = link{fixed: true}, link{fixed: true}
		}
	}
	if _, err := c.addItem(u, item.Kind, live, links); err != nil {
		return err
	}
	c.members[st][at] = u
	c.addReaction(u, links)
	return nil
}

// laminateTheory are what lamination theory and its search find, and what they start
// from: the workbook takes them as they were found.
var laminateTheory = strings.Fields("t n_p t_p A_11 A_22 A_12 A_66 A_16 A_26 a_11 a_12 a_16 a_22 a_66 D_11 D_22 θ_w D_w F_w B_w E_1 E_2 G_12 ν_12 z")

// ellipseLinks are the integrals over the wall of an elliptical tube, by the trapezium
// rule that its section takes; each term is worked out by SUMPRODUCT.
func ellipseLinks(shape string) map[string]link {
	if shape != "ellipse_tube" {
		return nil
	}
	const (
		angle  = "(2*PI()*ROW($1:$512)/512)"
		speed  = "SQRT((%c/2*SIN" + angle + ")^2+(%d/2*COS" + angle + ")^2)"
		moment = "SUMPRODUCT(@y^2*%t*@g-(2*@y*@n/@g+@k/@g^3*@y^2)*%t^2/2*@g+((@n/@g)^2+2*@k/@g^3*@y*@n/@g)*%t^3/3*@g-@k/@g^3*(@n/@g)^2*%t^4/4*@g)*2*PI()/512"
	)
	put := func(y, n string) link {
		return link{raw: strings.NewReplacer("@y", y, "@n", n, "@k", "(%c*%d/4)", "@g", speed).Replace(moment)}
	}
	return map[string]link{
		"U":   {raw: "SUMPRODUCT(" + speed + ")*2*PI()/512"},
		"I_x": put("(%d/2*SIN"+angle+")", "(%c/2*SIN"+angle+")"),
		"I_y": put("(%c/2*COS"+angle+")", "(%d/2*COS"+angle+")"),
	}
}

// apex links the moment of the free bodies, where there is one.
func (c *calculation) apex(forces map[string]*quantity) link {
	if q := forces["M_a"]; q != nil {
		return sameAs(q)
	}
	return link{equation: "0"}
}

// laminateMoment puts the sources of the moment M before the givens of a laminate,
// which know it as one number.
func (c *calculation) laminateMoment(givens []check.Step, st, at int, links map[string]link) []check.Step {
	p := c.stations[st].Parts[at]
	load := members.Load{Sources: p.Sources}
	if c.forces[st][at].scope["M_a"] != nil {
		load.Bending = 1
	}
	if c.forces[st][at].scope["u"] != nil {
		load.Across = 1
	}
	steps := members.SourceSteps(members.Subject{Strut: p.Strut, Load: load})
	if steps == nil {
		return givens
	}
	delete(links, "M")
	out := steps
	for _, s := range givens {
		if s.Symbol != "M" {
			out = append(out, s)
		}
	}
	return out
}

// reacts tells whether an end takes the reaction of a member: its own, or that of the
// other leg at the ball joint.
func (c *calculation) reacts(st, at int) bool {
	front, rear, _, leg := loads.Wishbone(at)
	return c.hasEnds(st, at) || leg && (c.hasEnds(st, front) || c.hasEnds(st, rear))
}

// addReaction adds to a member what its side load, weight and inertia put on its ends.
func (c *calculation) addReaction(u *unit, links map[string]link) {
	if !c.reacts(u.st, u.member) {
		return
	}
	var parts []string
	for _, symbol := range []string{"q", "w"} {
		if u.scope[symbol] != nil {
			parts = append(parts, symbol+"·L/2")
		}
	}
	if parts == nil {
		return
	}
	step := check.Step{Symbol: "R_e", What: "reaction of side load, own weight and inertia at each end", Equation: strings.Join(parts, " + "), Unit: "N", Source: "equilibrium"}
	if ok, err := u.place(u.scope, step, links); ok && err == nil {
		c.reactions[u.st][u.member] = u.scope["R_e"]
		u.work(len(c.r.Cases))
	}
}

// addEnds adds the ends of a member.
func (c *calculation) addEnds(st, at int) error {
	for _, item := range c.r.LiveItems(c.stations[st].Station, at)[1:] {
		u := &unit{station: c.stations[st], st: st, member: at, part: item.At, title: c.stations[st].Member(at) + ", " + item.At}
		links := map[string]link{}
		if item.Kind == kindEnd {
			links = c.endLinks(st, at, item.At)
		} else {
			u.inputs = c.inputs(st, at, item.At, item.Kind)
		}
		live := item.Live()
		live.Givens = append(c.insertGivens(st, at, item.At, links), live.Givens...)
		if _, err := c.addItem(u, item.Kind, live, links); err != nil {
			return err
		}
	}
	return nil
}

// insertGivens are the modulus and the bore of an insert, from which the workbook finds
// the stiffness that the working knows as given.
func (c *calculation) insertGivens(st, at int, name string, links map[string]link) []check.Step {
	insert := c.end(st, at, name).Insert
	if insert == nil || insert.Metal.E == 0 {
		return nil
	}
	bore := sq(insert.Diameter) - 4*insert.Stiffness/(math.Pi*insert.Metal.E)
	if bore < 1e-12*sq(insert.Diameter) { // rounding: it is solid
		bore = 0
	}
	links["E_i"] = link{raw: c.metals.cell(insert.Metal, metalColumns["E"])}
	links["EA_i"] = link{equation: "E_i·π·(D_b² − d_i²)/4"}
	return []check.Step{
		{Symbol: "E_i", What: "Young's modulus of the insert", Unit: "MPa", Source: "material " + insert.Metal.Name, Value: insert.Metal.E},
		{Symbol: "d_i", What: "bore of the insert", Unit: "mm", Source: "car file", Value: math.Sqrt(bore)},
	}
}

func sq(x float64) float64 { return x * x }

// end is an end of a member by its name.
func (c *calculation) end(st, at int, name string) ends.End {
	each := c.stations[st].Parts[at].Ends
	if name == cases.EndNames[cases.OuterEnd] {
		return each[cases.OuterEnd]
	}
	return each[cases.InnerEnd]
}

// endLinks are those of one end: the forces of its member, the tube, the metals.
func (c *calculation) endLinks(st, at int, name string) map[string]link {
	m, forces := c.members[st][at].scope, c.forces[st][at].scope
	links := map[string]link{"N": sameAs(forces["N"]), "N_e": {equation: "|N|"}, "F_s": {equation: "0"}, "R": {equation: "0"}, "V": {equation: "R"}}
	if q := forces["V_t"]; q != nil {
		links["N_e"] = link{equation: "√(N² + V_t²)", args: map[string]*quantity{"V_t": q}}
		links["V"] = link{equation: "V_t + R", args: map[string]*quantity{"V_t": q}}
	}
	if q := c.reactions[st][at]; q != nil {
		links["R"] = sameAs(q)
	}
	moment := link{args: map[string]*quantity{}}
	var parts []string
	if q := m["e_N"]; q != nil {
		parts, moment.args["e_N"] = append(parts, "|N|·e_N"), q
	}
	if q := forces["M_a"]; q != nil && name == cases.EndNames[cases.OuterEnd] {
		parts, moment.args["M_a"] = append(parts, "M_a"), q
	}
	if moment.equation = strings.Join(parts, " + "); parts == nil {
		moment.equation = "0"
	}
	links["M"] = moment
	if name == cases.EndNames[cases.OuterEnd] && forces["F_j"] != nil {
		links["F_s"] = c.sharedForce(st, at)
	}
	for _, symbol := range []string{"OD", "t", "Sy", "Su"} {
		if m[symbol] != nil {
			links[symbol] = sameAs(m[symbol])
		}
	}
	if m["E"] != nil {
		links["EA_t"] = link{equation: "E·A", args: map[string]*quantity{"E": m["E"], "A": m["A"]}, source: "sheet Members"}
	} else if m["E_x"] != nil {
		links["EA_t"] = link{equation: "E_x·A", args: map[string]*quantity{"E_x": m["E_x"], "A": m["A"]}, source: "sheet Laminates"}
	}
	maps.Copy(links, c.endMetals(st, at, name))
	return links
}

// sharedForce is that of the ball joint, with the reactions of both legs.
func (c *calculation) sharedForce(st, at int) link {
	front, rear, _, _ := loads.Wishbone(at)
	out := link{equation: "F_j", args: map[string]*quantity{"F_j": c.forces[st][at].scope["F_j"]}}
	for i, leg := range []int{front, rear} {
		if q := c.reactions[st][leg]; q != nil {
			symbol := fmt.Sprintf("R_e%d", i+1)
			out.equation += " + " + symbol
			out.args[symbol] = q
		}
	}
	return out
}

// endMetals link the strengths of what is at an end to the materials.
func (c *calculation) endMetals(st, at int, name string) map[string]link {
	end := c.end(st, at, name)
	out := map[string]link{}
	metal := func(m materials.Metal, pairs ...string) {
		for i := 0; m.Name != "" && i < len(pairs); i += 2 {
			out[pairs[i]] = link{raw: c.metals.cell(m, metalColumns[pairs[i+1]])}
		}
	}
	if end.Thread != nil {
		metal(end.Thread.Metal, "S_p", "Sy", "f_ut", "Su")
		metal(end.Thread.Nut, "f_ui", "Su")
	}
	if b := end.Bolt; b != nil {
		metal(b.Metal, "f_yb", "Sy", "f_ub", "Su")
		if b.Plates != nil {
			metal(b.Plates.OuterMetal, "f_yo", "Sy")
			metal(b.Plates.InnerMetal, "f_yi", "Sy")
		}
	}
	if end.Lug != nil {
		metal(end.Lug.Metal, "S_yl", "Sy", "S_ul", "Su")
		out["d_p"] = link{equation: "D_l"}
		if end.Bolt != nil {
			out["d_p"] = link{equation: "min(d_b; D_l)"}
		}
	}
	return out
}
