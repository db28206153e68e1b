// Package duty says how long a part may run: what a lap does to the car (blocks of load
// cases, logged histories), the stresses of that at the details of each member, the
// cycles in them, and the damage that they do.
//
// A history becomes member forces by the influence of each corner (loads.Influence),
// sample by sample, so that axial force and bending stay together in time. A file is
// read in pieces, which are counted side by side and joined in their order: memory does
// not grow with the file, and the answer does not depend on the number of cores.
//
// Quantities are plain float64: N, N·mm, mm, MPa, s; accelerations in g, speeds in m/s,
// distances run in km. Tension is positive. What is without end is +Inf.
package duty

import "sixlink/members/fatigue"

// Format is that of the JSON of a life.
const Format = "sixlink-life/1"

// A Duty is what the car does in a lap, and which details are judged by it.
type Duty struct {
	LapLength  float64 // km
	Wanted     float64 // distance that every detail is to run, km; 0: not stated
	LifeFactor float64 // by which the calculated life is divided, for its scatter
	LoadFactor float64 // on every stress range and mean
	Inspection float64 // share of the released distance between two inspections, 0 to 1
	Survival   float64 // share of parts that live longer, where a curve has it as a choice, 0.5 to 1

	Blocks    []Block
	Histories []History
	Details   []Detail
}

// A Block is load cases one after the other, again and again in every lap.
type Block struct {
	Name  string
	Cases []string // names after unfolding, at least two
	Times float64  // how often the sequence is run in a lap; below 1: not in every lap
}

// A History is a log in a CSV file.
type History struct {
	Name string
	File string  // as the car file has it
	Laps float64 // how many laps the file holds
	Part float64 // share of the laps of the duty that are like these, 0 to 1

	Columns  []Column
	Wheel    Wheel
	UnitsRow bool    // below the heading stands a row that is no sample
	LongStep float64 // longest step of time between two rows, s; 0: LongSteps times the usual one
	BadRows  int     // rows that may be left out because they cannot be read
}

// LongSteps is how many times the usual step of time a step may be, the median of the first
// 100, where the file of the car states no limit: common practice, no published source.
const LongSteps = 5

// A Column says where the file has a channel. The number in the file times Factor is in
// the unit of the channel.
type Column struct {
	Channel
	Name   string // in the heading
	Factor float64
}

// A Channel is what a column may hold.
type Channel struct {
	Corner int // of cases.CornerNames; Car: of the whole car
	What   Quantity
}

// Car is the corner of the channels of the whole car.
const Car = -1

// A Quantity is what a channel measures, in ISO 8855 axes.
type Quantity int

// The quantities. Those from ForceX on belong to a corner: the force of the road on the
// tyre, its moment about the contact point, and the acceleration of the unsprung mass.
const (
	Time          Quantity = iota // s
	AccelerationX                 // of the car, forward, g
	AccelerationY                 // of the car, to the left, g
	Speed                         // m/s
	ForceX                        // N
	ForceY
	ForceZ
	MomentX // N·mm
	MomentY
	MomentZ
	UnsprungX // g
	UnsprungY
	UnsprungZ
	numQuantities
)

// QuantityNames are the names of the quantities in files and messages.
var QuantityNames = [numQuantities]string{
	"time", "acceleration_x", "acceleration_y", "speed", "force_x", "force_y", "force_z",
	"moment_x", "moment_y", "moment_z", "unsprung_x", "unsprung_y", "unsprung_z",
}

// A Wheel says what the wheels of a log of forces do with a torque.
type Wheel int

// The ways to tell. FromForce: braked where the road pushes the tyre rearward, driven
// where it pushes it forward.
const (
	FromForce Wheel = iota
	AlwaysRolling
	AlwaysBraked
	AlwaysDriven
)

// WheelNames are their names in files.
var WheelNames = []string{"from_force", "rolling", "braked", "driven"}

// byForces tells whether a history has forces of the wheels, not accelerations.
func (h *History) byForces() bool {
	for _, c := range h.Columns {
		if c.What >= ForceX {
			return true
		}
	}
	return false
}

// A Place is where along a member a detail sits.
type Place int

// The places. Ends are both.
const (
	Ends Place = iota
	Outer
	Inner
	Middle
)

// PlaceNames are their names in files.
var PlaceNames = []string{"ends", "outer", "inner", "middle"}

// share is how much of the bending at the apex of a carrying wishbone's leg is left
// there: the leg is built in at its outer end and free to turn at the inner one.
//
//	M(x) = S·x, x from the inner joint
func (p Place) share() float64 { return [...]float64{Outer: 1, Inner: 0, Middle: 0.5}[p] }

// All stands for both axles, or for all members.
const All = -1

// A Detail is what is judged of members.
type Detail struct {
	Name       string
	Axle, Link int // All: of each
	Place      Place

	Curve Curve

	// Where neither is given the section of the member carries the stress.
	StressArea float64 // of a thread in the end, mm²; 0: none
	Thread     string
	Throat     float64 // of a weld round the tube, mm; 0: none
}

// holds tells whether the detail is one of a member.
func (d *Detail) holds(corner, link int) bool {
	return (d.Axle == All || d.Axle == corner/2) && (d.Link == All || d.Link == link)
}

// places are where the detail sits.
func (d *Detail) places() []Place {
	if d.Place == Ends {
		return []Place{Outer, Inner}
	}
	return []Place{d.Place}
}

// A Kind is a kind of strength curve.
type Kind int

// The kinds.
const (
	ByDetail   Kind = iota // a row of EN 1993-1-9
	ByStrain               // strain life
	ByStress               // stress life of a metal tested
	ByEstimate             // stress life of a steel from its ultimate strength
	ByHandbook             // an equation of MIL-HDBK-5J
)

// A Curve says which strength curve a detail has.
type Curve struct {
	Kind     Kind
	Row      string  // of its table: the name of the detail, metal or equation
	Partial  float64 // γ_Mf of EN 1993-1-9
	Relieved bool
	Rule     fatigue.MeanRule
	Exponent float64 // γ of Walker's rule; 0: that of a steel by its ultimate strength
	Kt       float64 // stress concentration, at least 1
	Radius   float64 // of the notch, mm; 0: the notch counts in full
	Surface  string
	Survival float64 // 0: that of the duty
}
