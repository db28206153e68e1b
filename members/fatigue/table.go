package fatigue

import (
	"encoding/csv"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode"
)

// A row is one line of a table, cell by column; its first fault stays in it.
type row struct {
	cells map[string]string
	fault error
}

// readTable reads a table with these columns and makes a T of each row. Every row has a
// source, and from_memory says yes or no.
func readTable[T any](text string, columns []string, of func(*row) T) (out []T, err error) {
	in := csv.NewReader(strings.NewReader(text))
	in.Comment = '#'
	lines, err := in.ReadAll()
	if err != nil {
		return nil, err
	}
	columns = append(slices.Clone(columns), "source", "from_memory", "remark")
	if len(lines) < 2 || !slices.Equal(lines[0], columns) {
		return nil, fmt.Errorf("heading and rows are wanted: write the heading %q", columns)
	}
	for _, cells := range lines[1:] {
		r := &row{cells: map[string]string{}}
		for i, name := range columns {
			r.cells[name] = strings.TrimSpace(cells[i])
		}
		made := of(r)
		if r.source(); r.fault != nil {
			return nil, fmt.Errorf("%s: %w", cells[0], r.fault)
		}
		out = append(out, made)
	}
	return out, nil
}

func (r *row) refuse(format string, args ...any) {
	if r.fault == nil {
		r.fault = fmt.Errorf(format, args...)
	}
}

func (r *row) text(column string) string {
	if r.cells[column] == "" {
		r.refuse("%s is empty: fill it in", column)
	}
	return r.cells[column]
}

// number reads a finite number; an empty cell is 0.
func (r *row) number(column string) float64 {
	if r.cells[column] == "" {
		return 0
	}
	v, err := strconv.ParseFloat(r.cells[column], 64)
	if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
		r.refuse("%s %q is no finite number: write one", column, r.cells[column])
	}
	return v
}

// positive reads a number that must be there and above 0.
func (r *row) positive(column string) float64 {
	v := r.number(column)
	if !(v > 0) {
		r.refuse("%s %q is not above 0: write a number", column, r.cells[column])
	}
	return v
}

// negative reads a number that must be there and below 0.
func (r *row) negative(column string) float64 {
	v := r.number(column)
	if !(v < 0) {
		r.refuse("%s %q is not below 0: write a number", column, r.cells[column])
	}
	return v
}

// source returns the source of the row, and that it is from memory where so.
func (r *row) source() string {
	source := r.text("source")
	switch r.text("from_memory") {
	case "yes":
		return source + ", from memory"
	case "no":
		return source
	}
	r.refuse("from_memory %q: write yes or no", r.cells["from_memory"])
	return source
}

// An UnknownError is the error for a name that a table does not have.
type UnknownError struct {
	What, Name string   // "detail", as it was asked for
	Names      []string // those of the table
}

func (e *UnknownError) Error() string {
	return fmt.Sprintf("%s %q is not known: write one of %s", e.What, e.Name, strings.Join(e.Names, ", "))
}

// find returns the row of a name, compared without case, spaces and punctuation.
func find[T any](what, name string, rows []T, nameOf func(T) string) (T, error) {
	var names []string
	for _, r := range rows {
		if plain(nameOf(r)) == plain(name) {
			return r, nil
		}
		names = append(names, nameOf(r))
	}
	var none T
	return none, &UnknownError{what, name, names}
}

func plain(name string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return unicode.ToLower(r)
		}
		return -1
	}, name)
}
