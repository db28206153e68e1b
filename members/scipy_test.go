package members

import (
	"bufio"
	"os"
	"strconv"
	"strings"
	"testing"

	"sixlink/members/check"
)

// testdata/scipy/reference.csv is written by hand by reference.py beside it: the same
// sections and struts by other methods, in numpy and scipy.

func TestScipySecondOrigin(t *testing.T) {
	compare := map[string]func(*testing.T, []float64){
		"ellipse_tube":     func(t *testing.T, v []float64) { sameSection(t, EllipseTube(v[0], v[1], v[2]), v[3:], 1e-8) },
		"lens_tube":        func(t *testing.T, v []float64) { sameSection(t, LensTube(v[0], v[1], v[2]), v[3:], 1e-9) },
		"rectangular_tube": func(t *testing.T, v []float64) { sameSection(t, RectangularTube(v[0], v[1], v[2]), v[3:], 1e-9) },
		"secant":           sameSecant,
		"beam_column":      sameBeamColumn,
	}
	count := map[string]int{}
	file, err := os.Open("testdata/scipy/reference.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	lines := bufio.NewScanner(file)
	for lines.Scan() {
		if strings.HasPrefix(lines.Text(), "#") {
			continue
		}
		cells := strings.Split(lines.Text(), ",")
		var values []float64
		for _, c := range cells[1:] {
			v, err := strconv.ParseFloat(c, 64)
			if err != nil {
				t.Fatal(err)
			}
			values = append(values, v)
		}
		count[cells[0]]++
		t.Run(lines.Text(), func(t *testing.T) { compare[cells[0]](t, values) })
	}
	for kind := range compare {
		if count[kind] < 4 {
			t.Errorf("%d rows of %s, want at least 4", count[kind], kind)
		}
	}
}

// sameSection holds a section to an area and the second moments about both axes.
func sameSection(t *testing.T, s Section, want []float64, rel float64) {
	var got twoAxes
	switch s := s.(type) {
	case ellipse:
		got = s.twoAxes
	case lens:
		got = s.twoAxes
	case rectangular:
		got = s.twoAxes
	}
	for i, v := range []float64{got.area, got.ix, got.iy} {
		if !near(v, want[i], rel) {
			t.Errorf("%s = %.15g, want %.15g", []string{"A", "I_x", "I_y"}[i], v, want[i])
		}
	}
	if least := min(want[1], want[2]); !near(s.Inertia(), least, rel) {
		t.Errorf("I = %.15g, want the lesser, %.15g", s.Inertia(), least)
	}
	if least := min(2*want[1]/got.height, 2*want[2]/got.width); !near(s.Modulus(), least, rel) {
		t.Errorf("Z = %.15g, want the lesser, %.15g", s.Modulus(), least)
	}
}

// sameSecant: od, wall, L, e, Sy; the load at yield, by a root finder.
func sameSecant(t *testing.T, v []float64) {
	s := eccentricStrut(Tube{v[0], v[1]}, 210e3, v[4], v[2], 1, -1000, v[3])
	if got := 1000 * finding(t, s, eccentricEnds).Reserve; !near(got, v[5], 1e-10) {
		t.Errorf("load at yield %.15g N, want %.15g N", got, v[5])
	}
}

// sameBeamColumn: od, wall, L, e, P, q; the greatest moment, by the differential
// equation. That of the eccentricity is exact. That of a side load is taken to grow
// with 1/(1 − a), which is less than 2·(sec u − 1)/u², u = π/2·√a, by at most 1 − π³/32.
func sameBeamColumn(t *testing.T, v []float64) {
	s := Subject{
		Strut{Tube{v[0], v[1]}, metal(210e3, 355), v[2], 1, Column{}},
		Load{Axial: -v[4], Sources: Sources{Eccentricity: v[3], SideLoad: v[5]}},
		check.Defaults,
	}
	got := (eccentric(s, 1) - axialStress(s)) * s.Modulus()
	switch less := 1 - got/v[6]; {
	case v[5] == 0 && !near(got, v[6], 1e-7):
		t.Errorf("moment %.12g N·mm, want %.12g N·mm", got, v[6])
	case v[5] > 0 && !(less > 0 && less < 0.0312):
		t.Errorf("moment %.12g N·mm, want at most 3.12 %% less than %.12g N·mm", got, v[6])
	}
}
