package carfile

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"sixlink/cases/compare"
)

func changes(t testing.TB, old, new string) []compare.KeyChange {
	t.Helper()
	return Changes(readGood(t, old), readGood(t, new))
}

// What is written otherwise and says the same is no change.
func TestNoChanges(t *testing.T) {
	base := example(t, "hillclimb-pushrod.yaml")
	edits := map[string]string{
		"the file itself":  base,
		"without comments": withoutComments(base),
		"another unit":     edited(t, base, "mass: 560 ", "mass: 0.56 t "),
		"a default":        edited(t, base, "track_rod:       {tube: [14, 1.5], material: E355+N}", "track_rod:       {effective_length_factor: 1, material: E355+N, column: euler-johnson, tube: [1.4 cm, 1.5]}"),
		"order of keys":    edited(t, base, "{front_share: 0.62, front: outboard, rear: outboard}", "{rear: outboard, front_share: 62 %}"),
		"order of cases": edited(t, edited(t, base, "  - {name: Bump, wheel_factors: [0, 0, 3]}\n", ""),
			"  - {name: Kerb strike, wheel_factors: [0, 1.5, 2], wheel: rolling}\n", "  - {name: Kerb strike, wheel_factors: [0, 1.5, 2], wheel: rolling}\n  - {name: Bump, wheel_factors: [0, 0, 3]}\n"),
	}
	for name, text := range edits {
		for _, got := range [][]compare.KeyChange{changes(t, base, text), changes(t, text, base)} {
			if len(got) > 0 {
				t.Errorf("%s: %+v", name, got)
			}
		}
	}
}

func withoutComments(text string) string {
	var out []string
	for _, line := range strings.Split(text, "\n") {
		before, _, _ := strings.Cut(line, "#")
		out = append(out, strings.TrimRight(before, " "))
	}
	return strings.Join(out, "\n")
}

// A car drawn in other axes differs in its axes alone, and what moved besides is told
// in ISO 8855.
func TestChangesOfAxes(t *testing.T) {
	base := example(t, "hillclimb-pushrod.yaml")
	for _, f := range frames() {
		if f == iso || f.axis[2] != 2 {
			continue
		}
		moved := inFrame(t, edited(t, base, "outer: [95, 672, 205]", "outer: [95, 670, 205]"), f)
		got := changes(t, base, moved)
		var axes, rest []compare.KeyChange
		for _, c := range got {
			if strings.HasPrefix(c.Path, "axes") {
				axes = append(axes, c)
			} else {
				rest = append(rest, c)
			}
		}
		want := []compare.KeyChange{{Path: "front.track_rod.outer", Old: "[95, 672, 205] mm", New: "[95, 670, 205] mm"}}
		if len(axes) != 3 || !cmp.Equal(rest, want) {
			t.Fatalf("axes %v: %+v, %+v", f, axes, rest)
		}
	}
}

// Each difference is told by its path, with the old and the new value; what is not there
// is empty.
func TestChanges(t *testing.T) {
	base := example(t, "hillclimb-pushrod.yaml")
	const rear = "    track_rod:       {tube: [16, 1.5], material: E355+N}"
	text := base
	for _, e := range [][2]string{
		{"revision: A\n", ""},
		{"mass: 560 ", "mass: 1240 lb "},
		{"  tyre_friction: 1.75 ", "  # tyre_friction: 1.75 "},
		{"torsion_bar: true\n", "spring: {rocker: [0, 201, 466], chassis: [0, 28, 458]}\n"},
		{"track_rod:       {tube: [14, 1.5], material: E355+N}", "track_rod:       {tube: [14, 1.25], material: E355+N, column: {crookedness: 0.5}}"},
		{rear, "    track_rod:       {section: {square_tube: [16, 1.5]}, material: E355+N, column: EN 1993-1-1 a}"},
		{"{name: Bump, wheel_factors: [0, 0, 3]}", "{name: Bump, wheel_factors: [0, 0, 3.5]}"},
		{"acceleration: [0.9, 0], speed: 0, wheel: braked}", "acceleration: [0.9, 0], speed: 18 km/h, wheel: braked}"},
		{"  - {name: Static, wheel_factors: [0, 0, 1]}", "  - {name: At rest, wheel_factors: [0, 0, 1]}"},
	} {
		text = edited(t, text, e[0], e[1])
	}
	want := []compare.KeyChange{
		{Path: "revision", Old: "A", New: ""},
		{Path: "vehicle.mass", Old: "560 kg", New: "562.4545388 kg"},
		{Path: "vehicle.tyre_friction", Old: "1.75", New: ""},
		{Path: "front.rocker.spring.rocker", Old: "", New: "[0, 201, 466] mm"},
		{Path: "front.rocker.spring.chassis", Old: "", New: "[0, 28, 458] mm"},
		{Path: "front.rocker.torsion_bar", Old: "true", New: "false"},
		{Path: "front.members.track_rod.tube", Old: "[14, 1.5] mm", New: "[14, 1.25] mm"},
		{Path: "front.members.track_rod.column", Old: "euler-johnson", New: ""},
		{Path: "front.members.track_rod.column.crookedness", Old: "", New: "0.5 mm"},
		{Path: "rear.members.track_rod.tube", Old: "[16, 1.5] mm", New: ""},
		{Path: "rear.members.track_rod.section.square_tube", Old: "", New: "[16, 1.5] mm"},
		{Path: "rear.members.track_rod.column", Old: "euler-johnson", New: "EN 1993-1-1 a"},
		{Path: "cases[Static].name", Old: "Static", New: ""},
		{Path: "cases[Static].wheel_factors", Old: "[0, 0, 1]", New: ""},
		{Path: "cases[Bump].wheel_factors", Old: "[0, 0, 3]", New: "[0, 0, 3.5]"},
		{Path: "cases[Reverse braking].speed", Old: "0 m/s", New: "5 m/s"},
		{Path: "cases[At rest].name", Old: "", New: "At rest"},
		{Path: "cases[At rest].wheel_factors", Old: "", New: "[0, 0, 1]"},
	}
	if diff := cmp.Diff(want, changes(t, base, text)); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
	if diff := cmp.Diff(byPath(want, false), byPath(changes(t, text, base), true)); diff != "" {
		t.Errorf("the other way round, -want +got:\n%s", diff)
	}
}

// byPath turns changes round where they are those of the way back.
func byPath(list []compare.KeyChange, back bool) map[string]compare.KeyChange {
	out := map[string]compare.KeyChange{}
	for _, c := range list {
		if back {
			c.Old, c.New = c.New, c.Old
		}
		out[c.Path] = c
	}
	return out
}

// Entries of one name are matched in their order.
func TestChangesOfEntriesOfOneName(t *testing.T) {
	with := func(second string) string {
		return edited(t, example(t, "hillclimb-pushrod.yaml"), frontMembers,
			"  inboard:\n    - {part: spring, mass: 0.4, at: [0, 230, 440]}\n    - {part: spring, mass: "+second+", at: [0, 200, 300]}\n"+frontMembers)
	}
	got := changes(t, with("0.3"), with("300 g"))
	if len(got) > 0 {
		t.Errorf("%+v", got)
	}
	want := []compare.KeyChange{{Path: "front.inboard[spring #2].mass", Old: "0.3 kg", New: "0.35 kg"}}
	if diff := cmp.Diff(want, changes(t, with("0.3"), with("0.35"))); diff != "" {
		t.Errorf("-want +got:\n%s", diff)
	}
}

// Whatever number of a file changes, it is told, and nothing else is.
func TestEveryNumberThatChangesIsTold(t *testing.T) {
	base := example(t, "hillclimb-pushrod.yaml")
	want := readGood(t, base)
	rapid.Check(t, func(t *rapid.T) {
		by := rapid.Float64Range(1e-9, 1).Draw(t, "by")
		text := strings.Replace(base, "cg_height: 290", "cg_height: "+exact(290+by), 1)
		f, err := Read("car.yaml", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		got := Changes(want, f)
		if len(got) != 1 || got[0].Path != "vehicle.cg_height" || got[0].Old == got[0].New {
			t.Errorf("by %g: %+v", by, got)
		}
	})
}
