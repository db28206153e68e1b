package cells

import (
	"encoding/xml"
	"slices"
	"strconv"
	"strings"
)

// A format is what the number format of a cell makes of a number.
type format struct {
	date, percent, misleads bool
	shown                   string
}

// readStyles reads the number formats of the styles of cells (ECMA-376-1, 18.8).
func (b *book) readStyles(part string) error {
	own := map[int]format{}
	inCells := false
	return b.walk(part, func(e xml.StartElement, d *tokens) error {
		switch e.Name.Local {
		case "numFmt":
			if id, err := strconv.Atoi(attribute(e, "numFmtId")); err == nil {
				own[id] = formatOf(attribute(e, "formatCode"))
			}
		case "cellXfs":
			inCells = true
		case "cellStyleXfs", "cellStyles", "dxfs":
			inCells = false
		case "xf":
			if inCells {
				id, _ := strconv.Atoi(attribute(e, "numFmtId"))
				f, known := own[id]
				if !known {
					f = builtIn(id)
				}
				b.formats = append(b.formats, f)
			}
		}
		return nil
	})
}

// builtIn is a format that a number alone names: 9 and 10 are per cent, 14 to 22 and 45
// to 47 dates and times; 27 to 36 and 50 to 58 dates of East Asian languages (ECMA-376-1, 18.8.30, from memory).
func builtIn(id int) format {
	return format{
		percent: id == 9 || id == 10,
		date:    id >= 14 && id <= 22 || id >= 27 && id <= 36 || id >= 45 && id <= 47 || id >= 50 && id <= 58,
	}
}

// A section is one part of the code of a number format: the first for all numbers, or those
// above zero; the second for those below.
type section struct {
	digits, scaled, signed, literal bool // places for digits; thousands left out; a sign or brackets; digits of its own
	text                            bool // shows a number as it is: General, or the sign for a text
}

// misleads tells whether the section shows its numbers as others, or not at all: thousands
// left out, digits that it writes itself, no sign below zero, nothing. Rounding is none of it.
func (s section) misleads(index int) bool {
	return s.literal || s.scaled || index < 2 && !s.digits && !s.text || index == 1 && s.digits && !s.signed
}

// A formatReader is a number format in the reading.
type formatReader struct {
	format
	section
	index  int             // of the section
	comma  bool            // the last sign was a comma behind a place for a digit
	beside strings.Builder // what the first section writes beside the number
}

// formatOf reads the code of a format (ECMA-376-1, 18.8.31): its signs for dates and per
// cent, what it writes beside the number in its first section, and whether it shows the
// number that counts.
func formatOf(code string) format {
	var f formatReader
	r := []rune(code)
	for i := 0; i < len(r); i++ {
		switch c := r[i]; c {
		case '"', '[':
			end := c
			if c == '[' {
				end = ']'
			}
			text, length := upTo(r[i+1:], end)
			i += length
			if c == '[' {
				f.bracket(text)
			} else {
				f.own(text)
			}
		case '\\', '_', '*': // the next sign as it is, the room of it, or it again and again
			if i++; c == '\\' && i < len(r) {
				f.own(string(r[i]))
			}
		case '1', '2', '3', '4', '5', '6', '7', '8', '9':
			f.literal = f.literal || !slices.Contains(r[:i], '/') // a denominator: # ?/8
		default:
			f.sign(c)
		}
	}
	f.end()
	f.shown = strings.TrimSpace(f.beside.String())
	f.format.misleads = f.format.misleads && !f.date
	return f.format
}

// own takes a text that the format writes as it is.
func (f *formatReader) own(text string) {
	f.literal = f.literal || strings.ContainsAny(text, "0123456789")
	f.signed = f.signed || strings.ContainsAny(text, "-−(")
	f.write(text)
}

func (f *formatReader) write(text string) {
	if f.index == 0 {
		f.beside.WriteString(text)
	}
}

// bracket takes what stands in brackets: a lapse of time, a currency, a colour, a condition.
func (f *formatReader) bracket(text string) {
	f.date = f.date || strings.ContainsRune("hHmMsS", firstOf(text)) && strings.Trim(strings.ToLower(text), "hms") == ""
	f.write(currency(text))
}

// sign takes one of the signs of the code.
func (f *formatReader) sign(c rune) {
	switch c {
	case ';':
		f.end()
	case '%':
		f.percent = true
	case 'y', 'Y', 'm', 'M', 'd', 'D', 'h', 'H', 's', 'S':
		f.date = true
	case '0', '#', '?':
		f.digits, f.comma = true, false
	case ',':
		f.comma = f.digits
	case '.':
		f.scaled, f.comma = f.scaled || f.comma, false
	case '-', '(':
		f.signed = true
	case '@', 'G':
		f.text = true
	}
}

// end ends a section.
func (f *formatReader) end() {
	f.scaled = f.scaled || f.comma
	f.format.misleads = f.format.misleads || f.section.misleads(f.index)
	f.section, f.comma = section{}, false
	f.index++
}

// upTo returns what stands before a sign, and how far it is to behind it.
func upTo(r []rune, end rune) (text string, length int) {
	for i, c := range r {
		if c == end {
			return string(r[:i]), i + 1
		}
	}
	return string(r), len(r)
}

func firstOf(s string) rune {
	for _, c := range s {
		return c
	}
	return ' '
}

// currency is the sign of what stands in brackets, [$sign-language]; empty for a colour or
// a condition.
func currency(text string) string {
	sign, found := strings.CutPrefix(text, "$")
	if !found {
		return ""
	}
	sign, _, _ = strings.Cut(sign, "-")
	return sign
}
