package carfile

import (
	"sixlink/cases"
	"sixlink/cases/duty"
	"sixlink/loads"
	"sixlink/members/fatigue"
)

var dutyKey = Key{
	Name: "duty", Kind: Mapping, Absent: "no lives can be worked out", Doc: "what a lap does to the car, for sixlink life", Also: []string{"life", "fatigue", "mission"},
	Keys: []Key{
		{Name: "lap_length", Kind: Number, Dimension: Distance, Range: Range{Max: 1000, Above: true}, Required: true, Doc: "the distance of a lap or run", Also: []string{"lap_distance", "lap"}},
		{Name: "wanted", Kind: Number, Dimension: Distance, Range: Range{Max: 1e7, Above: true}, Absent: "every detail must run one lap", Doc: "the distance that every detail is to run", Also: []string{"target", "distance"}},
		// Common practice, no published source: what is flown or raced without inspection has 3 to 5.
		{Name: "life_factor", Kind: Number, Range: Range{Min: 1, Max: 100}, Default: "4", Doc: "the factor by which the calculated life is divided, for its scatter", Also: []string{"scatter_factor"}},
		{Name: "load_factor", Kind: Number, Range: Range{Min: 1, Max: 10}, Default: "1", Doc: "the factor on every stress range and mean, and on the peaks of the histories"},
		{Name: "inspection", Kind: Number, Dimension: Share, Range: Range{Max: 1, Above: true}, Default: "25 %", Doc: "the share of the released distance between two inspections"},
		{Name: "survival", Kind: Number, Dimension: Share, Range: Range{Min: 0.5, Max: 1, Below: true}, Default: "99 %", Doc: "the share of parts that live longer, for curves that leave it open"},
		{Name: "blocks", Kind: List, Most: 50, Doc: "load cases that come again and again in every lap", Keys: []Key{
			{Name: "name", Kind: Text, Required: true, Doc: "the name of the block, each a different one"},
			{Name: "times", Kind: Number, Range: Range{Max: 1e9, Above: true}, Required: true, Doc: "how often the sequence is run in a lap", Also: []string{"count", "repeats"}},
			{Name: "sequence", Kind: List, Most: 200, Required: true, Doc: "the load cases one after the other", Keys: []Key{
				{Name: "case", Kind: Text, Required: true, Doc: "the name of a load case; of one that unfolds into two, such as \"Cornering, left turn\""},
			}},
		}},
		historiesKey, detailsKey,
	},
}

var historiesKey = Key{Name: "histories", Kind: List, Most: 20, Doc: "logs in CSV files", Also: []string{"logs"}, Keys: []Key{
	{Name: "name", Kind: Text, Required: true, Doc: "the name of the history, each a different one"},
	{Name: "file", Kind: Text, Required: true, Doc: "the CSV file, from the folder of the car file", Also: []string{"csv", "path"}},
	{Name: "laps", Kind: Number, Range: Range{Max: 1e6, Above: true}, Required: true, Doc: "how many laps the file holds"},
	{Name: "share", Kind: Number, Dimension: Share, Range: Range{Max: 1, Above: true}, Default: "1", Doc: "the share of the laps that are like these"},
	{Name: "wheel", Kind: Choice, Choices: duty.WheelNames, Default: duty.WheelNames[duty.FromForce], Doc: "what the wheels of a log of wheel forces do with a torque about their spin axis"},
	{Name: "units_row", Kind: Flag, Default: "false", Doc: "true where a row of units stands below the heading"},
	{Name: "long_step", Kind: Number, Dimension: Duration, Range: Range{Max: 10, Above: true}, Absent: "5 times the usual step: the median of the first 100", Doc: "the longest step of time between two rows"},
	{Name: "bad_rows", Kind: Number, Range: Range{Max: 1000}, Default: "0", Doc: "how many rows may be left out because they cannot be read"},
	{Name: "columns", Kind: Mapping, Required: true, Doc: "where the file has what, in ISO 8855 axes (x forward, y left, z up)", Keys: columnKeys()},
}}

func columnKeys() []Key {
	out := []Key{
		logged(duty.Time, Duration, true), logged(duty.AccelerationX, Acceleration, false), logged(duty.AccelerationY, Acceleration, false), logged(duty.Speed, Speed, false),
	}
	for _, corner := range cases.CornerNames {
		k := Key{Name: corner, Kind: Mapping, Doc: "the columns of the " + corner + " wheel: force of the road on the tyre, its moment about the contact point, acceleration of the unsprung mass"}
		for q := duty.ForceX; q <= duty.UnsprungZ; q++ {
			k.Keys = append(k.Keys, logged(q, dimensionOf(q), q <= duty.ForceZ))
		}
		out = append(out, k)
	}
	return out
}

// dimensionOf is the dimension of a quantity of a wheel.
func dimensionOf(q duty.Quantity) Dimension {
	switch {
	case q <= duty.ForceZ:
		return Force
	case q <= duty.MomentZ:
		return Moment
	}
	return Acceleration
}

func logged(q duty.Quantity, d Dimension, required bool) Key {
	return Key{Name: duty.QuantityNames[q], Kind: Mapping, Required: required, Doc: "the column of " + duty.QuantityNames[q], Keys: []Key{
		{Name: "column", Kind: Text, Required: true, Doc: "the name of the column in the heading of the file"},
		{Name: "unit", Kind: Text, Absent: "the unit of a bare number: " + d.Bare(), Doc: "the unit of its numbers, such as " + d.Bare()},
		{Name: "scale", Kind: Number, Range: Range{Min: -1e6, Max: 1e6}, Default: "1", Doc: "a factor on its numbers, such as -1"},
	}}
}

// strainMetals are the metals whose constants are at hand.
var strainMetals = namesOf(fatigue.StrainMetals(), func(m fatigue.StrainMetal) string { return m.Name })

// namesOf returns the names of the rows of a table.
func namesOf[T any](rows []T, name func(T) string) (out []string) {
	for _, r := range rows {
		out = append(out, name(r))
	}
	return out
}

// curveKeys are the ways to give the strength curve of a detail.
var curveKeys = []string{"detail", "strain_life", "stress_life", "steel_estimate", "handbook"}

var detailsKey = Key{
	Name: "details", Kind: List, Most: 50, Required: true, Doc: "what is judged of the members", OneOf: curveKeys,
	Keys: []Key{
		{Name: "name", Kind: Text, Required: true, Doc: "the name of the detail"},
		{Name: "axle", Kind: Choice, Choices: cases.AxleNames[:], Absent: "both", Doc: "the axle"},
		{Name: "member", Kind: Choice, Choices: loads.LinkNames[:], Absent: "all", Doc: "the member"},
		{Name: "at", Kind: Choice, Choices: duty.PlaceNames, Default: duty.PlaceNames[duty.Ends], Doc: "where along the member"},
		{Name: "detail", Kind: Choice, Choices: namesOf(fatigue.Details(), func(d fatigue.Detail) string { return d.Name }), Doc: "the name of a detail of EN 1993-1-9, for steels"},
		{Name: "strain_life", Kind: Choice, Choices: strainMetals, Doc: "the name of a metal with strain-life constants"},
		{Name: "stress_life", Kind: Choice, Choices: strainMetals, Doc: "the name of a metal with strain-life constants, of which the elastic line is taken"},
		{Name: "steel_estimate", Kind: Flag, Doc: "true for a line estimated from the ultimate strength of a steel"},
		{Name: "handbook", Kind: Choice, Choices: namesOf(fatigue.Equations(), func(e fatigue.Equation) string { return e.Name }), Doc: "the name of an equation of MIL-HDBK-5J"},
		// EN 1993-1-9:2005, Table 3.1, from memory: safe life, high consequence.
		{Name: "partial_factor", Kind: Number, Range: Range{Min: 1, Max: 3}, Default: "1.35", With: "detail", Doc: "the partial factor on fatigue strength of EN 1993-1-9"},
		{Name: "relieved", Kind: Flag, Default: "false", With: "detail", Doc: "true for what is not welded, or stress relieved: compression counts 60 %"},
		{Name: "mean_stress", Kind: Choice, Choices: []string{"goodman", "gerber", "swt", "walker", "morrow", "none"}, Absent: "swt; goodman with steel_estimate", Doc: "how a mean stress counts"},
		{Name: "walker_exponent", Kind: Number, Range: Range{Max: 1, Above: true}, With: "mean_stress", Absent: "of steels from the ultimate strength", Doc: "the exponent γ of walker, from tests of the metal"},
		{Name: "stress_concentration", Kind: Number, Range: Range{Min: 1, Max: 20}, Default: "1", Doc: "the stress concentration factor", Also: []string{"kt"}},
		{Name: "notch_radius", Kind: Number, Dimension: Length, Range: Range{Max: 100, Above: true}, With: "stress_concentration", Absent: "the notch counts in full", Doc: "the radius of the notch"},
		{Name: "surface", Kind: Choice, Choices: namesOf(fatigue.Surfaces, func(s fatigue.Surface) string { return s.Name }), Absent: "that of the test: polished", Doc: "how the surface was left"},
		{Name: "survival", Kind: Number, Dimension: Share, Range: Range{Min: 0.5, Max: 1, Below: true}, Absent: "that of the duty", Doc: "the share of parts that live longer"},
		{Name: "thread", Kind: Text, Doc: "the size of the thread that carries the axial force, such as M8 or 1/4-28"},
		{Name: "throat", Kind: Number, Dimension: Length, Range: Range{Max: 50, Above: true}, Doc: "the throat of the weld round the tube that carries the stress"},
	},
}
