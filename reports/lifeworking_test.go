package reports_test

import (
	"strings"
	"testing"
)

// Every form has the working of the shortest life, down to the distance of its row.
func TestLifeWorkingInEveryForm(t *testing.T) {
	for _, which := range lives {
		l := lifeOf(t, which)
		least := -1
		for i, r := range l.Life.Rows {
			if r.Working != nil && (least < 0 || r.Distance < l.Life.Rows[least].Distance) {
				least = i
			}
		}
		if least < 0 {
			t.Fatalf("%s: no life ends", which)
		}
		want := l.Life.Rows[least].Working
		rows := sheetRows(t, lifeSheets(t, l), "Working")
		for i, s := range want {
			if row := rows[i]; row[1] != s.Symbol || !alike(shown(row[4]), s.Value, 1e-9, 1e-300) {
				t.Errorf("%s: line %d of the sheet %q, want %s = %g", which, i, row, s.Symbol, s.Value)
			}
		}
		text, err := l.Text()
		if err != nil {
			t.Fatal(err)
		}
		for _, part := range []string{"Working of the shortest life", "x = n_L·l_L", "d = n/N"} {
			if !strings.Contains(string(text), part) {
				t.Errorf("%s: the text has no %q", which, part)
			}
		}
		page, err := l.HTML()
		if err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(string(page), `id="t-working-block"`) {
			t.Errorf("%s: the page has no working", which)
		}
	}
}
