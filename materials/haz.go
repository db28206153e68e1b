package materials

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"sync"
)

//go:embed haz.csv
var hazCSV string

// builtInHAZ is haz.csv, read once. A defect of it is a defect of the program.
var builtInHAZ = sync.OnceValue(func() []hazRow {
	rows, err := parseHAZ(hazCSV)
	if err != nil {
		panic("haz.csv: " + err.Error())
	}
	return rows
})

// The processes of welding that the table tells apart.
const (
	MIG = "MIG"
	TIG = "TIG"
)

// tigThickWall is the wall above which TIG welding leaves still less, mm.
const tigThickWall = 6

// A HAZ is what is left of a metal in the heat-affected zone of a weld, as shares of
// its strengths, above 0 and up to 1.
type HAZ struct {
	Yield, Ultimate float64
	Source          string
}

// A hazRow is one line of the table.
type hazRow struct {
	keys            []string
	wallTo          float64 // mm; 0: no limit
	yield, ultimate float64 // shares; 0: su instead
	su              float64 // MPa
	tig             float64 // 0: no difference
	source          string
}

var hazColumns = []string{"name", "aliases", "wall_to", "rho_y", "rho_u", "su", "tig", "source"}

// Weld returns what a fusion weld that is not heat treated again leaves of a metal of
// the table in a tube of that wall, mm; false: the table does not have the metal, the
// wall is above its limit, or the metal is not one of the table in metals.csv.
//
// EN 1999-1-1:2007, Table 3.2b, holds for MIG; for TIG its shares of 6xxx and 7xxx
// alloys are multiplied by 0.8 up to 6 mm, and by 0.8 again above (from memory of the
// notes to that table). Where the source gives an ultimate strength alone, yield falls
// in the same ratio: common practice, no published source.
func Weld(m Metal, wall float64, process string) (HAZ, bool) {
	for _, r := range builtInHAZ() {
		if m.Published == "" || !slices.Contains(r.keys, key(m.Name)) || !within(wall, r.wallTo) {
			continue
		}
		h := HAZ{Yield: r.yield, Ultimate: r.ultimate, Source: r.source}
		if r.su > 0 {
			h.Ultimate = math.Min(1, r.su/m.Su)
			h.Yield = h.Ultimate
			h.Source += "; yield in the same ratio: common practice, no published source"
		}
		if process == TIG && r.tig > 0 {
			h = h.byTIG(r.tig, wall)
		}
		return h, true
	}
	return HAZ{}, false
}

// softConditions are the endings of names of steels whose strengths come from neither
// cold work nor quenching: EN 10305-1 and EN 10305-2, normalized and annealed.
var softConditions = []string{"+N", "+N welded", "+A"}

// Soft tells whether a metal of the table is a steel, normalized or annealed, which a
// weld does not soften. Of a metal of the user's own the condition is not known.
func Soft(m Metal) bool {
	return m.Published != "" && slices.ContainsFunc(softConditions, func(end string) bool { return strings.HasSuffix(m.Name, end) })
}

func (h HAZ) byTIG(share, wall float64) HAZ {
	if !within(wall, tigThickWall) {
		share *= share
	}
	return HAZ{h.Yield * share, h.Ultimate * share, h.Source + fmt.Sprintf("; TIG: times %.2g", share)}
}

// parseHAZ reads the table or returns the first fault of it.
func parseHAZ(text string) ([]hazRow, error) {
	in := csv.NewReader(strings.NewReader(text))
	in.Comment, in.FieldsPerRecord = '#', len(hazColumns)
	lines, err := in.ReadAll()
	if err != nil {
		return nil, err
	}
	if len(lines) < 2 || !slices.Equal(lines[0], hazColumns) {
		return nil, fmt.Errorf("want the heading %q and at least one row", hazColumns)
	}
	var out []hazRow
	for _, fields := range lines[1:] {
		r, err := parseHAZRow(fields)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", fields[0], err)
		}
		out = append(out, r)
	}
	return out, nil
}

func parseHAZRow(fields []string) (r hazRow, err error) {
	cell := make(map[string]string)
	for i, name := range hazColumns {
		cell[name] = strings.TrimSpace(fields[i])
	}
	read := func(name string, value func(string) (float64, error)) (v float64) {
		if cell[name] != "" && err == nil {
			v, err = value(cell[name])
		}
		return v
	}
	in := func(units []unit) func(string) (float64, error) {
		return func(text string) (float64, error) { return quantity(text, units) }
	}
	r = hazRow{
		keys:   []string{key(cell["name"])},
		wallTo: read("wall_to", in(length)),
		yield:  read("rho_y", shareOf), ultimate: read("rho_u", shareOf),
		su: read("su", in(stress)), tig: read("tig", shareOf),
		source: cell["source"],
	}
	for _, alias := range list(cell["aliases"], ";") {
		r.keys = append(r.keys, key(alias))
	}
	both := r.yield > 0 && r.ultimate > 0
	if err == nil && (r.source == "" || both == (r.su > 0) || !both && r.yield+r.ultimate > 0) {
		err = fmt.Errorf("want a source, and either rho_y with rho_u or su")
	}
	return r, err
}

// shareOf reads a number above 0 and up to 1.
func shareOf(text string) (float64, error) {
	v, err := strconv.ParseFloat(text, 64)
	if err != nil || !(v > 0 && v <= 1) {
		return 0, fmt.Errorf("%q is no share above 0 and up to 1", text)
	}
	return v, nil
}
