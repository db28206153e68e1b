package carfile_test

import (
	"math"
	"strings"
	"testing"

	"sixlink/cases/carfile"
	"sixlink/members"
	"sixlink/members/stock"
)

// The same tubes in every form that a list can have.
func TestReadStock(t *testing.T) {
	want := []stock.Size{
		{Tube: members.Tube{OD: 12.7, Wall: 0.889}, Material: "4130 normalized", Price: 12.5, Part: "T-1"},
		{Tube: members.Tube{OD: 22, Wall: 1.5}, Price: math.NaN()},
		{Tube: members.Tube{OD: 25.4, Wall: 0.9}, Material: "My steel", Price: 20, Source: "catalogue"},
	}
	for name, text := range map[string]string{
		"a.csv":             "od (mm),wall (mm),material,price (EUR/m),part,source\n12.7,0.889,4130,12.5,T-1,\n22,1.5,,,,\n25.4,0.9,My steel,20,,catalogue\n",
		"units in cells":    "\ufeff# ours\r\nod,wall,material,price (EUR/m),part,source\r\n\"0.5 in\",\"0.035 in\",4130N,12.5,T-1,\r\n22 mm,1.5,,,,\r\n1 in,0.9 mm,My steel,20,,catalogue\r\n",
		"inches, semicolon": "wall [in];od [in];source;part;price EUR/m;material\n0.035;0.5;;T-1;12.5;4130 normalized\n1.5 mm;22 mm;;;;\n0.9mm;1;catalogue;;20;My steel\n",
		"tabs, a comma":     "\"od, mm\"\twall\tmaterial\tprice (EUR/m)\tpart\tsource\n12.7\t0.889\t4130\t12.5\tT-1\t\n22\t1.5\t\t\t\t\n25.4\t0.9\tMy steel\t20\t\tcatalogue\n",
		"a.yaml": "format: sixlink-stock/1\ncurrency: EUR\nsizes:\n- {od: 0.5 in, wall: 0.035 in, material: 4130, price: 12.5, part: T-1}\n" +
			"- {od: 22, wall: 1.5}\n- {od: 1 in, wall: 0.9, material: My steel, price: 20, source: catalogue}\n",
	} {
		list, err := carfile.ReadStock(name, []byte(text), "My steel")
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if list.Name != name || list.PriceUnit != "EUR/m" || !strings.Contains(list.Remark, `"My steel" is no built-in material`) || len(list.Sizes) != len(want) {
			t.Errorf("%s: %+v", name, list)
			continue
		}
		for i, w := range want {
			got := list.Sizes[i]
			if got.Tube != w.Tube || got.Material != w.Material || got.Part != w.Part || got.Price != w.Price && !(math.IsNaN(got.Price) && math.IsNaN(w.Price)) {
				t.Errorf("%s: %+v in place of %+v", name, got, w)
			}
			if w.Source == "" && !strings.HasPrefix(got.Source, name+", line ") || w.Source != "" && got.Source != w.Source {
				t.Errorf("%s: source %q", name, got.Source)
			}
			// what is written into a car file is what was read
			for j, mm := range []float64{got.Tube.OD, got.Tube.Wall} {
				if v, err := carfile.Quantity(got.Given[j], carfile.Length, carfile.Range{Max: 500}); err != nil || v != mm {
					t.Errorf("%s: %q is %v mm in place of %v: %v", name, got.Given[j], v, mm, err)
				}
			}
		}
	}
}

// Each fault has its place; all of them come together.
func TestReadStockFaults(t *testing.T) {
	for _, c := range []struct {
		name, text string
		want       []string
	}{
		{"a.csv", "od,wall,colour\n20,1,red\n", []string{`a.csv:1:9: unknown heading "colour"`}},
		{"a.csv", "od,wal\n20,1\n", []string{`a.csv:1:1: heading wall is missing`, `a.csv:1:4: unknown heading "wal"`, "wall"}},
		{"a.csv", "od,wall,od\n20,1,20\n", []string{`a.csv:1:9: duplicate heading "od"`}},
		{"a.csv", "od (kg),wall (MPa),price (EUR/kg),part (mm)\n", []string{`a.csv:1:1: "kg" is no unit of a length`, `a.csv:1:9: "MPa"`, `a.csv:1:20: the unit "EUR/kg"`, `a.csv:1:35: part is text`}},
		{"ä.csv", "od;wall;material\n20;1;ü\nä;0,5;E355+N\n-1;1 N;\n", []string{`ä.csv:3:1: od: "ä" is not a number`, `ä.csv:3:3: wall: "0,5" has a decimal comma`, `ä.csv:4:1: od: -1 mm is not above 0 mm`, `ä.csv:4:4: wall: 1 N is a force`}},
		{"a.csv", "od,wall\n10,6\n,1\n10\n", []string{`a.csv:2:4: wall: 6 mm is more than 5 mm`, `a.csv:3:1: od: no value`, `a.csv:4:1: 1 cells in this row, and 2 headings`}},
		{"a.csv", "od,wall,material\n20,1,E355+M\n", []string{`a.csv:2:6: material: "E355+M" is neither in the table of materials nor a material of the car file`, "perhaps E355+"}},
		{"a.yml", "format: sixlink-stock/1\nsizes:\n- {od: 10, wall: 1, material: Unobtainium}\n", []string{`a.yml:3:31: sizes[0].material: "Unobtainium"`}},
		{"a.csv", "od,wall\n", []string{"a.csv:1:1: the list has no tubes"}},
		{"a.csv", "", []string{"a.csv:1:1: the list has no tubes"}},
		{"a.csv", "od,wall\n\"20,1\n", []string{"this is not CSV"}},
		{"a.csv", "od,wall\n\x00,1\n", []string{"a.csv:2:1: control character"}},
		{"a.csv", "od,wall,part\n20,1,\u202e\n", []string{"a.csv:2:6: part: the text holds the control character"}},
		{"a.yml", "", []string{"a.yml:1:1: the file is empty", "its first key is format: sixlink-stock/1"}},
		{"a.yml", "format: sixlink/1\nsizes: []\n", []string{`a.yml:1:9: format: "sixlink/1" is not sixlink-stock/1`, "the list is empty"}},
		{"a.yml", "format: sixlink-stock/1\nsizes:\n- {od: 10, wall: 6}\n- {od: 10, wal: 1}\n- {od: 1 kg, wall: .nan}\n", []string{`a.yml:3:18: sizes[0].wall: 6 mm`, `a.yml:4:12: sizes[1]: unknown key "wal"`, "1 kg is a mass", "not a finite number"}},
		{"a.csv", "od,wall\n" + strings.Repeat("20,1\n", 1001), []string{"a.csv:1002:1: the list has more than 1000 tubes", "several files"}},
		{"a.yml", "format: sixlink-stock/1\nsizes:\n" + strings.Repeat("- {}\n", 1001), []string{"a.yml:2:1: sizes: the list has 1001 entries, more than 1000"}},
		{"a.yml", "- 20\n", []string{"a.yml:1:1: this is a list"}},
	} {
		list, err := carfile.ReadStock(c.name, []byte(c.text))
		if err == nil {
			t.Errorf("%.80q is read: %.80v", c.text, list)
			continue
		}
		for _, want := range c.want {
			if !strings.Contains(err.Error(), want) {
				t.Errorf("%.80q: %q is not in\n%v", c.text, want, err)
			}
		}
		if len(list.Sizes) > 0 {
			t.Errorf("%q: a list with faults is not empty", c.text)
		}
	}
}

// No list of tubes stops the program, and what is read is a list of tubes.
func FuzzReadStock(f *testing.F) {
	for _, s := range []string{"od,wall\n20,1\n", "od (in);wall [mm];price EUR/m\n1;1;2\n", "format: sixlink-stock/1\nsizes: [{od: 1 in, wall: 1}]\n", "\"od\n", ";\n;;\n"} {
		f.Add("a.csv", s)
		f.Add("a.yaml", s)
	}
	f.Fuzz(func(t *testing.T, name, text string) {
		list, err := carfile.ReadStock(name, []byte(text))
		if err != nil {
			if err.Error() == "" {
				t.Error("an error says nothing")
			}
			return
		}
		if len(list.Sizes) == 0 {
			t.Error("an empty list is read")
		}
		for _, s := range list.Sizes {
			if !(s.Tube.Wall > 0 && s.Tube.Wall <= s.Tube.OD/2 && s.Tube.OD <= 500) {
				t.Errorf("%+v is no tube", s)
			}
		}
	})
}
