package carfile

import (
	"slices"
	"strings"
	"testing"

	"sixlink/cases"
)

// What people write for a point. The words and abbreviations are common practice, no
// published source; the paths are those of the car file.
func TestPointNames(t *testing.T) {
	for name, want := range map[string]string{
		"front.upper_wishbone.outer":             "front.upper_wishbone.outer",
		"Front Upper Outer":                      "front.upper_wishbone.outer",
		"FRONT_UPPER_WISHBONE_OUTER":             "front.upper_wishbone.outer",
		"frontUpperOuter":                        "front.upper_wishbone.outer",
		"front left upper wishbone: ball joint":  "front.upper_wishbone.outer",
		"FL UBJ":                                 "front.upper_wishbone.outer",
		"Front Upper Arm, outboard":              "front.upper_wishbone.outer",
		"Front upper A-arm front pick-up":        "front.upper_wishbone.front",
		"Front Upper Front":                      "front.upper_wishbone.front",
		"Rear Upper Front":                       "rear.upper_wishbone.front",
		"Front LCA aft":                          "front.lower_wishbone.rear",
		"Rear Lower Rear":                        "rear.lower_wishbone.rear",
		"Rear Toe Link Outer":                    "rear.track_rod.outer",
		"Front tie-rod inboard":                  "front.track_rod.inner",
		"Front Pushrod Inner":                    "front.rod.inner",
		"Rear Pull Rod Outer":                    "rear.rod.outer",
		"Front rod, chassis":                     "front.rod.inner",
		"Front Wheel Center":                     "front.wheel.centre",
		"Rear contact patch":                     "rear.wheel.contact",
		"Front bellcrank pivot":                  "front.rocker.pivot",
		"Front pivot":                            "front.rocker.pivot",
		"Rear Damper Chassis":                    "rear.rocker.spring.chassis",
		"Rear Rocker Spring Rocker":              "rear.rocker.spring.rocker",
		"Front ARB link":                         "front.rocker.anti_roll.link",
		"Front anti-roll bar rocker":             "front.rocker.anti_roll.rocker",
		"Front third spring, rocker":             "front.rocker.third.rocker",
		"Front Upper Front Leg Outer":            "front.upper_wishbone.front_leg.outer",
		"rear lower rear_leg inner":              "rear.lower_wishbone.rear_leg.inner",
		"front.right.rod.outer":                  "front.right.rod.outer",
		"FR Push Rod Outer":                      "front.right.rod.outer",
		"Right Front Upper Front":                "front.right.upper_wishbone.front",
		"RR lower rear":                          "rear.right.lower_wishbone.rear",
		"Front Upper RH Front Leg Inner":         "front.right.upper_wishbone.front_leg.inner",
		"RL third spring rocker":                 "rear.rocker.third.rocker",
		"Front":                                  "",
		"Upper Outer":                            "",
		"Front Outer":                            "",
		"Front Rocker":                           "",
		"Front Upper Outer 2":                    "",
		"Front Rocker Axis":                      "", // a direction, no point
		"":                                       "",
		"…":                                      "",
		"front.right.right.rod.outer":            "front.right.rod.outer",
		"front.inboard.at":                       "",
		strings.Repeat("front ", 1000) + "upper": "",
	} {
		if got := namesOfPoints().find(name); got.path != want {
			t.Errorf("%.60q means %q, want %q", name, got.path, want)
		}
	}
}

// Laws: each point of the table is found by its path, by the words of its path, and on the
// left-hand side with the word left too; no name means two points.
func TestEveryPointByItsName(t *testing.T) {
	names := namesOfPoints()
	rows := 0
	every(func(path string, k, _ *Key) {
		if k.Point() && !strings.Contains(path, "inboard") {
			rows++
			if !slices.Contains(names.paths, path) {
				t.Errorf("%s is no point by name", path)
			}
		}
	})
	if rows != len(names.paths) || rows < 80 {
		t.Errorf("%d points by name, and %d in the table", len(names.paths), rows)
	}
	for _, path := range names.paths {
		words := strings.NewReplacer(".", " ", "_", " ").Replace(path)
		for _, name := range []string{path, words, strings.ToUpper(words), strings.ReplaceAll(path, ".", "/"), strings.Replace(words, "t ", "t left ", 1)} {
			if strings.Contains(path, ".right.") && strings.Contains(name, "left") {
				continue
			}
			if got := names.find(name); got.path != path {
				t.Errorf("%q means %q %v, want %q", name, got.path, got.near, path)
			}
		}
	}
	for name, of := range names.of {
		if len(of) > 1 {
			t.Errorf("%q means %v", name, of)
		}
	}
	if cases.AxleNames != [2]string{"front", "rear"} {
		t.Error("the axles have other names than the abbreviations know")
	}
}

func TestNearestPoints(t *testing.T) {
	for _, row := range []struct {
		name, want string
		taken      map[string]bool
	}{
		{"Front Uper Outer", "front.upper_wishbone.outer", nil},
		{"Upper Front Outer", "front.upper_wishbone.outer", nil},
		{"front.rod.outr", "front.rod.outer", nil},
		{"front.rod.outr", "", map[string]bool{"front.rod.outer": true}},
		{"Battery tray", "", nil},
	} {
		got := ""
		if near := namesOfPoints().nearest(row.name, row.taken); len(near) > 0 {
			got = near[0]
		}
		if row.want == "" && strings.HasPrefix(got, "front.rod.outer") || row.want != "" && got != row.want || row.name == "Battery tray" && got != "" {
			t.Errorf("%q is near %q, want %q", row.name, got, row.want)
		}
	}
}
