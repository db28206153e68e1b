package cases

import (
	"strings"

	"sixlink/materials"

	"sixlink/loads"
)

// CornerMass returns the mass of the six members of a corner, kg, joint centre to joint
// centre, with that of the bearings of their ends where the file gives it.
func (r *Results) CornerMass(corner int) (sum float64) {
	for _, m := range r.Corners[corner].Members {
		sum += m.Strut.Mass()
	}
	for _, b := range r.EndBearings(corner) {
		if !b.Shares {
			sum += b.Mass
		}
	}
	return sum
}

// MembersMass returns the mass of the members of all four corners, kg, counted as that
// of a corner.
func (r *Results) MembersMass() (sum float64) {
	for i := range r.Corners {
		sum += r.CornerMass(i)
	}
	return sum
}

// remarkParts names the members without a part number where others have one.
func (r *Results) remarkParts() {
	var without []string
	all := 0
	for _, s := range r.Car.Stations() {
		for j, p := range s.Parts {
			all++
			if p.Number == "" {
				without = append(without, s.Name+" "+loads.LinkNames[j])
			}
		}
	}
	if len(without) > 0 && len(without) < all {
		r.note(Remark, "without a part number: %s", strings.Join(without, ", "))
	}
}

// remarkCompression names the materials whose source gives no compressive yield
// strength.
func (r *Results) remarkCompression() {
	var names []string
	seen := map[string]bool{}
	for _, s := range r.Car.Stations() {
		for _, p := range s.Parts {
			if m := p.Strut.Metal; p.Laminate == nil && !(m.Scy > 0) && !seen[m.Name] {
				seen[m.Name] = true
				names = append(names, m.Name)
			}
		}
	}
	if len(names) > 0 {
		r.note(Remark, "no compressive yield strength is given for %s: compression is judged with the yield strength in tension", strings.Join(names, ", "))
	}
}

// Metals lists the materials in use, each row of the table and each material of the
// user's own once: those of the members in their order, of what is at their ends, and of
// the plates and torsion bars of the rockers.
func (c Car) Metals() (out []materials.Metal) {
	type band struct {
		name string
		wall float64
	}
	seen := map[band]bool{}
	add := func(m materials.Metal) {
		if key := (band{m.Name, m.WallTo}); m.Name != "" && !seen[key] {
			seen[key] = true
			out = append(out, m)
		}
	}
	for _, s := range c.Stations() {
		for _, p := range s.Parts {
			add(p.Strut.Metal)
			for _, end := range p.Ends {
				for _, m := range end.Metals() {
					add(m)
				}
			}
		}
		if rk := s.Rocker; rk != nil && rk.Plates != nil {
			add(rk.Plates.Metal)
		}
		if rk := s.Rocker; rk != nil && rk.Bar != nil {
			add(rk.Bar.Metal)
		}
	}
	return out
}
