package duty_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"sixlink/cases/duty"
	"sixlink/members/fatigue"
	"sixlink/members/fatigue/count"
)

// damageOf sums range to a power, that of curves of a slope.
func damageOf(cycles []count.Cycle, slope float64) (sum float64) {
	for _, c := range cycles {
		sum += c.Count * math.Pow(c.Range, slope)
	}
	return sum
}

// inOrder counts a lap whose runs stand in an order, the lap coming again and again, by
// ASTM E1049-85, 5.4.5 (package count, which is held to the standard).
func inOrder(parts [][]float64, order []int) (out []count.Cycle) {
	take := func(c count.Cycle) { out = append(out, c) }
	c := count.New(take)
	for _, i := range order {
		_ = c.PushAll(parts[i])
	}
	count.Repeat(c.Residue(), take)
	return out
}

// Law, by brute force: whatever the order of the runs in a lap, rainflow of the whole lap
// finds no more damage, on lines of slope 1 to 12. Parts of a lap are of all lengths, listed
// more than once, or stand still.
func TestNoOrderDoesMoreDamage(t *testing.T) {
	random := rand.New(rand.NewPCG(8, 88))
	tight := 0
	for lap := range 3000 {
		var parts [][]float64
		var times []float64
		var order []int
		for i := range 1 + random.IntN(4) {
			values := make([]float64, 1+random.IntN(7))
			level, size := float64(random.IntN(20)), float64(1+random.IntN(20))
			for k := range values {
				values[k] = level + math.Floor(size*random.Float64())
			}
			if i > 0 && random.IntN(5) == 0 {
				values = parts[0]
			}
			n := 1 + random.IntN(4)
			parts, times = append(parts, values), append(times, float64(n))
			for range n {
				order = append(order, i)
			}
		}
		got := duty.Joined(parts, times)
		for range 20 {
			random.Shuffle(len(order), func(i, j int) { order[i], order[j] = order[j], order[i] })
			whole := inOrder(parts, order)
			for _, slope := range []float64{1, 3, 5, 12} {
				most, found := damageOf(got, slope), damageOf(whole, slope)
				if !(found <= most*(1+1e-12)+1e-9) {
					t.Fatalf("lap %d, slope %g: the runs %v of %v in the order %v do %g, the pairing gives %g", lap, slope, times, parts, order, found, most)
				}
				if slope == 3 && found > 0.999*most && len(parts) > 1 {
					tight++
				}
			}
		}
	}
	if tight < 1000 {
		t.Errorf("the pairing is the damage of an order in only %d of 60000", tight)
	}
}

// By hand: 20 left and 20 right turns about a static stress are worst one after the other.
// That is 20 cycles of the range 2 a lap, and so does the pairing find it, whether they are
// two blocks or one that is run 20 times; so a lap of parts once does not differ from a
// part that is run so often.
func TestPairingOfRuns(t *testing.T) {
	left, right := []float64{0, 1}, []float64{0, -1}
	for _, row := range []struct {
		name  string
		parts [][]float64
		times []float64
		want  float64 // Σ n·range³
	}{
		{"one block of both", [][]float64{{0, 1, 0, -1}}, []float64{20}, 20 * 8},
		{"two blocks", [][]float64{left, right}, []float64{20, 20}, 20 * 8},
		{"more left than right", [][]float64{left, right}, []float64{20, 5}, 5*8 + 15},
		{"six blocks alike", [][]float64{left, left, left, left, left, left}, []float64{1, 1, 1, 1, 1, 1}, 6},
		{"shares of a lap", [][]float64{left, left, right}, []float64{0.3, 0.3, 0.6}, 0.6 * 8},
		{"one that stands still beside another", [][]float64{{5, 6}, {0, 0}}, []float64{1, 1}, 216},
		{"a part alone keeps its own closing", [][]float64{{-2, 1, -3, 5, -1, 3, -4, 4, -2}}, []float64{1}, 27 + 64 + 343 + 729}, // ASTM E1049-85, 5.4.5
	} {
		if got := damageOf(duty.Joined(row.parts, row.times), 3); !near(got, row.want, 1e-12) {
			t.Errorf("%s: %g, want %g", row.name, got, row.want)
		}
	}
}

// What a wider and a narrower cycle do less than two alike at the knee of a curve of EN
// 1993-1-9, by hand: (1 + e)³ + (1 − e)⁵ is least at e = 0.0834, 1.9187 of 2.
func TestPairingAtTheKnee(t *testing.T) {
	c := fatigue.DetailCurve{Partial: 1}
	c.Detail, _ = fatigue.FindDetail("round tube butt weld")
	damage := func(e float64) float64 {
		d, _ := fatigue.Damage(c, count.Cycle{Range: c.Knee() * (1 + e), Count: 1})
		return d
	}
	least := 1.0
	for e := 0.0; e < 0.4; e += 1e-4 {
		least = math.Min(least, (damage(e)+damage(-e))/(2*damage(0)))
	}
	if !(math.Abs(least-1.9187/2) <= 1e-4) {
		t.Errorf("%.5f of the damage, want %.5f", least, 1.9187/2)
	}
}
