package cli

import (
	"runtime/debug"
	"strings"
)

// Version is the version of the program as outputs show it, without a leading v.
var Version = versionOf(debug.ReadBuildInfo())

// unstamped is the version of a build that does not know its commit.
const unstamped = "devel"

// versionOf returns what the go command wrote into a build: the tag of the commit that
// was built, between tags the pseudo-version with the commit's time and hash, and +dirty
// behind either where a file differed from the commit.
func versionOf(info *debug.BuildInfo, ok bool) string {
	if !ok || info.Main.Version == "" || info.Main.Version == "(devel)" {
		return unstamped
	}
	return strings.TrimPrefix(info.Main.Version, "v")
}
