package reports

import (
	"sixlink/cases"
	"sixlink/loads"
	"sixlink/loads/compliance"
)

type (
	jsonStiffness struct {
		Gives  []jsonGive      `json:"gives"`
		Limits []jsonGiveLimit `json:"limits"`
	}
	jsonGive struct {
		Corner string         `json:"corner"`
		Load   string         `json:"load"`
		Per    string         `json:"per"`
		Whole  jsonMovement   `json:"whole"`
		Parts  []jsonGivePart `json:"parts"`
	}
	jsonGivePart struct {
		Part string `json:"part"`             // of compliance.KindNames
		Link string `json:"member,omitempty"` // absent: no member
		jsonMovement
	}
	jsonMovement struct {
		Toe     number `json:"toe"`
		Camber  number `json:"camber"`
		Caster  number `json:"caster"`
		Centre  vector `json:"centre"`
		Contact vector `json:"contact"`
	}
	jsonGiveLimit struct {
		Corner  string `json:"corner"`
		Load    string `json:"load"`
		Angle   string `json:"angle"`
		Change  number `json:"change"`
		Limit   number `json:"limit"`
		Reserve number `json:"reserve_factor"`
	}
)

// toStiffness returns the stiffness; nil where the car file gives none.
func (r Report) toStiffness() *jsonStiffness {
	out := &jsonStiffness{Gives: []jsonGive{}, Limits: []jsonGiveLimit{}}
	for i, c := range r.Corners {
		if c.Stiff == nil {
			continue
		}
		corner := cases.CornerNames[i]
		for j, load := range cases.GiveLoads {
			give := c.Stiff.Gives[j]
			g := jsonGive{Corner: corner, Load: load.Name, Per: load.Unit, Whole: toMovement(give.Whole), Parts: []jsonGivePart{}}
			for k, p := range c.Stiff.Parts {
				part := jsonGivePart{Part: compliance.KindNames[p.Kind], jsonMovement: toMovement(give.Parts[k])}
				if p.Link >= 0 {
					part.Link = loads.LinkNames[p.Link]
				}
				g.Parts = append(g.Parts, part)
			}
			out.Gives = append(out.Gives, g)
		}
		for _, f := range c.Stiff.Limits {
			out.Limits = append(out.Limits, jsonGiveLimit{
				corner, cases.GiveLoads[f.Load].Name, cases.GiveAngles[f.Angle], number(f.Change), number(f.Most), number(f.Reserve),
			})
		}
	}
	if len(out.Gives) == 0 {
		return nil
	}
	return out
}

func toMovement(m compliance.Movement) jsonMovement {
	return jsonMovement{
		number(cases.AngleOf(m, cases.Toe)), number(cases.AngleOf(m, cases.Camber)), number(cases.AngleOf(m, cases.Caster)),
		vec(m.Centre), vec(m.Contact),
	}
}
