package check

import "fmt"

// An Item is a subject with its table of checks, its type hidden: what a run judges
// and the working writes out.
type Item struct {
	At       string // the part of the member or rocker: "outer end"; empty: the whole of it
	Kind     string // the type of the subject: "ends.Subject"
	Findings []Finding
	Givens   func() []Step
	Sheets   func() []Sheet
	Live     func() Live // for any load
}

// ItemOf puts a subject through its checks.
func ItemOf[S any](at string, checks []Check[S], s S, givens func(S) []Step) Item {
	return Item{
		At: at, Kind: fmt.Sprintf("%T", s), Findings: Judge(checks, s),
		Givens: func() []Step { return givens(s) },
		Sheets: func() []Sheet { return Work(checks, s) },
		Live:   func() Live { return liveOf(checks, s, givens) },
	}
}
