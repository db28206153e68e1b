package cli

import (
	"fmt"
	"io"
	"os"

	"github.com/urfave/cli/v2"

	"sixlink/cases/studies"
	"sixlink/reports"
)

// maxShard bounds what is read of a shard file, in bytes.
const maxShard = 4 << 30

// mergeCommand: the whole of a study from its parts.
func mergeCommand() *cli.Command {
	return &cli.Command{
		Name:        "merge",
		Usage:       "join the parts of a study that vary or tolerance made with --shard",
		ArgsUsage:   "SHARD SHARD…",
		Description: "The outputs are, to the byte, those of the study made in one piece.\n\n" + studyStatus + "\n\n" + reports.Caution,
		Flags:       append([]cli.Flag{cornerFlag}, studyOutputs()...),
		Action:      merge,
	}
}

func merge(c *cli.Context) error {
	if c.NArg() == 0 {
		return usage("merge needs shard files: sixlink merge SHARD SHARD…")
	}
	corner, err := cornerOf(c)
	if err != nil {
		return err
	}
	var parts []studies.Part
	for _, path := range c.Args().Slice() {
		text, err := readShard(path)
		if err != nil {
			return err
		}
		s, err := studies.Decode(text)
		if err != nil {
			return fmt.Errorf("%s: %w", path, err)
		}
		parts = append(parts, studies.Part{Name: path, Study: s})
	}
	whole, err := studies.Merge(parts)
	if err != nil {
		return err
	}
	if c.IsSet("corner") && whole.Vary == nil {
		return usage("merge: --corner shows the forces of a study of vary, and these are shards of tolerance: leave it out")
	}
	return writeStudy(c, whole, c.Args().First(), corner)
}

func readShard(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, readFault(path, err)
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return nil, fmt.Errorf("%s: it is a folder: name the shard files in it", path)
	}
	text, err := io.ReadAll(io.LimitReader(f, maxShard))
	if err != nil {
		return nil, readFault(path, err)
	}
	return text, nil
}
