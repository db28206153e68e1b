package cases

import (
	"sixlink/loads"
	"sixlink/members"
	"sixlink/members/check"
)

// A Judged is what the checks found for one member or rocker over all cases.
type Judged struct {
	Checks    []Finding // by case, then by item, then in the order of the tables; only where there is a demand
	Governing int       // index in Checks of the lowest reserve factor; -1: none
}

// A Finding is the answer of one check in one case.
type Finding struct {
	Case int    // index in Results.Cases
	At   string // the part of the member: "outer end"; empty: the member itself
	check.Finding
}

// Title names the check with the part that it looks at.
func (f Finding) Title() string {
	if f.At == "" {
		return f.Check
	}
	return f.At + ": " + f.Check
}

// Governs returns the finding with the lowest reserve factor; false: there is none.
func (j Judged) Governs() (Finding, bool) {
	if j.Governing < 0 {
		return Finding{}, false
	}
	return j.Checks[j.Governing], true
}

// Passes tells whether every reserve factor is at least 1.
func (j Judged) Passes() bool {
	f, ok := j.Governs()
	return !ok || f.Reserve >= 1
}

// PassesIn tells whether every reserve factor of one case is at least 1.
func (j Judged) PassesIn(k int) bool {
	for _, f := range j.Checks {
		if f.Case == k && !(f.Reserve >= 1) {
			return false
		}
	}
	return true
}

// JudgedIn returns what was found for the items of one case.
func JudgedIn(k int, items []check.Item) Judged {
	j := Judged{Governing: -1}
	j.add(k, items)
	return j
}

// add joins the findings of one case.
func (j *Judged) add(k int, items []check.Item) {
	for _, item := range items {
		for _, f := range item.Findings {
			if len(j.Checks) == 0 || check.Lower(f.Reserve, j.Checks[j.Governing].Reserve) {
				j.Governing = len(j.Checks)
			}
			j.Checks = append(j.Checks, Finding{k, item.At, f})
		}
	}
}

// judge puts every member and rocker through its checks. The run passes where each
// reserve factor is at least 1; where nothing has a load no check was made, and it
// does not pass.
func (r *Results) judge() {
	r.Pass = true
	made := 0
	for i := range r.Corners {
		c := &r.Corners[i]
		for j := range c.Members {
			c.Members[j] = r.judgeMember(i, j)
			r.Pass = r.Pass && c.Members[j].Passes()
			made += len(c.Members[j].Checks)
		}
		c.Rocker = Judged{Governing: -1}
		for k := range r.Cases {
			c.Rocker.add(k, r.RockerItems(i, k))
		}
		r.Pass = r.Pass && c.Rocker.Passes()
	}
	r.Pass = r.Pass && made > 0
}

func (r *Results) judgeMember(corner, link int) Member {
	m := Member{Part: *r.Car.Part(corner, link), Judged: Judged{Governing: -1}}
	for k := range r.Corners[corner].Forces {
		m.Loads = append(m.Loads, r.load(corner, link, k))
		m.add(k, r.MemberItems(corner, link, k))
	}
	return m
}

// MemberItems returns what is judged along one member in one case: the member itself
// first, then what joins it to its neighbours.
func (r *Results) MemberItems(corner, link, k int) []check.Item {
	p := *r.Car.Part(corner, link)
	load := r.load(corner, link, k)
	return append([]check.Item{r.memberItem(p, load)}, r.endItems(corner, link, k)...)
}

func (r *Results) memberItem(p Part, load members.Load) check.Item {
	if p.Laminate != nil {
		return r.laminateItem(p, load)
	}
	return check.ItemOf("", members.Checks, members.Subject{Strut: p.Strut, Load: load, Factors: r.Car.Factors}, members.Givens)
}

// MemberNames are the names that the working takes: the links, and the rocker.
var MemberNames = append(loads.LinkNames[:], "rocker")

// Judged returns what was found for a member or rocker, by index in MemberNames.
func (r *Results) Judged(corner, member int) Judged {
	if member == loads.NumLinks {
		return r.Corners[corner].Rocker
	}
	return r.Corners[corner].Members[member].Judged
}
