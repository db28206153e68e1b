package cells

import (
	"encoding/xml"
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

// formatOf reads the code of a format (ECMA-376-1, 18.8.31): its signs for dates and per
// cent, and what it writes beside the number in its first section.
func formatOf(code string) (f format) {
	var shown strings.Builder
	first := true
	r := []rune(code)
	for i := 0; i < len(r); i++ {
		switch c := r[i]; c {
		case '"', '[':
			end := byte('"')
			if c == '[' {
				end = ']'
			}
			text, length := upTo(r[i+1:], rune(end))
			i += length
			if c == '[' {
				f.date = f.date || strings.ContainsRune("hHmMsS", firstOf(text)) && strings.Trim(strings.ToLower(text), "hms") == ""
				text = currency(text)
			}
			if first {
				shown.WriteString(text)
			}
		case '\\', '_', '*': // the next sign as it is, the room of it, or it again and again
			if i++; c == '\\' && first && i < len(r) {
				shown.WriteRune(r[i])
			}
		case ';':
			first = false
		case '%':
			f.percent = true
		case 'y', 'Y', 'm', 'M', 'd', 'D', 'h', 'H', 's', 'S':
			f.date = true
		}
	}
	f.shown = strings.TrimSpace(shown.String())
	f.misleads = !f.date && misleading(code)
	return f
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
