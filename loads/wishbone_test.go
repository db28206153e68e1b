package loads

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// drawCarried draws a corner with the rod on a wishbone.
func drawCarried(t *rapid.T) *Statics {
	c := drawCorner(t)
	if c.Carrier == Upright {
		c.Carrier = LowerWishbone
		c.Links[Rod].Outer = r3.Add(c.Links[LowerFrontLeg].Outer, vec(0, -60, 30))
	}
	c.Rocker = nil
	s, err := NewStatics(c)
	if err != nil || s.Cond > CondDoubt {
		t.Skip("on short lever arms")
	}
	return s
}

// The carrying wishbone turns freely about the line of its pick-ups: the ball joint and
// the rod balance each other about it, whatever the legs are like.
func TestRodBalancesAboutThePickUps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, w := drawCarried(t), drawLoad(t, "load")
		f := s.Solve(w)
		front, rear, _ := s.Corner.Carrier.Legs()
		from, rod := s.Corner.Links[front].Inner, s.Corner.Links[Rod]
		line := r3.Unit(r3.Sub(s.Corner.Links[rear].Inner, from))
		about := func(at, force r3.Vec) float64 { return r3.Dot(line, r3.Cross(r3.Sub(at, from), force)) }
		joint := about(s.Corner.Links[front].Outer, r3.Scale(-1, f.Upright[s.Corner.Carrier.joint()]))
		perNewton := about(rod.Outer, r3.Unit(r3.Sub(rod.Inner, rod.Outer)))
		if want := -joint / perNewton; !near(f.Axial[Rod], want, 1e-9*w.size()) {
			t.Fatalf("rod %.10g N, want %.10g from the balance about the pick-ups", f.Axial[Rod], want)
		}
	})
}

// energy is the strain energy of the links under chassis forces, N·mm: N²L/2EA along each,
// and V²L³/6EI across a leg of the carrying wishbone.
func energy(c Corner, chassis [NumLinks]r3.Vec) float64 {
	front, rear, _ := c.Carrier.Legs()
	sum := 0.0
	for i, l := range c.Links {
		length := r3.Norm(r3.Sub(l.Inner, l.Outer))
		along := r3.Scale(1/length, r3.Sub(l.Inner, l.Outer))
		sum += math.Pow(r3.Dot(along, chassis[i]), 2) * length / (2 * l.EA)
		if i == front || i == rear {
			sum += r3.Norm2(r3.Cross(along, chassis[i])) * math.Pow(length, 3) / (6 * l.EI)
		}
	}
	return sum
}

// Least strain energy (Castigliano's second theorem): the pick-ups can press on each other
// along their line without a load. Any such force, one way or the other, adds energy, and
// as much one way as the other.
func TestLeastStrainEnergy(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, w := drawCarried(t), drawLoad(t, "load")
		c, f := s.Corner, s.Solve(w)
		front, rear, _ := c.Carrier.Legs()
		line := r3.Unit(r3.Sub(c.Links[rear].Inner, c.Links[front].Inner))
		with := func(force float64) float64 {
			chassis := f.Chassis
			chassis[front] = r3.Add(chassis[front], r3.Scale(force, line))
			chassis[rear] = r3.Sub(chassis[rear], r3.Scale(force, line))
			return energy(c, chassis)
		}
		least := with(0)
		for _, force := range []float64{0.001, 0.1, 1, 10} {
			force *= w.size()
			there, back := with(force), with(-force)
			if !(there >= least) || !(back >= least) {
				t.Fatalf("energy %.12g N·mm, but %.12g and %.12g with ±%.3g N between the pick-ups", least, there, back, force)
			}
			if !near(there, back, 1e-8*(there+back)) {
				t.Fatalf("energy %.12g N·mm with %.3g N between the pick-ups, but %.12g with the reverse: not the least", there, force, back)
			}
		}
	})
}

// symmetricWishbone has equal legs, symmetric about the plane x = 0, in which the ball
// joint and the rod lie.
func symmetricWishbone(carrier Carrier) Corner {
	c := hillclimb(Upright)
	c.Carrier = carrier
	front, rear, _ := carrier.Legs()
	c.Links[front].Outer.X, c.Links[rear].Outer.X = 0, 0
	c.Links[front].Inner = vec(180, 215, 140)
	if carrier == UpperWishbone {
		c.Links[front].Inner = vec(140, 275, 365)
	}
	c.Links[rear].Inner = imageInX(c.Links[front].Inner)
	c.Links[Rod] = Link{Outer: vec(0, 600, 200), Inner: vec(0, 270, 470), EA: 2e7}
	if carrier == UpperWishbone {
		c.Links[Rod] = Link{Outer: vec(0, 600, 385), Inner: vec(0, 240, 150), EA: 2e7}
	}
	c.Rocker = nil
	return c
}

func imageInX(v r3.Vec) r3.Vec { return vec(-v.X, v.Y, v.Z) }

// byHand is the force method on a symmetric wishbone under a force p at its apex, given
// along the line of the pick-ups, in the plane square to it, and across the plane. The
// pick-ups are b to each side and h inboard; a and β are the flexibilities L/EA and L³/3EI.
//
// Statics leaves one unknown, the force x with which the pick-ups press on each other:
//
//	N = x·sin α + p₂/2·cos α,  S = x·cos α − p₂/2·sin α     (symmetric part)
//	∂(N²a + S²β)/∂x = 0  ⇒  x = p₂/2·sin α·cos α·(β − a)/(a·sin² α + β·cos² α)
//
// p₁ along the line adds ±(p₁/2, h·p₁/2b) at the pick-ups, p₃ across a shear of p₃/2 each.
func byHand(p [3]float64, b, h, ea, ei float64) (axial, shear [2]float64) {
	length := math.Hypot(b, h)
	sin, cos := b/length, h/length
	a, beta := length/ea, math.Pow(length, 3)/(3*ei)
	x := p[1] / 2 * sin * cos * (beta - a) / (a*sin*sin + beta*cos*cos)
	for i, side := range []float64{1, -1} {
		along := side*x - p[0]/2            // of the reaction at the pick-up
		inboard := p[1]/2 - side*h*p[0]/2/b // of the same
		axial[i] = side*along*sin + inboard*cos
		inPlane := side*along*cos - inboard*sin
		shear[i] = math.Hypot(inPlane, p[2]/2)
	}
	return axial, shear
}

func TestSymmetricWishboneByHand(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := symmetricWishbone(rapid.SampledFrom([]Carrier{UpperWishbone, LowerWishbone}).Draw(t, "carrier"))
		front, rear, _ := c.Carrier.Legs()
		ea, gyration := rapid.Float64Range(5e6, 5e7).Draw(t, "EA"), rapid.Float64Range(0.5, 60).Draw(t, "radius of gyration")
		for _, leg := range []int{front, rear} {
			c.Links[leg].EA, c.Links[leg].EI = ea, ea*gyration*gyration
		}
		s, err := NewStatics(c)
		if err != nil {
			t.Fatalf("NewStatics: %v", err)
		}
		w := drawLoad(t, "load")
		f := s.Solve(w)
		apex, pickUp := c.Links[front].Outer, c.Links[front].Inner
		b, middle := pickUp.X, vec(0, pickUp.Y, pickUp.Z)
		outboard := r3.Unit(r3.Sub(apex, middle))
		p := r3.Sub(r3.Scale(-1, f.Chassis[Rod]), f.Upright[c.Carrier.joint()])
		axial, shear := byHand(
			[3]float64{p.X, r3.Dot(outboard, p), r3.Dot(r3.Cross(vec(1, 0, 0), outboard), p)},
			b, r3.Norm(r3.Sub(apex, middle)), ea, ea*gyration*gyration)
		for i, leg := range []int{front, rear} {
			length := c.Links[leg].Length()
			if !near(f.Axial[leg], axial[i], 1e-9*w.size()) || !near(f.Bending[leg], length*shear[i], 1e-9*length*w.size()) {
				t.Fatalf("%s: axial %.10g N, bending %.10g N·mm; by hand %.10g, %.10g",
					LinkNames[leg], f.Axial[leg], f.Bending[leg], axial[i], length*shear[i])
			}
		}
	})
}

// bracket is the corner of a carrier with its rod's outer joint moved to a share of its
// distance from the carrying wishbone's ball joint, and the same corner with the rod in
// that ball joint on the upright.
func bracket(carrier Carrier, share, gyration float64) (carried, atJoint Corner) {
	c := withTubes(hillclimb(carrier), 1.5e7, gyration)
	c.Rocker = nil
	front, _, _ := carrier.Legs()
	joint := c.Links[front].Outer
	carried, atJoint = c, c
	carried.Links[Rod].Outer = r3.Add(joint, r3.Scale(share, r3.Sub(c.Links[Rod].Outer, joint)))
	atJoint.Links[Rod].Outer = joint
	atJoint.Carrier = Upright
	return carried, atJoint
}

// apart is the largest difference of the axial forces of two corners, N.
func apart(t *testing.T, a, b Corner, w WheelLoad) float64 {
	t.Helper()
	f, g := mustStatics(t, a).Solve(w), mustStatics(t, b).Solve(w)
	worst := 0.0
	for i := range f.Axial {
		worst = math.Max(worst, math.Abs(f.Axial[i]-g.Axial[i]))
	}
	return worst
}

// A bracket that shrinks to the ball joint leaves the forces of a rod on the upright
// there. With slender legs nothing else is left; with tubes, the frame action of the stiff
// apex is, of the order of a/β = 3r²/L².
func TestBracketShrinksToTheBallJoint(t *testing.T) {
	w := WheelLoad{Force: vec(-1500, 1200, 4000), Moment: vec(2e4, 1e4, -3e4)}
	const slender, tube = 1e-6, 5.2 // radius of gyration, mm
	for _, carrier := range []Carrier{UpperWishbone, LowerWishbone} {
		name := CarrierNames[carrier]
		carried, atJoint := bracket(carrier, 0, slender)
		if left := apart(t, carried, atJoint, w); !(left <= 1e-9*w.size()) {
			t.Errorf("%s, slender legs at the joint: %.3g N apart, want 1e-9 of the load", name, left)
		}
		frame, before := 0.0, math.Inf(1)
		for _, leg := range carried.Links[:TrackRod] {
			frame = math.Max(frame, 3*math.Pow(tube/leg.Length(), 2)*w.size())
		}
		for _, share := range []float64{1, 0.1, 0.01, 0.001, 0} {
			carried, atJoint := bracket(carrier, share, slender)
			left := apart(t, carried, atJoint, w)
			if !(left <= (share+1e-9)*w.size()) {
				t.Errorf("%s, slender legs at %g of the bracket: %.3g N apart, want less than %.3g", name, share, left, (share+1e-9)*w.size())
			}
			carried, atJoint = bracket(carrier, share, tube)
			left = apart(t, carried, atJoint, w)
			if !(left <= before+frame) || !(left <= share*w.size()+frame) {
				t.Errorf("%s, tubes at %g of the bracket: %.3g N apart, before %.3g, want less than %.3g", name, share, left, before, share*w.size()+frame)
			}
			before = left
		}
		if !(before >= frame/100) {
			t.Errorf("%s, tubes at the joint: %.3g N apart: where is the frame action?", name, before)
		}
	}
}

// Legs of a carrying wishbone need their sections: without, nothing passes for a result.
func TestCarryingLegsNeedSections(t *testing.T) {
	for _, carrier := range []Carrier{UpperWishbone, LowerWishbone} {
		front, _, _ := carrier.Legs()
		for name, remove := range map[string]func(*Link){"EA": func(l *Link) { l.EA = 0 }, "EI": func(l *Link) { l.EI = 0 }} {
			c := hillclimb(carrier)
			remove(&c.Links[front])
			s, err := NewStatics(c)
			if err != nil {
				continue
			}
			w := WheelLoad{Force: vec(0, 0, 3000)}
			if f, _ := SolveAxle(s, s, w, w); f.Residual <= 1e-9 {
				t.Errorf("%s without %s: residual %.3g, forces %v; want a failure", CarrierNames[carrier], name, f.Residual, f.Axial)
			}
		}
	}
}
