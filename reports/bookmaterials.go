package reports

import (
	"fmt"

	"sixlink/materials"
	"sixlink/members/check"
)

// The sheet of what the whole car has in common: design factors, each with a name of its
// own, and the materials, which members choose by number and other parts refer to.

const (
	materialsSheet = "Materials"
	factorStart    = 5  // row of the first design factor
	factorColumn   = 2  // column of their values, counted from 0
	metalHead      = 10 // row of the headings of the materials
	metalStart     = 11 // row of the first material
)

// metalColumns are the columns of the numbers that calculations use. Scy is the column
// in which Sy takes its place where the source gives none.
var metalColumns = map[string]int{"E": 2, "ν": 3, "Sy": 4, "Su": 5, "Scy": 7, "ρ": 8}

var factorRows = []struct {
	symbol, name, what string
	of                 func(check.Factors) float64
}{
	{"f_y", "factor_yield", "design factor on yield", func(f check.Factors) float64 { return f.Yield }},
	{"f_u", "factor_ultimate", "design factor on ultimate", func(f check.Factors) float64 { return f.Ultimate }},
	{"f_b", "factor_buckling", "design factor on buckling", func(f check.Factors) float64 { return f.Buckling }},
	{"f_f", "factor_fitting", "fitting factor, on top of the first two where a member is joined", func(f check.Factors) float64 { return f.Fitting }},
}

func factorsOf(f check.Factors) map[string]*quantity {
	out := map[string]*quantity{}
	for _, row := range factorRows {
		out[row.symbol] = &quantity{Step: check.Step{Symbol: row.symbol, What: row.what}, name: row.name, value: row.of(f)}
	}
	return out
}

// metalRows are the materials in their order.
type metalRows []materials.Metal

func metalRowsOf(metals []materials.Metal) metalRows { return metals }

// number is that of a material on the sheet, 1 for the first.
func (m metalRows) number(of materials.Metal) int {
	for i, metal := range m {
		if metal.Name == of.Name && metal.WallTo == of.WallTo {
			return i + 1
		}
	}
	return 0
}

// look is the formula that looks up a column by the number of the unit's material.
func (m metalRows) look(column int) string {
	return fmt.Sprintf("INDEX(%s!%s:%s,%%m)", sheetQuoted(materialsSheet), fixedCell(column, metalStart), fixedCell(column, metalStart+len(m)-1))
}

// cell refers to a column of a material.
func (m metalRows) cell(of materials.Metal, column int) string {
	return sheetQuoted(materialsSheet) + "!" + fixedCell(column, metalStart+m.number(of)-1)
}

// materials writes the sheet.
func (b *book) materials(r Report, c *calculation) {
	t := r.sources()
	t.Columns = append([]Column{{"no.", "", Whole}, t.Columns[0]}, metalTable...)
	widths := make([]float64, len(t.Columns))
	for i := range widths {
		widths[i] = 12
	}
	widths[0], widths[1], widths[9], widths[10], widths[11], widths[12], widths[len(widths)-1] = 6, 18, 26, 18, 44, 30, 30
	g := b.prepare(r, layout{name: materialsSheet, title: "Materials and design factors: what the calculations take from here", widths: widths, head: metalHead, left: 2, scale: 60})
	g.open(factorStart-1, 0)
	g.text(1, b.styles["plainBold"], "Design factors")
	g.close()
	for i, f := range factorRows {
		if f.symbol == "f_f" && !r.Car.HasEnds() {
			continue
		}
		g.open(factorStart+i, 0)
		g.text(0, b.styles["cell"], f.symbol)
		g.number(factorColumn, b.styles["in 0.00##"], c.factors[f.symbol].value)
		g.text(factorColumn+1, b.styles["plainText"], f.what+"; formulas know it as "+f.name)
		g.close()
		b.name(f.name, sheetQuoted(materialsSheet)+"!"+fixedCell(factorColumn, factorStart+i))
	}
	b.heads(g, metalHead, 62, t.Columns)
	for i, m := range c.metals {
		b.metalRow(g, metalStart+i, i+1, m, widths)
	}
	b.keep(materialsSheet, g)
}

// metalTable are the columns from the third on.
var metalTable = append([]Column{
	{"Young's modulus E", "MPa", Full},
	{"Poisson's ratio ν", "", Full},
	{"yield Sy", "MPa", Full},
	{"ultimate Su", "MPa", Full},
	{"compressive yield Scy", "MPa", Full},
	{"Scy as used: Sy where none is given", "MPa", Full},
	{"density ρ", "kg/m³", Full},
	{"form", "", Text},
	{"basis", "", Text},
	{"source", "", Text},
	{"doubt", "", Text},
	{"wall to", "mm", Full},
}, fittingStrengths...)

func (b *book) metalRow(g *cellRows, row, number int, m materials.Metal, widths []float64) {
	texts := []any{m.Form, m.Basis, m.Source, m.Doubt, m.Published}
	tall := lines(texts, []float64{widths[9], widths[10], widths[11], widths[12], widths[len(widths)-1]})
	g.open(row, lineHeight*tall)
	g.number(0, b.styles["whole"], float64(number))
	g.text(1, b.styles["cell"], m.Name)
	for i, x := range []float64{m.E, m.Nu, m.Sy, m.Su, m.Scy} {
		if m.Sy == 0 {
			g.number(2+i, b.styles["= 0.00##"], given(x)) // of a laminate, which its own sheet works out
		} else if x > 0 {
			g.number(2+i, b.styles["in 0.00##"], x)
		} else {
			g.blank(2+i, b.styles["in 0.00##"])
		}
	}
	if m.Sy > 0 {
		g.formula(7, b.styles["= 0.00##"], fmt.Sprintf(`IF(%s="",%s,%s)`, cellName(6, row), cellName(4, row), cellName(6, row)), m.CompressiveYield())
	}
	g.number(8, b.styles["in 0.00##"], m.Density)
	for i, s := range texts[:4] {
		g.text(9+i, b.styles["cell"], s.(string))
	}
	for i, x := range []float64{
		m.WallTo, m.Ssu, m.Sbru[materials.EdgeNear], m.Sbru[materials.EdgeFar], m.Sbry[materials.EdgeNear], m.Sbry[materials.EdgeFar], m.G, m.Elongation,
	} {
		g.number(13+i, b.styles["= 0.00##"], given(x))
	}
	g.text(21, b.styles["cell"], m.Published)
	g.close()
}
