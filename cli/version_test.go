package cli

import (
	"runtime/debug"
	"testing"
)

// Versions as the Go Modules Reference has them (section Pseudo-versions) and as go build
// stamps them (Go 1.24 release notes, section Go command).
func TestVersionOf(t *testing.T) {
	for _, row := range []struct{ stamped, want string }{
		{"v1.2.3", "1.2.3"},
		{"v1.2.4-0.20191109021931-daa7c04131f5", "1.2.4-0.20191109021931-daa7c04131f5"},
		{"v0.0.0-20191109021931-daa7c04131f5+dirty", "0.0.0-20191109021931-daa7c04131f5+dirty"},
		{"(devel)", "devel"},
		{"", "devel"},
	} {
		info := &debug.BuildInfo{Main: debug.Module{Version: row.stamped}}
		if got := versionOf(info, true); got != row.want {
			t.Errorf("stamped %q: version %q, want %q", row.stamped, got, row.want)
		}
	}
	if got := versionOf(nil, false); got != "devel" {
		t.Errorf("no build information: version %q, want devel", got)
	}
}
