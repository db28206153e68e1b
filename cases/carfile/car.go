package carfile

import (
	"fmt"

	"sixlink/members/check"

	"sixlink/cases"
)

// A builder makes the car of what the reader found, and checks what no single key
// can show.
type builder struct {
	*reader
	car     cases.Car
	turn    turn
	moves   bool // the axle that is read says how far its wheels move
	lost    bool // the axes could not be read: nothing is known of directions
	metals  metals
	parts   parts
	hand    int // side that is read: cases.Left, cases.Right
	stacks  stacks
	refused struct{ acceleration, moment bool } // for the sake of the axes, once
}

func (b *builder) doubt(text string) { b.car.Doubts = append(b.car.Doubts, text) }

func (b *builder) build(top *item) {
	b.car.Name, b.car.Revision, b.car.Notes = top.at("car").text, top.at("revision").text, top.at("notes").text
	b.axes(top.at("axes"))
	b.takeList()
	b.vehicle(top.at("vehicle"))
	b.factors(top.at("design_factors"))
	b.materials(top.at("materials"))
	b.readParts(top.at("parts"))
	b.laminates(top.at("laminates"))
	for i, name := range cases.AxleNames {
		b.car.Axles[i] = b.axle(top.at(name))
	}
	b.car.OwnInertia = top.at("own_inertia").flag
	b.stance(top)
	b.masses(top)
	b.loadCases(top.at("cases"))
}

func (b *builder) vehicle(it *item) {
	v := cases.Vehicle{
		Mass:                 it.at("mass").number(),
		FrontWeightShare:     it.at("front_weight_share").number(),
		CGHeight:             it.at("cg_height").number(),
		Wheelbase:            it.at("wheelbase").number(),
		FrontRollCoupleShare: it.at("front_roll_couple_share").number(),
		TyreFriction:         it.at("tyre_friction").number(),
	}
	if aero := it.at("aero"); aero.given {
		v.Aero = cases.Aero{
			LiftArea: aero.at("lift_area").number(), DragArea: aero.at("drag_area").number(),
			FrontShare: aero.at("front_share").number(), AirDensity: aero.at("air_density").number(),
			DragHeight: aero.at("drag_height").number(),
		}
		if v.Aero.LiftArea < 0 {
			b.doubt("vehicle.aero.lift_area is negative: the air lifts the car; downforce is positive")
		}
		if !aero.at("drag_height").given {
			v.Aero.DragHeight = v.CGHeight
		}
	}
	if brakes := it.at("brakes"); brakes.given {
		v.Brakes = cases.Brakes{Given: true, FrontShare: brakes.at("front_share").number()}
		for i, name := range cases.AxleNames {
			v.Brakes.Inboard[i] = brakes.at(name).text == "inboard"
		}
	}
	if drive := it.at("drive"); drive.given {
		v.Drive = cases.Drive{FrontShare: drive.at("front_share").number(), Hub: drive.at("by").text == "hub"}
	} else {
		b.doubt("no vehicle.drive in the file: rear drive by shafts is assumed")
	}
	b.car.Vehicle = v
}

func (b *builder) factors(it *item) {
	b.car.Factors = check.Defaults
	if it.given {
		b.car.Factors = check.Factors{
			Yield: it.at("yield").number(), Ultimate: it.at("ultimate").number(), Buckling: it.at("buckling").number(),
			Fitting: it.at("fitting").number(),
		}
		return
	}
	d := check.Defaults
	b.doubt(fmt.Sprintf("no design_factors in the file: the starting values are used, yield %g, ultimate %g, buckling %g", d.Yield, d.Ultimate, d.Buckling))
}

// masses holds the unsprung masses to the mass of the car.
func (b *builder) masses(top *item) {
	mass, front, rear := top.at("vehicle").at("mass"), top.at("front").at("unsprung_mass"), top.at("rear").at("unsprung_mass")
	if !whole(mass, front, rear) {
		return
	}
	if unsprung := 2 * (front.number() + rear.number()); unsprung >= mass.number() {
		b.refuse(mass, fmt.Sprintf("%s kg is not more than the unsprung mass of the four corners, %s kg", short(mass.number()), short(unsprung)),
			"correct the mass of the car, or front.unsprung_mass and rear.unsprung_mass, each that of one corner")
	}
}
