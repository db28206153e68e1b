package sheets

import (
	"slices"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v4"

	"sixlink/cases/carfile"
	"sixlink/cases/carfile/guide"
)

// leaf adds the rows of a key that is no mapping: one for each number of a fixed list.
func (c *composer) leaf(p *Page, k *carfile.Key, n *yaml.Node, path string) {
	about := guide.About(k)
	if (k.Kind == carfile.Vector || k.Kind == carfile.Numbers) && k.Most == 0 {
		for i, part := range k.Parts {
			v, unit := Value{}, k.Dimension.Bare()
			if n != nil && i < len(n.Content) {
				v, unit = keyValue(k, n.Content[i])
				c.take(n.Content[i])
			}
			p.Rows = append(p.Rows, keyRow(k.NumberPath(path, i), v, unit, part+": "+about, units(k)))
		}
		return
	}
	v, unit := Value{Words: words(k)}, k.Dimension.Bare()
	switch {
	case n == nil || n.Kind == yaml.MappingNode: // a mapping in the place of a number or word stands by its paths
	case n.Kind == yaml.SequenceNode:
		v = series(n)
		if len(n.Content) == 1 {
			v, unit = keyValue(k, n.Content[0])
		}
		c.take(n.Content...)
		c.take(n)
	case k.Kind == carfile.Number:
		v, unit = keyValue(k, n)
		c.take(n)
	default:
		v = c.scalar(k, n)
		c.take(n)
	}
	p.Rows = append(p.Rows, keyRow(path, v, unit, about, units(k)))
}

// keyValue is the value of a number with its unit beside it.
func keyValue(k *carfile.Key, n *yaml.Node) (Value, string) {
	digits, unit, ok := measured(n.Value)
	switch {
	case !ok || unit != "" && !k.Dimension.Takes(unit):
		return Value{Kind: Text, Text: strings.TrimSpace(n.Value)}, ""
	case unit == "":
		unit = k.Dimension.Bare()
	}
	return Value{Kind: Number, Text: digits}, unit
}

// units are the names of those that a number of a key may carry.
func units(k *carfile.Key) (out []string) {
	if k.Kind != carfile.Number && k.Kind != carfile.Numbers && k.Kind != carfile.Vector {
		return nil
	}
	for _, u := range carfile.Units() {
		if u.Dimension == k.Dimension {
			out = append(out, u.Name)
		}
	}
	return out
}

// keyRow is a row of a sheet of keys.
func keyRow(path string, v Value, unit, about string, units []string) Row {
	u := Value{Words: units, Free: true}
	if unit != "" {
		u.Kind, u.Text = Text, unit
	}
	return Row{Values: []Value{{Kind: Text, Text: path}, v, u, {Kind: About, Text: about}}}
}

// rest lists every value that has no cell yet.
func (c *composer) rest(p *Page) {
	top := &carfile.Key{Kind: carfile.Mapping, Keys: carfile.Keys()}
	c.walk(p, top, c.top, "")
	p.Spare = 30
}

func (c *composer) walk(p *Page, k *carfile.Key, n *yaml.Node, path string) {
	switch {
	case n.Kind == yaml.ScalarNode:
		if !c.taken[n] {
			c.leaf(p, k, n, path)
		}
	case len(n.Content) == 0:
		if !c.taken[n] {
			empty := map[yaml.Kind]string{yaml.MappingNode: "{}", yaml.SequenceNode: "[]"}[n.Kind]
			p.Rows = append(p.Rows, keyRow(path, Value{Kind: Text, Text: empty}, "", guide.About(k), nil))
		}
	case n.Kind == yaml.SequenceNode && k.Kind != carfile.List:
		if !c.taken[n.Content[0]] {
			c.leaf(p, k, n, path)
		}
	case n.Kind == yaml.SequenceNode:
		entry := *k
		entry.Kind = carfile.Mapping
		for i, e := range n.Content {
			at := strconv.Itoa(i)
			if slices.Contains(tables(), path) {
				at = reference(n, i)
			}
			c.walk(p, &entry, e, path+"["+at+"]")
		}
	default:
		for i := 0; i+1 < len(n.Content); i += 2 {
			name := n.Content[i].Value
			for j := range k.Keys {
				if k.Keys[j].Name == name {
					c.walk(p, &k.Keys[j], n.Content[i+1], strings.TrimPrefix(path+"."+name, "."))
				}
			}
		}
	}
}

// tables are the lists whose entries have their names in a table.
func tables() (out []string) {
	for _, l := range layouts {
		if l.list != "" {
			out = append(out, l.list)
		}
	}
	return out
}

// reference is how a path names an entry of a list: by its name where that is its own and a
// path can have it, or by its number.
func reference(list *yaml.Node, i int) string {
	name := nameOf(list.Content[i])
	number := strconv.Itoa(i)
	if _, err := strconv.Atoi(name); err == nil || name == "" || name != strings.TrimSpace(name) {
		return number
	}
	for j, e := range list.Content {
		if j != i && nameOf(e) == name {
			return number
		}
	}
	for _, r := range name {
		if !strconv.IsPrint(r) {
			return number
		}
	}
	if strings.ContainsAny(name, `[]"`) {
		return strconv.Quote(name)
	}
	return name
}

// nameOf is the name of an entry of a list.
func nameOf(entry *yaml.Node) string {
	name := ""
	for _, key := range []string{"name", "part"} {
		if n := carfile.Under(entry, key); n != nil {
			name += n.Value
		}
	}
	return name
}
