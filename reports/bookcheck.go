package reports

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"sixlink/members/check"
	"sixlink/members/check/equation"
)

// check adds a check with its steps, down to the capacity.
func (u *unit) check(s check.LiveSheet) error {
	c := &unitCheck{LiveSheet: s, scope: maps.Clone(u.scope)}
	links := map[string]link{}
	for symbol, name := range u.finds {
		for _, other := range u.checks {
			if other.Check == name {
				links[symbol] = link{equation: findsAs, args: map[string]*quantity{findsAs: other.scope[findsAs]}}
			}
		}
	}
	for symbol, l := range u.fixed {
		links[symbol] = l
	}
	for _, step := range s.Steps[:len(s.Steps)-1] {
		ok, err := u.place(c.scope, step, links)
		if err == nil && !ok {
			_, err = equation.Evaluate(step.Equation, nil)
		}
		if err != nil {
			return fmt.Errorf("%s, %s: %w", u.title, s.Check, err)
		}
		c.steps = append(c.steps, c.scope[step.Symbol])
	}
	c.capacity = c.scope["C"]
	if err := c.conditions(u, s); err != nil {
		return fmt.Errorf("%s, %s: %w", u.title, s.Check, err)
	}
	u.checks = append(u.checks, c)
	if !slices.Contains(u.family.checks, s.Check) {
		u.family.checks = append(u.family.checks, s.Check)
	}
	return nil
}

// conditions read the equations of the demand, of the reserve factor and of when they
// apply.
func (c *unitCheck) conditions(u *unit, s check.LiveSheet) (err error) {
	demand := c.scope[s.Demand]
	if demand == nil {
		step := check.Step{Symbol: "D", What: "demand", Equation: s.Demand, Unit: s.Unit}
		if ok, err := u.place(c.scope, step, nil); !ok || err != nil {
			return fmt.Errorf("demand %s: %w", s.Demand, err)
		}
		demand = c.scope["D"]
	}
	c.demand = demand
	if s.Share != "" {
		demand.share = c.scope[s.Share]
	}
	if c.reserve, err = equation.Parse(s.Steps[len(s.Steps)-1].Equation); err != nil {
		return err
	}
	if c.when, err = equation.Parse(s.When); err != nil {
		return err
	}
	for _, e := range []equation.Expr{c.reserve, c.when} {
		for _, symbol := range e.Symbols() {
			if c.scope[symbol] == nil {
				return fmt.Errorf("%s is not known", symbol)
			}
		}
	}
	return nil
}

// work finds the values of a unit's quantities, for the given number of cases.
func (u *unit) work(cases int) {
	for _, q := range u.quantities {
		if !q.found {
			continue
		}
		if !q.each {
			q.value = q.expr.Value(func(s string) float64 { return q.args[s].value })
			continue
		}
		for _, corner := range u.corners() {
			side := corner % 2
			q.values[side] = make([]float64, cases)
			for k := range cases {
				q.values[side][k] = q.expr.Value(func(s string) float64 { return q.args[s].at(side, k) })
			}
		}
	}
}

// value of an equation of a check on a side in a case.
func (c *unitCheck) value(e equation.Expr, side, k int) float64 {
	return e.Value(func(s string) float64 { return c.scope[s].at(side, k) })
}

// reserve returns the reserve factor of a check at a corner in a case, infinity where it
// has no demand; false: its formula does not give what was found, and the number stands
// alone.
func (c *calculation) reserve(u *unit, check *unitCheck, corner, k int) (x float64, live bool) {
	finding, found := c.found[findingKey{corner, u.member, u.part, check.Check, k}]
	demand := check.value(check.when, corner%2, k) > 0
	if !found || math.IsInf(finding.Reserve, 1) {
		return math.Inf(1), !demand
	}
	got := check.value(check.reserve, corner%2, k)
	return finding.Reserve, demand && math.Abs(got-finding.Reserve) <= 1e-9*math.Abs(finding.Reserve)
}

// least returns the least reserve factor of a unit at a corner in a case and the check
// that has it; no name where there is none.
func (c *calculation) least(u *unit, corner, k int) (least float64, governs string) {
	byName := map[string]*unitCheck{}
	for _, check := range u.checks {
		byName[check.Check] = check
	}
	least = math.Inf(1)
	for _, name := range u.family.checks {
		if check := byName[name]; check != nil {
			if x, _ := c.reserve(u, check, corner, k); x < least || math.IsNaN(x) {
				least, governs = x, name
			}
		}
	}
	return least, governs
}
