package reports_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"
)

// Every form of a life shows the peaks of its histories and why it does not pass: a car that
// fails its checks, a peak that does not hold, a detail without a load.
func TestReasonsInEveryForm(t *testing.T) {
	l := lifeOf(t, "history")
	if len(l.Life.Peaks) == 0 {
		t.Fatal("no peaks")
	}
	l.Life.Pass, l.Life.CarPasses, l.Results.Pass = false, false, false
	l.Life.Peaks[3].Reserve = 0.123
	row := &l.Life.Rows[0]
	row.Unloaded, row.Pass, row.Distance, row.Laps, row.Inspection = true, false, math.NaN(), math.NaN(), math.NaN()
	broken := &l.Life.Rows[1]
	broken.Pass, broken.Broken = false, "its nominal stress reaches 999 MPa"
	broken.Doubts = append(broken.Doubts, broken.Broken)
	when := l.Life.Peaks[3].When()
	forms := map[string]func() ([]byte, error){"text": l.Text, "page": l.HTML, "JSON": l.JSON}
	for name, make := range forms {
		out, err := make()
		if err != nil {
			t.Fatal(err)
		}
		text := strings.Join(strings.Fields(string(out)), " ")
		want := []string{"FAIL: the car does not pass sixlink check", "do not hold at the peaks of the histories (1)", "RF 0.12", when, "not judged", "past"}
		if name == "JSON" {
			want = []string{`"pass": false, "caution"`, `"car_passes_check": false`, `"reserve_factor": 0.123`, `"no_load": true`, `"past_strength": "its nominal stress reaches 999 MPa"`}
		}
		for _, w := range want {
			if !strings.Contains(text, w) {
				t.Errorf("%s lacks %q", name, w)
			}
		}
	}
	var doc struct {
		Peaks []struct{ Reserve_factor float64 }
	}
	out, _ := l.JSON()
	if err := json.Unmarshal(out, &doc); err != nil || len(doc.Peaks) != len(l.Life.Peaks) {
		t.Errorf("%d peaks in the JSON, %d found, %v", len(doc.Peaks), len(l.Life.Peaks), err)
	}
	found := false
	for _, table := range l.Tables() { // workbook, page and PDF hold every table
		found = found || table.Name == "Peaks" && len(table.Rows) == len(l.Life.Peaks)
	}
	if !found {
		t.Error("no table of peaks")
	}
}
