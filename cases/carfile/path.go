package carfile

import (
	"strconv"
	"strings"
)

// splitPath splits a path at its points and brackets. What stands in brackets may stand
// between quotation marks, so that it can have brackets of its own.
func splitPath(path string) (steps []step, ok bool) {
	for rest := path; rest != ""; {
		switch {
		case rest[0] == '[':
			text, after, ok := bracketed(rest[1:])
			if !ok || len(steps) == 0 {
				return nil, false
			}
			steps, rest = append(steps, step{text, true}), after
		case rest[0] == '.':
			if len(steps) == 0 || len(rest) == 1 || rest[1] == '.' || rest[1] == '[' {
				return nil, false
			}
			rest = rest[1:]
			fallthrough
		default:
			if len(steps) > 0 && path[len(path)-len(rest)-1] == ']' {
				return nil, false
			}
			end := strings.IndexAny(rest, ".[")
			if end < 0 {
				end = len(rest)
			}
			steps, rest = append(steps, step{rest[:end], false}), rest[end:]
		}
	}
	return steps, len(steps) > 0
}

// bracketed reads what stands in brackets, and returns what follows them.
func bracketed(rest string) (text, after string, ok bool) {
	if quote, err := strconv.QuotedPrefix(rest); err == nil && strings.HasPrefix(rest[len(quote):], "]") {
		text, err = strconv.Unquote(quote)
		return text, rest[len(quote)+1:], err == nil && text != ""
	}
	end := strings.IndexByte(rest, ']')
	if end < 1 {
		return "", "", false
	}
	return strings.TrimSpace(rest[:end]), rest[end+1:], true
}

// named returns a path with the names of entries of lists in the place of their numbers,
// where no other entry has the name: so people know them.
func (f File) named(path string) string {
	steps, _ := splitPath(path)
	out := ""
	it := f.top
	for _, s := range steps {
		switch {
		case it.key != nil && it.key.Kind == List && s.bracket:
			i, err := strconv.Atoi(s.text)
			if err != nil || i < 0 || i >= len(it.entries) {
				return path
			}
			out += "[" + it.nameOf(i) + "]"
			it = it.entries[i]
		case s.bracket:
			out += "[" + s.text + "]"
		default:
			out, it = inside(out, s.text), it.at(s.text)
		}
	}
	return out
}

// nameOf is how an entry of a list goes in a path: by its name, or by its number where it
// has none of its own.
func (it *item) nameOf(i int) string {
	name := it.entries[i].name()
	for j, e := range it.entries {
		if name == "" || j != i && (e.name() == name || strconv.Itoa(j) == name) {
			return strconv.Itoa(i)
		}
	}
	if strings.ContainsAny(name, `[]"`) {
		return strconv.Quote(name)
	}
	return clean(name)
}

// name is the name of an entry of a list.
func (it *item) name() string { return it.at("name").text + it.at("part").text }
