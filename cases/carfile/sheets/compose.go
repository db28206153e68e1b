package sheets

import (
	"math/big"
	"slices"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v4"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/cases/carfile/guide"
)

// Pages lays the values of a car file, as carfile.Values and Values return them, out on the
// sheets of a workbook. Every value stands on one of them.
func Pages(values *yaml.Node) []Page {
	c := composer{top: values, taken: map[*yaml.Node]bool{}}
	pages := map[string]*Page{}
	for _, l := range layouts {
		p := &Page{Name: l.name, Title: l.title, Heads: l.heads(), Lead: max(len(l.lead), 1)}
		pages[l.name] = p
		switch {
		case l.name == hardpointsSheet || l.name == membersSheet:
			c.fixed(p, l)
		case l.list != "":
			c.entries(p, l)
		}
	}
	c.vehicle(pages[vehicleSheet])
	c.axles(pages[axlesSheet])
	c.rest(pages[moreSheet])
	var out []Page
	for _, l := range layouts {
		out = append(out, *pages[l.name])
	}
	return out
}

// A composer lays values out and marks those that have a cell.
type composer struct {
	top   *yaml.Node
	taken map[*yaml.Node]bool
}

// below returns the value at a path of names.
func below(n *yaml.Node, path string) *yaml.Node {
	for _, name := range strings.Split(path, ".") {
		n = carfile.Under(n, name)
	}
	return n
}

// values returns the cells of a row of a table, below a mapping.
func (c *composer) values(columns []column, of *yaml.Node) (out []Value, some bool) {
	for _, col := range columns {
		v := Value{}
		n := of
		if col.of != "" {
			n = below(of, col.of)
		}
		switch {
		case n == nil:
		case col.part >= 0 && n.Kind == yaml.SequenceNode && col.part < len(n.Content):
			n = n.Content[col.part]
			v = tableValue(n)
		case col.part < 0 && n.Kind == yaml.ScalarNode:
			v = c.scalar(col.key, n)
		case col.part < 0 && n.Kind == yaml.SequenceNode && col.key.Most > 0:
			v = series(n)
			c.take(n.Content...)
		default:
			n = nil
		}
		if n != nil {
			c.take(n)
			some = true
		}
		out = append(out, v)
	}
	return out, some
}

func (c *composer) take(nodes ...*yaml.Node) {
	for _, n := range nodes {
		c.taken[n] = true
	}
}

// tableValue is a number below a heading with the bare unit.
func tableValue(n *yaml.Node) Value {
	if digits, unit, ok := measured(n.Value); ok && unit == "" {
		return Value{Kind: Number, Text: digits}
	}
	return Value{Kind: Text, Text: strings.TrimSpace(n.Value)}
}

// scalar is the cell of a single value.
func (c *composer) scalar(k *carfile.Key, n *yaml.Node) Value {
	switch k.Kind {
	case carfile.Number:
		return tableValue(n)
	case carfile.Flag:
		return Value{Kind: Truth, Text: strings.ToLower(n.Value), Words: words(k)}
	}
	return Value{Kind: Text, Text: n.Value, Words: words(k)}
}

// series is the cell of a list of any number of numbers.
func series(n *yaml.Node) Value {
	var all []string
	for _, item := range n.Content {
		all = append(all, strings.TrimSpace(item.Value))
	}
	if len(all) == 1 {
		return tableValue(n.Content[0])
	}
	return Value{Kind: Text, Text: strings.Join(all, "; ")}
}

// measured splits a number from its unit. It is not ok where a cell could not hold the
// number to its last digit.
func measured(text string) (digits, unit string, ok bool) {
	text = strings.TrimSpace(text)
	end := len(text)
	for end > 0 && !bareNumber.MatchString(text[:end]) {
		end--
	}
	v, err := strconv.ParseFloat(text[:end], 64)
	if err != nil {
		return "", "", false
	}
	digits, unit = strconv.FormatFloat(v+0, 'g', -1, 64), strings.TrimSpace(text[end:])
	if unit == "" {
		return digits, "", true // a bare number is read as it is here
	}
	exact, known := new(big.Rat).SetString(text[:end])
	held, _ := new(big.Rat).SetString(digits)
	return digits, unit, known && held != nil && exact.Cmp(held) == 0
}

// fixed fills a table whose rows are known beforehand: for the left-hand side of both
// axles all of them, for the right-hand side those that are given.
func (c *composer) fixed(p *Page, l layout) {
	for _, side := range sides {
		axle := below(c.top, axlePath(side))
		if axle == nil {
			continue
		}
		for _, word := range l.lead[1].words {
			n := below(axle, l.under+word)
			row, some := c.values(l.columns, n)
			if !some && (strings.Contains(side, " ") || !needed(axle, word, l)) {
				continue
			}
			lead := []Value{{Kind: Text, Text: side, Words: sides}, {Kind: Text, Text: word, Words: l.lead[1].words}}
			p.Rows = append(p.Rows, Row{Values: append(lead, row...)})
		}
	}
	p.Spare = 12
}

// needed tells whether an axle lacks a hardpoint or member that it must have.
func needed(axle *yaml.Node, word string, l layout) bool {
	if l.name == membersSheet {
		return true
	}
	of, _, nested := strings.Cut(word, ".")
	if strings.Count(word, ".") > 1 || !nested {
		return false
	}
	body := key(cases.AxleNames[cases.Front], of)
	point := key(append([]string{cases.AxleNames[cases.Front]}, strings.Split(word, ".")...)...)
	return body.Required && point.Required && (point.Unless == "" || below(axle, of+"."+point.Unless) == nil)
}

// entries fills a table of the entries of a list.
func (c *composer) entries(p *Page, l layout) {
	if list := carfile.Under(c.top, l.list); list != nil {
		for _, e := range list.Content {
			row, _ := c.values(l.columns, e)
			p.Rows = append(p.Rows, Row{Values: row})
		}
	}
	p.Spare = 12
}

// elsewhere are keys of the top level that the sheet of the vehicle does not list: axles,
// and what stands by its path where it is given.
var elsewhere = []string{cases.AxleNames[cases.Front], cases.AxleNames[cases.Rear], "duty", "scatter"}

// vehicle lists the keys of the top level.
func (c *composer) vehicle(p *Page) {
	for i, k := range carfile.Keys() {
		if k.Kind != carfile.List && !slices.Contains(elsewhere, k.Name) {
			c.listed(p, &carfile.Keys()[i], carfile.Under(c.top, k.Name), k.Name, 0)
		}
	}
}

// axles lists the keys of both axles but for hardpoints and members.
func (c *composer) axles(p *Page) {
	for _, name := range cases.AxleNames {
		axle := carfile.Under(c.top, name)
		p.Rows = append(p.Rows, remark("the "+name+" axle"))
		keys := key(name).Keys
		for i := range keys {
			if k := &keys[i]; k.Name != "right" && k.Name != "members" {
				c.listed(p, k, carfile.Under(axle, k.Name), name+"."+k.Name, 1)
			}
		}
	}
}

func remark(text string) Row {
	return Row{Remark: true, Values: []Value{{Kind: About, Text: ownMark + " " + text}}}
}

// listed adds the rows of a key with those beneath it: all of them, but for those of an
// optional mapping that is not given, which has one row to tell of it.
func (c *composer) listed(p *Page, k *carfile.Key, n *yaml.Node, path string, depth int) {
	switch {
	case isPoint(k) || k.Kind == carfile.List:
		return
	case k.Kind == carfile.Mapping && n == nil && !k.Required:
		about := guide.About(k) + "; its keys have rows of their own: " + strings.Join(leaves(k, path), ", ")
		p.Rows = append(p.Rows, keyRow(path, Value{}, "", about, nil))
	case k.Kind == carfile.Mapping && n != nil && len(n.Content) == 0:
		p.Rows = append(p.Rows, keyRow(path, Value{Kind: Text, Text: "{}"}, "", guide.About(k), nil))
		c.take(n)
	case k.Kind == carfile.Mapping:
		for i := range k.Keys {
			o := &k.Keys[i]
			c.listed(p, o, carfile.Under(n, o.Name), path+"."+o.Name, depth+1)
		}
	default:
		c.leaf(p, k, n, path)
	}
}

// leaves are up to four keys of a mapping by their paths.
func leaves(k *carfile.Key, path string) (out []string) {
	for i := range k.Keys {
		if o := &k.Keys[i]; o.Kind == carfile.Vector || o.Kind == carfile.Numbers && o.Most == 0 {
			out = append(out, o.NumberPath(path+"."+o.Name, 0))
		} else {
			out = append(out, path+"."+o.Name)
		}
	}
	if len(out) > 4 {
		out = append(out[:4], "…")
	}
	return out
}
