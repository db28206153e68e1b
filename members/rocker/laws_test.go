package rocker

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"sixlink/members/check"
	"sixlink/members/check/equation"
)

// holds runs the laws that every table of linear checks keeps: working that follows,
// the doubled load, the load times its reserve factor, and nothing where there is no load.
func holds[S any](t *testing.T, checks []check.Check[S], givens func(S) []check.Step, drawn func(*rapid.T) S, times func(S, float64) S) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawn(t)
		for _, c := range checks {
			if c.Applies(times(s, 0)) {
				t.Fatalf("%s applies without a load", c.Name)
			}
			if !c.Applies(s) {
				continue
			}
			scope := map[string]float64{}
			faults := append(equation.Follow(givens(s), scope, 1e-9), equation.Follow(c.Working(s), scope, 1e-9)...)
			for _, err := range faults {
				t.Errorf("%s: %v", c.Name, err)
			}
			f := c.Judge(s)
			if scope["RF"] != f.Reserve || scope["C"] != f.Capacity || f.Source == "" {
				t.Errorf("%s: the working ends in C %g, RF %g; the finding says %+v", c.Name, scope["C"], scope["RF"], f)
			}
			if !(f.Demand > 0) || !(f.Capacity > 0) || !(f.Reserve > 0) {
				t.Errorf("%s: %+v", c.Name, f)
			}
			if twice := c.Judge(times(s, 2)); !within(2*twice.Reserve, f.Reserve, 1e-9*f.Reserve) {
				t.Errorf("%s: RF %g at the load, %g at twice the load", c.Name, f.Reserve, twice.Reserve)
			}
			if full := c.Judge(times(s, f.Reserve)); !within(full.Demand, full.Capacity, 1e-9*full.Capacity) || !within(full.Reserve, 1, 1e-9) {
				t.Errorf("%s: at RF times the load demand %g of %g, RF %g", c.Name, full.Demand, full.Capacity, full.Reserve)
			}
		}
	})
}

func (s Section) times(x float64) Section {
	s.Outward, s.Across, s.Along, s.InPlane, s.Lift = x*s.Outward, x*s.Across, x*s.Along, x*s.InPlane, x*s.Lift
	return s
}

func (b PivotBolt) times(x float64) PivotBolt {
	for i := range 2 {
		b.Outward[i], b.Across[i] = x*b.Outward[i], x*b.Across[i]
	}
	b.Thrust *= x
	return b
}

func TestSectionLaws(t *testing.T) {
	holds(t, SectionChecks, SectionGivens, drawSection, Section.times)
}

func TestBearingLaws(t *testing.T) {
	holds(t, BearingChecks, BearingGivens, drawBearings, func(b Bearings, x float64) Bearings {
		b.Radial1, b.Radial2, b.Axial = x*b.Radial1, x*b.Radial2, x*b.Axial
		return b
	})
}

func TestTorsionBarLaws(t *testing.T) {
	holds(t, TorsionBarChecks, TorsionBarGivens, drawBar, func(b TorsionBar, x float64) TorsionBar {
		b.Torque *= x
		return b
	})
}

func TestPivotBoltLaws(t *testing.T) {
	holds(t, PivotBoltChecks, PivotBoltGivens, drawBolt, PivotBolt.times)
}

// More of any load never raises a reserve factor, and thicker plates never lower one.
func TestSectionGrows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSection(t)
		more := s
		load := rapid.SampledFrom([]*float64{&more.Outward, &more.Across, &more.Along, &more.InPlane, &more.Lift, &more.Offset}).Draw(t, "load")
		*load = *load*1.5 + 1
		thick := s
		thick.Thickness *= 1.3
		for _, f := range check.Judge(SectionChecks, s) {
			if got := finding(t, SectionChecks, more, f.Check).Reserve; !(got <= f.Reserve*(1+1e-12)) {
				t.Errorf("%s: RF %g with more load, %g before", f.Check, got, f.Reserve)
			}
			if got := finding(t, SectionChecks, thick, f.Check).Reserve; !(got >= f.Reserve*(1-1e-12)) {
				t.Errorf("%s: RF %g with thicker plates, %g before", f.Check, got, f.Reserve)
			}
		}
	})
}

// Two plates side by side at the middle are one of twice the thickness, for loads in
// their plane at no offset.
func TestTwoPlatesAreOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		two := drawSection(t)
		two.Count, two.Spacing, two.Offset, two.Along, two.Lift = 2, 3*two.Thickness, 0, 0, 0
		one := two
		one.Count, one.Thickness, one.Spacing, one.Joined = 1, 2*two.Thickness, 0, false
		if a, b := two.Mises(), one.Mises(); !within(a, b, 1e-9*b) {
			t.Errorf("equivalent stress %g in two plates, %g in one of twice the thickness", a, b)
		}
	})
}

// The supports hold what the bearings load, in force and in moment about the middle; and
// the two ends of the bolt are alike.
func TestBoltBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBolt(t)
		for _, f := range [][2]float64{b.Outward, b.Across} {
			r1, r2 := b.part(f)
			tol := 1e-9 * (math.Abs(r1) + math.Abs(r2) + math.Abs(f[0]) + math.Abs(f[1]))
			if !within(r1+r2, f[0]+f[1], tol) || !within((r1-r2)*b.Support, (f[0]-f[1])*b.BearingSpan, tol*b.Support) {
				t.Errorf("reactions %g and %g to %v", r1, r2, f)
			}
		}
		other := b
		slices.Reverse(other.Outward[:])
		slices.Reverse(other.Across[:])
		if !within(b.Moment(), other.Moment(), 1e-9*b.Moment()) || !within(b.Shear(), other.Shear(), 1e-9*b.Shear()) {
			t.Errorf("moment %g and %g, shear %g and %g from either end", b.Moment(), other.Moment(), b.Shear(), other.Shear())
		}
	})
}

// The largest moment and shear are those that a walk along the bolt finds.
func TestBoltWalk(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := drawBolt(t)
		if b.Lever() == 0 {
			return // each bearing at its support: where the shear is beside it is open
		}
		x1, x2 := b.part(b.Outward)
		y1, y2 := b.part(b.Across)
		type load struct{ at, x, y float64 }
		loads := []load{
			{-b.Support / 2, x1, y1},
			{b.Support / 2, x2, y2},
			{-b.BearingSpan / 2, -b.Outward[0], -b.Across[0]},
			{b.BearingSpan / 2, -b.Outward[1], -b.Across[1]},
		}
		moment, shear := 0.0, 0.0
		for _, cut := range loads {
			var mx, my, vx, vy float64
			for _, l := range loads {
				if l.at <= cut.at {
					mx, my, vx, vy = mx+l.x*(cut.at-l.at), my+l.y*(cut.at-l.at), vx+l.x, vy+l.y
				}
			}
			moment, shear = math.Max(moment, math.Hypot(mx, my)), math.Max(shear, math.Hypot(vx, vy))
		}
		if !within(b.Moment(), moment, 1e-9*moment+1e-6) || !within(b.Shear(), shear, 1e-9*shear) {
			t.Errorf("moment %g, shear %g; the walk finds %g, %g", b.Moment(), b.Shear(), moment, shear)
		}
	})
}

// The stresses of a section add up to the load that it carries: their sums and moments
// over the net sections of the plates.
func TestStressesBalanceTheLoad(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSection(t)
		sum := func(lo, hi float64, f func(float64) float64) float64 { // Simpson: exact for a square
			return (hi - lo) / 6 * (f(lo) + 4*f((lo+hi)/2) + f(hi))
		}
		k, n := s.Share(), float64(s.Count)
		inPlane := 2 * sum(s.Opening/2, s.Width/2, func(y float64) float64 {
			return s.Bending() * y / (s.Width / 2) * y * s.Thickness
		})
		if !within(inPlane, k*s.InPlane, 1e-9*k*s.InPlane) {
			t.Errorf("moment in the plane %g, want %g", inPlane, k*s.InPlane)
		}
		out, want := n*sum(-s.Thickness/2, s.Thickness/2, func(x float64) float64 {
			return s.Out() * x / (s.Thickness / 2) * x * s.Net()
		}), s.Lift
		switch {
		case s.Joined:
			out = s.Out() * s.Thickness * s.Net() * s.Spacing
		case s.Count == 1:
			want += s.Offset * s.Outward
		}
		if !within(out, want, 1e-9*want) {
			t.Errorf("moment out of the plane %g, want %g", out, want)
		}
		near, far := s.Direct()*s.Area(), (1-k)*s.Outward
		if s.Count == 2 && !within((near-far)*s.Spacing/2, s.Outward*s.Offset, 1e-9*s.Outward*(s.Offset+s.Spacing)) {
			t.Errorf("plates with %g and %g N, want a moment of %g", near, far, s.Outward*s.Offset)
		}
		if !within(near+far, s.Outward, 1e-9*s.Outward) || !within(n*s.ShearOut()*s.Thickness*s.Net(), s.Along, 1e-9*s.Along) {
			t.Errorf("forces %g and %g N along the arm", near, far)
		}
	})
}

// An eye as a lug: its working follows, it pulls with the whole force in the plane, and
// its findings are linear in it.
func TestEyeItem(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := Eye{Section: drawSection(t)}
		e.Opening = draw(t, "D", 3, e.Width*0.9)
		e.Edge = draw(t, "e/D", 0.6, 3) * e.Opening
		e.InPlane, e.Lift = 0, 0
		twice := e
		twice.Section = e.times(2)
		item, other := EyeItem("rod eye", e), EyeItem("rod eye", twice)
		if (e.Pull() > 0) != (len(item.Findings) > 0) || len(item.Findings) != len(other.Findings) {
			t.Fatalf("%d findings under a pull of %g N", len(item.Findings), e.Pull())
		}
		for i, f := range item.Findings {
			if !within(f.Demand, e.Pull(), 1e-12*e.Pull()) || !within(2*other.Findings[i].Reserve, f.Reserve, 1e-9*f.Reserve) {
				t.Errorf("pull of %g N: %+v", e.Pull(), f)
			}
		}
		for _, sheet := range item.Sheets() {
			scope := map[string]float64{}
			for _, err := range append(equation.Follow(item.Givens(), scope, 1e-9), equation.Follow(sheet.Steps, scope, 1e-9)...) {
				t.Errorf("%s: %v", sheet.Check, err)
			}
		}
	})
}

// The fitting factor divides every reserve factor of what joins the rocker to its
// neighbours; left out, there is none.
func TestFittingFactor(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		factor := draw(t, "factor", 1, 2)
		section, bearings, bolt := drawSection(t), drawBearings(t), drawBolt(t)
		reserves := func(fitting float64) (out []float64) {
			section.Fitting, bearings.Fitting, bolt.Fitting = fitting, fitting, fitting
			for _, f := range slices.Concat(check.Judge(SectionChecks, section), check.Judge(BearingChecks, bearings), check.Judge(PivotBoltChecks, bolt)) {
				out = append(out, f.Reserve)
			}
			return out
		}
		one, more, none := reserves(1), reserves(factor), reserves(0)
		for i := range one {
			if !within(more[i]*factor, one[i], 1e-9*one[i]) || !math.IsNaN(none[i]) {
				t.Errorf("RF %g, with a fitting factor of %g %g, without one %g", one[i], factor, more[i], none[i])
			}
		}
	})
}
