package carfile_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"go.yaml.in/yaml/v4"

	"sixlink/cases/carfile"
	"sixlink/cases/carfile/guide"
)

// compiled returns the schema, held to the meta-schema of its draft by the validator.
func compiled(t *testing.T) *jsonschema.Schema {
	t.Helper()
	text, err := guide.Schema()
	if err != nil {
		t.Fatal(err)
	}
	document, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("car.json", document); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("car.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// document is a YAML text as an editor hands it to a validator.
func document(text string) (any, error) {
	var v any
	if err := yaml.Unmarshal([]byte(text), &v); err != nil {
		return nil, err
	}
	return plain(v), nil
}

// plain puts YAML's values into those that JSON has; what JSON cannot say becomes text.
func plain(v any) any {
	switch v := v.(type) {
	case map[string]any:
		for k := range v {
			v[k] = plain(v[k])
		}
	case map[any]any:
		out := map[string]any{}
		for k := range v {
			out[fmt.Sprint(k)] = plain(v[k])
		}
		return out
	case []any:
		for i := range v {
			v[i] = plain(v[i])
		}
	case int, int64, uint64:
		return json.Number(fmt.Sprint(v))
	case float64:
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return fmt.Sprint(v)
		}
		return json.Number(fmt.Sprint(v))
	}
	return v
}

// What the program reads, the schema lets pass.
func TestSchemaTakesCars(t *testing.T) {
	s := compiled(t)
	files, err := filepath.Glob(filepath.Join("..", "..", "examples", "*.yaml"))
	if err != nil || len(files) < 5 {
		t.Fatalf("%d examples, %v", len(files), err)
	}
	ofCAD, err := filepath.Glob(filepath.Join("..", "..", "examples", "cad", "*.yaml"))
	if err != nil || len(ofCAD) == 0 {
		t.Fatalf("%d examples from CAD, %v", len(ofCAD), err)
	}
	cars := map[string]string{}
	for _, f := range append(files, ofCAD...) {
		text, err := os.ReadFile(f)
		if err != nil {
			t.Fatal(err)
		}
		cars[f] = string(text)
	}
	for _, rod := range guide.Rods {
		text, err := guide.Starter(rod, "caution")
		if err != nil {
			t.Fatal(err)
		}
		cars["starter "+rod] = string(text)
	}
	for name, text := range cars {
		v, err := document(text)
		if err == nil {
			err = s.Validate(v)
		}
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// Every faulty file is refused by the schema too, or stands in the list of those that a
// schema cannot know, with the reason; and the list has no file that is refused.
func TestSchemaRefusesFaults(t *testing.T) {
	s := compiled(t)
	files := carfile.FaultyFiles(t)
	for name, text := range files {
		v, err := document(text)
		if err != nil {
			continue // no YAML: it never reaches a schema
		}
		reason := beyond[name]
		switch err := s.Validate(v); {
		case err == nil && reason == "":
			t.Errorf("%s: the schema lets it pass, and no reason is given", name)
		case err != nil && reason != "":
			t.Errorf("%s: the schema refuses it: take it off the list", name)
		}
	}
	for name := range beyond {
		if _, ok := files[name]; !ok {
			t.Errorf("%s: there is no such faulty file", name)
		}
	}
}

// Each row of the table stands in the schema at its place, with its words.
func TestSchemaHasEveryKey(t *testing.T) {
	text, err := guide.Schema()
	if err != nil {
		t.Fatal(err)
	}
	var top map[string]any
	if err := json.Unmarshal(text, &top); err != nil {
		t.Fatal(err)
	}
	defs, _ := top["$defs"].(map[string]any)
	n := 0
	var hold func(keys []carfile.Key, node map[string]any, path string)
	hold = func(keys []carfile.Key, node map[string]any, path string) {
		node = mappingOf(node, defs)
		properties, _ := node["properties"].(map[string]any)
		if node["additionalProperties"] != false || len(properties) != len(keys) {
			t.Errorf("%s: %d keys for %d, others allowed: %v", path, len(properties), len(keys), node["additionalProperties"])
		}
		for i := range keys {
			k := &keys[i]
			n++
			p, ok := properties[k.Name].(map[string]any)
			words, _ := p["description"].(string)
			if !ok || !strings.Contains(words, k.Doc) || !strings.Contains(words, k.Dimension.Bare()) {
				t.Errorf("%s.%s: %q", path, k.Name, words)
			}
			if len(k.Keys) > 0 {
				hold(k.Keys, p, path+"."+k.Name)
			}
		}
	}
	hold(carfile.Keys(), top, "")
	if n < 300 {
		t.Errorf("%d keys, want at least 300", n)
	}
}

// mappingOf follows a description to the mapping in it.
func mappingOf(node, defs map[string]any) map[string]any {
	if ref, ok := node["$ref"].(string); ok {
		node, _ = defs[strings.TrimPrefix(ref, "#/$defs/")].(map[string]any)
	}
	if items, ok := node["items"].(map[string]any); ok {
		return items
	}
	if ways, ok := node["anyOf"].([]any); ok {
		node, _ = ways[1].(map[string]any)
	}
	return node
}

// Where no file of hardpoints is named, every point and what holds it must be there.
func TestSchemaNeedsPoints(t *testing.T) {
	s := compiled(t)
	src, err := os.ReadFile(filepath.Join("..", "..", "examples", "hillclimb-pushrod.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct{ name, old, new string }{
		{"wheel", "  wheel: {centre: [0, 740, 285], contact: [0, 740, 0]}\n", ""},
		{"pick-up", ", rear: [-190, 285, 362]", ""},
		{"joint of the rod", "rod: {outer: [2, 630, 196], ", "rod: {"},
		{"pivot", "    pivot: [0, 234, 422]\n", ""},
		{"spring", "    spring: {rocker: [-2545, 193.5, 478], chassis: [-2545, 20, 470]}\n", ""},
		{"end of the anti-roll link", "link: [0, 205, 330], ", ""},
		{"second of two links", "upper_wishbone: {outer: [-14, 655, 400], front: [150, 265, 372], rear: [-190, 285, 362]}", "upper_wishbone: {front_leg: {outer: [-14, 655, 400], inner: [150, 265, 372]}}"},
	} {
		without := strings.Replace(string(src), row.old, row.new, 1)
		if without == string(src) {
			t.Fatalf("%s: nothing to take out", row.name)
		}
		alone, err := document(without)
		if err != nil {
			t.Fatal(err)
		}
		listed, err := document(without + "\nhardpoints: {file: points.csv}\n")
		if err != nil {
			t.Fatal(err)
		}
		if s.Validate(alone) == nil {
			t.Errorf("without %s: the schema lets it pass", row.name)
		}
		if err := s.Validate(listed); err != nil {
			t.Errorf("without %s, and with a list: %v", row.name, err)
		}
	}
}
