package studies

import (
	"context"
	"errors"
	"fmt"
	"math"

	"sixlink/cases"
	"sixlink/loads"
)

// A Vary is the answer at each point of one range, or of the grid of two: the first axis
// changes slowest.
type Vary struct {
	Axes   []Axis  `json:"axes"`
	Sized  bool    `json:"sized"` // each point has tubes of its own
	Points []Point `json:"points"`
}

// A Point is the car at one point: the whole check, no part of it left out.
type Point struct {
	At      []float64                 `json:"at"`      // on each axis
	Refused string                    `json:"refused"` // why there is no such car; empty: there is one
	Lowest  Lowest                    `json:"lowest"`  // over all members and rockers
	Mass    Number                    `json:"mass"`    // of the members of all four corners, kg
	Members [loads.NumLinks * 4]State `json:"members"` // corner by corner
	Rockers [4]Lowest                 `json:"rockers"`
}

// A State is what a member carries over all cases.
type State struct {
	Tension     Number     `json:"tension"`     // largest, N; 0: never in tension
	Compression Number     `json:"compression"` // largest, N, positive
	Tube        *[2]Number `json:"tube"`        // od and wall, mm; nil: no round tube
	Mass        Number     `json:"mass"`        // kg
	Lowest      Lowest     `json:"lowest"`
}

// A Lowest is the reserve factor that governs; NaN where there is no demand.
type Lowest struct {
	Reserve Number `json:"reserve_factor"`
	Member  int    `json:"member"` // of a point: index in Members, or 24 and on: of the rockers; −1: none
	Check   string `json:"check"`
	Case    int    `json:"case"` // index in Head.Cases; −1: none
}

// nothing is the lowest of no reserve factor at all.
var nothing = Lowest{Reserve: Number(math.NaN()), Member: -1, Case: -1}

// Pass tells whether there is such a car and every reserve factor of it is at least 1.
func (p Point) Pass() bool { return p.Refused == "" && p.Lowest.Reserve >= 1 }

// A Maker makes the car of the values at the paths of all axes, one after the other.
type Maker func(x []float64) (cases.Car, error)

// A Sizer chooses the tubes of a car afresh. The error says why there are none.
type Sizer func(cases.Car) (cases.Car, error)

// VaryAll checks the car at every point. Each worker gets a Maker of its own. A nil Sizer
// leaves the tubes as they are.
func VaryAll(ctx context.Context, axes []Axis, maker func() (Maker, error), size Sizer, plan Plan) (*Vary, bool, error) {
	out := &Vary{Axes: axes, Sized: size != nil}
	from, to := plan.Shard.part(Count(axes))
	out.Points = make([]Point, 0, to-from)
	worker := func() (func(int) Point, error) {
		car, err := maker()
		return func(i int) Point { return out.point(from+i, car, size) }, err
	}
	done, err := ordered(ctx, to-from, plan.Workers, worker, func(i int, p Point) {
		out.Points = append(out.Points, p)
		if plan.Progress != nil {
			plan.Progress(i+1, to-from)
		}
	})
	return out, done == to-from, err
}

// Count returns the number of points of a range or grid.
func Count(axes []Axis) int {
	n := 1
	for _, a := range axes {
		n *= len(a.Values)
	}
	return n
}

// at returns the values on the axes at a point of the grid.
func (v *Vary) at(i int) []float64 {
	out := make([]float64, len(v.Axes))
	for a := len(v.Axes) - 1; a >= 0; a-- {
		n := len(v.Axes[a].Values)
		out[a] = v.Axes[a].Values[i%n]
		i /= n
	}
	return out
}

func (v *Vary) point(i int, maker Maker, size Sizer) Point {
	p := Point{At: v.at(i)}
	var x []float64
	for a, axis := range v.Axes {
		at := len(x)
		x = append(x, axis.Base...)
		axis.put(x[at:], p.At[a])
	}
	car, err := maker(x)
	if err == nil && size != nil {
		car, err = size(car)
	}
	var r cases.Results
	if err == nil {
		r, err = cases.Run(car)
	}
	if err != nil {
		p.refuse(err)
		return p
	}
	p.fill(&r)
	return p
}

// refuse leaves a point without values.
func (p *Point) refuse(err error) {
	none := Number(math.NaN())
	p.Refused, p.Lowest, p.Mass = oneLine(err), nothing, none
	for i := range p.Members {
		p.Members[i] = State{Tension: none, Compression: none, Mass: none, Lowest: nothing}
	}
	for i := range p.Rockers {
		p.Rockers[i] = nothing
	}
}

// oneLine is the first of several errors, in one line.
func oneLine(err error) string {
	var joined interface{ Unwrap() []error }
	var r *cases.Refusal
	if errors.As(err, &joined) && len(joined.Unwrap()) > 0 && errors.As(joined.Unwrap()[0], &r) {
		text := r.What()
		if r.Name == "" { // of a corner
			text = r.Path + ": " + text
		}
		if n := len(joined.Unwrap()) - 1; n > 0 {
			text += fmt.Sprintf("; and %d more", n)
		}
		return text
	}
	return err.Error()
}

func (p *Point) fill(r *cases.Results) {
	p.Mass, p.Lowest = Number(r.MembersMass()), nothing
	for i, c := range r.Corners {
		for j, m := range c.Members {
			at := i*loads.NumLinks + j
			s := State{Mass: Number(m.Strut.Mass()), Lowest: lowestOf(m.Judged, at)}
			if t, round := m.Strut.Round(); round {
				s.Tube = &[2]Number{Number(t.OD), Number(t.Wall)}
			}
			for _, l := range m.Loads {
				s.Tension, s.Compression = max(s.Tension, Number(l.Axial)), max(s.Compression, Number(-l.Axial))
			}
			p.Members[at] = s
			p.Lowest = p.Lowest.lower(s.Lowest)
		}
		p.Rockers[i] = lowestOf(c.Rocker, len(p.Members)+i)
	}
	for _, rocker := range p.Rockers {
		p.Lowest = p.Lowest.lower(rocker)
	}
}

func lowestOf(j cases.Judged, member int) Lowest {
	f, ok := j.Governs()
	if !ok {
		return nothing
	}
	return Lowest{Number(f.Reserve), member, f.Title(), f.Case}
}

// lower returns the lower of two, the first where they are equal.
func (l Lowest) lower(o Lowest) Lowest {
	if o.Case >= 0 && (l.Case < 0 || !(o.Reserve >= l.Reserve)) {
		return o
	}
	return l
}

// sound refuses a shard whose points are not those of its part.
func (v *Vary) sound(s Shard, complete bool) error {
	n := Count(v.Axes)
	from, to := s.part(n)
	if n > MostPoints || len(v.Points) > to-from || complete && len(v.Points) < to-from {
		return errors.New("its points are not those of its ranges: make it again")
	}
	for i, p := range v.Points {
		for a, x := range v.at(from + i) {
			if len(p.At) != len(v.Axes) || p.At[a] != x {
				return errors.New("its points are not those of its ranges: make it again")
			}
		}
	}
	return nil
}
