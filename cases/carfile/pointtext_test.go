package carfile

import (
	"bytes"
	"errors"
	"fmt"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Other forms of the same list: marks, line ends, separators, quotation marks, comments,
// orders of columns, blank lines and cells.
func TestPointsOtherText(t *testing.T) {
	src := example(t, "hillclimb-pushrod.yaml")
	want := readGood(t, src).Car
	car, points := taken(t, "hardpoints: {file: points.csv}\n", src)
	text := table(millimetres, points, inMillimetres)
	for _, row := range []struct{ name, text string }{
		{"byte order mark", "\ufeff" + text},
		{"CRLF", strings.ReplaceAll(text, "\n", "\r\n")},
		{"no end of the last line", strings.TrimSuffix(text, "\n")},
		{"semicolons", strings.ReplaceAll(text, ",", ";")},
		{"tabs", strings.ReplaceAll(strings.ReplaceAll(text, ", ", ","), ",", "\t")},
		{"comments and blank lines", "# points, of the drawing; made\n\n" + strings.ReplaceAll(text, "\nrear.rod.outer", "\n\n# rear\n,,,\nrear.rod.outer")},
		{"quotation marks", strings.ReplaceAll(text, "front.rod.outer,2,", `"front.rod.outer","2",`)},
		{"empty cells at the ends", strings.ReplaceAll(text, "\n", ",,\n")},
		{"notes", strings.ReplaceAll(strings.ReplaceAll(text, "z (mm)\n", "z (mm), notes\n"), "front.rod.outer,2,630,196", `front.rod.outer,2,630,196,"ball, M8"`)},
		{"x_mm", strings.ReplaceAll(text, millimetres, "Point,X_mm,Y_mm,Z_mm")},
		{"units in cells", strings.ReplaceAll(text, "front.rod.outer,2,630,196", "front.rod.outer,0.2 cm,63 cm,0.196 m")},
		{"exponents", strings.ReplaceAll(text, "front.rod.outer,2,630,196", "front.rod.outer,2e0,+6.3E2,196.")},
		{"loose names", strings.ReplaceAll(text, "front.rod.outer,", "Front Push Rod Outer,")},
		{"z first", table("z (mm),name,x (mm),y (mm)", nil, inMillimetres) + zFirst(points)},
	} {
		got, err := withPoints(car, row.text)
		if err != nil {
			t.Errorf("%s: %v", row.name, err)
			continue
		}
		same(t, row.name, got.Car, want)
	}
}

func zFirst(points []plainPoint) string {
	var b bytes.Buffer
	for _, p := range points {
		fmt.Fprintf(&b, "%g,%s,%g,%g\n", p.at[2], p.path, p.at[0], p.at[1])
	}
	return b.String()
}

// A list is refused with faults that have a place, or gives a car of finite numbers, the
// same one each time, whose points are values by their paths.
func FuzzPoints(f *testing.F) {
	for _, e := range pointEdits {
		if _, list := cadFiles(f, e); len(list) < 10_000 {
			f.Add("", []byte(list))
		}
	}
	_, list := cadFiles(f, pointEdit{list: rodOuter, points: rodOuter})
	f.Add("", []byte(strings.ReplaceAll(list, ",", ";")))
	f.Add("mm", []byte(strings.ReplaceAll(list, " (in)", "")))
	f.Add("cm", []byte("\ufeff"+strings.ReplaceAll(list, "\n", "\r\n")))
	f.Add("in", []byte("z,name,y,x\n1 in,\"a\nb\",2,3\n"))
	car := example(f, "cad/hillclimb-pushrod.yaml")
	f.Fuzz(func(t *testing.T, unit string, list []byte) {
		text := car
		if unit != "" && len(unit) < 20 && !strings.ContainsAny(unit, "\n\r\u0085\u2028\u2029") {
			text = strings.Replace(car, "  file: ", "  unit: "+unit+"\n  file: ", 1)
		}
		read := func() (File, error) {
			return ReadFrom("car.yaml", []byte(text), given(map[string]string{"hillclimb-points.csv": string(list)}))
		}
		got, err := read()
		if err != nil {
			var faults Faults
			if !errors.As(err, &faults) || len(faults) == 0 {
				t.Fatalf("error %v is no Faults", err)
			}
			checkPointFaults(t, faults)
			return
		}
		if path := notFiniteIn(reflect.ValueOf(got.Car), "car"); path != "" {
			t.Errorf("%s is not finite", path)
		}
		if again, err := read(); err != nil || !cmp.Equal(got.Car, again.Car) {
			t.Errorf("the second reading differs (error %v)", err)
		}
		for _, p := range paths(got) {
			if v, err := got.Value(p); err != nil || v.Path == "" {
				t.Errorf("%s: %v", p, err)
			}
		}
	})
}
