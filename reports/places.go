package reports

import (
	"math"

	"sixlink/cases"
)

// motionSigns are the conventions of every output that shows a position.
const motionSigns = "travel of the wheel centre, bump positive; rack to the left positive; angles in degrees: camber positive where the top of the wheel leans outwards, " +
	"toe where its front points to the centreline, steer to the left, caster where the steering axis leans rearwards at its top, rocker as a rising wheel turns it, " +
	"links against the horizontal, positive where the outer joint is the higher one; track change outwards"

func degrees(rad float64) float64 { return rad * 180 / math.Pi }

// placed tells whether a load case has a wheel anywhere but where it is drawn.
func (r Report) placed() bool {
	for i := range r.Corners {
		for k := range r.Cases {
			if r.Corners[i].Moved(k) != nil {
				return true
			}
		}
	}
	return false
}

// sprung tells whether a load case takes its wheel loads from the springs.
func (r Report) sprung() bool {
	for _, c := range r.Cases {
		for _, w := range c.Wheels {
			if w.Spring != nil {
				return true
			}
		}
	}
	return false
}

// placesTables are the tables of what moves; none where nothing does.
func (r Report) placesTables() (out []Table) {
	if r.placed() {
		out = append(out, r.positions())
	}
	if r.sprung() {
		out = append(out, r.springs())
	}
	if len(r.Swings) > 0 {
		out = append(out, r.jointAngles())
	}
	return out
}

// positions has a line for each corner in each case that moves it.
func (r Report) positions() Table {
	t := Table{
		Name: "Positions", Title: "Positions of the corners in the load cases that move them; those that are not listed stand as drawn. Signs: " + motionSigns,
		Columns: []Column{
			{"no.", "", Text},
			{"load case", "", Text},
			{"corner", "", Text},
			{"travel", "mm", Full},
			{"rack", "mm", Full},
			{"contact x", "mm", Full},
			{"contact y", "mm", Full},
			{"contact z", "mm", Full},
			{"camber", "°", Full},
			{"toe", "°", Full},
			{"steer", "°", Full},
			{"caster", "°", Full},
			{"rocker", "°", Full},
			{"spring length", "mm", Full},
			{"rod force per wheel force", "N/N", Full},
		},
	}
	for k, lc := range r.Cases {
		for i := range r.Corners {
			p := r.Corners[i].Moved(k)
			if p == nil {
				continue
			}
			c := p.Corner.Contact
			t.Rows = append(t.Rows, []any{
				caseNo(k), lc.Name, words(cases.CornerNames[i]), p.Travel, p.Rack, c.X, c.Y, c.Z,
				degrees(p.Camber), degrees(p.Toe), degrees(p.Steer), degrees(p.Caster), degrees(p.Rocker), p.SpringLength, p.RodForce(),
			})
		}
	}
	return t
}

// springs has a line for each wheel load that belongs to a spring.
func (r Report) springs() Table {
	t := Table{
		Name: "Springs", Title: "Wheel loads that belong to springs: forces on the line of the spring, shortening positive (of a torsion bar N·mm and rad), and the contact force that they carry",
		Columns: []Column{
			{"no.", "", Text},
			{"load case", "", Text},
			{"corner", "", Text},
			{"travel", "mm", Full},
			{"shortened by", "mm, rad", Full},
			{"spring", "N, N·mm", Full},
			{"bump stop", "N", Full},
			{"damper speed", "m/s", Full},
			{"damper", "N", Full},
			{"sum", "N, N·mm", Full},
			{"contact force up", "N", Full},
		},
	}
	for k, lc := range r.Cases {
		for i, w := range lc.Wheels {
			if l := w.Spring; l != nil {
				t.Rows = append(t.Rows, []any{
					caseNo(k), lc.Name, words(cases.CornerNames[i]), lc.Place.Travel[i], l.Shortened, l.OfSpring, l.OfStop, l.Speed, l.OfDamper, l.Sum, w.Force.Z,
				})
			}
		}
	}
	return t
}

// jointAngles has a line for each bearing of an axle that gives its motion.
func (r Report) jointAngles() Table {
	t := Table{
		Name: "Bearing angles", Title: "Largest angle of each spherical bearing over the motion of its axle, and what is left up to the limit of the part; below 0 it fails",
		Columns: []Column{
			{"corner", "", Text},
			{"bearing", "", Text},
			{"part", "", Text},
			{"as drawn", "°", Tenth},
			{"by the motion", "°", Tenth},
			{"angle", "°", Tenth},
			{"limit", "°", Tenth},
			{"clearance", "°", Tenth},
			{"at travel", "mm", Tenth},
			{"at rack", "mm", Tenth},
			{"verdict", "", Text},
		},
	}
	for _, s := range r.Swings {
		said := dash
		if !math.IsNaN(s.Limit) {
			said = verdict(s.Passes())
		}
		t.Rows = append(t.Rows, []any{
			words(cases.CornerNames[s.Corner]), words(s.Joint), s.Part, s.Drawn, s.Motion, s.Angle(), s.Limit, s.Clearance(), s.Travel, s.Rack, said,
		})
	}
	return t
}

// textAngles shows the bearings that have a limit.
func (r Report) textAngles(p *page) {
	rows := [][]string{{"corner", "bearing", "part", "angle, °", "limit, °", "clearance, °", "at travel, mm", "at rack, mm", "verdict"}}
	for _, s := range r.Swings {
		if !math.IsNaN(s.Limit) {
			rows = append(rows, []string{
				words(cases.CornerNames[s.Corner]), words(s.Joint), printable(s.Part), Tenth.number(s.Angle()), Tenth.number(s.Limit), Tenth.number(s.Clearance()),
				Tenth.number(s.Travel), Tenth.number(s.Rack), verdict(s.Passes()),
			})
		}
	}
	if len(rows) == 1 {
		return
	}
	p.line("Angles of bearings over travel and rack; a clearance below 0 fails")
	p.folded(rows)
	p.line("")
}
