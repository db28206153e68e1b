package reports

import (
	"bytes"
	"encoding/json"
	"fmt"
	"unicode"

	"sixlink/cases"
)

func toNotes(notes []cases.Note) []jsonNote {
	out := []jsonNote{}
	for _, n := range notes {
		out = append(out, jsonNote{string(n.Severity), n.Text})
	}
	return out
}

// encode writes JSON as every report does.
func encode(v any) ([]byte, error) { return encodeAt("", v) }

// encodeAt writes it for a place further in.
func encodeAt(prefix string, v any) ([]byte, error) {
	var buf bytes.Buffer
	enc := json.NewEncoder(&buf)
	enc.SetEscapeHTML(false)
	enc.SetIndent(prefix, " ")
	err := enc.Encode(v)
	return inert(buf.Bytes()), err
}

// inert escapes what may stand in JSON as it is and could yet act on a terminal: DEL, the
// control characters from U+0080 on, and marks that turn the direction of writing. None
// stands outside a string.
func inert(text []byte) []byte {
	if !bytes.ContainsFunc(text, acts) {
		return text
	}
	var out bytes.Buffer
	for _, r := range string(text) {
		if acts(r) {
			fmt.Fprintf(&out, `\u%04x`, r)
			continue
		}
		out.WriteRune(r)
	}
	return out.Bytes()
}

func acts(r rune) bool {
	return r != '\n' && unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r)
}
