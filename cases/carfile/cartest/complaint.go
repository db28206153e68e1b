package cartest

import (
	"fmt"
	"regexp"
	"strings"
)

var (
	located = regexp.MustCompile(`^[^\n:]+:[0-9]+(?::[0-9]+)?: `)
	about   = regexp.MustCompile(`^sixlink: (?:--[a-z-]+|[a-z]+|[^\n:]+?)(?::| |$)`)
	snippet = regexp.MustCompile(`(?m)^ *(?:[0-9]+ \| .*|\^)\n?`)

	// remedies are how what to do begins: a verb that tells, or what is probably meant.
	remedies = regexp.MustCompile(`(?:^|: |; |, |\n {3}|\()(?:or |and |perhaps |it belongs |a value must follow|the (?:commands|keys here) are |its options are )?` +
		`(?:such as|sixlink [a-z]+ [A-Z]+|sixlink materials lists|its entries go by|add|allow|ask|begin|call|change|check|choose|complete|correct|cut|draw|exchange|give|indent|join|judge|keep|leave|let|look|make|mend|move|name|perhaps|press|put|raise|replace|report|run|save|say|see|set|shorten|sort|start|stay|take|turn|unset|use|weld|wrap|write|right|a value must follow|the keys here are|the commands are|its options are|it belongs|perhaps)\b`)

	// said are the words of a message that holds a limit, or what is expected instead.
	said = regexp.MustCompile(`[0-9]|"[^"]*"|\b(?:one of|such as|missing|no value|needed|needs|neither|unknown|duplicate|exclude|there is|is not|is no|are no|less than|more than|above|below|outside|exactly one|such|belongs|instead|goes with|no|none|not|second|both|must|would|ends before|with|are|is)\b`)

	// empty are words that say nothing of what is wrong.
	empty = regexp.MustCompile(`(?i)\b(?:invalid|illegal|malformed|bad|error|failed|failure|syntax error|oops|nil|panic|internal)\b`)
)

// Complaint says what a message about an input lacks of what each must have: the place or
// the option at fault, a limit or what is expected, and what to do. It returns how many
// faults the message tells of.
func Complaint(message string) (faults int, err error) {
	for _, m := range split(message) {
		faults++
		text := snippet.ReplaceAllString(m, "")
		place := located.FindString(text)
		if place == "" && !about.MatchString(text) {
			return faults, fmt.Errorf("no place and nothing at fault in front: %q", m)
		}
		text = strings.TrimPrefix(text, place)
		switch {
		case empty.MatchString(text):
			return faults, fmt.Errorf("%q says nothing: %q", empty.FindString(text), m)
		case !remedies.MatchString(text):
			return faults, fmt.Errorf("nothing says what to do: %q", m)
		case !said.MatchString(text):
			return faults, fmt.Errorf("neither a limit nor what is expected: %q", m)
		}
	}
	if faults == 0 {
		return 0, fmt.Errorf("no message")
	}
	return faults, nil
}

// split cuts a message into one for each fault.
func split(message string) (out []string) {
	for line := range strings.Lines(message) {
		begins := located.MatchString(line) || strings.HasPrefix(line, "sixlink: ")
		switch {
		case strings.HasPrefix(line, "(sixlink --help"), strings.TrimSpace(line) == "":
		case begins || len(out) == 0:
			out = append(out, line)
		default:
			out[len(out)-1] += line
		}
	}
	return out
}
