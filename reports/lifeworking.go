package reports

import (
	"strings"

	"sixlink/reports/paper"
)

// lifeWorkingWords say what a working of a life is.
const lifeWorkingWords = "the cycle that does most damage in a lap, on the strength curve of the detail; then the sum of all cycles, and the distance"

// workings are those of the shortest lives, line by line.
func (l Life) workings() Table {
	t := Table{
		Name: workingsName, Title: "Working of the shortest lives: " + lifeWorkingWords,
		Columns: []Column{{"detail", "", Text}, {"symbol", "", Text}, {"what it is", "", Text}, {"equation, numbers put in", "", Text}, {"value", "", Full}, {"unit", "", Text}, {"source", "", Text}},
	}
	for _, at := range l.shortest(mostSpectra) {
		r := &l.Life.Rows[at]
		printed := written(map[string]string{}, r.Working)
		for i, s := range r.Working {
			sides := printed[i].sides
			t.Rows = append(t.Rows, []any{l.named(*r), s.Symbol, s.What, strings.Join(sides[:len(sides)-1], " = "), s.Value, s.Unit, s.Source})
		}
	}
	return t
}

const workingsName = "Working"

// textWorking writes the working of the shortest life.
func (l Life) textWorking(p *page) {
	for _, at := range l.shortest(1) {
		r := &l.Life.Rows[at]
		p.fold("", "  ", "Working of the shortest life ("+l.named(*r)+"): "+lifeWorkingWords+".")
		p.steps(map[string]string{}, r.Working)
		p.line("")
	}
}

// packWorkings writes the workings of the shortest lives on paper.
func (l Life) packWorkings(p *pack, t Table) {
	p.Section(t.Name, false)
	p.lead(t)
	for _, at := range l.shortest(mostSpectra) {
		r := &l.Life.Rows[at]
		p.Minor(l.named(*r)+": "+distance(r.Distance), paper.Keep)
		p.steps(map[string]string{}, r.Working)
	}
}
