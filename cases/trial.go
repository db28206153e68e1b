package cases

import (
	"slices"

	"sixlink/loads"
	"sixlink/members/check"
	"sixlink/members/sizing"
)

// A trial is a run of one axle with tubes that are tried on.
type trial struct {
	Results // a copy; the axle's part of Car and its corners are the trial's own
	axle    int
	target  float64
	last    [2][loads.NumLinks]event // where a member failed last: it is looked at first
}

// An event is a corner and a case.
type event struct{ corner, k int }

func newTrial(r Results, axle int, target float64) *trial {
	t := &trial{Results: r, axle: axle, target: target}
	for side := range t.last {
		for i := range t.last[side] {
			t.last[side][i] = event{2*axle + side, 0}
		}
	}
	if a := &t.Car.Axles[axle]; a.Right != nil {
		right := *a.Right
		a.Right = &right
	}
	return t
}

// corners are those at which a member of a group stands.
func (t *trial) corners(at spot) []int {
	both := [2]int{2 * t.axle, 2*t.axle + 1}
	if t.Car.Axles[t.axle].Right == nil {
		return both[:]
	}
	return both[at.side : at.side+1]
}

// put makes the members of a group of an option.
func (t *trial) put(g *group, i int) {
	o := g.option(i)
	for j, at := range g.spots {
		t.Car.Axles[t.axle].own(at.side).fit(at.link, o.Struts[j]) // options that do not fit are not offered
	}
}

// prepare makes the statics of the two corners from the sections as they are; false:
// they cannot be solved, which no section brings about where the car file's can.
func (t *trial) prepare() bool {
	for side := range SideNames {
		of := t.Car.Axles[t.axle].At(side)
		s, err := loads.NewStatics(of.Corner)
		if err != nil {
			return false
		}
		at := &t.Corners[2*t.axle+side]
		if at.Statics = s; !at.restand(&of) {
			return false
		}
		at.Forces = slices.Repeat([]loads.Forces{{}}, len(t.Cases))
	}
	return true
}

// solve fills the forces of one case, but for those of the rockers, which no check of a
// member looks at.
func (t *trial) solve(k int) {
	for corner := 2 * t.axle; corner < 2*t.axle+2; corner++ {
		at := &t.Corners[corner]
		at.Forces[k] = at.In(k).Solve(t.Cases[k].Wheels[corner].Load())
	}
}

func (t *trial) solveAll() bool {
	if !t.prepare() {
		return false
	}
	for k := range t.Cases {
		t.solve(k)
	}
	return true
}

// carries tells whether the members of a group carry every case at their corners.
func (t *trial) carries(g *group) bool {
	for _, at := range g.spots {
		if !t.carriesAt(at.link, t.last[at.side][at.link]) {
			return false
		}
	}
	for _, at := range g.spots {
		for _, corner := range t.corners(at) {
			for k := range t.Cases {
				if e := (event{corner, k}); !t.carriesAt(at.link, e) {
					t.last[at.side][at.link] = e
					return false
				}
			}
		}
	}
	return true
}

// carriesAt tells whether every reserve factor of a member in one case reaches the target.
func (t *trial) carriesAt(link int, at event) bool {
	for _, item := range t.MemberItems(at.corner, link, at.k) {
		for _, f := range item.Findings {
			if !sizing.Carries(f.Reserve, t.target) {
				return false
			}
		}
	}
	return true
}

// lightest returns the first option that carries under the forces as they are.
func (t *trial) lightest(g *group) int {
	defer t.put(g, g.chosen)
	for i := range g.options {
		if t.put(g, i); t.carries(g) {
			return i
		}
	}
	return none
}

// worst returns the lowest finding of a group as it is; false: it has no load.
func (t *trial) worst(g *group) (n Nearest, ok bool) {
	for _, at := range g.spots {
		for _, corner := range t.corners(at) {
			j := t.judgeMember(corner, at.link)
			if f, found := j.Governs(); found && (!ok || check.Lower(f.Reserve, n.Finding.Reserve)) {
				n, ok = Nearest{Corner: corner, Link: at.link, Finding: f}, true
			}
		}
	}
	return n, ok
}

// nearest returns the option of a group that comes nearest to carrying.
func (t *trial) nearest(g *group) (best *Nearest) {
	defer t.put(g, g.chosen)
	for i, o := range g.options {
		t.put(g, i)
		n, ok := t.worst(g)
		if ok && (best == nil || n.Finding.Reserve > best.Finding.Reserve) {
			n.Size = o.Size
			best = &n
		}
	}
	return best
}
