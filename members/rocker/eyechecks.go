package rocker

import "sixlink/members/check"

// EyeChecks are the checks of an eye as a lug.
var EyeChecks = []check.Check[Eye]{}

// EyeGivens returns the givens.
func EyeGivens(e Eye) []check.Step { return nil }
