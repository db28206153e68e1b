package guide

import (
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v4"

	"sixlink/cases/carfile"
)

// The widths of a starter, in characters.
const (
	explained = 110 // an explanation breaks before it
	inLine    = 100 // a mapping that is longer is written on several lines
)

// explain writes a comment, broken into lines.
func (s *starter) explain(depth int, text string) {
	lead := strings.Repeat("  ", depth) + "#"
	if text == "" {
		s.text.WriteString(lead + "\n")
		return
	}
	hang := text[:len(text)-len(strings.TrimLeft(text, " "))]
	line := lead + " " + hang
	for i, word := range strings.Fields(text) {
		if i > 0 && utf8.RuneCountInString(line)+utf8.RuneCountInString(word) > explained {
			s.text.WriteString(strings.TrimRight(line, " ") + "\n")
			line = lead + "   " + hang
		}
		line += word + " "
	}
	s.text.WriteString(strings.TrimRight(line, " ") + "\n")
}

// line writes a line of the file, as a comment where it is off.
func (s *starter) line(depth int, off bool, text string) {
	s.text.WriteString(strings.Repeat("  ", depth))
	if off {
		s.text.WriteString("#")
	}
	s.text.WriteString(text + "\n")
}

// plain writes a value behind its key, in one line if it is short.
func (s *starter) plain(key string, value *yaml.Node, depth int, off bool) {
	text := flow(value)
	if len(value.Content) == 0 || value.Kind == yaml.SequenceNode && value.Content[0].Kind == yaml.ScalarNode ||
		value.Kind == yaml.MappingNode && utf8.RuneCountInString(text)+len(key)+2*depth < inLine {
		s.line(depth, off, key+" "+text)
		return
	}
	s.line(depth, off, key)
	if value.Kind == yaml.SequenceNode {
		s.items(value, depth+1, off)
		return
	}
	for i := 0; i+1 < len(value.Content); i += 2 {
		s.plain(value.Content[i].Value+":", value.Content[i+1], depth+1, off)
	}
}

// items writes the entries of a list of mappings.
func (s *starter) items(list *yaml.Node, depth int, off bool) {
	for _, entry := range list.Content {
		if text := flow(entry); utf8.RuneCountInString(text) < inLine {
			s.line(depth, off, "- "+text)
			continue
		}
		for i := 0; i+1 < len(entry.Content); i += 2 {
			name, value := entry.Content[i].Value+":", entry.Content[i+1]
			if i == 0 {
				s.line(depth, off, "- "+name+" "+flow(value))
				continue
			}
			s.plain(name, value, depth+1, off)
		}
	}
}

// flow writes a value in one line.
func flow(n *yaml.Node) string {
	var all []string
	switch n.Kind {
	case yaml.SequenceNode:
		for _, c := range n.Content {
			all = append(all, flow(c))
		}
		return "[" + strings.Join(all, ", ") + "]"
	case yaml.MappingNode:
		for i := 0; i+1 < len(n.Content); i += 2 {
			all = append(all, n.Content[i].Value+": "+flow(n.Content[i+1]))
		}
		return "{" + strings.Join(all, ", ") + "}"
	}
	if n.Style&(yaml.DoubleQuotedStyle|yaml.SingleQuotedStyle) != 0 {
		return `"` + strings.ReplaceAll(strings.ReplaceAll(n.Value, `\`, `\\`), `"`, `\"`) + `"`
	}
	return n.Value
}

// fallback is a sample of a key that needs none of its own: its default, or its first
// word.
func fallback(k *carfile.Key) *yaml.Node {
	text := k.Default
	if text == "" && k.Kind == carfile.Choice {
		text = k.Choices[0]
	}
	if text == "" {
		return nil
	}
	n := &yaml.Node{Kind: yaml.ScalarNode, Value: text}
	return n
}
