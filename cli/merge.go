package cli

import (
	"bufio"
	"errors"
	"fmt"
	"io"

	"github.com/urfave/cli/v2"

	"sixlink/cases/studies"
	"sixlink/reports"
)

// maxShard bounds what is read of a shard file, in bytes: the whole of the largest study
// has about 200 MB.
const maxShard = 512 << 20

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
			return fmt.Errorf("%s: %w", shown(path), err)
		}
		parts = append(parts, studies.Part{Name: shown(path), Study: s})
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

// shardHead is how much of a file is looked at before the rest is read.
const shardHead = 256

func readShard(path string) ([]byte, error) {
	f, err := open(path, "the shard files")
	if err != nil {
		return nil, err
	}
	defer f.Close()
	in := bufio.NewReader(f)
	head, err := in.Peek(shardHead)
	if err == nil || errors.Is(err, io.EOF) {
		if err := studies.Begins(head); err != nil {
			return nil, fmt.Errorf("%s: %w", shown(path), err)
		}
	}
	text, err := io.ReadAll(io.LimitReader(in, maxShard+1))
	switch {
	case err != nil:
		return nil, readFault(path, err)
	case len(text) > maxShard:
		return nil, fmt.Errorf("%s: it is larger than %d MB, which no shard is: name a file that --shard-file wrote", shown(path), maxShard>>20)
	}
	return text, nil
}
