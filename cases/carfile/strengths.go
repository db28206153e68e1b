package carfile

import (
	"fmt"

	"sixlink/materials"
)

// moreStrengths reads what moreMaterialKeys name, and holds it to what is possible: no
// metal is stronger in shear than in tension, and a hole bears more the farther it is
// from the edge.
func (b *builder) moreStrengths(e *item, m *materials.Metal) {
	m.Scy, m.Ssu, m.Elongation = e.at("compressive_yield").number(), e.at("shear_ultimate").number(), e.at("elongation").number()
	if shear := e.at("shear_ultimate"); whole(shear, e.at("ultimate_strength")) && m.Ssu > m.Su {
		b.refuse(shear, fmt.Sprintf("%s MPa is more than the ultimate strength in tension, %s MPa", short(m.Ssu), short(m.Su)), "exchange the two, or correct one")
	}
	bearing := e.at("bearing_ultimate")
	if !bearing.good {
		return
	}
	near, far := bearing.numbers[materials.EdgeNear], bearing.numbers[materials.EdgeFar]
	m.Sbru = [2]float64{materials.EdgeNear: near, materials.EdgeFar: far}
	if near > far {
		b.refuse(bearing, fmt.Sprintf("%s MPa at e/D 1.5 is more than %s MPa at e/D 2.0", short(near), short(far)), "give the value at e/D 1.5 first, then that at 2.0")
	}
}
