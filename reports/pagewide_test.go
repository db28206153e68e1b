package reports_test

import (
	"testing"

	"sixlink/reports"
)

// drawingsFit holds that no drawing is cut off at the right of its frame, in windows from that of
// a small tablet on; below, a drawing scrolls in its frame so that its words stay legible.
func drawingsFit(t *testing.T, b *browser, r reports.Report) {
	for _, width := range []int64{700, 1000, 1088, 1100, 1180, 1215, 1216, 1280, 1600} {
		b.open(t, r, width, "light")
		const cut = `Array.from(document.querySelectorAll('.view')).filter(v => v.offsetWidth > 0 && v.scrollWidth > v.clientWidth).length`
		if n := eval[int](t, b, cut); n > 0 {
			t.Errorf("at %d px %d drawings are cut off", width, n)
		}
	}
}
