package duty_test

import (
	"context"
	"errors"
	"math"
	"os"
	"strings"
	"testing"
	"unicode"

	"sixlink/cases/duty"
	"sixlink/members/stock"
)

// A log of parts is refused at a place of the file, or adds up: what the parts have run
// together is the sum of its lines.
func FuzzReadMileage(f *testing.F) {
	f.Add(mileage)
	for _, text := range []string{"", "part,date,km,event\n", "part,date,km,event\nA,2026-01-02,1e6,\n", "part,date,km,event\n\"A\n\",2026-01-02,-0,x\n", "part,date,km,event\r\n# x\r\nA/1/2,2026-12-31, 5 ,INSPECTED\r\n", "\ufeffpart,date,km,event\n", "part,date,km,event\n\"A,2026-01-02,5,x\n"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		log, err := duty.ReadMileage("log.csv", strings.NewReader(text))
		if err != nil {
			placed(t, err)
			return
		}
		seen := map[string]bool{}
		for _, m := range log {
			if m.Part == "" || seen[m.Part] || !(m.Run >= 0 && m.Since >= 0 && m.Since <= m.Run && m.Run <= 1e12) {
				t.Errorf("%+v", m)
			}
			seen[m.Part] = true
		}
	})
}

// A history is refused at a place of the file, or gives lives that are positive and damages
// that are finite, in the order of the details.
func FuzzHistory(f *testing.F) {
	file, results := readCar(f, exampleCar)
	run, err := os.ReadFile("../../examples/hillclimb-run.csv")
	if err != nil {
		f.Fatal(err)
	}
	head, _, _ := strings.Cut(string(run), "\n0.")
	d := *file.Duty
	d.Blocks, d.Details = nil, d.Details[:1]
	d.Histories = append(d.Histories[:0:0], d.Histories[0])
	d.Histories[0].BadRows = 2
	f.Add(string(run[:2000]))
	var heading strings.Builder
	for i, c := range d.Histories[0].Columns {
		if i > 0 {
			heading.WriteByte(',')
		}
		heading.WriteString(c.Name)
	}
	for _, rows := range []string{"0,0,0,0\n0.1,0,1,20\n0.2,0.1,-1,21\n", "0;0;0;0\n", "0,0,0,0\n0,0,0,0\n", "1e300,0,0,0\n-1e300,0,0,0\n", "0,nan,0,0\n", "0,0,0\n\n#\n1,9,9,9\n", "0,1e12,1e12,1e12\n1,-1e12,0,0\n", "\"0\",0,0,0\n", "0,0,0,0\n99999999999,0,0,0\n"} {
		f.Add(heading.String() + "\n" + rows)
		f.Add(head + "\n" + rows)
	}
	f.Fuzz(func(t *testing.T, log string) {
		life, err := duty.Find(context.Background(), d, &results, duty.Run{Open: text(log), Stock: stock.List{}, Workers: 1})
		if err != nil {
			placed(t, err)
			return
		}
		if len(life.Rows) == 0 {
			t.Error("no lives")
		}
		for _, r := range life.Rows {
			if !(r.Damage >= 0 && r.Damage <= math.MaxFloat64) || !(r.Unloaded || r.Laps >= 0 && r.Distance >= 0 && r.Inspection >= 0) {
				t.Errorf("%s: damage %v, laps %v", r.Detail, r.Damage, r.Laps)
			}
		}
	})
}

// placed holds an error to a place in the file or in the car file, a text and a remedy that
// no terminal acts on.
func placed(t *testing.T, err error) {
	t.Helper()
	var row *duty.RowFault
	var misfit *duty.Misfit
	switch {
	case errors.As(err, &row):
		if row.File == "" || row.Line < 1 || row.Column < 0 || row.Text == "" || row.Remedy == "" {
			t.Errorf("fault %+v lacks a place, a text or a remedy", row)
		}
	case errors.As(err, &misfit):
		if !strings.HasPrefix(misfit.Path, "duty.") || misfit.Text == "" || misfit.Remedy == "" {
			t.Errorf("fault %+v lacks a place, a text or a remedy", misfit)
		}
	default:
		t.Fatalf("error %v has no place", err)
	}
	if strings.ContainsFunc(err.Error(), func(r rune) bool { return unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) }) {
		t.Errorf("message %q can act on a terminal", err)
	}
}
