package cells

import (
	"encoding/xml"
	"regexp"
	"strconv"
	"strings"
)

// readStrings reads the texts that cells name by their number (ECMA-376-1, 18.4).
func (b *book) readStrings(part string) error {
	return b.walk(part, func(e xml.StartElement, d *tokens) error {
		if e.Name.Local != "si" {
			return nil
		}
		text, err := richText(d)
		b.strings = append(b.strings, text)
		return err
	})
}

// richText reads the text of an element to its end: what stands in t, in runs too, but
// for phonetic ones.
func richText(d *tokens) (string, error) {
	var out strings.Builder
	depth, phonetic, inText := 0, 0, false
	for {
		t, err := d.next()
		if err != nil {
			return "", err
		}
		switch t := t.(type) {
		case xml.StartElement:
			depth++
			inText = t.Name.Local == "t" && phonetic == 0
			if t.Name.Local == "rPh" && phonetic == 0 {
				phonetic = depth
			}
		case xml.EndElement:
			if depth == 0 {
				return unescaped(out.String()), nil
			}
			if phonetic == depth {
				phonetic = 0
			}
			depth, inText = depth-1, false
		case xml.CharData:
			if inText {
				out.Write(t)
			}
		}
	}
}

// escapes are characters that XML cannot have, as _x000A_ (ECMA-376-1, 22.9.2.19).
var escapes = regexp.MustCompile(`_x[0-9A-Fa-f]{4}_`)

func unescaped(s string) string {
	if !strings.Contains(s, "_x") {
		return s
	}
	return escapes.ReplaceAllStringFunc(s, func(e string) string {
		code, _ := strconv.ParseUint(e[2:6], 16, 16)
		return string(rune(code))
	})
}
