// Package cases holds the car and its load cases, turns each case into contact
// forces, and runs every case through loads and members.
//
// Quantities are plain float64 in one coherent set: N, mm, MPa, N·mm, kg; car
// accelerations in g, speeds in m/s, aerodynamic areas in m². Axes: ISO 8855.
package cases

import (
	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/members/check"

	"sixlink/members"
	"sixlink/members/ends"
	"sixlink/members/laminate"
)

// G is the standard acceleration of free fall, m/s² (ISO 80000-3; CGPM 1901).
const G = 9.80665

// The axles, in the order of every array and report.
const (
	Front = iota
	Rear
)

// AxleNames are the names of the axles in files and reports.
var AxleNames = [2]string{"front", "rear"}

// The corners, in the order of every array and report.
const (
	FrontLeft = iota
	FrontRight
	RearLeft
	RearRight
	NumCorners
)

// CornerNames are the names of the corners in files and reports.
var CornerNames = [NumCorners]string{"front_left", "front_right", "rear_left", "rear_right"}

// A Car is all that a car file says, in ISO 8855 axes and units of this package.
type Car struct {
	Name, Revision, Notes string

	Axes       string // the axes in which the file was drawn, in words; empty: ISO 8855
	Vehicle    Vehicle
	Factors    check.Factors
	Axles      [2]Axle // front, rear
	Cases      []Case
	OwnInertia bool     // every member bends by its own weight and inertia
	Doubts     []string // what reading assumed or wonders at: a warning in every report

	Files []InputFile // that the car file names and that hold a part of the car
}

// An InputFile is a file that a car was read from beside the car file.
type InputFile struct {
	Name   string `json:"file"`   // as it stands in the car file
	SHA256 string `json:"sha256"` // of its bytes, hexadecimal
	Says   string `json:"-"`      // what was read from it, in a sentence
}

// A Vehicle is the car as one body.
type Vehicle struct {
	Mass                 float64 // with driver and fuel, kg
	FrontWeightShare     float64 // 0 to 1
	CGHeight             float64 // above the ground, mm
	Wheelbase            float64 // mm
	FrontRollCoupleShare float64 // 0 to 1
	TyreFriction         float64 // peak; 0: not given, no warning

	Aero   Aero
	Brakes Brakes
	Drive  Drive
}

// Aero holds the aerodynamic constants. The zero value is a car without any.
type Aero struct {
	LiftArea, DragArea float64 // m², downforce and drag positive
	FrontShare         float64 // of the downforce, 0 to 1
	AirDensity         float64 // kg/m³
	DragHeight         float64 // of the drag's line of action above the ground, mm
}

// Brakes say how the braking force is shared and where the brakes sit.
type Brakes struct {
	Given      bool    // false: the file has none, a braked manoeuvre is refused
	FrontShare float64 // 0 to 1
	Inboard    [2]bool // by axle: on the chassis, not on the upright
}

// Drive says how the driving force is shared and what drives the wheels.
type Drive struct {
	FrontShare float64 // 0 to 1
	Hub        bool    // hub motors on the uprights; false: shafts from the chassis
}

// An Axle is one axle of the car. What a corner of it is, right-hand ones too, tells
// Car.Side.
type Axle struct {
	UnsprungMass float64 // one corner, kg
	Side                 // the left-hand side
	Right        *Side   // the right-hand side; nil: the mirror image of the left
	Inboard      []InboardPart
	Motion       *Motion    // nil: the file does not say how far the wheels move
	Stiffness    *Stiffness // of both sides; nil: not given
}

// A Part is what a member is made of. Its length comes from the geometry.
type Part struct {
	Strut    members.Strut
	Laminate *laminate.Laminate // nil: of the metal of Strut; otherwise that metal speaks for it in reports
	Sources  members.Sources    // of bending: what the file gives, alike in every case
	Ends     [2]ends.End        // outer, inner
	Number   string             // part number
	Notes    string

	Certificate string // heat number or certificate of the material
}

// A Kind is one of the four ways to state a load case.
type Kind int

// The kinds of load case.
const (
	WheelFactors Kind = iota
	Manoeuvre
	ContactForces
	SpringForces // of what spring, stop and damper do at the place of the wheels
)

// A Torque says what the wheel does with a torque about its spin axis.
type Torque int

// The states of a wheel.
const (
	ByCase Torque = iota // not stated: the kind of case decides
	Rolling
	Braked
	Driven
)

// TorqueNames are the names of the states in files and reports.
var TorqueNames = [...]string{"", "rolling", "braked", "driven"}

// A Case is a load case as the file states it; it may unfold into two.
type Case struct {
	Name, Basis string

	Kind         Kind
	Factors      [3]float64                // WheelFactors: forward, towards the centreline, up; × static wheel load
	Acceleration [2]float64                // Manoeuvre: forward, left, g
	Speed        float64                   // Manoeuvre: m/s
	Contact      [NumCorners]*ContactForce // ContactForces: nil where the wheel is at its static load

	Damper DamperSpeeds // SpringForces

	Place Placing // where the wheels are; of the left turn where both ways turn left as stated, else of the right

	BothWays bool    // Manoeuvre: two cases, left turn and right turn
	OneSide  bool    // WheelFactors: two cases, left wheels and right wheels
	Wheel    Torque  // ByCase unless the file says so
	Unsprung *r3.Vec // acceleration of the unsprung masses, g; nil: none stated

	// LoadFactor is on every load of the case once it is known: contact forces and their
	// moments, weight and inertia of the unsprung mass and of the members. So every force in
	// the structure grows with it, but for side loads that the file states of a member. No
	// file has it; 0 stands for 1.
	LoadFactor float64
}

// A ContactForce is the road's force on one tyre, N, with its moment about the
// contact point, N·mm.
type ContactForce struct{ Force, Moment r3.Vec }
