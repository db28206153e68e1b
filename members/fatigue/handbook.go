package fatigue

import (
	_ "embed"
	"math"
	"slices"
	"sync"
)

//go:embed handbook.csv
var handbookCSV string

// An Equation is a stress-life equation of MIL-HDBK-5J, its numbers for stresses in ksi.
type Equation struct {
	Name           string
	A1, A2, A3, A4 float64
	E              float64 // Young's modulus of the metal tested, MPa
	Ultimate       float64 // its strength, MPa
	Source, Remark string
}

var builtInEquations = sync.OnceValue(func() []Equation {
	rows, err := readTable(handbookCSV, []string{"name", "a1", "a2", "a3", "a4", "e", "ultimate"}, func(r *row) Equation {
		return Equation{
			Name: r.text("name"), A1: r.positive("a1"), A2: r.positive("a2"), A3: r.positive("a3"), A4: r.number("a4"),
			E: r.positive("e") * mpaPerKsi, Ultimate: r.positive("ultimate") * mpaPerKsi, Source: r.source(), Remark: r.cells["remark"],
		}
	})
	if err != nil {
		panic("handbook.csv: " + err.Error())
	}
	return rows
})

// Equations returns the rows of the table, in its order. The slice is the caller's own.
func Equations() []Equation { return slices.Clone(builtInEquations()) }

// FindEquation returns the equation of that name. The error is an *UnknownError.
func FindEquation(name string) (Equation, error) {
	return find("handbook equation", name, builtInEquations(), func(e Equation) string { return e.Name })
}

// A HandbookLife is the curve of such an equation.
type HandbookLife struct {
	Equation
	Notch    float64 // K_f, at least 1
	Strength float64 // factor on the strength, see Factors; above 0
	Survival float64 // share of parts that lives longer, for which Strength was made
	Yield    float64 // Sy, MPa; 0: the stresses are not held against it
	Remarks  []string
}

// Equivalent returns S_eq, MPa; 0 where nothing pulls.
//
//	S_eq = S_max·(1 − R)^A3 = S_max^(1 − A3)·Δσ^A3    MIL-HDBK-5J, 9.3.4
func (c HandbookLife) Equivalent(stressRange, mean float64) float64 {
	if !(c.Notch >= 1 && c.Strength > 0) {
		return math.NaN()
	}
	top := max(mean+stressRange/2, 0)
	return c.Notch / c.Strength * math.Pow(top, 1-c.A3) * math.Pow(stressRange, c.A3)
}

// Life returns the cycles to failure; without end where S_eq is not above A4.
//
//	lg N = A1 − A2·lg(S_eq − A4)    MIL-HDBK-5J, 1.4.9.2 and 9.3.4
func (c HandbookLife) Life(stressRange, mean float64) (float64, Doubt) {
	doubt := pastYield(stressRange, mean, c.Yield)
	over := c.Equivalent(stressRange, mean)/mpaPerKsi - c.A4
	if over <= 0 {
		return math.Inf(1), doubt
	}
	life := math.Pow(10, c.A1) * math.Pow(over, -c.A2)
	return life, doubt | outside(life, 1e3, 1e8)
}

// About says what the curve is.
func (c HandbookLife) About() About {
	a := About{
		Name: c.Name + ", handbook equation", Source: c.Source, Survival: survival(c.Survival), From: 1e3, To: 1e8, Yield: "the yield strength",
		Remarks: []string{
			c.Name + ": " + c.Source + ": the equation is the middle of tests on polished specimens: confirm against the document before release",
			c.Name + ": no damage is counted below its limit, which larger cycles in between, corrosion and fretting undo",
		},
	}
	if c.Remark != "" {
		a.Remarks = append(a.Remarks, c.Name+": "+c.Remark)
	}
	a.Remarks = append(a.Remarks, c.Remarks...)
	return a
}
