package reports

import (
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
)

func (r Report) rockersTable() Table {
	t := Table{
		Name: "Rockers", Title: "Rockers: torques positive for a wheel pushed up; spring positive in compression, anti-roll link in tension; pivot: chassis on rocker",
		Columns: []Column{
			{"no.", "", Text},
			{"load case", "", Text},
			{"corner", "", Text},
			{"rod torque", "N·mm", Full},
			{"spring force", "N", Full},
			{"torsion bar torque", "N·mm", Full},
			{"anti-roll link", "N", Full},
			{"pivot Fx", "N", Full},
			{"pivot Fy", "N", Full},
			{"pivot Fz", "N", Full},
			{"bearing 1 radial", "N", Full},
			{"bearing 2 radial", "N", Full},
			{"thrust", "N", Full},
		},
	}
	third := slices.ContainsFunc(r.Corners[:], func(c cases.Corner) bool {
		return c.Statics.Corner.Rocker != nil && c.Statics.Corner.Rocker.Third != nil
	})
	if third {
		t.Columns = append(t.Columns, Column{"third spring", "N", Full})
	}
	for k, c := range r.Cases {
		for i, corner := range r.Corners {
			x := corner.Forces[k].Rocker
			if x == nil {
				continue
			}
			row := []any{
				caseNo(k), c.Name, words(cases.CornerNames[i]), x.RodTorque, x.Spring, x.TorsionBar, x.AntiRoll,
				x.Pivot.X, x.Pivot.Y, x.Pivot.Z, r3.Norm(x.Bearings[0]), r3.Norm(x.Bearings[1]), x.Thrust,
			}
			if third {
				row = append(row, x.Third)
			}
			t.Rows = append(t.Rows, row)
		}
	}
	return t
}
