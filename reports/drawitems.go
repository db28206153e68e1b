package reports

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members/check"
	"sixlink/reports/drawing"
)

// An itemKind says how a labelled thing of a corner is drawn.
type itemKind int

const (
	linkItem   itemKind = iota // a straight line whose weight is its force
	springItem                 // a coil
	rockerItem                 // the outline of the rocker
	forceItem                  // an arrow from outside
)

// contactKey is the key of the contact force.
const contactKey = "contact_force"

// An item is a labelled thing of a corner.
type item struct {
	kind      itemKind
	key, name string
	ends      [2]r3.Vec // of a force: its point, twice
	targets   []r3.Vec  // where the leader of its label may end, the best first

	force  func(k int) float64 // N, tension positive; NaN: none; of an arrow: its size
	vector func(k int) r3.Vec  // of an arrow, N
	extra  func(k int) string  // what the label has in place of a force
	judged cases.Judged
}

// drawItems lists what is labelled at one corner, alike for every load case, where it
// stands in the position drawn.
func (r Report) drawItems(corner int) []item {
	return r.drawItemsIn(corner, r.Corners[corner].Statics.Corner)
}

// drawItemsIn lists it where it stands in a geometry.
func (r Report) drawItemsIn(corner int, geometry loads.Corner) []item {
	c := r.Corners[corner]
	var out []item
	for i, m := range c.Members {
		l := geometry.Links[i]
		out = append(out, straight(linkItem, loads.LinkNames[i], l.Outer, l.Inner, func(k int) float64 { return c.Forces[k].Axial[i] }, m.Judged))
	}
	out = append(out, rockerItems(c, geometry)...)
	wheel := func(k int) cases.Wheel { return r.Cases[k].Wheels[corner] }
	out = append(out, arrow(contactKey, geometry.Contact, func(k int) r3.Vec { return wheel(k).Force }))
	for k := range r.Cases {
		if wheel(k).Inertia != (r3.Vec{}) {
			return append(out, arrow("unsprung_inertia", geometry.Centre, func(k int) r3.Vec { return wheel(k).Inertia }))
		}
	}
	return out
}

func straight(kind itemKind, key string, a, b r3.Vec, force func(int) float64, judged cases.Judged) item {
	it := item{kind: kind, key: key, name: words(key), ends: [2]r3.Vec{a, b}, force: force, judged: judged}
	for _, t := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8} {
		it.targets = append(it.targets, r3.Add(r3.Scale(1-t, a), r3.Scale(t, b)))
	}
	return it
}

func arrow(key string, at r3.Vec, vector func(int) r3.Vec) item {
	return item{
		kind: forceItem, key: key, name: words(key), ends: [2]r3.Vec{at, at}, targets: []r3.Vec{at}, vector: vector,
		force: func(k int) float64 { return r3.Norm(vector(k)) }, judged: cases.Judged{Governing: -1},
	}
}

func rockerItems(c cases.Corner, geometry loads.Corner) (out []item) {
	rocker := geometry.Rocker
	if rocker == nil {
		return nil
	}
	none := cases.Judged{Governing: -1}
	points := rockerPoints(geometry)
	centroid := r3.Vec{}
	for _, p := range points {
		centroid = r3.Add(centroid, r3.Scale(1/float64(len(points)), p))
	}
	body := item{kind: rockerItem, key: "rocker", name: "rocker", ends: rockerAxis(geometry), targets: append([]r3.Vec{centroid}, points...), judged: c.Rocker}
	body.force = func(int) float64 { return math.NaN() }
	if rocker.Spring == nil {
		body.name = "rocker, torsion bar"
		body.extra = func(k int) string { return Whole.number(c.Forces[k].Rocker.TorsionBar) + " N·mm" }
	}
	out = append(out, body)
	if l := rocker.Spring; l != nil {
		out = append(out, straight(springItem, "spring", l.Rocker, l.Far, func(k int) float64 { return -c.Forces[k].Rocker.Spring }, none))
	}
	if l := rocker.AntiRoll; l != nil {
		out = append(out, straight(linkItem, "anti_roll_link", l.Rocker, l.Far, func(k int) float64 { return c.Forces[k].Rocker.AntiRoll }, none))
	}
	if l := rocker.Third; l != nil {
		half := halfOf(*l)
		out = append(out, straight(springItem, "third_spring", half.Rocker, half.Far, func(k int) float64 { return -c.Forces[k].Rocker.Third }, none))
	}
	return out
}

// lowestIn is the finding with the lowest reserve factor of one case.
func lowestIn(j cases.Judged, k int) (out cases.Finding, ok bool) {
	for _, f := range j.Checks {
		if f.Case == k && (!ok || check.Lower(f.Reserve, out.Reserve)) {
			out, ok = f, true
		}
	}
	return out, ok
}

// says is the second line of a label: the force and the reserve factor of a case.
func (it item) says(k int) (force, reserve string, pass bool) {
	switch f := it.force(k); {
	case it.extra != nil:
		force = it.extra(k)
	case !math.IsNaN(f):
		force = Whole.number(f) + " N"
	}
	if g, ok := lowestIn(it.judged, k); ok {
		if g.Reserve >= 1 {
			return force, "RF " + Reserve.number(g.Reserve), true
		}
		return force, "RF " + Reserve.number(g.Reserve) + " FAIL", false
	}
	return force, "", true
}

// title tells of an item in words.
func (it item) title(k int) string {
	force, reserve, _ := it.says(k)
	if g, ok := lowestIn(it.judged, k); ok {
		reserve += " (" + g.Title() + ")"
	}
	if (it.kind == linkItem || it.kind == springItem) && force != "" {
		force += map[bool]string{true: " compression", false: " tension"}[it.force(k) < 0]
	}
	return it.name + ": " + joined(", ", force, reserve)
}

// stroke is the line of a member: solid and of one colour in tension, broken and of
// another in compression, the heavier the larger the force.
func (d *CornerDrawing) stroke(force float64) drawing.Stroke {
	if Whole.number(math.Abs(force)) == "0" || !(d.heavy > 0) {
		return drawing.Stroke{Ink: drawing.Line, Width: 0.2}
	}
	s := drawing.Stroke{Ink: drawing.Tension, Width: 0.4 + 1.6*math.Abs(force)/d.heavy}
	if force < 0 {
		s.Ink, s.Dash = drawing.Compression, []float64{2.4, 1.1}
	}
	return s
}

// heaviest returns a round number of newtons, at least the largest force of any member
// of the car in any case, and the largest arrow, N: one scale for all drawings of a car.
func (r Report) heaviest() (member, arrow float64) {
	for i := range r.Corners {
		for _, it := range r.drawItems(i) {
			for k := range r.Cases {
				f := math.Abs(it.force(k))
				switch {
				case it.kind == forceItem:
					arrow = math.Max(arrow, f)
				case it.kind == linkItem && f > member:
					member = f
				}
			}
		}
	}
	return roundUp(member), arrow
}

// roundUp returns the next of 1, 1.5, 2, 3, 5, 7, 10 times a power of ten.
func roundUp(x float64) float64 {
	if !(x > 0) || math.IsInf(x, 0) {
		return 0
	}
	power := math.Pow(10, math.Floor(math.Log10(x)))
	for _, step := range []float64{1, 1.5, 2, 3, 5, 7} {
		if x <= step*power {
			return step * power
		}
	}
	return 10 * power
}
