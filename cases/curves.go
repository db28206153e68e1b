package cases

import (
	"errors"
	"fmt"
	"math"

	"sixlink/loads/motion"
)

// Curves are what a corner does as its wheel travels and its rack moves.
type Curves struct {
	Corner         int
	Travels, Racks []float64
	Reach          motion.Reach // of the travel with the rack as drawn
	Lock           motion.Reach // of the rack with the wheel as drawn
	Drawn          motion.Position
	Positions      []motion.Position // all travels at the first rack, then at the next
	Reserves       []CurveReserve    // of each position; nil: not asked for
}

// A CurveReserve is the lowest reserve factor of the members of a corner at a position
// over all load cases.
type CurveReserve struct {
	Reserve     float64 // NaN: nothing has a load
	Link        int     // −1: none
	Check, Case string  // names
	Refused     string  // why the corner cannot be calculated there; empty: it was
}

// NoReserve is that of a corner without a load.
var NoReserve = CurveReserve{Reserve: math.NaN(), Link: -1}

// Curves moves a corner through travels and racks, mm. Its error is a *Refusal, with the
// range where it is out of reach.
func (c *Car) Curves(corner int, travels, racks []float64) (Curves, error) {
	l, err := motion.New(c.Side(corner).Corner)
	if err != nil {
		return Curves{}, unled(c, corner, err)
	}
	return curvesOf(l, corner, travels, racks)
}

func curvesOf(l *motion.Linkage, corner int, travels, racks []float64) (out Curves, err error) {
	out = Curves{Corner: corner, Travels: travels, Racks: racks}
	if out.Drawn, err = l.At(0, 0); err != nil {
		return out, err
	}
	if out.Reach, err = l.Travels(0); err != nil {
		return out, err
	}
	if out.Lock, err = l.Racks(0); err != nil {
		return out, err
	}
	out.Positions, err = l.Sweep(travels, racks)
	var beyond *motion.Beyond
	if errors.As(err, &beyond) {
		r := outOfReach(l, corner, beyond.Travel, beyond.Rack, err)
		r.Path = AxleNames[axleOf(corner)]
		return out, r
	}
	return out, err
}

// At returns the position at a travel and a rack by their places in the lists.
func (c *Curves) At(travel, rack int) *motion.Position {
	return &c.Positions[rack*len(c.Travels)+travel]
}

// Change returns by what share the travel ratio differs from that of the drawn position.
func (c *Curves) Change(p *motion.Position) float64 {
	drawn := c.Drawn.Ratio()
	return p.Ratio().Ratio/drawn.Ratio - 1
}

// Ranges returns the travels and racks of an axle from its motion in the file, in steps;
// without one, of 30 mm to either side with the rack as drawn.
func (c *Car) Ranges(corner int) (travel, rack [2]float64) {
	if m := c.Axles[axleOf(corner)].Motion; m != nil {
		return m.Travel, m.Rack
	}
	return [2]float64{-usualTravel, usualTravel}, [2]float64{}
}

// usualTravel is the travel that is looked at where the file says nothing, mm. Common
// practice, no published source.
const usualTravel = 30

// Range returns the numbers from one end of a range to the other in steps, both ends in it.
func Range(from, to, step float64) ([]float64, error) {
	n := math.Round((to - from) / step)
	if from == to {
		n = 0
	}
	switch {
	case !(n >= 0) || math.IsInf(n, 0) || from != to && !(math.Abs(from+n*step-to) <= 1e-9*math.Max(math.Abs(to), math.Abs(step))):
		return nil, fmt.Errorf("from %g to %g there are no whole steps of %g: choose a step that fits", from, to, step)
	case n > mostPositions:
		return nil, fmt.Errorf("%.0f steps are more than %d: choose a larger step", n, mostPositions)
	}
	var out []float64
	for i := range int(n) + 1 {
		x := from + (to-from)*float64(i)/math.Max(n, 1)
		if math.Abs(x) < 1e-9*math.Abs(step) {
			x = 0
		}
		out = append(out, x)
	}
	return out, nil
}

// mostPositions bounds the travels, and the racks, of one sweep: our own choice.
const mostPositions = 2000
