package cases

import (
	"strings"

	"sixlink/loads"
)

// A Side is one side of an axle: what a corner is, in vehicle axes.
type Side struct {
	Corner loads.Corner // y above 0 on the left-hand side, below 0 on the right
	Parts  [loads.NumLinks]Part
	Rocker *Rocker // nil: the file says nothing of it beyond its points
	Spring *Spring // nil: the file says nothing of it beyond its points

	// Own tells of the right-hand side which members have a section of their own; the
	// sections of the others are those of the left, and change with them.
	Own [loads.NumLinks]bool
}

// The sides of an axle: a corner is 2·axle + side.
const (
	Left = iota
	Right
)

// SideNames are the names of the sides in reports.
var SideNames = [2]string{"left", "right"}

// Side returns what a corner is. The parts of mirror images are the same.
func (c *Car) Side(corner int) Side { return c.Axles[axleOf(corner)].At(corner % 2) }

// At returns one side of an axle.
func (a *Axle) At(side int) Side {
	switch {
	case side == Left:
		return a.Side
	case a.Right != nil:
		return *a.Right
	}
	return Side{Corner: a.Corner.Mirrored(), Parts: a.Parts, Rocker: a.Rocker, Spring: a.Spring}
}

// Part returns what a member is made of, as the car holds it: both sides of an axle hold
// the same one where they are mirror images.
func (c *Car) Part(corner, link int) *Part {
	return &c.Axles[axleOf(corner)].own(corner % 2).Parts[link]
}

// own returns the side of an axle that the car holds for one: the left-hand one for both
// where they are mirror images.
func (a *Axle) own(side int) *Side {
	if side == Right && a.Right != nil {
		return a.Right
	}
	return &a.Side
}

// Unpair makes the right-hand side one that can differ from the left.
func (a *Axle) Unpair() {
	if a.Right == nil {
		right := a.At(Right)
		a.Right = &right
	}
}

// Held are the sides that the car holds: the left-hand one, and the right-hand one where
// it is no mirror image.
func (a *Axle) Held() []*Side {
	if a.Right == nil {
		return []*Side{&a.Side}
	}
	return []*Side{&a.Side, a.Right}
}

// Refresh works out afresh what follows from hardpoints and sections: lengths, E·A, E·I.
func (a *Axle) Refresh() {
	a.Side.refresh()
	if a.Right != nil {
		a.Right.refresh()
	}
}

func (s *Side) refresh() {
	for j := range s.Parts {
		s.Parts[j].Strut.Length = s.Corner.Links[j].Length()
		s.Stiffen(j)
	}
}

// A Station is what of an axle is told apart: one side of it, or the left-hand side for
// both where they are mirror images.
type Station struct {
	At   int    // the corner
	Name string // "front" for both sides, "front left"
	Both bool   // it stands for both sides
	Side
}

// Member names a member of a station in words.
func (s Station) Member(link int) string {
	return s.Name + " " + strings.ReplaceAll(MemberNames[link], "_", " ")
}

// Stations lists what there is to tell apart, front axle first, left before right.
func (c *Car) Stations() (out []Station) {
	for i := range c.Axles {
		a, name := &c.Axles[i], AxleNames[i]
		if a.Right == nil {
			out = append(out, Station{2 * i, name, true, a.Side})
			continue
		}
		for side, word := range SideNames {
			out = append(out, Station{2*i + side, name + " " + word, false, a.At(side)})
		}
	}
	return out
}

// Count returns how many corners a station stands for.
func (s Station) Count() float64 {
	if s.Both {
		return 2
	}
	return 1
}

// Title names a station: "front axle", "front left".
func (s Station) Title() string {
	if s.Both {
		return s.Name + " axle"
	}
	return s.Name
}

// Mirrors tells whether the right-hand side of the car is the mirror image of the left.
func (c *Car) Mirrors() bool { return c.Axles[Front].Right == nil && c.Axles[Rear].Right == nil }
