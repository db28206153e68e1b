// Package sheets reads and writes a car file as a workbook: the same keys, by the same
// table, in the cells of sheets for the vehicle, the hardpoints, the members, the load
// cases and the materials. What has no column of its own stands by its path in a sheet of
// keys, so that nothing is lost between the two forms.
package sheets

import (
	"slices"
	"strings"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/loads"
)

// ownMark begins the names of sheets, headings and rows that are not read.
const ownMark = "#"

// A layout is what a sheet holds: keys by their paths, a row for each, or a table.
type layout struct {
	name, title string
	lead        []leading // columns that say of what the rows of a table are
	under       string    // what stands before the rest of a path: "members."
	list        string    // of whose entries the rows of a table are
	columns     []column  // of a table; none: keys by their paths
}

// A leading column holds one of some words.
type leading struct {
	name, about string
	words       []string
}

// A column holds one value of each row.
type column struct {
	name string // as the heading has it, without the unit
	path string // of the value, below that of the row; another name for it
	of   string // of the key
	key  *carfile.Key
	part int // of a list of numbers; −1: the key itself
}

// The headings of a sheet of keys.
const (
	keyHead   = "key"
	valueHead = "value"
	unitHead  = "unit"
	aboutHead = "what it is"
)

// The names of the sheets that are told apart when a workbook is written.
const (
	vehicleSheet    = "Vehicle"
	axlesSheet      = "Axles"
	hardpointsSheet = "Hardpoints"
	membersSheet    = "Members"
	moreSheet       = "More"
)

// layouts are the sheets in the order in which they are written.
var layouts = []layout{
	{name: vehicleSheet, title: "The car as one body"},
	{name: axlesSheet, title: "The axles: what is neither a hardpoint nor a member"},
	{
		name: hardpointsSheet, title: "Hardpoints", lead: []leading{axleLead, {"point", "which point of the axle it is", pointNames()}},
		columns: coordinates(),
	},
	{
		name: membersSheet, title: "Members", lead: []leading{axleLead, {"member", "which member of the axle it is", loads.LinkNames[:]}}, under: "members.",
		columns: columnsOf(key("front", "members", "rod").Keys, "", "tube "),
	},
	{name: "Cases", title: "Load cases", list: "cases", columns: columnsOf(key("cases").Keys, "", "")},
	{name: "Materials", title: "Materials of your own, each with its source", list: "materials", columns: columnsOf(key("materials").Keys, "", "")},
	{name: "Parts", title: "Bearings and rod ends with the ratings of their makers", list: "parts", columns: columnsOf(key("parts").Keys, "", "")},
	{name: "Laminates", title: "Laminates of composite tubes, each with its source", list: "laminates", columns: columnsOf(key("laminates").Keys, "", "ply.")},
	{name: moreSheet, title: "Whatever else the car has, by its path"},
}

// sides are the words for an axle: its left-hand side, which the right-hand one mirrors,
// and what of the right-hand side is no mirror image.
var sides = []string{"front", "rear", "front right", "rear right"}

var axleLead = leading{"axle", "the axle: front or rear; front right or rear right where the right-hand side is no mirror image", sides}

// axlePath is the path of one of sides.
func axlePath(side string) string { return strings.ReplaceAll(strings.TrimSpace(side), " ", ".") }

// key returns the row of the table at a path.
func key(path ...string) *carfile.Key {
	rows := carfile.Keys()
	for i, name := range path {
		at := slices.IndexFunc(rows, func(k carfile.Key) bool { return k.Name == name })
		if i == len(path)-1 {
			return &rows[at]
		}
		rows = rows[at].Keys
	}
	panic("sheets: no path")
}

// isPoint tells whether a key is a hardpoint.
func isPoint(k *carfile.Key) bool { return k.Kind == carfile.Vector && k.Dimension == carfile.Length }

// pointNames are the hardpoints of an axle by their paths.
func pointNames() (out []string) {
	var walk func(keys []carfile.Key, path string)
	walk = func(keys []carfile.Key, path string) {
		for i := range keys {
			switch k := &keys[i]; {
			case isPoint(k):
				out = append(out, path+k.Name)
			case k.Kind == carfile.Mapping && k.Name != "right":
				walk(k.Keys, path+k.Name+".")
			}
		}
	}
	walk(key(cases.AxleNames[cases.Front]).Keys, "")
	return out
}

// coordinates are the columns of a hardpoint.
func coordinates() (out []column) {
	k := key("front", "wheel", "centre")
	for i, name := range k.Parts {
		out = append(out, column{name, name, "", k, i})
	}
	return out
}

// apart are mappings of more values than a table has room for: they stand by their paths.
var apart = []string{"contact_forces", "section", "ends"}

// columnsOf are the columns of a table: one for each value, but for lists of mappings and
// what stands apart. Headings leave out short.
func columnsOf(keys []carfile.Key, path, short string) (out []column) {
	add := func(name, at, of string, k *carfile.Key, part int) {
		out = append(out, column{strings.TrimPrefix(name, short), at, of, k, part})
	}
	for i := range keys {
		k := &keys[i]
		switch at := path + k.Name; {
		case k.Kind == carfile.List || slices.Contains(apart, k.Name):
		case k.Kind == carfile.Mapping:
			out = append(out, columnsOf(k.Keys, at+".", short)...)
		case (k.Kind == carfile.Numbers || k.Kind == carfile.Vector) && k.Most == 0:
			for part, name := range k.Parts {
				add(at+" "+name, k.NumberPath(at, part), at, k, part)
			}
		default:
			add(at, at, at, k, -1)
		}
	}
	return out
}

// sheetNames are the names of the sheets.
func sheetNames() (out []string) {
	for _, l := range layouts {
		out = append(out, l.name)
	}
	return out
}

// heading is that of a column, with the unit of a bare number.
func (c column) heading() string {
	if u := c.key.Dimension.Bare(); u != "" {
		return c.name + " (" + u + ")"
	}
	return c.name
}
