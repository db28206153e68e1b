package cli

import (
	"errors"
	"strings"

	"github.com/urfave/cli/v2"

	"sixlink/cases/carfile"
	"sixlink/materials"
	checks "sixlink/members/check"
	"sixlink/members/sizing"
	"sixlink/reports"
)

// rodCommand: a rod by itself, without a car.
func rodCommand() *cli.Command {
	return &cli.Command{
		Name:      "rod",
		Usage:     "the lightest stock tube for a rod in compression, in tension and for both, side by side",
		ArgsUsage: "--length LENGTH --compression FORCE --tension FORCE",
		Description: "Bare numbers are mm and N; a value may carry its unit: \"14 in\", \"6 kN\". Exit status: 0 the stock has a tube for all that is asked; " +
			"1 it has none for some of it; 2 bad usage.\n\n" + reports.Caution,
		Flags: append([]cli.Flag{
			&cli.StringFlag{Name: "length", Usage: "the `LENGTH` from joint centre to joint centre"},
			&cli.StringFlag{Name: "compression", Usage: "the largest compression, a `FORCE` without sign"},
			&cli.StringFlag{Name: "tension", Usage: "the largest tension, a `FORCE` without sign"},
			&cli.StringSliceFlag{Name: "material", Usage: "the `NAME` of a material of the table; several with commas between them, or the option again (default: E355+N)"},
			&cli.StringFlag{Name: "lengths", Usage: "a table over lengths, `FROM:TO:STEP`"},
			&cli.StringFlag{Name: "yield-factor", Usage: "the design `FACTOR` on yield (default: 1.25)"},
			&cli.StringFlag{Name: "ultimate-factor", Usage: "the design `FACTOR` on ultimate strength (default: 1.5)"},
			&cli.StringFlag{Name: "buckling-factor", Usage: "the design `FACTOR` on buckling (default: 1.5)"},
			&cli.StringFlag{Name: "json", Usage: "write the answer as JSON to `FILE`; - is standard output"},
		}, stockFlags()...),
		Action: rod,
	}
}

func rod(c *cli.Context) error {
	if c.NArg() > 0 {
		return usage("rod takes no file, and %q is given: a car is sized by sixlink size", c.Args().First())
	}
	r, err := readRod(c)
	if err != nil {
		return err
	}
	metals, err := readMetals(c)
	if err != nil {
		return err
	}
	over, err := span(c)
	if err != nil {
		return err
	}
	study := reports.RodStudy{Version: Version, Screen: screenOf(c.App.Writer), Study: r.Study(metals, over)}
	outputs := chosen(c, output{"json", "", study.JSON})
	outputs = orScreen(outputs, study.Text)
	if err := writeAll(outputs, "", c.App.Writer, c.App.ErrWriter); err != nil {
		return err
	}
	if !study.Carries() {
		return errFails
	}
	return nil
}

func readRod(c *cli.Context) (r sizing.Rod, err error) {
	r.Factors = checks.Defaults
	for _, o := range []struct {
		flag string
		d    carfile.Dimension
		in   carfile.Range
		into *float64
	}{
		{"length", carfile.Length, lengths, &r.Length},
		{"compression", carfile.Force, forces, &r.Compression},
		{"tension", carfile.Force, forces, &r.Tension},
		{"yield-factor", carfile.Pure, factors, &r.Factors.Yield},
		{"ultimate-factor", carfile.Pure, factors, &r.Factors.Ultimate},
		{"buckling-factor", carfile.Pure, factors, &r.Factors.Buckling},
	} {
		if !c.IsSet(o.flag) {
			continue
		}
		if *o.into, err = quantity(c, o.flag, o.d, o.in); err != nil {
			return r, err
		}
	}
	switch {
	case r.Length == 0:
		return r, usage("rod needs --length, from joint centre to joint centre, such as --length 450")
	case r.Compression == 0 && r.Tension == 0:
		return r, usage("rod needs --compression or --tension, or both, such as --compression \"6 kN\" --tension 4500")
	}
	t, err := readTerms(c)
	r.Stock, r.Limits, r.Target = t.list, t.limits, t.target
	return r, err
}

// readMetals finds the materials by name.
func readMetals(c *cli.Context) (out []materials.Metal, err error) {
	names := strings.FieldsFunc(strings.Join(c.StringSlice("material"), ","), func(r rune) bool { return r == ',' })
	if len(names) == 0 {
		names = []string{"E355+N"}
	}
	const thin = 0.1 // a wall of the first band, mm: each size asks again for its own
	for _, name := range names {
		m, err := materials.Find(strings.TrimSpace(name), thin)
		var unknown *materials.UnknownError
		switch {
		case errors.As(err, &unknown) && len(unknown.Near) > 0:
			return nil, usage("--material %q is not in the table: the nearest names are %s", name, strings.Join(unknown.Near, ", "))
		case errors.As(err, &unknown):
			return nil, usage("--material %q is not in the table: sixlink materials lists all names", name)
		case err != nil:
			return nil, usage("--material: %v", err)
		}
		out = append(out, m)
	}
	return out, nil
}

// span reads --lengths.
func span(c *cli.Context) ([]float64, error) {
	if !c.IsSet("lengths") {
		return nil, nil
	}
	v, err := carfile.Quantities(c.String("lengths"), carfile.Length, lengths, false)
	if err == nil && len(v) != 3 {
		return nil, usage("--lengths %q: write FROM:TO:STEP, such as 300:600:50", c.String("lengths"))
	}
	var out []float64
	if err == nil {
		out, err = sizing.Span(v[0], v[1], v[2])
	}
	if err != nil {
		return nil, usage("--lengths: %v", err)
	}
	return out, nil
}
