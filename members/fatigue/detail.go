package fatigue

import (
	_ "embed"
	"fmt"
	"math"
	"slices"
	"sync"
)

//go:embed details.csv
var detailsCSV string

// A Detail is one row of the tables of EN 1993-1-9.
type Detail struct {
	Name, What     string
	Category       float64 // range at 2 million cycles, MPa
	Slope          float64 // 3, then 5 from 5 million cycles; or 5 throughout
	Shear          bool    // the range is that of a shear stress
	WallOver       float64 // wall above which the row holds, mm
	WallTo         float64 // and up to which; 0: no limit stated
	SizeOver       float64 // dimension above which the category shrinks, mm; 0: it does not
	SizeExponent   float64
	Source, Remark string
}

// Categories are the detail categories of direct stress: EN 1993-1-9:2005, Figure 7.1.
var Categories = []float64{160, 140, 125, 112, 100, 90, 80, 71, 63, 56, 50, 45, 40, 36}

var builtInDetails = sync.OnceValue(func() []Detail {
	details, err := readTable(detailsCSV,
		[]string{"name", "what", "stress", "category", "slope", "wall_over", "wall_to", "size_over", "size_exponent"}, readDetail)
	if err != nil {
		panic("details.csv: " + err.Error())
	}
	return details
})

func readDetail(r *row) Detail {
	d := Detail{
		Name: r.text("name"), What: r.text("what"), Category: r.positive("category"), Slope: r.positive("slope"),
		Shear: r.text("stress") == "shear", WallOver: r.number("wall_over"), WallTo: r.number("wall_to"),
		SizeOver: r.number("size_over"), SizeExponent: r.number("size_exponent"), Source: r.source(), Remark: r.cells["remark"],
	}
	if s := r.cells["stress"]; s != "direct" && s != "shear" {
		r.refuse("stress %q: write direct or shear", s)
	}
	if !slices.Contains(Categories, d.Category) || d.Slope != 3 && d.Slope != 5 || d.Shear && d.Slope != 5 {
		r.refuse("category %g of slope %g is none of the standard's: correct it", d.Category, d.Slope)
	}
	return d
}

// Details returns the rows of the table, in its order. The slice is the caller's own.
func Details() []Detail { return slices.Clone(builtInDetails()) }

// FindDetail returns the detail of that name. The error is an *UnknownError.
func FindDetail(name string) (Detail, error) {
	return find("detail", name, builtInDetails(), func(d Detail) string { return d.Name })
}

// SizeFactor returns k_s for a dimension, mm: of a bolt its diameter.
//
//	k_s = (30/d)^0.25 above 30 mm    EN 1993-1-9:2005, Table 8.1, detail 14, from memory
func (d Detail) SizeFactor(size float64) float64 {
	if d.SizeOver == 0 || size <= d.SizeOver {
		return 1
	}
	return math.Pow(d.SizeOver/size, d.SizeExponent)
}

// WallDoubt returns the doubt about a detail on a wall, mm; empty: none. Below 4 mm there
// is always one: the tables rest on tests of structural sections.
func (d Detail) WallDoubt(wall float64) string {
	switch {
	case d.WallOver > 0 && !(wall > d.WallOver):
		return fmt.Sprintf("detail %q holds for walls over %g mm, not for %g mm: choose the detail of the thinner wall", d.Name, d.WallOver, wall)
	case d.WallTo > 0 && !(wall <= d.WallTo):
		return fmt.Sprintf("detail %q holds for walls up to %g mm, not for %g mm: choose another detail", d.Name, d.WallTo, wall)
	case !(wall >= thinWall):
		return fmt.Sprintf("detail %q on a wall of %g mm: the categories rest on tests of structural sections, which are seldom below %g mm "+
			"(common practice, no published source); misalignment and undercut weigh more on a thin wall: prove it by test", d.Name, wall, float64(thinWall))
	}
	return ""
}

const thinWall = 4 // mm
