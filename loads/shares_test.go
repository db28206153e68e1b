package loads

import (
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
)

// checkShares holds the shares to the forces with which a rod whose line meets that of the
// pick-ups, at a share of the way from the front one, presses on them without a load: as
// on a beam, and without any force of the pick-ups on each other along their line.
func checkShares(t *testing.T, what string, m *Mechanism, c Corner, share float64) {
	t.Helper()
	front, rear, _ := c.Carrier.Legs()
	line := r3.Unit(r3.Sub(c.Links[rear].Inner, c.Links[front].Inner))
	u := c.Links[Rod].Direction()
	between := r3.Scale((1-2*share)*r3.Dot(u, line)/2, line)
	onFront := r3.Norm(r3.Sub(r3.Scale(1-share, u), between))
	onRear := r3.Norm(r3.Add(r3.Scale(share, u), between))
	size := math.Sqrt(1 + onFront*onFront + onRear*onRear)
	want := [NumLinks]float64{Rod: 1 / size}
	want[front], want[rear] = onFront/size, onRear/size
	for i, got := range m.Shares {
		if !near(got, want[i], 1e-6) {
			t.Errorf("%s: share of %s %.8f, want %.8f", what, LinkNames[i], got, want[i])
		}
	}
}

// The shares are those of the fault: they do not depend on the last thousandth of a
// millimetre, nor hold any of the force with which the pick-ups of a carrying wishbone can
// press on each other in every corner.
func TestSharesAreThoseOfTheFault(t *testing.T) {
	everyCarrier(t, func(t *testing.T, c Corner) {
		near0, _, _ := offAxis(c.Carrier, 1e-4)
		want := refused(t, near0).Shares
		for _, distance := range []float64{0, -1e-4, 1e-9, 1e-12} {
			c, _, _ := offAxis(c.Carrier, distance)
			for i, got := range refused(t, c).Shares {
				if !near(got, want[i], 1e-3) {
					t.Errorf("%g mm off: share of %s %.4f, but %.4f at 0.0001 mm", distance, LinkNames[i], got, want[i])
				}
			}
		}
	})
}

// Two links on one line press on each other alone: they share the fault by halves (each
// 1/√2 of a unit vector), and no other link has any of it.
func TestSharesOfTwoLinksOnOneLine(t *testing.T) {
	c := hillclimb(Upright)
	track := c.Links[TrackRod]
	c.Links[Rod].Outer, c.Links[Rod].Inner = r3.Add(track.Outer, r3.Scale(0.1, r3.Sub(track.Outer, track.Inner))), track.Inner
	m := refused(t, c)
	want := [NumLinks]float64{TrackRod: math.Sqrt2 / 2, Rod: math.Sqrt2 / 2}
	for i, got := range m.Shares {
		if !near(got, want[i], 1e-9) {
			t.Errorf("share of %s %.10g, want %.10g", LinkNames[i], got, want[i])
		}
	}
	if text := m.Error(); !strings.Contains(text, "track_rod 0.71") || !strings.Contains(text, "rod 0.71") || strings.Contains(text, "leg") {
		t.Errorf("error %q, want it to name track_rod 0.71 and rod 0.71 alone", text)
	}
}

// Pick-ups in one place leave the wishbone that carries the rod free to swing. There is no
// line between them, and still the fault has its links.
func TestPickUpsInOnePlace(t *testing.T) {
	for _, carrier := range []Carrier{UpperWishbone, LowerWishbone} {
		c := hillclimb(carrier)
		front, rear, _ := carrier.Legs()
		c.Links[rear].Inner = c.Links[front].Inner
		m := refused(t, c)
		sum := 0.0
		for _, share := range m.Shares {
			sum += share * share
		}
		if !(sum > 0.1) || !(sum <= 1+1e-9) {
			t.Errorf("%s: shares %v, want numbers whose squares add up to 1 at most", CarrierNames[carrier], m.Shares)
		}
		if text := m.Error(); strings.HasSuffix(text, ": ") || strings.Contains(text, "NaN") {
			t.Errorf("%s: error %q, want it to name the links", CarrierNames[carrier], text)
		}
	}
}
