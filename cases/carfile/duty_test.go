package carfile

import (
	"strings"
	"testing"

	"sixlink/cases"
	"sixlink/cases/duty"
)

// dutyEdits spoil the duty of the example.
var dutyEdits = []edit{
	{name: "lap in the unit of a hardpoint", old: "lap_length: 2.4 km", new: "lap_length: 2400 mm"},
	{name: "no life factor below one", old: "life_factor: 4 ", new: "life_factor: 0.5 "},
	{name: "inspection above the life", old: "inspection: 25 % ", new: "inspection: 125 % "},
	{name: "unknown load case", old: "{case: Bump}]", new: "{case: Bumps}]"},
	{name: "case that unfolds", old: "{case: Bump}]", new: "{case: Cornering}]"},
	{name: "one case alone", old: "[{case: Static}, {case: Bump}]", new: "[{case: Bump}]"},
	{name: "block twice", old: "name: Strikes", new: "name: Bumps"},
	{name: "history of a block's name", old: "name: Run\n", new: "name: Bumps\n"},
	{name: "no laps in a file", old: "laps: 1 ", new: "laps: 0 "},
	{name: "column without its name", old: "{column: lat. acceleration (g)}", new: "{unit: g}"},
	{name: "column in a unit of something else", old: "unit: km/h}", new: "unit: kg}"},
	{name: "column times nothing", old: "unit: km/h}", new: "scale: 0}"},
	{name: "no lateral acceleration", old: "        acceleration_y: {column: lat. acceleration (g)}\n", new: ""},
	{name: "forces and accelerations", old: "        speed: {column: speed (km/h), unit: km/h}\n", new: "        rear_left: {force_x: {column: a}, force_y: {column: b}, force_z: {column: c}}\n"},
	{name: "time in metres", old: "time: {column: time (s)}", new: "time: {column: time (s), unit: m}"},
	{name: "no columns", old: "      columns: ", new: "      colums: "},
	{name: "unknown detail", old: "detail: round tube butt weld", new: "detail: weld"},
	{name: "detail of a shear stress", old: "detail: round tube butt weld", new: "detail: weld in shear"},
	{name: "bolt without a thread", old: "detail: bolt in tension, thread: M8", new: "detail: bolt in tension"},
	{name: "root without a throat", old: "detail: round tube butt weld", new: "detail: root"},
	{name: "unknown metal", old: "stress_life: 4130 (Su 895)", new: "stress_life: 4130"},
	{name: "two curves", old: "detail: round tube butt weld", new: "detail: round tube butt weld, handbook: 2024-T3 sheet"},
	{name: "no curve", old: "detail: round tube butt weld", new: "at: ends"},
	{name: "mean stress of a weld", old: "detail: round tube butt weld", new: "detail: round tube butt weld, mean_stress: swt"},
	{name: "mean stress without constants", old: "stress_life: 4130 (Su 895), mean_stress: goodman", new: "strain_life: 4130 (Su 895), mean_stress: walker"},
	{name: "exponent of no rule", old: "mean_stress: goodman", new: "mean_stress: goodman, walker_exponent: 0.7"},
	{name: "exponent above one", old: "mean_stress: goodman", new: "mean_stress: walker, walker_exponent: 1.2"},
	{name: "detail in other letters", old: "detail: round tube butt weld", new: "detail: Round-tube butt weld"},
	{name: "two details of one name", old: "name: tube,", new: "name: weld at the end of the tube,"},
	{name: "all parts live longer", old: "survival: 99 %", new: "survival: 100 %"},
	{name: "fewer than half live longer", old: "survival: 99 %", new: "survival: 40 %"},
	{name: "thread of no size", old: "thread: M8", new: "thread: 8 mm"},
	{name: "thread and throat", old: "thread: M8", new: "thread: M8, throat: 2"},
	{name: "radius without a notch", old: "stress_concentration: 3, notch_radius: 1.5", new: "notch_radius: 1.5"},
	{name: "details of no steel", faults: 3, old: "rod:             {tube: [20, 1.5], material: E355+N, part: HC-306}", new: "rod:             {tube: [20, 1.5], material: 6082-T6 drawn, part: HC-306}"},
	{name: "member of nobody", old: "axle: front, member: rod,", new: "axle: front, member: push_rod,"},
}

// TestDutyFaults holds the messages for a faulty duty to testdata/faults-duty.golden, as
// TestFaults does.
func TestDutyFaults(t *testing.T) {
	holdFaults(t, "faults-duty.golden", faultyTexts(t, example(t, "hillclimb-pushrod-duty.yaml"), dutyEdits))
}

// A detail that one member alone cannot have is refused where the file asks for it, and the
// member is named; other faults of that kind come in the same answer.
func TestDetailsThatAMemberCannotHave(t *testing.T) {
	text := example(t, "hillclimb-pushrod-duty.yaml")
	for _, e := range [][2]string{
		{"detail: round tube butt weld}", "detail: root, throat: 2}"},
		{"rod:             {tube: [20, 1.5], material: E355+N, part: HC-312}", "rod: {section: {square_tube: [20, 1.5]}, material: E355+N, part: HC-312}"},
		{"rod:             {tube: [20, 1.5], material: E355+N, part: HC-306}", "rod: {tube: [20, 1.5], material: 6082-T6 drawn, part: HC-306}"},
		{"root, throat: 2}", "root, throat: 2, axle: rear}"},
	} {
		text = edited(t, text, e[0], e[1])
	}
	got := faultsOf(t, text, 3)
	for _, want := range []string{
		"duty.details[0].throat: rear left rod: the throat of its weld is that round a round tube, and its section is square tube",
		"duty.details[1].steel_estimate: front left rod: 6082-T6 drawn is no steel",
		"duty.details[4].stress_life: front left rod: the curve is one of 4130 (Su 895) with a Young's modulus of 220 GPa, and 6082-T6 drawn has 70 GPa",
		"with a curve that fits: strain_life or stress_life: 2024-T351, 2024-T3, 7075-T6, 7075-T6 second set; handbook: 2024-T3 sheet",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in\n%s", want, got)
		}
	}
}

// What the file states is what the duty has, in its units; what it leaves out has the
// values that the table names.
func TestDutyOfTheFile(t *testing.T) {
	f, err := Read("car.yaml", []byte(edited(t, example(t, "hillclimb-pushrod-duty.yaml"),
		"time: {column: time (s)}", "time: {column: time (s), unit: ms, scale: -2}")))
	if err != nil {
		t.Fatal(err)
	}
	d := f.Duty
	if d.LapLength != 2.4 || d.Wanted != 500 || d.LifeFactor != 4 || d.LoadFactor != 1 || d.Inspection != 0.25 || d.Survival != 0.99 {
		t.Errorf("%+v", d)
	}
	h := d.Histories[0]
	if c := h.Columns[0]; c.What != duty.Time || c.Factor != -0.002 {
		t.Errorf("time: %+v", c)
	}
	if c := h.Columns[3]; c.What != duty.Speed || c.Factor != 1/3.6 {
		t.Errorf("speed: %+v", c)
	}
	if h.Part != 1 || h.Wheel != duty.FromForce || h.BadRows != 0 {
		t.Errorf("%+v", h)
	}
	wheels := "        time: {column: t}\n        rear_left: {force_x: {column: a, unit: kN}, force_y: {column: b}, force_z: {column: c}, moment_z: {column: d}}\n"
	text, cut := example(t, "hillclimb-pushrod-duty.yaml"), "        time: {column: time (s)}\n"
	from, to := strings.Index(text, cut), strings.Index(text, "  details:")
	if f, err = Read("car.yaml", []byte(text[:from]+wheels+text[to:])); err != nil {
		t.Fatal(err)
	}
	if c := f.Duty.Histories[0].Columns; len(c) != 5 || c[1].Factor != 1000 || c[2].Factor != 1 || c[4].Factor != 1000 || c[4].What != duty.MomentZ || c[4].Corner != cases.RearLeft {
		t.Errorf("wheels in kN and N·m, the program's units being N and N·mm: %+v", c)
	}
	w := d.Details[0]
	if w.Axle != duty.All || w.Link != duty.All || w.Place != duty.Ends || w.Curve.Partial != 1.35 || w.Curve.Relieved {
		t.Errorf("%+v", w)
	}
}
