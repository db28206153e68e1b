package reports

import (
	"bytes"
	"fmt"
	"io"

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
	b.cover(r)
	for _, t := range s.Tables() {
		b.sheet(r, t)
	}
	b.do(b.file.SetDocProps(&excelize.DocProperties{
		Title: r.title(), Subject: "The lightest stock tubes of the members", Description: Caution,
		Creator: "sixlink " + s.Version, LastModifiedBy: "sixlink", Created: fixedDate, Modified: fixedDate,
	}))
	b.do(b.file.SetAppProps(&excelize.AppProperties{Application: "sixlink"}))
	if b.err != nil {
		return nil, fmt.Errorf("workbook: %w", b.err)
	}
	var buf bytes.Buffer
	b.file.SetZipWriter(func(w io.Writer) excelize.ZipWriter { return &orderedZip{out: w} })
	if err := b.file.Write(&buf); err != nil {
		return nil, fmt.Errorf("workbook: %w", err)
	}
	return buf.Bytes(), nil
}
