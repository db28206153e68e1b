package fasteners

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// A Thread is a screw thread of the ISO basic profile, which is that of the unified
// inch threads too.
type Thread struct {
	Size     string  // as reports print it: "M8", "M8x1", "1/4-28"
	Diameter float64 // nominal, d, mm
	Pitch    float64 // P, mm
	Inch     bool    // unified thread: the stress area is that of ASME B1.1
}

// coarse are the pitches that go without saying. ISO 261 and ISO 262, from memory.
var coarse = map[float64]float64{
	3: 0.5, 4: 0.7, 5: 0.8, 6: 1, 7: 1, 8: 1.25, 10: 1.5, 12: 1.75, 14: 2, 16: 2, 18: 2.5, 20: 2.5, 22: 2.5, 24: 3,
}

// unified are the fine unified threads: diameter in inches, threads to the inch.
// ASME B1.1, series UNF, from memory.
var unified = []struct {
	size     string
	diameter float64
	perInch  float64
}{
	{"8-36", 0.164, 36},
	{"10-32", 0.190, 32},
	{"1/4-28", 0.25, 28},
	{"5/16-24", 0.3125, 24},
	{"3/8-24", 0.375, 24},
	{"7/16-20", 0.4375, 20},
	{"1/2-20", 0.5, 20},
	{"9/16-18", 0.5625, 18},
	{"5/8-18", 0.625, 18},
	{"3/4-16", 0.75, 16},
}

const (
	mmPerInch = 25.4 // exact (international inch)

	// The pitch of a metric thread is at most this share of its diameter; the coarse
	// pitch of M3, 0.5, is the largest share of the table. Our own choice.
	maxPitchShare = 0.25
)

// An UnknownError is the error for a size or class that is not known.
type UnknownError struct{ Text, Remedy string }

func (e *UnknownError) Error() string { return e.Text + ": " + e.Remedy }

func unknown(remedy, format string, args ...any) error {
	return &UnknownError{fmt.Sprintf(format, args...), remedy}
}

// FindThread returns the thread of that size: metric, "M8" (coarse) or "M10x1.25", or
// a fine unified thread, "1/4-28", with or without "UNF" behind it. The error is an
// *UnknownError.
func FindThread(size string) (Thread, error) {
	text := strings.ToUpper(strings.Join(strings.Fields(size), ""))
	if metric, ok := strings.CutPrefix(text, "M"); ok {
		return metricThread(size, metric)
	}
	name := strings.TrimSuffix(strings.TrimSuffix(text, "UNF"), "-")
	for _, u := range unified {
		if u.size == name {
			return Thread{Size: u.size, Diameter: u.diameter * mmPerInch, Pitch: mmPerInch / u.perInch, Inch: true}, nil
		}
	}
	return Thread{}, unknown("write it as M8, M10x1.25 or one of "+strings.Join(UnifiedSizes(), ", "), "thread %q is not known", size)
}

func metricThread(size, text string) (Thread, error) {
	diameter, pitch, fine := strings.Cut(strings.ReplaceAll(text, "×", "X"), "X")
	d, err := strconv.ParseFloat(diameter, 64)
	if err != nil || !(d >= 1 && d <= 100) {
		return Thread{}, unknown("write it as M8 or M10x1.25", "thread %q has no diameter from 1 to 100 mm", size)
	}
	p, known := coarse[d]
	if fine {
		p, err = strconv.ParseFloat(pitch, 64)
		known = err == nil
	}
	if !known {
		return Thread{}, unknown("write it behind the diameter, as in M10x1.25", "thread %q has no pitch", size)
	}
	if !(p >= 0.2 && p <= maxPitchShare*d) {
		return Thread{}, unknown("correct it", "thread %q has a pitch of %g mm, which is not between 0.2 mm and a quarter of the diameter", size, p)
	}
	name := "M" + strconv.FormatFloat(d, 'f', -1, 64)
	if p != coarse[d] {
		name += "x" + strconv.FormatFloat(p, 'f', -1, 64)
	}
	return Thread{Size: name, Diameter: d, Pitch: p}, nil
}

// UnifiedSizes returns the unified threads that FindThread knows, thinnest first.
func UnifiedSizes() []string {
	var names []string
	for _, u := range unified {
		names = append(names, u.size)
	}
	return slices.Clone(names)
}

// Reduction returns what the stress diameter is below the nominal one, in pitches:
// 0.9382 for metric threads (ISO 898-1, clause 9, from memory), 0.9743 for unified ones
// (ASME B1.1, from memory).
func (t Thread) Reduction() float64 {
	if t.Inch {
		return 0.9743
	}
	return 0.9382
}

// StressArea returns the nominal stress area, mm².
//
//	A_s = π/4·(d − 0.9382·P)²    ISO 898-1, clause 9; with 0.9743 ASME B1.1
func (t Thread) StressArea() float64 { return Circle(t.Diameter - t.Reduction()*t.Pitch) }

// PitchDiameter returns the basic pitch diameter, mm.
//
//	d_2 = d − 3·√3/8·P = d − 0.6495·P    ISO 724
func (t Thread) PitchDiameter() float64 { return t.Diameter - 3*math.Sqrt(3)/8*t.Pitch }

// StripArea returns the area on which the thread, external or internal, shears off
// over an engagement, mm: half of the cylinder at the pitch diameter, mm².
//
//	A_τ = π·d_2·L_e/2
//
// Common practice, no published source. It lies below the areas of the basic profile
// in FED-STD-H28/2B, 0.75·π·D_1·L_e and 0.875·π·d·L_e (from memory), so that worn and
// loose threads are allowed for; that the first threads carry more than the last is not.
func (t Thread) StripArea(engagement float64) float64 {
	return math.Pi * t.PitchDiameter() * engagement / 2
}
