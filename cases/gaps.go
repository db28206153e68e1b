package cases

import (
	"strings"

	"sixlink/loads"
)

// gaps lists the parts of the load path that no check covers, for this car: what its
// file gives is left out of the list.
func (r *Results) gaps() []string {
	return append(append(r.openJoints(), r.unratedBearings()...),
		"at the rockers: "+strings.Join(r.openRockers(), ", ")+" (their forces are given)",
		"uprights, wheel bearings, hubs, wheels, tyres and the chassis itself (the forces on them are given)",
		"members: "+strings.Join(r.openMembers(), ", "),
		"life (fatigue, corrosion, damage, wear); positions other than the one drawn (travel, steering lock), and the stiffness of the assembly",
	)
}

// openJoints names the ends of members of which the file says nothing.
func (r *Results) openJoints() []string {
	var open []string
	given := 0
	for i, axle := range r.Car.Axles {
		for j, p := range axle.Parts {
			for k, end := range p.Ends {
				if end.Given() {
					given++
					continue
				}
				open = append(open, AxleNames[i]+" "+strings.ReplaceAll(loads.LinkNames[j], "_", " ")+", "+EndNames[k])
			}
		}
	}
	const whatever = "spherical bearings, rod ends, threads, bolts, inserts, welds and lugs"
	switch {
	case len(open) == 0:
		return nil
	case given == 0:
		return []string{"joints: " + whatever}
	}
	return []string{"joints (" + whatever + ") at: " + strings.Join(open, "; ")}
}

// openRockers names what of the rockers the file does not give, and what no check knows.
func (r *Results) openRockers() []string {
	missing := map[string]bool{}
	for _, axle := range r.Car.Axles {
		rk := axle.Corner.Rocker
		if rk == nil {
			continue
		}
		parts := axle.Rocker
		if parts == nil {
			parts = &Rocker{}
		}
		missing["plates"] = missing["plates"] || parts.Plates == nil || parts.eyesMissing(rk)
		missing["bearings"] = missing["bearings"] || parts.Bearings == nil
		missing["pivot bolts"] = missing["pivot bolts"] || parts.Bolt == nil
		missing["torsion bars"] = missing["torsion bars"] || rk.Spring == nil && parts.Bar == nil
	}
	var out []string
	for _, name := range []string{"plates", "bearings", "pivot bolts", "torsion bars"} {
		if missing[name] {
			out = append(out, name)
		}
	}
	return append(out, "the bolts in their eyes, springs, dampers and the anti-roll system")
}

// eyesMissing tells whether an eye that the rocker has is not given with the plates.
func (p Rocker) eyesMissing(rk *loads.Rocker) bool {
	has := [loads.NumEyes]bool{loads.RodEye: true, loads.SpringEye: rk.Spring != nil, loads.AntiRollEye: rk.AntiRoll != nil}
	for i, there := range has {
		if there && p.Plates.Eyes[i] == nil {
			return true
		}
	}
	return false
}

// openMembers names what can bend or buckle a member beyond what the file gives.
func (r *Results) openMembers() []string {
	var eccentric, side bool
	for _, axle := range r.Car.Axles {
		for _, p := range axle.Parts {
			eccentric = eccentric || p.Sources.Eccentricity > 0
			side = side || p.Sources.SideLoad > 0
		}
	}
	var out []string
	for _, gap := range []struct {
		name  string
		given bool
	}{{"their own weight and inertia", r.Car.OwnInertia}, {"side loads", side}, {"eccentric ends", eccentric}} {
		if !gap.given {
			out = append(out, gap.name)
		}
	}
	return append(out, "walls that buckle together with the column, holes and dents")
}
