package carfile_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/loads"
)

// A file that was damaged at random is refused with faults that have a place, or its forces
// are in equilibrium and none of its numbers is infinite. The law: the resultant of road,
// inertia and the reactions of the six links is zero about every point, as is its moment,
// worked out here from the results alone.
func TestDamagedFiles(t *testing.T) {
	whole := wholeCars(t)
	count := map[string]int{}
	for seed := range damagedFiles {
		rng := rand.New(rand.NewPCG(7, uint64(seed)))
		text, how := damaged(rng, whole)
		became, err := outcomeOf(text)
		count[became]++
		if err != nil {
			t.Errorf("seed %d, %s: %v", seed, how, err)
		}
	}
	t.Logf("%d damaged files: %v", damagedFiles, count)
	if count["calculated"] < damagedFiles/20 || count["refused by the reader"] < damagedFiles/20 {
		t.Errorf("%v: the damage is too heavy or too light to show anything", count)
	}
}

// wholeCars are the files that are damaged, the small ones several times: they are the quick ones.
func wholeCars(t *testing.T) (texts []string) {
	t.Helper()
	for _, of := range []struct {
		pattern string
		times   int
	}{{"../../examples/*.yaml", 1}, {"../testdata/numpy/cars/*.yaml", 4}} {
		names, err := filepath.Glob(of.pattern)
		if err != nil || len(names) == 0 {
			t.Fatal("no cars", err)
		}
		for _, name := range names {
			text, err := os.ReadFile(name)
			if err != nil {
				t.Fatal(err)
			}
			for range of.times {
				texts = append(texts, string(text))
			}
		}
	}
	return texts
}

var numeral = regexp.MustCompile(`-?[0-9]+(?:\.[0-9]+)?`)

// A harm is one way to damage a text; two places in it, the first not behind the second,
// and another text are at hand.
type harm struct {
	name string
	do   func(rng *rand.Rand, text string, from, to int, other string) string
}

var harms = []harm{
	{"another character", func(rng *rand.Rand, s string, i, _ int, _ string) string {
		return s[:i] + string(rune(32+rng.IntN(95))) + s[i+1:]
	}},
	{"another byte", func(rng *rand.Rand, s string, i, _ int, _ string) string {
		return s[:i] + string([]byte{byte(rng.IntN(256))}) + s[i+1:]
	}},
	{"a gap", func(_ *rand.Rand, s string, i, j int, _ string) string { return s[:i] + s[min(j, i+20):] }},
	{"a cut end", func(_ *rand.Rand, s string, i, _ int, _ string) string { return s[:i] }},
	{"a span twice", func(_ *rand.Rand, s string, i, j int, _ string) string { return s[:j] + s[max(i, j-200):] }},
	{"the end of another file", func(_ *rand.Rand, s string, i, _ int, o string) string { return s[:i] + o[min(i, len(o)):] }},
	{"lines exchanged", func(rng *rand.Rand, s string, _, _ int, _ string) string {
		lines := strings.Split(s, "\n")
		i, j := rng.IntN(len(lines)), rng.IntN(len(lines))
		lines[i], lines[j] = lines[j], lines[i]
		return strings.Join(lines, "\n")
	}},
	{"a line less", func(rng *rand.Rand, s string, _, _ int, _ string) string {
		lines := strings.Split(s, "\n")
		i := rng.IntN(len(lines))
		return strings.Join(append(lines[:i:i], lines[i+1:]...), "\n")
	}},
	{"a mark of YAML", func(rng *rand.Rand, s string, i, _ int, _ string) string {
		marks := []string{": ", ", ", "[", "]", "{", "}", "- ", "&a ", "*a", "!", "\t", "\"", "#", "~", "\n", "  ", ".nan", "-", " in", " %"}
		return s[:i] + marks[rng.IntN(len(marks))] + s[i:]
	}},
	{"a number", oneNumber},
	{"a number", oneNumber},
	{"a number", oneNumber},
	{"a number", oneNumber},
	{"several numbers", func(rng *rand.Rand, s string, i, j int, o string) string {
		for range 2 + rng.IntN(4) {
			s = oneNumber(rng, s, i, j, o)
		}
		return s
	}},
	{"numbers exchanged", func(rng *rand.Rand, s string, _, _ int, _ string) string {
		all := numeral.FindAllString(s, -1)
		with := all[rng.IntN(len(all))]
		return changeNumber(rng, s, func(string) string { return with })
	}},
}

// oneNumber changes one number: its sign, its size, or by a little.
func oneNumber(rng *rand.Rand, s string, _, _ int, _ string) string {
	return changeNumber(rng, s, func(was string) string {
		switch rng.IntN(8) {
		case 0:
			return "-" + was
		case 1:
			return was + "0"
		case 2:
			return "0"
		case 3:
			return "1e" + fmt.Sprint(rng.IntN(40)-20)
		case 4:
			return "0." + strings.TrimPrefix(was, "-")
		}
		var x float64
		fmt.Sscan(was, &x)
		return fmt.Sprint(math.Round(x*(1+0.2*rng.NormFloat64())*1000) / 1000)
	})
}

func changeNumber(rng *rand.Rand, s string, to func(string) string) string {
	all := numeral.FindAllStringIndex(s, -1)
	at := all[rng.IntN(len(all))]
	return s[:at[0]] + to(s[at[0]:at[1]]) + s[at[1]:]
}

// damaged returns one of the texts with one harm done to it.
func damaged(rng *rand.Rand, whole []string) (text, how string) {
	text = whole[rng.IntN(len(whole))]
	h := harms[rng.IntN(len(harms))]
	i, j := rng.IntN(len(text)), rng.IntN(len(text))
	return h.do(rng, text, min(i, j), max(i, j), whole[rng.IntN(len(whole))]), h.name
}

// outcomeOf says what becomes of a file, and what is wrong with that.
func outcomeOf(text string) (became string, err error) {
	defer func() {
		if p := recover(); p != nil {
			became, err = "broken", fmt.Errorf("panic: %v", p)
		}
	}()
	file, err := carfile.Read("car.yaml", []byte(text))
	var faults carfile.Faults
	if errors.As(err, &faults) {
		for _, f := range faults {
			if f.Line < 1 || f.Column < 1 || f.Text == "" || f.Remedy == "" {
				return "refused by the reader", fmt.Errorf("fault %+v lacks a place, a text or a remedy", f)
			}
		}
		return "refused by the reader", nil
	}
	if err != nil {
		return "refused by the reader", fmt.Errorf("no Faults: %w", err)
	}
	results, err := cases.Run(file.Car)
	var refusal *cases.Refusal
	var audit *cases.AuditError
	switch {
	case errors.As(err, &refusal):
		return "refused by the calculation", nil
	case errors.As(err, &audit):
		return "withheld by the audit", err
	case err != nil:
		return "refused by the calculation", fmt.Errorf("no Refusal: %w", err)
	}
	return "calculated", sound(&results)
}

// sound audits what was calculated.
func sound(r *cases.Results) error {
	if !(r.Audit.Worst <= cases.AuditLimit) {
		return fmt.Errorf("residual %g", r.Audit.Worst)
	}
	for i := range r.Corners {
		c := &r.Corners[i]
		for k := range r.Cases {
			if res := residual(&c.In(k).Corner, r.Cases[k].Wheels[i].Load(), &c.Forces[k]); !(res <= cases.AuditLimit) {
				return fmt.Errorf("%s, %s: the forces leave %g of the load", cases.CornerNames[i], r.Cases[k].Name, res)
			}
		}
		if path := infinite(reflect.ValueOf(c.Forces), "forces"); path != "" {
			return fmt.Errorf("%s: %s is infinite", cases.CornerNames[i], path)
		}
		for link, m := range c.Members {
			if path := infinite(reflect.ValueOf(m.Checks), "checks"); path != "" {
				return fmt.Errorf("%s, %s: %s is infinite", cases.CornerNames[i], loads.LinkNames[link], path)
			}
		}
	}
	return nil
}

// residual is what road, inertia and the reactions of the links leave of force and moment
// about the wheel centre, relative to the largest of them; a moment counts by the longest
// arm. The part of the moment that the bearings of a free wheel do not hold is left out.
func residual(c *loads.Corner, w loads.WheelLoad, f *loads.Forces) float64 {
	force := r3.Add(w.Force, w.Inertia)
	road := r3.Add(w.Moment, r3.Cross(r3.Sub(c.Contact, c.Centre), w.Force))
	if w.Released {
		spin := r3.Unit(c.Spin)
		road = r3.Sub(road, r3.Scale(r3.Dot(road, spin), spin))
	}
	moment, arm := road, r3.Norm(r3.Sub(c.Contact, c.Centre))
	most := max(r3.Norm(w.Force), r3.Norm(w.Inertia), r3.Norm(w.Moment)/arm)
	for i, l := range c.Links {
		on := r3.Scale(-1, f.Chassis[i])
		at := r3.Sub(l.Inner, c.Centre)
		force, moment = r3.Add(force, on), r3.Add(moment, r3.Cross(at, on))
		arm, most = max(arm, r3.Norm(at)), max(most, r3.Norm(on))
	}
	if most == 0 {
		return 0
	}
	return max(r3.Norm(force), r3.Norm(moment)/arm) / most
}

// infinite returns the path of a float that is infinite; empty: none is.
func infinite(v reflect.Value, path string) string {
	switch v.Kind() {
	case reflect.Float64:
		if math.IsInf(v.Float(), 0) {
			return path
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if p := infinite(v.Field(i), path+"."+v.Type().Field(i).Name); p != "" {
				return p
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if p := infinite(v.Index(i), fmt.Sprintf("%s[%d]", path, i)); p != "" {
				return p
			}
		}
	case reflect.Pointer:
		if !v.IsNil() {
			return infinite(v.Elem(), path)
		}
	}
	return ""
}
