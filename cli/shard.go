package cli

import (
	"os"
	"strconv"
	"strings"

	"github.com/urfave/cli/v2"

	"sixlink/cases/studies"
)

// mostShards bounds the number of shards.
const mostShards = 1_000_000

// shardOf reads the shard of a study; none is the whole.
func shardOf(c *cli.Context) (s studies.Shard, err error) {
	if !c.IsSet("shard") {
		if c.IsSet("shard-file") {
			return s, usage("--shard-file is for a part of a study: give --shard I/N too")
		}
		return s, nil
	}
	text := c.String("shard")
	part, of, found := strings.Cut(text, "/")
	if !found && text == "auto" {
		if of = os.Getenv("SLURM_ARRAY_TASK_COUNT"); of == "" {
			return s, usage("--shard auto: SLURM_ARRAY_TASK_COUNT is not set, so that the number of parts is not known: write auto/N")
		}
	} else if !found {
		return s, usage("--shard %q is not I/N: write one such as 0/8, or auto/8", text)
	}
	s.N, err = strconv.Atoi(of)
	if err != nil || s.N < 1 || s.N > mostShards {
		if !found {
			of = "SLURM_ARRAY_TASK_COUNT=" + of
		}
		return s, usage("--shard %s: %s is no number of parts from 1 to %d: write one such as 0/8", text, of, mostShards)
	}
	named, remedy := strconv.Quote(part), ": give one of them"
	if part == "auto" {
		if part, named, err = arrayIndex(); err != nil {
			return s, err
		}
		remedy = ": correct the job array, or write I/N"
	}
	s.I, err = strconv.Atoi(part)
	if err != nil || s.I < 0 || s.I >= s.N {
		return s, usage("--shard %s: %s is no part of %d, which go from 0 to %d%s", text, named, s.N, s.N-1, remedy)
	}
	if !c.IsSet("shard-file") {
		return s, usage("--shard %s: the part needs a file for sixlink merge: give --shard-file FILE", text)
	}
	for _, flag := range []string{"csv", "json", "workbook"} {
		if c.IsSet(flag) {
			return s, usage("--%s is of the whole study, and --shard makes a part: give it to sixlink merge", flag)
		}
	}
	return s, nil
}

// arrayIndex returns the number of this job in its array, from 0, and in words where it
// comes from.
func arrayIndex() (index, from string, err error) {
	const slurm, kubernetes = "SLURM_ARRAY_TASK_ID", "JOB_COMPLETION_INDEX"
	id, k := os.Getenv(slurm), os.Getenv(kubernetes)
	task := studies.ArrayIndex(id, os.Getenv("SLURM_ARRAY_TASK_MIN"), os.Getenv("SLURM_ARRAY_TASK_STEP"))
	switch {
	case id == "" && k == "":
		return "", "", usage("--shard auto: neither %s nor %s is set: run it in a job array, or write I/N", slurm, kubernetes)
	case id != "" && k != "" && task != k:
		return "", "", usage("--shard auto: %s=%s is part %s, and %s=%s: unset one of the two, or write I/N", slurm, id, task, kubernetes, k)
	case k != "":
		return k, kubernetes + "=" + k, nil
	}
	return task, slurm + "=" + id, nil
}
