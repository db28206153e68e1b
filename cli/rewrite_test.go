package cli

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/cases/carfile"
	"sixlink/members/stock"
)

// staged returns a car file, with the tubes that are to go into it waiting beside it.
func staged(t *testing.T) (path string, src []byte, car *rewrite) {
	t.Helper()
	src, err := os.ReadFile("../examples/hillclimb-pushrod.yaml")
	if err != nil {
		t.Fatal(err)
	}
	path = filepath.Join(t.TempDir(), "car.yaml")
	if err := os.WriteFile(path, src, 0o640); err != nil {
		t.Fatal(err)
	}
	file, err := carfile.Read(path, src)
	if err != nil {
		t.Fatal(err)
	}
	list, _ := stock.Named("EN 10305-1")
	sized, err := cases.Size(file.Car, cases.Sizing{Stock: list, Target: 1, Limits: stock.Limits{Wall: stock.Range{Min: 1}}})
	if err != nil {
		t.Fatal(err)
	}
	car, err = retube(path, src, sized)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(car.discard)
	return path, src, car
}

// A car file that somebody writes while it is sized stays as they wrote it.
func TestFileChangedMeanwhile(t *testing.T) {
	path, src, car := staged(t)
	theirs := bytes.Replace(src, []byte("mass: 560"), []byte("mass: 570"), 1)
	if err := os.WriteFile(path, theirs, 0o640); err != nil {
		t.Fatal(err)
	}
	if err := car.commit(); !errors.Is(err, errChanged) || !strings.Contains(err.Error(), path) {
		t.Errorf("error %v", err)
	}
	if now, err := os.ReadFile(path); err != nil || !bytes.Equal(now, theirs) {
		t.Errorf("the file was changed: %v", err)
	}
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	if err := car.commit(); err == nil {
		t.Error("a file that is gone is written")
	}
}

// The new file is whole, has the permissions of the old one, and leaves nothing beside it.
func TestFileWritten(t *testing.T) {
	path, src, car := staged(t)
	if err := car.commit(); err != nil {
		t.Fatal(err)
	}
	now, err := os.ReadFile(path)
	if err != nil || bytes.Equal(now, src) || !bytes.Equal(now, car.text) {
		t.Errorf("the file is not what it should be: %v", err)
	}
	info, err := os.Stat(path)
	if err != nil || info.Mode().Perm() != 0o640 {
		t.Errorf("mode %v, %v", info.Mode(), err)
	}
	if files, err := os.ReadDir(filepath.Dir(path)); err != nil || len(files) != 1 {
		t.Errorf("%v beside it, %v", files, err)
	}
}
