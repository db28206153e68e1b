package sizing_test

import (
	"math"
	"testing"

	"sixlink/materials"
	"sixlink/members"
	"sixlink/members/check"
	"sixlink/members/sizing"
	"sixlink/members/stock"
)

func named(t testing.TB, name string) stock.List {
	t.Helper()
	l, ok := stock.Named(name)
	if !ok {
		t.Fatalf("there is no stock %q", name)
	}
	return l
}

// bars are solid rods every 0.01 mm: a wall of half the diameter.
func bars(from, to float64) (l stock.List) {
	for i := int(from * 100); i <= int(to*100); i++ {
		d := float64(i) / 100
		l.Sizes = append(l.Sizes, stock.Size{Tube: members.Tube{OD: d, Wall: d / 2}, Price: math.NaN()})
	}
	return l
}

const inch, pound, ksi = 25.4, 4.4482216152605, 6.894757293168

// Rods of published diameters: Shigley, Mechanical Engineering Design, Example 4-17, from
// memory; Faires, Design of Machine Elements, Problem 334. The choice among bars every
// 0.01 mm is the published diameter, rounded up.
func TestPublishedRods(t *testing.T) {
	for _, c := range []struct {
		name                string
		force, factor, l    float64
		sy, e, want, within float64
		kind                sizing.Kind
	}{
		{"Shigley 4-17(a): 22 kN, n 4, 1.5 m", 22000, 4, 1500, 500, 207000, 37.48, 0.02, sizing.Euler},
		{"Shigley 4-17(b): 375 mm", 22000, 4, 375, 500, 207000, 19.02, 0.02, sizing.Johnson},
		{"Faires 334(a): 10 kip, N 3, 25 in, 48 ksi", 10000 * pound, 3, 25 * inch, 48 * ksi, 30e3 * ksi, 1.096 * inch, 0.03, sizing.Johnson},
		{"Faires 334(b): 50 in", 10000 * pound, 3, 50 * inch, 48 * ksi, 30e3 * ksi, 1.507 * inch, 0.03, sizing.Euler},
		{"Faires 334(c): 150 ksi, 25 in", 10000 * pound, 3, 25 * inch, 150 * ksi, 30e3 * ksi, 1.0657 * inch, 0.03, sizing.Euler},
	} {
		metal := materials.Metal{Name: "of the book", E: c.e, Nu: 0.3, Sy: c.sy, Su: 2 * c.sy, Density: 7850}
		r := sizing.Rod{Length: c.l, Compression: c.force, Target: 1, Stock: bars(5, 60), Factors: check.Factors{Yield: 1, Ultimate: 1, Buckling: c.factor}}
		p := r.Answer(metal).Picks[sizing.InCompression]
		if got := p.Size.Tube.OD; !p.Carries || !(math.Abs(got-c.want) <= c.within) || p.Governs().Check != "column" || p.Reason.Kind != c.kind {
			t.Errorf("%s: %v mm in place of %v, carries %v, %s, %s", c.name, got, c.want, p.Carries, p.Governs().Check, sizing.KindNames[p.Reason.Kind])
		}
	}
}

// rods are questions over lengths, forces and materials.
func rods(t *testing.T, each func(r sizing.Rod, metal materials.Metal)) {
	for _, name := range []string{"E355+N", "4130 normalized", "25CrMo4+QT", "7075-T6"} {
		metal, err := materials.Find(name, 0.1)
		if err != nil {
			t.Fatal(err)
		}
		for _, list := range []stock.List{named(t, "EN 10305-1"), named(t, "inch")} {
			for _, length := range []float64{50, 300, 450, 900} {
				for _, force := range []float64{200, 6000, 40000} {
					each(sizing.Rod{
						Length: length, Compression: force, Tension: 1.3 * force, Target: 1, Factors: check.Defaults, Stock: list,
						Limits: stock.Limits{Wall: stock.Range{Min: 0.8}, OD: stock.Range{Max: 60}},
					}, metal)
				}
			}
		}
	}
}

// hand returns the lowest reserve factor of a tube by the formulas of the handbooks:
// A·Sy, A·Su, Euler above √(2π²E/Sy), Johnson below (Shigley ch. 4, from memory), and
// the wall by NASA SP-8007 (1968), 4.2.1.
func hand(od, wall, axial, length float64, m materials.Metal, f check.Factors) float64 {
	id := od - 2*wall
	area, inertia := math.Pi/4*(od*od-id*id), math.Pi/64*(math.Pow(od, 4)-math.Pow(id, 4))
	if axial > 0 {
		return math.Min(area*m.Sy/f.Yield, area*m.Su/f.Ultimate) / axial
	}
	scy := m.Sy
	if m.Scy > 0 {
		scy = m.Scy
	}
	lambda := length / math.Sqrt(inertia/area)
	column := math.Pi * math.Pi * m.E * inertia / (length * length)
	if lambda < math.Sqrt(2*math.Pi*math.Pi*m.E/scy) {
		column = area * (scy - math.Pow(scy*lambda/(2*math.Pi), 2)/m.E)
	}
	radius := (od - wall) / 2
	gamma := 1 - 0.901*(1-math.Exp(-math.Sqrt(radius/wall)/16))
	shell := math.Min(scy, gamma*m.E*wall/(radius*math.Sqrt(3*(1-m.Nu*m.Nu)))) * area
	return math.Min(area*scy/f.Yield, math.Min(column, shell)/f.Buckling) / -axial
}

// The tube that is chosen carries by the formulas of the handbooks, and no lighter one
// of the stock does: all of them are tried.
func TestRodIsTheLightest(t *testing.T) {
	n := 0
	rods(t, func(r sizing.Rod, metal materials.Metal) {
		a := r.Answer(metal)
		for d, p := range a.Picks {
			carries := func(tube members.Tube) (least, mass float64, ok bool) {
				m, err := materials.Find(metal.Name, tube.Wall)
				least = math.Inf(1)
				if d != sizing.InTension {
					least = hand(tube.OD, tube.Wall, -r.Compression, r.Length, m, r.Factors)
				}
				if d != sizing.InCompression {
					least = math.Min(least, hand(tube.OD, tube.Wall, r.Tension, r.Length, m, r.Factors))
				}
				return least, m.Density * 1e-9 * math.Pi * (tube.OD - tube.Wall) * tube.Wall * r.Length, err == nil && least >= 1
			}
			lightest := math.Inf(1)
			for _, s := range r.Stock.Sizes {
				if s.Tube.Wall < 0.8 || s.Tube.OD > 60 {
					continue
				}
				if _, mass, ok := carries(s.Tube); ok {
					lightest = math.Min(lightest, mass)
				}
			}
			if math.IsInf(lightest, 1) != !p.Carries {
				t.Errorf("%s, %v mm, %v N, %s: carries %v, lightest by hand %v", metal.Name, r.Length, r.Compression, sizing.DirectionNames[d], p.Carries, lightest)
				continue
			}
			if !p.Carries {
				continue
			}
			n++
			least, mass, ok := carries(p.Size.Tube)
			if !ok || !(math.Abs(mass-lightest) <= 1e-9*mass) || !(math.Abs(p.Mass-mass) <= 1e-9*mass) || !(math.Abs(least-p.Governs().Reserve) <= 1e-9*least) {
				t.Errorf("%s, %v mm, %v N, %s: %v: RF %v and mass %v; by hand RF %v, mass %v, lightest %v",
					metal.Name, r.Length, r.Compression, sizing.DirectionNames[d], p.Size.Tube, p.Governs().Reserve, p.Mass, least, mass, lightest)
			}
		}
	})
	if n < 200 {
		t.Errorf("only %d rods were compared", n)
	}
}

// Laws: a rod for both is at least as heavy as one for either, and is one of the two
// where one tube carries both; more load, a higher target or a longer push rod never
// make it lighter; a pull rod weighs in proportion to its length.
func TestRodLaws(t *testing.T) {
	rods(t, func(r sizing.Rod, metal materials.Metal) {
		a := r.Answer(metal)
		push, pull, both := a.Picks[sizing.InCompression], a.Picks[sizing.InTension], a.Picks[sizing.InBoth]
		if !both.Carries {
			return
		}
		if !(both.Mass >= math.Max(push.Mass, pull.Mass)-1e-9) {
			t.Errorf("both %v kg, compression %v, tension %v", both.Mass, push.Mass, pull.Mass)
		}
		if x, ok := a.Exchange(); !ok || !(math.Abs(x.Difference-(push.Mass-pull.Mass)) <= 1e-12) || !(math.Abs(x.Ratio*pull.Mass-push.Mass) <= 1e-12) {
			t.Errorf("exchange %+v, %v", x, ok)
		}
		for name, change := range map[string]func(*sizing.Rod){
			"load":   func(r *sizing.Rod) { r.Compression, r.Tension = 1.1*r.Compression, 1.1*r.Tension },
			"target": func(r *sizing.Rod) { r.Target = 1.1 },
			"length": func(r *sizing.Rod) { r.Length *= 1.1 },
			"limits": func(r *sizing.Rod) { r.Limits.Wall.Min = 1.2 },
		} {
			more := r
			change(&more)
			for d, p := range more.Answer(metal).Picks {
				if p.Carries && !(p.Mass >= a.Picks[d].Mass-1e-9) {
					t.Errorf("%s: more %s makes the rod for %s lighter: %v kg, before %v", metal.Name, name, sizing.DirectionNames[d], p.Mass, a.Picks[d].Mass)
				}
			}
		}
		longer := r
		longer.Length *= 2
		if p := longer.Answer(metal).Picks[sizing.InTension]; !(math.Abs(p.Mass-2*pull.Mass) <= 1e-9) || p.Size != pull.Size && !math.IsNaN(p.Size.Price) {
			t.Errorf("twice the length: %v kg, once %v", p.Mass, pull.Mass)
		}
	})
}

// Why a check governs: a pull rod hangs on the area; a long push rod on Euler's side, a
// shorter one on Johnson's; a short one of thin wall on the wall, where that buckles
// before it yields.
func TestReasons(t *testing.T) {
	steel := materials.Metal{Name: "steel", E: 210000, Nu: 0.3, Sy: 355, Su: 490, Density: 7850}
	weak := steel
	weak.E = 2100 // the wall of this one buckles early
	for _, c := range []struct {
		name   string
		tube   members.Tube
		metal  materials.Metal
		length float64
		axial  float64
		want   sizing.Kind
	}{
		{"pull", members.Tube{OD: 20, Wall: 1}, steel, 400, 1000, sizing.Area},
		{"long push", members.Tube{OD: 20, Wall: 1}, steel, 900, -1000, sizing.Euler}, // λ 134 > 108
		{"push", members.Tube{OD: 20, Wall: 1}, steel, 400, -1000, sizing.Johnson},    // λ 59 < 108
		{"stub, wall that yields", members.Tube{OD: 20, Wall: 1}, steel, 1, -1000, sizing.Johnson},
		{"stub, thin wall", members.Tube{OD: 60, Wall: 0.5}, weak, 1, -1000, sizing.Wall},
	} {
		s := members.Subject{Strut: members.Strut{Section: c.tube, Metal: c.metal, Length: c.length, K: 1}, Load: members.Load{Axial: c.axial}, Factors: check.Defaults}
		name, least := "", math.Inf(1)
		for _, f := range members.Judge(s) {
			if f.Reserve < least {
				name, least = f.Check, f.Reserve
			}
		}
		if r := sizing.ReasonOf(s, name); r.Kind != c.want || !(math.Abs(r.Transition-math.Pi*math.Sqrt(2*c.metal.E/c.metal.Sy)) <= 1e-9*r.Transition) {
			t.Errorf("%s: %s hangs on %s, in place of %s; %+v", c.name, name, sizing.KindNames[r.Kind], sizing.KindNames[c.want], r)
		}
	}
}

// Of equal masses the larger outer diameter comes first, then the lower price; a size
// that is in stock of one material alone is offered for that one alone; a wall beyond
// the strengths of the material is not offered.
func TestOptions(t *testing.T) {
	size := func(od, wall float64, material string, price float64) stock.Size {
		return stock.Size{Tube: members.Tube{OD: od, Wall: wall}, Material: material, Price: price}
	}
	nan := math.NaN()
	list := stock.List{Sizes: []stock.Size{
		size(20, 2, "", nan), size(16, 1, "", 3), size(16, 1, "", nan), size(16, 1, "", 2), // 36, 15
		size(13, 6, "", nan), size(22.5, 1, "", nan), // (13 − 6)·6 = 42; 21.5
		size(20.5, 2, "", nan), size(38, 1, "", nan), // 37
		size(14, 2, "E355+N", nan), size(14, 2, "4130 normalized", nan), // 24
		size(10, 10.0/2, "", nan), // a bar: 25
	}}
	metal := materials.Metal{Name: "own", WallTo: 5, Density: 7850, E: 1, Sy: 1}
	var got []float64
	for _, o := range sizing.Options(list, stock.Limits{}, []members.Strut{{Metal: metal, Length: 1000}}) {
		got = append(got, o.Size.Tube.OD, o.Size.Price)
	}
	want := []float64{16, 2, 16, 3, 16, nan, 22.5, nan, 10, nan, 20, nan, 38, nan, 20.5, nan}
	if len(got) != len(want) {
		t.Fatalf("%v in place of %v", got, want)
	}
	for i := range want {
		if got[i] != want[i] && !(math.IsNaN(got[i]) && math.IsNaN(want[i])) {
			t.Errorf("%v in place of %v", got, want)
		}
	}
	steel, err := materials.Find("E355+N", 1)
	if err != nil {
		t.Fatal(err)
	}
	for _, o := range sizing.Options(list, stock.Limits{}, []members.Strut{{Metal: steel, Length: 1}}) {
		if m := o.Size.Material; m != "" && m != "E355+N" {
			t.Errorf("%+v is offered for E355+N", o.Size)
		}
	}
}

func TestSpan(t *testing.T) {
	if got, err := sizing.Span(300, 600, 100); err != nil || len(got) != 4 || got[3] != 600 {
		t.Errorf("%v %v", got, err)
	}
	if got, err := sizing.Span(304.8, 609.6, 25.4); err != nil || len(got) != 13 {
		t.Errorf("12 in to 24 in by 1 in: %v %v", got, err)
	}
	for _, bad := range [][3]float64{{300, 600, 0}, {600, 300, 10}, {1, 10000, 1}, {300, 600, math.NaN()}} {
		if got, err := sizing.Span(bad[0], bad[1], bad[2]); err == nil {
			t.Errorf("%v gives %v", bad, got)
		}
	}
}
