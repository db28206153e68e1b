package carfile

import (
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
