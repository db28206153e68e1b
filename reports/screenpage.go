package reports

import (
	"fmt"
	"strings"
)

// line writes lines; one that is too long is folded, and its further lines are indented
// by two places more than its first.
func (p *page) line(format string, args ...any) {
	for _, text := range strings.Split(fmt.Sprintf(format, args...), "\n") {
		if places(text) <= p.screen.Width() {
			p.raw(text)
			continue
		}
		bare := strings.TrimLeft(text, " ")
		blanks := text[:len(text)-len(bare)]
		p.within(p.screen.Width(), blanks, blanks+"  ", pieces(bare))
	}
}

func (p *page) raw(text string) { p.WriteString(text + "\n") }

// fold writes a text after a lead, broken between words; further lines are indented.
func (p *page) fold(lead, indent, text string) {
	if text != "" {
		p.within(min(p.screen.Width(), textWidth), lead, indent, bound(pieces(printable(text))))
	}
}

// within is fold for a width and pieces that are there already.
func (p *page) within(width int, lead, indent string, list []piece) {
	line, bare := lead, strings.TrimSpace(lead) == "" // nothing stands on the line
	for i, w := range list {
		if w.apart && i > 0 && !bare {
			w.text = " " + w.text
		}
		if !bare && places(line)+places(w.text) > width {
			p.raw(strings.TrimRight(line, " "))
			line = indent + strings.TrimPrefix(w.text, " ")
			continue
		}
		line, bare = line+w.text, false
	}
	p.raw(line)
}
