package reports

import (
	"bytes"
	"fmt"
	"math"
	"strconv"

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
	rows := [][]string{{"", "P(RF < 1)", "95 % interval", "RF P5", "P50", "P95"}}
	for _, x := range s.tallies() {
		row := []string{tallyName(x.index), fmt.Sprintf("%s (%d of %d)", probability(x.share), x.failing, x.of), probability(x.low) + " to " + probability(x.high)}
		for _, rf := range x.percentile {
			row = append(row, Reserve.number(rf))
		}
		rows = append(rows, row)
	}
	p.folded(rows)
	p.line("")
	p.line("What the RF of each goes with most (correlation):")
	rows = [][]string{{"", ""}}
	for _, x := range s.tallies() {
		rows = append(rows, []string{tallyName(x.index), s.rankedText(x.ranked, mostRankedMember)})
	}
	p.folded(rows)
	p.line("")
	for _, text := range s.meaning() {
		p.fold("- ", "  ", text)
	}
	p.line("")
	s.scatterText(p)
	s.head().closing(p)
	return p.Bytes(), nil
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
		out = append(out, Column{fmt.Sprintf("RF P%.0f", 100*p), "", Reserve})
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
	return writeCSV(&buf, toleranceColumns(), s.toleranceRows())
}

// The form of a tolerance, version 1.
type (
	jsonTolerance struct {
		jsonStudy
		Samples    int               `json:"samples"`
		Done       int64             `json:"done"`
		Refused    int64             `json:"refused"`
		Seed       uint64            `json:"seed"`
		Sampling   string            `json:"sampling"`
		Scatter    []studies.Scatter `json:"scatter"`
		Results    []jsonTally       `json:"results"`
		Meaning    []string          `json:"meaning"`
		NotChecked []string          `json:"not_checked"`
		Notes      []jsonNote        `json:"notes"`
	}
	jsonTally struct {
		Corner      string            `json:"corner,omitempty"`
		Member      string            `json:"member"`
		Samples     int64             `json:"samples"`
		Failing     int64             `json:"failing"`
		Probability studies.Number    `json:"probability"`
		Interval    [2]studies.Number `json:"interval_95"`
		Percentiles jsonPercentiles   `json:"reserve_factor"`
		Sensitivity []jsonSensitivity `json:"sensitivities"`
	}
	jsonPercentiles struct {
		P5  studies.Number `json:"p5"`
		P50 studies.Number `json:"p50"`
		P95 studies.Number `json:"p95"`
	}
	jsonSensitivity struct {
		Path        string         `json:"path"`
		Correlation studies.Number `json:"correlation"`
	}
)

func (s Study) toleranceJSON() ([]byte, error) {
	t := s.Tolerance
	out := jsonTolerance{
		jsonStudy: s.top("sixlink-tolerance/1"), Samples: t.Samples, Done: t.Done, Refused: t.Refused, Seed: t.Seed,
		Sampling: s.method(), Scatter: t.Scatter, Results: []jsonTally{}, Meaning: s.meaning(), NotChecked: s.Head.NotChecked, Notes: s.notes(),
	}
	for _, x := range s.tallies() {
		p := x.percentile
		y := jsonTally{
			Member: "the car", Samples: x.of, Failing: x.failing, Probability: studies.Number(x.share),
			Interval:    [2]studies.Number{studies.Number(x.low), studies.Number(x.high)},
			Percentiles: jsonPercentiles{studies.Number(p[0]), studies.Number(p[1]), studies.Number(p[2])}, Sensitivity: []jsonSensitivity{},
		}
		if x.index != studies.CarTally {
			y.Corner, y.Member = partNames()[x.index][0], partNames()[x.index][1]
		}
		for _, r := range x.ranked {
			y.Sensitivity = append(y.Sensitivity, jsonSensitivity{t.Scatter[r.Scatter].Path, studies.Number(r.Correlation)})
		}
		out.Results = append(out.Results, y)
	}
	return encode(out)
}
