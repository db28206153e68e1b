package duty

import (
	"bufio"
	"context"
	"fmt"

	"sixlink/cases"
	"sixlink/members/fatigue/count"
)

// A Progress is told how many bytes of a file are read.
type Progress func(file string, done, of int64)

// read carries a history through all gauges of a plan; its cycles go to those of the lap.
func (p *plan) read(ctx context.Context, car *cases.Car, h *History, open Source, workers int, progress Progress, lap spectra) (*outcome, Log, error) {
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
	done, all := int64(0), make([]*worker, max(1, workers))
	for i := range all {
		all[i] = newWorker(p, car, h, r.form, r.log.Start, r.log.Allowed)
		r.spectra = append(r.spectra, all[i].cells)
	}
	err = r.through(ctx, all, first, func(c *counted) error {
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
		return nil, Log{}, r.fault(RowFault{Text: fmt.Sprintf("the file ends after %d rows, which are no history", r.log.Rows), Remedy: "give at least two"}, r.line)
	}
	if err := r.plausible(car); err != nil {
		return nil, Log{}, err
	}
	o := r.outcome()
	lap.join(r.spectra, o.perLap)
	return o, r.log, nil
}

// through carries the pieces through on all workers and hands them on in their order.
func (r *reading) through(ctx context.Context, workers []*worker, first []byte, take func(*counted) error) error {
	type job struct {
		piece  piece
		answer chan *counted
	}
	jobs := make(chan job)
	queue := make(chan chan *counted, len(workers))
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	for _, w := range workers {
		go func() {
			for j := range jobs {
				j.answer <- w.count(j.piece)
			}
		}()
	}
	var failed error
	go func() {
		defer close(queue)
		defer close(jobs)
		for text := first; len(text) > 0; {
			answer := make(chan *counted, 1)
			select {
			case queue <- answer:
			case <-ctx.Done():
				return
			}
			jobs <- job{piece{text}, answer}
			if text, failed = r.next(); failed != nil {
				return
			}
		}
	}()
	var err error
	for answer := range queue {
		c := <-answer
		if err == nil && ctx.Err() == nil {
			if err = take(c); err != nil {
				stop()
			}
		}
	}
	if err == nil {
		err = failed
	}
	if err == nil {
		err = ctx.Err()
	}
	return err
}
