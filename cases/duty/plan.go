package duty

import (
	"fmt"
	"math"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members/fatigue"
	"sixlink/members/stock"
)

// Fibres is the number of points round a bent section at which the stress is followed. So
// that a moment half-way between two of them does not fall short, each is taken as far out
// as the corner of the polygon round the section: no direction is below its own stress,
// and none is more than 2 % above it.
const Fibres = 16

// outward is how much further out than the fibre itself that is.
//
//	1/cos(π/16)
var outward = 1 / math.Cos(math.Pi/Fibres)

// A gauge is one stress, or the axial force, that is followed in time: what its counter
// counts.
//
//	σ = a·N + b·M₁ + c·M₂
type gauge struct {
	state, link int
	a, b, c     float64
	bends       bool
	slots       []int // where its cycles do their damage
}

// A judge is one detail at one place of one member.
type judge struct {
	corner, link, detail int
	place                Place
	both                 bool    // the two ends are alike
	thicker              bool    // it is there for the next thicker tube
	from, to             int     // its slots: one for each gauge
	scale                float64 // stress of the detail, load factor included, per unit of its gauges
	curve                fatigue.Curve
	harmless             float64 // range of a gauge below which a cycle does no damage
	doubts               []string
}

// A slot is the damage of one judge by one gauge.
type slot struct{ judge, gauge int }

// A plan is all that is to be followed: of the car as it is, and of each member by itself
// with its next thicker tube.
type plan struct {
	duty    *Duty
	states  []state // the corners of the car come first
	gauges  []gauge
	judges  []judge // those of the car come first; thicker ones follow member by member
	slots   []slot
	seats   []seat
	watched []int    // gauges whose peaks in the histories go through the checks of the car
	unasked []string // members that no detail is asked of, and what cannot be judged
}

// A state is what of a corner the samples need: as it is, or with one tube that is thicker.
type state struct {
	loads.Influence
	corner   int
	links    [loads.NumLinks]loads.Link // their stiffness counts, wherever the corner stands
	from, to int                        // its gauges
}

// A seat is one member as its details are planned.
type seat struct {
	corner, link, state int
	part                cases.Part
	bent                bool
	axial               int   // gauge of its axial force; −1: there is none
	apex                int   // first gauge of the fibres of its own section at the outer end; −1: none
	from, to            int   // its judges
	next                *seat // with the next thicker tube; nil: the stock has none
	of                  *seat // of one with a thicker tube: the member of the car
}

// newPlan plans the details of a car.
func newPlan(d *Duty, car *cases.Car, list stock.List) (*plan, error) {
	p := &plan{duty: d}
	for c := range cases.NumCorners {
		side := car.Side(c)
		if err := p.open(c, &side.Corner); err != nil {
			return nil, err
		}
		for link := range loads.NumLinks {
			p.seats = append(p.seats, seat{corner: c, link: link, state: c, part: side.Parts[link], bent: p.states[c].Bent[link], axial: -1, apex: -1})
			if err := p.member(&p.seats[len(p.seats)-1]); err != nil {
				return nil, err
			}
		}
		p.states[c].to = len(p.gauges)
	}
	for i := range p.seats {
		if err := p.thicken(car, &p.seats[i], list); err != nil {
			return nil, err
		}
	}
	return p, nil
}

// open begins the state of a corner.
func (p *plan) open(corner int, c *loads.Corner) error {
	var r loads.Response
	if fault := r.Set(c); fault != loads.Sound {
		return fmt.Errorf("%s: its links cannot carry the wheel: sixlink check says why", words(cases.CornerNames[corner]))
	}
	p.states = append(p.states, state{Influence: r.Influence(), corner: corner, links: c.Links, from: len(p.gauges), to: len(p.gauges)})
	return nil
}

// member plans the details of one member.
func (p *plan) member(m *seat) error {
	m.from = len(p.judges)
	defer func() { m.to = len(p.judges) }()
	asked := false
	for i := range p.duty.Details {
		d := &p.duty.Details[i]
		if !d.holds(m.corner, m.link) {
			continue
		}
		asked = true
		if m.part.Laminate != nil {
			p.unask("%s: it is a laminate, and the curves here are those of metals", memberName(m.corner, m.link))
			break
		}
		if err := p.detail(m, i); err != nil {
			return err
		}
	}
	p.watch(m)
	if !asked {
		p.unask("%s: no detail of duty.details is one of it", memberName(m.corner, m.link))
	}
	return nil
}

// watch sees to it that the peaks of a member are followed, whether a detail asks for its
// stresses or not: those of its axial force, and of the fibres where it is bent most.
func (p *plan) watch(m *seat) {
	if m.axial < 0 {
		m.axial = p.gauge(gauge{state: m.state, link: m.link, a: 1})
	}
	p.watched = append(p.watched, m.axial)
	if !m.bent {
		return
	}
	if s := (section{m.part.Strut.Area(), m.part.Strut.Modulus()}); m.apex < 0 && s.area > 0 && s.modulus > 0 {
		m.apex = p.fibres(m, s, Outer, m.part.Sources.Eccentricity)
	}
	for k := 0; m.apex >= 0 && k < Fibres; k++ {
		p.watched = append(p.watched, m.apex+k)
	}
}

func (p *plan) unask(format string, args ...any) {
	p.unasked = append(p.unasked, fmt.Sprintf(format, args...))
}

// detail plans one detail of a member at each of its places.
func (p *plan) detail(m *seat, i int) error {
	d, strut := &p.duty.Details[i], m.part.Strut
	base, section, refused := d.fit(strut, p.duty.Survival)
	if refused != nil {
		return refused.misfit(i, m.corner, m.link)
	}
	j := judge{corner: m.corner, link: m.link, detail: i, thicker: m.of != nil, curve: base, doubts: d.doubts(strut)}
	if _, slow := base.(fatigue.StrainLife); slow {
		j.curve = newGridded(base)
	}
	eccentricity := m.part.Sources.Eccentricity
	for _, place := range d.places() {
		j.place = place
		if m.bent && section.modulus > 0 && place.share() > 0 {
			p.bentJudge(m, j, section, eccentricity)
			continue
		}
		if m.axial < 0 {
			m.axial = p.gauge(gauge{state: m.state, link: m.link, a: 1})
		}
		j.scale = section.perForce(eccentricity)
		j.both = d.Place == Ends && !(m.bent && section.modulus > 0)
		p.judge(m, j, m.axial, m.axial+1)
		if j.both {
			break
		}
	}
	return nil
}

func (p *plan) gauge(g gauge) int {
	p.gauges = append(p.gauges, g)
	return len(p.gauges) - 1
}

// bentJudge follows the fibres round a bent section: both signs of the moment in every
// direction, so that axial force and bending stay together in time.
//
//	σ = N·(1/A + e/Z) + (M₁·cos φ + M₂·sin φ)/Z/cos(π/16)
func (p *plan) bentJudge(at *seat, j judge, s section, eccentricity float64) {
	from := p.fibres(at, s, j.place, eccentricity)
	if d := &p.duty.Details[j.detail]; j.place == Outer && d.Throat == 0 {
		at.apex = from
	}
	j.scale = 1
	p.judge(at, j, from, len(p.gauges))
}

// fibres adds the gauges of the fibres of a member at a place and returns the first.
func (p *plan) fibres(at *seat, s section, place Place, eccentricity float64) int {
	from, m := len(p.gauges), outward*place.share()/s.modulus
	for k := range Fibres {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / Fibres)
		p.gauge(gauge{state: at.state, link: at.link, bends: true, a: s.perForce(eccentricity), b: m * cos, c: m * sin})
	}
	return from
}

// judge adds a judge of a member that looks at some gauges. What a thicker tube does not
// change, such as the stress of a thread, is that of the car.
func (p *plan) judge(m *seat, j judge, from, to int) {
	j.scale *= p.duty.LoadFactor
	if d, ok := j.curve.(fatigue.DetailCurve); ok && j.scale > 0 {
		j.harmless = d.CutOff() / j.scale * (1 - 1e-12)
	}
	if m.of != nil {
		if as := &p.judges[m.of.from+len(p.judges)-m.from]; p.slots[as.from].gauge == from && as.scale == j.scale {
			j.from, j.to = as.from, as.to
			p.judges = append(p.judges, j)
			return
		}
	}
	j.from = len(p.slots)
	for g := from; g < to; g++ {
		p.gauges[g].slots = append(p.gauges[g].slots, len(p.slots))
		p.slots = append(p.slots, slot{len(p.judges), g})
	}
	j.to = len(p.slots)
	p.judges = append(p.judges, j)
}
