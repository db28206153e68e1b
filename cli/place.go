package cli

import (
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/urfave/cli/v2"
	"golang.org/x/text/unicode/norm"
)

// outputFlags name the files that commands write.
var outputFlags = []string{"json", "workbook", "csv", "html", "pdf", "svg", "png", "shard-file", "output"}

// inputFlags name files that commands read beside those without a flag.
var inputFlags = []string{"stock", "mileage"}

// outputsCanBe refuses, before anything is calculated, an output that could not be
// written after it: one over an input or another output, in a folder that is none, or
// that may not be written. It leaves nothing behind.
func outputsCanBe(c *cli.Context) error {
	var all []output
	for _, flag := range outputFlags {
		all = append(all, output{flag: flag})
	}
	outputs, inputs := chosen(c, all...), inputsOf(c)
	if err := distinct(outputs, inputs); err != nil {
		return err
	}
	if err := redirected("standard output", c.App.Writer, outputs, inputs); err != nil {
		return err
	}
	// an input that standard error goes into would be told there that it is one
	if err := redirected("standard error", c.App.ErrWriter, outputs, nil); err != nil {
		return err
	}
	for _, o := range outputs {
		if o.path == standardOutput {
			continue
		}
		if err := canBe(o.path); err != nil {
			return usage("--%s %s: cannot be written, and nothing was: %v: name another file or folder", o.flag, shown(o.path), plain(err))
		}
	}
	return nil
}

// inputsOf are the files that a command reads.
func inputsOf(c *cli.Context) (out []input) {
	what := carFile
	if c.Command.Name == "merge" {
		what = "a shard"
	}
	for _, path := range c.Args().Slice() {
		out = append(out, input{what, path})
		if what != carFile {
			continue
		}
		for _, name := range namedBy(path) {
			out = append(out, input{"the hardpoints of the car", name})
		}
	}
	for _, flag := range inputFlags {
		out = append(out, input{"the file of --" + flag, c.String(flag)})
	}
	return out
}

// canBe tells why a file cannot be put in the place of a name; it tries with an empty one
// beside it.
func canBe(name string) error {
	was, err := standing(name)
	if err != nil || was != nil && !was.Mode().IsRegular() {
		return err
	}
	f, err := create(target(name), nil)
	if err != nil {
		return err
	}
	f.Close()
	return os.Remove(f.Name())
}

// distinct refuses two outputs to one place, and an output over an input.
func distinct(outputs []output, inputs []input) error {
	for i, o := range outputs {
		if o.path == "" {
			return usage("--%s needs a file name, or - for standard output", o.flag)
		}
		for _, in := range inputs {
			if o.path != standardOutput && sameFile(o.path, in.path) {
				return usage("--%s %s would overwrite %s: name another file", o.flag, shown(o.path), in.what)
			}
		}
		for _, other := range outputs[:i] {
			switch {
			case !onePlace(other.path, o.path):
			case target(other.path) == target(o.path):
				return usage("--%s and --%s both name %s: give each its own file", other.flag, o.flag, shown(o.path))
			default:
				return usage("--%s %s and --%s %s are one file, here or where capitals do not count: give each its own", other.flag, shown(other.path), o.flag, shown(o.path))
			}
		}
	}
	return nil
}

// sameFile tells whether two names lead to one file that is there, by whatever links.
func sameFile(a, b string) bool {
	in, err := os.Stat(a)
	if err != nil {
		return false
	}
	other, err := os.Stat(b)
	return err == nil && os.SameFile(in, other)
}

// onePlace tells whether two outputs would come to stand in one place, be there a file or
// not. Names that differ in capitals or in how letters with marks are composed alone are
// one place on some file systems, so that they are on all.
func onePlace(a, b string) bool {
	if a == standardOutput || b == standardOutput {
		return a == b
	}
	if sameFile(a, b) {
		return true
	}
	dirA, baseA := filepath.Split(target(a))
	dirB, baseB := filepath.Split(target(b))
	return (dirA == dirB || sameFile(dirA, dirB)) && strings.EqualFold(norm.NFC.String(baseA), norm.NFC.String(baseB))
}

// redirected refuses a stream that the shell has led into the file of an output or of an
// input.
func redirected(what string, w io.Writer, outputs []output, inputs []input) error {
	f, ok := fileOf(w)
	if !ok {
		return nil
	}
	info, err := f.Stat()
	if err != nil || !info.Mode().IsRegular() {
		return nil
	}
	leads := func(path string) bool {
		other, err := os.Stat(path)
		return err == nil && os.SameFile(info, other)
	}
	for _, o := range outputs {
		if o.path != standardOutput && leads(o.path) {
			return usage("--%s %s is where %s goes: name another file", o.flag, shown(o.path), what)
		}
	}
	if i := slices.IndexFunc(inputs, func(in input) bool { return leads(in.path) }); i >= 0 {
		return usage("%s goes into %s, %s: lead it elsewhere", what, inputs[i].what, shown(inputs[i].path))
	}
	return nil
}

// target returns the absolute path at which a name ends, links followed whether or not
// there is a file behind them.
func target(path string) string {
	for range 40 { // as many links as the system itself follows
		link, err := os.Readlink(path)
		if err != nil {
			break
		}
		if !filepath.IsAbs(link) {
			link = filepath.Join(filepath.Dir(path), link)
		}
		path = link
	}
	if dir, err := filepath.EvalSymlinks(filepath.Dir(path)); err == nil {
		path = filepath.Join(dir, filepath.Base(path))
	}
	if abs, err := filepath.Abs(path); err == nil {
		return abs
	}
	return path
}
