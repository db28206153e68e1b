package reports

import (
	"bytes"
	"encoding/json"

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
	return buf.Bytes(), err
}
