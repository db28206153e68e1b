package motion

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
)

const degree = math.Pi / 180

// A fourBar is a plane linkage in the notation of R. L. Norton, Design of Machinery,
// chapter 4: ground d, crank a, coupler b, rocker c; angles from the ground line, the
// crank's pivot first.
type fourBar struct{ d, a, b, c float64 }

// quadratic returns 2 atan((−B ∓ √(B² − 4AC))/2A), the open circuit first.
func quadratic(a, b, c float64, crossed bool) float64 {
	root := math.Sqrt(b*b - 4*a*c)
	if crossed {
		root = -root
	}
	return 2 * math.Atan((-b-root)/(2*a))
}

// solve is the closed form of the loop (Freudenstein's equation), chapter 4 of Norton's
// book, from memory; the loop itself is closed again in TestFreudenstein.
func (f fourBar) solve(crank float64, crossed bool) (coupler, rocker float64) {
	sin, cos := math.Sincos(crank)
	k1, k2, k4 := f.d/f.a, f.d/f.c, f.d/f.b
	k3 := (f.a*f.a - f.b*f.b + f.c*f.c + f.d*f.d) / (2 * f.a * f.c)
	k5 := (f.c*f.c - f.d*f.d - f.a*f.a - f.b*f.b) / (2 * f.a * f.b)
	rocker = quadratic(cos-k1-k2*cos+k3, -2*sin, k1-(k2+1)*cos+k3, crossed)
	coupler = quadratic(cos-k1+k4*cos+k5, -2*sin, k1+(k4-1)*cos+k5, crossed)
	return coupler, rocker
}

// corner draws the linkage as the front view of a corner: the lower wishbone is the crank,
// the upright the coupler, the upper wishbone the rocker. The track rod beside the upper
// wishbone, parallel to it and as long, keeps the upright in its plane where the two are not
// in line; with below it is beside the lower one. The wheel centre is the joint of crank and
// coupler.
func (f fourBar) corner(crank float64, crossed, below bool) loads.Corner {
	at := func(x, y, z float64) r3.Vec { return vec(x, y+200, z+300) }
	_, angle := f.solve(crank, crossed)
	ay, az := f.a*math.Cos(crank), f.a*math.Sin(crank)
	upper, lower := at(0, f.d+f.c*math.Cos(angle), f.c*math.Sin(angle)), at(0, ay, az)
	beside := vec(60, 0, 0)
	track := loads.Link{Outer: r3.Add(upper, beside), Inner: at(60, f.d, 0)}
	if below {
		track = loads.Link{Outer: r3.Add(lower, beside), Inner: at(60, 0, 0)}
	}
	return loads.Corner{
		Links: [loads.NumLinks]loads.Link{
			{Outer: upper, Inner: at(90, f.d, 0)},
			{Outer: upper, Inner: at(-90, f.d, 0)},
			{Outer: lower, Inner: at(110, 0, 0)},
			{Outer: lower, Inner: at(-110, 0, 0)},
			track,
			{Outer: upper, Inner: at(0, 0, 900)},
		},
		Centre: lower, Contact: r3.Sub(lower, vec(0, 0, 250)), Spin: vec(0, 1, 0),
	}
}

// toPlane returns the angles of coupler and rocker of a corner.
func toPlane(c *loads.Corner) (coupler, rocker float64) {
	angle := func(from, to r3.Vec) float64 { return math.Atan2(to.Z-from.Z, to.Y-from.Y) }
	upper := c.Links[loads.UpperFrontLeg]
	return angle(c.Links[loads.LowerFrontLeg].Outer, upper.Outer), angle(upper.Inner, upper.Outer)
}

var nortonExample = fourBar{d: 100, a: 40, b: 120, c: 80}

// The loop of the closed form closes: a second calculation of what the other tests hold
// the linkage to.
func TestFreudenstein(t *testing.T) {
	f := nortonExample
	for _, crossed := range []bool{false, true} {
		for _, crank := range grid(10*degree, 170*degree, 17) {
			coupler, rocker := f.solve(crank, crossed)
			y := f.a*math.Cos(crank) + f.b*math.Cos(coupler) - f.d - f.c*math.Cos(rocker)
			z := f.a*math.Sin(crank) + f.b*math.Sin(coupler) - f.c*math.Sin(rocker)
			if !near(math.Hypot(y, z), 0, 1e-10) {
				t.Errorf("crank %.0f°, crossed %v: the loop is open by (%g, %g)", crank/degree, crossed, y, z)
			}
		}
	}
}

// The worked example of the position analysis of a four-bar linkage in R. L. Norton,
// Design of Machinery, chapter 4 (from memory): d = 100, a = 40, b = 120, c = 80, crank at
// 40°. The linkage is drawn with the crank elsewhere and moved there. The rocker of the
// crossed circuit is not among them: −98.01° as remembered is 0.00504° from the closed form,
// more than half of its last digit; TestFourBarOverTheStroke has that circuit.
func TestPublishedFourBar(t *testing.T) {
	for _, tt := range []struct {
		name            string
		crossed         bool
		coupler, rocker float64 // degrees
		tol             float64 // half of the last digit printed
	}{
		{"open", false, 20.298, 57.325, 0.0005},
		{"crossed", true, -60.98, math.NaN(), 0.005},
	} {
		for _, from := range []float64{15, 40, 65, 80} {
			l := mustNew(t, nortonExample.corner(from*degree, tt.crossed, false))
			p := mustAt(t, l, nortonExample.a*(math.Sin(40*degree)-math.Sin(from*degree)), 0)
			coupler, rocker := toPlane(&p.Corner)
			if !near(coupler/degree, tt.coupler, tt.tol) || !math.IsNaN(tt.rocker) && !near(rocker/degree, tt.rocker, tt.tol) {
				t.Errorf("%s, drawn at %g°: coupler %.4f°, rocker %.4f°, printed %g° and %g°", tt.name, from, coupler/degree, rocker/degree, tt.coupler, tt.rocker)
			}
		}
	}
}

// Angles and angular velocities over the stroke, against the closed forms:
//
//	ω₃ = ω₂ (a/b) sin(θ₄ − θ₂)/sin(θ₃ − θ₄),  ω₄ = ω₂ (a/c) sin(θ₂ − θ₃)/sin(θ₄ − θ₃)
//
// (Norton, chapter 6, from memory); the crank turns by 1/(a cos θ₂) per unit of height.
func TestFourBarOverTheStroke(t *testing.T) {
	for _, f := range []fourBar{nortonExample, {90, 50, 100, 80}} {
		for _, crossed := range []bool{false, true} {
			l := mustNew(t, f.corner(40*degree, crossed, false))
			for _, crank := range grid(12*degree, 75*degree, 22) {
				p := mustAt(t, l, f.a*(math.Sin(crank)-math.Sin(40*degree)), 0)
				coupler, rocker := toPlane(&p.Corner)
				th3, th4 := f.solve(crank, crossed)
				if !near(coupler, th3, 1e-9) || !near(rocker, th4, 1e-9) {
					t.Fatalf("%+v at %.1f°: coupler %.6f, rocker %.6f, want %.6f, %.6f", f, crank/degree, coupler, rocker, th3, th4)
				}
				om2 := 1 / (f.a * math.Cos(crank))
				om3 := om2 * f.a / f.b * math.Sin(th4-crank) / math.Sin(th3-th4)
				om4 := om2 * f.a / f.c * math.Sin(crank-th3) / math.Sin(th4-th3)
				if got := p.PerTravel; !nearVec(got.Turn, vec(om3, 0, 0), 1e-9) || !near(got.Wishbones[Upper], om4, 1e-9) || !near(got.Wishbones[Lower], om2, 1e-9) {
					t.Fatalf("%+v at %.1f°: turns %+v, want %g, %g, %g", f, crank/degree, got, om3, om4, om2)
				}
			}
		}
	}
}

// The ends of the stroke by hand: a crank that turns right round carries its joint up to
// its own length; one that does not stops where coupler and rocker are in line, at
// |O₄A| = b + c.
func TestFourBarLimits(t *testing.T) {
	f := nortonExample
	from := 40 * degree
	r, err := mustNew(t, f.corner(from, false, false)).Travels(0)
	if want := f.a * (1 - math.Sin(from)); err != nil || !near(r.High.Travel, want, 1e-6) || r.High.Kind != Led || !strings.Contains(r.High.Text, "turns back") {
		t.Errorf("crank upright: %+v %v, want %.6f", r.High, err, want)
	}
	f = fourBar{d: 100, a: 80, b: 40, c: 50}
	most := math.Acos((f.a*f.a + f.d*f.d - (f.b+f.c)*(f.b+f.c)) / (2 * f.a * f.d))
	for _, sign := range []float64{1, -1} { // and its image below the ground line
		from := sign * 30 * degree
		r, err := mustNew(t, f.corner(from, sign < 0, true)).Travels(0)
		if err != nil {
			t.Fatal(err)
		}
		stop, want := r.High, f.a*(sign*math.Sin(most)-math.Sin(from))
		if sign < 0 {
			stop = r.Low
		}
		if !near(stop.Travel, want, 1e-6) || stop.Kind != Led || !strings.Contains(stop.Text, "upper wishbone and the upright") {
			t.Errorf("%+v, want %.6f with upper wishbone and upright in line", stop, want)
		}
	}
}
