package reports

import "sixlink/cases/studies"

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
		Sampling: s.method(), Scatter: t.Scatter, Results: []jsonTally{}, Meaning: s.meaning(), NotChecked: s.Head.NotChecked, Notes: toNotes(s.Head.Notes),
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
