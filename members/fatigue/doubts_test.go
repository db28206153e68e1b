package fatigue

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"sixlink/members/fatigue/count"
)

// What is not a number, or left out, gives a life and a sum that are none: never a long one.
func TestLeftOutIsNoLife(t *testing.T) {
	metal, equation := StrainMetals()[0], Equations()[0]
	nan := math.NaN()
	for name, c := range map[string]Curve{
		"detail":   DetailCurve{Detail: Details()[0]},
		"stress":   StressLife{A: 1000, B: -0.1, Rule: Goodman, Mean: MeanStrength{Ultimate: 800}, Notch: 1},
		"notch":    StressLife{A: 1000, B: -0.1, Rule: Goodman, Mean: MeanStrength{Ultimate: 800}, Strength: 1},
		"rule":     StressLife{A: 1000, B: -0.1, Notch: 1, Strength: 1},
		"ultimate": StressLife{A: 1000, B: -0.1, Rule: Goodman, Notch: 1, Strength: 1},
		"line":     StressLife{Rule: NoMean, Notch: 1, Strength: 1},
		"factors":  EstimateSteel(800, 0.8, Factors{Surface: 1, Size: 1, Load: 1}),
		"surface":  metal.StressLife(SWT, Factors{Size: 1, Load: 1, Survival: 0.9}),
		"strain":   StrainLife{Metal: metal, Rule: SWT, Notch: 1},
		"goodman":  StrainLife{Metal: metal, Rule: Goodman, Notch: 1, Strength: 1},
		"handbook": HandbookLife{Equation: equation, Strength: 1},
	} {
		var sum Sum
		sum.Add(c, count.Cycle{Range: 300, Mean: 10, Count: 1}, 1)
		if n := life(c, 300, 10); !math.IsNaN(n) || !math.IsNaN(sum.Damage) {
			t.Errorf("%s: %g cycles, damage %g", name, n, sum.Damage)
		}
	}
	for name, c := range map[string]Curve{
		"detail":   DetailCurve{Detail: Details()[0], Partial: 1},
		"stress":   StressLife{A: 1000, B: -0.1, Rule: Goodman, Mean: MeanStrength{Ultimate: 800}, Notch: 1, Strength: 1},
		"strain":   StrainLife{Metal: metal, Rule: SWT, Notch: 1, Strength: 1},
		"morrow":   StrainLife{Metal: metal, Rule: Morrow, Notch: 1, Strength: 1},
		"handbook": HandbookLife{Equation: equation, Notch: 1, Strength: 1},
	} {
		if n := life(c, nan, 0); !math.IsNaN(n) {
			t.Errorf("%s: %g cycles of a range that is not a number", name, n)
		}
	}
}

// A life outside of what its curve holds for says so, in words that name curve and limit.
func TestDoubts(t *testing.T) {
	weld := DetailCurve{Detail: Details()[3], Partial: 1, Yield: 235}
	stud := DetailCurve{Detail: Detail{Category: 100, Slope: 5, Shear: true}, Partial: 1, Yield: 400}
	line := StressLife{Name: "line", A: 1000, B: -0.1, From: 1e3, To: 1e6, Rule: Goodman, Mean: MeanStrength{Ultimate: 500}, Notch: 1, Strength: 1, Yield: 450}
	endless := line
	endless.Endless = true
	for _, tt := range []struct {
		c                 Curve
		stressRange, mean float64
		want              Doubt
	}{
		{weld, 100, 0, 0},
		{weld, 20, 900, 0}, // below the cut-off
		{weld, 500, 0, ShortLife | PastYield},
		{weld, 1.5*235 + 1, 0, PastYield},
		{weld, 1.5 * 235, 0, 0},
		{stud, 1.5*400/math.Sqrt(3) - 0.1, 0, ShortLife}, // 2·10⁶·(100/346)⁵ = 4030 cycles
		{stud, 1.5*400/math.Sqrt(3) + 0.1, 0, ShortLife | PastYield},
		{line, 800, 0, 0},
		{line, 800, 60, PastYield}, // 400/(1 − 0.12) = 454.5 MPa: 2650 cycles
		{line, 200, 0, LongLife},
		{endless, 200, 0, 0},
		{line, 2000, 0, ShortLife | PastYield},
		{line, 100, 500, PastUltimate | PastYield},
	} {
		_, got := tt.c.Life(tt.stressRange, tt.mean)
		if got != tt.want {
			t.Errorf("%s at %g about %g MPa: doubts %b, want %b", tt.c.About().Name, tt.stressRange, tt.mean, got, tt.want)
		}
	}
	about := line.About()
	text := strings.Join(about.Doubts(ShortLife|LongLife|PastYield|PastUltimate), "\n")
	for _, want := range []string{"line: ", "below 1000", "above 1e+06", "past the yield strength", "reaches the strength"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is not in %q", want, text)
		}
	}
	if n := len(about.Doubts(0)); n != len(about.Remarks) {
		t.Errorf("%d doubts of a life without any", n-len(about.Remarks))
	}
}

// Every curve says its source, whose survival it is, and what is from memory.
func TestAbout(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := drawCurve(t).About()
		if a.Name == "" || a.Source == "" || !strings.Contains(a.Survival, "live") || !strings.Contains(strings.Join(a.Remarks, " "), "from memory") {
			t.Errorf("%+v", a)
		}
	})
	for wall, want := range map[float64]string{1.5: "seldom below 4 mm", 6: "", 9: "up to 8 mm"} {
		if got := Details()[5].WallDoubt(wall); !strings.Contains(got, want) || want == "" && got != "" {
			t.Errorf("wall of %g mm: %q, want %q", wall, got, want)
		}
	}
	if got := Details()[6].WallDoubt(8); !strings.Contains(got, "over 8 mm") {
		t.Errorf("thick weld on 8 mm: %q", got)
	}
}

func TestFind(t *testing.T) {
	for _, err := range []error{
		second(FindDetail("tubes")), second(FindStrainMetal("7075")), second(FindEquation("")), second(FindSurface("polished")), second(FindMeanRule("none")),
	} {
		var unknown *UnknownError
		if !errors.As(err, &unknown) || len(unknown.Names) < 2 || !strings.Contains(err.Error(), "is not known: write one of ") {
			t.Errorf("error %v", err)
		}
	}
	if d, err := FindDetail("Bolt-in tension"); err != nil || d.Name != "bolt in tension" {
		t.Errorf("%+v, %v", d, err)
	}
	if r, err := FindMeanRule("smith watson topper"); err != nil || r != SWT {
		t.Errorf("%q, %v", r, err)
	}
}

func second[T any](_ T, err error) error { return err }
