package sizing

import (
	"math"

	"sixlink/materials"
	"sixlink/members"
	"sixlink/members/check"
	"sixlink/members/stock"
)

// A Rod is a member between spherical joints, and what it must carry. A force of 0 is
// not asked for.
type Rod struct {
	Length               float64 // joint centre to joint centre, mm
	Compression, Tension float64 // sizes, N
	Factors              check.Factors
	Target               float64 // reserve factor that every check must reach
	Stock                stock.List
	Limits               stock.Limits
}

// The directions in which a rod is sized.
const (
	InCompression = iota
	InTension
	InBoth // one rod that must carry either
	NumDirections
)

// DirectionNames are the names of the directions in reports.
var DirectionNames = [NumDirections]string{"compression", "tension", "both"}

// An Answer is what a rod of one material needs, by direction; nil: not asked for.
type Answer struct {
	Metal materials.Metal
	Picks [NumDirections]*Pick
}

// A Pick is the lightest tube of the stock for one direction; where none carries, the
// one that comes nearest.
type Pick struct {
	Option
	Carries   bool
	Offered   int     // sizes of the stock that could be had of the material within the limits; 0: there is no Option
	First     bool    // no lighter one was offered: the load asks for less than the stock has
	Found     []Found // of every check of that tube
	Governing int     // index in Found of the lowest reserve factor
	Reason    Reason  // why that one governs
}

// A Found is the finding of one check in one direction.
type Found struct {
	Direction int
	check.Finding
}

// Governs returns the finding with the lowest reserve factor.
func (p Pick) Governs() Found { return p.Found[p.Governing] }

// Strut returns the rod made of the tube.
func (p Pick) Strut() members.Strut { return p.Option.Struts[0] }

// Answer sizes the rod of one material.
func (r Rod) Answer(metal materials.Metal) Answer {
	a := Answer{Metal: metal}
	options := Options(r.Stock, r.Limits, []members.Strut{{Metal: metal, Length: r.Length, K: 1}})
	for d := range a.Picks {
		if asked := r.directions(d); len(asked) > 0 {
			a.Picks[d] = r.pick(options, asked)
		}
	}
	return a
}

// directions returns those in which a rod for d is loaded; none: it is not asked for.
func (r Rod) directions(d int) []int {
	switch {
	case d == InCompression && r.Compression > 0, d == InTension && r.Tension > 0:
		return []int{d}
	case d == InBoth && r.Compression > 0 && r.Tension > 0:
		return []int{InCompression, InTension}
	}
	return nil
}

// subject returns a strut under the load of one direction.
func (r Rod) subject(s members.Strut, direction int) members.Subject {
	axial := r.Tension
	if direction == InCompression {
		axial = -r.Compression
	}
	return members.Subject{Strut: s, Load: members.Load{Axial: axial}, Factors: r.Factors}
}

// pick goes through the options, lightest first.
func (r Rod) pick(options []Option, directions []int) *Pick {
	best := Pick{Offered: len(options)}
	most := math.Inf(-1)
	for i, o := range options {
		p := r.judge(o, directions)
		p.Offered, p.First = len(options), i == 0
		least := p.Governs().Reserve
		if p.Carries = Carries(least, r.Target); p.Carries {
			return r.reasoned(p)
		}
		if least > most || i == 0 {
			best, most = p, least
		}
	}
	if len(options) == 0 {
		return &best
	}
	return r.reasoned(best)
}

func (r Rod) reasoned(p Pick) *Pick {
	g := p.Governs()
	p.Reason = ReasonOf(r.subject(p.Strut(), g.Direction), g.Check)
	return &p
}

// judge puts one option through every check of a strut.
func (r Rod) judge(o Option, directions []int) Pick {
	p := Pick{Option: o}
	for _, d := range directions {
		for _, f := range members.Judge(r.subject(o.Struts[0], d)) {
			p.Found = append(p.Found, Found{d, f})
			if n := len(p.Found) - 1; check.Lower(f.Reserve, p.Governs().Reserve) {
				p.Governing = n
			}
		}
	}
	return p
}
