package cli

import (
	"math"
	"regexp"
	"slices"
	"strconv"

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
			&cli.StringFlag{Name: "samples", Value: "10000", Usage: "the number `N` of samples"},
			&cli.StringFlag{Name: "seed", Value: "1", Usage: "the seed `S` of the samples, a whole number"},
		}, studyFlags()...),
		Action: tolerance,
	}
}

func tolerance(c *cli.Context) error {
	n, err := wholeNumber(c, "samples", 1, studies.MostSamples)
	if err != nil {
		return err
	}
	seed, err := wholeNumber(c, "seed", 0, math.MaxUint64)
	if err != nil {
		return err
	}
	s, err := openStudy(c)
	if err != nil {
		return err
	}
	q := studies.Question{Samples: int(n), Seed: seed}
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
	return s.through("samples", func(run running) error {
		s.study.Tolerance, s.study.Complete, err = studies.Sample(run.ctx, q, judge, run.plan)
		return err
	})
}

// wholeNumber reads an option that counts.
func wholeNumber(c *cli.Context, flag string, least, most uint64) (uint64, error) {
	text := c.String(flag)
	n, err := strconv.ParseUint(text, 10, 64)
	switch {
	case err == nil && n >= least && n <= most:
		return n, nil
	case digits.MatchString(text):
		return 0, usage("--%s %s is outside %d to %d: give a number within these limits", flag, text, least, most)
	}
	return 0, usage("--%s %q is no whole number from %d to %d: write one in plain digits, such as 1000", flag, text, least, most)
}

// digits are those of a whole number.
var digits = regexp.MustCompile(`^-?[0-9]+$`)

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
