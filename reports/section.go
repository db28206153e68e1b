package reports

import (
	"bytes"
	"encoding/json"
	"strings"

	"sixlink/members"
)

// sectionWords puts a section into words, in mm: "16.0 × 1.5" is a round tube.
func sectionWords(s members.Strut) string {
	var sizes []string
	for _, d := range s.Size() {
		sizes = append(sizes, Tenth.number(d.Value))
	}
	text := strings.Join(sizes, " × ")
	switch _, round := s.Round(); {
	case round:
		return text
	case s.Shape() == "own":
		return "own, A " + sizes[0] + " mm²"
	}
	return words(s.Shape()) + " " + text
}

// A jsonSection is a section that is no round tube: its shape, its dimensions as the
// car file names them, and its properties.
type jsonSection struct{ members.Section }

func (s jsonSection) MarshalJSON() ([]byte, error) {
	type pair struct {
		name  string
		value any
	}
	pairs := []pair{{"shape", s.Shape()}}
	for _, d := range s.Size() {
		pairs = append(pairs, pair{d.Name, number(d.Value)})
	}
	if s.Shape() != "own" {
		pairs = append(pairs, pair{"area", number(s.Area())}, pair{"inertia", number(s.Inertia())}, pair{"modulus", number(s.Modulus())})
	}
	var out bytes.Buffer
	for i, p := range pairs {
		value, err := json.Marshal(p.value)
		if err != nil {
			return nil, err
		}
		out.WriteString([]string{",", "{"}[boolean(i == 0)] + `"` + p.name + `":`)
		out.Write(value)
	}
	out.WriteString("}")
	return out.Bytes(), nil
}

func boolean(b bool) int {
	if b {
		return 1
	}
	return 0
}

// roundTube returns the outer diameter and the wall of a round tube; nil: another
// section.
func roundTube(s members.Strut) *[2]float64 {
	if t, ok := s.Round(); ok {
		return &[2]float64{t.OD, t.Wall}
	}
	return nil
}

func toSection(s members.Strut) *jsonSection {
	if _, ok := s.Round(); ok {
		return nil
	}
	return &jsonSection{s.Section}
}

// totalBending returns the moment of all sources together; nil where a member has
// none beside that of the free bodies.
func totalBending(s members.Strut, l members.Load) *float64 {
	if l.Sources == (members.Sources{}) {
		return nil
	}
	total := s.Moment(l)
	return &total
}
