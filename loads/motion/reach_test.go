package motion

import (
	"errors"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"

	"sixlink/loads"
)

// cond is the condition number of the equations at a stop's last position.
func cond(t rapid.TB, l *Linkage, travel, rack float64) float64 {
	t.Helper()
	w := l.walk()
	if !w.to(0, rack) || !w.to(travel, rack) {
		t.Fatalf("travel %g, rack %g: not reached", travel, rack)
	}
	var s solver
	l.assemble(&s, &w.pose, travel, rack)
	return s.cond()
}

// checkStop holds a stop to be where the motion ends: there the equations are singular, or
// the rod in line with its arm; just before it they solve; beyond it the way is refused.
func checkStop(t rapid.TB, l *Linkage, s Stop, along r3.Vec) {
	t.Helper()
	in, out := r3.Scale(-1e-3, along), r3.Scale(1e-5, along)
	if _, err := l.At(s.Travel+in.X, s.Rack+in.Y); err != nil {
		t.Errorf("just before %+v: %v", s, err)
	}
	var beyond *Beyond
	_, err := l.At(s.Travel+out.X, s.Rack+out.Y)
	text, _, _ := strings.Cut(s.Text, ",") // a degree may round the other way
	if !errors.As(err, &beyond) || beyond.Stop.Kind != s.Kind || !strings.Contains(err.Error(), text) {
		t.Errorf("just beyond %+v: %v", s, err)
	}
	switch s.Kind {
	case Led:
		// the distance from the singular position is the root of the distance to the limit
		if got := cond(t, l, s.Travel, s.Rack); !(got >= 1e4) {
			t.Errorf("%+v: condition number %g, want a singular position", s, got)
		}
	case RodInLine:
		checkDeadCentre(t, l, s, along)
	}
}

// checkDeadCentre holds rod, its arm and the pivot to be in line, seen along the axis: with
// K the distance of the rod's outer joint from the axis, h its place along it,
//
//	(K ∓ ρ)² + h² = L²
func checkDeadCentre(t rapid.TB, l *Linkage, s Stop, along r3.Vec) {
	t.Helper()
	p := mustAt(t, l, s.Travel, s.Rack)
	rod, rk := p.Corner.Links[loads.Rod], p.Corner.Rocker
	axis := r3.Unit(rk.Axis)
	apart := func(q r3.Vec) (radius, along float64) {
		from := r3.Sub(q, rk.Pivot)
		along = r3.Dot(from, axis)
		return r3.Norm(r3.Sub(from, r3.Scale(along, axis))), along
	}
	k, h := apart(rod.Outer)
	rho, h0 := apart(rod.Inner)
	want := rod.Length()
	got := math.Hypot(k-rho, h-h0)
	if strings.Contains(s.Text, "folded") {
		got = math.Hypot(k+rho, h-h0)
	}
	fast := 1 + math.Abs(along.X*p.PerTravel.Rod) + math.Abs(along.Y*p.PerRack.Rod)
	if !near(got, want, 1e-6*fast) {
		t.Errorf("%+v: K %g, ρ %g: rod %.9f mm, in line it would be %.9f", s, k, rho, want, got)
	}
}

// What stops the motion is met, in any corner, both ways.
func TestStopsAreMet(t *testing.T) {
	met := [4]int{}
	rapid.Check(t, func(t *rapid.T) {
		l := mustNew(t, drawCorner(t))
		rack := rapid.Float64Range(-20, 20).Draw(t, "rack")
		r, err := l.Travels(rack)
		if err != nil {
			t.Skip("the rack does not reach")
		}
		racks, err := l.Racks(0)
		if err != nil {
			t.Fatal(err)
		}
		for i, s := range []Stop{r.High, r.Low, racks.High, racks.Low} {
			sign := float64(1 - 2*(i%2))
			along := vec(sign, 0, 0)
			if i >= 2 {
				along = vec(0, sign, 0)
			}
			checkStop(t, l, s, along)
			met[s.Kind]++
		}
	})
	if met[Led] == 0 || met[RodInLine] == 0 {
		t.Errorf("stops met by kind: %v, want links and rods", met)
	}
}

// A corner with an upright steering axis, and a track rod level with its arm, is at the end
// of its lock where the inner joint is L + r, or L − r, from the axis: by hand.
func TestLockByHand(t *testing.T) {
	c := hillclimb(loads.Upright)
	for i := range 4 {
		c.Links[i].Outer.X, c.Links[i].Outer.Y = 0, 700
	}
	const length, arm = 400.0, 100.0
	c.Links[loads.TrackRod] = loads.Link{Outer: vec(-arm, 700, 200), Inner: vec(-arm, 700-length, 200)}
	c.Rocker = nil
	r, err := mustNew(t, c).Racks(0)
	if err != nil {
		t.Fatal(err)
	}
	far, close := length-math.Sqrt((length+arm)*(length+arm)-arm*arm), length-math.Sqrt((length-arm)*(length-arm)-arm*arm)
	for _, tt := range []struct {
		got  Stop
		want float64
	}{{r.Low, far}, {r.High, close}} {
		if !near(tt.got.Rack, tt.want, 1e-6) || tt.got.Travel != 0 || tt.got.Text != "the track rod and its arm on the upright come in line" {
			t.Errorf("%+v, want rack %.6f", tt.got, tt.want)
		}
	}
}

// An anti-roll link reaches as far as it is long, across its drawn line: by hand.
func TestAntiRollLinkAtItsEnd(t *testing.T) {
	c := hillclimb(loads.Upright)
	rk := *c.Rocker
	rk.AntiRoll = &loads.Line{Rocker: vec(0, 200, 422), Far: vec(0, 190, 422)} // 10 mm, along the arm: it swings up and down
	c.Rocker = &rk
	l := mustNew(t, c)
	r, err := l.Travels(0)
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range []Stop{r.Low, r.High} {
		p := mustAt(t, l, s.Travel, 0)
		across := math.Abs(34 * math.Sin(p.Rocker)) // of the eye, 34 mm from the pivot
		if s.Kind != AntiRollInLine || !near(across, 10, 1e-6) || !strings.Contains(s.Text, "anti-roll link") {
			t.Errorf("%+v: the eye is %.9f mm off its line, want 10", s, across)
		}
	}
}

// The words of a refusal: what was asked, what is in the way, where.
func TestBeyond(t *testing.T) {
	l := mustNew(t, hillclimb(loads.Upright))
	for _, tt := range []struct {
		travel, rack float64
		want         []string
	}{
		{200, 0, []string{"travel 200 mm with the rack at 0 mm is out of reach", "the rod and its arm on the rocker", "at travel 11"}},
		{0, -90, []string{"travel 0 mm with the rack at -90 mm", "track rod", "travel 0 mm, rack -71."}},
		{math.Inf(1), 0, []string{"out of reach"}},
		{math.NaN(), 0, []string{"out of reach"}},
	} {
		p, err := l.At(tt.travel, tt.rack)
		var beyond *Beyond
		if !errors.As(err, &beyond) || p != (Position{}) {
			t.Fatalf("At(%g, %g): %v", tt.travel, tt.rack, err)
		}
		for _, want := range tt.want {
			if !strings.Contains(err.Error(), want) {
				t.Errorf("At(%g, %g): %q does not say %q", tt.travel, tt.rack, err, want)
			}
		}
	}
	if positions, err := l.Sweep([]float64{-20, 0, 200, 0}, []float64{0, 5}); len(positions) != 2 || err == nil {
		t.Errorf("sweep: %d positions, %v; want the 2 within reach and an error", len(positions), err)
	}
	if _, err := l.Sweep([]float64{0}, []float64{-90}); err == nil {
		t.Error("a sweep with the rack beyond its end is not refused")
	}
	if _, err := l.Travels(-90); err == nil {
		t.Error("the reach of travel with the rack beyond its end is not refused")
	}
	if _, err := l.Racks(200); err == nil {
		t.Error("the reach of the rack with the wheel beyond its end is not refused")
	}
}

// Corners that cannot be moved are refused in words.
func TestFaults(t *testing.T) {
	for _, tt := range []struct {
		name, want string
		change     func(c *loads.Corner)
	}{
		{"carrying legs apart", "the legs of the lower wishbone end 3 mm apart, and two links carry no rod", func(c *loads.Corner) {
			c.Carrier = loads.LowerWishbone
			c.Links[3].Outer.X += 3
		}},
		{"pick-ups in one place", "lower wishbone is NaN mm from the axis", func(c *loads.Corner) { c.Links[3].Inner = c.Links[2].Inner }},
		{"joint on the axis", "mm from the axis through its pick-ups, less than", func(c *loads.Corner) {
			for i := 2; i < 4; i++ {
				c.Links[i].Outer = r3.Scale(0.5, r3.Add(c.Links[2].Inner, c.Links[3].Inner))
			}
		}},
		{"track rod at a ball joint, along a leg", "the track rod and its arm on the upright come in line", func(c *loads.Corner) {
			c.Links[loads.TrackRod] = c.Links[loads.LowerFrontLeg]
		}},
		{"rocker at its dead centre", "dead centre", func(c *loads.Corner) {
			rod := c.Links[loads.Rod]
			c.Rocker.Pivot = r3.Add(rod.Inner, r3.Scale(0.1, r3.Sub(rod.Inner, rod.Outer)))
			c.Rocker.Axis = r3.Cross(vec(1, 0, 0), r3.Sub(rod.Inner, rod.Outer))
		}},
		{"eye on the axis", "dead centre", func(c *loads.Corner) { c.Links[loads.Rod].Inner = c.Rocker.Pivot }},
		{"no number", "NaN", func(c *loads.Corner) { c.Centre.Z = math.NaN() }},
	} {
		c := hillclimb(loads.Upright)
		tt.change(&c)
		l, err := New(c)
		var f *Fault
		if l != nil || !errors.As(err, &f) || f.Remedy == "" || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%s: %v, want %q", tt.name, err, tt.want)
		}
	}
}

// Long steps end where many short ones do: the branch is the one that moving finds.
func TestStepsDoNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := mustNew(t, drawCorner(t))
		r, err := l.Travels(0)
		if err != nil {
			t.Fatal(err)
		}
		end := rapid.SampledFrom([]Stop{r.Low, r.High}).Draw(t, "end").Travel
		end *= rapid.SampledFrom([]float64{0.5, 0.99, 0.9999}).Draw(t, "share")
		travels := grid(0, end, int(math.Abs(end)/0.1)+2)
		positions, err := l.Sweep(travels, []float64{0})
		if err != nil {
			t.Fatal(err)
		}
		got := mustAt(t, l, end, 0)
		checkPoints(t, "in long steps", &got.Corner, &positions[len(positions)-1].Corner, 1e-7)
	})
}
