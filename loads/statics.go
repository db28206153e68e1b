package loads

import (
	"math"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"
)

// Limits on the condition number of the scaled equilibrium equations. A healthy
// corner has a few units. Above CondRefuse the lever arm that holds the wheel is
// smaller than the clearance of a joint and no force found from it means anything;
// above CondDoubt the forces hang on millimetres. Common practice, no published
// source.
const (
	CondRefuse = 1e4
	CondDoubt  = 100
)

// Statics is a corner prepared for solving: its response to each component of the
// load on its upright.
type Statics struct {
	Corner Corner
	Cond   float64 // condition number of the scaled equilibrium equations

	reactions []reaction
	influence *mat.Dense // reactions × the six components of force and moment about the wheel centre
	rocker    rockerArms
}

// A reaction is one unknown: a force of unit direction at a point of one body, and
// its opposite on another where the two bodies hold each other.
type reaction struct {
	link        int // of loads.LinkNames; ballJoint for the joint between the bodies
	kind        reactionKind
	at, dir     r3.Vec
	body, other int     // other: none where the chassis reacts
	flexibility float64 // mm/N
}

type reactionKind int

const (
	axial reactionKind = iota
	shear
	joint
)

// The bodies of a corner.
const (
	none = iota - 1
	upright
	wishbone
)

// NewStatics prepares a corner. Its error is a *Mechanism where the links leave
// the upright free, or an error of the rocker.
//
// The upright and, where a wishbone carries the rod, that wishbone are free bodies
// in equilibrium, A·f = b, with f the reactions. Where f is not determined by that,
// it is the one of least strain energy:
//
//	| C  Aᵀ | | f |   | 0 |
//	| A  0  | | u | = | b |
//
// with C the flexibilities: 0 for the ball joint, L/EA along a link, L³/3EI across
// the tip of a leg that is built into the apex of a carrying wishbone.
func NewStatics(c Corner) (*Statics, error) {
	s := &Statics{Corner: c, reactions: c.reactions()}
	frame := c.frame()
	equilibrium := s.equilibrium(frame)
	if err := s.judge(equilibrium, frame); err != nil {
		return nil, err
	}
	if err := s.solve(equilibrium, frame); err != nil {
		return nil, err
	}
	if c.Rocker != nil {
		if err := s.prepareRocker(); err != nil {
			return nil, err
		}
	}
	return s, nil
}

// reactions lists the unknowns of the corner.
func (c Corner) reactions() []reaction {
	front, rear, carried := c.Carrier.Legs()
	var out []reaction
	for i, l := range c.Links {
		r := reaction{link: i, at: l.Outer, dir: l.Direction(), other: none}
		if carried { // else determinate: sections do not matter
			r.flexibility = l.Length() / l.EA
		}
		leg := carried && (i == front || i == rear)
		if carried && (leg || i == Rod) {
			r.body = wishbone
		}
		if leg {
			r.at = l.Inner
		}
		out = append(out, r)
		if leg {
			e1, e2 := across(r.dir)
			r.kind, r.flexibility = shear, math.Pow(l.Length(), 3)/(3*l.EI)
			for _, r.dir = range []r3.Vec{e1, e2} {
				out = append(out, r)
			}
		}
	}
	if carried {
		for _, dir := range []r3.Vec{{X: 1}, {Y: 1}, {Z: 1}} {
			out = append(out, reaction{kind: joint, at: c.Links[front].Outer, dir: dir, body: upright, other: wishbone})
		}
	}
	return out
}

// across returns two unit vectors that are square to u and to each other.
func across(u r3.Vec) (e1, e2 r3.Vec) {
	axis := r3.Vec{X: 1}
	if math.Abs(u.X) > 0.6 { // at most two of the components are, so one of the axes is well off u
		axis = r3.Vec{Y: 1}
	}
	e1 = r3.Unit(r3.Cross(u, axis))
	return e1, r3.Cross(u, e1)
}

// A frame is the point about which moments are taken and the length by which they
// are divided, so that forces and moments weigh alike.
type frame struct {
	origin r3.Vec
	length float64 // mm
}

// frame returns the centroid of the joints and their root-mean-square distance
// from it, taken over the outer joints: those are the levers that hold the upright.
func (c *Corner) frame() frame {
	var f frame
	for i := range c.Links {
		f.origin = r3.Add(f.origin, r3.Scale(1.0/NumLinks, c.Links[i].Outer))
	}
	for i := range c.Links {
		f.length += r3.Norm2(r3.Sub(c.Links[i].Outer, f.origin)) / NumLinks
	}
	f.length = math.Sqrt(f.length)
	return f
}

// wrench returns a force at a point as six scaled components about the frame.
func (f *frame) wrench(force, at r3.Vec) [6]float64 {
	m := r3.Scale(1/f.length, f.moment(force, at))
	return [6]float64{force.X, force.Y, force.Z, m.X, m.Y, m.Z}
}

// moment returns the moment of a force at a point about the origin of the frame, N·mm.
func (f *frame) moment(force, at r3.Vec) r3.Vec { return r3.Cross(r3.Sub(at, f.origin), force) }

// equilibrium returns A: six scaled equations for each body, a column for each reaction.
func (s *Statics) equilibrium(f frame) *mat.Dense {
	bodies := 1
	if s.Corner.Carrier != Upright {
		bodies = 2
	}
	a := mat.NewDense(6*bodies, len(s.reactions), nil)
	for j, r := range s.reactions {
		for i, w := range f.wrench(r.dir, r.at) {
			a.Set(6*r.body+i, j, w)
			if r.other != none {
				a.Set(6*r.other+i, j, -w)
			}
		}
	}
	return a
}

// solve fills the influence matrix.
func (s *Statics) solve(a *mat.Dense, f frame) error {
	m, n := a.Dims()
	soft := math.SmallestNonzeroFloat64 // all 0 in a determinate corner
	for _, r := range s.reactions {
		soft = math.Max(soft, r.flexibility)
	}
	k := mat.NewDense(n+m, n+m, nil)
	for j, r := range s.reactions {
		k.Set(j, j, r.flexibility/soft)
	}
	k.Slice(n, n+m, 0, n).(*mat.Dense).Copy(a)
	k.Slice(0, n, n, n+m).(*mat.Dense).Copy(a.T())

	rhs := mat.NewDense(n+m, 6, nil)
	for j := range 3 {
		unit := axisVec(j)
		for i, w := range f.wrench(unit, s.Corner.Centre) {
			rhs.Set(n+i, j, -w)
		}
		rhs.Set(n+3+j, 3+j, -1/f.length)
	}
	var x mat.Dense
	if err := x.Solve(k, rhs); err != nil {
		return err
	}
	s.influence = mat.DenseCopyOf(x.Slice(0, n, 0, 6))
	return nil
}

func axisVec(i int) r3.Vec {
	return [3]r3.Vec{{X: 1}, {Y: 1}, {Z: 1}}[i]
}
