// Package studies asks what happens to the forces and reserve factors of a car as its
// numbers change: over a range (Vary), or with the scatter of manufacture and loads
// (Tolerance). A study can be cut into shards and its shards joined; the whole is the
// same, to the last digit, as the study made in one piece, on any number of cores.
//
// Quantities are plain float64: N, mm, MPa, kg; axial forces positive in tension. A
// float without a value is NaN inside and null in JSON.
package studies

import (
	"context"
	"encoding/json"
	"math"

	"sixlink/cases"
	"sixlink/cases/relay"
	"sixlink/members/check"
)

// A Study is what a study found, with all that its reports need.
type Study struct {
	Format    string     `json:"format"`
	Checksum  string     `json:"checksum"` // of a shard file: SHA-256 of all but itself
	Head      Head       `json:"head"`
	Shard     Shard      `json:"shard"`
	Complete  bool       `json:"complete"` // false: it was stopped, and what it found is a part
	Vary      *Vary      `json:"vary,omitempty"`
	Tolerance *Tolerance `json:"tolerance,omitempty"`
}

// Head says of which car and program a study is.
type Head struct {
	Version string `json:"version"`
	File    string `json:"file"`
	SHA256  string `json:"sha256"`

	Also []cases.InputFile `json:"also,omitempty"` // files that the car file names

	Car        string        `json:"car"`
	Revision   string        `json:"revision"`
	Factors    check.Factors `json:"design_factors"`
	Cases      []string      `json:"cases"` // names, after unfolding
	NotChecked []string      `json:"not_checked"`
	Notes      []cases.Note  `json:"notes"`
}

// HeadOf is the head of a study that starts from these results.
func HeadOf(r cases.Results, version, file, sum string) Head {
	h := Head{
		Version: version, File: file, SHA256: sum, Also: r.Car.Files, Car: r.Car.Name, Revision: r.Car.Revision,
		Factors: r.Car.Factors, NotChecked: r.NotChecked, Notes: r.Notes,
	}
	for _, c := range r.Cases {
		h.Cases = append(h.Cases, c.Name)
	}
	return h
}

// A Number is a float64 that is null in JSON where there is no value.
type Number float64

// MarshalJSON writes the shortest number that reads back as the same float64.
func (n Number) MarshalJSON() ([]byte, error) {
	if f := float64(n); math.IsNaN(f) || math.IsInf(f, 0) {
		return []byte("null"), nil
	}
	return json.Marshal(float64(n) + 0) // a negative zero is shown as 0
}

// UnmarshalJSON reads what MarshalJSON writes.
func (n *Number) UnmarshalJSON(text []byte) error {
	if string(text) == "null" {
		*n = Number(math.NaN())
		return nil
	}
	return json.Unmarshal(text, (*float64)(n))
}

// A Progress is told how much of a study is done; nil: nobody asks.
type Progress func(done, of int)

// A Plan is how a study is carried out. It does not change what the study finds.
type Plan struct {
	Workers  int
	Shard    Shard
	Progress Progress
}

// An answer is that of one job, or the panic that kept it from being made.
type answer[T any] struct {
	is    T
	panic *relay.Panic
}

// ordered makes n jobs on all workers and hands their answers over in order, from one
// goroutine. It holds only a few answers at a time, and returns how many it handed over:
// fewer than n only where the context was ended. Each worker has a do of its own. A panic
// of one of them is raised here, once all have come to rest.
func ordered[T any](ctx context.Context, n, workers int, worker func() (func(i int) T, error), take func(i int, answer T)) (int, error) {
	workers = max(1, min(workers, n))
	type job struct {
		i      int
		answer chan answer[T]
	}
	jobs := make(chan job)
	defer close(jobs)
	for range workers {
		do, err := worker()
		if err != nil {
			return 0, err
		}
		go func() {
			for j := range jobs {
				var a answer[T]
				a.panic = relay.Call(func() { a.is = do(j.i) })
				j.answer <- a
			}
		}()
	}
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	queue := make(chan chan answer[T], 2*workers)
	go func() {
		defer close(queue)
		for i := 0; i < n && ctx.Err() == nil; i++ {
			answer := make(chan answer[T], 1)
			select {
			case jobs <- job{i, answer}:
				queue <- answer
			case <-ctx.Done():
			}
		}
	}()
	return handOver(queue, take, stop)
}

// handOver takes the answers of a queue until it is closed. After a panic it stops what
// fills the queue, and takes no more.
func handOver[T any](queue chan chan answer[T], take func(i int, answer T), stop func()) (done int, _ error) {
	var broken *relay.Panic
	for next := range queue {
		a := <-next
		if broken == nil {
			broken = a.panic
		}
		if broken == nil {
			broken = relay.Call(func() { take(done, a.is) })
		}
		if broken != nil {
			stop()
			continue
		}
		done++
	}
	broken.Raise()
	return done, nil
}
