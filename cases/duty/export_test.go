package duty

import (
	"bufio"
	"context"
	"strings"

	"sixlink/cases"
	"sixlink/loads"
	"sixlink/members"
	"sixlink/members/fatigue"
	"sixlink/members/fatigue/count"
	"sixlink/members/stock"
)

// SetPieceSize sets how much of a file is carried through at a time, for the time of a test.
func SetPieceSize(n int) (restore func()) {
	was := pieceSize
	pieceSize = n
	return func() { pieceSize = was }
}

// Followed returns axial force, N, and bending, N·mm, of every link of every corner in a
// row of a history, by the influence of the corners.
func Followed(car *cases.Car, h *History, row []float64) (out [cases.NumCorners][loads.NumLinks][2]float64, why cases.Reason) {
	var on corners
	if why = newPose(car, h).at(row, &on); why != "" {
		return out, why
	}
	for c := range out {
		side := car.Side(c)
		var r loads.Response
		r.Set(&side.Corner)
		i := r.Influence()
		for link := range out[c] {
			out[c][link][0], out[c][link][1] = i.Of(link, &on[c])
		}
	}
	return out, ""
}

// OnGrid returns a curve by the worst cycles of the cells of the grid.
func OnGrid(c fatigue.Curve) fatigue.Curve { return newGridded(c) }

// Parse reads a number as the rows of a log are read.
func Parse(cell string) (float64, bool) { return parse([]byte(cell)) }

// CurveOf returns the curve of a member; an empty reason: it can have it.
func CurveOf(c Curve, s members.Strut, survival float64) (fatigue.Curve, string) {
	out, refused := c.of(s, survival)
	if refused != nil {
		return nil, refused.Key + ": " + refused.Text + ": " + refused.Remedy
	}
	return out, ""
}

// Fits says why a member cannot have a detail; empty: it can.
func Fits(d *Detail, s members.Strut) string {
	if _, _, refused := d.fit(s, 0.5); refused != nil {
		return refused.Key + ": " + refused.Text + ": " + refused.Remedy
	}
	return ""
}

// DoubtsOf are those of a detail on a member that do not depend on the cycles.
func DoubtsOf(d *Detail, s members.Strut) []string { return d.doubts(s) }

// Joined returns the cycles of a lap of runs of parts, each a history of one stress with
// its times a lap: what is inside a run and what the runs leave open.
func Joined(parts [][]float64, times []float64) (out []count.Cycle) {
	var all []*outcome
	for i, values := range parts {
		c := count.New(func(c count.Cycle) {
			c.Count *= times[i]
			out = append(out, c)
		})
		_ = c.PushAll(values) // finite numbers
		o := &outcome{perLap: times[i], open: []open{openOf(c.Residue())}, at: func(int64) string { return "" }}
		all = append(all, o)
	}
	join(all, 0, func(_ string, c count.Cycle) { out = append(out, c) })
	return out
}

// InCase returns axial force, N, and shear times length at the inner joint, N·mm, square to
// the plane of the legs and in it, of every link of every corner as a block has them in a
// load case.
func InCase(r *cases.Results, k int) (out [cases.NumCorners][loads.NumLinks][3]float64) {
	d := Duty{}
	p, err := newPlan(&d, &r.Car, stock.List{})
	if err != nil {
		panic(err)
	}
	s := p.scene(r, k)
	for c := range out {
		for link := range out[c] {
			i := s.states[c]
			for j, row := range [3]*[6]float64{&i.Axial[link], &i.Bending[link][0], &i.Bending[link][1]} {
				for n, x := range s.on[c] {
					out[c][link][j] += row[n] * x
				}
			}
		}
	}
	return out
}

// Through carries lines through with two workers that hire makes.
func Through(lines string, hire func()) error {
	r := &reading{in: bufio.NewReader(strings.NewReader(lines)), history: &History{}}
	first, err := r.next()
	if err != nil {
		return err
	}
	return r.through(context.Background(), 2, first, func() *worker {
		hire()
		return nil // on which count panics
	}, func(*counted) error { return nil })
}
