package ends

// Probes pulls and bends the end, across its axis too: every check applies that may ever
// apply.
func (s Subject) Probes() []Subject {
	s.Load = Load{Axial: 1, End: 1, Bending: 1, Shear: 1}
	return []Subject{s}
}

// tugs and tears are above 0 where Subject.pulls is true of the force on the end of the
// member and of that on the joint.
const (
	tugs  = "min(P; max(max(N; R − |N|); P − 1.000000001·|N| − R))"
	tears = "min(F; max(max(N; R − |N|); F − 1.000000001·|N| − R))"
)
