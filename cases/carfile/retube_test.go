package carfile_test

import (
	"os"
	"strings"
	"testing"

	"sixlink/cases/carfile"
	"sixlink/loads"
	"sixlink/members"
)

// Only the numbers of the tubes that are named change; every other byte stays, whatever
// stands around them.
func TestRetube(t *testing.T) {
	src, err := os.ReadFile("../../examples/hillclimb-pushrod.yaml")
	if err != nil {
		t.Fatal(err)
	}
	plain := string(src)
	const member = "upper_rear_leg:  {tube: [16, 1.5], material: E355+N}"
	for _, c := range []struct{ name, old, is string }{
		{"flow", member, "upper_rear_leg:  {tube: [25, 0.8], material: E355+N}"},
		{"quoted, inches", `upper_rear_leg:  {tube: ["0.625 in", '1.5'], material: E355+N}`, `upper_rear_leg:  {tube: [25, 0.8], material: E355+N}`},
		{"plain with a unit, comments", "upper_rear_leg:  # ä [16, 1.5]\n      tube: [ 1.6 cm , # wide\n        1.5 ]   # 16\n      material: E355+N", "upper_rear_leg:  # ä [16, 1.5]\n      tube: [ 25 , # wide\n        0.8 ]   # 16\n      material: E355+N"},
		{"block", "upper_rear_leg:\n      tube:\n      - 16\n      - 1.5\n      material: E355+N", "upper_rear_leg:\n      tube:\n      - 25\n      - 0.8\n      material: E355+N"},
		{"one number alone", "upper_rear_leg:  {tube: [25.0, 1.5], material: E355+N}", "upper_rear_leg:  {tube: [25.0, 0.8], material: E355+N}"},
	} {
		for _, ends := range []struct{ name, head, brk string }{{"", "", "\n"}, {", CRLF", "", "\r\n"}, {", CR and a byte order mark", "\ufeff", "\r"}, {", separators", "# \u2028 # \u0085 # ü\n", "\n"}} {
			t.Run(c.name+ends.name, func(t *testing.T) {
				form := func(m string) string {
					return ends.head + strings.ReplaceAll(strings.Replace(plain, member, m, 1), "\n", ends.brk)
				}
				got, err := carfile.Retube("car.yaml", []byte(form(c.old)), []carfile.NewTube{{Axle: 0, Link: loads.UpperRearLeg, Tube: members.Tube{OD: 25, Wall: 0.8}, Given: [2]string{"25", "0.8"}}})
				if err != nil {
					t.Fatal(err)
				}
				if string(got) != form(c.is) {
					t.Errorf("the file is not what it should be: %q", diff(string(got), form(c.is)))
				}
			})
		}
	}
}

// diff shows where two texts part.
func diff(a, b string) string {
	i := 0
	for i < len(a) && i < len(b) && a[i] == b[i] {
		i++
	}
	return a[max(0, i-20):min(len(a), i+40)]
}

// What stands in more than one place is refused, with the place and what to do.
func TestRetubeRefuses(t *testing.T) {
	src, err := os.ReadFile("../../examples/hillclimb-pushrod.yaml")
	if err != nil {
		t.Fatal(err)
	}
	edited := func(old, new string, more ...string) string {
		return strings.NewReplacer(append([]string{old, new}, more...)...).Replace(string(src))
	}
	const front, rear = "upper_front_leg: {tube: [16, 1.5], material: E355+N}", "upper_rear_leg:  {tube: [16, 1.5], material: E355+N}"
	for _, c := range []struct {
		name, text, want string
		link             int
	}{
		{"a member", edited(front, "upper_front_leg: &leg {tube: [16, 1.5], material: E355+N}", rear, "upper_rear_leg: *leg"), "upper_rear_leg: this is an alias of what stands in line", loads.UpperRearLeg},
		{"its anchor", edited(front, "upper_front_leg: &leg {tube: [16, 1.5], material: E355+N}", rear, "upper_rear_leg: *leg"), "upper_front_leg: an alias repeats", loads.UpperFrontLeg},
		{"a tube", edited(front, "upper_front_leg: {tube: &t [16, 1.5], material: E355+N}", rear, "upper_rear_leg: {tube: *t, material: E355+N}"), "upper_rear_leg.tube: this is an alias", loads.UpperRearLeg},
		{"a number", edited(front, "upper_front_leg: {tube: [&od 16, 1.5], material: E355+N}", rear, "upper_rear_leg: {tube: [*od, 1.5], material: E355+N}"), "upper_rear_leg.tube: this is an alias", loads.UpperRearLeg},
		{"an anchored number", edited(front, "upper_front_leg: {tube: [&od 16, 1.5], material: E355+N}"), "cannot be changed in its place", loads.UpperFrontLeg},
		{"an escape", edited(front, `upper_front_leg: {tube: ["\x31\x36", 1.5], material: E355+N}`), "cannot be changed in its place", loads.UpperFrontLeg},
		{"no tube", edited(front, `upper_front_leg: {section: {bar: 8}, material: E355+N}`), "there is no tube", loads.UpperFrontLeg},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := carfile.Retube("car.yaml", []byte(c.text), []carfile.NewTube{{Axle: 0, Link: c.link, Tube: members.Tube{OD: 25, Wall: 0.8}, Given: [2]string{"25", "0.8"}}})
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("error %v, want %q", err, c.want)
			}
		})
	}
}
