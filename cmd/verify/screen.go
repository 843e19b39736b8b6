package main

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"time"

	"example.org/kettleside/cmd/internal/setup"
)

// screenPatience is how long the display in memory may take to be ready.
const screenPatience = 20 * time.Second

// startScreen starts an X display in memory and waits until it is ready. The
// server picks a free number itself and tells it on its file 3, so that two
// runs at a time do not collide. The caller must call end, which stops it.
func startScreen(ctx context.Context, log io.Writer) (display string, end func(), err error) {
	if _, err := (setup.System{}).Find("Xvfb"); err != nil {
		return "", nil, fmt.Errorf("start a display in memory: %w", err)
	}
	read, write, err := os.Pipe()
	if err != nil {
		return "", nil, fmt.Errorf("start a display in memory: %w", err)
	}
	defer read.Close()
	ctx, cancel := context.WithCancel(ctx)
	cmd := exec.CommandContext(ctx, "Xvfb", "-displayfd", "3", "-screen", "0", "1280x800x24", "-noreset", "-nolisten", "tcp")
	cmd.ExtraFiles = []*os.File{write}
	cmd.Stdout = log
	cmd.Stderr = log
	cmd.WaitDelay = 5 * time.Second
	setup.OwnGroup(cmd)
	err = cmd.Start()
	write.Close() // the server holds its own copy; ours would hide its death
	if err != nil {
		cancel()
		return "", nil, fmt.Errorf("start a display in memory: %w", err)
	}
	end = func() {
		cancel()
		// Killed by us: how it ended says nothing.
		_ = cmd.Wait()
	}
	number, err := readDisplay(read, screenPatience)
	if err != nil {
		end()
		return "", nil, fmt.Errorf("start a display in memory: %w", err)
	}
	return ":" + strconv.Itoa(number), end, nil
}

// readDisplay reads the number of the display that the server writes once it
// is ready.
func readDisplay(from io.Reader, patience time.Duration) (int, error) {
	type answer struct {
		line string
		err  error
	}
	answers := make(chan answer, 1)
	go func() {
		line, err := bufio.NewReader(from).ReadString('\n')
		answers <- answer{line, err}
	}()
	select {
	case a := <-answers:
		if a.err != nil {
			return 0, errors.New("the server ended before it was ready")
		}
		number, err := strconv.Atoi(strings.TrimSpace(a.line))
		if err != nil || number < 0 {
			return 0, fmt.Errorf("the server answered %q where it should give a number", strings.TrimSpace(a.line))
		}
		return number, nil
	case <-time.After(patience):
		return 0, fmt.Errorf("the server was not ready after %s", patience)
	}
}
