package duty_test

import (
	"context"
	"fmt"
	"io"
	"strings"
	"testing"

	"sixlink/cases/duty"
	"sixlink/cases/relay"
)

// A panic, of what reads a log, of a worker or of what joins the pieces, comes to the one
// who asked. In its own goroutine it would end the program.
func TestPanicsComeToTheCaller(t *testing.T) {
	defer duty.SetPieceSize(200)()
	var log strings.Builder
	log.WriteString("t,ax,ay,v\n")
	for i := range 1000 {
		fmt.Fprintf(&log, "%g,0,0,10\n", float64(i)/10)
	}
	_, r := readCar(t, exampleCar)
	d := plain()
	d.Blocks, d.Histories = nil, []duty.History{byAcceleration()}
	broken := func() { panic("broken") }
	after := func(bytes int64) duty.Source {
		return func(string) (io.ReadCloser, int64, error) {
			return io.NopCloser(io.MultiReader(io.LimitReader(strings.NewReader(log.String()), bytes), panicking(broken))), 0, nil
		}
	}
	for _, row := range []struct {
		name string
		call func() error
		want string
	}{
		{"the reader", func() error {
			_, err := duty.Find(context.Background(), d, &r, duty.Run{Open: after(5000)})
			return err
		}, "broken (sixlink/cases/duty_test."},
		{"the joining", func() error {
			_, err := duty.Find(context.Background(), d, &r, duty.Run{Open: text(log.String()), Progress: func(string, int64, int64) { broken() }})
			return err
		}, "broken (sixlink/cases/duty_test."},
		{"the worker before it begins", func() error { return duty.Through(log.String(), broken) }, "broken (sixlink/cases/duty_test."},
		{"the worker", func() error { return duty.Through(log.String(), func() {}) }, "runtime error: invalid memory address or nil pointer dereference (sixlink/cases/duty.(*worker).count, line "},
	} {
		p := relay.Call(func() { t.Errorf("%s: it ends with error %v", row.name, row.call()) })
		if p == nil || !strings.HasPrefix(p.String(), row.want) {
			t.Errorf("%s: caught %v", row.name, p)
		}
	}
}

// panicking is a reader that panics.
type panicking func()

func (p panicking) Read([]byte) (int, error) {
	p()
	return 0, io.EOF
}
