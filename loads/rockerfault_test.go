package loads

import (
	"errors"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// behind is a line whose force passes the point at a distance along y, mm.
func behind(p r3.Vec, distance float64) *Line {
	return &Line{Rocker: r3.Add(p, vec(0, distance, 40)), Far: r3.Add(p, vec(0, distance, 240))}
}

// idleRod is a corner whose rod takes a share of an upward contact force, however small:
// three other links meet in the contact point, and the rod is beside it.
func idleRod(share float64) Corner {
	c := on(r3.Vec{}, [3]r3.Vec{{X: 200}, {Y: 200}, {Z: -200}}, [NumLinks]int{0, 1, 2, 3, Rod, 4})
	rod := c.Links[Rod]
	c.Rocker = &Rocker{Pivot: r3.Add(rod.Inner, vec(0, -60, 0)), Axis: vec(1, 0, 0), BearingSpan: 40}
	// the rod stands at y = 200: it takes a share where the force passes at y = 200·share
	c.Contact = vec(0, share*200, 0)
	return c
}

// torqueRod is a corner whose rod holds the upright against turning about the spin axis,
// and the contact point is ahead of the wheel centre: an upward force loads the rod only
// where the torque about the spin axis is held.
func torqueRod() Corner {
	c := on(r3.Vec{}, [3]r3.Vec{{X: 200}, {Y: 200}, {Z: -200}}, inOrder)
	c.Rocker = &Rocker{Pivot: r3.Add(c.Links[Rod].Inner, vec(0, -60, 0)), Axis: vec(0, 0, 1), BearingSpan: 40}
	c.Contact = vec(20, 0, 0)
	return c
}

func TestRockerFaults(t *testing.T) {
	set := func(change func(*Corner, *Rocker)) Corner {
		c := hillclimb(Upright)
		change(&c, c.Rocker)
		return c
	}
	const arm, idle = "has a lever arm of", "does not carry the wheel"
	for _, tt := range []struct {
		name   string
		corner Corner
		path   string // "": accepted
		texts  []string
	}{
		{"rod through the pivot", set(func(c *Corner, r *Rocker) {
			r.Pivot = r3.Add(c.Links[Rod].Inner, r3.Scale(50, c.Links[Rod].Direction()))
		}), "rod", []string{"rod", arm, "mm about the rocker's axis", "less than the 0.05 mm"}},
		{
			"rod's joint on the pivot", set(func(c *Corner, r *Rocker) { r.Pivot = c.Links[Rod].Inner }),
			"rod",
			[]string{"rod", arm, "0 mm"},
		},
		{
			"rod along the axis", set(func(c *Corner, r *Rocker) { r.Axis = c.Links[Rod].Direction() }),
			"rod",
			[]string{"rod", arm},
		},
		{
			"spring through the axis", set(func(_ *Corner, r *Rocker) { r.Spring = behind(r.Pivot, 0) }),
			"rocker.spring",
			[]string{"spring", arm, "less than the 0.04 mm"},
		},
		{
			"spring 0.9 of the limit off the axis", set(func(_ *Corner, r *Rocker) { r.Spring = behind(r.Pivot, 0.9*40e-3) }),
			"rocker.spring",
			[]string{"spring", arm, "0.036 mm", "0.04 mm"},
		},
		{"spring 1.1 of the limit off the axis", set(func(_ *Corner, r *Rocker) { r.Spring = behind(r.Pivot, 1.1*40e-3) }), "", nil},
		{
			"spring along the axis", set(func(_ *Corner, r *Rocker) { r.Spring.Far = r3.Add(r.Spring.Rocker, vec(300, 0, 0)) }),
			"rocker.spring",
			[]string{"spring", arm},
		},
		{
			"anti-roll link through the axis", set(func(_ *Corner, r *Rocker) { r.AntiRoll = behind(r.Pivot, 0) }),
			"rocker.anti_roll",
			[]string{"anti-roll link", arm},
		},
		{
			"anti-roll link 0.9 of the limit off", set(func(_ *Corner, r *Rocker) { r.AntiRoll = behind(r.Pivot, -0.9*40e-3) }),
			"rocker.anti_roll",
			[]string{"anti-roll link", "0.036 mm"},
		},
		{"anti-roll link 1.1 of the limit off", set(func(_ *Corner, r *Rocker) { r.AntiRoll = behind(r.Pivot, -1.1*40e-3) }), "", nil},
		{"rod that takes nothing of the wheel", idleRod(0), "rod", []string{"the rod takes 0 of an upward contact force", "less than 0.001", idle}},
		{"rod that takes a torque about the spin axis alone", torqueRod(), "rod", []string{"the rod takes 0 of", idle}},
		{"rod that takes 0.0009 of the wheel", idleRod(0.9e-3), "rod", []string{"the rod takes 0.0009", idle}},
		{"rod that takes 0.0011 of the wheel", idleRod(1.1e-3), "", nil},
	} {
		t.Run(tt.name, func(t *testing.T) { checkFault(t, tt.corner, tt.path, tt.texts) })
	}
}

func checkFault(t *testing.T, c Corner, path string, texts []string) {
	t.Helper()
	s, err := NewStatics(c)
	if path == "" {
		if err != nil {
			t.Errorf("refused: %v", err)
		}
		return
	}
	var fault *RockerFault
	if !errors.As(err, &fault) || s != nil {
		t.Fatalf("NewStatics: error %v, statics %v; want a *RockerFault alone", err, s)
	}
	if fault.Path != path || fault.Remedy == "" {
		t.Errorf("path %q, remedy %q; want %q and a remedy", fault.Path, fault.Remedy, path)
	}
	for _, text := range texts {
		if !strings.Contains(err.Error(), text) {
			t.Errorf("error %q, want it to say %q", err, text)
		}
	}
}

// A corner that is a mechanism is refused as that, before its rocker is looked at.
func TestMechanismComesBeforeTheRocker(t *testing.T) {
	c, _, _ := offAxis(LowerWishbone, 0)
	c.Rocker.Pivot = c.Links[Rod].Inner
	refused(t, c)
}
