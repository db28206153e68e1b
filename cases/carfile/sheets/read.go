package sheets

import (
	"errors"
	"fmt"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"

	"sixlink/cases/carfile"
	"sixlink/cases/carfile/sheets/cells"
)

// Is tells whether a file is a workbook, by its first bytes.
func Is(src []byte) bool { return cells.Is(src) }

// Read reads a car file that is a workbook. The name is that of the file, for messages
// alone. The error, if there is one, is of type carfile.Faults: all that is wrong, in the
// order of the sheets and rows, each with its cell.
// A workbook that names a file of hardpoints is refused: ReadFrom takes both.
func Read(name string, src []byte) (carfile.File, error) { return ReadFrom(name, src, nil) }

// ReadFrom reads a workbook as Read does, with the file of hardpoints that it may name: open
// opens that, by its name in the workbook.
func ReadFrom(name string, src []byte, open carfile.Opener) (carfile.File, error) {
	t, err := read(name, src)
	if err != nil {
		return carfile.File{}, err
	}
	return t.File(open)
}

// Beside returns the names of the files that a workbook takes its hardpoints from; none where
// it cannot be read so far.
func Beside(src []byte) []string {
	t, err := read("", src)
	if err != nil {
		return nil
	}
	return carfile.BesideOf(t.Values())
}

// Values returns the values of a workbook that ReadFrom takes, as a car file would have them.
func Values(name string, src []byte, open carfile.Opener) (*yaml.Node, error) {
	t, err := read(name, src)
	if err != nil {
		return nil, err
	}
	values := carfile.Copy(t.Values()) // what is read from beside goes into the tree
	if _, err := t.File(open); err != nil {
		return nil, err
	}
	return values, nil
}

// read puts the values of the cells together.
func read(name string, src []byte) (*carfile.Tree, error) {
	sheets, err := cells.Read(src, func(name string) bool { return strings.HasPrefix(name, ownMark) })
	var e *cells.Error
	if errors.As(err, &e) {
		at := ""
		if e.Sheet != "" {
			at = e.Sheet + "!" + orFirst(e.Cell)
		}
		f := carfile.Fault{File: name, Cell: at, Text: e.Text, Remedy: e.Remedy}
		return nil, carfile.Faults{f}
	}
	if err != nil {
		return nil, err
	}
	var names []string
	for _, s := range sheets {
		names = append(names, s.Name)
	}
	if len(sheets) == 0 {
		return nil, carfile.Faults{{File: name, Text: "every sheet of the workbook begins with " + ownMark + ", and is not read", Remedy: "name the sheets of the car " + strings.Join(sheetNames(), ", ")}}
	}
	t := carfile.NewTree(name, names)
	r := reader{Tree: t, seen: map[string]string{}}
	for _, table := range []bool{true, false} { // the entries of lists have their names before paths use them
		for _, s := range sheets {
			r.take(s, table)
		}
	}
	return t, nil
}

func orFirst(cell string) string {
	if cell == "" {
		return "A1"
	}
	return cell
}

// A reader puts the values of one workbook into a tree.
type reader struct {
	*carfile.Tree
	seen map[string]string // sheets by the name of their layout
}

// take reads one sheet, if it is a table or not as asked for.
func (r *reader) take(s cells.Sheet, table bool) {
	first := carfile.Cell{Sheet: s.Name, Row: 1, Column: 1}
	at := slices.IndexFunc(layouts, func(l layout) bool { return strings.EqualFold(strings.TrimSpace(s.Name), l.name) })
	if at < 0 {
		if table {
			r.Lost(first, fmt.Sprintf("no sheet of a car is called %q", s.Name), "perhaps "+carfile.Near(s.Name, sheetNames())+"; a sheet of your own that is not to be read begins with "+ownMark)
		}
		return
	}
	l := layouts[at]
	if table != (len(l.columns) > 0) {
		return
	}
	if other, twice := r.seen[l.name]; twice {
		r.Lost(first, "this is the sheet "+l.name+" a second time, after "+other, "put the two together")
		return
	}
	r.seen[l.name] = s.Name
	if s.Hidden {
		r.Lost(first, "the sheet is hidden, and what stands in it would count", "show it, or begin its name with "+ownMark)
		return
	}
	if g := newGrid(r, s, l); g != nil {
		if table {
			g.table()
		} else {
			g.keys()
		}
	}
}
