package cells

import "testing"

// Formats that programs offer show the number that counts, rounded; others do not. Codes by
// ECMA-376-1, 18.8.31; the first list is that of 18.8.30, from memory.
func TestMisleadingFormats(t *testing.T) {
	for _, code := range []string{
		"General", "0", "0.00", "#,##0", "#,##0.00", "#,##0_);(#,##0)", "#,##0_);[Red](#,##0)", "#,##0.00;[Red]-#,##0.00", "0.00E+00", "# ?/?", "# ?/8", "@", `0.00" mm"`,
		`_(* #,##0_);_(* \(#,##0\);_(* "-"_);_(@_)`, `0.0;"−"0.0`, "[Red]0.00", "Standard", "0,000.0",
	} {
		if formatOf(code).misleads {
			t.Errorf("%q misleads", code)
		}
	}
	for _, code := range []string{"0.00,", "0,.0", "#,##0,,", `"2"0.0`, `0\5`, "0.0;0.0", "0;[Red]0", ";;;", `[>1]"2.5";0.0`, `""`, "2.5"} {
		if !formatOf(code).misleads {
			t.Errorf("%q does not mislead", code)
		}
	}
}

// What a format says beside the number, and whether it is one of dates or per cent:
// ECMA-376-1, 18.8.31.
func TestFormatsInWords(t *testing.T) {
	for code, want := range map[string]format{
		"0.00":               {},
		`0.00" mm"`:          {shown: "mm"},
		`0\m\m;-0\i\n`:       {shown: "mm"},
		"[$€-407] 0.00":      {shown: "€"},
		"[Red]0;[Blue]-0":    {},
		"0.0 %":              {percent: true},
		"dd.mm.yyyy":         {date: true},
		"[h]":                {date: true},
		"[>1]0.0;0.00":       {misleads: true}, // no sign below
		`"about "0.0_)" mm"`: {shown: "about  mm"},
	} {
		if got := formatOf(code); got != want {
			t.Errorf("%q: %+v, want %+v", code, got, want)
		}
	}
}
