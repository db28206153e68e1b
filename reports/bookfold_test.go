package reports

import "testing"

// standsAlone counts the reserve factors whose formula does not give what the checks found.
func standsAlone(t testing.TB, r Report) int {
	c, err := newCalculation(r)
	if err != nil {
		t.Fatal(err)
	}
	n := 0
	for _, f := range c.families {
		for _, u := range f.units {
			for _, check := range u.checks {
				for side := range 2 {
					for k := range r.Cases {
						if _, live := c.reserve(u, check, 2*u.axle+side, k); !live {
							n++
							if n < 10 {
								t.Logf("%s, %s, side %d case %d: %g", u.title, check.Check, side, k, check.value(check.reserve, side, k))
							}
						}
					}
				}
			}
		}
	}
	return n
}
