package carfile

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"go.yaml.in/yaml/v4"
)

// Limits of texts, in characters.
const (
	maxText  = 200
	maxProse = 10_000
)

// scalar reads the one value of a node.
func (r *reader) scalar(it *item, n *yaml.Node) {
	quotes := n.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) != 0
	if f := it.set(n.Value, quotes); f != nil {
		r.refuse(it, f.text, f.remedy)
	}
}

// set gives the item the value of a text.
func (it *item) set(value string, quotes bool) *flaw {
	k := it.key
	switch k.Kind {
	case Number:
		v, f := k.measure(value)
		it.numbers, it.text = []float64{v}, strings.TrimSpace(value)
		return f
	case Choice:
		it.text = strings.TrimSpace(value)
		if !slices.Contains(k.Choices, it.text) {
			return k.noChoice(value)
		}
	case Flag:
		it.flag = strings.EqualFold(value, "true")
		if quotes || !slices.Contains(truths, value) {
			return &flaw{quoted(value) + " is text, neither true nor false", "write true or false, without quotation marks"}
		}
	case Text, Prose:
		it.text = strings.TrimSpace(value)
		return k.legible(it.text)
	}
	return nil
}

// mostTold is how many choices a message says twice.
const mostTold = 8

// noChoice says that a word is none of those of the key.
func (k *Key) noChoice(value string) *flaw {
	for _, c := range k.Choices {
		if plainName(c) == plainName(value) {
			return &flaw{quoted(value) + " is none of the names of " + k.Name, "perhaps " + c + " is meant"}
		}
	}
	if len(k.Choices) > mostTold {
		return &flaw{quoted(value) + " is none of the names of " + k.Name, "write one of " + strings.Join(k.Choices, "; ")}
	}
	return &flaw{quoted(value) + " is not " + alternatives(k.Choices), k.advice()}
}

// truths are the words for true and false of the YAML 1.2 core schema (10.3.2).
var truths = []string{"true", "True", "TRUE", "false", "False", "FALSE"}

// legible refuses a text that a report cannot print.
func (k *Key) legible(s string) *flaw {
	limit := maxText
	if k.Kind == Prose {
		limit = maxProse
		s = strings.NewReplacer("\n", "", "\t", "").Replace(s)
	}
	if s == "" {
		return &flaw{"the text is empty", k.advice()}
	}
	if n := utf8.RuneCountInString(s); n > limit {
		return &flaw{"the text has " + short(float64(n)) + " characters, more than " + short(float64(limit)), "shorten it"}
	}
	for _, r := range s {
		if r == '\n' {
			return &flaw{"the text has more than one line", "write it in one line"}
		}
		if unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) || r == '\u2028' || r == '\u2029' {
			return &flaw{"the text holds the control character " + printable(r, string(r)), "take it out"}
		}
	}
	return nil
}

// shown is a number as the file has it, with the bare unit if it carries none, and
// in the bare unit too if it carries another.
func shown(text string, v float64, d Dimension) string {
	text = clean(strings.TrimSpace(text))
	switch unit := strings.TrimSpace(text[len(decimal.FindString(text)):]); {
	case unit == "":
		return text + d.suffix()
	case plainUnit(unit) == plainUnit(d.Bare()):
		return text
	}
	return text + " (" + short(v) + d.suffix() + ")"
}
