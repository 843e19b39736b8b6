package setup

import (
	"fmt"
	"io"
	"strings"
	"sync"
	"time"
)

// How often a ticker shows its line: in a terminal one line is written over,
// elsewhere each one stays.
const (
	terminalEvery = time.Second
	fileEvery     = 15 * time.Second
)

// terminalWidth is as long as a line that is written over may be.
const terminalWidth = 78

// A Ticker shows a line of progress again and again while something works, so
// that nobody takes the work for dead. Its methods may be called from several
// goroutines.
type Ticker struct {
	mu       sync.Mutex
	out      io.Writer
	terminal bool
	line     func(elapsed time.Duration) string
	began    time.Time
	shown    bool // a line that is to be written over stands in the terminal
	quit     chan struct{}
	done     chan struct{}
}

// StartTicker begins to show the line. The line function is called with the
// ticker's lock held, as are the functions given to Update.
func StartTicker(out io.Writer, terminal bool, line func(elapsed time.Duration) string) *Ticker {
	t := &Ticker{
		out: out, terminal: terminal, line: line, began: time.Now(),
		quit: make(chan struct{}), done: make(chan struct{}),
	}
	go t.run()
	return t
}

func (t *Ticker) run() {
	defer close(t.done)
	every := fileEvery
	if t.terminal {
		every = terminalEvery
	}
	tick := time.NewTicker(every)
	defer tick.Stop()
	for {
		select {
		case <-t.quit:
			return
		case <-tick.C:
			t.Update(t.show)
		}
	}
}

// Update runs a function that changes what the line function reads.
func (t *Ticker) Update(change func()) {
	t.mu.Lock()
	defer t.mu.Unlock()
	change()
}

// Say prints a line that stays, between those of the ticker. It must be called
// from within Update.
func (t *Ticker) Say(line string) {
	t.wipe()
	fmt.Fprintln(t.out, line)
}

// Stop ends the ticker, clears its line and returns how long it ran.
func (t *Ticker) Stop() time.Duration {
	close(t.quit)
	<-t.done
	t.Update(t.wipe)
	return time.Since(t.began)
}

func (t *Ticker) show() {
	line := t.line(time.Since(t.began))
	if !t.terminal {
		fmt.Fprintln(t.out, line)
		return
	}
	fmt.Fprintf(t.out, "\r%-*s", terminalWidth, shorten(line, terminalWidth))
	t.shown = true
}

func (t *Ticker) wipe() {
	if t.shown {
		fmt.Fprintf(t.out, "\r%s\r", strings.Repeat(" ", terminalWidth))
		t.shown = false
	}
}

// shorten cuts a line to at most width runes and marks the cut.
func shorten(line string, width int) string {
	runes := []rune(line)
	if len(runes) <= width {
		return line
	}
	return string(runes[:width-3]) + "..."
}
