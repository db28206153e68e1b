package carfile

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"go.yaml.in/yaml/v4"

	"sixlink/cases"
)

// An Opener opens a file that a car file names, by its name there.
type Opener func(name string) (io.ReadCloser, error)

// errAlone is the error for a file that cannot be had, for the car file is read alone.
var errAlone = errors.New("the car file is read by itself here: write the hardpoints into it")

// alone is the Opener of a car file that is read by itself.
func alone(string) (io.ReadCloser, error) { return nil, errAlone }

// A pointList is what a CSV file of hardpoints came to.
type pointList struct {
	file   cases.InputFile
	doubts []string

	// told has the points, and the mappings above them, whose absence is told already: by a
	// fault of the file, or of the row that was to give them.
	told map[string]bool
}

// A drawnIn is the form in which a car file says that its hardpoints are drawn.
type drawnIn struct {
	unit   string // empty: the heading says it
	axes   *turn  // nil: the heading says them, or they are those of the car file
	origin []float64
	others bool // points of no car are left out
}

// namedPoints returns the row of the file of hardpoints in a tree, and its name.
func namedPoints(root *yaml.Node) (name, value *yaml.Node) {
	for i := 0; root.Kind == yaml.MappingNode && i+1 < len(root.Content); i += 2 {
		if root.Content[i].Value == hardpointsKey.Name {
			return root.Content[i], root.Content[i+1]
		}
	}
	return nil, nil
}

// Beside returns the names of the files that a car file takes its hardpoints from, as they
// stand there; none where it cannot be read so far.
func Beside(src []byte) []string {
	_, root, faults := parse("", src)
	if len(faults) > 0 {
		return nil
	}
	return BesideOf(root)
}

// BesideOf returns what Beside does, of values.
func BesideOf(root *yaml.Node) []string {
	_, n := namedPoints(root)
	if n == nil {
		return nil
	}
	file := Under(target(n), "file")
	if file == nil || target(file).Kind != yaml.ScalarNode || strings.TrimSpace(target(file).Value) == "" {
		return nil
	}
	return []string{strings.TrimSpace(target(file).Value)}
}

// takePoints puts the hardpoints of the file that the tree of a car file names into that
// tree, in its axes and in mm, with their places in that file.
func (r *reader) takePoints(root *yaml.Node, open Opener) *yaml.Node {
	name, value := namedPoints(root)
	if value == nil {
		return root
	}
	r.points = &pointList{told: map[string]bool{}}
	quiet := &reader{source: r.source} // these keys are read again, and their faults told, with the rest
	it := quiet.read(&hardpointsKey, name, value, hardpointsKey.Name)
	own := quiet.ownTurn(root)
	form, ok := r.drawn(it)
	if !ok || len(quiet.faults) > 0 {
		r.tellNone()
		return root
	}
	file := it.at("file")
	bytes, err := fetch(file.text, open)
	if err != nil {
		text, remedy := halves(err)
		r.refuse(file, text, remedy)
		r.tellNone()
		return root
	}
	sum := sha256.Sum256(bytes)
	r.points.file = cases.InputFile{Name: file.text, SHA256: hex.EncodeToString(sum[:])}
	list := r.readPoints(file.text, bytes, form)
	return r.graft(root, file, list, form, own)
}

// ownTurn is that of the axes of the car file; that of ISO 8855 where they have a fault.
func (r *reader) ownTurn(root *yaml.Node) turn {
	n := Under(root, axesKey.Name)
	if n == nil {
		return iso
	}
	t, _ := r.turnOf(r.read(&axesKey, nil, n, axesKey.Name))
	return t
}

// drawn reads how the points are drawn; false: it has a fault.
func (r *reader) drawn(it *item) (form drawnIn, ok bool) {
	form = drawnIn{unit: it.at("unit").text, others: it.at("other_points").text == ignoreOthers, origin: []float64{0, 0, 0}}
	if origin := it.at("origin"); origin.given && origin.good && len(origin.numbers) == len(xyz) {
		form.origin = origin.numbers
	}
	if axes := it.at("axes"); axes.given && axes.good {
		t, known := r.turnOf(axes)
		if !known {
			return form, false
		}
		form.axes = &t
	}
	return form, it.good
}

// fetch reads a file that the car file names, to a byte more than it may have.
func fetch(name string, open Opener) ([]byte, error) {
	in, err := open(name)
	if err != nil {
		return nil, err
	}
	defer in.Close()
	text, err := io.ReadAll(io.LimitReader(in, maxBytes+1))
	if err != nil {
		return nil, fmt.Errorf("%s cannot be read: %w: name another file", quoted(name), err)
	}
	return text, nil
}

// placedBeside is a name in a car file as it is found from where that file is.
func placedBeside(carFile, name string) string {
	if filepath.IsAbs(name) {
		return name
	}
	return filepath.Join(filepath.Dir(carFile), name)
}

// tellNone says that the absence of no point is a fault of its own.
func (r *reader) tellNone() {
	for _, path := range namesOfPoints().paths {
		r.tell(path)
	}
}

// tell says that the absence of a point is told already.
func (r *reader) tell(path string) {
	for path != "" {
		r.points.told[path] = true
		path = path[:max(0, strings.LastIndex(path, "."))]
	}
}

// toldAbsent tells whether it is told already that a value is not there; of what the
// right-hand side mirrors where it is told of the left one.
func (r *reader) toldAbsent(path string) bool {
	return r.points != nil && (r.points.told[path] || r.points.told[strings.Replace(path, ".right.", ".", 1)])
}

// elsewhere says where else a point may be given; empty: nowhere.
func (r *reader) elsewhere(k *Key, path string) string {
	if r.points == nil {
		return ""
	}
	if k.Point() {
		return ", or a row " + path + " to " + clean(r.points.file.Name)
	}
	for i := range k.Keys {
		if o := &k.Keys[i]; o.Point() {
			return ", or rows such as " + inside(path, o.Name) + " to " + clean(r.points.file.Name)
		}
	}
	return ""
}

// A listedPoint is one row of a list of hardpoints.
type listedPoint struct {
	path    string
	numbers [3]float64 // mm, in the axes and from the origin of the list
	at      place      // of the name
	places  [3]place   // of the numbers
}

// in returns the numbers of a point as the car file would have them, mm.
func (p listedPoint) in(own, list turn, origin []float64) [3]float64 {
	v := make([]float64, len(p.numbers))
	for i, x := range p.numbers {
		v[i] = x - origin[i]
	}
	return own.back(list.vector(v))
}

// takeList tells the car what it was given by a list.
func (b *builder) takeList() {
	if b.points != nil {
		b.car.Files = []cases.InputFile{b.points.file}
		b.car.Doubts = append(b.car.Doubts, b.points.doubts...)
	}
}
