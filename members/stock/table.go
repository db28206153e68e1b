package stock

import (
	_ "embed"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"math/big"
	"slices"
	"strings"
	"sync"

	"sixlink/members"
)

var (
	//go:embed en10305.csv
	en10305CSV string
	//go:embed inch.csv
	inchCSV string
	//go:embed gauges.csv
	gaugesCSV string
)

// What the sizes leave open goes with every result.
const (
	en10305Remark = "stock EN 10305-1: its sizes are from memory, and of its walls those from OD/50 to OD/4 are held, which is our own choice; " +
		"sizes are nominal: the standard lets a wall be 10 % or 0.1 mm thinner, whichever is more (from memory), and no reserve factor has that in it"
	inchRemark = "stock inch: its sizes are from memory, and of the walls usually stocked those from OD/50 to OD/4 are held, which is our own choice; " +
		"sizes are nominal: no reserve factor has the tolerance of the wall in it"
)

// builtIn are the lists of Names, read once. A defect of them is a defect of the program.
var builtIn = sync.OnceValue(func() []List {
	gauges, err := readGauges(gaugesCSV)
	metric, metricErr := readTable(en10305CSV, "mm", nil)
	inch, inchErr := readTable(inchCSV, "in", gauges)
	if err := errors.Join(err, metricErr, inchErr); err != nil {
		panic("stock: " + err.Error())
	}
	return []List{
		{Name: Names[0], Remark: en10305Remark, Sizes: metric},
		{Name: Names[1], Remark: inchRemark, Sizes: inch},
	}
})

// readTable reads a list of a standard, its dimensions in a unit.
func readTable(text, unit string, gauges map[string]string) (sizes []Size, err error) {
	rows, err := readRows(text, "od", "walls", "source", "from_memory")
	if err != nil {
		return nil, err
	}
	for i, row := range rows {
		source := row[2]
		switch {
		case source == "":
			return nil, fmt.Errorf("row %d: source is missing: say where the size comes from", i+1)
		case row[3] == "yes":
			source += ", from memory"
		case row[3] != "no":
			return nil, fmt.Errorf("row %d: from_memory is %q: write yes or no", i+1, row[3])
		}
		for _, wall := range strings.Fields(row[1]) {
			s := Size{Given: [2]string{row[0], wall}, Gauge: gauges[wall], Price: math.NaN(), Source: source}
			if s.Tube.OD, err = millimetres(row[0], unit); err == nil {
				s.Tube.Wall, err = millimetres(wall, unit)
			}
			if err != nil || !possible(s.Tube) {
				return nil, fmt.Errorf("row %d: %s × %s %s is no tube: correct it", i+1, row[0], wall, unit)
			}
			if unit != "mm" {
				s.Given = [2]string{row[0] + " " + unit, wall + " " + unit}
			}
			sizes = append(sizes, s)
		}
	}
	return sizes, nil
}

func possible(t members.Tube) bool { return t.Wall > 0 && t.Wall <= t.OD/2 }

// readGauges returns the numbers of the gauge by their thickness in inches.
func readGauges(text string) (map[string]string, error) {
	rows, err := readRows(text, "gauge", "wall", "source")
	out := map[string]string{}
	for _, row := range rows {
		out[row[1]] = row[0]
	}
	return out, err
}

func readRows(text string, columns ...string) ([][]string, error) {
	in := csv.NewReader(strings.NewReader(text))
	in.Comment = '#'
	in.FieldsPerRecord = len(columns)
	head, err := in.Read()
	if err != nil || !slices.Equal(head, columns) {
		return nil, fmt.Errorf("heading is %q: write %q", head, columns)
	}
	rows, err := in.ReadAll()
	if err == nil && len(rows) == 0 {
		err = io.ErrUnexpectedEOF
	}
	return rows, err
}

// millimetres converts a decimal to the nearest float64 of mm; 1 in = 25.4 mm exactly
// (NIST SP 811, B.8, from memory).
func millimetres(text, unit string) (float64, error) {
	v, ok := new(big.Rat).SetString(text)
	if !ok {
		return 0, fmt.Errorf("%q is no number", text)
	}
	if unit == "in" {
		v.Mul(v, big.NewRat(254, 10))
	}
	f, _ := v.Float64()
	return f, nil
}
