package duty_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/cases/duty"
	"sixlink/loads"
	"sixlink/members/fatigue"
)

// Second origin: the peaks of a log of accelerations have the reserve factors of a full run
// in which every row is a load case of its own, wherever that run has its lowest one by the
// axial force alone or by a fibre; and no peak is below what the full run finds. The log is
// cut into pieces, and one worker finds what three do.
func TestPeaksAreCases(t *testing.T) {
	f, r := readCar(t, exampleCar)
	random := rand.New(rand.NewPCG(8, 12))
	car := f.Car
	car.Cases = nil
	var b strings.Builder
	b.WriteString("t,ax,ay,v\n")
	for i := range 600 {
		ax, ay, v := math.Round(100*(random.Float64()*2-1.3))/100, math.Round(100*(random.Float64()*3-1.5))/100, math.Round(random.Float64()*40)
		fmt.Fprintf(&b, "%.2f,%.2f,%.2f,%.0f\n", float64(i)*0.01, ax, ay, v)
		car.Cases = append(car.Cases, cases.Case{Name: fmt.Sprint(i), Kind: cases.Manoeuvre, Acceleration: [2]float64{ax, ay}, Speed: v})
	}
	full, err := cases.Run(car)
	if err != nil {
		t.Fatal(err)
	}
	defer duty.SetPieceSize(1000)()
	d := plain()
	d.Blocks, d.Histories = nil, []duty.History{byAcceleration()}
	l := find(t, d, &r, duty.Run{Open: text(b.String()), Workers: 3})
	again := find(t, d, &r, duty.Run{Open: text(b.String()), Workers: 1})
	same := 0
	for i, p := range l.Peaks {
		if q := again.Peaks[i]; fmt.Sprint(q) != fmt.Sprint(p) {
			t.Errorf("%s of %d workers, %s of one", p.When(), 3, q.When())
		}
		want, ok := full.Judged(p.Corner, p.Member).Governs()
		if !ok || !(p.Reserve >= want.Reserve*(1-1e-9)) {
			t.Errorf("corner %d, %s: RF %g at the peaks, %g in a full run", p.Corner, cases.MemberNames[p.Member], p.Reserve, want.Reserve)
		}
		k := int(math.Round(p.Time * 100))
		least := math.Inf(1)
		for _, f := range full.Judged(p.Corner, p.Member).Checks {
			if f.Case == k {
				least = math.Min(least, f.Reserve)
			}
		}
		if !near(p.Reserve, least, 1e-9) {
			t.Errorf("corner %d, %s: RF %g at %g s, where a full run has %g", p.Corner, cases.MemberNames[p.Member], p.Reserve, p.Time, least)
		}
		if near(p.Reserve, want.Reserve, 1e-9) {
			same++
		}
	}
	if len(l.Peaks) < 4*loads.NumLinks || same < len(l.Peaks)*9/10 {
		t.Errorf("%d peaks, %d of them the lowest of the full run", len(l.Peaks), same)
	}
}

// Second origin: the peak of a log of wheel forces has the reserve factors of a load case of
// those contact forces; twice the load factor has those of twice the forces.
func TestPeakOfWheelForces(t *testing.T) {
	f, r := readCar(t, exampleCar)
	h, log := vertical(1000, 1100, 1000, 5200, 1000, 900, 1000)
	for _, factor := range []float64{1, 2} {
		d := plain()
		d.Blocks, d.Histories, d.LoadFactor = nil, []duty.History{h}, factor
		l := find(t, d, &r, duty.Run{Open: text(log)})
		car := f.Car
		k := cases.Case{Name: "peak", Kind: cases.ContactForces, Wheel: cases.Rolling}
		k.Contact[cases.FrontLeft] = &cases.ContactForce{Force: r3.Vec{Z: factor * 5200}}
		car.Cases = []cases.Case{k}
		full, err := cases.Run(car)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range l.Peaks {
			if p.Corner != cases.FrontLeft || p.Member != loads.Rod {
				continue
			}
			want, _ := full.Judged(p.Corner, p.Member).Governs()
			if p.Check != want.Check || !near(p.Reserve, want.Reserve, 1e-9) || p.When() != "peak of log at 0.300 s" || p.Passes() != (want.Reserve >= 1) {
				t.Errorf("factor %g: %s, RF %g, %s; want %s, RF %g at 0.3 s", factor, p.Check, p.Reserve, p.When(), want.Check, want.Reserve)
			}
		}
	}
}

// Law: a strike in a log that breaks a member fails, whatever the damage of so short a time.
func TestStrikeInALogFails(t *testing.T) {
	_, r := readCar(t, exampleCar)
	forces := []float64{1000, 1100, 1000, 1100, 1000}
	for _, strike := range []float64{1100, 60000} {
		forces[3] = strike
		h, log := vertical(forces...)
		d := plain()
		d.Blocks, d.Histories = nil, []duty.History{h}
		d.Details[0].Axle, d.Details[0].Link = cases.Front, loads.Rod
		l := find(t, d, &r, duty.Run{Open: text(log)})
		at := l.Weakest(func(*duty.Peak) bool { return true })
		if got := l.Peaks[at].Passes(); got != (strike < 2000) {
			t.Errorf("strike of %g N: %s has RF %g", strike, cases.MemberNames[l.Peaks[at].Member], l.Peaks[at].Reserve)
		}
		if strike > 2000 && l.Pass {
			t.Error("the lives pass")
		}
	}
}

// Laws: a life does not pass where the car does not pass its own checks; where the duty puts
// no load on a detail; where the nominal stress passes the ultimate strength, though a rule
// that counts what pulls finds no damage in compression.
func TestWhatNeverPasses(t *testing.T) {
	_, r := readCar(t, exampleCar)
	d := plain("Static", "Bump")
	if l := find(t, d, &r, duty.Run{}); !l.Pass || !l.CarPasses {
		t.Fatal("the duty itself does not pass")
	}
	r.Pass = false
	if l := find(t, d, &r, duty.Run{}); l.Pass || l.CarPasses {
		t.Error("the car fails its checks, and its lives pass")
	}
	r.Pass = true
	l := find(t, plain("Static", "Static"), &r, duty.Run{})
	for _, x := range l.Rows {
		if !x.Unloaded || x.Pass || !math.IsNaN(x.Distance) {
			t.Errorf("%s of corner %d has no load: %+v km, pass %v", loads.LinkNames[x.Link], x.Corner, x.Distance, x.Pass)
		}
	}
	if l.Pass {
		t.Error("nothing has a load, and the lives pass")
	}
	push := plain("Static", "Bump")
	push.LoadFactor = 10
	push.Details = []duty.Detail{{Name: "hole", Axle: duty.All, Link: loads.Rod, Place: duty.Middle, Curve: duty.Curve{Kind: duty.ByStress, Row: "4130 (Su 895)", Rule: fatigue.SWT, Kt: 1}}}
	for _, factor := range []float64{1, 100} {
		push.LoadFactor = factor
		for _, x := range find(t, push, &r, duty.Run{}).Rows {
			su := r.Car.Side(x.Corner).Parts[x.Link].Strut.Metal.Su
			if broken := x.Highest > su; x.Pass == broken || broken != (x.Broken != "") || broken != (factor > 1) {
				t.Errorf("load factor %g: highest stress %g MPa of %g, pass %v, %q", factor, x.Highest, su, x.Pass, x.Broken)
			}
		}
	}
}

// By hand: 550 MPa of the member and 895 MPa of the metal that was tested. Neuber's constant
// falls with the strength, so the larger one makes the notch more sensitive; Goodman's rule
// divides by the smaller one.
func TestEachRuleTakesTheStrengthOfMoreDamage(t *testing.T) {
	_, r := readCar(t, exampleCar)
	s := r.Car.Side(cases.FrontLeft).Parts[loads.Rod].Strut
	for _, su := range []float64{550, 1200} {
		s.Metal.Su = su
		c, refused := duty.CurveOf(duty.Curve{Kind: duty.ByStress, Row: "4130 (Su 895)", Rule: fatigue.Goodman, Kt: 3, Radius: 1, Surface: "machined or cold drawn"}, s, 0.5)
		if refused != "" {
			t.Fatal(refused)
		}
		l := c.(fatigue.StressLife)
		low, high := math.Min(su, 895), math.Max(su, 895)
		if want := fatigue.NotchFactor(3, fatigue.NeuberSensitivity(1, high)); l.Mean.Ultimate != low || !near(l.Notch, want, 1e-12) || !near(l.Strength, 4.51*math.Pow(high, -0.265), 1e-12) {
			t.Errorf("Su %g: Goodman by %g, K_f %g, factor %g", su, l.Mean.Ultimate, l.Notch, l.Strength)
		}
		if said := strings.Join(c.About().Remarks, "; "); !strings.Contains(said, "each rule takes the one that gives more damage") {
			t.Errorf("nothing is said of the two strengths: %s", said)
		}
	}
}
