package reports

import (
	"bytes"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"sixlink/cases/studies"
)

// percentiles are the shares of the samples at which reserve factors are shown.
var percentiles = [...]float64{0.05, 0.5, 0.95}

// mostRanked is how many sensitivities a text and a sheet show of the car, and of a member.
const (
	mostRanked       = 10
	mostRankedMember = 3
)

// tallyName names a tally: a member, a rocker or the car.
func tallyName(i int) string {
	if i == studies.CarTally {
		return "the car"
	}
	return partWords(i)
}

// method says what the numbers of a tolerance are.
func (s Study) method() string {
	t := s.Tolerance
	text := fmt.Sprintf("Scatter of %d values, %d samples, seed %d: Latin hypercubes of up to %d samples each.", len(t.Scatter), t.Samples, t.Seed, studies.BlockSize)
	if t.Done < int64(t.Samples) {
		text += fmt.Sprintf(" %d samples are in this part.", t.Done)
	}
	return text
}

// meaning are the notes without which the numbers of a tolerance cannot be read.
func (s Study) meaning() []string {
	out := []string{
		"P is the share of the samples with RF < 1; its interval is that of Clopper and Pearson for 95 %, which speaks of the number of samples alone, not of how well the scatter is known",
		"percentiles come from counts in steps of 0.1 %, cut downwards; of a small share of the samples none can be better than the samples are many",
		"the left-hand and the right-hand side scatter alike where the file has one number for both; each value scatters by itself",
		"sensitivity: the linear correlation of ln RF with the value; its square is about the share of the scatter of ln RF that the value brings in",
	}
	if slices.ContainsFunc(s.Tolerance.Scatter, func(x studies.Scatter) bool { return ofLoads(x.Path) }) {
		out = append(out, loadWords)
	}
	if t := s.Tolerance; t.Refused > 0 {
		out = append(out, fmt.Sprintf("%d samples cannot be calculated, and count as failing; the first, sample %d: %s", t.Refused, t.First, t.Why))
	}
	return out
}

// A tally is the row of one member, rocker or car.
type tally struct {
	index            int
	failing, of      int64
	share, low, high float64
	percentile       [len(percentiles)]float64
	ranked           []studies.Sensitivity
}

// tallies are those with a reserve factor; the car comes first.
func (s Study) tallies() (out []tally) {
	t := s.Tolerance
	order := []int{studies.CarTally}
	for i := range studies.CarTally {
		order = append(order, i)
	}
	for _, i := range order {
		if t.Tallies[i].Judged == 0 && i != studies.CarTally {
			continue
		}
		x := tally{index: i, ranked: t.Sensitivities(i)}
		x.failing, x.of = t.Failing(i)
		x.share = float64(x.failing) / float64(x.of)
		x.low, x.high = studies.Interval(x.failing, x.of)
		for k, p := range percentiles {
			x.percentile[k] = t.Tallies[i].Bins.Percentile(p)
		}
		out = append(out, x)
	}
	return out
}

// probability writes a share so that a small one is not lost.
func probability(x float64) string {
	switch {
	case math.IsNaN(x):
		return dash
	case x == 0 || x == 1:
		return strconv.FormatFloat(x, 'f', 0, 64)
	case x < 1e-3:
		return strconv.FormatFloat(x, 'e', 1, 64)
	}
	return strconv.FormatFloat(x, 'f', 4, 64)
}

func (s Study) toleranceText() ([]byte, error) {
	p := newPage(s.Screen)
	s.lead(p, s.method())
	rows, alike := bySide(s.tallies(), func(x tally) []string {
		row := []string{fmt.Sprintf("%s (%d of %d)", probability(x.share), x.failing, x.of), probability(x.low) + " to " + probability(x.high)}
		for _, rf := range x.percentile {
			row = append(row, Reserve.number(rf))
		}
		return row
	})
	head := []string{"", "P(RF < 1)", "95 % interval"}
	for _, share := range percentiles {
		head = append(head, percentileName(share))
	}
	p.folded(append([][]string{head}, rows...))
	p.line("")
	p.line("What the RF of each goes with most (correlation):")
	rows, again := bySide(s.tallies(), func(x tally) []string { return []string{s.rankedText(x.ranked, mostRankedMember)} })
	p.folded(append([][]string{{"", ""}}, rows...))
	p.line("")
	if alike || again {
		p.line("  where a row names an axle and no side: left and right alike")
		p.line("")
	}
	for _, text := range s.meaning() {
		p.fold("- ", "  ", text)
	}
	p.line("")
	s.scatterText(p)
	s.head().closing(p)
	return p.Bytes(), nil
}

// percentileName is the heading of a percentile of the reserve factor.
func percentileName(share float64) string { return fmt.Sprintf("RF P%.0f", 100*share) }

// bySide makes a row of each tally, its name first; left and right have one together where
// they read alike, and alike says that some do.
func bySide(list []tally, cells func(tally) []string) (rows [][]string, alike bool) {
	byIndex := map[int]tally{}
	for _, x := range list {
		byIndex[x.index] = x
	}
	told := map[int]bool{}
	for _, x := range list {
		if told[x.index] {
			continue
		}
		row, name := cells(x), tallyName(x.index)
		if other, ok := byIndex[mirrored(x.index)]; ok && slices.Equal(cells(other), row) {
			names := partNames()[x.index]
			told[other.index], alike = true, true
			name = strings.TrimSuffix(names[0], "_left") + " " + words(names[1])
		}
		rows = append(rows, append([]string{name}, row...))
	}
	return rows, alike
}

// mirrored is the tally of the right-hand side of one of the left; −1: it is none.
func mirrored(i int) int {
	names := partNames()
	if i >= len(names) {
		return -1
	}
	axle, left := strings.CutSuffix(names[i][0], "_left")
	if !left {
		return -1
	}
	return slices.Index(names, [2]string{axle + "_right", names[i][1]})
}

func (s Study) rankedText(ranked []studies.Sensitivity, most int) string {
	text := ""
	for _, r := range ranked[:min(len(ranked), most)] {
		if text != "" {
			text += "; "
		}
		text += s.Tolerance.Scatter[r.Scatter].Path + " " + sign(strconv.FormatFloat(r.Correlation, 'f', 2, 64))
	}
	if text == "" {
		return dash
	}
	return text
}

// scatterText lists what scatters with most effect on the car.
func (s Study) scatterText(p *page) {
	ranked := s.Tolerance.Sensitivities(studies.CarTally)
	rows := [][]string{{"", "correlation", "scatter", "value"}}
	for i, r := range ranked[:min(len(ranked), mostRanked)] {
		x := s.Tolerance.Scatter[r.Scatter]
		rows = append(rows, []string{
			fmt.Sprint(i + 1), sign(strconv.FormatFloat(r.Correlation, 'f', 3, 64)),
			x.Distribution + " " + scatterWords(x), x.Path + " = " + Full.number(x.Base),
		})
	}
	if len(rows) > 1 {
		p.line("What the lowest RF of the car goes with, of %d values:", len(s.Tolerance.Scatter))
		p.folded(rows)
		p.line("")
	}
}

func scatterWords(x studies.Scatter) string {
	text := "± " + Full.number(x.Deviation)
	if x.Unit != "" {
		text += " " + x.Unit
	}
	return text
}

// toleranceColumns are those of the table of members.
func toleranceColumns() []Column {
	out := []Column{
		{"member", "", Text},
		{"samples", "", Whole},
		{"RF < 1", "", Whole},
		{"P(RF < 1)", "", Full},
		{"P from", "95 %", Full},
		{"P to", "95 %", Full},
	}
	for _, p := range percentiles {
		out = append(out, Column{percentileName(p), "", Reserve})
	}
	for i := range mostRanked {
		out = append(out, Column{fmt.Sprintf("value %d", i+1), "", Text}, Column{fmt.Sprintf("correlation %d", i+1), "", Full})
	}
	return out
}

func (s Study) toleranceRows() (rows [][]any) {
	for _, x := range s.tallies() {
		row := []any{tallyName(x.index), int(x.of), int(x.failing), x.share, x.low, x.high}
		for _, rf := range x.percentile {
			row = append(row, rf)
		}
		for i := range mostRanked {
			if i < len(x.ranked) {
				row = append(row, s.Tolerance.Scatter[x.ranked[i].Scatter].Path, x.ranked[i].Correlation)
			} else {
				row = append(row, "", math.NaN())
			}
		}
		rows = append(rows, row)
	}
	return rows
}

func (s Study) toleranceCSV() ([]byte, error) {
	var buf bytes.Buffer
	s.remarks(&buf, s.method())
	for _, text := range s.meaning() {
		fmt.Fprintf(&buf, "# %s\r\n", printable(text))
	}
	return writeCSV(&buf, toleranceColumns(), slices.Values(s.toleranceRows()))
}
