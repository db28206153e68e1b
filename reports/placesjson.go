package reports

import (
	"sixlink/cases"
	"sixlink/loads"
	"sixlink/loads/motion"
)

// The form of positions, springs and bearing angles in JSON; angles in degrees, signs as
// motionSigns has them.
type (
	jsonPosition struct {
		Corner   string    `json:"corner"`
		Travel   number    `json:"travel"`
		Rack     number    `json:"rack"`
		Centre   vector    `json:"wheel_centre"`
		Contact  vector    `json:"contact"`
		Camber   number    `json:"camber_deg"`
		Toe      number    `json:"toe_deg"`
		Steer    number    `json:"steer_deg"`
		Caster   number    `json:"caster_deg"`
		Rocker   number    `json:"rocker_deg"`
		Spring   number    `json:"spring_length"`
		RodForce number    `json:"rod_force_per_wheel_force"`
		Links    jsonLines `json:"links"`
	}
	jsonLines [loads.NumLinks]jsonLine
	jsonLine  struct {
		Member string `json:"member"`
		Outer  vector `json:"outer"`
		Inner  vector `json:"inner"`
	}
	jsonSpring struct {
		Corner    string `json:"corner"`
		Bar       bool   `json:"torsion_bar"` // then rad and N·mm in the place of mm and N
		Shortened number `json:"shortened"`
		Spring    number `json:"spring"`
		Stop      number `json:"bump_stop"`
		Speed     number `json:"damper_speed"`
		Damper    number `json:"damper"`
		Sum       number `json:"sum"`
		Load      number `json:"contact_force_up"`
	}
	jsonSwing struct {
		Corner    string `json:"corner"`
		Bearing   string `json:"bearing"`
		Part      string `json:"part,omitempty"`
		Drawn     number `json:"as_drawn_deg"`
		Motion    number `json:"by_motion_deg"`
		Limit     number `json:"limit_deg"`
		Clearance number `json:"clearance_deg"`
		Travel    number `json:"at_travel"`
		Rack      number `json:"at_rack"`
		Pass      bool   `json:"pass"`
	}
)

func (r Report) toPositions(k int) (out []jsonPosition) {
	for i := range r.Corners {
		if p := r.Corners[i].Moved(k); p != nil {
			out = append(out, toPosition(i, p))
		}
	}
	return out
}

func toPosition(corner int, p *motion.Position) jsonPosition {
	out := jsonPosition{
		Corner: cases.CornerNames[corner], Travel: number(p.Travel), Rack: number(p.Rack), Centre: vec(p.Corner.Centre), Contact: vec(p.Corner.Contact),
		Camber: number(degrees(p.Camber)), Toe: number(degrees(p.Toe)), Steer: number(degrees(p.Steer)), Caster: number(degrees(p.Caster)),
		Rocker: number(degrees(p.Rocker)), Spring: number(p.SpringLength), RodForce: number(p.RodForce()),
	}
	for i, l := range p.Corner.Links {
		out.Links[i] = jsonLine{loads.LinkNames[i], vec(l.Outer), vec(l.Inner)}
	}
	return out
}

func toSprings(lc cases.LoadCase) (out []jsonSpring) {
	for i, w := range lc.Wheels {
		if l := w.Spring; l != nil {
			out = append(out, jsonSpring{
				cases.CornerNames[i], l.Bar, number(l.Shortened), number(l.OfSpring), number(l.OfStop), number(l.Speed), number(l.OfDamper), number(l.Sum), number(w.Force.Z),
			})
		}
	}
	return out
}

func (r Report) toSwings() (out []jsonSwing) {
	for _, s := range r.Swings {
		out = append(out, jsonSwing{
			cases.CornerNames[s.Corner], s.Joint, s.Part, number(s.Drawn), number(s.Motion), number(s.Limit), number(s.Clearance()), number(s.Travel), number(s.Rack), s.Passes(),
		})
	}
	return out
}
