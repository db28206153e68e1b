package reports

import (
	"slices"
	"strings"

	"sixlink/cases"
	"sixlink/cases/compare"
)

// closing ends the text: notes, what is not checked, and the caution.
func (c Comparison) closing(p *page) {
	p.line("")
	for _, n := range c.notes() {
		if n.text == compare.ThinWalls {
			continue // it stands beside the tubes
		}
		p.fold(n.lead()+": ", "  ", n.text)
	}
	p.line("\nNot checked:")
	for _, n := range c.notChecked() {
		p.fold("- "+n.of(""), "  ", n.text)
	}
	p.line("")
	p.fold("", "", Caution)
}

// A shared note is one that some of the cars have.
type shared struct {
	kind, text string
	cars       []int
	all        bool // every car has it, or it is about the comparison
}

// of names the cars that have it, where not all do.
func (s shared) of(after string) string {
	if s.all {
		return after
	}
	var letters []string
	for _, i := range s.cars {
		letters = append(letters, letter(i))
	}
	return strings.Join(letters, ", ") + ": " + after
}

func (s shared) lead() string {
	if s.all {
		return s.kind
	}
	return strings.TrimSuffix(s.of(""), ": ") + ", " + s.kind
}

// join puts the notes of the cars together, each once.
func (c Comparison) join(of func(Report) []shared) (out []shared) {
	for i, r := range c.Reports {
		for _, n := range of(r) {
			at := slices.IndexFunc(out, func(o shared) bool { return o.kind == n.kind && o.text == n.text })
			if at < 0 {
				at, out = len(out), append(out, n)
			}
			out[at].cars = append(out[at].cars, i)
			out[at].all = len(out[at].cars) == len(c.Reports)
		}
	}
	return out
}

// notes are those of the comparison, then those of the cars.
func (c Comparison) notes() (out []shared) {
	for _, text := range c.Remarks() {
		out = append(out, shared{kind: string(cases.Remark), text: text, all: true})
	}
	return append(out, c.ofCars()...)
}

// ofCars are the notes of the cars.
func (c Comparison) ofCars() []shared {
	return c.join(func(r Report) (list []shared) {
		for _, n := range r.Notes {
			list = append(list, shared{kind: string(n.Severity), text: n.Text})
		}
		return list
	})
}

func (c Comparison) notChecked() []shared {
	return c.join(func(r Report) (list []shared) {
		for _, text := range r.NotChecked {
			list = append(list, shared{kind: "not checked", text: text})
		}
		return list
	})
}
