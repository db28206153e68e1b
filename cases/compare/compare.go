// Package compare sets cars side by side: layouts, or revisions of one car. It says
// what each number is, what changes from the first car to another, and nothing of
// which is better.
//
// Quantities are plain float64 in the units of package cases; a number without a value
// is NaN.
package compare

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/loads"
)

// A Comparison is cars side by side.
type Comparison struct {
	Cars    []Car
	Trades  []Trade  // of each car but the first, against the first
	Reserve float64  // reserve factor of the tubes needed
	Measure string   // what the tubes needed are
	Doubts  []string // that travel with them
}

// A Car is what is compared of one car.
type Car struct {
	*cases.Results
	Corners [cases.NumCorners]Corner
	Axles   [2]Axle
	Masses  Masses // of the whole car
}

// An Axle is what is compared of one axle.
type Axle struct {
	Masses Masses
	Moved
	Right *Moved // of the right-hand corner; nil: as the left
}

// Moved is what of one corner stands in the wind and moves with the wheel.
type Moved struct {
	FrontalArea float64       // of the links, mm²
	Travel      *loads.Travel // nil: no rocker
}

// At returns what of one side of the axle moves.
func (a Axle) At(side int) Moved {
	if side == cases.Right && a.Right != nil {
		return *a.Right
	}
	return a.Moved
}

// A Corner is what is compared of one corner.
type Corner struct {
	Members [loads.NumLinks]Member
	Rocker  []Force // the largest of each kind, with its sign
	Chassis []Force // the largest at each point of the chassis
	Upright []Force // the largest at each joint of the upright
}

// A Member is what is compared of one member.
type Member struct {
	cases.Member
	Tension, Compression Peak // N
	Need                 *Need
}

// Peak returns the axial force of the largest size, N; NaN where no case loads the
// member.
func (m Member) Peak() float64 {
	if !(math.Abs(m.Compression.Value) <= m.Tension.Value) && !math.IsNaN(m.Compression.Value) {
		return m.Compression.Value
	}
	return m.Tension.Value
}

// Needed returns the mass of the tube needed, kg; NaN where there is none.
func (m Member) Needed() float64 {
	if m.Need == nil {
		return math.NaN()
	}
	return m.Need.Strut.Mass()
}

// A Peak is an extreme with the case in which it occurs; NaN and -1: none.
type Peak struct {
	Value float64
	Case  int // index in Results.Cases
}

// none is where there is no extreme.
var none = Peak{math.NaN(), -1}

// over takes a value in where it is larger in size.
func (p *Peak) over(x float64, k int) {
	if !math.IsNaN(x) && !(math.Abs(x) <= math.Abs(p.Value)) {
		*p = Peak{x, k}
	}
}

// A Force is the largest of a force or torque that a run has at one place.
type Force struct {
	Name, Unit string
	Peak
}

// Of compares cars; the tubes needed are for the reserve factor given. The error is
// that of the sizer.
func Of(results []*cases.Results, reserve float64, sizer Sizer) (Comparison, error) {
	out := Comparison{Reserve: reserve, Measure: sizer.Measure()}
	for _, r := range results {
		needs, err := sizer.Needs(r, reserve)
		if err != nil {
			return Comparison{}, err
		}
		for _, d := range needs.Doubts {
			if !slices.Contains(out.Doubts, d) {
				out.Doubts = append(out.Doubts, d)
			}
		}
		out.Cars = append(out.Cars, carOf(r, needs))
	}
	for _, c := range out.Cars[1:] {
		out.Trades = append(out.Trades, trade(out.Cars[0], c))
	}
	return out, nil
}

func carOf(r *cases.Results, needs Needs) Car {
	c := Car{Results: r, Masses: massesOf(r.Car.Axles[:]...)}
	for i, axle := range r.Car.Axles {
		c.Axles[i] = Axle{Masses: massesOf(axle), Moved: movedOf(r, 2*i)}
		if axle.Right != nil {
			right := movedOf(r, 2*i+1)
			c.Axles[i].Right = &right
		}
	}
	for i, corner := range r.Corners {
		out := &c.Corners[i]
		for j, m := range corner.Members {
			out.Members[j] = memberOf(m)
			out.Members[j].Need = needs.Tubes[i][j]
		}
		out.Rocker, out.Chassis, out.Upright = rockerPeaks(corner), pointPeaks(corner, corner.Statics.ChassisForces), pointPeaks(corner, corner.Statics.UprightForces)
	}
	return c
}

func movedOf(r *cases.Results, corner int) Moved {
	m := Moved{FrontalArea: FrontalArea(r.Car.Side(corner))}
	if t, ok := r.Corners[corner].Statics.Travel(); ok {
		m.Travel = &t
	}
	return m
}

func memberOf(m cases.Member) Member {
	tension, compression, inTension, inCompression := m.Extremes()
	return Member{Member: m, Tension: Peak{tension, inTension}, Compression: Peak{compression, inCompression}}
}

// rockerForces are the forces of a rocker; one that it does not have is NaN.
var rockerForces = []struct {
	name, unit string
	of         func(loads.RockerForces) float64
}{
	{"rod_torque", "N·mm", func(f loads.RockerForces) float64 { return f.RodTorque }},
	{"spring", "N", func(f loads.RockerForces) float64 { return f.Spring }},
	{"torsion_bar", "N·mm", func(f loads.RockerForces) float64 { return f.TorsionBar }},
	{"anti_roll_link", "N", func(f loads.RockerForces) float64 { return f.AntiRoll }},
	{"third_spring", "N", func(f loads.RockerForces) float64 { return f.Third }},
	{"pivot", "N", func(f loads.RockerForces) float64 { return r3.Norm(f.Pivot) }},
	{"bearing_1_radial", "N", func(f loads.RockerForces) float64 { return r3.Norm(f.Bearings[0]) }},
	{"bearing_2_radial", "N", func(f loads.RockerForces) float64 { return r3.Norm(f.Bearings[1]) }},
	{"thrust", "N", func(f loads.RockerForces) float64 { return f.Thrust }},
}

func rockerPeaks(c cases.Corner) (out []Force) {
	for _, row := range rockerForces {
		peak := none
		for k, f := range c.Forces {
			if f.Rocker != nil {
				peak.over(row.of(*f.Rocker), k)
			}
		}
		if peak.Case >= 0 {
			out = append(out, Force{row.name, row.unit, peak})
		}
	}
	return out
}

// pointPeaks are the largest forces at named points.
func pointPeaks(c cases.Corner, at func(loads.Forces) []loads.PointForce) (out []Force) {
	for k, f := range c.Forces {
		for i, p := range at(f) {
			if k == 0 {
				out = append(out, Force{p.Name, "N", none})
			}
			out[i].over(r3.Norm(p.Force), k)
		}
	}
	return out
}
