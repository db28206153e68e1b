// Package guide tells people and editors what a car file may hold: a starter to be
// filled in, a JSON Schema and a reference. All is made of the table of carfile.
package guide

import (
	"embed"
	"fmt"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"

	"sixlink/cases/carfile"
)

// Rods are the kinds of starter: by what the rods do in bump.
var Rods = []string{"push", "pull"}

//go:embed starter/*.yaml
var numbers embed.FS

// Replace says what to do with a starter.
const Replace = "REPLACE EVERY NUMBER by that of your own car, the loads too, and the name, the revision and the notes below. Until then no result of this file means anything."

// preface opens every starter.
const preface = `A starter: the numbers are those of an invented hill-climb single-seater, of no real car.
` + Replace + `

How to read it: a line that begins with "#" and a space explains what follows it. A line with "#" right before a key is a key that you may use: take the "#" away, and those of the lines below that belong to it. Keys of which only one may stand are said to exclude each other.
Bare numbers are mm, kg, N, MPa and degrees; accelerations in g, speeds in m/s, areas of aero in m², moments of contact forces in N·m. A text carries its own unit: "0.875 in", "1.2 kN", "200 GPa", "180 km/h". Limits stand in the unit of a bare number.
Axes (ISO 8855): x forward, y left, z up. Hardpoints are those of the left-hand side, y above 0; the right-hand side is their mirror image.
`

// Starter returns a car file with every key explained that checks as it is. The rod is
// one of Rods; the caution goes into the head of the file.
func Starter(rod, caution string) ([]byte, error) {
	if !slices.Contains(Rods, rod) {
		return nil, fmt.Errorf("there is no starter for %q: write %s", rod, strings.Join(Rods, " or "))
	}
	car, err := load(rod)
	if err != nil {
		return nil, err
	}
	options, err := load("options")
	if err != nil {
		return nil, err
	}
	s := &starter{told: map[string]bool{}}
	for p := range strings.Lines(preface + "\n" + caution) {
		s.explain(0, strings.TrimSpace(p))
	}
	s.mapping(carfile.Keys(), car, options, 0, false)
	return []byte(s.text.String()), nil
}

func load(name string) (*yaml.Node, error) {
	text, err := numbers.ReadFile("starter/" + name + ".yaml")
	if err != nil {
		return nil, err
	}
	var document yaml.Node
	if err := yaml.Unmarshal(text, &document); err != nil {
		return nil, err
	}
	return document.Content[0], nil
}

// A starter is a car file that is being written.
type starter struct {
	text strings.Builder
	told map[string]bool // what has been explained
}

// mark is what the explanation of a key is known by.
func mark(k *carfile.Key) string { return k.Name + ": " + k.Doc }

// known tells whether everything in a mapping has been explained.
func (s *starter) known(keys []carfile.Key) bool {
	for i := range keys {
		if !s.told[mark(&keys[i])] || !s.known(keys[i].Keys) {
			return false
		}
	}
	return true
}

// mapping writes the keys of a mapping: those of the car, and as comments those that only
// the options show. Off is inside a comment.
func (s *starter) mapping(keys []carfile.Key, car, options *yaml.Node, depth int, off bool) {
	for i := range keys {
		k := &keys[i]
		value, sample := carfile.Under(car, k.Name), carfile.Under(options, k.Name)
		hidden := off || value == nil
		if value == nil {
			value = sample
		}
		if value == nil {
			value = fallback(k)
		}
		if depth == 0 {
			s.text.WriteString("\n")
		}
		s.key(k, value, sample, depth, hidden)
	}
}

// key writes one key with its explanation. A mapping whose keys all are known is written
// as it stands.
func (s *starter) key(k *carfile.Key, value, sample *yaml.Node, depth int, off bool) {
	s.explain(depth, About(k))
	known := s.known(k.Keys)
	s.told[mark(k)] = true
	switch {
	case value == nil:
		panic("guide: no sample of " + mark(k))
	case k.Kind == carfile.Mapping && !known:
		s.line(depth, off, k.Name+":")
		if off {
			s.mapping(k.Keys, nil, value, depth+1, true)
		} else {
			s.mapping(k.Keys, value, sample, depth+1, false)
		}
	case k.Kind == carfile.List && !known:
		s.line(depth, off, k.Name+":")
		s.explain(depth+1, each(k)+":")
		s.entries(k.Keys, "", depth+1)
		s.items(value, depth+1, off)
	default:
		if !known {
			s.entries(k.Keys, k.Name+".", depth)
		}
		s.plain(k.Name+":", value, depth, off)
	}
}

// entries explains the keys of the entries of a list, with those beneath them.
func (s *starter) entries(keys []carfile.Key, path string, depth int) {
	for i := range keys {
		k := &keys[i]
		s.explain(depth, "  "+path+k.Name+": "+About(k))
		s.told[mark(k)] = true
		if !s.known(k.Keys) {
			s.entries(k.Keys, path+k.Name+".", depth)
		}
	}
}

// each heads the keys of the entries of a list.
func each(k *carfile.Key) string {
	if c := k.Choose(); c != "" {
		return "Each entry has these keys, " + c
	}
	return "Each entry has these keys"
}

// About says all of a key in sentences.
func About(k *carfile.Key) string {
	var all []string
	add := func(s string) {
		if s != "" {
			all = append(all, s)
		}
	}
	add(k.Doc)
	switch k.Kind {
	case carfile.Vector, carfile.Numbers:
		add("[" + strings.Join(k.Parts, ", ") + "]")
		add(limits(k))
	case carfile.Number:
		add(limits(k))
		if len(k.Keys) > 0 {
			add("or a mapping {" + k.Keys[0].Name + ": …}")
		}
	case carfile.Choice:
		add(words(k))
	case carfile.Flag:
		add("true or false")
	}
	if k.Kind == carfile.Mapping {
		add(k.Choose())
	}
	add(k.Conditions())
	if w := k.Without(); w != "" {
		add("left out: " + w)
	}
	return strings.Join(all, "; ")
}

// limits says the unit and the range of a number.
func limits(k *carfile.Key) string {
	switch bare := k.Dimension.Bare(); {
	case bare != "":
		return bare + ", " + k.Range.String()
	case k.Dimension == carfile.Share:
		return k.Range.String() + " or in %"
	}
	return k.Range.String()
}

// words lists the choices of a key.
func words(k *carfile.Key) string {
	all := slices.Clone(k.Choices)
	if len(k.Keys) > 0 {
		all = append(all, "a mapping {"+k.Keys[0].Name+": …}")
	}
	return strings.Join(all, ", ")
}
