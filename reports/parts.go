package reports

import (
	"sixlink/cases"
	"sixlink/loads"
)

// The parts list: what each member is made of, and what it weighs. Masses are those of
// the bare sections between joint centres, without threads and paint, and of the
// bearings of their ends, where the file gives them.

// parts has a line for each member and each bearing of its ends, and the masses of each
// corner and of the car.
func (r Report) parts() Table {
	t := Table{
		Name: "Parts", Title: "Parts: the members, joint centre to joint centre; masses without ends and threads",
		Columns: []Column{
			{"corner", "", Text},
			{"member", "", Text},
			{"part number", "", Text},
			{"certificate", "", Text},
			{"section", "mm", Text},
			{"material", "", Text},
			{"length", "mm", Tenth},
			{"mass", "kg", Milli},
			{"notes", "", Text},
		},
	}
	all := "all six"
	if r.hasBearings() {
		t.Title = "Parts: the members, joint centre to joint centre, and the bearings of their ends; masses without threads and bolts; sums count each bearing whose mass is given"
		all = "all six, with bearings"
	}
	for i, c := range r.Corners {
		bearings := r.EndBearings(i)
		for j, m := range c.Members {
			s := m.Strut
			t.Rows = append(t.Rows, []any{
				words(cases.CornerNames[i]), words(loads.LinkNames[j]), m.Number, m.Certificate, sectionWords(s),
				s.Metal.Name, s.Length, s.Mass(), m.Notes,
			})
			t.Rows = append(t.Rows, bearingRows(i, j, bearings)...)
		}
	}
	for i := range r.Corners {
		t.Rows = append(t.Rows, []any{words(cases.CornerNames[i]), all, nil, nil, nil, nil, nil, r.CornerMass(i), nil})
	}
	t.Rows = append(t.Rows, []any{"all four", "all", nil, nil, nil, nil, nil, r.MembersMass(), nil})
	return t
}

type (
	jsonParts struct {
		Members  []jsonPart       `json:"members"`
		Bearings []jsonBearing    `json:"bearings,omitempty"`
		Corners  []jsonCornerMass `json:"corners"` // with the bearings whose mass is given
		Mass     float64          `json:"mass"`
	}
	jsonPart struct {
		Corner      string  `json:"corner"`
		Member      string  `json:"member"`
		Part        string  `json:"part"`
		Certificate string  `json:"certificate"`
		Section     string  `json:"section"`
		Material    string  `json:"material"`
		Length      float64 `json:"length"`
		Mass        float64 `json:"mass"`
		Notes       string  `json:"notes"`
	}
	jsonCornerMass struct {
		Corner string  `json:"corner"`
		Mass   float64 `json:"mass"`
	}
)

func (r Report) toParts() jsonParts {
	out := jsonParts{Mass: r.MembersMass()}
	for i, c := range r.Corners {
		corner := cases.CornerNames[i]
		for j, m := range c.Members {
			s := m.Strut
			out.Members = append(out.Members, jsonPart{
				Corner: corner, Member: loads.LinkNames[j], Part: m.Number, Certificate: m.Certificate, Section: sectionWords(s),
				Material: s.Metal.Name, Length: s.Length, Mass: s.Mass(), Notes: m.Notes,
			})
		}
		out.Bearings = append(out.Bearings, r.toBearings(i)...)
		out.Corners = append(out.Corners, jsonCornerMass{corner, r.CornerMass(i)})
	}
	return out
}
