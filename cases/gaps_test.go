package cases_test

import (
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/loads"
)

// A car whose file gives everything leaves at most five lines unchecked; what a file
// does not give is named.
func TestNotChecked(t *testing.T) {
	for _, name := range []string{"hillclimb-pushrod-complete.yaml", "hillclimb-pullrod-complete.yaml"} {
		r := runEdited(t, name)
		if n := len(r.NotChecked); n == 0 || n > 5 {
			t.Errorf("%s: %d lines not checked: %q", name, n, r.NotChecked)
		}
		for i, c := range r.Corners {
			if len(c.Rocker.Checks) == 0 {
				t.Errorf("%s: no check of the rocker at %s", name, cases.CornerNames[i])
			}
			for j, m := range c.Members {
				at := map[string]bool{}
				for _, f := range m.Checks {
					at[f.At] = true
				}
				if !at[""] || !at["outer end"] || !at["inner end"] {
					t.Errorf("%s: %s %s is checked at %v only", name, cases.CornerNames[i], cases.MemberNames[j], at)
				}
			}
		}
		if !r.Pass {
			t.Errorf("%s does not pass", name)
		}
	}
	plain := strings.Join(runEdited(t, "hillclimb-pushrod.yaml").NotChecked, "\n")
	for _, want := range []string{"joints: spherical bearings", "plates, bearings, pivot bolts, torsion bars", "their own weight and inertia, side loads, eccentric ends", "fatigue", "travel", "uprights"} {
		if !strings.Contains(plain, want) {
			t.Errorf("not checked lacks %q:\n%s", want, plain)
		}
	}
	car := runEdited(t, "hillclimb-pushrod-complete.yaml").Car
	car.Axles[cases.Rear].Parts[2].Ends[0] = cases.Part{}.Ends[0]
	car.Axles[cases.Front].Rocker.Bolt = nil
	r, err := cases.Run(car)
	if err != nil {
		t.Fatal(err)
	}
	got := strings.Join(r.NotChecked, "\n")
	for _, want := range []string{"all of spherical bearings, rod ends, threads, bolts, inserts, welds and lugs at rear lower front leg outer end; ", "at the rockers: pivot bolts, "} {
		if !strings.Contains(got, want) {
			t.Errorf("not checked lacks %q:\n%s", want, got)
		}
	}
}

// What is not known of the stiffness is named by axle: nothing where both give it.
func TestStiffnessGap(t *testing.T) {
	const gap = "stiffness of the "
	for _, row := range []struct {
		given [2]bool
		want  string
	}{{[2]bool{}, gap + "assembly"}, {[2]bool{true, false}, gap + "rear axle's assembly"}, {[2]bool{false, true}, gap + "front axle's assembly"}, {[2]bool{true, true}, ""}} {
		car := runEdited(t, "hillclimb-pushrod.yaml").Car
		for axle, given := range row.given {
			if given {
				car.Axles[axle].Stiffness = &cases.Stiffness{}
			}
		}
		r, err := cases.Run(car)
		if err != nil {
			t.Fatal(err)
		}
		got := strings.Join(r.NotChecked, "\n")
		if strings.Contains(got, gap) != (row.want != "") || !strings.Contains(got, row.want) {
			t.Errorf("%v: %s", row.given, got)
		}
	}
}

// carGaps returns what is not checked for an example that a change was made to.
func carGaps(t *testing.T, change func(*cases.Car)) string {
	t.Helper()
	car := runEdited(t, "hillclimb-pushrod-complete.yaml").Car
	change(&car)
	r, err := cases.Run(car)
	if err != nil {
		t.Fatal(err)
	}
	return strings.Join(r.NotChecked, "\n")
}

// What an end lacks of its parts is named, each by its kind, with the ends that lack it.
func TestGapsOfEnds(t *testing.T) {
	const outer, inner = 0, 1
	for _, tt := range []struct {
		want   string
		change func(*cases.Part)
	}{
		{"joints: axial load of the bearing (no axial_rating) at front rod inner end; ", func(p *cases.Part) { b := *p.Ends[inner].Bearing; b.Axial = 0; p.Ends[inner].Bearing = &b }},
		{"joints: bearing or rod end at front rod outer end; ", func(p *cases.Part) { p.Ends[outer].Bearing = nil }},
		{"; bearing on the inner plate (no inner_material) at front rod outer end", func(p *cases.Part) { p.Ends[outer].Bearing = nil }},
		{"; bolt at front rod", func(p *cases.Part) { p.Ends[outer].Bolt, p.Ends[inner].Bolt = nil, nil }},
		{"; bending of the bolt and bearing on its plates (no plates) at front rod inner end", func(p *cases.Part) { b := *p.Ends[inner].Bolt; b.Plates = nil; p.Ends[inner].Bolt = &b }},
		{"; lug at front rod inner end", func(p *cases.Part) { p.Ends[inner].Lug = nil }},
		{"; thread, weld or insert at front rod inner end", func(p *cases.Part) { p.Ends[inner].Thread, p.Ends[inner].Weld = nil, nil }},
		{"; stripping of the thread (no engagement) at front rod inner end", func(p *cases.Part) {
			th := *p.Ends[inner].Thread
			th.Engagement = 0
			p.Ends[inner].Thread = &th
		}},
		{"; the internal thread (no in) at front rod inner end", func(p *cases.Part) {
			th := *p.Ends[inner].Thread
			th.Nut = p.Strut.Metal
			th.Nut.Su = 0
			p.Ends[inner].Thread = &th
		}},
		{"; what holds the thread in the tube (no weld or insert) at front rod inner end", func(p *cases.Part) { p.Ends[inner].Weld = nil }},
	} {
		got := carGaps(t, func(c *cases.Car) { tt.change(&c.Axles[cases.Front].Parts[loads.Rod]) })
		if !strings.Contains(got, tt.want) {
			t.Errorf("not checked lacks %q:\n%s", tt.want, got)
		}
	}
	whole := carGaps(t, func(*cases.Car) {})
	if want := "joints: radial and axial load of the bearing together at every end\n"; !strings.HasPrefix(whole, want) {
		t.Errorf("the complete car has more open than %q:\n%s", want, whole)
	}
	got := carGaps(t, func(c *cases.Car) {
		for i, p := range c.Axles[cases.Rear].Parts {
			c.Axles[cases.Rear].Parts[i].Ends[inner].Lug = nil
			if th := p.Ends[inner].Thread; th != nil {
				short := *th
				short.Shank = 0
				c.Axles[cases.Rear].Parts[i].Ends[inner].Thread = &short
			}
		}
	})
	for _, want := range []string{"; lug at every rear inner end", "; bending of the shank by the shear of the leg (no shank_length) at rear lower front leg inner end, rear lower rear leg inner end\n"} {
		if !strings.Contains(got, want) {
			t.Errorf("not checked lacks %q:\n%s", want, got)
		}
	}
}

// What the rockers lack is named; a car without rockers names nothing of them. The apex
// of a carrying wishbone is named where there is one.
func TestGapsOfRockersAndCarriers(t *testing.T) {
	has := func(got, want string, there bool) {
		t.Helper()
		if strings.Contains(got, want) != there {
			t.Errorf("%q in what is not checked, want %t:\n%s", want, there, got)
		}
	}
	whole := carGaps(t, func(*cases.Car) {})
	has(whole, "at the rockers: splines of torsion bars, radial load and thrust of a bearing together, the bolts in their eyes", true)
	has(whole, "the apex housing and the rod bracket of a carrying wishbone", true)
	has(whole, "thrust_rating", false)
	got := carGaps(t, func(c *cases.Car) {
		b := *c.Axles[cases.Rear].Rocker.Bearings
		b.Thrust = 0
		c.Axles[cases.Rear].Rocker.Bearings = &b
	})
	has(got, "at the rockers: thrust of the pivot (no thrust_rating), splines", true)
	none := carGaps(t, func(c *cases.Car) {
		for i := range c.Axles {
			c.Axles[i].Rocker, c.Axles[i].Corner.Rocker, c.Axles[i].Corner.Carrier = nil, nil, loads.Upright
		}
	})
	has(none, "rocker", false)
	has(none, "springs, dampers, anti-roll systems", true)
	has(none, "apex", false)
}

// What bends the members beyond what the file gives is named with the members.
func TestGapsOfMembers(t *testing.T) {
	members := func(change func(*cases.Car)) string {
		_, line, _ := strings.Cut(carGaps(t, change), "members: ")
		line, _, _ = strings.Cut(line, ", walls")
		return line
	}
	each := func(c *cases.Car, do func(axle, link int, p *cases.Part)) {
		for i := range c.Axles {
			for j := range c.Axles[i].Parts {
				do(i, j, &c.Axles[i].Parts[j])
			}
		}
	}
	const inertia = "their own inertia in load cases without unsprung_acceleration"
	for _, tt := range []struct {
		want   string
		change func(*cases.Car)
	}{
		{inertia + ", side loads, eccentric ends", func(*cases.Car) {}},
		{inertia + ", side loads (but for front rod), eccentric ends (but for rear track rod)", func(c *cases.Car) {
			c.Axles[cases.Front].Parts[loads.Rod].Sources.SideLoad = 1e-6
			c.Axles[cases.Rear].Parts[loads.TrackRod].Sources.Eccentricity = 1e-6
		}},
		{inertia + ", side loads, eccentric ends (of rear rod)", func(c *cases.Car) {
			each(c, func(i, j int, p *cases.Part) {
				if i != cases.Rear || j != loads.Rod {
					p.Sources.Eccentricity = 1e-6
				}
			})
		}},
		{inertia + ", side loads", func(c *cases.Car) {
			each(c, func(_, _ int, p *cases.Part) { p.Sources.Eccentricity = 1e-6 })
		}},
		{"their own weight and inertia, side loads, eccentric ends", func(c *cases.Car) { c.OwnInertia = false }},
		{"side loads, eccentric ends", func(c *cases.Car) {
			for i := range c.Cases {
				if c.Cases[i].Unsprung == nil && c.Cases[i].Kind != cases.Manoeuvre {
					c.Cases[i].Unsprung = &r3.Vec{Z: 1}
				}
			}
		}},
	} {
		if got := members(tt.change); got != tt.want {
			t.Errorf("members: %q, want %q", got, tt.want)
		}
	}
	const note = "own_inertia: the members bend by 1 g of their weight alone in cases without unsprung_acceleration: Static; Bump; Bump with longitudinal strike; Kerb strike\n"
	if got := notesOf(runEdited(t, "hillclimb-pushrod-complete.yaml")); !strings.Contains(got, note) {
		t.Errorf("notes lack %q:\n%s", note, got)
	}
	if got := notesOf(runEdited(t, "hillclimb-pushrod.yaml")); strings.Contains(got, "own_inertia:") {
		t.Error("a note on inertia that is not counted")
	}
}
