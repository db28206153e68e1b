package sheets

import (
	"fmt"
	"slices"
	"strings"

	"sixlink/cases/carfile"
	"sixlink/cases/carfile/sheets/cells"
)

// cellOf returns the cell of a row under a heading, and where it is.
type cellOf func(heading string) (cells.Cell, carfile.Cell)

// keys reads a sheet whose rows are keys by their paths.
func (g *grid) keys() {
	g.rows(func(row []cells.Cell, cell cellOf) {
		key, keyAt := cell(keyHead)
		value, at := cell(valueHead)
		unit, unitAt := cell(unitHead)
		if key.Kind == cells.Empty {
			if value.Kind != cells.Empty {
				g.Lost(at, "a value without a key", "write the path of its key, such as vehicle.mass, into "+cells.Name(key.Row, g.columns[keyHead]))
			}
			return
		}
		if key.Kind != cells.Text {
			g.Lost(keyAt, "this is no key", "write the path of a key as text, such as vehicle.mass")
			return
		}
		path := strings.TrimSpace(key.Text)
		k, part := g.Find(g.Top(), path, keyAt)
		if k == nil {
			return
		}
		if value.Kind == cells.Empty {
			g.Vacant(g.Top(), path, at)
			return
		}
		g.set(g.Top(), path, value, at, target{k, part, path, g.unit(k, unit, unitAt)})
	})
}

// unit reads the unit of a row.
func (g *grid) unit(k *carfile.Key, c cells.Cell, at carfile.Cell) string {
	text := strings.TrimSpace(c.Text)
	if c.Kind == cells.Empty || k.Kind != carfile.Number && k.Kind != carfile.Numbers && k.Kind != carfile.Vector {
		return text
	}
	if c.Kind != cells.Text || !k.Dimension.Takes(text) {
		g.Fault(at, "", fmt.Sprintf("%q is no unit of %s", text, k.Dimension), "write "+orNothing(k.Dimension.Unit()))
		return ""
	}
	return text
}

func orNothing(unit string) string {
	if unit == "" {
		return "nothing, for it has no unit"
	}
	return unit
}

// set gives a value to a path.
func (g *grid) set(b carfile.Branch, path string, c cells.Cell, at carfile.Cell, to target) {
	values, f := to.scalars(c)
	if f != nil {
		g.Fault(at, b.Path(path), f.text, f.remedy)
		g.Vacant(b, path, at)
		return
	}
	g.Set(b, path, at, values...)
}

// table reads a sheet whose rows have their values in columns.
func (g *grid) table() {
	if g.layout.list != "" {
		g.Vacant(g.Top(), g.layout.list, g.at(g.row(g.head)[0]))
	}
	g.rows(func(row []cells.Cell, cell cellOf) {
		b, path, ok := g.branch(row, cell)
		if !ok {
			return
		}
		for i := range g.layout.columns {
			c := &g.layout.columns[i]
			if g.columns[c.name] == 0 {
				continue
			}
			value, at := cell(c.name)
			if value.Kind == cells.Empty {
				g.Vacant(b, path+c.path, at)
				continue
			}
			g.set(b, path+c.path, value, at, target{c.key, c.part, path + c.path, g.heads[value.Column].unit})
		}
	})
}

// branch returns what the row of a table is about: an entry of a list, or what its leading
// columns say, with the beginning of the paths of its values.
func (g *grid) branch(row []cells.Cell, cell cellOf) (b carfile.Branch, path string, ok bool) {
	if g.layout.list != "" {
		for _, c := range row {
			if g.heads[c.Column].name != "" {
				return g.Append(g.layout.list, g.at(c)), "", true
			}
		}
		return b, "", false
	}
	for i, lead := range g.layout.lead {
		c, at := cell(lead.name)
		word := strings.TrimSpace(c.Text)
		if f := unusable(c); f != nil {
			g.Lost(at, f.text, f.remedy)
			return b, "", false
		}
		if !slices.Contains(lead.words, word) {
			text := fmt.Sprintf("%q is no %s", word, lead.name)
			if c.Kind == cells.Empty {
				text = "the row has no " + lead.name
			}
			g.Lost(at, text, "write "+carfile.Near(word, lead.words))
			return b, "", false
		}
		if i == 0 {
			path = axlePath(word) + "." + g.layout.under
			continue
		}
		path += word
	}
	if k, _ := g.Find(g.Top(), path, g.at(row[0])); k == nil {
		return b, "", false
	}
	return g.Top(), path + ".", true
}
