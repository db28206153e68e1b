package variants

import (
	"errors"
	"slices"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members"
	"sixlink/members/ends"
	"sixlink/members/laminate"
)

// refusedAudit is the one refusal that has no cases.Reason: forces that do not balance,
// or are no numbers.
const refusedAudit = "the free-body audit fails"

// full evaluates the car as it is by a full run.
func (e *Engine) full(out *Envelope) {
	r, err := cases.Run(e.car)
	if err != nil {
		out.clear(kind(err))
		return
	}
	out.clear("")
	for i := range r.Corners {
		for j := range r.Corners[i].Members {
			e.member(out, i*loads.NumLinks+j, &r.Corners[i].Members[j])
		}
	}
}

func (e *Engine) member(out *Envelope, i int, m *cases.Member) {
	for _, l := range m.Loads {
		out.Tension[i] = max(out.Tension[i], l.Axial)
		out.Compression[i] = max(out.Compression[i], -l.Axial)
	}
	out.Mass[i] = m.Strut.Mass()
	f, ok := m.Governs()
	if !ok {
		return
	}
	out.Reserve[i], out.Case[i] = f.Reserve, int32(f.Case)
	out.Check[i] = int32(slices.Index(e.names, f.Title()))
	if out.Check[i] < 0 {
		out.Check[i] = int32(len(e.names) - 1)
	}
}

// anotherCheck is the last name of a car with more than members to check: that of a
// check which the tables do not name before a run.
const anotherCheck = "another check"

// kind returns the constant text of an error of cases.Run.
func kind(err error) string {
	var refused *cases.Refusal
	if errors.As(err, &refused) {
		return string(refused.Reason)
	}
	return refusedAudit
}

// checkNames lists what can govern: the checks of struts, of laminates where the car has
// any, and of both ends where one is given.
func checkNames(c cases.Car) []string {
	var out []string
	for _, check := range members.Checks {
		out = append(out, check.Name)
	}
	add := func(name string) {
		if !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	for _, s := range c.Stations() {
		for _, p := range s.Parts {
			for _, check := range laminate.Checks {
				if p.Laminate != nil {
					add(check.Name)
				}
			}
			for i, end := range p.Ends {
				for _, check := range ends.Checks {
					if end.Given() {
						add(cases.EndNames[i] + ": " + check.Name)
					}
				}
			}
		}
	}
	if beyond(&c) != "" {
		out = append(out, anotherCheck)
	}
	return out
}
