package carfile

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v4"
	"go.yaml.in/yaml/v4/plugin/loaderlimits"
)

// Limits of a car file.
const (
	maxBytes = 4 << 20
	maxDepth = 100     // of mappings and lists in one another
	maxMarks = 100_000 // of YAML: what is read takes memory by them, up to about 1 kB each
)

// A source is the text of a car file, the cells of a workbook, or the text of a file that
// the car file names.
type source struct {
	name   string
	lines  []string
	book   *book // nil: a text
	beside bool  // a car file names it
}

// lineBreaks are those of the YAML reader, which counts them.
var lineBreaks = strings.NewReplacer("\r\n", "\n", "\r", "\n", "\u0085", "\n", "\u2028", "\n", "\u2029", "\n")

func newSource(name string, text []byte) source {
	return source{name: name, lines: strings.Split(lineBreaks.Replace(string(text)), "\n")}
}

// fault places a fault in the text.
func (s source) fault(line, column int, path string, f flaw) Fault {
	if s.book != nil {
		return s.book.fault(s.name, place{line: line, column: column}, path, f)
	}
	line, column = max(line, 1), max(column, 1)
	snippet := ""
	if line <= len(s.lines) {
		snippet = s.lines[line-1]
	}
	return Fault{File: s.name, Line: line, Column: column, Snippet: snippet, Path: path, Text: f.text, Remedy: f.remedy, beside: s.beside}
}

// faultAt places a fault in the text, or in that of the file of which the place is.
func (s source) faultAt(at place, path string, f flaw) Fault {
	if at.of != nil {
		s = *at.of
	}
	return s.fault(at.line, at.column, path, f)
}

// parse returns the text and its one document, or what is wrong with it as text or
// as YAML.
func parse(name string, text []byte) (source, *yaml.Node, Faults) {
	text = bytes.TrimPrefix(text, []byte("\ufeff"))
	s := newSource(name, text[:min(len(text), maxBytes)])
	if f, at := unreadable(text); f != nil {
		line, column := s.place(text[:at])
		return s, nil, Faults{s.fault(line, column, "", *f)}
	}
	if at, n := crowded(text); n > maxMarks {
		line, column := s.place(text[:at])
		return s, nil, Faults{s.fault(line, column, "", flaw{fmt.Sprintf("from here on the file has more than %d marks of YAML, such as commas, colons and brackets", maxMarks), "write fewer values; a car file has some hundreds"})}
	}
	l, err := yaml.NewLoader(bytes.NewReader(text), yaml.WithPlugin(loaderlimits.New(loaderlimits.DepthValue(maxDepth))))
	if err != nil {
		return s, nil, s.syntax(err)
	}
	var document, next yaml.Node
	if err := l.Load(&document); errors.Is(err, io.EOF) || err == nil && empty(&document) {
		return s, nil, Faults{s.fault(1, 1, "", flaw{"the file is empty", "write a car file; its first key is format: " + Format})}
	} else if err != nil {
		return s, nil, s.syntax(err)
	}
	if err := l.Load(&next); err == nil {
		return s, nil, Faults{s.fault(next.Line, next.Column, "", flaw{"a second document begins here", "put each car into a file of its own"})}
	} else if !errors.Is(err, io.EOF) {
		return s, nil, s.syntax(err)
	}
	return s, document.Content[0], nil
}

func empty(document *yaml.Node) bool {
	return len(document.Content) == 0 || document.Content[0].Kind == yaml.ScalarNode && isNull(document.Content[0])
}

// unreadable returns what keeps the text from being read as YAML at all, and the
// offset of it.
func unreadable(text []byte) (*flaw, int) {
	utf8Wanted := "save the file as UTF-8 text"
	switch {
	case len(text) > maxBytes:
		return &flaw{fmt.Sprintf("the file has %d bytes, more than %d", len(text), maxBytes), "give a car file; one has a few thousand bytes"}, 0
	case bytes.HasPrefix(text, []byte("\xff\xfe")), bytes.HasPrefix(text, []byte("\xfe\xff")):
		return &flaw{"the file is UTF-16 text", utf8Wanted}, 0
	}
	for i := 0; i < len(text); {
		r, size := utf8.DecodeRune(text[i:])
		switch {
		case r == utf8.RuneError && size == 1:
			return &flaw{fmt.Sprintf(`byte \x%02x is no UTF-8`, text[i]), utf8Wanted}, i
		case r < ' ' && !strings.ContainsRune("\t\n\r", r), r == 0xfffe, r == 0xffff:
			return &flaw{fmt.Sprintf("control character %U", r), "take it out"}, i
		}
		i += size
	}
	return nil, 0
}

// crowded returns the offset of the mark of YAML that is one too many, and how many there
// are up to it. Those in texts and comments count too: which are marks is known to the
// reader alone.
func crowded(text []byte) (at, n int) {
	for i, c := range text {
		switch c {
		case ',', '[', ']', '{', '}', '"', '\'':
			n++
		case ':', '-', '?':
			if i+1 == len(text) || strings.IndexByte(" \t\r\n,[]{}", text[i+1]) >= 0 {
				n++
			}
		case '#':
			if i == 0 || text[i-1] != '#' {
				n++
			}
		}
		if n > maxMarks {
			return i, n
		}
	}
	return len(text), n
}

// place returns the line and the column of what follows the text.
func (s source) place(text []byte) (line, column int) {
	head := strings.Split(lineBreaks.Replace(string(text)), "\n")
	return len(head), utf8.RuneCountInString(head[len(head)-1]) + 1
}

// syntax turns the errors of the YAML reader into faults.
func (s source) syntax(err error) Faults {
	var several *yaml.LoadErrors
	var one *yaml.LoadError
	var faults Faults
	switch {
	case errors.As(err, &several):
		for _, e := range several.Errors {
			faults = append(faults, s.syntaxFault(e))
		}
	case errors.As(err, &one):
		faults = append(faults, s.syntaxFault(one))
	}
	if len(faults) == 0 {
		faults = append(faults, s.fault(1, 1, "", flaw{"no YAML: " + err.Error(), "correct the file"}))
	}
	return faults.InOrder()
}

// syntaxFault shows what the YAML reader found, in the place where it found it; what
// is still open at the end of the file is shown where it begins.
func (s source) syntaxFault(e *yaml.LoadError) Fault {
	at, text := e.Mark, "this is not YAML: "+cut(e.Message)
	if e.ContextMsg != "" {
		text += ", " + e.ContextMsg
		switch begun := e.ContextMark; {
		case begun.Line > 0 && at.Line >= len(s.lines):
			at = begun
		case begun.Line > 0 && begun.Line != at.Line:
			text += fmt.Sprintf(" that begins in line %d", begun.Line)
		}
	}
	f := s.fault(at.Line, at.Column, "", flaw{text: text})
	indent := f.Snippet[:len(f.Snippet)-len(strings.TrimLeft(f.Snippet, " \t"))]
	switch {
	case e.Stage == yaml.ComposerStage:
		f.Remedy = "put & and the name in front of the value that * and the name are to repeat, or write the value out"
	case strings.Contains(indent, "\t"):
		f.Remedy = "indent the line with spaces instead of tabs"
	default:
		f.Remedy = "look here and in the line above for a missing space after a colon, an open bracket or quotation mark, or uneven indentation"
	}
	return f
}
