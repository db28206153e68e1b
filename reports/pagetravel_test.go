package reports_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"sixlink/reports"
)

// Law: a slider at another place is another position, said in words as the curves have it,
// and back at the place drawn everything is as it was; the other slider goes back by itself.
func sliders(t *testing.T, b *browser, _ reports.Report) {
	r := exampleRun(t, "hillclimb-pushrod-travel.yaml")
	b.open(t, r, 1280, "light")
	state := func() (drawing, says string) {
		return eval[string](t, b, `document.querySelector(".travel .view").innerHTML`), eval[string](t, b, `document.querySelector(".travel .position").textContent`)
	}
	slide := func(which, to int) {
		eval[chromedp.Void](t, b, fmt.Sprintf(`{ const s = document.querySelectorAll(".travel input[type=range]")[%d]; s.value = "%d"; s.dispatchEvent(new Event("input", {bubbles: true})); }`, which, to))
	}
	drawn, said := state()
	seen := map[string]bool{drawn: true}
	for _, x := range []struct {
		which, to int
		says      string
	}{
		{0, 0, "travel −30 mm, rack 0 mm: "}, {0, 20, "travel 30 mm, rack 0 mm: "}, {1, 0, "travel 0 mm, rack −20 mm: "}, {1, 8, "travel 0 mm, rack 20 mm: "},
	} {
		slide(x.which, x.to)
		now, says := state()
		if seen[now] || !strings.HasPrefix(says, x.says) {
			t.Errorf("slider %d at %d: drawn as before %t, says %q, want %q", x.which, x.to, seen[now], says, x.says)
		}
		if other := eval[string](t, b, fmt.Sprintf(`document.querySelectorAll(".travel input[type=range]")[%d].value`, 1-x.which)); other != []string{"4", "10"}[x.which] {
			t.Errorf("the other slider stands at %s", other)
		}
		seen[now] = true
	}
	slide(0, 10)
	if now, says := state(); now != drawn || says != said {
		t.Errorf("back at the place drawn the page says %q, at first %q; drawn alike %t", says, said, now == drawn)
	}
	b.quiet(t)
}

// A page of a car that says nothing of its motion has no travel, and none is in its facts.
func TestPageWithoutTravel(t *testing.T) {
	for file, want := range map[string]bool{"hillclimb-pushrod.yaml": false, "hillclimb-pushrod-travel.yaml": true} {
		page, err := exampleRun(t, file).HTML()
		if err != nil {
			t.Fatal(err)
		}
		for _, part := range []string{`id="travel"`, `"travel":[`} {
			if got := strings.Contains(string(page), part); got != want {
				t.Errorf("%s: %s is there: %t", file, part, got)
			}
		}
	}
}
