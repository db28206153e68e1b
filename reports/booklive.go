package reports

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"sixlink/members/check"
	"sixlink/members/check/equation"
)

// The calculations of the workbook. A unit is what the checks look at as one: a member,
// an end of it, a cut through a rocker. Its equations are those of its working; each
// becomes a quantity, which has one cell where it belongs to the part and one for each
// corner and load case where it depends on the load.

// A quantity is one symbol of a unit: an input, or what an equation makes of others.
type quantity struct {
	check.Step
	of    *unit // nil: of the car, with a name of its own
	expr  equation.Expr
	args  map[string]*quantity
	found bool   // by expr
	raw   string // a formula that is no equation; of a part. %m: the number of the unit's material; %c, %d, %t: these givens
	fixed bool   // of a theory or a search that the workbook does not repeat: no input
	name  string // of a quantity of the car
	each  bool   // depends on the load
	share *quantity

	label    string // its own within the unit
	id       string // the same for the same quantity of all units of a family
	row, col int    // of a part's on its sheet, row and column; of one that depends on the load, its column
	value    float64
	values   [2][]float64 // left and right, by case
}

// at returns the value on a side in a case.
func (q *quantity) at(side, k int) float64 {
	if q.each {
		return q.values[side][k]
	}
	return q.value
}

// A unit is the calculation of one part with all its loads.
type unit struct {
	*family
	station
	st, member int    // index of the station, and of the member
	part       string // of the member or rocker: "outer end"
	title      string
	scope      map[string]*quantity // of the givens
	givens     int                  // how many of the quantities are givens
	quantities []*quantity          // in an order in which they can be worked out
	ids        map[string]*quantity
	ordinals   map[string]int
	checks     []*unitCheck
	inputs     func(symbol string) [2][]float64 // values of givens, by side and case; nil: none differ
	metal      *quantity                        // number of its material; nil: looked up nowhere
	first      [2]int                           // row of the first case, left and right

	// Givens of some checks that others find: symbol by symbol the name of the check, whose
	// symbol findsAs it is.
	finds map[string]string
	fixed map[string]link
}

const findsAs = "n_f"

// A unitCheck is a check of a unit.
type unitCheck struct {
	check.LiveSheet
	steps            []*quantity
	demand, capacity *quantity
	reserve, when    equation.Expr
	scope            map[string]*quantity
	col              int // of its reserve factor
}

// A family is units with the same checks: one sheet for what belongs to the parts, one
// for what depends on the load.
type family struct {
	parts, cases string // names of the sheets
	units        []*unit
	checks       []string // names, in the order of their columns
	columns      []*quantity
	blocks       []*partBlock
	at           bool // units have a part of the member to name
}

func (f *family) add(u *unit) *unit {
	u.family, u.ids, u.ordinals = f, map[string]*quantity{}, map[string]int{}
	f.units = append(f.units, u)
	return u
}

// A link is where the value of a given comes from, if not from the user: an equation of
// other quantities, or a formula of another kind.
type link struct {
	equation string
	args     map[string]*quantity
	raw      string
	source   string
	always   bool // where the step has an equation, too
	fixed    bool // nothing but that it is no input
}

// sameAs links a given to another quantity.
func sameAs(q *quantity) link {
	return link{equation: q.Symbol, args: map[string]*quantity{q.Symbol: q}}
}

// given places the givens of a unit, each where what its equation needs is there.
func (u *unit) given(steps []check.Step, links map[string]link) error {
	rest := slices.Clone(steps)
	for len(rest) > 0 {
		var later []check.Step
		for _, s := range rest {
			if _, known := u.scope[s.Symbol]; known {
				continue
			}
			ok, err := u.place(u.scope, s, links)
			if err != nil {
				return err
			}
			if !ok {
				later = append(later, s)
			}
		}
		if len(later) == len(rest) {
			_, err := equation.Evaluate(rest[0].Equation, nil)
			return err
		}
		rest = later
	}
	return nil
}

// place adds a step to the scope; false: its equation needs what is not there yet.
func (u *unit) place(scope map[string]*quantity, s check.Step, links map[string]link) (bool, error) {
	q := &quantity{Step: s, of: u, value: s.Value}
	args := scope
	if l, linked := links[s.Symbol]; linked && (l.always || s.Equation == "") {
		q.raw, q.Equation = l.raw, l.equation
		args = maps.Clone(scope)
		maps.Copy(args, l.args)
		if l.source != "" {
			q.Source = l.source
		}
		q.fixed = l.fixed
	}
	if q.Equation == "" {
		u.input(q)
	} else if ok, err := q.read(args); !ok || err != nil {
		return false, err
	}
	scope[s.Symbol] = u.keep(q)
	return true, nil
}

// read reads the equation of a quantity; false: it needs what is not in the scope.
func (q *quantity) read(scope map[string]*quantity) (bool, error) {
	e, err := equation.Parse(q.Equation)
	if err != nil {
		return false, err
	}
	q.expr, q.found, q.args = e, true, map[string]*quantity{}
	for _, s := range e.Symbols() {
		arg, ok := scope[s]
		if !ok {
			return false, nil
		}
		q.args[s] = arg
		q.each = q.each || arg.each
	}
	return true, nil
}

// input tells whether a given differs from case to case.
func (u *unit) input(q *quantity) {
	if q.raw != "" || u.inputs == nil {
		return
	}
	v := u.inputs(q.Symbol)
	if q.each = strings.HasPrefix(q.Source, "load") || differs(v); q.each {
		q.values = v
	}
}

func differs(v [2][]float64) bool {
	all := append(slices.Clone(v[0]), v[1]...)
	for _, x := range all {
		if !(math.Abs(x-all[0]) <= 1e-12*math.Max(math.Abs(x), math.Abs(all[0]))) {
			return true
		}
	}
	return false
}

// keep returns the quantity of the unit that says the same, which is q where there is
// none yet.
func (u *unit) keep(q *quantity) *quantity {
	var key strings.Builder
	key.WriteString(q.Symbol + "=" + q.Equation + q.raw)
	if q.found {
		for _, s := range q.expr.Symbols() {
			key.WriteString("|" + q.args[s].short(u))
		}
	} else if !q.each {
		fmt.Fprintf(&key, "%g", q.value)
	}
	if old := u.ids[key.String()]; old != nil {
		return old
	}
	u.ids[key.String()] = q
	q.label = q.Symbol + "#" + strconv.Itoa(u.ordinals[q.Symbol])
	u.ordinals[q.Symbol]++
	if q.id = q.label; q.each {
		q.id = key.String()
	}
	u.quantities = append(u.quantities, q)
	return q
}

// short names a quantity in the keys of others: of another unit by its symbol alone.
func (q *quantity) short(u *unit) string {
	if q.of != u {
		return q.Symbol
	}
	return q.label
}
