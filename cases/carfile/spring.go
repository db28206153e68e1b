package carfile

import (
	"fmt"

	"sixlink/cases"
)

// spring reads what the file says of the spring or torsion bar of a rocker; nil: nothing.
func (b *builder) spring(rocker *item) *cases.Spring {
	it, bar := rocker.at("spring"), rocker.at("torsion_bar_spring")
	switch {
	case bar.given:
		s := &cases.Spring{Rate: newtonMillimetres * bar.at("rate").number()}
		if preload := bar.at("preload"); preload.given {
			s.Stated, s.Preload = cases.Preloaded, newtonMillimetres*preload.number()
		}
		return s
	case !it.at("rate").given:
		return nil
	}
	s := &cases.Spring{Rate: it.at("rate").number()}
	preload, free := it.at("preload"), it.at("free_length")
	switch {
	case preload.given && free.given:
		b.refuse(free, "preload and free_length both say how the spring stands", "give one of the two")
	case preload.given:
		s.Stated, s.Preload = cases.Preloaded, preload.number()
	case free.given:
		s.Stated, s.Free = cases.FreeLength, free.number()
	}
	if stop := it.at("bump_stop"); stop.given {
		s.Stop = &cases.BumpStop{Gap: stop.at("gap").number(), Force: b.springCurve(stop, "compression")}
		if x := stop.at("compression"); whole(x) && len(x.numbers) > 0 && x.numbers[0] != 0 {
			b.refuse(x, fmt.Sprintf("the curve begins at %s mm, and the stop touches at 0 mm", short(x.numbers[0])), "begin with 0, and the force there")
		}
	}
	if damper := it.at("damper"); damper.given {
		s.Damper = b.springCurve(damper, "speed")
		for _, p := range s.Damper {
			if p.X*p.Y < 0 {
				b.refuse(damper.at("force"), fmt.Sprintf("%s N at %s m/s drives the spring on", short(p.Y), short(p.X)), "a damper holds against its speed: give speed and force the same sign")
				break
			}
		}
	}
	return s
}

// springCurve reads a curve of forces; x names the other list.
func (b *builder) springCurve(it *item, x string) (out cases.Curve) {
	at, force := it.at(x), it.at("force")
	if !whole(at, force) {
		return nil
	}
	if len(at.numbers) != len(force.numbers) || len(at.numbers) < 2 {
		b.refuse(it, fmt.Sprintf("%s has %d numbers and force %d", x, len(at.numbers), len(force.numbers)), "give two points at least, a force for each "+x)
		return nil
	}
	for i, v := range at.numbers {
		if i > 0 && v <= at.numbers[i-1] {
			b.fault(at.places[i], at.path, flaw{fmt.Sprintf("%s follows %s", short(v), short(at.numbers[i-1])), "give the points in rising order"})
			return nil
		}
		out = append(out, cases.CurvePoint{X: v, Y: force.numbers[i]})
	}
	return out
}
