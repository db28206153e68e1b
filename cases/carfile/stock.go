package carfile

import (
	"errors"
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strings"

	"sixlink/materials"
	"sixlink/members"
	"sixlink/members/stock"
)

// ReadStock reads a list of tubes of the user's own: CSV, or YAML where the name of the
// file ends in .yaml or .yml. Its materials are those of the table, and those of the user's own
// that car files give. The error, if there is one, is of type Faults and holds all that is
// wrong, in file order.
func ReadStock(name string, src []byte, own ...string) (stock.List, error) {
	switch strings.ToLower(filepath.Ext(name)) {
	case ".yaml", ".yml":
		return readStockYAML(name, src, own)
	}
	return readStockCSV(name, src, own)
}

func readStockYAML(name string, src []byte, own []string) (stock.List, error) {
	s, root, faults := parse(name, src)
	if len(faults) > 0 {
		for i, f := range faults { // what is said of any file speaks of cars
			faults[i].Remedy = strings.ReplaceAll(f.Remedy, "write a car file; its first key is format: "+Format, "write a list of tubes; its first key is format: "+StockFormat)
		}
		return stock.List{}, faults
	}
	r := &reader{source: s, own: own}
	top := r.read(&stockKey, nil, root, "")
	list := stock.List{Name: top.at("name").text}
	if currency := top.at("currency").text; currency != "" {
		list.PriceUnit = currency + "/m"
	}
	for _, e := range top.at("sizes").entries {
		r.addSize(&list, e)
	}
	return r.stock(list)
}

// stock ends the reading of a list.
func (r *reader) stock(list stock.List) (stock.List, error) {
	if len(r.faults) > 0 {
		return stock.List{}, r.faults.InOrder()
	}
	if list.Name == "" {
		list.Name = filepath.Base(r.name)
	}
	list.Remark = "stock " + list.Name + ": a list of the user's own; sizes are nominal: no reserve factor has the tolerance of the wall in it"
	var own []string
	for _, s := range list.Sizes {
		if _, builtIn := materials.Canonical(s.Material); s.Material != "" && !builtIn && !slices.Contains(own, quoted(s.Material)) {
			own = append(own, quoted(s.Material))
		}
	}
	if len(own) > 0 {
		list.Remark += "; " + together(own) + " is no built-in material: those sizes are offered to members of a material of that very name alone"
	}
	return list, nil
}

// addSize adds the tube of one entry or row.
func (r *reader) addSize(list *stock.List, e *item) {
	od, wall := e.at("od"), e.at("wall")
	if !e.good || !whole(od, wall) || !od.given || !wall.given {
		return // the fault is told already
	}
	t := members.Tube{OD: od.number(), Wall: wall.number()}
	if t.Wall > t.OD/2 {
		r.refuse(wall, fmt.Sprintf("%s mm is more than %s mm, half of the outer diameter", short(t.Wall), short(t.OD/2)), "correct od or wall; a solid bar has a wall of half its diameter")
		return
	}
	s := stock.Size{
		Tube: t, Given: [2]string{od.text, wall.text}, Price: math.NaN(),
		Material: e.at("material").text, Part: e.at("part").text, Source: e.at("source").text,
	}
	if m := e.at("material"); m.given && m.good {
		s.Material = r.material(m)
	}
	if price := e.at("price"); price.given {
		s.Price = price.number()
	}
	if s.Source == "" {
		s.Source = fmt.Sprintf("%s, line %d", filepath.Base(r.name), od.line)
	}
	list.Sizes = append(list.Sizes, s)
}

// material returns the name of the material of a tube as the table has it, or as it is
// where it is one of the user's own.
func (r *reader) material(m *item) string {
	if title, ok := materials.Canonical(m.text); ok {
		return title
	}
	if slices.Contains(r.own, m.text) {
		return m.text
	}
	near := slices.Clone(r.own)
	var unknown *materials.UnknownError
	if _, err := materials.Find(m.text, 1); errors.As(err, &unknown) {
		near = append(near, unknown.Near...)
	}
	remedy := "write one of the names that sixlink materials lists, or one of the materials of the car file"
	if len(near) > 0 {
		remedy = "perhaps " + nearOf(m.text, near) + "; otherwise " + remedy
	}
	r.refuse(m, quoted(m.text)+" is neither in the table of materials nor a material of the car file", remedy)
	return m.text
}
