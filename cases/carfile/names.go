package carfile

import "sixlink/members/fatigue"

// A TableName is one that keys take from a table of the program, and what it stands for.
type TableName struct{ Keys, Name, What, Source string }

// Names are those of strength curves and surfaces.
func Names() (out []TableName) {
	for _, d := range fatigue.Details() {
		out = append(out, TableName{"detail", d.Name, d.What, d.Source})
	}
	for _, m := range fatigue.StrainMetals() {
		out = append(out, TableName{"strain_life, stress_life", m.Name, "metal with strain-life constants", m.Source})
	}
	for _, e := range fatigue.Equations() {
		out = append(out, TableName{"handbook", e.Name, "stress-life equation", e.Source})
	}
	for _, s := range fatigue.Surfaces {
		out = append(out, TableName{"surface", s.Name, "surface of a steel", fatigue.SourceFactors})
	}
	return out
}
