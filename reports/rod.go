package reports

import (
	"fmt"
	"slices"
	"strings"

	"sixlink/members/sizing"
	"sixlink/members/stock"
)

// A RodStudy shows what a rod needs in compression, in tension and for both.
type RodStudy struct {
	Version string // of the program
	Screen  Screen // on which the text is shown
	sizing.Study
}

// Text returns the study for a terminal, with the caution.
func (r RodStudy) Text() ([]byte, error) {
	p := newPage(r.Screen)
	p.line("%s", r.title())
	p.fold("", "  ", r.terms())
	p.line("")
	r.picks(p)
	r.reasons(p)
	r.checks(p)
	r.byLength(p)
	p.notes(r.Notes())
	p.line("\nNot checked:")
	for _, n := range r.NotChecked() {
		p.fold("- ", "  ", n)
	}
	p.line("")
	p.fold("", "", Caution)
	return p.Bytes(), nil
}

func (r RodStudy) title() string {
	var forces []string
	for d, force := range []float64{r.Compression, r.Tension} {
		if force > 0 {
			forces = append(forces, sizing.DirectionNames[d]+" "+Full.number(force)+" N")
		}
	}
	return fmt.Sprintf("sixlink %s: the lightest stock tube for a rod of %s mm: %s", r.Version, Full.number(r.Length), strings.Join(forces, ", "))
}

// terms are what the search was held to.
func (r RodStudy) terms() string {
	f := r.Factors
	return fmt.Sprintf("%s; design factors, in every reserve factor: yield %g, ultimate %g, buckling %g", termWords(r.Stock, r.Limits, r.Target), f.Yield, f.Ultimate, f.Buckling)
}

// termWords put a stock, its limits and the target into words.
func termWords(list stock.List, limits stock.Limits, target float64) string {
	text := fmt.Sprintf("stock %s, %d sizes", printable(list.Name), len(list.Sizes))
	for _, l := range []struct {
		name string
		r    stock.Range
	}{{"OD", limits.OD}, {"wall", limits.Wall}} {
		if l.r.Min > 0 {
			text += fmt.Sprintf(", %s at least %s mm", l.name, Full.number(l.r.Min))
		}
		if l.r.Max > 0 {
			text += fmt.Sprintf(", %s at most %s mm", l.name, Full.number(l.r.Max))
		}
	}
	return text + fmt.Sprintf("; every check has RF ≥ %g", target)
}

// sizeWords put a size into words, mm, with its own unit where that is another.
func sizeWords(s stock.Size) string {
	text := Tenth.number(s.Tube.OD) + " × " + Tenth.number(s.Tube.Wall)
	var own []string
	if bare := strings.TrimSuffix(s.Given[0], "mm") + strings.TrimSuffix(s.Given[1], "mm"); strings.Trim(bare, "0123456789. ") != "" {
		own = append(own, printable(s.Given[0])+" × "+printable(s.Given[1]))
	}
	if s.Gauge != "" {
		own = append(own, "BWG "+s.Gauge)
	}
	if s.Part != "" {
		own = append(own, printable(s.Part))
	}
	if len(own) > 0 {
		text += " (" + strings.Join(own, ", ") + ")"
	}
	return text
}

// picks has a line for each material and direction.
func (r RodStudy) picks(p *page) {
	p.table(func(row func(cells ...string)) {
		row("material", "for", "tube, mm", "mass, kg", "governed by", "RF", "hangs on", r.costHead())
		for _, a := range r.Answers {
			for d, pick := range a.Picks {
				if pick != nil {
					row(r.pickCells(a, d, pick)...)
				}
			}
		}
	})
	if slices.Contains(r.Notes(), sizing.ThinRemark) {
		p.fold("  ", "    ", sizing.ThinRemark)
	}
	p.line("")
}

// costHead is the heading of what the tubes cost; empty: the list has no prices.
func (r RodStudy) costHead() string {
	for _, s := range r.Stock.Sizes {
		if s.Priced() {
			return costUnit(r.Stock)
		}
	}
	return ""
}

func costUnit(list stock.List) string {
	return strings.TrimSuffix("cost, "+printable(strings.TrimSuffix(list.PriceUnit, "/m")), ", ")
}

func (r RodStudy) pickCells(a sizing.Answer, d int, p *sizing.Pick) []string {
	if p.Offered == 0 {
		return []string{printable(a.Metal.Name), sizing.DirectionNames[d], "none: no size of the stock within the limits has strengths of this material"}
	}
	tube := sizeWords(p.Size)
	if !p.Carries {
		tube = "none carries; nearest " + tube
	}
	g := p.Governs()
	name := g.Check
	if d == sizing.InBoth {
		name += ", " + sizing.DirectionNames[g.Direction]
	}
	out := []string{printable(a.Metal.Name), sizing.DirectionNames[d], tube, Milli.number(p.Mass), name, Reserve.number(g.Reserve), sizing.KindNames[p.Reason.Kind]}
	if r.costHead() != "" {
		out = append(out, Tenth.number(sizing.Cost(p.Size, p.Strut().Length)))
	}
	return out
}

// reasons say why each check governs, and what a pushed rod weighs more than a pulled one.
func (r RodStudy) reasons(p *page) {
	for _, a := range r.Answers {
		for d, pick := range a.Picks {
			if pick != nil && pick.Offered > 0 && !told(a, d) {
				p.fold(printable(a.Metal.Name)+", "+sizing.DirectionNames[d]+": ", "  ", reasonWords(pick))
			}
		}
		if x, ok := a.Exchange(); ok {
			p.fold(printable(a.Metal.Name)+": ", "  ", fmt.Sprintf("in compression the rod weighs %s kg more than in tension: %s times as much", Milli.number(x.Difference), Full.number(x.Ratio)))
		}
	}
	if len(r.Answers) > 1 {
		for d, name := range sizing.DirectionNames {
			if i := r.Lightest(d); i >= 0 {
				p.fold("", "  ", fmt.Sprintf("lightest of these materials for %s: %s, %s kg", name, printable(r.Answers[i].Metal.Name), Milli.number(r.Answers[i].Picks[d].Mass)))
			}
		}
	}
	p.line("")
}

// told tells whether the reason of a rod for both directions is that of the rod for one.
func told(a sizing.Answer, d int) bool {
	if d != sizing.InBoth {
		return false
	}
	one := a.Picks[a.Picks[d].Governs().Direction]
	return one.Size.Tube == a.Picks[d].Size.Tube && one.Governs().Check == a.Picks[d].Governs().Check
}

// reasonWords say on what the governing check of a pick hangs.
func reasonWords(p *sizing.Pick) string {
	x := p.Reason
	column := fmt.Sprintf("slenderness λ = %s, transition λ₁ = %s", Tenth.number(x.Slenderness), Tenth.number(x.Transition))
	text := p.Governs().Check + " hangs on the "
	switch x.Kind {
	case sizing.Area:
		text += "area of the section alone: neither length nor diameter matters"
	case sizing.Wall:
		text += "wall: at the same area a thicker wall would carry another load, the length does not matter"
	case sizing.Johnson:
		text += fmt.Sprintf("slenderness, on Johnson's side: %s; the column carries %s %% of A·Scy, and both strength and diameter matter", column, Tenth.number(100*x.Share))
	case sizing.Euler:
		text += fmt.Sprintf("slenderness, on Euler's side: %s; the column carries %s %% of A·Scy, diameter and Young's modulus matter, and strength does not", column, Tenth.number(100*x.Share))
	}
	if p.First && p.Carries {
		text += "; no lighter tube is offered, the load would do with less"
	}
	return text
}

// checks lists every check of each pick.
func (r RodStudy) checks(p *page) {
	p.table(func(row func(cells ...string)) {
		row("material", "for", "check", "under", "demand", "capacity", "RF", "source")
		for _, a := range r.Answers {
			for d, pick := range a.Picks {
				if pick == nil {
					continue
				}
				for _, f := range pick.Found {
					row(printable(a.Metal.Name), sizing.DirectionNames[d], f.Check, sizing.DirectionNames[f.Direction],
						Whole.number(f.Demand)+" "+f.Unit, Whole.number(f.Capacity)+" "+f.Unit, Reserve.number(f.Reserve), f.Source)
				}
			}
		}
	})
	p.line("")
}

// byLength has a line for each length and material.
func (r RodStudy) byLength(p *page) {
	if len(r.Lengths) == 0 {
		return
	}
	p.fold("", "  ", "Over lengths: tube in mm, mass in kg, [what it hangs on: A area, W wall, J slenderness below the "+
		"transition, E above it]; ratio: mass in compression over mass in tension")
	p.table(func(row func(cells ...string)) {
		row("length, mm", "material", "compression", "", "tension", "", "both", "", "ratio")
		for _, l := range r.Lengths {
			for _, a := range l.Answers {
				cells := []string{Tenth.number(l.Length), printable(a.Metal.Name)}
				for _, pick := range a.Picks {
					cells = append(cells, shortPick(pick)...)
				}
				ratio := dash
				if x, ok := a.Exchange(); ok {
					ratio = Tenth.number(x.Ratio)
				}
				row(append(cells, ratio)...)
			}
		}
	})
	p.line("")
}

func shortPick(p *sizing.Pick) []string {
	if p == nil {
		return []string{dash, ""}
	}
	if !p.Carries {
		return []string{"none", ""}
	}
	t := p.Size.Tube
	return []string{Tenth.number(t.OD) + " × " + Tenth.number(t.Wall), fmt.Sprintf("%s [%s]", Milli.number(p.Mass), [...]string{"A", "W", "J", "E"}[p.Reason.Kind])}
}
