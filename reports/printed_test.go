package reports_test

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/cases/carfile/cartest"
	"sixlink/members/check/equation"
	"sixlink/reports"
)

// A reader with a pocket calculator gets the printed result from the printed numbers,
// to the digits shown, on every line of every working of the complete example.
func TestPrintedWorkingEvaluates(t *testing.T) {
	r := complete(t)
	lines := 0
	for corner := range cases.CornerNames {
		for member := range cases.MemberNames {
			for k := 0; k < len(r.Cases); k += 5 {
				text, err := r.Working(corner, member, k)
				if err != nil {
					t.Fatal(err)
				}
				lines += printed(t, string(text))
			}
		}
	}
	if lines < 5000 {
		t.Errorf("only %d lines were evaluated", lines)
	}
}

func complete(t *testing.T) reports.Report {
	t.Helper()
	results := cartest.Run(t, "../examples/hillclimb-pushrod-complete.yaml")
	return reports.Report{Version: "test", File: "car.yaml", SHA256: "0", Results: results}
}

var (
	further = regexp.MustCompile(`^ {4,}= (.*)$`)
	decimal = regexp.MustCompile(`[0-9]+(\.[0-9]+)?`)
)

// printed evaluates each line with numbers put in against the result below it.
func printed(t *testing.T, text string) (n int) {
	t.Helper()
	lines := strings.Split(text, "\n")
	for i := 0; i+1 < len(lines); i++ {
		put, below := further.FindStringSubmatch(lines[i]), further.FindStringSubmatch(lines[i+1])
		if put == nil || below == nil {
			continue
		}
		value, _, _ := strings.Cut(below[1], " ")
		want, err := strconv.ParseFloat(strings.ReplaceAll(value, "−", "-"), 64)
		if err != nil {
			continue // a dash: no bound
		}
		got, err := equation.Evaluate(put[1], nil)
		if err != nil {
			t.Errorf("%v in\n%s\n%s", err, lines[i], lines[i+1])
			continue
		}
		largest := math.Abs(want)
		for _, s := range decimal.FindAllString(put[1], -1) {
			x, _ := strconv.ParseFloat(s, 64)
			largest = math.Max(largest, x)
		}
		if n++; !(math.Abs(got-want) <= 2e-6*math.Abs(want)+1e-6*largest) {
			t.Errorf("%s\nis %.9g, and the working says %s", lines[i], got, value)
		}
	}
	return n
}
