package reports_test

import (
	"strings"
	"testing"
)

// The date that the user gives stands on the page and on the cover of the pack; without
// one there is none on either.
func TestDateOfTheUser(t *testing.T) {
	const date = "2026-02-28"
	r := report(t)
	for _, given := range []string{"", date} {
		r.Date = given
		page, err := r.HTML()
		if err != nil {
			t.Fatal(err)
		}
		cover := pages(t, pack(t, r))[0].text()
		if got := strings.Contains(string(page), "<dt>Date</dt><dd>"+date+"</dd>"); got != (given != "") {
			t.Errorf("date %q on the page: %t", given, got)
		}
		if got := strings.Contains(cover, date); got != (given != "") {
			t.Errorf("date %q on the cover: %t", given, got)
		}
	}
}
