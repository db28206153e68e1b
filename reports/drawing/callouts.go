package drawing

import (
	"cmp"
	"math"
	"slices"
)

// A Callout is a label that stands in a gutter beside what it names, with a leader to it.
type Callout struct {
	Targets []Point // where the leader may end, the best first
	Owner   int     // of the obstacles that the leader may cross: its own
}

// A Gutter is a column for callouts: its edge towards the drawing and its height, mm.
type Gutter struct{ X, Top, Bottom float64 }

// An Obstacle is a straight piece that leaders should not cross.
type Obstacle struct {
	A, B  Point
	Owner int
}

// A Place is where a callout stands.
type Place struct {
	Right  bool    // in the right gutter
	Middle float64 // height of its middle, mm
	Target Point   // end of its leader
}

// A Gutters is the room for callouts: left, right, each row so high.
type Gutters struct {
	Left, Right Gutter
	Row         float64 // mm
}

// Rows is how many callouts a gutter holds.
func (g Gutters) Rows(right bool) int {
	side := g.side(right)
	return int((side.Bottom - side.Top) / g.Row)
}

func (g Gutters) side(right bool) Gutter {
	if right {
		return g.Right
	}
	return g.Left
}

// What a leader costs beside its length, mm: crossing another leader, crossing an
// obstacle, and a callout for which there is no room.
const (
	costLeader   = 60
	costObstacle = 8
	costRoom     = 1e6
)

// Place finds places in which no callout overlaps another and leaders are short and
// cross little: from a first order it moves one callout at a time while that helps.
// The same callouts get the same places.
func (g Gutters) Place(callouts []Callout, obstacles []Obstacle) []Place {
	s := &search{g: g, callouts: callouts, obstacles: obstacles, target: make([]int, len(callouts))}
	middle := (g.Left.X + g.Right.X) / 2
	for i, c := range callouts {
		side := 0
		if c.Targets[0].X > middle {
			side = 1
		}
		s.order[side] = append(s.order[side], i)
	}
	for side := range s.order {
		slices.SortStableFunc(s.order[side], func(a, b int) int {
			return cmp.Compare(callouts[a].Targets[0].Y, callouts[b].Targets[0].Y)
		})
	}
	s.best = s.cost()
	for range 100 { // each round lowers the cost: far fewer are needed
		if !s.improve() {
			break
		}
	}
	return s.places()
}

// A search is an arrangement that is being made better.
type search struct {
	g         Gutters
	callouts  []Callout
	obstacles []Obstacle
	order     [2][]int // the callouts of left and right gutter, from the top
	target    []int    // by callout: which of its targets
	best      float64
}

// improve tries every change of one callout and keeps those that help.
func (s *search) improve() (better bool) {
	for i := range s.callouts {
		for t := range s.callouts[i].Targets {
			old := s.target[i]
			s.target[i] = t
			if s.keep() {
				better = true
			} else {
				s.target[i] = old
			}
		}
		for side := range s.order {
			for at := 0; at <= len(s.order[side]); at++ {
				old := [2][]int{slices.Clone(s.order[0]), slices.Clone(s.order[1])}
				s.move(i, side, at)
				if s.keep() {
					better = true
				} else {
					s.order = old
				}
			}
		}
	}
	return better
}

func (s *search) keep() bool {
	if c := s.cost(); c < s.best-1e-6 {
		s.best = c
		return true
	}
	return false
}

func (s *search) move(i, side, at int) {
	for k := range s.order {
		s.order[k] = slices.DeleteFunc(slices.Clone(s.order[k]), func(j int) bool { return j == i })
	}
	s.order[side] = slices.Insert(s.order[side], min(at, len(s.order[side])), i)
}

// places puts the callouts of each gutter as near to the height of their targets as
// their order and the room allow.
func (s *search) places() []Place {
	out := make([]Place, len(s.callouts))
	for side, order := range s.order {
		g := s.g.side(side == 1)
		at := make([]float64, len(order))
		for k, i := range order {
			at[k] = math.Max(s.callouts[i].Targets[s.target[i]].Y, g.Top+s.g.Row/2)
			if k > 0 {
				at[k] = math.Max(at[k], at[k-1]+s.g.Row)
			}
		}
		floor := g.Bottom - s.g.Row/2
		for k := len(order) - 1; k >= 0; k-- {
			at[k] = math.Min(at[k], floor)
			floor = at[k] - s.g.Row
		}
		for k, i := range order {
			out[i] = Place{side == 1, at[k], s.callouts[i].Targets[s.target[i]]}
		}
	}
	return out
}

func (s *search) cost() (sum float64) {
	places := s.places()
	for side := range s.order {
		if over := len(s.order[side]) - s.g.Rows(side == 1); over > 0 {
			sum += costRoom * float64(over)
		}
	}
	for i, p := range places {
		from := Point{s.g.side(p.Right).X, p.Middle}
		sum += math.Hypot(p.Target.X-from.X, p.Target.Y-from.Y)
		for _, q := range places[:i] {
			if Cross(from, p.Target, Point{s.g.side(q.Right).X, q.Middle}, q.Target) {
				sum += costLeader
			}
		}
		for _, o := range s.obstacles {
			if o.Owner != s.callouts[i].Owner && Cross(from, p.Target, o.A, o.B) {
				sum += costObstacle
			}
		}
	}
	return sum
}

// Cross tells whether two straight pieces cross inside both.
func Cross(a, b, c, d Point) bool {
	return turn(a, b, c)*turn(a, b, d) < 0 && turn(c, d, a)*turn(c, d, b) < 0
}

// turn is twice the area of a triangle, positive where it runs clockwise on the sheet.
func turn(a, b, c Point) float64 { return (b.X-a.X)*(c.Y-a.Y) - (b.Y-a.Y)*(c.X-a.X) }

// Hull returns the outline of the points: the smallest polygon without a dent that
// holds them all (monotone chain; A. M. Andrew, Inf. Proc. Letters 9, 1979).
func Hull(points []Point) []Point {
	sorted := slices.Clone(points)
	slices.SortFunc(sorted, func(a, b Point) int { return cmp.Or(cmp.Compare(a.X, b.X), cmp.Compare(a.Y, b.Y)) })
	half := func() (out []Point) {
		for _, p := range sorted {
			for len(out) >= 2 && turn(out[len(out)-2], out[len(out)-1], p) <= 0 {
				out = out[:len(out)-1]
			}
			out = append(out, p)
		}
		return out
	}
	lower := half()
	slices.Reverse(sorted)
	upper := half()
	return append(lower[:max(0, len(lower)-1)], upper[:max(0, len(upper)-1)]...)
}
