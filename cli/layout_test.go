package cli_test

import (
	"os/exec"
	"slices"
	"strings"
	"testing"
)

// Imports point one way, and the core packages touch nothing outside: values in,
// values out.
func TestImports(t *testing.T) {
	core := []string{"os", "time", "go.yaml.in/yaml/v4", "github.com/xuri/excelize/v2", "github.com/urfave/cli/v2"}
	may := map[string][]string{ // own packages that each may import directly
		"sixlink/materials":     {},
		"sixlink/loads":         {},
		"sixlink/members":       {"sixlink/materials"},
		"sixlink/cases":         {"sixlink/loads", "sixlink/materials", "sixlink/members"},
		"sixlink/cases/carfile": {"sixlink/cases", "sixlink/loads", "sixlink/materials", "sixlink/members"},
		"sixlink/reports":       {"sixlink/cases", "sixlink/loads", "sixlink/materials", "sixlink/members"},
		"sixlink/cli":           {"sixlink/cases", "sixlink/cases/carfile", "sixlink/loads", "sixlink/materials", "sixlink/members", "sixlink/reports"},
		"sixlink":               {"sixlink/cli"},
	}
	out, err := exec.Command("go", "list", "-f", "{{.ImportPath}} {{join .Imports \" \"}}", "sixlink/...").Output()
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(out)) {
		words := strings.Fields(line)
		allowed, known := may[words[0]]
		if !known {
			t.Errorf("%s is a new package: say here what it may import", words[0])
		}
		inCore := slices.Contains([]string{"sixlink/materials", "sixlink/loads", "sixlink/members"}, words[0])
		for _, imported := range words[1:] {
			own := strings.HasPrefix(imported, "sixlink")
			if own && !slices.Contains(allowed, imported) || inCore && slices.Contains(core, imported) {
				t.Errorf("%s must not import %s", words[0], imported)
			}
		}
	}
}
