package cli_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"os"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// A raced is one line of the list of tests under the race detector.
type raced struct {
	tests *regexp.Regexp // nil: all of the package
	but   *regexp.Regexp // those that are left out of all; nil: none
}

// racedTests reads the list by package folder.
func racedTests(t *testing.T) map[string]raced {
	t.Helper()
	text, err := os.ReadFile("../.ci/race")
	if err != nil {
		t.Fatal(err)
	}
	out := map[string]raced{}
	for line := range strings.Lines(string(text)) {
		words := strings.Fields(line)
		if len(words) == 0 || words[0] == "#" {
			continue
		}
		var r raced
		switch {
		case len(words) == 3 && words[1] == "-run":
			r.tests = regexp.MustCompile(words[2])
		case len(words) == 3 && words[1] == "-skip":
			r.but = regexp.MustCompile(words[2])
		case len(words) > 1:
			t.Errorf(".ci/race: %q: write a package, or -run or -skip and a pattern behind it", line)
		}
		out[strings.TrimPrefix(words[0], "./")] = r
	}
	return out
}

// A concurrency is what one package has of it.
type concurrency struct {
	shares   bool            // locks, atomic values: memory that goroutines share
	starts   bool            // its code starts goroutines
	starters map[string]bool // functions of its tests that start some themselves
	calls    map[string][]string
}

// tests returns the tests that start goroutines, by themselves or by a helper.
func (c *concurrency) tests() (out []string) {
	for grown := true; grown; {
		grown = false
		for name, called := range c.calls {
			if !c.starters[name] && slices.ContainsFunc(called, func(s string) bool { return c.starters[s] }) {
				c.starters[name], grown = true, true
			}
		}
	}
	for name, starts := range c.starters {
		if starts && strings.HasPrefix(name, "Test") {
			out = append(out, name)
		}
	}
	slices.Sort(out)
	return out
}

// The race detector sees only what runs side by side: each package that starts
// goroutines or shares memory between them is in the list of tests for it, with at least
// the tests that do so, and no other package is.
func TestRaceTests(t *testing.T) {
	listed := racedTests(t)
	found := map[string]*concurrency{}
	err := fs.WalkDir(os.DirFS(".."), ".", func(name string, _ fs.DirEntry, err error) error {
		if err != nil || path.Ext(name) != ".go" {
			return err
		}
		dir := path.Dir(name)
		if found[dir] == nil {
			found[dir] = &concurrency{starters: map[string]bool{}, calls: map[string][]string{}}
		}
		return found[dir].read("../" + name)
	})
	if err != nil {
		t.Fatal(err)
	}
	for _, dir := range slices.Sorted(maps.Keys(found)) {
		c, tests := found[dir], found[dir].tests()
		r, in := listed[dir]
		delete(listed, dir)
		switch concurrent := c.starts || c.shares || len(tests) > 0; {
		case concurrent && !in:
			t.Errorf("%s has goroutines, and .ci/race does not name it", dir)
		case !concurrent && in:
			t.Errorf("%s has no goroutines, and .ci/race names it", dir)
		case c.starts && in && r.tests != nil:
			t.Errorf("%s starts goroutines: .ci/race must name all of its tests, without a pattern", dir)
		}
		for _, test := range tests {
			if in && (r.tests != nil && !r.tests.MatchString(test) || r.but != nil && r.but.MatchString(test)) {
				t.Errorf("%s: %s starts goroutines, and the pattern of .ci/race leaves it out", dir, test)
			}
		}
	}
	for dir := range listed {
		t.Errorf(".ci/race names %s, which is no package", dir)
	}
}

// read adds what one file has.
func (c *concurrency) read(name string) error {
	file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.SkipObjectResolution)
	if err != nil {
		return err
	}
	inTests := strings.HasSuffix(name, "_test.go")
	for _, d := range file.Decls {
		shares, starts, names := concurrent(d)
		c.shares = c.shares || shares
		if function, ok := d.(*ast.FuncDecl); inTests && ok {
			name := function.Name.Name
			c.calls[name] = append(c.calls[name], names...)
			c.starters[name] = c.starters[name] || starts
			continue
		}
		c.starts = c.starts || starts
	}
	return nil
}

// concurrent reports whether a declaration shares memory between goroutines, and whether
// it starts any: by go, by a method Go of a group, or by running a test beside others. A
// value made once (sync.OnceValue) is shared by whatever starts goroutines. It returns the
// names that stand in the declaration too.
func concurrent(d ast.Decl) (shares, starts bool, names []string) {
	ast.Inspect(d, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.GoStmt:
			starts = true
		case *ast.Ident:
			names = append(names, n.Name)
		case *ast.SelectorExpr:
			if of, ok := n.X.(*ast.Ident); ok {
				shares = shares || of.Name == "atomic" || of.Name == "sync" && !strings.HasPrefix(n.Sel.Name, "Once")
			}
			starts = starts || n.Sel.Name == "Go" || n.Sel.Name == "Parallel"
		}
		return true
	})
	return shares, starts, names
}
