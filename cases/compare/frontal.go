package compare

import (
	"math"
	"slices"

	"sixlink/cases"
	"sixlink/loads"
)

// A point lies in the plane across the car, mm: y to the left, z up.
type point struct{ y, z float64 }

// A shape is a convex polygon.
type shape []point

// capParts is the number of straight parts that stand for each half ellipse.
const capParts = 24

// FrontalArea returns the area of the six links of one corner seen along the car, mm²,
// what lies behind another counted once: the area of the union of their projections
// on the plane x = const. Each is a straight cylinder from joint centre to joint
// centre, as wide as its section, with flat ends; its projection is a rectangle
// between two half ellipses. Those are cut into straight parts without changing their
// area, and the union of the polygons is exact.
func FrontalArea(s cases.Side) float64 {
	var shapes []shape
	for j, l := range s.Corner.Links {
		shapes = append(shapes, projection(l, s.Parts[j].Strut.Width()))
	}
	return unionArea(shapes)
}

// projection is a cylinder seen along x. At an angle θ between its axis and x, the
// area is w·L·sinθ + π·w²/4·cosθ: the rectangle and the two half ellipses.
func projection(l loads.Link, width float64) shape {
	p, q := point{l.Outer.Y, l.Outer.Z}, point{l.Inner.Y, l.Inner.Z}
	along := point{1, 0}
	seen := math.Hypot(q.y-p.y, q.z-p.z)
	if seen > 0 {
		along = point{(q.y - p.y) / seen, (q.z - p.z) / seen}
	}
	across := point{-along.z, along.y}
	half := width / 2
	depth := half * math.Abs(l.Direction().X) * (math.Pi / capParts) / math.Sin(math.Pi/capParts)
	var out shape
	for _, end := range []struct {
		at   point
		side float64
	}{{q, 1}, {p, -1}} {
		for i := range capParts + 1 {
			sin, cos := math.Sincos(math.Pi * (float64(i)/capParts - 0.5))
			u, v := end.side*depth*cos, end.side*half*sin
			out = append(out, point{end.at.y + u*along.y + v*across.y, end.at.z + u*along.z + v*across.z})
		}
	}
	return out
}

// unionArea returns the area that convex polygons cover together. Between two heights
// at which no polygon has a corner and no two edges cross, the covered width changes
// linearly, so the width half-way times the difference is exact.
func unionArea(shapes []shape) float64 {
	heights := breaks(shapes)
	area := 0.0
	for i := 1; i < len(heights); i++ {
		low, high := heights[i-1], heights[i]
		area += (high - low) * covered(shapes, low+(high-low)/2)
	}
	return area
}

// breaks returns the heights of all corners and of all crossings of edges, in order.
func breaks(shapes []shape) (out []float64) {
	for i, s := range shapes {
		for _, p := range s {
			out = append(out, p.z)
		}
		for _, other := range shapes[:i] {
			out = append(out, crossings(s, other)...)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// crossings returns the heights at which edges of two polygons cross.
func crossings(a, b shape) (out []float64) {
	for i := range a {
		p, q := a[i], a[(i+1)%len(a)]
		for j := range b {
			r, s := b[j], b[(j+1)%len(b)]
			if max(p.z, q.z) < min(r.z, s.z) || max(r.z, s.z) < min(p.z, q.z) {
				continue
			}
			d := (q.y-p.y)*(s.z-r.z) - (q.z-p.z)*(s.y-r.y)
			t := ((r.y-p.y)*(s.z-r.z) - (r.z-p.z)*(s.y-r.y)) / d
			if t >= 0 && t <= 1 { // false for parallel edges, where t has no value
				out = append(out, p.z+t*(q.z-p.z))
			}
		}
	}
	return out
}

// covered returns the width that the polygons cover together at a height.
func covered(shapes []shape, z float64) float64 {
	type span struct{ from, to float64 }
	var spans []span
	for _, s := range shapes {
		if from, to, ok := s.at(z); ok {
			spans = append(spans, span{from, to})
		}
	}
	slices.SortFunc(spans, func(a, b span) int {
		if a.from < b.from {
			return -1
		}
		return 1
	})
	width, reached := 0.0, math.Inf(-1)
	for _, s := range spans {
		if s.to > reached {
			width += s.to - math.Max(s.from, reached)
			reached = s.to
		}
	}
	return width
}

// at returns where a polygon begins and ends at a height that none of its corners has.
func (s shape) at(z float64) (from, to float64, ok bool) {
	from, to = math.Inf(1), math.Inf(-1)
	for i, p := range s {
		q := s[(i+1)%len(s)]
		if (p.z < z) == (q.z < z) {
			continue
		}
		y := p.y + (z-p.z)/(q.z-p.z)*(q.y-p.y)
		from, to = math.Min(from, y), math.Max(to, y)
	}
	return from, to, from < to
}
