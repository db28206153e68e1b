package cells

import "testing"

// Formats that programs offer show the number that counts, rounded; others do not. Codes by
// ECMA-376-1, 18.8.31; the first list is that of 18.8.30, from memory.
func TestMisleadingFormats(t *testing.T) {
	for _, code := range []string{
		"General", "0", "0.00", "#,##0", "#,##0.00", "#,##0_);(#,##0)", "#,##0_);[Red](#,##0)", "#,##0.00;[Red]-#,##0.00", "0.00E+00", "# ?/?", "# ?/8", "@", `0.00" mm"`,
		`_(* #,##0_);_(* \(#,##0\);_(* "-"_);_(@_)`, `0.0;"−"0.0`, "[Red]0.00", "Standard", "0,000.0",
	} {
		if misleading(code) {
			t.Errorf("%q misleads", code)
		}
	}
	for _, code := range []string{"0.00,", "0,.0", "#,##0,,", `"2"0.0`, `0\5`, "0.0;0.0", "0;[Red]0", ";;;", `[>1]"2.5";0.0`, `""`, "2.5"} {
		if !misleading(code) {
			t.Errorf("%q does not mislead", code)
		}
	}
}
