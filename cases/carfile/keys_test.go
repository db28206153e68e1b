package carfile

import (
	"slices"
	"strings"
	"testing"

	"sixlink/members/check"

	"sixlink/cases"
	"sixlink/loads"
)

// every calls f for each row of the table with its path.
func every(f func(path string, k, parent *Key)) {
	var walk func(path string, k *Key)
	walk = func(path string, k *Key) {
		for i := range k.Keys {
			o := &k.Keys[i]
			f(inside(path, o.Name), o, k)
			walk(inside(path, o.Name), o)
		}
	}
	walk("", &car)
}

// A row of the table says all that it must, and nothing that contradicts itself.
func TestTable(t *testing.T) {
	rows := 0
	every(func(path string, k, parent *Key) {
		rows++
		if k.Name == "" || k.Doc == "" {
			t.Errorf("%s: no name or no doc", path)
		}
		if parent.find(k.Name) != k {
			t.Errorf("%s: the name stands twice", path)
		}
		if k.Required && (k.Default != "" || k.Absent != "" || k.NeededWith != "" || k.With != "") {
			t.Errorf("%s: required, and something holds without it", path)
		}
		numbers := k.Kind == Number || k.Kind == Numbers || k.Kind == Vector
		if numbers != (k.Range != Range{}) || numbers && !(k.Range.Min < k.Range.Max) {
			t.Errorf("%s: range %+v", path, k.Range)
		}
		if (k.Kind == Numbers || k.Kind == Vector) != (len(k.Parts) > 0) {
			t.Errorf("%s: parts %q", path, k.Parts)
		}
		if (k.Kind == Choice) != (len(k.Choices) > 0) {
			t.Errorf("%s: choices %q", path, k.Choices)
		}
		if (k.Kind == Mapping || k.Kind == List) && len(k.Keys) == 0 {
			t.Errorf("%s: no keys", path)
		}
		for _, name := range append(slices.Clone(k.OneOf), k.With, k.NeededWith) {
			if name != "" && k.find(name) == nil && parent.find(name) == nil {
				t.Errorf("%s: there is no key %s", path, name)
			}
		}
	})
	if rows < 100 {
		t.Errorf("%d rows, want at least 100", rows)
	}
}

// A default is what the reader would accept.
func TestDefaults(t *testing.T) {
	every(func(path string, k, parent *Key) {
		if k.Default == "" {
			return
		}
		r := &reader{}
		it := &item{key: &Key{Keys: []Key{*k}}, fields: map[string]*item{}}
		r.defaults(it)
		d := it.at(k.Name)
		if !d.good || d.given || len(d.numbers) != max(len(k.Parts), boolean(k.Kind == Number)) {
			t.Errorf("%s: default %q gives %+v", path, k.Default, d)
		}
		for _, v := range d.numbers {
			if !k.Range.holds(v) {
				t.Errorf("%s: default %g is out of range", path, v)
			}
		}
		if f := d.set(k.Default, false); f != nil && k.Kind != Vector {
			t.Errorf("%s: default %q is refused: %s", path, k.Default, f.text)
		}
	})
}

func boolean(b bool) int {
	if b {
		return 1
	}
	return 0
}

// No key and no word is one that YAML 1.1 readers take for true or false.
// Source: YAML 1.1 type repository, bool.
func TestNoBooleanWords(t *testing.T) {
	booleans := []string{"y", "Y", "yes", "Yes", "YES", "n", "N", "no", "No", "NO", "on", "On", "ON", "off", "Off", "OFF", "true", "false"}
	every(func(path string, k, _ *Key) {
		for _, word := range append(slices.Clone(k.Choices), k.Name) {
			// The axis y is the one exception: it has no other name.
			if slices.Contains(booleans, word) && !strings.HasSuffix(path, "axes.y") {
				t.Errorf("%s: %s is a boolean to YAML 1.1", path, word)
			}
		}
	})
}

// The words and defaults of the table are those of the packages that give them meaning.
func TestTableAgrees(t *testing.T) {
	var rod, drive, torque []string
	factors := map[string]string{}
	every(func(path string, k, _ *Key) {
		switch path {
		case "front.rod.carried_by":
			rod = k.Choices
		case "vehicle.drive.by":
			drive = k.Choices
		case "cases.wheel":
			torque = k.Choices
		case "design_factors.yield", "design_factors.ultimate", "design_factors.buckling":
			factors[k.Name] = k.Default
		}
	})
	if !slices.Equal(rod, loads.CarrierNames[:]) || !slices.Equal(torque, cases.TorqueNames[1:]) || !slices.Equal(drive, []string{"shafts", "hub"}) {
		t.Errorf("words %q, %q, %q", rod, torque, drive)
	}
	d := check.Defaults
	want := map[string]float64{"yield": d.Yield, "ultimate": d.Ultimate, "buckling": d.Buckling}
	for name, v := range want {
		if factors[name] != short(v) {
			t.Errorf("default of %s is %s, want %g", name, factors[name], v)
		}
	}
	for i, name := range loads.LinkNames {
		if membersKey.Keys[i].Name != name {
			t.Errorf("member %d is %s, want %s", i, membersKey.Keys[i].Name, name)
		}
	}
	for i, name := range cases.CornerNames {
		if k := casesKey.find("contact_forces"); k.Keys[i].Name != name {
			t.Errorf("corner %d is %s, want %s", i, k.Keys[i].Name, name)
		}
	}
}
