package compliance_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
	"sixlink/loads/compliance"
)

// The square corner: two equal wishbones in level planes above and below the wheel centre,
// each symmetric about the plane x = 0, a vertical steering axis at x = 0, 50 mm inboard of
// the contact point, a track rod along y at x = a, and a rod without a rocker.
const (
	half  = 200.0 // pick-ups fore and aft of the ball joint, mm
	span  = 400.0 // pick-ups inboard of the ball joint, mm
	ahead = 100.0 // track rod ahead of the steering axis, mm
	scrub = 50.0
	ea    = 1.2e7
	rigid = 1e21
)

func square(soft ...int) loads.Corner {
	c := loads.Corner{Centre: vec(0, 700, 300), Contact: vec(0, 700+scrub, 0), Spin: vec(0, 1, 0)}
	upper, lower := vec(0, 700, 420), vec(0, 700, 180)
	c.Links = [loads.NumLinks]loads.Link{
		{Outer: upper, Inner: vec(half, 700-span, 420)},
		{Outer: upper, Inner: vec(-half, 700-span, 420)},
		{Outer: lower, Inner: vec(half, 700-span, 180)},
		{Outer: lower, Inner: vec(-half, 700-span, 180)},
		{Outer: vec(ahead, 700, 300), Inner: vec(ahead, 300, 300)},
		{Outer: lower, Inner: vec(0, 500, 480)},
	}
	for i := range c.Links {
		c.Links[i].EA = rigid
	}
	for _, i := range soft {
		c.Links[i].EA = ea
	}
	return c
}

var wishbones = []int{loads.UpperFrontLeg, loads.UpperRearLeg, loads.LowerFrontLeg, loads.LowerRearLeg}

func close(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-9*math.Abs(want)+1e-18) {
		t.Errorf("%s: %.12g, want %.12g", what, got, want)
	}
}

// Two equal bars at ±θ to a force P move its point by P·L/(2EA cos²θ) (two-bar truss, any
// textbook on strength of materials: Timoshenko, Strength of Materials I, chapter 1, from
// memory). Each wishbone is one, and takes half of a force through the middle.
func TestTwoBarTruss(t *testing.T) {
	c := mustNew(t, square(wishbones...), compliance.Stiffness{})
	length := math.Hypot(half, span)
	cos, sin := span/length, half/length
	close(t, "sideways", c.Matrix[1][1], length/(4*ea*cos*cos))
	close(t, "fore and aft", c.Matrix[0][0], length/(4*ea*sin*sin))
	if len(c.Parts) != loads.NumLinks {
		t.Errorf("%d parts, want one for each link", len(c.Parts))
	}
}

// Springs of k at all four pick-ups: each holds its leg's force P/4cos θ, so the work
// P·δ/2 of the load is 4·(P/4cos θ)²/2k.
func TestPickUpsByHand(t *testing.T) {
	var k compliance.Stiffness
	const each = 9000.0
	for _, i := range wishbones {
		k.PickUps[i] = vec(each, each, each)
	}
	c := mustNew(t, square(), k)
	cos := span / math.Hypot(half, span)
	close(t, "sideways", c.Matrix[1][1], 1/(4*each*cos*cos))
}

// A track rod alone that gives: the upright turns about the steering axis by M·φ/a². A
// braking force outboard of the axis pulls the left wheel's front outwards: toe-out, which
// is negative; on the right-hand side too.
func TestSoftTrackRodByHand(t *testing.T) {
	corner := square(loads.TrackRod)
	flex := corner.Links[loads.TrackRod].Length() / ea
	braking := loads.WheelLoad{Force: vec(-1, 0, 0)}
	for _, c := range []loads.Corner{corner, corner.Mirrored()} {
		m, parts := mustNew(t, c, compliance.Stiffness{}).Under(braking)
		close(t, "toe", m.Toe, -scrub*flex/(ahead*ahead))
		close(t, "toe by the track rod", parts[loads.TrackRod].Toe, m.Toe)
		if !(math.Abs(m.Camber) <= 1e-6*math.Abs(m.Toe)) || !(math.Abs(m.Caster) <= 1e-6*math.Abs(m.Toe)) {
			t.Errorf("camber %g and caster %g, want none", m.Camber, m.Caster)
		}
	}
	m, _ := mustNew(t, corner, compliance.Stiffness{}).Under(braking)
	close(t, "steer", m.Steer, scrub*flex/(ahead*ahead))
	close(t, "contact point, rearwards", m.Contact.X, -scrub*scrub*flex/(ahead*ahead))
}

// A force sideways at the contact point of the square corner is a couple on the wishbones:
// with y towards the centreline and the lower legs in compression, the bottom of the left
// wheel comes in and the top goes out: camber is positive. Braking on an upright that holds
// the torque pushes the lower ball joint rearwards and pulls the upper one forwards: caster
// is lost, by (1/0.24 m)² of the legs' give fore and aft.
func TestSignsOfCamberAndCaster(t *testing.T) {
	c := mustNew(t, square(wishbones...), compliance.Stiffness{})
	length := math.Hypot(half, span)
	cos, sin := span/length, half/length
	const apart = 240.0
	m, _ := c.Under(loads.WheelLoad{Force: vec(0, -1, 0)})
	pair := length / (2 * ea) // L/2EA of one wishbone, over cos² or sin²
	close(t, "camber", m.Camber, 300.0*2*pair/(cos*cos)/(apart*apart))
	m, _ = c.Under(loads.WheelLoad{Force: vec(-1, 0, 0)})
	close(t, "caster", m.Caster, -300.0*2*pair/(sin*sin)/(apart*apart))
	m, _ = c.Under(loads.WheelLoad{Force: vec(-1, 0, 0), Released: true})
	if !(math.Abs(m.Caster) <= 1e-15) {
		t.Errorf("caster %g of a rolling wheel, want none: the force is at the wheel's centre", m.Caster)
	}
}

// Twice the stiffness of everything is half the give.
func TestTwiceAsStiff(t *testing.T) {
	each(t, func(t *testing.T, c loads.Corner, k compliance.Stiffness) {
		want := mustNew(t, c, k).Matrix
		for i := range c.Links {
			c.Links[i].EA *= 2
			c.Links[i].EI *= 2
			k.PickUps[i] = r3.Scale(2, k.PickUps[i])
		}
		k.SpringPickUp = r3.Scale(2, k.SpringPickUp)
		k.Bearing, k.Thrust, k.Spring = 2*k.Bearing, 2*k.Thrust, 2*k.Spring
		got := mustNew(t, c, k).Matrix
		for i := range got {
			for j := range got[i] {
				got[i][j] *= 2
			}
		}
		near(t, got, want, 1e-12)
	})
}
