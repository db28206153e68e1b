package carfile

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/materials"
	"sixlink/members"
)

// A fault found after reading is shown at its key, or at the nearest one above.
func TestFaultAfterReading(t *testing.T) {
	f := readGood(t, example(t, "hillclimb-pushrod.yaml"))
	for _, r := range []struct {
		path         string
		line, column int
		snippet      string // its beginning
	}{
		{"cases[3]", 75, 5, "  - {name: Kerb strike"},
		{"cases[3].wheel_factors", 75, 40, "  - {name: Kerb strike"},
		{"cases[99]", 71, 1, "cases:"},
		{"front", 28, 1, "front:"},
		{"rear.rocker", 56, 3, "  rocker:"},
		{"rear.rocker.spring", 60, 5, "    spring:"},
		{"front.rocker.spring", 35, 3, "  rocker:"},
		{"front.members.rod", 47, 5, "    rod:"},
		{"front.members.rod.tube", 47, 29, "    rod:"},
		{"front.rod.outer.y", 34, 16, "  rod:"},
		{"front.rod.carried_by", 34, 65, "  rod:"},
		{"front.members.rod.column", 47, 5, "    rod:"},
		{"front_left", 6, 1, "format:"},
		{"", 6, 1, "format:"},
		{"..[[[-1]", 6, 1, "format:"},
	} {
		got := f.Fault(r.path, "the text", "the remedy")
		if got.Line != r.line || got.Column != r.column || !strings.HasPrefix(got.Snippet, r.snippet) {
			t.Errorf("%q is at %d:%d %q, want %d:%d %q", r.path, got.Line, got.Column, got.Snippet, r.line, r.column, r.snippet)
		}
		if got.File != "car.yaml" || got.Path != r.path || got.Text != "the text" || got.Remedy != "the remedy" {
			t.Errorf("%q: fault %+v", r.path, got)
		}
	}
	if got := (File{}).Fault("front", "the text", "the remedy"); got.Line != 1 || got.Column != 1 {
		t.Errorf("fault of no file is at %d:%d, want 1:1", got.Line, got.Column)
	}
}

func TestDoubts(t *testing.T) {
	good := example(t, "hillclimb-pushrod.yaml")
	for _, r := range []struct{ name, old, new, want string }{
		{"no drive", "  drive: {front_share: 0, by: shafts}\n", "", "no vehicle.drive in the file: rear drive by shafts is assumed"},
		{"no speed", "acceleration: [-1.6, 0], speed: 15", "acceleration: [-1.6, 0]", `case "Braking" gives no speed: it is taken at rest, without aerodynamic forces`},
		{"lift", "lift_area: 2.6", "lift_area: -2.6", "vehicle.aero.lift_area is negative: the air lifts the car; downforce is positive"},
		{"ends held", "{tube: [14, 1.5], material: E355+N}", "{tube: [14, 1.5], material: E355+N, effective_length_factor: 0.7}", "front.members.track_rod: an effective length factor of 0.7 says that its ends are held against turning; between spherical joints it is 1"},
		{"steel curve for titanium", "{tube: [14, 1.5], material: E355+N}", "{tube: [14, 1.5], material: Ti-6Al-4V, column: EN 1993-1-1 a}", "front.members.track_rod: the column curves of EN 1993-1-1 are for steel, and E of Ti-6Al-4V is 116521.3933 MPa"},
		{"pick-up across", "rear: [-230, 210, 138]", "rear: [-230, -210, 138]", "front.lower_wishbone.rear lies across the centreline: hardpoints are those of the left-hand side"},
		{"no factors", "design_factors: {yield: 1.25, ultimate: 1.5, buckling: 1.5}\n", "", "no design_factors in the file: the starting values are used, yield 1.25, ultimate 1.5, buckling 1.5"},
		{"road that pulls", "{name: Bump, wheel_factors: [0, 0, 3]}", "{name: Bump, wheel_factors: [0, 0, -1]}", `case "Bump": the contact force points down, which no road can do`},
		{"road that pulls in newtons", "{name: Bump, wheel_factors: [0, 0, 3]}", "{name: Bump, contact_forces: {front_left: {force: [0, 0, -1]}}}", `case "Bump": the contact force at front_left points down, which no road can do`},
		{"axes", "\nvehicle:\n", "\naxes: {x: forward, y: left, z: up}\nvehicle:\n", ""},
	} {
		got := strings.Join(readGood(t, edited(t, good, r.old, r.new)).Car.Doubts, "|")
		if got != r.want {
			t.Errorf("%s: doubts %q, want %q", r.name, got, r.want)
		}
	}
}

// Text that YAML 1.1 takes for true, false or a number is text in YAML 1.2, core
// schema (YAML 1.2.2, 10.3.2).
func TestWordsAreText(t *testing.T) {
	good := example(t, "hillclimb-pushrod.yaml")
	for _, word := range []string{"on", "yes", "no", "y", "n", "off", "010", "0x10", "1e3", "true", "2026-01-02", "1:30", "'~'", "=", ".inf"} {
		got := readGood(t, edited(t, good, "revision: A", "revision: "+word)).Car.Revision
		if want := strings.Trim(word, "'"); got != want {
			t.Errorf("revision %s is read as %q, want %q", word, got, want)
		}
	}
}

func TestOwnMaterials(t *testing.T) {
	good := example(t, "hillclimb-pushrod.yaml")
	want := materials.Metal{
		Name: "Test steel", E: 206000, Nu: 0.3, Sy: 500, Su: 650, Density: 7850,
		Basis: "specification minimum", Source: "invented for this test",
	}
	for _, r := range []struct {
		name, old, new string // in the material
		metal          func(*materials.Metal)
	}{
		{"as it stands", "density", "density", func(*materials.Metal) {}},
		{"form, wall and Poisson's ratio", "density", "form: bar, max_wall: 1.5, poisson_ratio: 0.29, density", func(m *materials.Metal) { m.Form, m.WallTo, m.Nu = "bar", 1.5, 0.29 }},
		{"typical strengths", "specification minimum", "typical of the trade", func(m *materials.Metal) { m.Basis, m.Doubt = "typical of the trade", materials.BasisDoubt("typical") }},
		{"no basis", "basis: specification minimum, ", "", func(m *materials.Metal) { m.Basis, m.Doubt = "", doubtBasis }},
	} {
		text := edited(t, good, "\ncases:\n", "\nmaterials:\n  - {"+edited(t, steel, r.old, r.new)+"}\ncases:\n")
		text = edited(t, text, "[14, 1.5], material: E355+N", "[14, 1.5], material: Test steel")
		metal := want
		r.metal(&metal)
		got := readGood(t, text).Car.Axles[cases.Front].Parts[loads.TrackRod].Strut.Metal
		if d := cmp.Diff(metal, got); d != "" {
			t.Errorf("%s (-want +got):\n%s", r.name, d)
		}
	}
}

// A wall of one's own material ends where the file says; a bad row of the list is one
// fault, not one for each member that names it.
func TestOwnMaterialFaults(t *testing.T) {
	good := example(t, "hillclimb-pushrod.yaml")
	good = edited(t, good, "[14, 1.5], material: E355+N", "[14, 1.5], material: Test steel")
	for _, r := range []struct{ name, material, want string }{
		{"wall", steel + ", max_wall: 1.4", "wall: 1.5 mm is more than 1.4 mm"},
		{"no density", strings.Replace(steel, "density: 7850, ", "", 1), "density is missing"},
		{"no name", strings.Replace(steel, "name: Test steel, ", "", 1), "name is missing"},
		{"wrong kind", "", "this is a single value; a list is needed"},
		{"near name", strings.Replace(steel, "Test steel", "Test stele", 1), `there is no material "Test steel"`},
	} {
		list := "\n  - {" + r.material + "}"
		if r.material == "" {
			list = " none"
		}
		_, err := Read("car.yaml", []byte(edited(t, good, "\ncases:\n", "\nmaterials:"+list+"\ncases:\n")))
		var faults Faults
		if !errors.As(err, &faults) || len(faults) != 1 || !strings.Contains(faults[0].Text, r.want) {
			t.Errorf("%s: %v, want one fault: %s", r.name, err, r.want)
		}
		if r.name == "near name" && !strings.Contains(faults[0].Remedy, "Test stele") {
			t.Errorf("%s: remedy %q does not name the material that is near", r.name, faults[0].Remedy)
		}
	}
}

func TestOptionalKeys(t *testing.T) {
	text := example(t, "hillclimb-pushrod.yaml")
	for _, e := range [][2]string{
		{"front: outboard, rear: outboard", "rear: inboard"},
		{"by: shafts", "by: hub"},
		{"carried_by: upright", "carried_by: upper_wishbone"},
		{"[14, 1.5], material: E355+N", "[0.5 in, 0.049 in], material: E355+N, column: {crookedness: 0.4}, part: TR-7, notes: \"left\\nand right\""},
		{"tube: [20, 1.5], material: E355+N}\n\nrear:", "tube: [20, 10], material: E355+N, effective_length_factor: 0.9, column: EN 1993-1-1 a0}\n\nrear:"},
		{"{name: Bump, wheel_factors: [0, 0, 3]}", "{name: Bump, wheel_factors: [0, 0, 3], one_side: true, basis: measured}"},
		{"{name: Kerb strike, wheel_factors: [0, 1.5, 2], wheel: rolling}", "{name: Kerb strike, contact_forces: {front_right: {force: [0, 1.2 kN, 3000], moment: [0, 0, 2.5]}}, wheel: driven}"},
		{"    spring: {rocker: [-2545, 193.5, 478], chassis: [-2545, 20, 470]}\n", "    torsion_bar: true\n"},
	} {
		text = edited(t, text, e[0], e[1])
	}
	c := readGood(t, text).Car
	if got, want := c.Vehicle.Brakes, (cases.Brakes{Given: true, FrontShare: 0.62, Inboard: [2]bool{false, true}}); got != want {
		t.Errorf("brakes %+v, want %+v", got, want)
	}
	track, rod := c.Axles[0].Parts[loads.TrackRod], c.Axles[0].Parts[loads.Rod]
	if !c.Vehicle.Drive.Hub || c.Axles[0].Corner.Carrier != loads.UpperWishbone || c.Axles[1].Corner.Rocker.Spring != nil {
		t.Errorf("hub drive %v, carrier %v, rear spring %v", c.Vehicle.Drive.Hub, c.Axles[0].Corner.Carrier, c.Axles[1].Corner.Rocker.Spring)
	}
	if track.Number != "TR-7" || track.Notes != "left\nand right" || track.Strut.Column != (members.Column{Crookedness: 0.4}) || track.Strut.Section != (members.Tube{OD: 12.7, Wall: 1.2446}) {
		t.Errorf("track rod %+v", track)
	}
	if rod.Strut.K != 0.9 || rod.Strut.Column != (members.Column{Curve: "a0"}) {
		t.Errorf("rod %+v", rod.Strut)
	}
	if got := c.Cases[1]; !got.OneSide || got.Basis != "measured" {
		t.Errorf("bump %+v", got)
	}
	want := &cases.ContactForce{Force: r3.Vec{Y: 1200, Z: 3000}, Moment: r3.Vec{Z: 2500}}
	if d := cmp.Diff([4]*cases.ContactForce{1: want}, c.Cases[3].Contact); d != "" || c.Cases[3].Kind != cases.ContactForces || c.Cases[3].Wheel != cases.Driven {
		t.Errorf("kerb strike (-want +got):\n%s\n%+v", d, c.Cases[3])
	}
}

// A faulty value that two aliases repeat is one fault, at the value itself.
func TestFaultOfAliases(t *testing.T) {
	text := example(t, "hillclimb-pushrod.yaml")
	const leg = "{tube: [18, 1.5], material: E355+N}"
	text = edited(t, text, "lower_front_leg: "+leg, "lower_front_leg: &leg {tube: [18, -1.5], material: E355+N}")
	text = edited(t, text, "lower_rear_leg:  "+leg, "lower_rear_leg: *leg")
	_, err := Read("car.yaml", []byte(text))
	var faults Faults
	if !errors.As(err, &faults) || len(faults) != 1 {
		t.Fatalf("Read gave %v, want one fault", err)
	}
	if f := faults[0]; f.Line != 44 || f.Path != "front.members.lower_front_leg.tube" {
		t.Errorf("fault at line %d, %s; want line 44, front.members.lower_front_leg.tube", f.Line, f.Path)
	}
}

// numbered repeats a text with the numbers from 1.
func numbered(n int, format string) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, format, i+1)
	}
	return b.String()
}

// What no file needs is refused before it costs much.
func TestLimits(t *testing.T) {
	good := example(t, "hillclimb-pushrod.yaml")
	unknown := &strings.Builder{}
	for i := range 90_000 {
		fmt.Fprintf(unknown, "key%d: 1\n", i)
	}
	bomb := "duty:\n  blocks:\n    - {name: First, times: 1, sequence: &s [" + strings.Repeat("{case: Bump}, ", 198) + "{case: Bump}]}\n" +
		strings.Repeat("    - {name: Bomb, times: 1, sequence: *s}\n", 49)
	for _, r := range []struct{ name, text, want string }{
		{"aliases", good + "\n" + bomb, "the aliases unfold into more than 10000 values"},
		{"faults", good + "\nmaterials:\n" + strings.Repeat("  - {}\n", mostEntries), "the reading ends here, after 1000 faults"},
		{"one line", "format: sixlink/1\nmaterials: [" + strings.Repeat("{},", mostEntries) + "]", "the reading ends here, after 1000 faults"},
		{"entries", "format: sixlink/1\ncases: [" + strings.Repeat("{},", 30_000) + "]", "the list has 30000 entries, more than 500"},
		{"load cases", good + "\n" + numbered(300, "  - {name: Case %d, acceleration: [0, 0.1], speed: 10, both_ways: true}\n"), "load cases, more than 500"},
		{"marks", "format: sixlink/1\ncases: [" + strings.Repeat(":,", maxMarks/2) + "]", "more than 100000 marks of YAML"},
		{"comments", good + strings.Repeat("\n#", maxMarks), "more than 100000 marks of YAML"},
		{"unknown keys", good + "\n" + unknown.String(), "the reading ends here, after 1000 faults"},
		{"recursive alias", edited(t, good, "revision: A", "revision: &r [*r]"), "this is a list; text is needed"},
	} {
		began := time.Now()
		_, err := Read("car.yaml", []byte(r.text))
		var faults Faults
		if !errors.As(err, &faults) || len(faults) > maxFaults+1 {
			t.Fatalf("%s: Read gave %d faults, want 1 to %d", r.name, len(faults), maxFaults+1)
		}
		found := false
		for _, f := range faults {
			found = found || strings.Contains(f.Text, r.want)
		}
		if !found {
			t.Errorf("%s: no fault says %q; the first is %v", r.name, r.want, faults[0])
		}
		if n := len(err.Error()); n > 100_000 {
			t.Errorf("%s: message of %d bytes", r.name, n)
		}
		if d := time.Since(began); d > 20*time.Second {
			t.Errorf("%s: reading took %v", r.name, d)
		}
	}
}
