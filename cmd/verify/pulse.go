package main

import (
	"fmt"
	"io"
	"sync"
	"time"

	"example.org/kettleside/cmd/internal/setup"
)

// pulse passes a step's output on and, when none has come for a while, prints
// a line that says how long the step has been at work.
type pulse struct {
	mu    sync.Mutex
	out   io.Writer
	name  string
	began time.Time
	last  time.Time // of the last output
	open  bool      // the last output did not end its line
	quit  chan struct{}
	done  chan struct{}
}

func startPulse(out io.Writer, name string, every time.Duration) *pulse {
	now := time.Now()
	p := &pulse{
		out: out, name: name, began: now, last: now,
		quit: make(chan struct{}), done: make(chan struct{}),
	}
	go p.beat(every)
	return p
}

// Write passes the text on. Several goroutines may write.
func (p *pulse) Write(text []byte) (int, error) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if len(text) > 0 {
		p.last = time.Now()
		p.open = text[len(text)-1] != '\n'
	}
	return p.out.Write(text)
}

// beat looks often enough that the silence is never much longer than it may be.
func (p *pulse) beat(every time.Duration) {
	defer close(p.done)
	tick := time.NewTicker(every / 30)
	defer tick.Stop()
	for {
		select {
		case <-p.quit:
			return
		case now := <-tick.C:
			p.fill(now, every)
		}
	}
}

func (p *pulse) fill(now time.Time, every time.Duration) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if now.Sub(p.last) < every {
		return
	}
	if p.open {
		fmt.Fprintln(p.out)
		p.open = false
	}
	fmt.Fprintf(p.out, "   ... %s is still at work, %s\n", p.name, setup.Clock(now.Sub(p.began)))
	p.last = now
}

// stop ends the watch; nothing is printed after it returns.
func (p *pulse) stop() {
	close(p.quit)
	<-p.done
}
