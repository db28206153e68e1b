package reports

import (
	"fmt"

	"github.com/xuri/excelize/v2"
)

// The styles of the calculations. Inputs have a box and a light ground, so that they
// stand out on a black and white print; below 1 a reserve factor is bold in a box on grey.

// formats are those of numbers, by unit; others are dimensionless.
var formats = map[string]string{
	"N": "#,##0.0", "N·mm": "#,##0", "mm": "0.00##", "mm²": "#,##0.00", "mm³": "#,##0.0", "mm⁴": "#,##0", "MPa": "#,##0.0##", "N/mm": "#,##0.00#",
	"kg/m³": "#,##0", "g": "0.000", "rad": "0.0000", "°": "0.00", "": "0.0000##",
}

const smallFormat = "0.0000E+00"

func formatOf(unit string) string {
	if f, ok := formats[unit]; ok {
		return f
	}
	return smallFormat
}

func (b *book) makeCalculationStyles() {
	hair := []excelize.Border{}
	for _, side := range []string{"left", "right", "top", "bottom"} {
		hair = append(hair, excelize.Border{Type: side, Color: "7F7F7F", Style: 1})
	}
	ground := excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"E9EEF2"}}
	add := func(name string, s *excelize.Style) {
		if _, known := b.styles[name]; known {
			return
		}
		id, err := b.file.NewStyle(s)
		b.do(err)
		b.styles[name] = id
	}
	all := []string{"#,##0.0", "#,##0", "0.00##", "#,##0.00", "#,##0.0##", "#,##0.00#", "0.000", "0.0000", "0.00", "0.0000##", smallFormat, "[<1]0.0000;0.000"}
	right := &excelize.Alignment{Horizontal: "right", Vertical: "top"}
	for _, f := range all {
		add("= "+f, &excelize.Style{CustomNumFmt: &f, Alignment: right})
		add("in "+f, &excelize.Style{CustomNumFmt: &f, Alignment: right, Border: hair, Fill: ground})
	}
	wrap := func(horizontal string) *excelize.Alignment {
		return &excelize.Alignment{WrapText: true, Vertical: "top", Horizontal: horizontal}
	}
	line := []excelize.Border{{Type: "bottom", Color: "000000", Style: 2}}
	add("plainText", &excelize.Style{Alignment: &excelize.Alignment{Vertical: "top", Horizontal: "left", Indent: 1}})
	add("plainBold", &excelize.Style{Font: &excelize.Font{Family: "Calibri", Size: 11, Bold: true}, Alignment: &excelize.Alignment{Vertical: "top", Horizontal: "left", Indent: 1}})
	add("bandText", &excelize.Style{Font: &excelize.Font{Family: "Calibri", Size: 9, Italic: true}, Alignment: wrap("left")})
	add("bandRight", &excelize.Style{Font: &excelize.Font{Family: "Calibri", Size: 9, Italic: true}, Alignment: wrap("right")})
	add("symbol", &excelize.Style{Font: &excelize.Font{Family: "Calibri", Size: 11, Bold: true}, Alignment: wrap("right"), Border: line})
	add("symbolLeft", &excelize.Style{Font: &excelize.Font{Family: "Calibri", Size: 11, Bold: true}, Alignment: wrap("left"), Border: line})
	add("checkHead", &excelize.Style{Font: &excelize.Font{Family: "Calibri", Size: 11, Bold: true}, Alignment: &excelize.Alignment{Vertical: "bottom"}, Border: []excelize.Border{{Type: "top", Color: "7F7F7F", Style: 1}}})
	add("status", &excelize.Style{Alignment: &excelize.Alignment{Horizontal: "center", Vertical: "top"}})
}

// failing marks cells in a way that a black and white print shows: bold in a box on a
// grey ground, where the condition holds.
func (b *book) failing(sheet, cells, condition string) {
	if b.err != nil {
		return
	}
	if b.failStyle == nil {
		id, err := b.file.NewConditionalStyle(&excelize.Style{
			Font: &excelize.Font{Bold: true}, Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"D9D9D9"}}, Border: thinBox(),
		})
		b.do(err)
		b.failStyle = &id
	}
	b.do(b.file.SetConditionalFormat(sheet, cells, []excelize.ConditionalFormatOptions{{Type: "formula", Criteria: condition, Format: b.failStyle}}))
}

func thinBox() (out []excelize.Border) {
	for _, side := range []string{"left", "right", "top", "bottom"} {
		out = append(out, excelize.Border{Type: side, Color: "000000", Style: 1})
	}
	return out
}

// failingReserves marks the reserve factors below 1, and what is an error, in cells whose
// first is given.
func (b *book) failingReserves(sheet, cells, first string) {
	b.failing(sheet, cells, fmt.Sprintf("IF(ISERROR(%s),TRUE,IF(ISNUMBER(%s),%s<1,FALSE))", first, first, first))
}
