package reports

import (
	"github.com/xuri/excelize/v2"
)

// Workbook returns the sizing as a workbook: a cover with the caution, the members before
// and after, how the tubes were found, and then the sheets of check for the car with the
// chosen tubes. The same report gives the same bytes.
func (s Sizes) Workbook() ([]byte, error) {
	r := s.report()
	r.Car.Notes = "With the tubes chosen by size: " + s.massWords() + ". " + r.Car.Notes
	b := &book{file: excelize.NewFile()}
	defer b.file.Close()
	b.makeStyles()
	b.cover(r, false)
	for _, t := range s.Tables() {
		b.sheet(r, t)
	}
	return b.finish(r.title(), "The lightest stock tubes of the members", s.Version)
}
