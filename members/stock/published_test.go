package stock_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"sixlink/members/stock"
)

func list(t *testing.T, name string) stock.List {
	t.Helper()
	l, ok := stock.Named(name)
	if !ok {
		t.Fatalf("there is no stock %q", name)
	}
	return l
}

// ods and walls return what a list has, as it is given.
func given(l stock.List, i int) map[string]bool {
	out := map[string]bool{}
	for _, s := range l.Sizes {
		out[strings.TrimSuffix(s.Given[i], " in")] = true
	}
	return out
}

// The preferred sizes, typed again: EN 10305-1 (from memory); AND10102 and practice for
// the inch sizes (from memory).
func TestPublishedSizes(t *testing.T) {
	for _, c := range []struct {
		list string
		at   int
		want string
	}{
		{"EN 10305-1", 0, "4 5 6 7 8 9 10 12 14 15 16 18 20 22 25 26 28 30 32 35 38 40 42 45 48 50 55 60 65 70 75 80 85 90 95 100 110 120"},
		{"EN 10305-1", 1, "0.5 0.8 1 1.2 1.5 1.8 2 2.2 2.5 2.8 3 3.5 4 4.5 5 5.5 6 7 8 9 10 12"},
		{"inch", 0, "0.1875 0.25 0.3125 0.375 0.4375 0.5 0.5625 0.625 0.6875 0.75 0.8125 0.875 0.9375 1 1.125 1.25 1.375 1.5 1.625 1.75 2 2.25 2.5 3"},
		{"inch", 1, "0.028 0.035 0.049 0.058 0.065 0.083 0.095 0.120 0.156 0.188 0.250"},
	} {
		got := given(list(t, c.list), c.at)
		want := strings.Fields(c.want)
		for _, w := range want {
			if !got[w] {
				t.Errorf("%s has no %s", c.list, w)
			}
		}
		if len(got) != len(want) {
			t.Errorf("%s: %d sizes in place of %d", c.list, len(got), len(want))
		}
	}
}

// The Birmingham (Stubs) wire gauge, typed again: every wall of the inch stock that is in
// it carries its number, and no other does.
func TestPublishedGauges(t *testing.T) {
	gauge := map[string]string{}
	for _, p := range strings.Split("7 .180,8 .165,9 .148,10 .134,11 .120,12 .109,13 .095,14 .083,15 .072,16 .065,17 .058,18 .049,19 .042,20 .035,21 .032,22 .028,23 .025,24 .022,25 .020,26 .018", ",") {
		number, wall, _ := strings.Cut(p, " ")
		gauge["0"+wall+" in"] = number
	}
	with := 0
	for _, s := range list(t, "inch").Sizes {
		if s.Gauge != gauge[s.Given[1]] {
			t.Errorf("%v: gauge %q in place of %q", s.Given, s.Gauge, gauge[s.Given[1]])
		}
		if s.Gauge != "" {
			with++
		}
	}
	if with == 0 {
		t.Error("no wall has a gauge")
	}
}

// Every size has a source and is a tube; its millimetres are those of what is given.
func TestSizes(t *testing.T) {
	for _, name := range stock.Names {
		l := list(t, name)
		if l.Remark == "" {
			t.Errorf("%s says nothing of where it comes from", name)
		}
		seen := map[[2]string]bool{}
		for _, s := range l.Sizes {
			if s.Source == "" || !strings.Contains(s.Source, "from memory") || seen[s.Given] || s.Priced() {
				t.Errorf("%s %v: source %q, twice %v, price %v", name, s.Given, s.Source, seen[s.Given], s.Price)
			}
			seen[s.Given] = true
			for i, got := range []float64{s.Tube.OD, s.Tube.Wall} {
				number, unit, _ := strings.Cut(s.Given[i], " ")
				want, err := strconv.ParseFloat(number, 64)
				if unit == "in" {
					want *= 25.4 // exactly: NIST SP 811, B.8, from memory
				}
				if err != nil || !(math.Abs(got-want) <= 1e-14*want) {
					t.Errorf("%s %v: %v mm in place of %v", name, s.Given, got, want)
				}
			}
			if ratio := s.Tube.Wall / s.Tube.OD; !(ratio >= 1.0/50 && ratio <= 1.0/4) {
				t.Errorf("%s %v: the wall is %v of the outer diameter", name, s.Given, ratio)
			}
		}
	}
}

// The mass of a steel tube is (D − T)·T·0.0246615 kg/m: EN 10220, from memory. The factor
// is π·7850/10⁶, rounded to six figures.
func TestPublishedMass(t *testing.T) {
	for _, s := range list(t, "EN 10305-1").Sizes {
		want := (s.Tube.OD - s.Tube.Wall) * s.Tube.Wall * 0.0246615
		if got := 7850e-6 * s.Tube.Area(); !(math.Abs(got-want) <= 1e-6*want) {
			t.Errorf("%v: %v kg/m in place of %v", s.Given, got, want)
		}
	}
}

func TestNamed(t *testing.T) {
	for _, name := range []string{"EN 10305-1", "en10305-1", "Inch"} {
		if _, ok := stock.Named(name); !ok {
			t.Errorf("there is no stock %q", name)
		}
	}
	if _, ok := stock.Named("EN 10305"); ok {
		t.Error("EN 10305 is found, which is no name of a list")
	}
}

func TestLimits(t *testing.T) {
	r := stock.Range{Min: 10, Max: 0.875 * 25.4}
	for x, want := range map[float64]bool{9.99: false, 10: true, 22.225: true, 22.23: false, math.NaN(): false} {
		if r.Holds(x) != want {
			t.Errorf("%v to %v holds %v: %v", r.Min, r.Max, x, !want)
		}
	}
	if !(stock.Range{}).Holds(1e9) || !(stock.Range{Min: 1}).Holds(1e9) {
		t.Error("a limit that is not given holds something back")
	}
}
