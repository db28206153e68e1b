package sheets

import (
	"regexp"
	"strings"
	"unicode"

	"sixlink/cases/carfile"
	"sixlink/cases/carfile/sheets/cells"
)

// A flaw is what is wrong with one cell, and what to do.
type flaw struct{ text, remedy string }

// A target is what a cell gives a value to.
type target struct {
	key  *carfile.Key
	part int // of a list of numbers; −1: the key itself
	path string
	unit string // that of its heading or row; empty: that of a bare number
}

var (
	bareNumber = regexp.MustCompile(`^[+-]?(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][+-]?[0-9]+)?$`)
	likeNumber = regexp.MustCompile(`^[+−-]?[0-9][0-9., '\x{a0}\x{202f}]*$`)
)

// unusable says why a cell has no value, whatever it is for.
func unusable(c cells.Cell) *flaw {
	switch c.Kind {
	case cells.Failed:
		return &flaw{"the cell holds the error " + c.Text, "mend the formula, or put the value in its place"}
	case cells.Unknown:
		return &flaw{"the formula has no result in the file", "open the workbook in a spreadsheet program, let it calculate, and save it"}
	case cells.Date:
		return &flaw{"the cell holds a date or a time", "give the cell the format Number, or Text for a text such as 1/4-28, and type the value again"}
	case cells.Damaged:
		return &flaw{"the cell holds what is no value", "type the value again"}
	}
	return nil
}

// scalars returns the value of a cell as it would stand in a car file; no scalar is an
// empty mapping or list.
func (t target) scalars(c cells.Cell) ([]carfile.Scalar, *flaw) {
	if f := unusable(c); f != nil {
		return nil, f
	}
	var one carfile.Scalar
	var f *flaw
	switch k := t.key; {
	case k.Kind == carfile.Number || t.part >= 0:
		one, f = t.number(c)
	case k.Kind == carfile.Numbers || k.Kind == carfile.Vector:
		return t.numbers(c)
	case k.Kind == carfile.Mapping || k.Kind == carfile.List:
		return nil, t.nothing(c)
	case t.unit != "":
		f = &flaw{k.Name + " has no unit " + t.unit, "empty the unit"}
	case k.Kind == carfile.Flag:
		one, f = flag(c)
	default:
		one, f = word(k, c)
	}
	return []carfile.Scalar{one}, f
}

// nothing refuses a value where keys of a mapping or list are needed, but for {} and [],
// which are one without any.
func (t target) nothing(c cells.Cell) *flaw {
	k := t.key
	switch s := strings.ReplaceAll(c.Text, " ", ""); {
	case k.Kind == carfile.Mapping && s == "{}", k.Kind == carfile.List && s == "[]":
		return nil
	case k.Kind == carfile.List:
		return &flaw{"this is a list of entries, and no single value", "give the keys of its entries rows of their own, such as " + t.path + "[0]." + k.Keys[0].Name}
	}
	return &flaw{"this is a mapping of keys, and no single value", "give its keys rows of their own, such as " + leaves(k, t.path)[0]}
}

// number reads a single number.
func (t target) number(c cells.Cell) (carfile.Scalar, *flaw) {
	d := t.key.Dimension
	text := strings.TrimSpace(c.Text)
	switch {
	case c.Kind == cells.Truth:
		return carfile.Scalar{}, &flaw{"the cell holds " + strings.ToUpper(c.Text) + ", and no number", "type a number"}
	case c.Kind == cells.Text && (bareNumber.MatchString(text) || likeNumber.MatchString(text)):
		return carfile.Scalar{}, &flaw{
			`"` + text + `" is text and no number`,
			"give the cell the format Number and type it again, with the decimal sign of your spreadsheet program",
		}
	case c.Kind == cells.Text:
		return carfile.Scalar{Text: text}, nil
	case c.Percent && (d != carfile.Share || t.unit != ""):
		return carfile.Scalar{}, &flaw{"the cell shows a percentage, and the value that counts is " + c.Text, "give the cell the format Number"}
	}
	if c.Misleads {
		return carfile.Scalar{}, &flaw{"the format of the cell shows another number, or none, and the one that counts is " + c.Text, "give the cell the format Number"}
	}
	if f := t.shownUnit(c); f != nil {
		return carfile.Scalar{}, f
	}
	return t.measured(c.Text), nil
}

// measured puts the unit of the heading or row behind a number, unless it is that of a
// bare one.
func (t target) measured(digits string) carfile.Scalar {
	if t.unit == "" || carfile.SameUnit(t.unit, t.key.Dimension.Bare()) {
		return carfile.Scalar{Text: digits, Literal: true}
	}
	return carfile.Scalar{Text: digits + " " + t.unit}
}

// shownUnit refuses a number beside which the format of its cell writes another unit than
// the one that counts.
func (t target) shownUnit(c cells.Cell) *flaw {
	counts := t.unit
	if counts == "" {
		counts = t.key.Dimension.Bare()
	}
	if !strings.ContainsFunc(c.Shown, func(r rune) bool { return unicode.IsLetter(r) || r == '°' || r == '′' || r == '″' }) || carfile.SameUnit(c.Shown, counts) {
		return nil
	}
	in := "as a plain number"
	if counts != "" {
		in = "in " + counts
	}
	return &flaw{
		`the format of the cell writes "` + c.Shown + `" beside the number, which is read ` + in,
		"put the unit into the heading or the column unit, or take it out of the format of the cell",
	}
}

// numbers reads a list of numbers with semicolons between them, or a single one.
func (t target) numbers(c cells.Cell) (out []carfile.Scalar, f *flaw) {
	if c.Kind != cells.Text {
		one, f := t.number(c)
		return []carfile.Scalar{one}, f
	}
	if !strings.Contains(c.Text, ";") && strings.Contains(c.Text, ",") {
		return nil, &flaw{"no semicolons stand between the numbers", "write them as 0; 45; -45, decimals with a point"}
	}
	for _, item := range strings.Split(strings.Trim(strings.TrimSpace(c.Text), "[]"), ";") {
		if item = strings.TrimSpace(item); bareNumber.MatchString(item) {
			out = append(out, t.measured(item))
		} else {
			out = append(out, carfile.Scalar{Text: item})
		}
	}
	return out, nil
}

// flag reads true or false.
func flag(c cells.Cell) (carfile.Scalar, *flaw) {
	text := strings.ToLower(strings.TrimSpace(c.Text))
	if c.Kind != cells.Number && (text == "true" || text == "false") {
		return carfile.Scalar{Text: text, Literal: true}, nil
	}
	return carfile.Scalar{}, &flaw{`"` + c.Text + `" is neither true nor false`, "write TRUE or FALSE"}
}

// surest are the digits of a number that every program shows as they were typed.
const surest = 15

// word reads a text, for which a number may stand whose digits are sure.
func word(k *carfile.Key, c cells.Cell) (carfile.Scalar, *flaw) {
	switch {
	case c.Kind == cells.Truth:
		return carfile.Scalar{}, &flaw{"the cell holds " + strings.ToUpper(c.Text) + ", and no text", "give the cell the format Text and type " + k.Doc}
	case c.Kind == cells.Number && (c.Percent || c.Shown != "" || len(strings.Trim(c.Text, "-.")) > surest || strings.Contains(c.Text, "e")):
		return carfile.Scalar{}, &flaw{"the cell holds the number " + c.Text + ", and may show it otherwise", "give the cell the format Text and type " + k.Doc + " again"}
	}
	return carfile.Scalar{Text: c.Text}, nil
}
