package carfile

import (
	"fmt"

	"sixlink/cases"
)

// placing reads where the wheels of a case are.
func (b *builder) placing(e *item, c *cases.Case) {
	travel, rack := e.at("travel"), e.at("rack")
	c.Place.Given = travel.given || rack.given
	c.Place.Travel, _ = b.wheels(travel)
	if c.OneSide && b.perWheel(travel) {
		b.refuse(travel, "one_side makes two cases, the left wheels alone and the right wheels alone, and the wheels at rest stay as drawn", "give one number, or one of each axle")
	}
	if rack.fields == nil {
		c.Place.Rack[cases.Front] = rack.number()
		return
	}
	b.someOf(rack)
	for i, name := range cases.AxleNames {
		c.Place.Rack[i] = rack.at(name).number()
	}
}

// wheels reads a number of all wheels, of each axle or of each wheel, and says of which
// wheels there is one.
func (b *builder) wheels(it *item) (out [cases.NumCorners]float64, given [cases.NumCorners]bool) {
	for corner, wheel := range cases.CornerNames {
		axle := cases.AxleNames[corner/2]
		of := it.at(wheel)
		switch {
		case it.fields == nil:
			of = it
		case !of.given:
			of = it.at(axle)
		case it.at(axle).given:
			b.refuse(of, axle+" speaks of both "+axle+" wheels already", "give "+axle+" alone, or each wheel by itself")
		}
		out[corner], given[corner] = of.number(), of.given
	}
	b.someOf(it)
	return out, given
}

// someOf refuses an empty mapping.
func (b *builder) someOf(it *item) {
	if it.given && it.good && it.fields != nil && len(it.fields) == 0 {
		b.refuse(it, "nothing is given in it", it.key.advice())
	}
}

func (b *builder) perWheel(it *item) bool {
	for _, wheel := range cases.CornerNames {
		if it.at(wheel).given {
			return true
		}
	}
	return false
}

// motion reads how far the wheels of an axle move; nil: the file does not say.
func (b *builder) motion(it *item) *cases.Motion {
	if !it.given {
		return nil
	}
	m := &cases.Motion{Clearance: it.at("clearance").number()}
	for _, of := range []struct {
		name string
		into *[2]float64
	}{{"travel", &m.Travel}, {"rack", &m.Rack}} {
		x := it.at(of.name)
		if !whole(x) || len(x.numbers) != 2 {
			continue
		}
		low, high := x.numbers[0], x.numbers[1]
		if !(low <= 0 && high >= 0) {
			b.refuse(x, fmt.Sprintf("from %s mm to %s mm does not go through the position drawn, 0 mm", short(low), short(high)), "give "+x.key.Doc)
			continue
		}
		*of.into = [2]float64{low, high}
	}
	return m
}
