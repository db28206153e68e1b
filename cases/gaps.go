package cases

import (
	"strings"

	"sixlink/loads"
)

// gaps lists the parts of the load path that no check covers, for this car: what its
// file gives is left out of the list.
func (r *Results) gaps() []string {
	out := r.openJoints()
	if rockers := r.openRockers(); len(rockers) > 0 {
		out = append(out, "at the rockers: "+strings.Join(rockers, ", ")+" (their forces are given)")
	}
	return append(out,
		"uprights, "+r.carriers()+"wheel bearings, hubs, wheels, tyres, springs, dampers, anti-roll systems and the chassis itself (the forces on them are given)",
		"members: "+strings.Join(r.openMembers(), ", "),
		"life (fatigue, corrosion, damage, wear); "+r.openPlaces()+r.stiffnessGap(),
	)
}

// openPlaces names the positions in which nothing is calculated.
func (r *Results) openPlaces() string {
	if moved(r.Cases) {
		return "positions of travel and steering lock other than those of the load cases"
	}
	return "positions other than the one drawn (travel, steering lock)"
}

// carriers names what joins the legs of a wishbone that carries the rod.
func (r *Results) carriers() string {
	for _, s := range r.Car.Stations() {
		if s.Corner.Carrier != loads.Upright {
			return "the apex housing and the rod bracket of a carrying wishbone, "
		}
	}
	return ""
}

// openRockers names what of the rockers the file does not give, and what no check knows;
// nothing where there are none.
func (r *Results) openRockers() (out []string) {
	missing := map[string]bool{}
	rockers := false
	for _, s := range r.Car.Stations() {
		rk := s.Corner.Rocker
		if rk == nil {
			continue
		}
		parts := s.Rocker
		if parts == nil {
			parts = &Rocker{}
		}
		rockers = true
		missing["plates"] = missing["plates"] || parts.Plates == nil || parts.eyesMissing(rk)
		missing["bearings"] = missing["bearings"] || parts.Bearings == nil
		missing["pivot bolts"] = missing["pivot bolts"] || parts.Bolt == nil
		missing["torsion bars"] = missing["torsion bars"] || rk.Spring == nil && parts.Bar == nil
		missing["thrust of the pivot (no thrust_rating)"] = missing["thrust of the pivot (no thrust_rating)"] || parts.Bearings != nil && parts.Bearings.Thrust == 0
		missing["splines of torsion bars"] = missing["splines of torsion bars"] || rk.Spring == nil
	}
	if !rockers {
		return nil
	}
	for _, name := range []string{"plates", "bearings", "pivot bolts", "torsion bars", "thrust of the pivot (no thrust_rating)", "splines of torsion bars"} {
		if missing[name] {
			out = append(out, name)
		}
	}
	return append(out, "radial load and thrust of a bearing together", "the bolts in their eyes")
}

// eyesMissing tells whether an eye that the rocker has is not given with the plates.
func (p Rocker) eyesMissing(rk *loads.Rocker) bool {
	has := [loads.NumEyes]bool{loads.RodEye: true, loads.SpringEye: rk.Spring != nil, loads.AntiRollEye: rk.AntiRoll != nil, loads.ThirdEye: rk.Third != nil}
	for i, there := range has {
		if there && p.Plates.Eyes[i] == nil {
			return true
		}
	}
	return false
}

// openMembers names what can bend or buckle a member beyond what the file gives.
func (r *Results) openMembers() (out []string) {
	switch {
	case !r.Car.OwnInertia:
		out = append(out, "their own weight and inertia")
	case len(r.weightOnly()) > 0:
		out = append(out, "their own inertia in load cases without unsprung_acceleration")
	}
	for _, gap := range []struct {
		name  string
		given func(Part) bool
	}{
		{"side loads", func(p Part) bool { return p.Sources.SideLoad > 0 }},
		{"eccentric ends", func(p Part) bool { return p.Sources.Eccentricity > 0 }},
	} {
		if text, open := r.without(gap.given); open {
			out = append(out, gap.name+text)
		}
	}
	return append(out, "walls that buckle together with the column, holes and dents")
}

// without names the members for which something is not given, by the shorter list: empty
// where it is given for none; false: it is given for all.
func (r *Results) without(given func(Part) bool) (text string, open bool) {
	var with, lack []string
	for _, s := range r.Car.Stations() {
		for j, p := range s.Parts {
			if given(p) {
				with = append(with, s.Member(j))
			} else {
				lack = append(lack, s.Member(j))
			}
		}
	}
	switch {
	case len(with) == 0:
		return "", true
	case len(with) <= len(lack):
		return " (but for " + strings.Join(with, ", ") + ")", true
	}
	return " (of " + strings.Join(lack, ", ") + ")", len(lack) > 0
}

// weightOnly names the cases in which members that bend by their own inertia bend by
// their weight alone, for the case does not say how the wheels are accelerated.
func (r *Results) weightOnly() (names []string) {
	if !r.Car.OwnInertia {
		return nil
	}
	for _, c := range r.Cases {
		for _, w := range c.Wheels {
			if w.Unsprung == nil {
				names = append(names, c.Name)
				break
			}
		}
	}
	return names
}

// remarkInertia says in which cases the inertia of the members is left out.
func (r *Results) remarkInertia() {
	if names := r.weightOnly(); len(names) > 0 {
		r.note(Remark, "own_inertia: the members bend by 1 g of their weight alone in cases without unsprung_acceleration: %s", strings.Join(names, "; "))
	}
}
