package reports

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"sixlink/cases/carfile/cartest"
)

// A table by hand, folded: what stood in a line for each case and point stands side by
// side; a column without a number but zero is left out, unless it is the first of its group.
func TestFoldedTable(t *testing.T) {
	table := Table{
		Columns: []Column{{"no.", "", Text}, {"point", "", Text}, {"Fx", "N", Whole}, {"rack", "N", Whole}},
		Rows: [][]any{
			{1, "a", 10.0, math.NaN()},
			{1, "b", 20.0, 5.0},
			{2, "a", 30.0, math.NaN()},
			{2, "b", 40.0, 0.0},
		},
	}
	g := table.across([]string{"no."}, []string{"point"}, []string{"Fx", "rack"})
	var got []string
	for _, r := range g.Rows {
		got = append(got, strings.Join(r.Cells, " "))
	}
	if want := []string{"1 10 20 5", "2 30 40 0"}; !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	var heads []string
	for _, c := range g.Flat().Columns {
		heads = append(heads, c.Head)
	}
	if want := []string{"no.", "a", "b", "b: rack"}; !slices.Equal(heads, want) {
		t.Errorf("headings %q, want %q", heads, want)
	}
}

// A line that fails is in bold letters, and no other.
func TestFailingLinesAreBold(t *testing.T) {
	g := gridOf(Table{Columns: []Column{{"verdict", "", Text}}, Rows: [][]any{{verdict(true)}, {verdict(false)}, {"FAILING as a name"}}})
	for i, want := range []bool{false, true, false} {
		if g.Rows[i].Strong != want {
			t.Errorf("row %q: bold %v", g.Rows[i].Cells, g.Rows[i].Strong)
		}
	}
}

// The pack shows of each check the lowest reserve factor that the JSON has for it.
func TestLowestOfEachCheck(t *testing.T) {
	results := cartest.Run(t, "../examples/hillclimb-pushrod-complete.yaml")
	r := Report{Results: results}
	data, err := r.JSON()
	if err != nil {
		t.Fatal(err)
	}
	var parsed struct {
		Members []struct {
			Corner, Member string
			Checks         []struct {
				At, Check string
				Reserve   float64 `json:"reserve_factor"`
			}
		}
	}
	if err := json.Unmarshal(data, &parsed); err != nil {
		t.Fatal(err)
	}
	want := map[string]float64{}
	for _, m := range parsed.Members {
		for _, c := range m.Checks {
			title := c.Check
			if c.At != "" {
				title = c.At + ": " + title
			}
			key := strings.ReplaceAll(m.Corner+" "+m.Member, "_", " ") + " " + title
			if least, ok := want[key]; !ok || c.Reserve < least {
				want[key] = c.Reserve
			}
		}
	}
	shown := []string{"front left", "front right", "rear left", "rear right"}
	table, sources := lowestOf(r.checksTable(), shown)
	seen := 0
	for _, row := range table.Rows {
		key := fmt.Sprint(row[0], " ", row[1], " ", row[4])
		if row[1] == "rocker" {
			continue
		}
		if seen++; !(math.Abs(row[8].(float64)-want[key]) <= 1e-9*want[key]) {
			t.Errorf("%s: RF %v, the JSON has %g", key, row[8], want[key])
		}
	}
	if seen != len(want) || seen < 200 {
		t.Errorf("%d checks shown, the JSON has %d", seen, len(want))
	}
	if len(sources) < 10 || slices.Contains(sources, "") {
		t.Errorf("sources %q", sources)
	}
	if left, _ := lowestOf(r.checksTable(), shown[:1]); left.Rows[len(left.Rows)-1][0] != "front left" {
		t.Error("a corner that is not to be shown is")
	}
}
