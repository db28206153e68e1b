package cases

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"sixlink/loads"
	"sixlink/loads/motion"
)

// A Place is where a corner stands in a load case.
type Place struct {
	Statics  *loads.Statics
	Position *motion.Position // nil: as drawn
}

// In returns the statics of a corner where it stands in a case.
func (c *Corner) In(k int) *loads.Statics {
	if c.Places == nil {
		return c.Statics
	}
	return c.Places[k].Statics
}

// Moved returns the position of a corner in a case; nil where it stands as drawn.
func (c *Corner) Moved(k int) *motion.Position {
	if c.Places == nil {
		return nil
	}
	return c.Places[k].Position
}

// A stand is a place of both corners of an axle: travel left and right, and the rack, mm.
// A third spring joins the two, so that each depends on both.
type stand [3]float64

func standOf(p *Placing, axle int) stand {
	return stand{p.Travel[2*axle], p.Travel[2*axle+1], p.Rack[axle]}
}

// A placer puts the corners of a car where its cases have them, each place once.
type placer struct {
	car      *Car
	drawn    [NumCorners]*loads.Statics
	linkages [NumCorners]*motion.Linkage
	seen     [2]map[stand][2]Place
}

// place returns where each corner stands in each case, and a *Refusal for each case or
// axle that cannot be placed. Without a case that moves a wheel it returns nothing.
func (c *Car) place(list []LoadCase, drawn [NumCorners]*loads.Statics) (out [NumCorners][]Place, refused []error) {
	if !moved(list) {
		return out, nil
	}
	p := placer{car: c, drawn: drawn}
	failed := map[[2]int]bool{} // case of the file and axle; the axle alone with case −1
	for k := range list {
		for axle := range c.Axles {
			at := standOf(&list[k].Place, axle)
			pair, err := p.pair(axle, at)
			var r *Refusal
			if errors.As(err, &r) {
				key := [2]int{-1, axle}
				if r.Path == "" {
					key[0] = list[k].Index
					r.Path, r.Name = fmt.Sprintf("cases[%d]", list[k].Index), list[k].Name
				}
				if !failed[key] {
					failed[key] = true
					refused = append(refused, r)
				}
			}
			out[2*axle], out[2*axle+1] = append(out[2*axle], pair[0]), append(out[2*axle+1], pair[1])
		}
	}
	return out, refused
}

// moved tells whether a case has a wheel or a rack anywhere but where it is drawn.
func moved(list []LoadCase) bool {
	return slices.ContainsFunc(list, func(lc LoadCase) bool { return lc.Place.Moved() })
}

// restand makes the statics of a corner afresh in each place to which it moves, from the
// sections of a side; false: they cannot be solved.
func (c *Corner) restand(s *Side) bool {
	if c.Places == nil {
		return true
	}
	places, made := make([]Place, len(c.Places)), map[*loads.Statics]*loads.Statics{}
	for k, p := range c.Places {
		places[k] = Place{Statics: c.Statics, Position: p.Position}
		if p.Position == nil {
			continue
		}
		if made[p.Statics] == nil {
			corner := p.Statics.Corner
			for j := range corner.Links {
				corner.Links[j].EA, corner.Links[j].EI = s.Corner.Links[j].EA, s.Corner.Links[j].EI
			}
			statics, err := loads.NewStatics(corner)
			if err != nil {
				return false
			}
			made[p.Statics] = statics
		}
		places[k].Statics = made[p.Statics]
	}
	c.Places = places
	return true
}

// remarkPlaces says what is taken of the cases that move a wheel.
func (r *Results) remarkPlaces() {
	if moved(r.Cases) {
		r.note(Remark, "cases with travel or rack: the links are rigid and stand where wheel and rack have moved them, and the contact point is the lowest point of the moved wheel; the wheel loads of a manoeuvre are those of the car as drawn (its track, wheelbase and centre of gravity), and forces stay in vehicle axes: they do not turn with a steered wheel")
	}
}

// pair places both corners of an axle. The path of its *Refusal is empty where the place
// is at fault, not the axle.
func (p *placer) pair(axle int, at stand) (out [2]Place, err error) {
	if at == (stand{}) {
		return [2]Place{{Statics: p.drawn[2*axle]}, {Statics: p.drawn[2*axle+1]}}, nil
	}
	if p.seen[axle] == nil {
		p.seen[axle] = map[stand][2]Place{}
	}
	if out, ok := p.seen[axle][at]; ok {
		return out, nil
	}
	for side := range out {
		if out[side].Position, err = p.position(2*axle+side, at[side], at[2]); err != nil {
			return [2]Place{}, err
		}
	}
	join(&out[0].Position.Corner, &out[1].Position.Corner)
	for side := range out {
		if out[side].Statics, err = loads.NewStatics(out[side].Position.Corner); err != nil {
			return [2]Place{}, unfit(2*axle+side, at, err)
		}
	}
	if err := loads.CheckAxle(out[0].Statics, out[1].Statics); err != nil {
		return [2]Place{}, unfit(2*axle, at, err)
	}
	p.seen[axle][at] = out
	return out, nil
}

// join gives each end of a third spring its far end, on the other rocker.
func join(left, right *loads.Corner) {
	if left.Rocker == nil || right.Rocker == nil || left.Rocker.Third == nil || right.Rocker.Third == nil {
		return
	}
	left.Rocker.Third.Far, right.Rocker.Third.Far = right.Rocker.Third.Rocker, left.Rocker.Third.Rocker
}

// position moves one corner.
func (p *placer) position(corner int, travel, rack float64) (*motion.Position, error) {
	l := p.linkages[corner]
	if l == nil {
		var err error
		if l, err = motion.New(p.car.Side(corner).Corner); err != nil {
			return nil, unled(p.car, corner, err)
		}
		p.linkages[corner] = l
	}
	at, err := l.At(travel, rack)
	if err != nil {
		return nil, outOfReach(l, corner, travel, rack, err)
	}
	return &at, nil
}

// unled is the refusal of a corner that cannot be moved at all.
func unled(c *Car, corner int, err error) error {
	r := &Refusal{Reason: Unled, Path: AxleNames[axleOf(corner)], Text: err.Error(), Remedy: "correct the hardpoints, or give no travel and no rack"}
	if corner%2 == Right && c.Axles[axleOf(corner)].Right != nil {
		r.Path += ".right"
	}
	var fault *motion.Fault
	if errors.As(err, &fault) {
		r.Text, r.Remedy = fault.Text, fault.Remedy+", or give no travel and no rack"
	}
	return r
}

// unfit is the refusal of a place in which the statics cannot be.
func unfit(corner int, at stand, err error) error {
	return &Refusal{
		Reason: Mechanism, Remedy: "keep the wheel short of that place, or move the hardpoints",
		Text: fmt.Sprintf("%s at travel %.4g mm, rack %.4g mm: %v", cornerWords(corner), at[corner%2], at[2], err),
	}
}

func cornerWords(corner int) string { return strings.ReplaceAll(CornerNames[corner], "_", " ") }

// outOfReach is the refusal of a place to which a corner does not get, with the range to
// which it does.
func outOfReach(l *motion.Linkage, corner int, travel, rack float64, err error) *Refusal {
	r := &Refusal{Reason: OutOfReach, Remedy: "stay inside that range, or correct the hardpoints"}
	var beyond *motion.Beyond
	if !errors.As(err, &beyond) {
		r.Text = fmt.Sprintf("%s: %v", cornerWords(corner), err)
		return r
	}
	what, value, reach, wrong := "travel", travel, motion.Reach{}, error(nil)
	if reach, wrong = l.Travels(rack); wrong != nil {
		what, value = "rack", rack
		if reach, wrong = l.Racks(0); wrong != nil {
			r.Text = fmt.Sprintf("%s: %v", cornerWords(corner), err)
			return r
		}
	}
	low, high := reach.Low.Travel, reach.High.Travel
	if what == "rack" {
		low, high = reach.Low.Rack, reach.High.Rack
	}
	where := fmt.Sprintf(" with the rack at %.4g mm", rack)
	if what == "rack" || rack == 0 {
		where = ""
	}
	r.Text = fmt.Sprintf("%s: a %s of %.4g mm%s is out of reach: it goes from %.1f mm to %.1f mm; at that end %s", cornerWords(corner), what, value, where, low, high, beyond.Stop.Text)
	return r
}
