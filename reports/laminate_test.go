package reports_test

import (
	"math"
	"strings"
	"testing"
)

// A laminate stands in every form by its name, with its source, its basis and its
// doubts; strengths that it does not have stay open.
func TestLaminateIsShown(t *testing.T) {
	// T300/5208 of Tsai and Hahn (1980), from memory; the rest is invented for this test.
	const list = `
laminates:
  - name: Test CFRP
    ply: {longitudinal_modulus: 181 GPa, transverse_modulus: 10.3 GPa, shear_modulus: 7170, poisson_ratio: 0.28, thickness: 0.15, density: 1600,
      tension_along: 1500, compression_along: 1500, tension_across: 40, compression_across: 246, shear: 68}
    layup: [0, 0, 45, -45, 0]
    symmetric: true
    knockdown: 0.5
    source: data sheet of the test
`
	r := report(t, "\nfront:\n", list+"\nfront:\n", "{tube: [20, 1.5], material: E355+N}\n\nrear", "{tube: [20, 1.5], laminate: Test CFRP}\n\nrear")
	shown := strings.Join(strings.Fields(text(t, r)), " ")
	for _, want := range []string{"rod 20 × 1.5 Test CFRP", "warning: Test CFRP: its ply strengths are multiplied by the knockdown"} {
		if !strings.Contains(shown, want) {
			t.Errorf("no %q in\n%s", want, shown)
		}
	}
	rows := 0
	for _, table := range r.Tables() {
		if table.Name != "Sources" {
			continue
		}
		column := map[string]int{}
		for i, c := range table.Columns {
			column[c.Head] = i
		}
		for _, row := range table.Rows {
			if row[column["material"]] != "Test CFRP" {
				continue
			}
			rows++
			sy, su := row[column["Sy"]].(float64), row[column["Su"]].(float64)
			if !math.IsNaN(sy) || !math.IsNaN(su) || row[column["source"]] != "data sheet of the test" || row[column["basis"]] != "laminate [0/0/45/-45/0]s, knockdown 0.5" {
				t.Errorf("sources: %v", row)
			}
		}
	}
	if rows != 1 {
		t.Errorf("%d rows of the laminate among the sources, want one", rows)
	}
	if js, err := r.JSON(); err != nil || strings.Count(string(js), `"material": "Test CFRP"`) != 4 || !strings.Contains(string(js), `"check": "first ply in compression, Tsai–Wu"`) {
		t.Errorf("JSON without the laminate of the two front rods (error %v)", err)
	}
}
