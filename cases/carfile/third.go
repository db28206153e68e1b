package carfile

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r3"

	"sixlink/cases"
)

// thirdSpring joins the ends of the third spring of an axle whose sides are read, and
// refuses one without a length.
func (b *builder) thirdSpring(it *item, a *cases.Axle) {
	rk := a.Corner.Rocker
	if rk == nil || rk.Third == nil {
		return
	}
	if right := a.Right; right != nil && right.Corner.Rocker != nil && right.Corner.Rocker.Third != nil {
		other := right.Corner.Rocker.Third
		rk.Third.Far, other.Far = other.Rocker, rk.Third.Rocker
	}
	on := it.at("rocker").at("third").at("rocker")
	if d := r3.Norm(r3.Sub(rk.Third.Far, rk.Third.Rocker)); b.placed(on) && d < shortest {
		b.refuse(on, fmt.Sprintf("the ends of the third spring on the two rockers are %s mm apart, less than %d mm", short(d), shortest),
			"move the point off the centreline, to where the spring meets the left-hand rocker")
	}
}
