package duty

import (
	"bufio"
	"cmp"
	"context"
	"fmt"

	"sixlink/cases"
	"sixlink/cases/relay"
	"sixlink/members/fatigue/count"
)

// A Progress is told how many bytes of a file are read.
type Progress func(file string, done, of int64)

// read carries a history through all gauges of a plan; its cycles go to those of the lap.
func (p *plan) read(ctx context.Context, on *cases.Results, h *History, open Source, workers int, progress Progress, lap spectra) (*outcome, Log, error) {
	car := &on.Car
	in, size, err := open(h.File)
	if err != nil {
		return nil, Log{}, err
	}
	defer in.Close()
	r := &reading{plan: p, history: h, in: bufio.NewReaderSize(in, 1<<16), log: Log{Name: h.Name, File: h.File}}
	joining := newWorker(p, car, h, form{}, 0, 0)
	r.judges, r.tallies, r.spectra = joining.judges, newTallies(joining.cells), []spectra{joining.cells}
	defer context.AfterFunc(ctx, func() { in.Close() })() // a pipe may never end
	if err := r.heading(); err != nil {
		return nil, Log{}, err
	}
	r.handed = r.line
	first, err := r.next()
	if err != nil {
		return nil, Log{}, err
	}
	r.log.Start = r.steps(first)
	for g := range p.gauges {
		r.counters = append(r.counters, count.New(func(c count.Cycle) { r.cycle(g, c) }))
	}
	done, ready := int64(0), make(chan *worker, max(1, workers))
	for range cap(ready) {
		w := newWorker(p, car, h, r.form, r.log.Start, r.log.Allowed)
		ready <- w
		r.spectra = append(r.spectra, w.cells)
	}
	err = r.through(ctx, workers, first, func() *worker { return <-ready }, func(c *counted) error {
		done += int64(c.bytes)
		if progress != nil {
			progress(h.File, done, size)
		}
		return r.join(c)
	})
	if err != nil {
		return nil, Log{}, err
	}
	if r.log.Rows < 2 {
		return nil, Log{}, r.fault(RowFault{Text: fmt.Sprintf("%d rows that can be read are no history", r.log.Rows), Remedy: "give at least two"}, r.line)
	}
	if err := r.plausible(car); err != nil {
		return nil, Log{}, err
	}
	o := r.outcome()
	lap.join(r.spectra, o.perLap)
	r.log.Peaks, err = r.hold(on)
	return o, r.log, err
}

// An answer is what was found in one piece, or the panic that kept it from being found.
type answer struct {
	*counted
	panic *relay.Panic
}

// A job is a piece that waits for a worker.
type job struct {
	piece  piece
	answer chan answer
}

// through carries the pieces through on all workers and hands them on in their order. A
// panic of one of them is raised here, once all have come to rest.
func (r *reading) through(ctx context.Context, workers int, first []byte, worker func() *worker, take func(*counted) error) error {
	jobs := make(chan job)
	queue := make(chan chan answer, max(1, workers))
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	for range max(1, workers) {
		go work(jobs, worker)
	}
	var failed error
	var broken *relay.Panic
	go func() {
		defer close(queue)
		defer close(jobs)
		broken = relay.Call(func() { failed = r.cut(ctx, first, jobs, queue) })
	}()
	var err error
	var fell *relay.Panic
	for next := range queue {
		c := <-next
		switch {
		case err != nil || fell != nil || ctx.Err() != nil:
			continue
		case c.panic != nil:
			fell = c.panic
		default:
			fell = relay.Call(func() { err = take(c.counted) })
		}
		if err != nil || fell != nil {
			stop()
		}
	}
	fell.Raise()
	broken.Raise()
	return cmp.Or(err, failed, ctx.Err())
}

// work carries the pieces of jobs through with a worker of its own.
func work(jobs chan job, hire func() *worker) {
	var w *worker
	unfit := relay.Call(func() { w = hire() })
	for j := range jobs {
		a := answer{panic: unfit}
		if unfit == nil {
			a.panic = relay.Call(func() { a.counted = w.count(j.piece) })
		}
		j.answer <- a
	}
}

// cut reads the file piece by piece, and gives each to the workers and to the queue.
func (r *reading) cut(ctx context.Context, text []byte, jobs chan job, queue chan chan answer) (err error) {
	for len(text) > 0 && err == nil {
		found := make(chan answer, 1)
		select {
		case queue <- found:
		case <-ctx.Done():
			return nil
		}
		jobs <- job{piece{text}, found}
		text, err = r.next()
	}
	return err
}
