package cases

import (
	"errors"
	"fmt"
	"math"

	"sixlink/loads"
)

// AuditLimit is the residual of the free-body audit above which a run fails,
// relative to the load.
const AuditLimit = 1e-9

// An AuditError is the error for a run whose forces do not balance.
type AuditError struct {
	Audit
	Name string // of the case
}

func (e *AuditError) Error() string {
	return fmt.Sprintf("the free-body audit of %s in case %q leaves %.2g of the load, limit %.0e: the results are withheld; please report it with the car file", CornerNames[e.Corner], e.Name, e.Worst, AuditLimit)
}

// Run carries every case of the car through loads and members. The error joins a
// *Refusal for each case and axle that cannot be calculated, or is an *AuditError.
func Run(car Car) (Results, error) {
	r := Results{Car: car, laminates: car.analyses()}
	var refused []error
	r.Cases, refused = car.Unfold()
	statics, faults := car.prepare()
	refused = append(faults, refused...)
	if len(refused) > 0 {
		return Results{}, errors.Join(refused...)
	}
	places, refused := car.place(r.Cases, statics)
	if len(refused) > 0 {
		return Results{}, errors.Join(refused...)
	}
	for i := range r.Corners {
		r.Corners[i].Statics, r.Corners[i].Places = statics[i], places[i]
	}
	if refused := r.springLoads(); len(refused) > 0 {
		return Results{}, errors.Join(refused...)
	}
	if err := r.check(); err != nil {
		return Results{}, err
	}
	r.stiffen()
	if refused := r.move(); len(refused) > 0 {
		return Results{}, errors.Join(refused...)
	}
	r.remark()
	return r, nil
}

// prepare makes the statics of the four corners.
func (c Car) prepare() (out [NumCorners]*loads.Statics, refused []error) {
	for axle := range c.Axles {
		a := &c.Axles[axle]
		for side := range SideNames {
			s, err := loads.NewStatics(a.At(side).Corner)
			if err != nil {
				refused = append(refused, refusedCorner(axle, side, err))
				if a.Right == nil {
					break // the mirror image would be refused for the same cause
				}
				continue
			}
			out[2*axle+side] = s
		}
		if left, right := out[2*axle], out[2*axle+1]; left != nil && right != nil {
			if err := loads.CheckAxle(left, right); err != nil {
				refused = append(refused, refusedCorner(axle, Left, err))
			}
		}
	}
	return out, refused
}

func refusedCorner(axle, side int, err error) error {
	path := AxleNames[axle]
	if side == Right {
		path += ".right"
	}
	r := &Refusal{Reason: Mechanism, Path: path, Text: err.Error(), Remedy: "move the hardpoints of the links named so that they hold that motion"}
	var fault *loads.RockerFault
	if errors.As(err, &fault) {
		r.Reason = Unlevered
		r.Path, r.Remedy = path+"."+fault.Path, fault.Remedy
	}
	return r
}

// solve fills the forces and the audit.
func (r *Results) solve() {
	for i := range r.Corners {
		r.Corners[i].Forces = make([]loads.Forces, len(r.Cases))
	}
	for k, c := range r.Cases {
		for left := 0; left < NumCorners; left += 2 {
			right := left + 1
			fl, fr := loads.SolveAxle(r.Corners[left].In(k), r.Corners[right].In(k), c.Wheels[left].Load(), c.Wheels[right].Load())
			r.Corners[left].Forces[k], r.Corners[right].Forces[k] = fl, fr
			r.audit(left, k, fl.Residual)
			r.audit(right, k, fr.Residual)
		}
	}
}

// Load returns what acts on the upright from outside.
func (w Wheel) Load() loads.WheelLoad {
	return loads.WheelLoad{Force: w.Force, Moment: w.Moment, Inertia: w.Inertia, Released: w.Released}
}

func (r *Results) audit(corner, k int, residual float64) {
	if residual > r.Audit.Worst || math.IsNaN(residual) { // one that is not a number stays
		r.Audit = Audit{residual, corner, k}
	}
}
