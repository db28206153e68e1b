package compliance_test

import (
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/loads"
	"sixlink/loads/compliance"
)

func vec(x, y, z float64) r3.Vec { return r3.Vec{X: x, Y: y, Z: z} }

// sample is a corner of the invented hill-climb single-seater, scattered by up to 10 mm,
// with tubes, pick-ups and pivot drawn: some of these rigid.
func sample(seed uint64) (loads.Corner, compliance.Stiffness) {
	r := rand.New(rand.NewPCG(seed, 64))
	near := func(x, y, z float64) r3.Vec {
		off := func() float64 { return 20 * (r.Float64() - 0.5) }
		return vec(x+off(), y+off(), z+off())
	}
	c := loads.Corner{Carrier: loads.Carrier(seed % 3), Centre: near(0, 740, 285), Contact: near(0, 740, 0), Spin: vec(0.02, 1, 0.03)}
	upper, lower := near(-14, 655, 400), near(8, 690, 165)
	c.Links = [loads.NumLinks]loads.Link{
		{Outer: upper, Inner: near(150, 265, 372)},
		{Outer: upper, Inner: near(-190, 285, 362)},
		{Outer: lower, Inner: near(190, 200, 140)},
		{Outer: lower, Inner: near(-230, 210, 138)},
		{Outer: near(95, 672, 205), Inner: near(88, 232, 186)},
		{Outer: near(2, 620, 210), Inner: near(0, 270, 470)},
	}
	c.Rocker = &loads.Rocker{
		Pivot: near(0, 234, 422), Axis: vec(1, 0.1, 0.05), BearingSpan: 20 + 40*r.Float64(),
		Spring: &loads.Line{Rocker: near(0, 201, 466), Far: near(0, 28, 458)},
	}
	if c.Carrier == loads.UpperWishbone {
		c.Links[loads.Rod] = loads.Link{Outer: near(-8, 610, 385), Inner: near(-4, 240, 150)}
		c.Rocker.Pivot, c.Rocker.Spring = near(-4, 200, 201), &loads.Line{Rocker: near(-4, 165, 245), Far: near(-4, 39, 143)}
	}
	switch seed % 4 {
	case 1:
		c.Rocker.Spring = nil
	case 2:
		c.Rocker = nil
	}
	for i := range c.Links {
		ea := 1e7 * (0.5 + r.Float64())
		gyration := 2 + 6*r.Float64()
		c.Links[i].EA, c.Links[i].EI = ea, ea*gyration*gyration
	}
	return c, held(r)
}

func held(r *rand.Rand) (k compliance.Stiffness) {
	one := func() float64 {
		if r.IntN(4) == 0 {
			return 0
		}
		return 2e3 + 5e4*r.Float64()
	}
	for i := range k.PickUps {
		k.PickUps[i] = vec(one(), one(), one())
	}
	k.SpringPickUp = vec(one(), one(), one())
	k.Bearing, k.Thrust, k.Spring = one(), one(), 20*one()
	return k
}

func mustNew(t *testing.T, c loads.Corner, k compliance.Stiffness) *compliance.Compliance {
	t.Helper()
	out, err := compliance.New(c, k)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// samples are how many corners a law is held to.
const samples = 48

func each(t *testing.T, test func(t *testing.T, c loads.Corner, k compliance.Stiffness)) {
	for seed := range uint64(samples) {
		c, k := sample(seed)
		test(t, c, k)
		if t.Failed() {
			t.Fatalf("sample %d", seed)
		}
	}
}

// near tells whether two matrices agree to a share of the size of their elements, turns
// and moments weighed by 300 mm.
func near(t *testing.T, got, want compliance.Matrix, tolerance float64) {
	t.Helper()
	weigh := func(m *compliance.Matrix) (size float64) {
		for i := range 6 {
			for j := range 6 {
				m[i][j] *= []float64{1, 300}[i/3] * []float64{1, 300}[j/3]
				size = max(size, m[i][j], -m[i][j])
			}
		}
		return size
	}
	weigh(&got)
	size := weigh(&want)
	for i := range 6 {
		for j := range 6 {
			if d := got[i][j] - want[i][j]; !(d <= tolerance*size && -d <= tolerance*size) {
				t.Errorf("row %d, column %d: %.15g, want %.15g; largest %.3g", i, j, got[i][j], want[i][j], size)
			}
		}
	}
}
