package studies_test

import (
	"bytes"
	"context"
	"math"
	"os"
	"reflect"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/cases/studies"
	"sixlink/cases/variants"
	"sixlink/loads"
)

// read reads an example with something written below it.
func read(t testing.TB, name, more string) carfile.File {
	t.Helper()
	src, err := os.ReadFile("../../examples/" + name + ".yaml")
	if err != nil {
		t.Fatal(err)
	}
	f, err := carfile.Read(name, append(src, more...))
	if err != nil {
		t.Fatal(err)
	}
	return f
}

const groups = "\nscatter: {hardpoints: {normal: 0.5}, walls: {normal: 3 %}, strengths: {uniform: 4 %}, loads: {normal: 5 %}}\n"

// question is that of a file.
func question(f carfile.File, n int, seed uint64) (q studies.Question, paths []string) {
	q = studies.Question{Samples: n, Seed: seed}
	for _, x := range f.Scatter {
		q.Scatter = append(q.Scatter, studies.Scatter{Path: x.Path, Unit: x.Unit(), Base: x.Base, Distribution: x.Distribution, Deviation: x.Deviation})
		paths = append(paths, x.Path)
	}
	return q, paths
}

func full(t testing.TB, f carfile.File, paths []string) func() (studies.Judge, error) {
	return func() (studies.Judge, error) {
		v, err := f.Variant(paths)
		if err != nil {
			return nil, err
		}
		return studies.Full(v.Car), nil
	}
}

// fast is the judge by an engine.
func fast(t testing.TB, f carfile.File, paths []string) func() (studies.Judge, error) {
	t.Helper()
	b, err := f.Bind(paths)
	if err != nil {
		t.Fatal(err)
	}
	e, err := variants.New(f.Car, b.Apply)
	if err != nil {
		t.Fatal(err)
	}
	return func() (studies.Judge, error) {
		other, err := full(t, f, paths)()
		return studies.Fast(e.Clone(), b.Within, other), err
	}
}

func encoded(t testing.TB, s studies.Study) []byte {
	t.Helper()
	text, err := s.Encode()
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// The same seed gives the same bytes on any number of workers, and shards join to the
// very bytes of the whole, in any order.
func TestToleranceIsTheSameAnyway(t *testing.T) {
	f := read(t, "hillclimb-pushrod", groups)
	q, paths := question(f, 2345, 7) // the last block is not full
	judge := fast(t, f, paths)
	sample := func(workers int, shard studies.Shard) studies.Study {
		out, complete, err := studies.Sample(context.Background(), q, judge, studies.Plan{Workers: workers, Shard: shard})
		if err != nil || !complete {
			t.Fatal(complete, err)
		}
		return studies.Study{Tolerance: out, Complete: true, Shard: shard, Format: studies.Format}
	}
	whole := encoded(t, sample(1, studies.Shard{}))
	if !bytes.Equal(whole, encoded(t, sample(2, studies.Shard{}))) || !bytes.Equal(whole, encoded(t, sample(5, studies.Shard{}))) {
		t.Error("the number of workers changes the bytes")
	}
	for _, n := range []int{1, 2, 7} {
		var parts []studies.Part
		for i := n - 1; i >= 0; i-- {
			s, err := studies.Decode(encoded(t, sample(2, studies.Shard{I: i, N: n})))
			if err != nil {
				t.Fatal(err)
			}
			parts = append(parts, studies.Part{Name: "part", Study: s})
		}
		merged, err := studies.Merge(parts)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(whole, encoded(t, merged)) {
			t.Errorf("%d shards do not join to the whole", n)
		}
	}
	q.Seed++
	if bytes.Equal(whole, encoded(t, sample(1, studies.Shard{}))) {
		t.Error("another seed gives the same samples")
	}
}

// Two ways to the same: the engine and the full check judge every sample alike.
func TestFastIsFull(t *testing.T) {
	for _, name := range []string{"hillclimb-pushrod", "hillclimb-pullrod"} {
		f := read(t, name, groups)
		q, paths := question(f, 60, 3)
		a, err := fast(t, f, paths)()
		if err != nil {
			t.Fatal(err)
		}
		b, err := full(t, f, paths)()
		if err != nil {
			t.Fatal(err)
		}
		for k := range q.Samples {
			x := make([]float64, len(paths))
			for d, s := range q.Scatter {
				x[d] = s.Base + s.Deviation*math.Sin(float64(k*31+d*17))
			}
			var u, v studies.Outcome
			a(x, &u)
			b(x, &v)
			if (u.Refused == "") != (v.Refused == "") || u.Judged != v.Judged {
				t.Fatalf("%s: %q and %q", name, u.Refused, v.Refused)
			}
			for i := range u.Reserve {
				if u.Judged[i] && !(math.Abs(u.Reserve[i]-v.Reserve[i]) <= 1e-9*v.Reserve[i]) {
					t.Errorf("%s, sample %d, member %d: %v by the engine, %v in full", name, k, i, u.Reserve[i], v.Reserve[i])
				}
			}
		}
	}
}

// Vary at the value of the file is the check of the file: the same forces, reserve
// factors and mass to the last bit.
func TestVaryAtTheBaseIsCheck(t *testing.T) {
	for _, name := range []string{"hillclimb-pushrod", "hillclimb-pullrod-complete"} {
		f := read(t, name, "")
		v, err := f.Value("front.rod.inner.z")
		if err != nil {
			t.Fatal(err)
		}
		axis := studies.Axis{Name: v.Path, Paths: []string{v.Path}, Base: []float64{v.Base}, Values: []float64{v.Base - 1, v.Base, v.Base + 1}}
		out := vary(t, f, []studies.Axis{axis}, studies.Plan{Workers: 2})
		r, err := cases.Run(f.Car)
		if err != nil {
			t.Fatal(err)
		}
		p := out.Points[1]
		if float64(p.Mass) != r.MembersMass() || p.Pass() != r.Pass {
			t.Errorf("%s: mass %v, pass %v; check has %v, %v", name, p.Mass, p.Pass(), r.MembersMass(), r.Pass)
		}
		least := math.Inf(1)
		for i := range r.Corners {
			for j, m := range r.Corners[i].Members {
				tension := 0.0
				for _, l := range m.Loads {
					tension = max(tension, l.Axial)
				}
				g, _ := m.Governs()
				if got := p.Members[i*loads.NumLinks+j]; float64(got.Tension) != tension || float64(got.Lowest.Reserve) != g.Reserve || got.Lowest.Check != g.Title() || got.Lowest.Case != g.Case {
					t.Errorf("%s: %s %s: %+v", name, cases.CornerNames[i], loads.LinkNames[j], got)
				}
				least = min(least, g.Reserve)
			}
			if g, ok := r.Corners[i].Rocker.Governs(); ok {
				least = min(least, g.Reserve)
			}
		}
		if float64(p.Lowest.Reserve) != least {
			t.Errorf("%s: lowest %v, want %v", name, p.Lowest.Reserve, least)
		}
	}
}

func vary(t testing.TB, f carfile.File, axes []studies.Axis, plan studies.Plan) *studies.Vary {
	t.Helper()
	var paths []string
	for _, a := range axes {
		paths = append(paths, a.Paths...)
	}
	out, complete, err := studies.VaryAll(context.Background(), axes, func() (studies.Maker, error) {
		v, err := f.Variant(paths)
		return v.Car, err
	}, nil, plan)
	if err != nil || !complete {
		t.Fatal(complete, err)
	}
	return out
}

// A grid has every pair once, the first axis slowest; its shards join to the whole; and a
// point without a car says why.
func TestGrid(t *testing.T) {
	f := read(t, "hillclimb-pushrod", "")
	axes := []studies.Axis{
		{Name: "od", Paths: []string{"front.members.rod.tube.od"}, Base: []float64{20}, Values: []float64{2, 18, 20}},
		{Name: "load", Paths: []string{"cases[Bump].load"}, Base: []float64{1}, Values: []float64{1, 2}},
	}
	whole := vary(t, f, axes, studies.Plan{Workers: 2})
	var at [][]float64
	for _, p := range whole.Points {
		at = append(at, p.At)
	}
	if want := [][]float64{{2, 1}, {2, 2}, {18, 1}, {18, 2}, {20, 1}, {20, 2}}; !reflect.DeepEqual(at, want) {
		t.Errorf("points %v, want %v", at, want)
	}
	if p := whole.Points[0]; !strings.Contains(p.Refused, "wall: 1.5 mm is more than 1 mm") || p.Pass() {
		t.Errorf("a tube of 2 mm: %q", p.Refused)
	}
	if p := whole.Points[5]; p.Refused != "" {
		t.Errorf("after a refusal: %q", p.Refused)
	}
	study := func(v *studies.Vary, s studies.Shard) studies.Study {
		return studies.Study{Format: studies.Format, Vary: v, Shard: s, Complete: true}
	}
	for _, n := range []int{2, 4, 9} { // of nine shards some are empty
		var parts []studies.Part
		for i := range n {
			shard := studies.Shard{I: i, N: n}
			s, err := studies.Decode(encoded(t, study(vary(t, f, axes, studies.Plan{Workers: 1, Shard: shard}), shard)))
			if err != nil {
				t.Fatal(err)
			}
			parts = append(parts, studies.Part{Name: "part", Study: s})
		}
		merged, err := studies.Merge(parts)
		if err != nil || !bytes.Equal(encoded(t, merged), encoded(t, study(whole, studies.Shard{}))) {
			t.Errorf("%d shards do not join to the whole: %v", n, err)
		}
	}
}
