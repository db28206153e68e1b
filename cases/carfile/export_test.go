package carfile

import (
	"path/filepath"
	"strings"
	"testing"
)

// FaultyFiles returns the files of TestFaults by name.
func FaultyFiles(t testing.TB) map[string]string {
	files := map[string]string{}
	good := example(t, "hillclimb-pushrod.yaml")
	for _, table := range [][]edit{vehicleEdits, axleEdits, rockerEdits, sectionEdits, caseEdits, fileEdits, materialEdits, sideEdits, linkEdits, thirdEdits} {
		for _, e := range table {
			files[e.name] = edited(t, good, e.old, e.new)
		}
	}
	for _, w := range wholeFiles {
		files[w.name] = strings.Clone(w.text)
	}
	return files
}

// A FaultySet is the errors of faulty texts with the golden file of their messages.
type FaultySet struct {
	Golden string
	Errors map[string]error // by name
}

// FaultySets reads all faulty texts of this package's tables.
func FaultySets(t *testing.T) (sets []FaultySet) {
	plain := example(t, "hillclimb-pushrod.yaml")
	read := func(golden string, texts map[string]string) {
		set := FaultySet{golden, map[string]error{}}
		for name, text := range texts {
			_, set.Errors[name] = Read("car.yaml", []byte(text))
		}
		sets = append(sets, set)
	}
	read("faults.golden", FaultyFiles(t))
	for _, of := range []struct {
		golden, good string
		edits        []edit
	}{
		{"faults-duty.golden", example(t, "hillclimb-pushrod-duty.yaml"), dutyEdits},
		{"faults-ends.golden", withEnds(t), endEdits},
		{"faults-inboard.golden", plain, inboardEdits},
		{"faults-laminate.golden", withLaminate(t), laminateEdits},
		{"faults-places.golden", plain, placeEdits},
		{"faults-stiffness.golden", plain, stiffnessEdits},
	} {
		texts := map[string]string{}
		for _, f := range faultyTexts(t, of.good, of.edits) {
			texts[f.name] = f.text
		}
		read(of.golden, texts)
	}
	points := FaultySet{"faults-points.golden", map[string]error{}}
	for _, e := range pointEdits {
		_, points.Errors[e.name] = cadCar(t, e)
	}
	return append(sets, points)
}

// Golden returns the messages of a golden file by name.
func Golden(t *testing.T, name string) map[string]string {
	return readGolden(t, filepath.Join("testdata", name))
}
