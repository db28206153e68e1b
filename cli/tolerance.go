package cli

import (
	"slices"

	"github.com/urfave/cli/v2"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/cases/studies"
	"sixlink/cases/variants"
	"sixlink/reports"
)

// toleranceCommand: what scatter does to the reserve factors.
func toleranceCommand() *cli.Command {
	return &cli.Command{
		Name:      "tolerance",
		Usage:     "what the scatter that the car file gives does to the reserve factors: probability of RF < 1, percentiles, sensitivities",
		ArgsUsage: "CAR --samples N --seed S",
		Description: "The key scatter of the car file says what scatters, and how far. The same seed gives the same bytes, on any number of cores.\n\n" +
			studyStatus + "\n\n" + reports.Caution,
		Flags: append([]cli.Flag{
			&cli.IntFlag{Name: "samples", Value: 10_000, Usage: "the number `N` of samples"},
			&cli.Uint64Flag{Name: "seed", Value: 1, Usage: "the seed `S` of the samples"},
		}, studyFlags()...),
		Action: tolerance,
	}
}

func tolerance(c *cli.Context) error {
	n := c.Int("samples")
	if n < 1 || n > studies.MostSamples {
		return usage("--samples %d is outside 1 to %d", n, studies.MostSamples)
	}
	s, err := openStudy(c)
	if err != nil {
		return err
	}
	q := studies.Question{Samples: n, Seed: c.Uint64("seed")}
	var paths []string
	for _, x := range s.file.Scatter {
		q.Scatter = append(q.Scatter, studies.Scatter{Path: x.Path, Unit: x.Unit(), Base: x.Base, Distribution: x.Distribution, Deviation: x.Deviation})
		paths = append(paths, x.Path)
	}
	if len(paths) == 0 {
		f := s.file.Fault("", "the file does not say what scatters", "add scatter: {hardpoints: {normal: 0.5}, walls: {normal: 3 %}, strengths: {normal: 4 %}, loads: {normal: 5 %}}, with what you know of each")
		return located{carfile.Faults{f}}
	}
	judge, err := judgeOf(s.file, paths)
	if err != nil {
		return err
	}
	return s.carryOut("samples", func(run running) error {
		s.study.Tolerance, s.study.Complete, err = studies.Sample(run.ctx, q, judge, run.plan)
		return err
	})
}

// judgeOf returns what makes the judges of the samples: an engine where it does all that
// the check does, and the check itself where not.
func judgeOf(file carfile.File, paths []string) (func() (studies.Judge, error), error) {
	if _, err := file.Variant(paths); err != nil {
		return nil, err
	}
	full := func() (studies.Judge, error) {
		v, err := file.Variant(paths)
		if err != nil {
			return nil, err
		}
		return studies.Full(v.Car), nil
	}
	binding, err := file.Bind(paths)
	rockers := slices.ContainsFunc(file.Car.Stations(), func(s cases.Station) bool { return s.Rocker != nil })
	if err != nil || rockers {
		return full, nil
	}
	engine, err := variants.New(file.Car, binding.Apply)
	if err != nil {
		return nil, err
	}
	return func() (studies.Judge, error) {
		other, err := full()
		if err != nil {
			return nil, err
		}
		return studies.Fast(engine.Clone(), binding.Within, other), nil
	}, nil
}
