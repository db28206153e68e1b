package carfile

import (
	"errors"
	"math"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members/ends"
	"sixlink/members/fasteners"
)

// The parts and ends of these tests, invented.
const (
	testParts = `
materials:
  - {name: Test steel, youngs_modulus: 206 GPa, yield_strength: 500, ultimate_strength: 650, density: 7850, basis: specification minimum, source: invented for this test}
  - {name: Test alloy, youngs_modulus: 70 GPa, yield_strength: 300, ultimate_strength: 400, density: 2700, basis: specification minimum, source: invented for this test}
parts:
  - {part: RE-8, kind: rod end, radial_rating: 20 kN, thread: {size: M8, class: 10.9}, mass: 0.045, source: invented for this test}
  - {part: SB-10, kind: spherical bearing, radial_rating: 30 kN, axial_rating: 3 kN, misalignment: 12, source: invented for this test}
`
	testEnds = `ends: {outer: {bearing: RE-8, offset: 2, thread: {engagement: 12, in: 6061-T6}, ` +
		`bolt: {size: M8, class: 10.9, shear: double, threads_in_shear: false, plates: {outer: 4, inner: 12, gap: 0.5, material: E355+N}}}, ` +
		`inner: {bearing: SB-10, bolt: {size: 3/8-24, material: Test steel, shear: single}, ` +
		`lug: {width: 30, thickness: 5, hole: 10, edge: 14, material: Test steel, coefficients: {net_section: 0.9, shear_bearing: 1.2, source: curve}}, ` +
		`weld: {throat: 2.5, process: TIG}, ` +
		`insert: {length: 30, diameter: 10.6, bore: 5, bond_thickness: 0.2, shear_modulus: 1 GPa, shear_strength: 20, material: Test alloy, source: invented}}}`
	trackRod = "track_rod:       {tube: [14, 1.5], material: E355+N"
)

// withEnds is the example car with parts, and ends on the front track rod.
func withEnds(t testing.TB) string {
	text := edited(t, example(t, "hillclimb-pushrod.yaml"), trackRod, trackRod+", "+testEnds)
	return edited(t, text, "\ncases:\n", testParts+"cases:\n")
}

func readCar(t testing.TB, text string) cases.Car {
	t.Helper()
	f, err := Read("car.yaml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	return f.Car
}

func TestReadEnds(t *testing.T) {
	car := readCar(t, withEnds(t))
	got := car.Axles[cases.Front].Parts[loads.TrackRod].Ends
	m8, _ := fasteners.FindThread("M8")
	quarter, _ := fasteners.FindThread("3/8-24")
	hard, _ := fasteners.FindClass("10.9", 8)
	steel := ends.Strength{Proof: 500, Yield: 500, Ultimate: 650, Hard: true, Source: "material Test steel", Metal: car.Axles[cases.Front].Parts[loads.TrackRod].Ends[cases.InnerEnd].Lug.Metal}

	outer := got[cases.OuterEnd]
	if want := (ends.Bearing{Part: "RE-8", Radial: 20e3, Mass: 0.045, Source: "invented for this test"}); *outer.Bearing != want {
		t.Errorf("bearing %+v, want %+v", *outer.Bearing, want)
	}
	if want := (ends.Thread{Thread: m8, Strength: ends.StrengthOf(hard), Offset: 2, Engagement: 12, Nut: outer.Thread.Nut}); *outer.Thread != want || want.Nut.Name != "6061-T6" || want.Nut.Su != 260 {
		t.Errorf("thread %+v, want %+v", *outer.Thread, want)
	}
	if want := (ends.Plates{Outer: 4, Inner: 12, Gap: 0.5, OuterMetal: outer.Bolt.Plates.OuterMetal}); *outer.Bolt.Plates != want || want.OuterMetal.Name != "E355+N" || want.OuterMetal.Sy != 355 {
		t.Errorf("plates %+v, want %+v", *outer.Bolt.Plates, want)
	}
	if b := outer.Bolt; b.Thread != m8 || b.Strength != ends.StrengthOf(hard) || b.Planes != 2 || b.ThreadsInShear {
		t.Errorf("bolt %+v", *b)
	}
	if outer.Lug != nil || outer.Weld != nil || outer.Insert != nil {
		t.Errorf("outer end %+v has parts that are not given", outer)
	}

	inner := got[cases.InnerEnd]
	if want := (ends.Bolt{Thread: quarter, Strength: steel, Planes: 1, ThreadsInShear: true}); *inner.Bolt != want || inner.Thread != nil {
		t.Errorf("bolt %+v, want %+v", *inner.Bolt, want)
	}
	l := *inner.Lug
	if l.Metal.Name != "Test steel" || l.Width != 30 || l.Thickness != 5 || l.Hole != 10 || l.Edge != 14 || l.NetCoefficient != 0.9 || l.ShearCoefficient != 1.2 || l.CoefficientSource != "curve" {
		t.Errorf("lug %+v", l)
	}
	if w := *inner.Weld; w.Throat != 2.5 || w.Filler != 0 || w.KnockYield != 1 || w.KnockUltimate != 1 {
		t.Errorf("weld %+v", w)
	}
	i := *inner.Insert
	if want := 70e3 * math.Pi / 4 * (10.6*10.6 - 25); i.Length != 30 || i.Diameter != 10.6 || i.Bond != 0.2 || i.Modulus != 1000 || i.Strength != 20 || i.Metal.Name != "Test alloy" || !(math.Abs(i.Stiffness-want) <= 1e-9*want) {
		t.Errorf("insert %+v, want E·A %g N", i, want)
	}
	if !strings.Contains(strings.Join(car.Doubts, "\n"), "E355+N: the tube is taken to keep its strengths beside the weld") {
		t.Errorf("warnings %q, want one of the weld", car.Doubts)
	}
	for _, want := range []string{`part "SB-10": its axial rating is not checked at an end that gives no axial_share`, `part "SB-10": its angle of misalignment is not checked at an end that gives none`} {
		if !strings.Contains(strings.Join(car.Doubts, "\n"), want) {
			t.Errorf("doubts %q, want %q", car.Doubts, want)
		}
	}
}

// Both ends alike; a knock-down of the file and one of the table; the fitting factor.
func TestReadBothEnds(t *testing.T) {
	good := example(t, "hillclimb-pushrod.yaml")
	for _, tt := range []struct {
		name, tube      string
		yield, ultimate float64
		warns           bool
	}{
		{"of the file", "[14, 1.5], material: E355+N, ends: {both: {weld: {throat: 2, process: MIG, strength: 500, knockdown: {yield_share: 0.9, ultimate_share: 80 %, source: test}}}}", 0.9, 0.8, false},
		{"of the table, EN 1999-1-1 Table 3.2b", "[14, 1.5], material: 6061-T6, ends: {both: {weld: {throat: 2, process: MIG}}}", 0.48, 0.67, false},
		{"of the table with TIG", "[14, 1.5], material: 6061-T6, ends: {both: {weld: {throat: 2, process: TIG}}}", 0.48 * 0.8, 0.67 * 0.8, false},
		{"of 4130, MIL-HDBK-5J 8.2: 80 of 95 ksi", "[14, 1.5], material: 4130 normalized, ends: {both: {weld: {throat: 2, process: TIG}}}", 80.0 / 95, 80.0 / 95, false},
		{"of a normalized steel", "[14, 1.5], material: E355+N, ends: {both: {weld: {throat: 2, process: TIG}}}", 1, 1, true},
		{"of a welded tube, normalized", "[14, 1.5], material: E355+N welded, ends: {both: {weld: {throat: 2, process: TIG}}}", 1, 1, true},
		{"of a hardened steel, of the file", "[14, 1.5], material: 25CrMo4+QT, ends: {both: {weld: {throat: 2, process: TIG, knockdown: {yield_share: 0.6, ultimate_share: 0.7, source: test}}}}", 0.6, 0.7, false},
	} {
		t.Run(tt.name, func(t *testing.T) {
			car := readCar(t, edited(t, good, "tube: [14, 1.5], material: E355+N", "tube: "+tt.tube))
			for i, e := range car.Axles[cases.Front].Parts[loads.TrackRod].Ends {
				if w := e.Weld; w == nil || !(math.Abs(w.KnockYield-tt.yield) <= 1e-9) || !(math.Abs(w.KnockUltimate-tt.ultimate) <= 1e-9) || w.KnockSource == "" {
					t.Errorf("end %d: weld %+v, want %g, %g", i, w, tt.yield, tt.ultimate)
				}
			}
			if got := strings.Contains(strings.Join(car.Doubts, ""), "beside the weld"); got != tt.warns {
				t.Errorf("warnings %q, want one: %t", car.Doubts, tt.warns)
			}
		})
	}
	if got := readCar(t, edited(t, good, "buckling: 1.5}", "buckling: 1.5, fitting: 1.2}")).Factors.Fitting; got != 1.2 {
		t.Errorf("fitting factor %g, want 1.2", got)
	}
}

// Faults of ends and parts, one each, with what the message says.
func TestFaultsOfEnds(t *testing.T) {
	good := withEnds(t)
	for _, tt := range []struct{ name, old, new, want string }{
		{"part misspelt", "bearing: RE-8", "bearing: RE-88", `there is no part "RE-88"`},
		{"part twice", "part: SB-10", "part: RE-8", `"RE-8" is the name of another part of this list`},
		{"part without rating", "radial_rating: 20 kN, ", "", "radial_rating is missing"},
		{"part without source", "class: 10.9}, mass: 0.045, source: invented for this test}", "class: 10.9}, mass: 0.045}", "source is missing"},
		{"part of another kind", "kind: rod end", "kind: bush", `"bush" is not spherical bearing or rod end`},
		{"rating as length", "radial_rating: 20 kN", "radial_rating: 20 mm", "20 mm is a length; this needs a force"},
		{"thread of a spherical bearing", "kind: rod end", "kind: spherical bearing", "a spherical bearing has no thread"},
		{"thread of no size", "thread: {size: M8, class: 10.9}, mass: 0.045, source", "thread: {size: M9, class: 10.9}, mass: 0.045, source", `thread "M9" has no pitch`},
		{"thread of two strengths", "thread: {size: M8, class: 10.9}, mass: 0.045, source", "thread: {size: M8, class: 10.9, material: Test steel}, mass: 0.045, source", "class and material exclude each other"},
		{"thread of no strength", "thread: {size: M8, class: 10.9}, mass: 0.045, source", "thread: {size: M8}, mass: 0.045, source", "there is neither class nor material"},
		{"class unknown", "bolt: {size: M8, class: 10.9", "bolt: {size: M8, class: 11.9", `"11.9" is not 8.8, 10.9 or 12.9`},
		{"thread against the rod end", "thread: {engagement: 12", "thread: {size: M10, class: 8.8, engagement: 12", "M10 is not the thread of RE-8, which is M8"},
		{"class without size", "thread: {engagement: 12", "thread: {class: 8.8, engagement: 12", "class or material without size"},
		{"thread without rod end", "bearing: RE-8, offset: 2, ", "", "size is missing, and the end has no rod end with a thread"},
		{"size without strength", "bearing: RE-8, offset: 2, thread: {engagement: 12", "thread: {size: M8, engagement: 12", "there is neither class nor material"},
		{"in without engagement", "engagement: 12, in: 6061-T6", "in: 6061-T6", "in without engagement"},
		{"in what there is not", "in: 6061-T6", "in: 6062-T7", `there is no material "6062-T7"`},
		{"offset of nothing", "inner: {bearing: SB-10", "inner: {offset: 2, bearing: SB-10", "the end has no thread that an offset could bend"},
		{"shank of nothing", "inner: {bearing: SB-10", "inner: {shank_length: 20, bearing: SB-10", "the end has no thread whose shank could be bent"},
		{"insert in a leg that the rod bends", "lower_front_leg: {tube: [20, 2], material: E355+N", "lower_front_leg: {tube: [20, 2], material: E355+N, ends: {outer: {insert: {length: 40, diameter: 15.6, bond_thickness: 0.2, shear_modulus: 1000, shear_strength: 30, material: Test alloy, source: x}}}", "the rod bends this leg at its outer end"},
		{"bolt without shear", "material: Test steel, shear: single", "material: Test steel", "shear is missing"},
		{"bolt in triple shear", "shear: single", "shear: triple", `"triple" is not single or double`},
		{"bolt too thick for the lug", "bolt: {size: 3/8-24", "bolt: {size: M12", "the bolt of 12 mm does not go through the lug's hole of 10 mm"},
		{"hole wider than its bolt by more than 5 %", "hole: 10, edge: 14", "hole: 10.1, edge: 14", "10.1 mm is more than 10.001"},
		{"plates without material", ", gap: 0.5, material: E355+N", ", gap: 0.5", "material is missing"},
		{"plate too thick for its material", "plates: {outer: 4, inner: 12, gap: 0.5, material: E355+N", "plates: {outer: 60, inner: 12, gap: 0.5, material: 25CrMo4+QT", "60 mm is more than 50 mm, the thickest"},
		{"lug narrower than its hole", "width: 30", "width: 9", "9 mm is not more than the hole, 10 mm"},
		{"hole at the end of the lug", "edge: 14", "edge: 5", "5 mm is not more than half of the hole, 5 mm"},
		{"coefficient of a far hole", "edge: 14", "edge: 15", "shear_bearing multiplies the bearing strength"},
		{"coefficients without source", ", source: curve", "", "source is missing"},
		{"weld by another process", "process: TIG", "process: laser", `"laser" is not MIG or TIG`},
		{"weld of what is not welded", trackRod, "track_rod:       {tube: [14, 1.5], material: 7075-T6", "there are no values for 7075-T6 beside a weld in a wall of 1.5 mm"},
		{"weld of a hardened steel", trackRod, "track_rod:       {tube: [14, 1.5], material: 25CrMo4+QT", "there are no values for 25CrMo4+QT beside a weld"},
		{"weld of a precipitation hardened steel", trackRod, "track_rod:       {tube: [14, 1.5], material: 17-4PH H900", "there are no values for 17-4PH H900 beside a weld"},
		{"weld of a cold worked steel", trackRod, "track_rod:       {tube: [14, 1.5], material: E355+SR", "there are no values for E355+SR beside a weld"},
		{"weld of a steel of one's own", trackRod, "track_rod:       {tube: [14, 1.5], material: Test steel", "there are no values for Test steel beside a weld"},
		{"weld of a metal of one's own", trackRod, "track_rod:       {tube: [14, 1.5], material: Test alloy", "there are no values for Test alloy beside a weld"},
		{"knock-down above one", "process: TIG", "process: TIG, knockdown: {yield_share: 1.1, ultimate_share: 1, source: x}", "1.1 is outside 0 to 1"},
		{"knock-down without source", "process: TIG", "process: TIG, knockdown: {yield_share: 1, ultimate_share: 1}", "source is missing"},
		{"insert too thick", "diameter: 10.6", "diameter: 11", "11 mm is not less than the inner diameter of the tube, 11 mm"},
		{"insert all bore", "bore: 5", "bore: 10.6", "10.6 mm is not less than the diameter of the insert, 10.6 mm"},
		{"insert without source", "material: Test alloy, source: invented}", "material: Test alloy}", "source is missing"},
		{"both and outer", "ends: {outer:", "ends: {both: {weld: {throat: 2, process: TIG}}, outer:", "both stands beside outer or inner"},
		{"end of another name", "ends: {outer:", "ends: {upper:", `unknown key "upper"`},
		{"fitting factor below one", "buckling: 1.5}", "buckling: 1.5, fitting: 0.9}", "0.9 is outside 1 to 10"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Read("car.yaml", []byte(edited(t, good, tt.old, tt.new)))
			var faults Faults
			if !errors.As(err, &faults) || len(faults) != 1 {
				t.Fatalf("want one fault:\n%v", err)
			}
			if f := faults[0]; !strings.Contains(f.Text, tt.want) || f.Remedy == "" || f.Line == 0 || f.Column == 0 {
				t.Errorf("fault %+v, want %q in it, a remedy and a place", f, tt.want)
			}
		})
	}
}

// A run with ends: each end's findings stand with its name, every force in them is that
// of the member, and the member's own findings are those of the car without ends.
func TestRunWithEnds(t *testing.T) {
	run := func(text string) cases.Results {
		r, err := cases.Run(readCar(t, text))
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	bare, full := run(example(t, "hillclimb-pushrod.yaml")), run(withEnds(t))
	for corner := range full.Corners {
		for link := range full.Corners[corner].Members {
			m, plain := full.Corners[corner].Members[link], bare.Corners[corner].Members[link]
			count := map[string]int{}
			var own []cases.Finding
			for _, f := range m.Checks {
				if count[f.At]++; f.At == "" {
					own = append(own, f)
				} else if n := math.Abs(m.Loads[f.Case].Axial); f.Unit == "N" && !(math.Abs(f.Demand-n) <= 1e-9*n) {
					t.Errorf("%s: demand %g N under %g N", f.Title(), f.Demand, n)
				}
			}
			if len(own) != len(plain.Checks) {
				t.Errorf("corner %d, member %d: %d findings of the member itself, want %d", corner, link, len(own), len(plain.Checks))
			}
			ended := corner < cases.RearLeft && link == loads.TrackRod
			if (count["outer end"] > 0) != ended || (count["inner end"] > 0) != ended {
				t.Errorf("corner %d, member %d: %v findings", corner, link, count)
			}
		}
	}
}

// At the outer end of a wishbone's leg the bearing carries the force of the ball joint,
// which both legs share; of a leg that bends, the weld carries the moment at the apex.
func TestRunWithEndsOfALeg(t *testing.T) {
	text := edited(t, example(t, "hillclimb-pushrod.yaml"), "lower_front_leg: {tube: [20, 2], material: E355+N",
		"lower_front_leg: {tube: [20, 2], material: E355+N, ends: {both: {bearing: SB-10, weld: {throat: 3, process: TIG}}}")
	r, err := cases.Run(readCar(t, edited(t, text, "\ncases:\n", testParts+"cases:\n")))
	if err != nil {
		t.Fatal(err)
	}
	corner := r.Corners[cases.RearLeft]
	seen := 0
	for _, f := range corner.Members[loads.LowerFrontLeg].Checks {
		force := corner.Forces[f.Case]
		joint, chassis := force.Upright[loads.LowerBallJoint], force.Chassis[loads.LowerFrontLeg]
		own := math.Sqrt(chassis.X*chassis.X + chassis.Y*chassis.Y + chassis.Z*chassis.Z)
		shared := math.Sqrt(joint.X*joint.X + joint.Y*joint.Y + joint.Z*joint.Z)
		area := math.Pi * 20 * 3
		want := map[string]float64{
			"outer end: bearing, radial": math.Max(own, shared),
			"inner end: bearing, radial": own,
			"outer end: weld, throat":    own/area + force.Bending[loads.LowerFrontLeg]/(area*20/4),
			"inner end: weld, throat":    own / area,
		}
		if w, ok := want[f.Title()]; ok {
			seen++
			if !(math.Abs(f.Demand-w) <= 1e-9*w) {
				t.Errorf("case %d, %s: demand %g, want %g", f.Case, f.Title(), f.Demand, w)
			}
		}
	}
	if seen < 4*len(r.Cases)/2 {
		t.Errorf("%d findings compared", seen)
	}
}
