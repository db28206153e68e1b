package carfile

import (
	"math"
	"strings"
	"testing"

	"sixlink/members/check"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members"
)

// readGood reads a file that must be read without a fault.
func readGood(t testing.TB, text string) File {
	t.Helper()
	f, err := Read("car.yaml", []byte(text))
	if err != nil {
		t.Fatalf("Read: %v", err)
	}
	return f
}

// The wanted values of this test are those that stand in the example files.
func TestExampleVehicle(t *testing.T) {
	want := cases.Vehicle{
		Mass: 560, FrontWeightShare: 0.47, CGHeight: 290, Wheelbase: 2550, FrontRollCoupleShare: 0.56, TyreFriction: 1.75,
		Aero:   cases.Aero{LiftArea: 2.6, DragArea: 1.05, FrontShare: 0.44, AirDensity: 1.225, DragHeight: 290},
		Brakes: cases.Brakes{Given: true, FrontShare: 0.62},
	}
	for name, revision := range map[string]string{"hillclimb-pushrod.yaml": "A", "hillclimb-pullrod.yaml": "B"} {
		car := readGood(t, example(t, name)).Car
		if d := cmp.Diff(want, car.Vehicle); d != "" {
			t.Errorf("%s: vehicle (-want +got):\n%s", name, d)
		}
		if car.Name != "Hill-climb single-seater" || car.Revision != revision || car.Axes != "" || len(car.Doubts) != 0 {
			t.Errorf("%s: name %q, revision %q, axes %q, doubts %q", name, car.Name, car.Revision, car.Axes, car.Doubts)
		}
		if car.Factors != (check.Factors{Yield: 1.25, Ultimate: 1.5, Buckling: 1.5, Fitting: 1.15}) {
			t.Errorf("%s: factors %+v", name, car.Factors)
		}
		if a, b := car.Axles[cases.Front].UnsprungMass, car.Axles[cases.Rear].UnsprungMass; a != 17 || b != 21 {
			t.Errorf("%s: unsprung masses %g and %g kg, want 17 and 21 kg", name, a, b)
		}
	}
}

func TestExampleCorners(t *testing.T) {
	car := readGood(t, example(t, "hillclimb-pushrod.yaml")).Car
	front, rear := car.Axles[cases.Front].Corner, car.Axles[cases.Rear].Corner
	joints := [loads.NumLinks][2]r3.Vec{
		loads.UpperFrontLeg: {{X: -14, Y: 655, Z: 400}, {X: 150, Y: 265, Z: 372}},
		loads.UpperRearLeg:  {{X: -14, Y: 655, Z: 400}, {X: -190, Y: 285, Z: 362}},
		loads.LowerFrontLeg: {{X: 8, Y: 690, Z: 165}, {X: 190, Y: 200, Z: 140}},
		loads.LowerRearLeg:  {{X: 8, Y: 690, Z: 165}, {X: -230, Y: 210, Z: 138}},
		loads.TrackRod:      {{X: 95, Y: 672, Z: 205}, {X: 88, Y: 232, Z: 186}},
		loads.Rod:           {{X: 2, Y: 630, Z: 196}, {X: 0, Y: 270, Z: 470}},
	}
	for i, want := range joints {
		if l := front.Links[i]; l.Outer != want[0] || l.Inner != want[1] {
			t.Errorf("front %s runs from %v to %v, want %v", loads.LinkNames[i], l.Outer, l.Inner, want)
		}
	}
	if front.Carrier != loads.Upright || rear.Carrier != loads.LowerWishbone {
		t.Errorf("rods carried by %v and %v, want upright and lower wishbone", front.Carrier, rear.Carrier)
	}
	wheel := [3]r3.Vec{{X: -2550, Y: 720, Z: 300}, {X: -2550, Y: 720}, {Y: 1}}
	if got := [3]r3.Vec{rear.Centre, rear.Contact, rear.Spin}; got != wheel {
		t.Errorf("rear wheel: centre, contact, spin %v, want %v", got, wheel)
	}
	rockers := []struct {
		got  *loads.Rocker
		want loads.Rocker
	}{
		{front.Rocker, loads.Rocker{
			Pivot: r3.Vec{Y: 234, Z: 422}, Axis: r3.Vec{X: 1}, BearingSpan: 40, RollShare: 0.45,
			AntiRoll: &loads.Line{Rocker: r3.Vec{Y: 205, Z: 462}, Far: r3.Vec{Y: 205, Z: 330}},
		}},
		{rear.Rocker, loads.Rocker{
			Pivot: r3.Vec{X: -2545, Y: 226.5, Z: 434}, Axis: r3.Vec{X: 1}, BearingSpan: 40,
			Spring: &loads.Line{Rocker: r3.Vec{X: -2545, Y: 193.5, Z: 478}, Far: r3.Vec{X: -2545, Y: 20, Z: 470}},
		}},
	}
	for _, r := range rockers {
		if d := cmp.Diff(&r.want, r.got); d != "" {
			t.Errorf("rocker (-want +got):\n%s", d)
		}
	}
}

// A and I of the tubes: a table of section properties, recomputed by hand from
// A = π(D−t)t, I = π(D⁴−d⁴)/64; E: EN 1993-1-1:2005, 3.2.6. The length of the front
// push rod is √(2²+360²+274²) mm.
func TestExampleParts(t *testing.T) {
	car := readGood(t, example(t, "hillclimb-pushrod.yaml")).Car
	rows := []struct {
		axle, link int
		tube       members.Tube
		area, i    float64 // mm², mm⁴
	}{
		{cases.Front, loads.UpperFrontLeg, members.Tube{OD: 16, Wall: 1.5}, 68.330, 1815.01},
		{cases.Front, loads.Rod, members.Tube{OD: 20, Wall: 1.5}, 87.179, 3754.15},
		{cases.Rear, loads.TrackRod, members.Tube{OD: 16, Wall: 1.5}, 68.330, 1815.01},
	}
	const e = 210000.0
	for _, r := range rows {
		part, link := car.Axles[r.axle].Parts[r.link], car.Axles[r.axle].Corner.Links[r.link]
		if part.Strut.Section != r.tube || part.Strut.Metal.Name != "E355+N" || part.Strut.K != 1 || part.Strut.Column != (members.Column{}) {
			t.Errorf("%s %s: %+v", cases.AxleNames[r.axle], loads.LinkNames[r.link], part.Strut)
		}
		if d := link.EA/e - r.area; !(math.Abs(d) <= 0.0005) {
			t.Errorf("%s: EA/E = %g mm², want %g", loads.LinkNames[r.link], link.EA/e, r.area)
		}
		if d := link.EI/e - r.i; !(math.Abs(d) <= 0.005) {
			t.Errorf("%s: EI/E = %g mm⁴, want %g", loads.LinkNames[r.link], link.EI/e, r.i)
		}
	}
	if got, want := car.Axles[cases.Front].Parts[loads.Rod].Strut.Length, math.Sqrt(2*2+360*360+274*274); !(math.Abs(got-want) <= 1e-9) {
		t.Errorf("front rod: length %g mm, want %g", got, want)
	}
}

func TestExampleCases(t *testing.T) {
	car := readGood(t, example(t, "hillclimb-pushrod.yaml")).Car
	want := map[int]cases.Case{
		2:  {Name: "Bump with longitudinal strike", Factors: [3]float64{-2, 0, 3}, Wheel: cases.Rolling},
		4:  {Name: "Droop stop", Unsprung: &r3.Vec{Z: 4}},
		7:  {Name: "Reverse braking", Kind: cases.Manoeuvre, Acceleration: [2]float64{0.9, 0}, Wheel: cases.Braked},
		11: {Name: "Traction", Kind: cases.Manoeuvre, Acceleration: [2]float64{0.8, 0.9}, Speed: 20, BothWays: true},
	}
	if len(car.Cases) != 12 {
		t.Fatalf("%d cases, want 12", len(car.Cases))
	}
	for i, c := range want {
		if d := cmp.Diff(c, car.Cases[i]); d != "" {
			t.Errorf("cases[%d] (-want +got):\n%s", i, d)
		}
	}
}

// The same values in other words, units and forms of YAML give the same car.
func TestSameCarOtherText(t *testing.T) {
	good := example(t, "hillclimb-pushrod.yaml")
	want := readGood(t, good).Car
	for _, e := range []struct{ name, old, new string }{
		{"byte order mark", "# A hill-climb", "\ufeff# A hill-climb"},
		{"quoted number", "mass: 560 ", `mass: "560" `},
		{"leading zeros", "mass: 560 ", "mass: 0560 "},
		{"exponent", "mass: 560 ", "mass: 5.6e2 "},
		{"plus sign", "mass: 560 ", "mass: +560. "},
		{"mass in tonnes", "mass: 560 ", "mass: 0.56 t "},
		{"percentage", "front_weight_share: 0.47", "front_weight_share: 47 %"},
		{"height in centimetres", "cg_height: 290", `cg_height: "29 cm"`},
		{"height without a space", "cg_height: 290", "cg_height: 290mm"},
		{"speed in km/h", "[-1.6, 0], speed: 15", "[-1.6, 0], speed: 54 km/h"},
		{"acceleration in m/s²", "acceleration: [-1.6, 0]", "acceleration: [-15.69064 m/s^2, 0 m/s²]"},
		{"key in quotation marks", "  cg_height:", `  "cg_height":`},
		{"air density left out", "    air_density: 1.225       # kg/m³\n", ""},
		{"design factor left out", "yield: 1.25, ultimate: 1.5, ", ""},
		{"drag height stated", "    drag_area: 1.05\n", "    drag_area: 1.05\n    drag_height: 290\n"},
		{"spin axis stated", "contact: [0, 740, 0]}", "contact: [0, 740, 0], spin_axis: [0, 1, 0]}"},
		{"length factor and column stated", "{tube: [14, 1.5], material: E355+N}", "{tube: [14, 1.5], material: e355 n, effective_length_factor: 1, column: euler-johnson}"},
		{"axes stated", "\nvehicle:\n", "\naxes: {x: forward, y: left, z: up}\nvehicle:\n"},
	} {
		if d := cmp.Diff(want, readGood(t, edited(t, good, e.old, e.new)).Car); d != "" {
			t.Errorf("%s (-want +got):\n%s", e.name, d)
		}
	}
	if d := cmp.Diff(want, readGood(t, strings.ReplaceAll(good, "\n", "\r\n")+"...\r\n").Car); d != "" {
		t.Errorf("CRLF (-want +got):\n%s", d)
	}
	aliased := edited(t, good, "lower_front_leg: {tube: [18, 1.5], material: E355+N}", "lower_front_leg: &leg {tube: [18, 1.5], material: E355+N}")
	aliased = edited(t, aliased, "lower_rear_leg:  {tube: [18, 1.5], material: E355+N}", "lower_rear_leg: *leg")
	if d := cmp.Diff(want, readGood(t, aliased).Car); d != "" {
		t.Errorf("alias (-want +got):\n%s", d)
	}
}
