package relay_test

import (
	"errors"
	"strings"
	"testing"

	"sixlink/cases/relay"
)

func broken() { panic(errors.New("broken")) }

// What is caught in one goroutine and raised in another still says what and where.
func TestRelay(t *testing.T) {
	answer := make(chan *relay.Panic)
	go func() { answer <- relay.Call(broken) }()
	first := <-answer
	if first == nil {
		t.Fatal("the panic was not caught")
	}
	again := relay.Call(first.Raise)
	if again != first {
		t.Errorf("raised again it is %v, want %v", again, first)
	}
	if s := again.String(); !strings.HasPrefix(s, "broken (sixlink/cases/relay_test.broken, line ") {
		t.Errorf("it says %q", s)
	}
}

// A fault of the runtime is caught as any other, and nothing is where there is none.
func TestCall(t *testing.T) {
	var none []int
	if p := relay.Call(func() { none[3] = 1 }); p == nil || !strings.Contains(p.String(), "index out of range") {
		t.Errorf("caught %v", p)
	}
	done := false
	if p := relay.Call(func() { done = true }); p != nil || !done {
		t.Errorf("caught %v, done %v", p, done)
	}
	(*relay.Panic)(nil).Raise()
}
