//go:build unix

package cli

import (
	"io/fs"
	"os"
	"syscall"
)

// keepOwner gives a new file the owner and the group of another where it may: an
// administrator who writes over somebody's file does not take it away from them.
func keepOwner(f *os.File, was fs.FileInfo) {
	if s, ok := was.Sys().(*syscall.Stat_t); ok {
		_ = f.Chown(int(s.Uid), int(s.Gid))
	}
}
