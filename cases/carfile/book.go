package carfile

import (
	"fmt"
	"regexp"
	"strings"
)

// rowsOfSheet is more than the rows of any sheet. A place in a workbook counts the rows of
// all sheets, so that faults sort in the order of the sheets.
const rowsOfSheet = 1 << 21

// A book is the workbook that a car file is.
type book struct {
	sheets []string         // by name, in their order
	texts  map[place]string // what stands in the cells that were looked at
	vacant map[string]place // where the value of a path would stand
}

func newBook(sheets []string) *book {
	return &book{sheets, map[place]string{}, map[string]place{}}
}

// emptyCell is what is wrong with an open number of a list.
const emptyCell = "the cell is empty"

// place is the place of a cell.
func (b *book) place(at Cell) place {
	for i, name := range b.sheets {
		if name == at.Sheet {
			return place{line: (i+1)*rowsOfSheet + at.Row, column: at.Column}
		}
	}
	return place{} // the workbook as a whole
}

// note remembers what stands in a cell.
func (b *book) note(at Cell) place {
	p := b.place(at)
	b.texts[p] = at.Text
	return p
}

// name is the name of a place, such as Members!D7; empty for the workbook as a whole.
func (b *book) name(p place) string {
	sheet := p.line/rowsOfSheet - 1
	if sheet < 0 || sheet >= len(b.sheets) {
		return ""
	}
	name := b.sheets[sheet]
	if strings.ContainsAny(name, " '!-+") {
		name = "'" + strings.ReplaceAll(name, "'", "''") + "'"
	}
	return fmt.Sprintf("%s!%s%d", name, columnName(p.column), p.line%rowsOfSheet)
}

// columnName is the name of a column, such as AB for 28.
func columnName(column int) string {
	name := ""
	for ; column > 0; column = (column - 1) / 26 {
		name = string(rune('A'+(column-1)%26)) + name
	}
	return name
}

// fault places a fault in the workbook, and says what to do in the words of one.
func (b *book) fault(file string, at place, path string, f flaw) Fault {
	return Fault{
		File: file, Line: at.line, Column: at.column, Cell: b.name(at), Snippet: b.texts[at],
		Path: path, Text: f.text, Remedy: b.remedy(f.remedy),
	}
}

// listed is how a remedy shows the numbers of a list in a text.
var listed = regexp.MustCompile(` as \[[^\]]*\]`)

const ownCell = ", each in a cell of its own"

// remedy tells of cells where that of a text tells of brackets.
func (b *book) remedy(text string) string {
	return strings.NewReplacer(
		ownCell+", each in", ownCell+", in",
		"; commas stand between them", "",
		"a list of mappings such as - ", "a row for each, with ",
		", without quotation marks", "",
		"take the key out", "empty the cell",
	).Replace(listed.ReplaceAllString(text, ownCell))
}

// rowName names the place of a line for people.
func (s source) rowName(line int) string {
	if s.book == nil {
		return fmt.Sprintf("line %d", line)
	}
	sheet := line/rowsOfSheet - 1
	return fmt.Sprintf("row %d of the sheet %s", line%rowsOfSheet, s.book.sheets[min(max(sheet, 0), len(s.book.sheets)-1)])
}

// vacancy is the place for a key that a mapping misses: in a workbook its empty cell, if it
// has one.
func (s source) vacancy(it *item, k *Key) place {
	if s.book != nil {
		if p, ok := s.book.vacant[inside(it.path, k.Name)]; ok {
			return p
		}
	}
	return it.place
}
