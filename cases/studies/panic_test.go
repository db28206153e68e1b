package studies

import (
	"context"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"sixlink/cases/relay"
)

// A panic, of a worker or of what takes the answers, comes to the one who asked, and says
// where it happened. In its own goroutine it would end the program.
func TestOrderedPanics(t *testing.T) {
	const times = 30 // what fills the queue is somewhere else each time
	var busy atomic.Int64
	ignore := func(int, int) {}
	fourth := func(i, _ int) {
		if i == 3 {
			panic("broken")
		}
	}
	for _, row := range []struct {
		name string
		do   func(i int) int
		take func(i, answer int)
	}{
		{"a worker", func(i int) int {
			if i == 500 {
				panic("broken")
			}
			return i
		}, ignore},
		{"every worker", func(int) int { panic("broken") }, ignore},
		{"the taking", func(i int) int { return i }, fourth},
		{"the taking, while all workers have much to do", func(i int) int {
			time.Sleep(time.Millisecond)
			return i
		}, fourth},
	} {
		for range times {
			p := relay.Call(func() {
				_, err := ordered(context.Background(), 1000, 4, func() (func(int) int, error) {
					return func(i int) int {
						busy.Add(1)
						defer busy.Add(-1)
						return row.do(i)
					}, nil
				}, row.take)
				t.Errorf("%s: it ends with error %v", row.name, err)
			})
			if p == nil || !strings.HasPrefix(p.String(), "broken (sixlink/cases/studies.TestOrderedPanics.") {
				t.Errorf("%s: caught %v", row.name, p)
			}
			if n := busy.Load(); n > 0 {
				t.Errorf("%s: %d workers are busy still", row.name, n)
			}
		}
	}
}
