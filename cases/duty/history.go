package duty

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"

	"sixlink/cases"
	"sixlink/members/fatigue/count"
)

// pieceSize is how much of a file is carried through at a time, bytes. It is fixed, so that
// the sums do not depend on the number of cores.
var pieceSize = 1 << 20

// A Log is what was read of a history.
type Log struct {
	Name, File string
	Rows       int64
	Start, End float64 // times of the first and last row, s
	Usual      float64 // step: the median of the first ones, s
	Longest    float64 // step, s
	Allowed    float64 // longest step allowed, s
	Bad        int     // rows left out
	FirstBad   string  // the first of them; empty: none
	Unmeasured []int   // corners of which a log of forces has none
	Peaks      []Peak  // lowest reserve factors of members and rockers

	Distance float64                   // km: the speed over the time; NaN: the log has no speed
	Vertical [cases.NumCorners]float64 // mean vertical force of the wheel, N; NaN: the log has none
}

// A Source opens the file of a history; its size is in bytes, 0 where it is not known.
type Source func(file string) (r io.ReadCloser, size int64, err error)

// A reading is a history in the reading.
type reading struct {
	plan    *plan
	history *History
	in      *bufio.Reader
	line    int // lines joined so far
	handed  int // lines handed out so far
	form    form
	log     Log
	carry   []byte // the beginning of a line whose end is not read yet
	ended   bool

	counters []*count.Counter
	peaks    [][2]peak // of each watched gauge: lowest and highest
	tallies  []tally
	judges   []judge
	spectra  []spectra // of the workers, and of what spans two pieces
	areas    []area    // of the columns
}

func (r *reading) fault(f RowFault, line int) error {
	f.File, f.Line = r.history.File, line
	return &f
}

// next returns the next piece; nil: the file is at its end.
func (r *reading) next() ([]byte, error) {
	if r.ended {
		return nil, nil
	}
	buf := make([]byte, pieceSize)
	n := copy(buf, r.carry)
	m, err := io.ReadFull(r.in, buf[n:])
	buf = buf[:n+m]
	if err != nil {
		r.ended = true
		if !errors.Is(err, io.EOF) && !errors.Is(err, io.ErrUnexpectedEOF) {
			return nil, err
		}
		return buf, nil
	}
	end := bytes.LastIndexByte(buf, '\n')
	if end < 0 {
		f := &RowFault{File: r.history.File, Line: r.handed + 1, Text: fmt.Sprintf("the line is longer than %d bytes", pieceSize), Remedy: "give a CSV file with a line for each row"}
		return nil, f
	}
	r.handed += bytes.Count(buf[:end+1], []byte{'\n'})
	r.carry = append(r.carry[:0], buf[end+1:]...)
	return buf[:end+1], nil
}

// steps finds the first time and the usual step in the first piece, and with them the
// longest step allowed.
func (r *reading) steps(text []byte) (start float64) {
	row, times := make([]float64, len(r.history.Columns)), []float64{}
	for line := range bytes.Lines(text) {
		line = bytes.TrimRight(line, "\r\n")
		if passed(line) {
			continue
		}
		if _, fault, _ := r.form.row(line, row); fault == "" {
			times = append(times, row[0])
		}
		if len(times) > usualOf {
			break
		}
	}
	var steps []float64
	for i := range len(times) - 1 {
		if step := times[i+1] - times[i]; step > 0 {
			steps = append(steps, step)
		}
	}
	if len(steps) == 0 {
		r.log.Allowed = math.Inf(1)
		return append(times, 0)[0]
	}
	slices.Sort(steps)
	r.log.Usual = steps[(len(steps)-1)/2]
	if r.log.Allowed = r.history.LongStep; r.log.Allowed == 0 {
		r.log.Allowed = LongSteps * r.log.Usual
	}
	return times[0]
}

// usualOf is of how many steps at the beginning of a file the median is the usual one.
const usualOf = 100

// join adds a piece to those before it.
func (r *reading) join(c *counted) error {
	for _, b := range c.bad {
		if r.log.Bad++; r.log.Bad == 1 {
			r.log.FirstBad = r.fault(b, r.line+b.Line).Error()
		}
		if r.log.Bad > r.history.BadRows {
			return r.fault(b, r.line+b.Line)
		}
	}
	if c.rows > 0 && r.log.Rows > 0 {
		if f := stepFault(c.first-r.log.End, r.log.End, r.log.Allowed); f != nil {
			return r.fault(*f, r.line+c.firstLine)
		}
		r.log.Longest = max(r.log.Longest, c.first-r.log.End)
	}
	if c.fault != nil {
		return r.fault(*c.fault, r.line+c.fault.Line)
	}
	r.line += c.lines
	if c.rows == 0 {
		return nil
	}
	if r.log.Rows == 0 {
		r.log.Start = c.first
	}
	r.areas = joinAreas(r.areas, c.areas, c.first-r.log.End)
	r.log.Rows, r.log.End, r.log.Longest = r.log.Rows+int64(c.rows), c.last, max(r.log.Longest, c.longest)
	r.joinPeaks(c)
	for s := range c.tallies {
		r.tallies[s].join(&c.tallies[s])
	}
	for g, residue := range c.residues {
		r.counters[g].Follow(residue)
	}
	return nil
}

// cycle takes a cycle of the joined history; its positions are ticks.
func (r *reading) cycle(g int, c count.Cycle) {
	from, to := float64(c.From)/ticks, float64(c.To)/ticks
	for _, s := range r.plan.gauges[g].slots {
		r.judges[r.plan.slots[s].judge].harm(&r.tallies[s], &c, from, to)
	}
}
