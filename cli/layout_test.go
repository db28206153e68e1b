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
	may := map[string][]string{ // the folders that the packages of each folder may import
		"materials":             {},
		"loads":                 {"loads"},
		"members":               {"materials", "members"},
		"cases":                 {"cases", "loads", "materials", "members"},
		"cases/carfile":         {"cases", "loads", "materials", "members"},
		"cases/carfile/guide":   {"cases/carfile"},
		"cases/carfile/sheets":  {"cases", "cases/carfile", "cases/carfile/guide", "cases/carfile/sheets", "loads"},
		"cases/carfile/cartest": {"cases", "cases/carfile"},
		"cases/variants":        {"cases", "loads", "materials", "members"},
		"cases/studies":         {"cases", "cases/variants", "loads", "materials", "members"},
		"reports":               {"cases", "cases/carfile/sheets", "cases/studies", "loads", "materials", "members", "reports"},
		"cli":                   {"cases", "cases/carfile", "cases/carfile/guide", "cases/carfile/sheets", "cases/studies", "cases/variants", "loads", "materials", "members", "reports"},
		"":                      {"cli"},
	}
	core := []string{"materials", "loads", "members"}
	outside := []string{"os", "time", "go.yaml.in/yaml/v4", "github.com/xuri/excelize/v2", "github.com/urfave/cli/v2"}
	out, err := exec.Command("go", "list", "-f", "{{.ImportPath}} {{join .Imports \" \"}}", "sixlink/...").Output()
	if err != nil {
		t.Fatal(err)
	}
	for line := range strings.Lines(string(out)) {
		words := strings.Fields(line)
		from := folder(words[0])
		allowed, known := may[from]
		if !known {
			t.Errorf("%s is in a new folder: say here what it may import", words[0])
		}
		for _, imported := range words[1:] {
			own := imported == "sixlink" || strings.HasPrefix(imported, "sixlink/")
			if own && !slices.Contains(allowed, folder(imported)) || slices.Contains(core, from) && slices.Contains(outside, imported) {
				t.Errorf("%s must not import %s", words[0], imported)
			}
		}
	}
}

// folder returns the top-level folder of a package of ours; those below cases count each as one.
func folder(path string) string {
	path = strings.TrimPrefix(strings.TrimPrefix(path, "sixlink"), "/")
	if strings.HasPrefix(path, "cases/carfile/sheets") {
		return "cases/carfile/sheets"
	}
	if path == "cases/carfile" || path == "cases/carfile/guide" || path == "cases/carfile/cartest" || path == "cases/studies" || path == "cases/variants" {
		return path
	}
	top, _, _ := strings.Cut(path, "/")
	return top
}
