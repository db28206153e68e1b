package reports

import (
	"encoding/json"
	"testing"
)

// No control character is left in JSON but the ends of its lines, and what is read from it
// is what was written. The characters: Unicode 15, general category Cc and property
// Bidi_Control.
func TestJSONIsInert(t *testing.T) {
	const hostile = "a\x00\x1b\x7f\u0080\u009b\u061c\u200e\u200f\u202a\u202e\u2066\u2069\r\n\t\\u009b × é"
	text, err := encode([]string{hostile})
	if err != nil {
		t.Fatal(err)
	}
	const want = "[\n \"a\\u0000\\u001b\\u007f\\u0080\\u009b\\u061c\\u200e\\u200f\\u202a\\u202e\\u2066\\u2069\\r\\n\\t\\\\u009b × é\"\n]\n"
	if string(text) != want {
		t.Errorf("%q, want %q", text, want)
	}
	var back []string
	if err := json.Unmarshal(text, &back); err != nil || len(back) != 1 || back[0] != hostile {
		t.Errorf("read back as %q, %v", back, err)
	}
}
