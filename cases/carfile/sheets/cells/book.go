package cells

import (
	"encoding/xml"
	"errors"
	"fmt"
	"path"
	"strings"
)

// Read reads the sheets of a workbook in their order, but for those whose names are to be
// skipped. The error, if there is one, is an *Error.
func Read(src []byte, skip func(name string) bool) ([]Sheet, error) {
	a, err := open(src)
	if err != nil {
		return nil, err
	}
	b, err := a.book()
	if err != nil {
		return nil, err
	}
	left := MaxCells
	var out []Sheet
	for _, entry := range b.sheets {
		if skip(entry.name) {
			continue
		}
		s, err := b.sheet(entry, &left)
		var e *Error
		if errors.As(err, &e) && e.Sheet == "" {
			e.Sheet = entry.name
		}
		if err != nil {
			return nil, err
		}
		out = append(out, s)
	}
	return out, nil
}

// A book is what all sheets share.
type book struct {
	*archive
	sheets  []sheetEntry
	strings []string
	formats []format // of the styles of cells, by index
}

// A sheetEntry is a sheet in the list of a workbook.
type sheetEntry struct {
	name, id, part string
	hidden         bool
}

// The kinds of relation by the last word of their type, which the transitional and the
// strict form of the standard share (ECMA-376-1, 11.3 and 12.3).
const (
	relationBook    = "officeDocument"
	relationStrings = "sharedStrings"
	relationStyles  = "styles"
)

// A relation is what a part says of another one.
type relation struct{ id, kind, target string }

// book reads the list of sheets, the texts and the styles.
func (a *archive) book() (*book, error) {
	root, err := a.relations("")
	if err != nil {
		return nil, err
	}
	main := ""
	for _, r := range root {
		if r.kind == relationBook {
			main = r.target
		}
	}
	switch {
	case main == "":
		return nil, refused("this archive is no workbook", "give a car file, or a workbook saved as .xlsx")
	case strings.HasSuffix(main, ".bin"):
		return nil, refused("this is a workbook in binary form (.xlsb)", "save it as .xlsx")
	}
	b := &book{archive: a}
	if err := b.list(main); err != nil {
		return nil, err
	}
	relations, err := a.relations(main)
	if err != nil {
		return nil, err
	}
	for _, r := range relations {
		switch r.kind {
		case relationStrings:
			err = b.readStrings(r.target)
		case relationStyles:
			err = b.readStyles(r.target)
		}
		if err != nil {
			return nil, err
		}
		for i := range b.sheets {
			if b.sheets[i].id == r.id {
				b.sheets[i].part = r.target
			}
		}
	}
	return b, nil
}

// list reads the names of the sheets.
func (b *book) list(part string) error {
	err := b.walk(part, func(e xml.StartElement, _ *tokens) error {
		switch e.Name.Local {
		case "workbook":
		case "sheet":
			s := sheetEntry{name: attribute(e, "name"), hidden: attribute(e, "state") != "" && attribute(e, "state") != "visible"}
			for _, at := range e.Attr { // r:id, in whatever namespace the strict form has it
				if at.Name.Local == "id" {
					s.id = at.Value
				}
			}
			if b.sheets = append(b.sheets, s); len(b.sheets) > maxSheets {
				return refused(fmt.Sprintf("the workbook has more than %d sheets", maxSheets), "take out those that are not the car's")
			}
		}
		return nil
	})
	if err == nil && len(b.sheets) == 0 {
		return refused("the workbook has no sheets", saveAgain)
	}
	return err
}

// relations reads those of a part; empty: of the archive.
func (a *archive) relations(part string) (out []relation, err error) {
	dir, name := path.Split(part)
	list := dir + "_rels/" + name + ".rels"
	err = a.walk(list, func(e xml.StartElement, _ *tokens) error {
		if e.Name.Local != "Relationship" || strings.EqualFold(attribute(e, "TargetMode"), "External") {
			return nil
		}
		target := attribute(e, "Target")
		if strings.HasPrefix(target, "/") {
			target = strings.TrimPrefix(path.Clean(target), "/")
		} else {
			target = path.Join(dir, target)
		}
		kind := attribute(e, "Type")
		out = append(out, relation{attribute(e, "Id"), kind[strings.LastIndex(kind, "/")+1:], target})
		return nil
	})
	return out, err
}

// attribute returns the value of an attribute without a namespace; empty: there is none.
func attribute(e xml.StartElement, name string) string {
	for _, a := range e.Attr {
		if a.Name.Local == name && a.Name.Space == "" {
			return a.Value
		}
	}
	return ""
}
