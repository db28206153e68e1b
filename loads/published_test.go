package loads

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// on returns a corner that holds its upright at a point by three links, given by the
// ends that do not move; three more links keep the upright from turning. They carry
// nothing, as every load here passes through the point.
func on(at r3.Vec, ends [3]r3.Vec, order [NumLinks]int) Corner {
	arm := r3.Norm(r3.Sub(ends[0], at))
	x, y, z := vec(arm, 0, 0), vec(0, arm, 0), vec(0, 0, arm)
	from := func(outer, along r3.Vec) Link {
		return Link{Outer: r3.Add(at, outer), Inner: r3.Add(at, r3.Add(outer, along))}
	}
	links := [NumLinks]Link{
		{Outer: at, Inner: ends[0]},
		{Outer: at, Inner: ends[1]},
		{Outer: at, Inner: ends[2]},
		from(x, y), from(y, z), from(z, x),
	}
	c := Corner{Centre: at, Contact: at, Spin: vec(0, 1, 0)}
	for i, j := range order {
		c.Links[j] = links[i]
	}
	return withTubes(c, 1e7, 5)
}

var inOrder = [NumLinks]int{0, 1, 2, 3, 4, 5}

// plateOnSixRods is STA-01; ft and lb are only labels here.
var plateOnSixRods = withTubes(Corner{
	Links: [NumLinks]Link{
		{Outer: vec(0, 3, 0), Inner: vec(7, 9, 6)},
		{Outer: vec(-4, 3, 0), Inner: vec(-4, 3, 6)},
		{Outer: vec(-4, -3, 0), Inner: vec(-7, -9, 6)},
		{Outer: vec(0, -3, 0), Inner: vec(4, -15, 6)},
		{Outer: vec(4, -3, 0), Inner: vec(12, -3, 6)},
		{Outer: vec(4, 3, 0), Inner: vec(7, 5, 6)},
	},
	Spin: vec(0, 1, 0), // centre and contact in the origin, where the weight acts
}, 1e7, 0.02)

// publishedFrames are space frames of textbooks, solved as a corner. The tolerance is
// half a unit of the last printed digit.
var publishedFrames = []struct {
	name   string
	corner Corner
	load   r3.Vec
	want   [NumLinks]float64
	tol    float64
	source string
}{
	{
		"plate on six rods, lb", plateOnSixRods, vec(0, 0, -576),
		[NumLinks]float64{319, -192, 648, -182, -110, 357},
		1e-9,
		"Auburn University, ME 232 class problem \"Plate supported by 6 rods\" (1997): data read; " +
			"the whole numbers solve it exactly: 29(7,6,6)-32(0,0,6)+72(-3,-6,6)-13(4,-12,6)-11(8,0,6)+51(3,2,6) = (0,0,576)",
	},
	{
		"tripod, lb: A and B stand below D, so that a load downwards presses on them",
		on(vec(-2.5, 5, 4.33), [3]r3.Vec{{}, {X: -5}, {X: -2.5, Z: 4.33}}, inOrder), vec(0, 0, -250),
		[NumLinks]float64{-204.1, -204.1, 288.7},
		0.05,
		"K. Gramoll, eCourses Statics, section 6.3 example: 204.1 printed, 288.7 recomputed from its data; signs by inspection",
	},
	{
		"joint of two mirrored members, kN: the thrust along y is held by a third",
		on(vec(0.2870, -0.6929, 1), [3]r3.Vec{{Y: -1}, {X: 0.5740, Y: -1}, {X: 0.2870, Y: 1, Z: 1}}, inOrder), vec(0, 0, -300),
		[NumLinks]float64{-162.7, -162.7, -2 * 162.7 * 0.2830},
		0.05,
		"K. Gramoll, eCourses Statics, section 6.3 case: 162.7 and the direction (0.2645, 0.2830, 0.9217) printed; the third by statics",
	},
	{
		"three members that meet in a point",
		on(r3.Vec{}, [3]r3.Vec{{X: -3, Y: -4, Z: 8}, {X: -3, Y: 4, Z: 8}, {X: 1}}, inOrder), vec(0, 0, -40),
		[NumLinks]float64{23.6, 23.6, 15.0},
		0.05,
		"R. C. Hibbeler, Statics, Example 3.7",
	},
}

func TestPublishedSpaceFrames(t *testing.T) {
	for _, tt := range publishedFrames {
		t.Run(tt.name, func(t *testing.T) {
			f := mustStatics(t, tt.corner).Solve(WheelLoad{Force: tt.load})
			for i, got := range f.Axial {
				if !near(got, tt.want[i], tt.tol) {
					t.Errorf("member %d: %.10g, want %.10g ± %g (%s)", i+1, got, tt.want[i], tt.tol, tt.source)
				}
			}
		})
	}
}

// bellCrank is a corner whose rod stands upright and takes a vertical load alone. It
// pushes a rocker with its pivot along x at an arm of 100 mm, offset along the pivot.
func bellCrank(offset, span float64) Corner {
	outer := vec(0, 0, 0)
	c := on(outer, [3]r3.Vec{{Z: 200}, {X: 200}, {Y: 200}}, [NumLinks]int{Rod, 0, 1, 2, 3, 4})
	c.Rocker = &Rocker{Pivot: vec(-offset, -100, 200), Axis: vec(1, 0, 0), BearingSpan: span}
	return c
}

func solveRocker(t *testing.T, c Corner, force float64) *RockerForces {
	t.Helper()
	s := mustStatics(t, c)
	load := WheelLoad{Force: vec(0, 0, force)}
	f, _ := SolveAxle(s, s, load, load)
	if !(f.Residual <= 1e-9) {
		t.Errorf("residual %.3g, limit 1e-9", f.Residual)
	}
	return f.Rocker
}

func TestRightAngledBellCrank(t *testing.T) {
	const source = "V. B. Bhandari, Design of Machine Elements, Example 4.16"
	c := bellCrank(0, 40)
	end := r3.Add(c.Rocker.Pivot, vec(0, 0, 450))
	c.Rocker.Spring = &Line{Rocker: end, Far: r3.Sub(end, vec(0, 300, 0))}
	got := solveRocker(t, c, 5000)
	if !near(got.RodTorque, 5000*100, 1e-6) {
		t.Errorf("rod torque %.10g N·mm, want 500000", got.RodTorque)
	}
	if !near(got.Spring, 1111.11, 0.005) {
		t.Errorf("effort %.8g N, want 1111.11 (%s)", got.Spring, source)
	}
	if fulcrum := r3.Norm(got.Pivot); !near(fulcrum, 5121.97, 0.005) {
		t.Errorf("reaction of the fulcrum %.8g N, want 5121.97 (%s)", fulcrum, source)
	}
	for i, b := range got.Bearings {
		if !near(r3.Norm(b), 5121.97/2, 0.005) {
			t.Errorf("bearing %d: %.8g N, want half of the fulcrum's (nothing is offset)", i+1, r3.Norm(b))
		}
	}
}

// TestBearingsUnderOffsetLoad loads a rocker with a torsion bar, which takes a pure
// torque, beside the middle of its bearings. The load pushes up; the first bearing is
// on the side to which the axis points.
func TestBearingsUnderOffsetLoad(t *testing.T) {
	for _, tt := range []struct {
		name                string
		force, offset, span float64
		want                [2]float64 // of the bearings on the rocker, upwards
		tol                 float64
		source              string
	}{
		{"overhung", 4167, 320 - 125, 250, [2]float64{-5334, 1167}, 0.5, "statics: R_B = F·x/L, R_A = F − R_B at L 250, x 320 mm"},
		{"overhung at the other end", 4167, 125 - 320, 250, [2]float64{1167, -5334}, 0.5, "the same, turned round"},
		{"offset couple", 2000, 15, 40, [2]float64{-1000 - 2000*15/40., -1000 + 2000*15/40.}, 1e-9, "statics: half each, and ±F·e/L"},
		{"in the middle", 2000, 0, 40, [2]float64{-1000, -1000}, 1e-9, "statics: half each"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			got := solveRocker(t, bellCrank(tt.offset, tt.span), tt.force)
			for i, b := range got.Bearings {
				if !nearVec(b, vec(0, 0, tt.want[i]), tt.tol) {
					t.Errorf("bearing %d: %v N, want %g ± %g along z (%s)", i+1, b, tt.want[i], tt.tol, tt.source)
				}
			}
			if !near(got.TorsionBar, tt.force*100, 1e-6) || !math.IsNaN(got.Spring) || !math.IsNaN(got.AntiRoll) {
				t.Errorf("torsion bar %g N·mm, spring %g N, anti-roll link %g N; want %g, none, none", got.TorsionBar, got.Spring, got.AntiRoll, tt.force*100)
			}
		})
	}
}
