package reports

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
	"sixlink/cases/studies"
	"sixlink/loads"
)

// question says what varies.
func (s Study) varied() string {
	var out []string
	for _, a := range s.Vary.Axes {
		out = append(out, a.Name+moved(a)+withUnit(a.Unit))
	}
	text := "What varies: " + strings.Join(out, "; and ") + "."
	if slices.ContainsFunc(s.Vary.Axes, func(a studies.Axis) bool { return ofLoads(a.Name) }) {
		text += " " + loadWords + "."
	}
	if s.Vary.Sized {
		text += " The tubes are sized afresh at each point."
	}
	return text
}

// loadWords say what a factor on the load of a case is on.
const loadWords = "The factor cases[…].load is on every contact force and moment of the case, and on the weight and inertia of unsprung masses and members; accelerations, speed and side loads stay"

// ofLoads tells whether a path is that of such a factor.
func ofLoads(path string) bool { return strings.HasSuffix(path, "].load") }

func withUnit(unit string) string {
	if unit == "" {
		return ""
	}
	return " (" + unit + ")"
}

// moved says how an end moves; empty: the axis is a plain value.
func moved(a studies.Axis) string {
	if a.Line != nil {
		return fmt.Sprintf(", moved along the direction %s of the file's axes", triple(*a.Line))
	}
	if a.Arc != nil {
		return fmt.Sprintf(", turned about the axis %s through %s mm, both in the file's axes, positive by the right-hand rule about that direction", triple(a.Arc.Axis), triple(a.Arc.Through))
	}
	return ""
}

func triple(v r3.Vec) string {
	return "(" + axisValue(v.X) + ", " + axisValue(v.Y) + ", " + axisValue(v.Z) + ")"
}

func axisHead(a studies.Axis) Column {
	return Column{Head: a.Name, Unit: a.Unit, Format: Full}
}

// Format of a value of an axis: as many digits as it has, up to six.
func axisValue(x float64) string { return Full.number(x) }

func (s Study) varyText(corner int) ([]byte, error) {
	p := newPage(s.Screen)
	s.lead(p, s.varied())
	v := s.Vary
	if len(v.Axes) == 2 {
		s.gridText(p)
	} else {
		s.lineText(p)
	}
	if corner >= 0 {
		s.cornerText(p, corner)
	}
	s.refusals(p)
	s.head().closing(p)
	return p.Bytes(), nil
}

// The numbers of characters of a bar of the largest value: what a bar takes that says
// anything, and what it takes at most.
const leastChart, mostChart = 8, 60

// mostLines is how many points a text shows; the files have them all.
const mostLines = 60

// lineText writes one line for each point, with a bar of the lowest reserve factor.
func (s Study) lineText(p *page) {
	points := shown(s.Vary.Points, p)
	most := 1.0
	for _, x := range points {
		if rf := float64(x.Lowest.Reserve); rf > most && !math.IsInf(rf, 0) {
			most = rf
		}
	}
	var letters legend
	rows := [][]string{{s.Vary.Axes[0].Name, "lowest RF", "", "mass, kg", "governs"}}
	for _, x := range points {
		rows = append(rows, []string{
			axisValue(x.At[0]), mark(x) + Reserve.number(float64(x.Lowest.Reserve)), "", Milli.number(float64(x.Mass)), letters.of(s.governs(x)),
		})
	}
	if size := min(p.room(rows)-gap, mostChart); size >= leastChart {
		rows[0][2] = chartHead(most, size)
		for i, x := range points {
			rows[i+1][2] = bar(float64(x.Lowest.Reserve), most, size)
		}
	}
	p.folded(rows)
	p.line("")
	for i, text := range letters {
		p.fold("  "+letterOf(i)+"  ", "     ", text)
	}
	p.line("  ! a check fails; x no such car; mass: of the members of all four corners")
	p.line("")
}

// mark stands in front of a reserve factor that is no pass.
func mark(p studies.Point) string {
	switch {
	case p.Refused != "":
		return "x "
	case !p.Pass():
		return "! "
	}
	return "  "
}

// A legend gives texts that come again and again a letter each.
type legend []string

func (l *legend) of(text string) string {
	if text == dash {
		return dash
	}
	at := slices.Index(*l, text)
	if at < 0 {
		at = len(*l)
		*l = append(*l, text)
	}
	return letterOf(at)
}

// governs says what has the lowest reserve factor.
func (s Study) governs(p studies.Point) string {
	if p.Lowest.Case < 0 {
		return dash
	}
	return partWords(p.Lowest.Member) + ", " + p.Lowest.Check + ", " + s.caseName(p.Lowest.Case)
}

// chartHead shows where RF = 1 stands in the bars.
func chartHead(most float64, size int) string {
	at := int(math.Round(float64(size) / most))
	return strings.Repeat(" ", max(0, at-1)) + "1"
}

// bar draws a number of at most most in so many characters: # up to it, | at 1.
func bar(x, most float64, size int) string {
	n := 0
	if !math.IsNaN(x) {
		n = min(size, int(math.Floor(x/most*float64(size)+1e-9)))
	}
	out := []rune(strings.Repeat("#", max(0, n)) + strings.Repeat(" ", size-max(0, n)))
	if at := int(math.Round(float64(size)/most)) - 1; at >= 0 && at < size {
		out[at] = '|'
	}
	return strings.TrimRight(string(out), " ")
}

// shown thins points out to what a text can show.
func shown(points []studies.Point, p *page) []studies.Point {
	step := (len(points) + mostLines - 1) / mostLines
	if step <= 1 {
		return points
	}
	p.line("every %d. point of %d is shown; --csv, --json and --workbook have them all", step, len(points))
	var out []studies.Point
	for i := 0; i < len(points); i += step {
		out = append(out, points[i])
	}
	return out
}

// gridText writes the lowest reserve factors as a table: the first axis downwards.
func (s Study) gridText(p *page) {
	down, across := s.Vary.Axes[0], s.Vary.Axes[1]
	const most = 10
	step := (len(across.Values) + most - 1) / most
	p.line("lowest RF; down: %s%s; across: %s%s", down.Name, withUnit(down.Unit), across.Name, withUnit(across.Unit))
	if rows := (len(down.Values) + mostLines - 1) / mostLines; step > 1 || rows > 1 {
		p.line("every %d. row and every %d. column is shown; --csv, --json and --workbook have them all", rows, step)
	}
	head := []string{""}
	for j := 0; j < len(across.Values); j += step {
		head = append(head, axisValue(across.Values[j]))
	}
	rows := [][]string{head}
	byPlace := map[[2]float64]int{}
	for i, x := range s.Vary.Points {
		byPlace[[2]float64{x.At[0], x.At[1]}] = i
	}
	for i := 0; i < len(down.Values); i += (len(down.Values) + mostLines - 1) / mostLines {
		row := []string{axisValue(down.Values[i])}
		for j := 0; j < len(across.Values); j += step {
			at, ok := byPlace[[2]float64{down.Values[i], across.Values[j]}]
			text := "  " + dash
			if ok {
				x := s.Vary.Points[at]
				text = mark(x) + Reserve.number(float64(x.Lowest.Reserve))
			}
			row = append(row, text)
		}
		rows = append(rows, row)
	}
	p.abreast(rows)
	p.line("")
	p.line("  ! a check fails; x no such car; %s not calculated", dash)
	p.line("")
}

// cornerText writes the forces in the members of one corner, and the mass of all.
func (s Study) cornerText(p *page, corner int) {
	p.line("%s: largest tension / largest compression over all cases, N; lowest RF of its members", words(cases.CornerNames[corner]))
	head := []string{}
	for _, a := range s.Vary.Axes {
		head = append(head, a.Name)
	}
	for _, link := range loads.LinkNames {
		head = append(head, words(link))
	}
	rows := [][]string{append(head, "RF", "mass, kg")}
	for _, x := range shown(s.Vary.Points, p) {
		var row []string
		least := math.NaN()
		for _, at := range x.At {
			row = append(row, axisValue(at))
		}
		for j := range loads.LinkNames {
			m := x.Members[corner*loads.NumLinks+j]
			text := Whole.number(float64(m.Tension)) + " / " + Whole.number(float64(m.Compression))
			if s.Vary.Sized && m.Tube != nil {
				text += fmt.Sprintf(" (%gx%g)", float64(m.Tube[0]), float64(m.Tube[1]))
			}
			row = append(row, text)
			if rf := float64(m.Lowest.Reserve); m.Lowest.Case >= 0 && !(rf >= least) {
				least = rf
			}
		}
		rows = append(rows, append(row, Reserve.number(least), Milli.number(float64(x.Mass))))
	}
	p.folded(rows)
	p.line("")
}

// mostReasons is how many refused points a text explains.
const mostReasons = 5

// refusals says why there are points without a car.
func (s Study) refusals(p *page) {
	n := 0
	for _, x := range s.Vary.Points {
		if x.Refused == "" {
			continue
		}
		if n++; n <= mostReasons {
			var at []string
			for _, v := range x.At {
				at = append(at, axisValue(v))
			}
			p.fold("x ", "  ", "at "+strings.Join(at, ", ")+": "+x.Refused)
		}
	}
	if n > mostReasons {
		p.line("x and %d points more", n-mostReasons)
	}
	if n > 0 {
		p.line("")
	}
}
