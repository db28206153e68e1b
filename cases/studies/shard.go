package studies

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"
)

// Format is the form of a study in a shard file.
const Format = "sixlink-shard/2"

// A Shard is part I of N of a study, I from 0; the zero value is the whole.
type Shard struct {
	I int `json:"i"`
	N int `json:"n"`
}

// whole is the shard that is everything.
func (s Shard) whole() Shard {
	if s.N == 0 {
		return Shard{0, 1}
	}
	return s
}

// part returns the first of a shard's share of n jobs, and the one after its last: the
// jobs lie side by side.
func (s Shard) part(n int) (from, to int) {
	w := s.whole()
	cut := func(i int) int { return int(int64(n) * int64(i) / int64(w.N)) }
	return cut(w.I), cut(w.I + 1)
}

// Encode returns a study as a shard file, with the checksum of all else that is in it.
func (s Study) Encode() ([]byte, error) {
	s.Format, s.Shard, s.Checksum = Format, s.Shard.whole(), strings.Repeat("0", 2*sha256.Size)
	var buf bytes.Buffer
	enc := json.NewEncoder(&buf)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(s); err != nil {
		return nil, err
	}
	text := buf.Bytes()
	if at := checksumAt(text); at >= 0 {
		copy(text[at:], checksum(text, at))
	}
	return text, nil
}

// checksumAt is where the checksum of a shard file stands; −1: it has none.
func checksumAt(text []byte) int {
	const key = "\"checksum\":\""
	at := bytes.Index(text[:min(len(text), 200)], []byte(key))
	if at < 0 || at+len(key)+2*sha256.Size > len(text) {
		return -1
	}
	return at + len(key)
}

// checksum is the SHA-256 of all of a shard file but the checksum at its place.
func checksum(text []byte, at int) string {
	h := sha256.New()
	h.Write(text[:at])
	h.Write(text[at+2*sha256.Size:])
	return hex.EncodeToString(h.Sum(nil))
}

// Decode reads a shard file, and refuses one that is not as it was written.
func Decode(text []byte) (Study, error) {
	if err := shardForm(text); err != nil {
		return Study{}, err
	}
	at := checksumAt(text)
	if at < 0 || checksum(text, at) != string(text[at:at+2*sha256.Size]) {
		return Study{}, errChanged
	}
	var s Study
	dec := json.NewDecoder(bytes.NewReader(text))
	dec.DisallowUnknownFields()
	if err := dec.Decode(&s); err != nil {
		return Study{}, errChanged
	}
	s.Checksum = ""
	if (s.Vary == nil) == (s.Tolerance == nil) || s.Shard.N < 1 || s.Shard.I < 0 || s.Shard.I >= s.Shard.N {
		return Study{}, errChanged
	}
	if s.Tolerance != nil {
		return s, s.Tolerance.sound(s.Shard, s.Complete)
	}
	return s, s.Vary.sound(s.Shard, s.Complete)
}

// errChanged is the error for a shard file that is not as it was written.
var errChanged = errors.New("the shard is not as it was written: its checksum does not fit what is in it: run the shard again")

// shardForm refuses what is no shard file by its form, or none of this version.
func shardForm(text []byte) error {
	if err := Begins(text); err != nil {
		return err
	}
	if !bytes.HasSuffix(text, []byte("}\n")) {
		return errors.New("the shard ends before its end: run it again")
	}
	return nil
}

// Begins refuses what does not begin as a shard file of this version does; the first 256
// bytes tell.
func Begins(text []byte) error {
	begins := bytes.HasPrefix(text, []byte(`{"format":"sixlink-shard/`)) || bytes.HasPrefix(text, []byte("{\n \"format\": \"sixlink-shard/"))
	switch {
	case len(bytes.TrimSpace(text)) == 0:
		return errors.New("the file is empty: run the shard again")
	case !begins:
		return errors.New("it is no shard file: name a file that --shard-file wrote")
	case !bytes.HasPrefix(text, []byte(`{"format":"`+Format+`"`)):
		return fmt.Errorf("the shard was made by another version of the program, and this one reads the format %q: run it again", Format)
	}
	return nil
}

// A Part is a shard with the name of its file, for messages.
type Part struct {
	Name string
	Study
}

// Merge joins the shards of one study, in any order, to the whole.
func Merge(parts []Part) (Study, error) {
	parts = slices.Clone(parts)
	slices.SortStableFunc(parts, func(a, b Part) int { return a.Shard.I - b.Shard.I })
	first := parts[0]
	for i, p := range parts {
		switch {
		case !p.Complete:
			return Study{}, fmt.Errorf("%s: the shard was stopped before its end: run it again", p.Name)
		case p.Shard.N != first.Shard.N:
			return Study{}, fmt.Errorf("%s: it is one of %d shards, and %s one of %d: name the shards of one study", p.Name, p.Shard.N, first.Name, first.Shard.N)
		case !reflect.DeepEqual(p.Head, first.Head) || !p.sameQuestion(first.Study):
			return Study{}, fmt.Errorf("%s: it is of another study than %s (car file, version, ranges, samples or seed): name the shards of one study", p.Name, first.Name)
		case i > 0 && p.Shard.I == parts[i-1].Shard.I:
			return Study{}, fmt.Errorf("%s: it is shard %d of %d, and so is %s: name each shard once", p.Name, p.Shard.I, p.Shard.N, parts[i-1].Name)
		case p.Shard.I != i:
			return Study{}, missing(i, p.Shard.N)
		}
	}
	if len(parts) != first.Shard.N {
		return Study{}, missing(len(parts), first.Shard.N)
	}
	out := first.Study
	out.Shard = Shard{}
	for _, p := range parts[1:] {
		if out.Vary != nil {
			out.Vary.Points = append(out.Vary.Points, p.Vary.Points...)
		} else {
			out.Tolerance.add(p.Tolerance)
		}
	}
	return out, nil
}

func missing(i, n int) error {
	return fmt.Errorf("shard %d of %d is missing: name all %d shards, 0 to %d", i, n, n, n-1)
}

// sameQuestion tells whether two shards ask the same.
func (s Study) sameQuestion(o Study) bool {
	if s.Vary != nil && o.Vary != nil {
		return reflect.DeepEqual(s.Vary.Axes, o.Vary.Axes) && s.Vary.Sized == o.Vary.Sized
	}
	return s.Tolerance != nil && o.Tolerance != nil && reflect.DeepEqual(s.Tolerance.Question, o.Tolerance.Question)
}

// ArrayIndex returns the number, from 0, of a task of an array that counts from min in
// steps, all as the scheduler writes them; what is no number stands for 0 and 1, and an
// id that is none is returned as it is.
func ArrayIndex(id, min, step string) string {
	i, err := strconv.Atoi(id)
	if err != nil {
		return id
	}
	first, err := strconv.Atoi(min)
	if err != nil {
		first = 0
	}
	by, err := strconv.Atoi(step)
	if err != nil || by < 1 {
		by = 1
	}
	return strconv.Itoa((i - first) / by)
}

// Pass tells whether no check fails in any part of a study, and something was checked
// everywhere.
func (s Study) Pass() bool {
	if s.Tolerance != nil {
		failing, of := s.Tolerance.Failing(CarTally)
		return failing == 0 && of > 0
	}
	return len(s.Vary.Points) > 0 && !slices.ContainsFunc(s.Vary.Points, func(p Point) bool { return !p.Pass() })
}
