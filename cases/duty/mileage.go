package duty

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"sixlink/members/check"
)

// A Mileage is the distance that one part has run so far, and what is left of its life.
type Mileage struct {
	Part   string // as the log has it: part number, and after a slash the number of the piece
	Number string // of the car file

	Run       float64 // km so far
	Since     float64 // km since it was inspected last, or since it was new
	Last      string  // date of its last line
	Released  float64 // km: the least of its details; NaN: not judged
	Left      float64 // km
	Next      float64 // km of the next event; 0: none asked for
	Interval  float64 // km between inspections
	Governing int     // in Life.Rows; −1: none
	Due       Due
}

// A Due says what is to be done with a part before it runs the next event.
type Due string

// What can be due. Replace: its life is used up, or would be in the event.
const (
	Nothing Due = ""
	Inspect Due = "inspect before the event"
	Replace Due = "replace before the event"
	Unknown Due = "no life is known"
	NoEntry Due = "no entry in the log"
)

// Inspected is what a line of the log says of an inspection.
const Inspected = "inspected"

// mileageColumns are the heading of the log.
var mileageColumns = []string{"part", "date", "km", "event"}

// isDate tells whether a text is a day of the calendar as ISO 8601 writes it.
func isDate(text string) bool {
	_, err := time.Parse(time.DateOnly, text)
	return err == nil
}

// The limits of a log: lines, bytes, and parts, each of which is a row of the reports.
const (
	maxMileage      = 1_000_000
	maxMileageBytes = 64 << 20
	maxParts        = 10_000
)

// ReadMileage reads the log that the user keeps: a line for each part and event, with the
// km run in it. The error is a *RowFault or one of reading.
func ReadMileage(name string, in io.Reader) ([]Mileage, error) {
	read := &io.LimitedReader{R: in, N: maxMileageBytes + 1}
	r := csv.NewReader(read)
	r.Comment, r.TrimLeadingSpace = '#', true
	head, err := r.Read()
	if err != nil || !slices.Equal(head, mileageColumns) {
		return nil, &RowFault{File: name, Line: 1, Text: "the heading is not " + strings.Join(mileageColumns, ","), Remedy: "give a CSV file with that heading, a line for each part and event"}
	}
	var out []Mileage
	places := map[string]int{} // of the parts in out
	for lines := 0; ; lines++ {
		row, err := r.Read()
		switch {
		case read.N <= 0:
			return nil, &RowFault{File: name, Line: lines + 2, Text: fmt.Sprintf("the file has more than %d MB", maxMileageBytes>>20), Remedy: "give the log of one car"}
		case errors.Is(err, io.EOF):
			return out, nil
		}
		var wrong *csv.ParseError
		if errors.As(err, &wrong) {
			return nil, &RowFault{File: name, Line: wrong.Line, Column: wrong.Column, Text: wrong.Err.Error(), Remedy: "write part,date,km,event"}
		}
		if err != nil {
			return nil, err
		}
		if lines >= maxMileage {
			line, _ := r.FieldPos(0)
			return nil, &RowFault{File: name, Line: line, Text: fmt.Sprintf("the log has more than %d lines", maxMileage), Remedy: "give the log of one car"}
		}
		if out, err = addLine(out, places, name, r, row); err != nil {
			return nil, err
		}
	}
}

// addLine adds one line of the log to the mileages.
func addLine(all []Mileage, places map[string]int, name string, r *csv.Reader, row []string) ([]Mileage, error) {
	refuse := func(field int, text, remedy string) error {
		line, column := r.FieldPos(field)
		return &RowFault{File: name, Line: line, Column: column, Text: text, Remedy: remedy}
	}
	part, date, event := strings.TrimSpace(row[0]), strings.TrimSpace(row[1]), strings.TrimSpace(row[3])
	km, err := strconv.ParseFloat(strings.TrimSpace(row[2]), 64)
	switch {
	case part == "":
		return nil, refuse(0, "no part number", "give the part number of the car file, with /1, /2 for its pieces")
	case !isDate(date):
		return nil, refuse(1, fmt.Sprintf("%q is no date of the calendar", clip(date)), "write it as 2026-05-31")
	case err != nil || !(km >= 0 && km <= 1e6):
		return nil, refuse(2, fmt.Sprintf("%q is no distance from 0 to 1000000 km", clip(row[2])), "give the km run in that event, with a decimal point")
	}
	at, known := places[part]
	if !known && len(all) == maxParts {
		return nil, refuse(0, fmt.Sprintf("the log has more than %d parts", maxParts), "give the log of one car")
	}
	if !known {
		number, _, _ := strings.Cut(part, "/")
		at, all = len(all), append(all, Mileage{Part: part, Number: strings.TrimSpace(number), Governing: -1})
	}
	places[part] = at
	m := &all[at]
	if date < m.Last {
		return nil, refuse(1, fmt.Sprintf("%s of %s comes after %s", date, clip(part), m.Last), "keep the lines of a part in the order of their dates")
	}
	m.Last, m.Run, m.Since = date, m.Run+km, m.Since+km
	if strings.EqualFold(event, Inspected) {
		m.Since = 0
	}
	return all, nil
}

// Remaining fills what is left of each part, and what is due before an event of so many
// km: of a number that the car has at several places the least life counts. Numbers of the
// car that the log does not have follow, their run being NaN.
func (l *Life) Remaining(log []Mileage, next float64) []Mileage {
	out := slices.Clone(log)
	for _, number := range l.Parts {
		if !slices.ContainsFunc(log, func(m Mileage) bool { return m.Number == number }) {
			out = append(out, Mileage{Part: number, Number: number, Run: math.NaN(), Since: math.NaN(), Governing: -1, Due: NoEntry})
		}
	}
	for i := range out {
		l.remain(&out[i], next)
	}
	return out
}

// remain fills what is left of one part.
func (l *Life) remain(m *Mileage, next float64) {
	m.Next, m.Released, m.Left, m.Interval = next, math.NaN(), math.NaN(), math.NaN()
	for k := range l.Rows {
		r := &l.Rows[k]
		if r.Part == m.Number && (m.Governing < 0 || check.Lower(r.Distance, m.Released)) {
			m.Governing, m.Released, m.Interval = k, r.Distance, r.Inspection
		}
	}
	m.Left = m.Released - m.Run
	switch {
	case m.Due == NoEntry:
	case m.Governing < 0 || math.IsNaN(m.Released): // the duty puts no load on it
		m.Due = Unknown
	case !(m.Left > 0 && m.Left >= next):
		m.Due = Replace
	case !(m.Since+next <= m.Interval):
		m.Due = Inspect
	}
}
