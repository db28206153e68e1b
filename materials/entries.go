package materials

import (
	"fmt"
	"slices"
	"strings"
)

// Entries returns the rows of the table with what stands behind each number, in the
// order of the table. The slice is the caller's own; what it holds is not.
func Entries() []Entry { return slices.Clone(builtIn().entries) }

// Lookup returns every row of the material of that name, or of the one material whose
// name begins so. Rows without a yield strength are among them.
//
// The error is an *UnknownError or an *AmbiguousError.
func Lookup(name string) ([]Entry, error) { return builtIn().lookup(name) }

func (t table) lookup(name string) ([]Entry, error) {
	found, ok := t.title(name)
	if !ok {
		begins := t.beginning(name)
		switch len(begins) {
		case 0:
			return nil, &UnknownError{Name: name, Near: t.near(name)}
		case 1:
			found.name = begins[0]
		default:
			return nil, &AmbiguousError{Name: name, Names: begins}
		}
	}
	other := func(e Entry) bool { return e.Name != found.name }
	return slices.DeleteFunc(slices.Clone(t.entries), other), nil
}

// beginning returns the canonical names of which a text is the beginning, or the
// beginning of one of their other names, in the order of the table.
func (t table) beginning(text string) (names []string) {
	k := key(text)
	for _, title := range t.titles {
		if k != "" && strings.HasPrefix(title.key, k) && !slices.Contains(names, title.name) {
			names = append(names, title.name)
		}
	}
	return names
}

// An AmbiguousError is the error for the beginning of several names.
type AmbiguousError struct {
	Name  string   // as it was asked for
	Names []string // canonical names that begin so, in the order of the table
}

func (e *AmbiguousError) Error() string {
	return fmt.Sprintf("%q is the beginning of several names: write one of %s", e.Name, strings.Join(e.Names, ", "))
}
