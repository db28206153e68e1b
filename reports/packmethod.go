package reports

import "sixlink/reports/paper"

// methodText says how the numbers of the pack come about.
var methodText = [][2]string{
	{"From the car to the road", "A load case is one of three kinds. Wheel factors are multiples of the static load of each wheel. A manoeuvre is an acceleration of the whole car at a speed: weight, inertia, downforce and drag are in equilibrium with the four contact forces, exactly in all six components; axles share the roll couple and the longitudinal force as the car file says, lateral force so that no yaw moment is left, and within an axle in proportion to the vertical load. A wheel never pulls on the road. Stated contact forces are taken as they are. A moment about the spin axis reaches the upright only where something on the upright holds the wheel."},
	{"From the road to the members", "The contact force, its moment about the wheel centre and the weight and inertia of the unsprung mass, where the case gives its acceleration, act on the upright. Six members with a spherical joint at each end hold it: six equations of equilibrium, six axial forces. The geometry is that of the drawn position; there are no small angles. A rod on a wishbone bends the legs of that wishbone: they are built into a rigid apex and spherical at their pick-ups, and the load is shared between them so that the strain energy is least. The rocker is a body on a pivot with two bearings; spring or torsion bar balances the torque of the rod, with the anti-roll link and the third spring where there are any, each for the stated share of its roll or heave part."},
	{"Audit", "After every solution the forces as printed are summed again on every free body, about a second point. A residual above 10⁻⁹ of the load fails the run; the worst one found is on the cover."},
	{"Checks", "Members: tension yield and ultimate, compression yield, column buckling (Euler above the transition slenderness, Johnson below it, or the curve or crookedness that the car file asks for), buckling of the wall, bending with axial force where something bends a member. Ends and rocker: what the car file describes of bearings, threads, bolts, lugs, welds, inserts, plates, pivot and torsion bar. Each check names its source beside it."},
	{"Reserve factor", "The reserve factor (RF) is the factor by which the whole load case could grow before the check reaches its limit, design factor included; also where a check is not linear in the load. RF below 1 fails. A check without a demand has no RF: a dash stands in its place. Reserve factors are cut to two decimals, never rounded up. The margin is RF − 1."},
	{"Governing case", "Of all checks of a member in all load cases the one with the lowest reserve factor governs. Its working is given in full."},
}

// method is the statement of method.
func (p *pack) method() {
	p.Section("Statement of method", false)
	for _, part := range methodText {
		p.Minor(part[0], paper.Keep/2)
		p.Paragraph(part[1])
	}
	p.Minor("Design factors", paper.Keep/2)
	p.Paragraph("As the car file sets them: " + p.r.factors() + ". Those who answer for the car answer for them too, under the rules that apply to it.")
	p.Minor("What is not covered", paper.Keep/2)
	p.Paragraph("Only what the car file describes is checked, at the drawn position and for the load cases listed here. The section Not checked lists the parts of the load path that no check covers; the section Notes lists the doubts that travel with the numbers.")
}
