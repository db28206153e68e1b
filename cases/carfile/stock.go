package carfile

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"

	"sixlink/materials"
	"sixlink/members"
	"sixlink/members/stock"
)

// ReadStock reads a list of tubes of the user's own: CSV, or YAML where the name of the
// file ends in .yaml or .yml. The error, if there is one, is of type Faults and holds
// all that is wrong, in file order.
func ReadStock(name string, src []byte) (stock.List, error) {
	switch strings.ToLower(filepath.Ext(name)) {
	case ".yaml", ".yml":
		return readStockYAML(name, src)
	}
	return readStockCSV(name, src)
}

func readStockYAML(name string, src []byte) (stock.List, error) {
	s, root, faults := parse(name, src)
	if len(faults) > 0 {
		for i, f := range faults { // what is said of any file speaks of cars
			faults[i].Remedy = strings.ReplaceAll(f.Remedy, "write a car file; its first key is format: "+Format, "write a list of tubes; its first key is format: "+StockFormat)
		}
		return stock.List{}, faults
	}
	r := &reader{source: s}
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
	if title, ok := materials.Canonical(s.Material); ok {
		s.Material = title
	}
	if price := e.at("price"); price.given {
		s.Price = price.number()
	}
	if s.Source == "" {
		s.Source = fmt.Sprintf("%s, line %d", filepath.Base(r.name), od.line)
	}
	list.Sizes = append(list.Sizes, s)
}
