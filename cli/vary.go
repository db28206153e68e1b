package cli

import (
	"strings"

	"github.com/urfave/cli/v2"
	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/cases/studies"
	"sixlink/reports"
)

// varyCommand: the whole check at each point of a range, or of the grid of two.
func varyCommand() *cli.Command {
	return &cli.Command{
		Name:      "vary",
		Usage:     "the forces, reserve factors and mass as one or two values of the car file change, or an end moves",
		ArgsUsage: "CAR --vary PATH=FROM:TO:STEP",
		Description: "A PATH is that of a number in the car file: front.rod.inner.z, front.members.rod.tube.wall, cases[Bump].wheel_factors.up; " +
			"AXLE.members.MEMBER.strength is a factor on the strengths of the file, cases[CASE].load one on all loads of a case. FROM, TO and STEP may carry units.\n\n" +
			studyStatus + "\n\n" + reports.Caution,
		Flags: append([]cli.Flag{
			&cli.StringSliceFlag{Name: "vary", Usage: "`PATH=FROM:TO:STEP`; given twice: the grid of both"},
			&cli.StringFlag{Name: "move", Usage: "`PATH` of an end that moves, such as front.rod.inner: along a line, or about an axis"},
			&cli.StringFlag{Name: "along", Usage: "`X,Y,Z=FROM:TO:STEP`: the direction, in the axes of the file, and mm along it from where the file has the end"},
			&cli.StringFlag{Name: "about", Usage: "`X,Y,Z` of a point on the axis of a turn, mm in the axes of the file"},
			&cli.StringFlag{Name: "axis", Usage: "`X,Y,Z=FROM:TO:STEP`: the direction of the axis, and degrees from where the file has the end, positive by the right-hand rule about that direction on the car"},
			&cli.BoolFlag{Name: "size", Usage: "size the tubes afresh at each point, from the stock"},
			cornerFlag,
		}, append(stockFlags(), studyFlags()...)...),
		Action: vary,
	}
}

var cornerFlag = &cli.StringFlag{Name: "corner", Usage: "show the forces in the members of a `CORNER` too: " + strings.Join(cases.CornerNames[:], ", ")}

func vary(c *cli.Context) error {
	s, err := openStudy(c)
	if err != nil {
		return err
	}
	axes, err := s.axes(c)
	if err != nil {
		return err
	}
	size, err := s.sizer(c)
	if err != nil {
		return err
	}
	var paths []string
	for _, a := range axes {
		paths = append(paths, a.Paths...)
	}
	if _, err := s.file.Variant(paths); err != nil {
		return usage("%v", err)
	}
	maker := func() (studies.Maker, error) {
		v, err := s.file.Variant(paths)
		if err != nil {
			return nil, err
		}
		return v.Car, nil
	}
	return s.through("points", func(run running) error {
		s.study.Vary, s.study.Complete, err = studies.VaryAll(run.ctx, axes, maker, size, run.plan)
		return err
	})
}

// sizer returns what sizes the tubes afresh at each point; nil: nothing does.
func (s *studying) sizer(c *cli.Context) (studies.Sizer, error) {
	if !c.Bool("size") {
		for _, flag := range []string{"stock", "target", "od-limit", "wall-limit"} {
			if c.IsSet(flag) {
				return nil, usage("vary: --%s is for --size: give both", flag)
			}
		}
		return nil, nil
	}
	t, err := readTerms(c, s.file)
	o := cases.Sizing{Stock: t.list, Limits: t.limits, Target: t.target}
	s.study.Head.Notes = append(s.study.Head.Notes, studies.SizedFrom(o))
	return studies.Sized(o), err
}

// axes reads what varies.
func (s *studying) axes(c *cli.Context) (out []studies.Axis, err error) {
	for _, text := range c.StringSlice("vary") {
		a, err := s.valueAxis(text)
		if err != nil {
			return nil, err
		}
		out = append(out, a)
	}
	switch {
	case c.IsSet("move"):
		a, err := s.movedAxis(c)
		if err != nil {
			return nil, err
		}
		out = append(out, a)
	case c.IsSet("along") || c.IsSet("about") || c.IsSet("axis"):
		return nil, usage("vary: --along, --about and --axis say how an end moves: name the end with --move")
	}
	if len(out) == 0 || len(out) > 2 {
		return nil, usage("vary needs one or two things that change, and %d are given: give --vary PATH=FROM:TO:STEP or --move", len(out))
	}
	if n, limit := studies.Count(out), studies.MostPoints; n > limit {
		return nil, usage("vary: %d points are more than %d, which are what memory is kept for: take longer steps, or cut the range into several", n, limit)
	}
	return out, nil
}

func (s *studying) valueAxis(text string) (studies.Axis, error) {
	at := strings.LastIndex(text, "=")
	if at < 0 {
		return studies.Axis{}, usage("--vary %q has no range: write PATH=FROM:TO:STEP", text)
	}
	v, err := s.file.Value(text[:at])
	if err != nil {
		return studies.Axis{}, usage("--vary %v", err)
	}
	values, err := rangeOf("--vary", text[at+1:], v.Read, v.Difference)
	return studies.Axis{Name: v.Path, Unit: v.Unit(), Paths: []string{v.Path}, Base: []float64{v.Base}, Values: values}, err
}

// movedAxis reads the move of an end.
func (s *studying) movedAxis(c *cli.Context) (a studies.Axis, err error) {
	a.Name = c.String("move")
	for _, part := range []string{"x", "y", "z"} {
		v, err := s.file.Value(a.Name + "." + part)
		if err != nil {
			return a, usage("--move %s is no end: %v", a.Name, err)
		}
		a.Paths, a.Base = append(a.Paths, v.Path), append(a.Base, v.Base)
	}
	along, about, axis := c.IsSet("along"), c.IsSet("about"), c.IsSet("axis")
	switch {
	case along && !about && !axis:
		a.Unit, a.Line = carfile.Length.Bare(), new(r3.Vec)
		a.Values, err = s.directed("along", c.String("along"), carfile.Length, a.Line)
	case about && axis && !along:
		a.Unit, a.Arc = carfile.Angle.Bare(), &studies.Arc{LeftHanded: !s.file.RightHanded()}
		if a.Arc.Through, err = triple("about", c.String("about")); err == nil {
			a.Values, err = s.directed("axis", c.String("axis"), carfile.Angle, &a.Arc.Axis)
		}
	default:
		err = usage("--move: give --along X,Y,Z=FROM:TO:STEP, or --about X,Y,Z with --axis X,Y,Z=FROM:TO:STEP")
	}
	return a, err
}

// directed reads a direction and the range that goes with it.
func (s *studying) directed(flag, text string, d carfile.Dimension, direction *r3.Vec) ([]float64, error) {
	vector, values, found := strings.Cut(text, "=")
	if !found {
		return nil, usage("--%s %q has no range: write X,Y,Z=FROM:TO:STEP", flag, text)
	}
	v, err := triple(flag, vector)
	if err != nil {
		return nil, err
	}
	if r3.Norm(v) == 0 {
		return nil, usage("--%s %q: the direction has no length: give one such as 0,0,1", flag, vector)
	}
	*direction = v
	read := carfile.Value{Path: flag, Dimension: d}.Difference
	return rangeOf("--"+flag, values, read, read)
}

func triple(flag, text string) (r3.Vec, error) {
	parts := strings.Split(text, ",")
	if len(parts) != 3 {
		return r3.Vec{}, usage("--%s %q is not X,Y,Z: give three numbers with commas between them", flag, text)
	}
	var x [3]float64
	for i, p := range parts {
		v, err := carfile.Value{Path: flag, Dimension: carfile.Length}.Difference(p)
		if err != nil {
			return r3.Vec{}, usage("--%v", err)
		}
		x[i] = v
	}
	return r3.Vec{X: x[0], Y: x[1], Z: x[2]}, nil
}

// rangeOf reads FROM:TO:STEP, or one value.
func rangeOf(flag, text string, read, difference func(string) (float64, error)) ([]float64, error) {
	parts := strings.Split(text, ":")
	if len(parts) != 3 && len(parts) != 1 {
		return nil, usage("%s %q is not FROM:TO:STEP: give three numbers with colons between them", flag, text)
	}
	var x [3]float64
	for i, p := range parts {
		take := read
		if i == 2 {
			take = difference
		}
		v, err := take(p)
		if err != nil {
			return nil, usage("%s %v", flag, err)
		}
		x[i] = v
	}
	if len(parts) == 1 {
		return []float64{x[0]}, nil
	}
	values, err := studies.Range(x[0], x[1], x[2])
	if err != nil {
		return nil, usage("%s %q: %v", flag, text, err)
	}
	return values, nil
}
