// Package carfile reads a car file, which is YAML, into a cases.Car and reports
// every fault of the file with its place and with what to do about it.
//
// One table (Keys) knows every key: what its value is, its unit, its range and its
// default. Bare numbers of a file are mm, kg, N, MPa, degrees, g for accelerations,
// m/s, m², kg/m³ and N·m; a text carries its own unit. The axes of the file are
// turned into ISO 8855 here, and nowhere after.
package carfile

import (
	"go.yaml.in/yaml/v4"

	"sixlink/cases"
	"sixlink/cases/duty"
)

// A File is a car file that has been read.
type File struct {
	Car     cases.Car
	Scatter []Scatter  // of the values that scatter, for a study of tolerance
	Duty    *duty.Duty // what a lap does to the car; nil: the file does not say

	source
	top  *item
	turn turn

	points *pointList // nil: the file names no other one
}

// Read reads a car file. The name is that of the file, for messages alone. The
// error, if there is one, is of type Faults and holds all that is wrong, in file
// order. A car file that names another one is refused: ReadFrom takes both.
func Read(name string, src []byte) (File, error) { return ReadFrom(name, src, alone) }

// ReadFrom reads a car file as Read does, with the file of hardpoints that it may name: open
// opens that, by its name in the car file. Faults of it stand after those of the car file.
func ReadFrom(name string, src []byte, open Opener) (File, error) {
	s, root, faults := parse(name, src)
	if len(faults) > 0 {
		return File{}, faults
	}
	return readTree(s, root, open)
}

// Values returns the values of a car file that ReadFrom takes as they stand in it, with what
// aliases repeat written out; open nil: it names no other file.
func Values(name string, src []byte, open Opener) (*yaml.Node, error) {
	if _, err := ReadFrom(name, src, open); err != nil {
		return nil, err
	}
	_, root, _ := parse(name, src)
	return Copy(root), nil
}

// Copy copies values, aliases written out.
func Copy(n *yaml.Node) *yaml.Node {
	n = target(n)
	out := *n
	out.Anchor, out.Content = "", nil
	for _, c := range n.Content {
		out.Content = append(out.Content, Copy(c))
	}
	return &out
}

// readTree reads the values of a file; open nil: by themselves.
func readTree(s source, root *yaml.Node, open Opener) (File, error) {
	if open == nil {
		open = alone
	}
	if f := s.noCarFile(root); f != nil {
		return File{}, Faults{*f}
	}
	r := &reader{source: s}
	top := r.read(&car, nil, r.takePoints(root, open), "")
	b := builder{reader: r}
	b.build(top)
	lap := b.duty(top.at("duty"))
	if len(r.faults) > 0 {
		return File{}, r.faults.InOrder()
	}
	if b.misfits(lap, top); len(r.faults) > 0 {
		return File{}, r.faults.InOrder()
	}
	f := File{Car: b.car, Duty: lap, source: s, top: top, turn: b.turn, points: r.points}
	if f.Scatter = b.scatter(f, top.at("scatter")); len(r.faults) > 0 {
		return File{}, r.faults.InOrder()
	}
	return f, nil
}

// Materials returns the names of the materials that the file gives.
func (f File) Materials() (out []string) {
	for _, e := range f.top.at("materials").entries {
		out = append(out, e.name())
	}
	return out
}

// Fault places a fault that was found after reading, such as a load case that cannot
// be calculated, at the key of that path, or at the nearest one above it that the
// file has. Paths are those of Fault.Path.
func (f File) Fault(path, text, remedy string) Fault {
	at := none
	if f.top != nil {
		at = f.top.lookUp(path)
	}
	return f.source.faultAt(at.place, path, flaw{text, remedy})
}

// noCarFile returns the fault of a file that is none of this format and version: the
// rest of it would only be misread.
func (s source) noCarFile(root *yaml.Node) *Fault {
	refused := func(n *yaml.Node, path, text, remedy string) *Fault {
		f := s.fault(n.Line, n.Column, path, flaw{text, remedy})
		return &f
	}
	if root.Kind != yaml.MappingNode {
		return refused(root, "", "this is not a mapping of keys to values", "write a car file; its first key is format: "+Format)
	}
	known := false
	for i := 0; i+1 < len(root.Content); i += 2 {
		name, value := root.Content[i], target(root.Content[i+1])
		if name.Kind != yaml.ScalarNode {
			continue
		}
		known = known || car.find(name.Value) != nil
		if name.Value == "format" && value.Value != Format {
			return refused(value, "format", quoted(value.Value)+" is not a format that is read here", "write format: "+Format+" if this is a car file in that format")
		}
	}
	if !known {
		return refused(root, "", "format is missing, and so is every other key of a car file", "write a car file; its first key is format: "+Format)
	}
	return nil
}
