package carfile

import (
	"errors"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"go.yaml.in/yaml/v4"
)

// words are the names of the axes of ISO 8855 and of their opposites.
var words = [3][2]string{{"forward", "rearward"}, {"left", "right"}, {"up", "down"}}

// frames returns all 48 ways to draw a car: six orders of the axes, eight of signs.
func frames() []turn {
	var all []turn
	for _, order := range [][3]int{{0, 1, 2}, {1, 2, 0}, {2, 0, 1}, {0, 2, 1}, {2, 1, 0}, {1, 0, 2}} {
		for bits := range 8 {
			t := turn{axis: order}
			for i := range 3 {
				t.sign[i] = float64(1 - 2*(bits>>i&1))
			}
			all = append(all, t)
		}
	}
	return all
}

func (t turn) word(i int) string {
	if t.sign[i] < 0 {
		return words[t.axis[i]][1]
	}
	return words[t.axis[i]][0]
}

// drawn writes the numbers of an ISO 8855 vector in the axes of the frame.
func (t turn) drawn(n *yaml.Node, parts int) {
	iso := []string{"0", "0", "0"}
	for i, c := range n.Content {
		iso[i] = c.Value
	}
	for i := range parts {
		v := iso[t.axis[i]]
		if t.sign[i] < 0 {
			v = strings.TrimPrefix("-"+v, "--")
		}
		n.Content[i].Value = v
	}
}

// redraw turns every vector below a node, which the table knows, and the accelerations.
func (t turn) redraw(k *Key, n *yaml.Node) {
	switch {
	case k.Kind == Vector:
		t.drawn(n, 3)
	case k.Name == "acceleration":
		t.drawn(n, 2)
	case k.Kind == List:
		for _, c := range n.Content {
			t.redraw(k.entry(), c)
		}
	case k.Kind == Mapping:
		for i := 0; i < len(n.Content); i += 2 {
			t.redraw(k.find(n.Content[i].Value), n.Content[i+1])
		}
	}
}

// inFrame returns the text of a file in ISO 8855 as it would be drawn in a frame.
func inFrame(t *testing.T, text string, f turn) string {
	t.Helper()
	var document yaml.Node
	if err := yaml.Load([]byte(text), &document); err != nil {
		t.Fatal(err)
	}
	f.redraw(&car, document.Content[0])
	out, err := yaml.Dump(&document)
	if err != nil {
		t.Fatal(err)
	}
	return edited(t, string(out), "\nvehicle:\n", "\naxes: {x: "+f.word(0)+", y: "+f.word(1)+", z: "+f.word(2)+"}\nvehicle:\n")
}

// A file drawn in any axes gives the car of the file in ISO 8855. Where z is not
// vertical the manoeuvres are taken out, where the axes are left-handed the moment.
func TestAxes(t *testing.T) {
	base := example(t, "hillclimb-pushrod.yaml")
	base = edited(t, base, "contact: [0, 740, 0]}", "contact: [0, 740, 0], spin_axis: [0.01, 1, -0.05]}")
	base = edited(t, base, "  - {name: Bump, ", "  - {name: Measured, contact_forces: {rear_right: {force: [100, -2000, 3000], moment: [1, 2, -30]}}}\n  - {name: Bump, ")
	const moment = ", moment: [1, 2, -30]"
	for _, f := range frames() {
		text := base
		if f.axis[2] != 2 {
			text = strings.Join(withoutManoeuvres(strings.SplitAfter(base, "\n")), "")
		}
		if !f.rightHanded() {
			text = edited(t, text, moment, "")
		}
		want, got := readGood(t, text).Car, readGood(t, inFrame(t, text, f)).Car
		if f != iso {
			named := "x " + f.word(0) + ", y " + f.word(1) + ", z " + f.word(2)
			if got.Axes != named || len(got.Doubts) != 1 || !strings.Contains(got.Doubts[0], named) {
				t.Errorf("axes %q with doubts %q, want %q in both", got.Axes, got.Doubts, named)
			}
			got.Axes, got.Doubts = "", nil
		}
		if d := cmp.Diff(want, got); d != "" {
			t.Errorf("axes %v (-ISO 8855 +turned):\n%s", f, d)
		}
	}
}

func withoutManoeuvres(lines []string) (kept []string) {
	for _, l := range lines {
		if !strings.Contains(l, " acceleration:") {
			kept = append(kept, l)
		}
	}
	return kept
}

// A moment in left-handed axes has no sense; one that is zero needs none.
func TestMomentInLeftHandedAxes(t *testing.T) {
	base := example(t, "hillclimb-pushrod.yaml")
	base = edited(t, base, "  - {name: Bump, ", "  - {name: Measured, contact_forces: {rear_left: {force: [0, 0, 3000], moment: [0, 0, 0]}, rear_right: {force: [100, -2000, 3000], moment: [0, 0, 7]}}}\n  - {name: Measured again, contact_forces: {rear_right: {force: [0, 0, 1], moment: [0, 8, 0]}}}\n  - {name: Bump, ")
	left := turn{axis: [3]int{0, 1, 2}, sign: [3]float64{-1, 1, 1}}
	_, err := Read("car.yaml", []byte(inFrame(t, base, left)))
	var faults Faults
	if !errors.As(err, &faults) || len(faults) != 1 {
		t.Fatalf("Read gave %v, want one fault", err)
	}
	const path = "cases[1].contact_forces.rear_right.moment"
	if f := faults[0]; f.Path != path || !strings.Contains(f.Text, "left-handed") {
		t.Errorf("fault %+v, want one at %s about left-handed axes", f, path)
	}
	zero := edited(t, edited(t, base, ", moment: [0, 0, 7]", ""), "moment: [0, 8, 0]", "moment: [0, 0, 0]")
	if got := readGood(t, inFrame(t, zero, left)).Car.Cases[1].Contact[3].Force.X; got != 100 {
		t.Errorf("force %g N forward, want 100 N", got)
	}
}

// SAE J670e axes are x forward, y right, z down: a vector there is (x, −y, −z) of ISO
// 8855. Source: SAE J670e:1976, from memory.
func TestSAEAxes(t *testing.T) {
	f := turn{axis: [3]int{0, 1, 2}, sign: [3]float64{1, -1, -1}}
	text := inFrame(t, example(t, "hillclimb-pushrod.yaml"), f)
	if !strings.Contains(text, "{outer: [-14, -655, -400], front: [150, -265, -372]") {
		t.Fatalf("the text was not redrawn:\n%s", text)
	}
	if got := readGood(t, text).Car.Cases[8].Acceleration[1]; got != 1.6 {
		t.Errorf("cornering at %g g to the left, want 1.6 g", got)
	}
}
