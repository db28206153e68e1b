package cases_test

import (
	"os"
	"testing"
	"time"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/members/stock"
)

func TestSizeTry(t *testing.T) {
	for _, name := range []string{"pushrod", "pullrod", "pushrod-complete", "pullrod-complete"} {
		path := "../examples/hillclimb-" + name + ".yaml"
		src, _ := os.ReadFile(path)
		f, err := carfile.Read(path, src)
		if err != nil {
			t.Fatal(err)
		}
		list, _ := stock.Named("EN 10305-1")
		for _, sep := range []bool{false, true} {
			start := time.Now()
			s, err := cases.Size(f.Car, cases.Sizing{Stock: list, Target: 1, Separate: sep})
			if err != nil {
				t.Fatal(err)
			}
			t.Log(name, sep, time.Since(start), s.Saved(), s.After.Pass, s.Carries())
			for _, g := range s.Groups {
				if g.Size != nil {
					t.Log(g.Axle, g.Links, g.Size.Tube, g.Kept)
				} else if g.Nearest != nil {
					t.Log(g.Axle, g.Links, "none", g.Nearest.Size.Tube, g.Nearest.Finding.Title(), g.Nearest.Finding.Reserve)
				}
			}
			for i, x := range s.Settled {
				if x != nil {
					t.Logf("%d %+v", i, *x)
				}
			}
		}
	}
}
