package carfile

import (
	"os"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members"
)

var triple = regexp.MustCompile(`\[([^],\[]*),([^],\[]*),([^],\[]*)\]`)

// explicit gives each axle of a plain car file a right: that repeats its mirror image,
// every vector with the sign of one coordinate turned.
func explicit(t *testing.T, text string, lateral int) string {
	t.Helper()
	for _, axle := range []string{"front", "rear"} {
		_, block, found := strings.Cut(text, "\n"+axle+":\n")
		if !found {
			t.Fatalf("there is no %s axle", axle)
		}
		block = block[:strings.Index(block, "\n\n")+1]
		right := "  right:\n"
		for line := range strings.Lines(block) {
			if !strings.HasPrefix(line, "  unsprung_mass") {
				right += "  " + triple.ReplaceAllStringFunc(line, func(v string) string {
					x := strings.Split(strings.Trim(v, "[]"), ",")
					y := strings.Trim(x[lateral], ` "`)
					if number := strings.TrimSuffix(y, " in"); strings.HasPrefix(number, "-") {
						y = y[1:]
					} else if f, err := strconv.ParseFloat(number, 64); err != nil {
						t.Fatalf("%q: %v", v, err)
					} else if f != 0 {
						y = "-" + y
					}
					x[lateral] = ` "` + y + `"`
					return "[" + strings.Join(x, ",") + "]"
				})
			}
		}
		right = regexp.MustCompile(`, roll_share: [0-9.]+`).ReplaceAllString(right, "")
		text = strings.Replace(text, block, block+right, 1)
	}
	return text
}

// By the law of symmetry a right-hand side that repeats the mirror image is no other car:
// every number is the same to the last bit, whatever the axes of the file.
func TestRightRepeatsMirror(t *testing.T) {
	for _, name := range []string{
		"../../examples/hillclimb-pushrod.yaml", "../../examples/hillclimb-pullrod.yaml", "../../examples/hillclimb-pullrod.yaml across",
		"../testdata/numpy/cars/x-rearward-y-right.yaml", "../testdata/numpy/cars/left-handed.yaml",
	} {
		src, err := os.ReadFile(strings.TrimSuffix(name, " across"))
		if err != nil {
			t.Fatal(err)
		}
		if strings.HasSuffix(name, " across") {
			src = []byte(across(string(src)))
		}
		plain, err := Read(name, src)
		if err != nil {
			t.Fatal(err)
		}
		text := explicit(t, string(src), slices.Index(plain.turn.axis[:], lateral))
		twice, err := Read(name, []byte(text))
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if !reflect.DeepEqual(plain.Car, twice.Car) {
			t.Errorf("%s: another car where right: repeats the mirror image", name)
		}
		if _, err := twice.Value("rear.right.rod.inner.x"); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// across draws a car file in axes of which the first runs to the left and the second
// forward: the first two numbers of every vector change places.
func across(text string) string {
	axles, rest, _ := strings.Cut(text, "\ncases:")
	axles = triple.ReplaceAllString(axles, "[$2,$1,$3]")
	rest = regexp.MustCompile(`(?m) acceleration: \[([^],]*),([^],]*)\]`).ReplaceAllString(rest, " acceleration: [$2,$1]")
	return strings.Replace(axles, "\nvehicle:", "\naxes: {x: left, y: forward, z: up}\nvehicle:", 1) + "\ncases:" + rest
}

// What right gives is read in its own coordinates, and the rest mirrors the left.
func TestRight(t *testing.T) {
	const right = `  right:
    wheel: {contact: [0, -700, 0]}
    rod: {outer: ["0.5 in", -631, 197]}
    rocker: {axis: [1, 0.1, 0], spring: {rocker: [0, -205, 462], chassis: [0, -50, 450]}}
    members: {rod: {tube: [22, 2]}, track_rod: {material: E235+N}}
`
	f, err := Read("car", []byte(edited(t, example(t, "hillclimb-pushrod.yaml"), rearAxle, right+rearAxle)))
	if err != nil {
		t.Fatal(err)
	}
	a := f.Car.Axles[cases.Front]
	if a.Right == nil || f.Car.Axles[cases.Rear].Right != nil {
		t.Fatalf("sides: %v, %v", a.Right, f.Car.Axles[cases.Rear].Right)
	}
	want := cases.Side{Corner: a.Corner.Mirrored(), Parts: a.Parts}
	want.Corner.Contact = r3.Vec{Y: -700}
	want.Corner.Links[loads.Rod].Outer = r3.Vec{X: 12.7, Y: -631, Z: 197}
	want.Corner.Rocker.Axis = r3.Vec{X: 1, Y: 0.1}
	want.Corner.Rocker.Spring = &loads.Line{Rocker: r3.Vec{Y: -205, Z: 462}, Far: r3.Vec{Y: -50, Z: 450}}
	want.Parts[loads.Rod].Strut.Section = members.Tube{OD: 22, Wall: 2}
	want.Parts[loads.TrackRod].Strut.Metal = a.Right.Parts[loads.TrackRod].Strut.Metal
	want.Own[loads.Rod] = true
	b := cases.Axle{Right: &want}
	b.Side = a.Side
	b.Refresh()
	if !reflect.DeepEqual(*a.Right, want) {
		t.Errorf("right-hand side: %s", cmp.Diff(want, *a.Right, cmp.AllowUnexported(members.Tube{})))
	}
	if m := a.Right.Parts[loads.TrackRod].Strut.Metal; m.Name != "E235+N" || a.Parts[loads.TrackRod].Strut.Metal.Name != "E355+N" {
		t.Errorf("track rods of %s and %s", a.Parts[loads.TrackRod].Strut.Metal.Name, m.Name)
	}
	if c := a.Right.Corner; c.Rocker.Spring == nil || a.Corner.Rocker.Spring != nil {
		t.Error("the spring of the right-hand side does not take the place of the torsion bar")
	}
}

// A factor on the strength of a member is one of both sides where the file has one
// material for both, and of one side where it has two.
func TestStrengthOfSides(t *testing.T) {
	f, err := Read("car", []byte(edited(t, example(t, "hillclimb-pushrod.yaml"), rearAxle, "  right:\n    rod: {outer: [2, -640, 196]}\n    members: {rod: {tube: [22, 2]}}\n"+rearAxle)))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		path        string
		left, right float64
	}{
		{"front.members.track_rod.strength", 0.5, 0.5},
		{"front.members.rod.strength", 0.5, 1},
		{"front.right.members.rod.strength", 1, 0.5},
	} {
		v, err := f.Variant([]string{c.path})
		if err != nil {
			t.Fatal(err)
		}
		car, err := v.Car([]float64{0.5})
		if err != nil {
			t.Fatal(err)
		}
		link := loads.Rod
		if strings.Contains(c.path, "track_rod") {
			link = loads.TrackRod
		}
		was := f.Car.Part(cases.FrontLeft, link).Strut.Metal.Sy
		left, right := car.Part(cases.FrontLeft, link).Strut.Metal.Sy, car.Part(cases.FrontRight, link).Strut.Metal.Sy
		if left != c.left*was || right != c.right*was {
			t.Errorf("%s: %g and %g MPa, want %g and %g times %g MPa", c.path, left, right, c.left, c.right, was)
		}
	}
	if _, err := f.Value("front.right.members.track_rod.strength"); err == nil {
		t.Error("the right-hand track rod has a strength of its own, and shares the left one's material")
	}
}

// A tube is written where the file has it: on its own side, and on both where right:
// repeats it.
func TestRetubeSides(t *testing.T) {
	text := edited(t, example(t, "hillclimb-pushrod.yaml"), rearAxle, "  right:\n    members: {rod: {tube: [22, 2]}}\n"+rearAxle)
	tube := NewTube{Link: loads.Rod, Tube: members.Tube{OD: 25, Wall: 1}, Given: [2]string{"25", "1"}}
	const left, right = "rod:             {tube: [20, 1.5], material: E355+N}\n  right", "rod: {tube: [22, 2]}"
	newLeft, newRight := strings.Replace(left, "20, 1.5", "25, 1", 1), strings.Replace(right, "22, 2", "25, 1", 1)
	for _, c := range []struct {
		sides [2]bool
		want  string
	}{
		{[2]bool{true, false}, edited(t, text, left, newLeft)},
		{[2]bool{false, true}, edited(t, text, right, newRight)},
		{[2]bool{true, true}, edited(t, edited(t, text, left, newLeft), right, newRight)},
	} {
		tube.Sides = c.sides
		got, err := Retube("car.yaml", []byte(text), []NewTube{tube})
		if err != nil || string(got) != c.want {
			t.Errorf("sides %v: %v\n%s", c.sides, err, got)
		}
	}
	tube.Sides, tube.Link = [2]bool{false, true}, loads.TrackRod
	if _, err := Retube("car.yaml", []byte(text), []NewTube{tube}); err == nil {
		t.Error("a tube was written for the right-hand track rod, which has none of its own")
	}
}

// Both ends of a third spring follow from one point where the sides are mirror images,
// and each from its own where they are not; values of all of them can be bound.
func TestThirdSpring(t *testing.T) {
	const name = "../testdata/numpy/cars/third-spring.yaml"
	src, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	f, err := Read(name, src)
	if err != nil {
		t.Fatal(err)
	}
	front, rear := f.Car.Axles[cases.Front].Corner.Rocker, f.Car.Axles[cases.Rear].Corner.Rocker
	if want := (loads.Line{Rocker: r3.Vec{X: -6, Y: 190, Z: 464}, Far: r3.Vec{X: -6, Y: -190, Z: 464}}); *front.Third != want || front.HeaveShare != 0.4 {
		t.Errorf("front: %+v, share %g", *front.Third, front.HeaveShare)
	}
	right := f.Car.Axles[cases.Rear].Right.Corner.Rocker
	want := loads.Line{Rocker: r3.Vec{X: -2540, Y: 205, Z: 482}, Far: r3.Vec{X: -2552, Y: -190, Z: 476}}
	if *rear.Third != want || *right.Third != (loads.Line{Rocker: want.Far, Far: want.Rocker}) || rear.HeaveShare != right.HeaveShare {
		t.Errorf("rear: %+v and %+v", *rear.Third, *right.Third)
	}
	paths := []string{
		"front.rocker.third.rocker.y", "front.rocker.third.heave_share", "rear.rocker.third.rocker.z",
		"rear.right.rocker.third.rocker.y", "rear.right.rod.outer.y", "rear.rod.inner.y", "front.upper_wishbone.outer.y",
	}
	b, err := f.Bind(paths)
	if err != nil {
		t.Fatal(err)
	}
	x := append([]float64(nil), b.Base...)
	for i := range x {
		x[i] *= 0.99
	}
	v, err := f.Variant(paths)
	if err != nil {
		t.Fatal(err)
	}
	car, err := v.Car(x)
	if err != nil {
		t.Fatal(err)
	}
	again, _ := v.Car(b.Base)
	b.Apply(&again, x)
	if !reflect.DeepEqual(again, car) {
		t.Error("the bound car is another")
	}
}
