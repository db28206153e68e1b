package guide

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"

	"sixlink/cases/carfile"
)

// An object is a JSON object whose members keep their order.
type object []member

type member struct {
	name  string
	value any
}

// MarshalJSON writes the members in their order.
func (o object) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, m := range o {
		if i > 0 {
			b.WriteByte(',')
		}
		fmt.Fprintf(&b, "%q:", m.name)
		value, err := plainJSON(m.value)
		if err != nil {
			return nil, err
		}
		b.Write(value)
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

// plainJSON is JSON in which < > & stand as they are.
func plainJSON(v any) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(v)
	return bytes.TrimSpace(b.Bytes()), err
}

// dialect is that of the schema: JSON Schema, draft 2020-12.
const dialect = "https://json-schema.org/draft/2020-12/schema"

// Schema returns the JSON Schema (draft 2020-12) of a car file. It holds what the form of
// the file must be: keys, kinds, choices, units, and the limits of bare numbers. What
// several values say together only the program tells.
func Schema() ([]byte, error) {
	s := &schema{at: map[string]string{}}
	s.counts(carfile.Keys())
	top := &carfile.Key{Kind: carfile.Mapping, Keys: carfile.Keys(), Doc: "a car file of sixlink"}
	out := object{{"$schema", dialect}, {"title", "car file of sixlink, " + carfile.Format}}
	out = append(out, s.mapping(top, "")...)
	out = append(out, everyPoint(top)...)
	out = append(out, member{"$defs", s.defs})
	compact, err := plainJSON(out)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	err = json.Indent(&b, compact, "", "  ")
	b.WriteByte('\n')
	return b.Bytes(), err
}

// A schema is one that is being made. What stands in the car file several times is said
// once, under the path of its first place.
type schema struct {
	defs  object
	at    map[string]string // the path under which a mapping is said, by what it says
	times map[string]int
}

// say is what a mapping says, without the words of the mapping itself.
func say(k *carfile.Key) string { return fmt.Sprint(k.Keys, k.OneOf) }

// counts tells how often each mapping stands in the file.
func (s *schema) counts(keys []carfile.Key) {
	if s.times == nil {
		s.times = map[string]int{}
	}
	for i := range keys {
		if k := &keys[i]; k.Kind == carfile.Mapping {
			s.times[say(k)]++
		}
		s.counts(keys[i].Keys)
	}
}

// key describes one key.
func (s *schema) key(k *carfile.Key, path string) object {
	out := object{{"description", describe(k)}}
	if k.Default != "" && k.Kind != carfile.Vector {
		out = append(out, member{"default", defaultOf(k)})
	}
	switch k.Kind {
	case carfile.Text:
		return append(out, text(textPattern, 200)...)
	case carfile.Prose:
		return append(out, text(`\S`, 10_000)...)
	case carfile.Number:
		return append(out, s.number(k, path)...)
	case carfile.Numbers, carfile.Vector:
		return append(out, numberList(k)...)
	case carfile.Choice:
		return append(out, s.choice(k, path)...)
	case carfile.Flag:
		return append(out, member{"type", "boolean"})
	case carfile.List:
		out = append(out, member{"type", "array"})
		if k.Required {
			out = append(out, member{"minItems", 1})
		}
		return append(out, member{"maxItems", k.Longest()}, member{"items", s.mapping(k, path)})
	}
	if s.times[say(k)] < 2 {
		return append(out, s.mapping(k, path)...)
	}
	return append(out, member{"$ref", "#/$defs/" + s.shared(k, path)})
}

// shared returns the name under which a mapping that stands in several places is said.
func (s *schema) shared(k *carfile.Key, path string) string {
	what := say(k)
	if s.at[what] == "" {
		s.at[what] = path
		s.defs = append(s.defs, member{path, s.mapping(k, path)})
	}
	return s.at[what]
}

// mapping describes what a mapping holds, or an entry of a list.
func (s *schema) mapping(k *carfile.Key, path string) object {
	var properties object
	var required []string
	for i := range k.Keys {
		o := &k.Keys[i]
		properties = append(properties, member{o.Name, s.key(o, strings.TrimPrefix(path+"."+o.Name, "."))})
		if o.Required && o.Unless == "" && !awayIn(k, o.Name) {
			required = append(required, o.Name)
		}
	}
	out := object{{"type", "object"}, {"properties", properties}}
	if len(required) > 0 {
		out = append(out, member{"required", required})
	}
	out = append(out, member{"additionalProperties", false})
	return append(out, rules(k, false)...)
}

// number describes a number, or a mapping in its place.
func (s *schema) number(k *carfile.Key, path string) object {
	if len(k.Keys) == 0 {
		return number(k)
	}
	return object{{"anyOf", []object{number(k), s.mapping(k, path)}}}
}

// choice describes a word, or a mapping in its place.
func (s *schema) choice(k *carfile.Key, path string) object {
	var all []any
	for _, c := range k.Choices {
		all = append(all, c)
		if bare.MatchString(c) {
			all = append(all, json.Number(c))
		}
	}
	words := object{{"enum", all}}
	if len(k.Keys) == 0 {
		return words
	}
	return object{{"anyOf", []object{words, s.mapping(k, path)}}}
}

// describe says in words what a key is, its unit, its limits and what holds without it.
func describe(k *carfile.Key) string {
	d := About(k)
	if u := k.Dimension.Unit(); u != "" {
		d += "; write " + u
	}
	if k.Kind == carfile.List {
		if c := k.Choose(); c != "" {
			d += "; in each entry " + c
		}
	}
	return d
}
