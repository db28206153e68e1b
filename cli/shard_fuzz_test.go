package cli_test

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"sixlink/cases/studies"
	"sixlink/cli"
	"sixlink/reports"
)

// A shard file, whatever is in it beside a checksum that fits, is refused in words, or every
// form of output can be made of it.
func FuzzShard(f *testing.F) {
	for _, seed := range shardSeeds(f) {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		study, err := studies.Decode(sealed(text))
		if err == nil {
			study, err = studies.Merge([]studies.Part{{Name: "part.json", Study: study}})
		}
		if err != nil {
			if what, remedy, _ := strings.Cut(err.Error(), ": "); what == "" || remedy == "" {
				t.Errorf("message %q", err)
			}
			return
		}
		report := reports.Study{Study: study}
		for name, write := range map[string]func() ([]byte, error){
			"text": func() ([]byte, error) { return report.Text(-1) }, "CSV": report.CSV, "JSON": report.JSON,
		} {
			if out, err := write(); err != nil || len(out) == 0 {
				t.Errorf("%s: %d bytes, error %v", name, len(out), err)
			}
		}
	})
}

// sealed writes the checksum that fits into a shard file that has a place for one.
func sealed(text []byte) []byte {
	const key, length = `"checksum":"`, 2 * sha256.Size
	at := bytes.Index(text[:min(len(text), 200)], []byte(key)) + len(key)
	if at < len(key) || at+length > len(text) {
		return text
	}
	h := sha256.New()
	h.Write(text[:at])
	h.Write(text[at+length:])
	out := bytes.Clone(text)
	hex.Encode(out[at:], h.Sum(nil))
	return out
}

// shardSeeds are shards of small studies.
func shardSeeds(f *testing.F) (out [][]byte) {
	for _, study := range []string{
		"vary ../examples/hillclimb-pushrod.yaml --vary vehicle.mass=500:600:100 --vary front.rod.inner.z=468:472:4",
		"vary ../examples/hillclimb-pushrod.yaml --move rear.rod.inner --about 0,0,0 --axis 1,0,0=-1:1:2 --size",
		"tolerance ../examples/hillclimb-pushrod-scatter.yaml --samples 6",
	} {
		path := filepath.Join(f.TempDir(), "part.json")
		args := append([]string{"sixlink"}, strings.Fields(study+" --shard 0/1 --shard-file "+path)...)
		if status := cli.Run(args, io.Discard, io.Discard); status > 1 {
			f.Fatalf("%s: exit status %d", study, status)
		}
		text, err := os.ReadFile(path)
		if err != nil {
			f.Fatal(err)
		}
		out = append(out, text)
	}
	return out
}
