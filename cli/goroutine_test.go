package cli_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strings"
	"testing"
)

// What runs in a goroutine goes through relay.Call, for a panic there would end the
// program with a trace. The ones named here call nothing that could.
func TestGoroutinesRelayPanics(t *testing.T) {
	quiet := map[string]int{"cases/studies/studies.go": 1} // it fills a queue of channels
	found := 0
	err := filepath.WalkDir("..", func(path string, _ fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || strings.Contains(path, "testdata") {
			return err
		}
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			return err
		}
		name, err := filepath.Rel("..", path)
		if err != nil {
			return err
		}
		for _, body := range goroutines(file) {
			found++
			if relays(body) {
				continue
			}
			if name = filepath.ToSlash(name); quiet[name] == 0 {
				t.Errorf("%s: a goroutine without relay.Call", name)
			}
			quiet[name]--
		}
		return nil
	})
	if err != nil || found < 6 {
		t.Errorf("%d goroutines found, %v", found, err)
	}
}

// goroutines are the bodies of what a file starts beside itself, by go or by the Go of a
// group; of a function by its name that of its declaration in the file.
func goroutines(file *ast.File) (out []ast.Node) {
	started := func(f ast.Expr) {
		name, byName := f.(*ast.Ident)
		for _, d := range file.Decls {
			if decl, ok := d.(*ast.FuncDecl); ok && byName && decl.Name.Name == name.Name {
				f, out = nil, append(out, decl.Body)
			}
		}
		if f != nil {
			out = append(out, f)
		}
	}
	ast.Inspect(file, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.GoStmt:
			started(n.Call.Fun)
		case *ast.CallExpr:
			if s, ok := n.Fun.(*ast.SelectorExpr); ok && s.Sel.Name == "Go" && len(n.Args) == 1 {
				started(n.Args[0])
			}
		}
		return true
	})
	return out
}

// relays tells whether a body calls relay.Call.
func relays(body ast.Node) (yes bool) {
	ast.Inspect(body, func(n ast.Node) bool {
		if s, ok := n.(*ast.SelectorExpr); ok {
			x, ok := s.X.(*ast.Ident)
			yes = yes || ok && x.Name == "relay" && s.Sel.Name == "Call"
		}
		return true
	})
	return yes
}
