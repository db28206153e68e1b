package fatigue

import "math"

// NotchFactor returns K_f, by which a notch raises the stress that counts for fatigue, of
// its stress concentration K_t, at least 1, and notch sensitivity q, 0 to 1.
//
//	K_f = 1 + q·(K_t − 1)    Peterson
func NotchFactor(concentration, sensitivity float64) float64 {
	if !(concentration >= 1 && sensitivity >= 0 && sensitivity <= 1) {
		return math.NaN()
	}
	return 1 + sensitivity*(concentration-1)
}

// PetersonSensitivity returns q of a steel notch of a radius, mm, and the ultimate
// strength, MPa, at least 550.
//
//	q = 1/(1 + a/r), a = 0.0254·(2070/Su)^1.8 mm
//	Peterson; Dowling, Mechanical Behavior of Materials, chapter 10, from memory
func PetersonSensitivity(radius, ultimate float64) float64 {
	if !(radius > 0 && ultimate >= petersonFrom) {
		return math.NaN()
	}
	return 1 / (1 + PetersonLength(ultimate)/radius)
}

const petersonFrom = 550 // MPa

// PetersonLength returns a of PetersonSensitivity, mm.
func PetersonLength(ultimate float64) float64 { return 0.0254 * math.Pow(2070/ultimate, 1.8) }

// PetersonAluminium is a of an aluminium alloy in q = 1/(1 + a/r), mm: Dowling, chapter
// 10, from memory.
const PetersonAluminium = 0.51

// NeuberSensitivity returns q of a steel notch in bending or under axial force, of a
// radius, mm, and the ultimate strength, MPa, 340 to 1700.
//
//	q = 1/(1 + √a/√r), √a = 0.246 − 3.08·10⁻³·S + 1.51·10⁻⁵·S² − 2.67·10⁻⁸·S³ √in, S in ksi
//	Shigley, chapter 6 (fit of Neuber's constant), from memory
func NeuberSensitivity(radius, ultimate float64) float64 {
	if !(radius > 0 && ultimate >= 340 && ultimate <= 1700) {
		return math.NaN()
	}
	s := ultimate / mpaPerKsi
	a := 0.246 + s*(-3.08e-3+s*(1.51e-5-s*2.67e-8))
	return 1 / (1 + a*math.Sqrt(mmPerInch/radius))
}

const (
	mpaPerKsi = 6.894757 // NIST SP 811, B.8, from memory
	mmPerInch = 25.4     // exact (international inch)
)
