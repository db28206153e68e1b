package members

import (
	"testing"

	"sixlink/members/check"
)

const (
	sp8007     = "NASA SP-8007 (1968), 4.2.1, as tabulated in a research paper"
	recomputed = "NASA SP-8007 (1968), 4.2.1 and 4.2.2, recomputed; no printed figure seen"
)

// ofRatio is a tube of the given ratio of mid-wall radius to wall.
func ofRatio(ratio float64) Tube { return Tube{OD: 2*ratio + 1, Wall: 1} }

// The row of r/t 10 of the first table, 0.82, is left out: the equation gives 0.838.
func TestPublishedKnockDown(t *testing.T) {
	for _, tt := range []struct {
		id, source     string
		k              float64
		ratio          float64
		want, halfUnit float64
	}{
		{"LOC-01", sp8007 + ", cut and not rounded", KnockDownAxial, 1000, 0.223, 0.001},
		{"LOC-01", sp8007, KnockDownAxial, 500, 0.322, 0.0005},
		{"LOC-01", sp8007, KnockDownAxial, 300, 0.404, 0.0005},
		{"LOC-01", sp8007, KnockDownAxial, 100, 0.581, 0.0005},
		{"LOC-01", sp8007, KnockDownAxial, 50, 0.678, 0.0005},
		{"LOC-01", sp8007, KnockDownAxial, 25, 0.758, 0.0005},
		{"LOC-02", "NASA SP-8007 (1968), 4.2.1", KnockDownAxial, 200, 0.471, 0.0005},
		{"LOC-03", recomputed, KnockDownBending, 10, 0.869, 0.0005},
		{"LOC-03", recomputed, KnockDownBending, 50, 0.739, 0.0005},
		{"LOC-03", recomputed, KnockDownBending, 100, 0.660, 0.0005},
		{"LOC-03", recomputed, KnockDownBending, 500, 0.450, 0.0005},
		{"LOC-03", recomputed, KnockDownBending, 1000, 0.370, 0.0005},
	} {
		quantity{"γ", ofRatio(tt.ratio).KnockDown(tt.k), tt.want, tt.halfUnit}.hold(t, tt.id, tt.source)
	}
	quantity{"φ at r/t 200", ofRatio(200).wallPhi(), 0.884, 0.0005}.hold(t, "LOC-02", "NASA SP-8007 (1968), 4.2.1")
}

func TestPublishedWallStress(t *testing.T) {
	thin := Strut{Section: ofRatio(100), Metal: metal(70e3, 300)}
	steelTube := Strut{Section: Tube{30, 1}, Metal: metal(205e3, 700)}
	for _, tt := range []struct {
		id string
		q  quantity
	}{
		{"LOC-04", quantity{"classical stress, MPa", thin.WallStress() / thin.tube().KnockDown(KnockDownAxial), 423.7, 0.05}},
		{"LOC-04", quantity{"axial, MPa", thin.WallStress(), 246.3, 0.05}},
		{"LOC-04", quantity{"bending, MPa", thin.WallStressBending(), 279.7, 0.05}},
		{"LOC-05", quantity{"mid-wall radius, mm", steelTube.tube().MidRadius(), 14.5, 0}},
		{"LOC-05", quantity{"γ", steelTube.tube().KnockDown(KnockDownAxial), 0.809, 0.0005}},
		{"LOC-05", quantity{"axial, MPa", steelTube.WallStress(), 6924, 0.5}},
	} {
		tt.q.hold(t, tt.id, recomputed)
	}
}

// LOC-05: yield governs in place of the elastic wall; LOC-04: the wall does.
func TestWallCap(t *testing.T) {
	steelTube := Subject{Strut{Tube{30, 1}, metal(205e3, 700), 300, 1, Column{}}, Load{Axial: -1}, check.Factors{Yield: 1, Ultimate: 1, Buckling: 1}}
	quantity{"capacity, N", finding(t, steelTube, wallBuckle).Capacity, steelTube.YieldLoad(), 1e-9}.hold(t, "LOC-05", recomputed)
	thin := Subject{Strut{ofRatio(100), metal(70e3, 300), 300, 1, Column{}}, Load{Axial: -1}, check.Factors{Yield: 1, Ultimate: 1, Buckling: 1}}
	quantity{"capacity, N", finding(t, thin, wallBuckle).Capacity, 246.3 * thin.Area(), 0.05 * thin.Area()}.hold(t, "LOC-04", recomputed)
}
