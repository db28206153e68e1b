package guide

import (
	"encoding/json"
	"regexp"
	"slices"
	"strings"

	"sixlink/cases/carfile"
)

// bare is a number that JSON knows.
var bare = regexp.MustCompile(`^-?(?:0|[1-9][0-9]*)(?:\.[0-9]+)?$`)

// textPattern is one line with something in it, without control characters (C0, DEL, C1).
const textPattern = `^\s*[^\x00-\x20\x7f-\x9f][^\x00-\x1f\x7f-\x9f]*\s*$`

// text describes a text: in YAML a bare number, true or false may stand for one.
func text(pattern string, most int) object {
	return object{{"type", []string{"string", "number", "boolean"}}, {"pattern", pattern}, {"maxLength", most}}
}

// number describes a bare number in its limits, or a text with a unit, whose limits only
// the program can tell.
func number(k *carfile.Key) object {
	least := "minimum"
	if k.Range.Above {
		least = "exclusiveMinimum"
	}
	most := "maximum"
	if k.Range.Below {
		most = "exclusiveMaximum"
	}
	value := object{{"type", "number"}, {least, k.Range.Min}, {most, k.Range.Max}}
	withUnit := object{{"type", "string"}, {"pattern", quantityPattern(k.Dimension)}}
	return object{{"anyOf", []object{value, withUnit}}}
}

// numberList describes a list of numbers.
func numberList(k *carfile.Key) object {
	least, most := len(k.Parts), len(k.Parts)
	if k.Most > 0 {
		least, most = 1, k.Most
	}
	return object{{"type", "array"}, {"minItems", least}, {"maxItems", most}, {"items", number(k)}}
}

// digits are those of a decimal number.
const digits = `^\s*[+-]?(?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)(?:[eE][+-]?[0-9]+)?`

// spellings are the ways to write the signs of a unit.
var spellings = strings.NewReplacer(
	"²", `(?:²|\^?2)`, "³", `(?:³|\^?3)`, "⁴", `(?:⁴|\^?4)`, "·", ` ?[·⋅*. ] ?`, "/", ` ?/ ?`, "µ", "[µμ]",
)

// quantityPattern is a number with a unit of the dimension, or without one.
func quantityPattern(d carfile.Dimension) string {
	var names []string
	for _, u := range carfile.Units() {
		if u.Dimension != d {
			continue
		}
		for _, name := range append([]string{u.Name}, u.Also...) {
			names = append(names, spellings.Replace(regexp.QuoteMeta(name)))
		}
	}
	if len(names) == 0 {
		return digits + `\s*$`
	}
	return digits + `(?:\s*(?:` + strings.Join(names, "|") + `))?\s*$`
}

// rules says which keys of a mapping need or exclude each other; of those alone that a file
// of hardpoints may give, or of all others.
func rules(k *carfile.Key, points bool) (out object) {
	var all []object
	if len(k.OneOf) > 0 && points == slices.ContainsFunc(k.OneOf, func(name string) bool { return awayIn(k, name) }) {
		var ways []object
		for _, name := range k.OneOf {
			ways = append(ways, given(k, name))
		}
		all = append(all, object{{"oneOf", ways}})
	}
	var needs object
	for i := range k.Keys {
		o := &k.Keys[i]
		if o.Required && o.Unless != "" && points == awayIn(k, o.Name) {
			all = append(all, object{{"anyOf", []object{needing(o.Name), needing(o.Unless)}}})
		}
		if len(o.Instead) > 0 && !points {
			var excluded []object
			for _, name := range o.Instead {
				excluded = append(excluded, needing(name))
			}
			all = append(all, object{{"not", append(needing(o.Name), member{"anyOf", excluded})}})
		}
		if o.With != "" && !points {
			needs = append(needs, member{o.Name, []string{o.With}})
		}
	}
	for _, o := range k.Keys {
		if o.NeededWith != "" && points == awayIn(k, o.Name) {
			needs = require(needs, o.NeededWith, o.Name)
		}
	}
	if len(needs) > 0 {
		out = append(out, member{"dependentRequired", needs})
	}
	if len(all) > 0 {
		out = append(out, member{"allOf", all})
	}
	return out
}

// require adds that a key needs another.
func require(needs object, name, other string) object {
	for i, m := range needs {
		if list, ok := m.value.([]string); ok && m.name == name {
			needs[i].value = append(slices.Clone(list), other)
			return needs
		}
	}
	return append(needs, member{name, []string{other}})
}

func needing(name string) object { return object{{"required", []string{name}}} }

// given is that a key is there; a flag that is false counts as left out.
func given(k *carfile.Key, name string) object {
	out := needing(name)
	for _, o := range k.Keys {
		if o.Name == name && o.Kind == carfile.Flag {
			out = append(out, member{"properties", object{{name, object{{"const", true}}}}})
		}
	}
	return out
}

// defaultOf is the default as JSON has it.
func defaultOf(k *carfile.Key) any {
	switch {
	case k.Kind == carfile.Flag:
		return k.Default == "true"
	case k.Kind == carfile.Number && bare.MatchString(k.Default):
		return json.Number(k.Default)
	}
	return k.Default
}
