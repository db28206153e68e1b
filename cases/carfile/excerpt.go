package carfile

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Limits of what is quoted from a file, in characters.
const (
	quotedRunes = 60  // of a value
	before      = 60  // of a line, before the column of the fault
	window      = 100 // of a line, in all
	tabWidth    = 4
)

// clean escapes what cannot be printed: control characters and escape sequences,
// marks that turn the direction of writing, odd spaces and bytes that are no UTF-8.
func clean(s string) string {
	var b strings.Builder
	for i := 0; i < len(s); {
		r, size := utf8.DecodeRuneInString(s[i:])
		b.WriteString(printable(r, s[i:i+size]))
		i += size
	}
	return b.String()
}

// Printable shows the name of a file, or another text from outside, in one line: what
// cannot be printed, and so might act on a terminal, is escaped.
func Printable(s string) string { return clean(s) }

func printable(r rune, raw string) string {
	switch {
	case r == utf8.RuneError && len(raw) == 1:
		return fmt.Sprintf(`\x%02x`, raw[0])
	case r == '\n':
		return `\n`
	case strconv.IsPrint(r):
		return raw
	}
	return strings.Trim(strconv.QuoteRuneToASCII(r), "'")
}

// quoted shows a value of the file between quotation marks, cut if it is long.
func quoted(s string) string { return `"` + cut(s) + `"` }

// cut shows a value of the file, cut if it is long.
func cut(s string) string {
	n := 0
	for i := range s {
		if n == quotedRunes {
			return clean(s[:i]) + "…"
		}
		n++
	}
	return clean(s)
}

// excerpt shows a line of the file around a column and returns the number of
// characters that stand before that column in what it shows. Tabs become spaces.
func excerpt(line string, column int) (shown string, caret int) {
	var b strings.Builder
	at, width := 1, 0
	first := max(1, column-before)
	for i := 0; i < len(line) && at < first+window; at++ {
		r, size := utf8.DecodeRuneInString(line[i:])
		raw := line[i : i+size]
		i += size
		if at < first {
			continue
		}
		if at == first && at > 1 {
			b.WriteString("…")
			width++
			continue
		}
		if at == column {
			caret = width
		}
		piece := printable(r, raw)
		if r == '\t' {
			piece = strings.Repeat(" ", tabWidth-width%tabWidth)
		}
		b.WriteString(piece)
		if !unicode.Is(unicode.Mn, r) {
			width += utf8.RuneCountInString(piece)
		}
	}
	if at <= column {
		caret = width + min(column-at, window)
	}
	if utf8.RuneCountInString(line) >= at {
		b.WriteString("…")
	}
	return b.String(), caret
}
