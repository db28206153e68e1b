package loads

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// near reports whether two numbers agree; NaN agrees with nothing.
func near(got, want, tol float64) bool { return math.Abs(got-want) <= tol }

func nearVec(got, want r3.Vec, tol float64) bool { return r3.Norm(r3.Sub(got, want)) <= tol }

// A value is one number of a result, brought to the size of a force, N.
type value struct {
	name string
	x    float64
}

// values lists every force of a corner that depends linearly on the load, with the
// vectors turned: as they are, mirrored or in another frame.
func values(c Corner, f Forces, turn func(r3.Vec) r3.Vec) []value {
	var out []value
	add := func(name string, x float64) { out = append(out, value{name, x}) }
	addVec := func(name string, v r3.Vec) {
		v = turn(v)
		add(name+".x", v.X)
		add(name+".y", v.Y)
		add(name+".z", v.Z)
	}
	for i, name := range LinkNames {
		add("axial force of "+name, f.Axial[i])
		addVec("chassis force of "+name, f.Chassis[i])
	}
	for i, name := range JointNames {
		addVec("upright force at "+name, f.Upright[i])
	}
	if r := f.Rocker; r != nil {
		add("rod torque", r.RodTorque/60)
		if c.Rocker.Spring != nil {
			add("spring", r.Spring)
		} else {
			add("torsion bar", r.TorsionBar/60)
		}
		if c.Rocker.AntiRoll != nil {
			add("anti-roll link", r.AntiRoll)
		}
		addVec("pivot", r.Pivot)
		addVec("bearing 1", r.Bearings[0])
		addVec("bearing 2", r.Bearings[1])
		add("thrust", r.Thrust)
		addVec("spring on chassis", r.SpringOn)
		addVec("anti-roll link on bar", r.AntiRollOn)
	}
	return out
}

// allValues are values and the bending moments, which are lengths of vectors.
func allValues(c Corner, f Forces, turn func(r3.Vec) r3.Vec) []value {
	out := values(c, f, turn)
	for i, name := range LinkNames {
		out = append(out, value{"bending of " + name, f.Bending[i] / 100})
	}
	return out
}

func asItIs(v r3.Vec) r3.Vec { return v }

// compare fails the test where two results differ by more than tol, N.
func compare(t rapid.TB, what string, got, want []value, tol float64) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%s: %d values, want %d", what, len(got), len(want))
	}
	for i, w := range want {
		if !near(got[i].x, w.x, tol) {
			t.Fatalf("%s: %s = %.12g, want %.12g ± %.1e", what, w.name, got[i].x, w.x, tol)
		}
	}
}

// combined is the sum of results of one corner, each times its factor.
func combined(factors []float64, results ...[]value) []value {
	out := make([]value, len(results[0]))
	for i := range out {
		out[i].name = results[0][i].name
		for j, r := range results {
			out[i].x += factors[j] * r[i].x
		}
	}
	return out
}

// A balance sums forces and their moments about a point, apart from the free bodies
// of the package.
type balance struct{ about, force, moment r3.Vec }

func (b *balance) add(at, force r3.Vec) {
	b.force = r3.Add(b.force, force)
	b.moment = r3.Add(b.moment, r3.Cross(r3.Sub(at, b.about), force))
}

func (b *balance) addLoad(c Corner, w WheelLoad) {
	b.add(c.Contact, w.Force)
	b.add(c.Centre, w.Inertia)
	b.moment = r3.Add(b.moment, w.Moment)
	if w.Released {
		spin := r3.Unit(c.Spin)
		atCentre := r3.Add(w.Moment, r3.Cross(r3.Sub(c.Contact, c.Centre), w.Force))
		b.moment = r3.Sub(b.moment, r3.Scale(r3.Dot(spin, atCentre), spin))
	}
}

// check fails the test unless nothing is left of force, N, and of moment on a lever
// of the distances in a corner.
func (b *balance) check(t rapid.TB, body string, tol float64) {
	t.Helper()
	lever := 100 + r3.Norm(b.about)
	if left := r3.Norm(b.force); !(left <= tol) {
		t.Fatalf("%s: force %.3g N is left (%s), want 0 ± %.1e", body, left, fmt.Sprint(b.force), tol)
	}
	if left := r3.Norm(b.moment) / lever; !(left <= tol) {
		t.Fatalf("%s: moment %.3g N·mm about %v is left, want 0 ± %.1e", body, left*lever, b.about, tol*lever)
	}
}
