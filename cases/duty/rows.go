package duty

import (
	"bytes"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// A RowFault is the error for a row of a file that cannot be taken.
type RowFault struct {
	File         string
	Line, Column int // from 1; columns count characters; 0: the row as a whole
	Text, Remedy string
}

func (f *RowFault) Error() string {
	at := fmt.Sprintf("%s:%d", f.File, f.Line)
	if f.Column > 0 {
		at += fmt.Sprintf(":%d", f.Column)
	}
	return at + ": " + f.Text + ": " + f.Remedy
}

// A form is how the rows of a file are laid out.
type form struct {
	separator byte
	wanted    []int // for each column of the file up to the last one needed: its place in a row, or −1
	names     []string
	factors   []float64
	speed     int // place of the speed in a row; −1: there is none
	heads     int // how many columns the heading names
}

// row reads the numbers of a line. Of a fault it says at which byte it stands.
func (f *form) row(line []byte, out []float64) (at int, text, remedy string) {
	rest, begin := line, 0
	for i, place := range f.wanted {
		if begin > len(line) {
			return len(line), fmt.Sprintf("the row ends before column %q", clip(f.names[last(f.wanted, i)])), "complete the row, or leave it out"
		}
		cell := rest
		if end := bytes.IndexByte(rest, f.separator); end >= 0 {
			cell, rest = rest[:end], rest[end+1:]
		} else {
			rest = nil
		}
		if place >= 0 {
			x, ok := parse(cell)
			if !ok {
				text, remedy = f.wrong(cell, f.names[i])
				return begin, text, remedy
			}
			x *= f.factors[place]
			switch {
			case !(math.Abs(x) <= mostNumber):
				return begin, fmt.Sprintf("%q of column %q is larger than any load", clip(string(cell)), clip(f.names[i])), "correct the number, or its unit in the car file"
			case place == f.speed && !(x >= 0 && x <= mostSpeed):
				return begin, fmt.Sprintf("%q of column %q is a speed of %.4g m/s, outside 0 to %d m/s", clip(string(cell)), clip(f.names[i]), x, mostSpeed), "correct the row, or unit and scale of the column in the car file"
			}
			out[place] = x
		}
		begin += len(cell) + 1
	}
	return f.beyond(rest, begin)
}

// beyond refuses cells for which the heading has no column, unless nothing is in them or
// a text in quotation marks may hold the separator.
func (f *form) beyond(rest []byte, begin int) (at int, text, remedy string) {
	extra := len(f.wanted) - f.heads
	if rest != nil {
		extra += 1 + bytes.Count(rest, []byte{f.separator})
	}
	if extra <= 0 || bytes.IndexByte(rest, '"') >= 0 {
		return 0, "", ""
	}
	for i := f.heads - len(f.wanted); i > 0; i-- {
		next := bytes.IndexByte(rest, f.separator) + 1
		rest, begin = rest[next:], begin+next
	}
	if len(bytes.Trim(rest, " \t"+string(f.separator))) == 0 {
		return 0, "", ""
	}
	return begin, fmt.Sprintf("the row has %d cells, and the heading names %d columns", f.heads+extra, f.heads), "correct the row; numbers have a decimal point, and no separator in them"
}

// mostSpeed is that of load cases, m/s.
const mostSpeed = 150

// mostNumber bounds what a row may hold, in the unit of its channel: no car comes near.
const mostNumber = 1e12

// last returns the first column from i on that is wanted.
func last(wanted []int, i int) int {
	for wanted[i] < 0 {
		i++
	}
	return i
}

// wrong says what is the matter with a cell.
func (f *form) wrong(cell []byte, name string) (text, remedy string) {
	s := strings.TrimSpace(string(cell))
	column := fmt.Sprintf("column %q", clip(name))
	switch {
	case s == "":
		return column + " is empty", "complete the row, or allow bad_rows in the car file"
	case f.separator != ',' && strings.Count(s, ",") > 1, f.separator != ';' && strings.Contains(s, ";"), f.separator != '\t' && strings.Contains(s, "\t"):
		return fmt.Sprintf("%q of %s holds several cells, and the separator of the heading is %q", clip(s), column, f.separator), "separate heading and rows alike"
	case strings.Contains(s, ",") && !strings.ContainsAny(s, "abcdefghijklmnopqrstuvwxyz"):
		return fmt.Sprintf("%q of %s has a decimal comma", clip(s), column), "write numbers with a point"
	}
	if x, err := strconv.ParseFloat(s, 64); err == nil && (math.IsNaN(x) || math.IsInf(x, 0)) {
		return fmt.Sprintf("%q of %s is not a finite number", clip(s), column), "correct the row, or allow bad_rows in the car file"
	}
	return fmt.Sprintf("%q of %s is not a number", clip(s), column), "write a decimal number"
}

// tens are the powers of ten that a float64 holds exactly.
var tens = [...]float64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19, 1e20, 1e21, 1e22}

// parse reads a decimal number. Where the digits and the power of ten are both exact their
// quotient or product is the nearest float64; else the standard library reads it.
func parse(cell []byte) (float64, bool) {
	for len(cell) > 0 && (cell[0] == ' ' || cell[0] == '\t') {
		cell = cell[1:]
	}
	for len(cell) > 0 && (cell[len(cell)-1] == ' ' || cell[len(cell)-1] == '\t') {
		cell = cell[:len(cell)-1]
	}
	i, negative := 0, false
	if len(cell) > 0 && (cell[0] == '-' || cell[0] == '+') {
		negative, i = cell[0] == '-', 1
	}
	var digits uint64
	read, after, point := 0, 0, false
	for ; i < len(cell); i++ {
		c := cell[i]
		if d := c - '0'; d <= 9 {
			digits = digits*10 + uint64(d)
			read++
			if point {
				after++
			}
		} else if c == '.' && !point {
			point = true
		} else {
			break
		}
	}
	if i < len(cell) || read == 0 || read > 18 || digits >= 1<<53 || after > 22 {
		return parseSlow(cell, read)
	}
	x := float64(digits) / tens[after]
	if negative {
		x = -x
	}
	return x, true
}

func parseSlow(cell []byte, read int) (float64, bool) {
	if read == 0 || bytes.ContainsAny(cell, "_xXpPnN") {
		return 0, false
	}
	x, err := strconv.ParseFloat(string(cell), 64)
	return x, err == nil && !math.IsInf(x, 0)
}
