package reports_test

import "testing"

// The forms of the first example: the engineer waits for all of them together.
func BenchmarkForms(b *testing.B) {
	r := report(b)
	for _, form := range []struct {
		name  string
		write func() ([]byte, error)
	}{{"json", r.JSON}, {"workbook", r.Workbook}, {"page", r.HTML}, {"pack", r.PDF}} {
		b.Run(form.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := form.write(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
