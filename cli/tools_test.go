package cli_test

import (
	"os"
	"os/exec"
	"testing"
)

// A test that needs a tool from outside skips in one line where it is absent; with
// this variable set, as continuous integration sets it, the skip is a failure.
const needTools = "SIXLINK_NEED_TOOLS"

func missing(t *testing.T, what string) {
	t.Helper()
	if os.Getenv(needTools) != "" {
		t.Fatalf("%s is not on this machine, and %s is set", what, needTools)
	}
	t.Skipf("%s is not on this machine", what)
}

// numpy returns a Python that has numpy and yaml.
func numpy(t *testing.T) string {
	t.Helper()
	for _, python := range []string{"python3", "/usr/bin/python3"} {
		if exec.Command(python, "-c", "import numpy, yaml").Run() == nil {
			return python
		}
	}
	missing(t, "python3 with numpy and yaml")
	return ""
}
