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

// read carries a history through all gauges of a plan.
func (p *plan) read(ctx context.Context, car *cases.Car, h *History, open Source, workers int, progress Progress) (*outcome, Log, error) {
	in, size, err := open(h.File)
	if err != nil {
		return nil, Log{}, err
	}
	defer in.Close()
	r := &reading{plan: p, history: h, in: bufio.NewReaderSize(in, 1<<16), tallies: newTallies(len(p.slots)), log: Log{Name: h.Name, File: h.File}}
	r.judges = newWorker(p, car, h, form{}, 0, 0).judges
	if err := r.heading(); err != nil {
		return nil, Log{}, err
	}
	first, err := r.next()
	if err != nil {
		return nil, Log{}, err
	}
	r.log.Start = r.steps(first)
	for g := range p.gauges {
		r.counters = append(r.counters, count.New(func(c count.Cycle) { r.cycle(g, c) }))
	}
	done, start, allowed := int64(0), r.log.Start, r.log.Allowed // the log goes on while the workers begin
	err = r.through(ctx, workers, first, func() *worker {
		return newWorker(p, car, h, r.form, start, allowed)
	}, func(c *counted) error {
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
	return r.outcome(), r.log, nil
}

// through carries the pieces through on all workers and hands them on in their order.
func (r *reading) through(ctx context.Context, workers int, first []byte, worker func() *worker, take func(*counted) error) error {
	type job struct {
		piece  piece
		answer chan *counted
	}
	jobs := make(chan job)
	queue := make(chan chan *counted, max(1, workers))
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	for range max(1, workers) {
		go func() {
			w := worker()
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
