package sheets

import (
	"sixlink/cases/carfile"
	"sixlink/cases/carfile/guide"
)

// A Page is a sheet to be written: a row of headings and the rows below it.
type Page struct {
	Name, Title string
	Heads       []Head
	Rows        []Row
	Spare       int // empty rows that are ready to be filled in
	Lead        int // columns that say what the rows are about
}

// A Head is the heading of a column.
type Head struct {
	Text  string
	Note  string   // what the values below it are
	Words []string // of which the values are one, each; empty: anything
	Kind  Kind     // of the values, for the look of cells that are still empty
}

// A Row is a row of values, one for each heading.
type Row struct {
	Remark bool // its first text is not read, and it has no others
	Values []Value
}

// A Kind is what a value is.
type Kind int

// The kinds.
const (
	Nothing Kind = iota
	Number       // Text is the shortest decimal that gives it
	Text
	Truth // Text is true or false
	About // words for the reader, which are not read
)

// A Value is what stands in one cell.
type Value struct {
	Kind  Kind
	Text  string
	Words []string // of which it is one; empty: anything
	Free  bool     // another word may stand there too
}

// headsOf are the headings of a sheet.
func (l layout) heads() (out []Head) {
	if len(l.columns) == 0 {
		return []Head{
			{Text: keyHead, Note: "the path of a key; a row that begins with " + ownMark + " is not read", Kind: Text},
			{Text: valueHead, Note: "its value; an empty cell leaves the key out. Numbers of a list have semicolons between them: 0; 45; -45"},
			{Text: unitHead, Note: "the unit of the value; where it is empty, that in which the next column states the limits", Kind: Text},
			{Text: aboutHead, Note: "not read", Kind: About},
		}
	}
	for _, lead := range l.lead {
		out = append(out, Head{Text: lead.name, Note: lead.about, Words: lead.words, Kind: Text})
	}
	for _, c := range l.columns {
		out = append(out, Head{Text: c.heading(), Note: guide.About(c.key), Words: words(c.key), Kind: kindOf(c.key, c.part)})
	}
	return out
}

// words are those of which the value of a key is one; none: anything.
func words(k *carfile.Key) []string {
	switch k.Kind {
	case carfile.Choice:
		return k.Choices
	case carfile.Flag:
		return []string{"TRUE", "FALSE"}
	}
	return nil
}

// kindOf is the kind of the value of a key, or of one number of it.
func kindOf(k *carfile.Key, part int) Kind {
	switch k.Kind {
	case carfile.Number:
		return Number
	case carfile.Numbers, carfile.Vector:
		if part >= 0 {
			return Number
		}
	case carfile.Flag:
		return Truth
	}
	return Text
}
