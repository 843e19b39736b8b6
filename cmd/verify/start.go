package main

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"example.org/kettleside/cmd/internal/setup"
)

const (
	starts        = 15 // of each program; odd, so that the median is one of them
	startPatience = time.Minute
	bareWindow    = "./cmd/kettleside/testdata/bare"
)

// What the programs say on their standard error while they start.
const (
	saysFirstFrame = "first frame painted"
	saysReady      = "window ready"
)

// measureStart starts a bare window and the window program in turn and prints how
// long each takes to its first frame, and the program to where it takes input.
func measureStart(ctx context.Context, b *bench) error {
	bare, program := filepath.Join(b.temp, "bare"), filepath.Join(b.temp, "kettleside")
	for target, pkg := range map[string]string{bare: bareWindow, program: "./cmd/kettleside"} {
		if err := b.goTool(ctx, []string{"CGO_ENABLED=1"}, "build", "-tags", windowTags, "-o", target, pkg); err != nil {
			return err
		}
	}
	set, end, err := b.display(ctx)
	if err != nil {
		return err
	}
	defer end()
	set = append(set, "LANG=en_US.UTF-8", "HOME="+b.temp, "XDG_CONFIG_HOME="+b.temp)
	env := setup.Environ(b.env, []string{"FYNE_", "LC_", "WAYLAND_DISPLAY"}, set...)
	var bareFirst, first, ready []time.Duration
	for range starts {
		took, err := startOnce(ctx, env, bare, saysFirstFrame)
		if err != nil {
			return err
		}
		bareFirst = append(bareFirst, took[0])
		took, err = startOnce(ctx, env, program, saysFirstFrame, saysReady)
		if err != nil {
			return err
		}
		first, ready = append(first, took[0]), append(ready, took[1])
	}
	reportStart(b.out, bareFirst, first, ready)
	return nil
}

// startOnce starts a program, waits for the lines that it says, in their order,
// and ends it. It returns how long after the start each line came.
func startOnce(ctx context.Context, env []string, path string, lines ...string) ([]time.Duration, error) {
	ctx, cancel := context.WithTimeout(ctx, startPatience)
	defer cancel()
	cmd := exec.CommandContext(ctx, path)
	cmd.Env = env
	setup.OwnGroup(cmd)
	read, write, err := os.Pipe()
	if err != nil {
		return nil, fmt.Errorf("start %s: %w", path, err)
	}
	defer read.Close()
	cmd.Stderr = write
	began := time.Now()
	err = cmd.Start()
	write.Close() // the program holds its own copy; ours would hide its end
	if err != nil {
		return nil, fmt.Errorf("start %s: %w", path, err)
	}
	took, err := hear(read, began, lines)
	cancel()
	_ = cmd.Wait() // ended by us: how says nothing
	if err != nil {
		return nil, fmt.Errorf("start %s: %w", path, err)
	}
	return took, nil
}

// hear reads until all lines were said and returns when each of them was.
func hear(from io.Reader, began time.Time, lines []string) ([]time.Duration, error) {
	var took []time.Duration
	scanner := bufio.NewScanner(from)
	for scanner.Scan() {
		if strings.TrimSpace(scanner.Text()) == lines[len(took)] {
			took = append(took, time.Since(began))
		}
		if len(took) == len(lines) {
			return took, nil
		}
	}
	return nil, fmt.Errorf("it did not say %q", lines[len(took)])
}

func reportStart(out io.Writer, bare, first, ready []time.Duration) {
	fmt.Fprintf(out, "\n%-32s %8s %8s %8s %8s\n", fmt.Sprintf("%d starts of each, in turn", len(bare)), "median", "least", "most", "× bare")
	for _, row := range []struct {
		name string
		took []time.Duration
	}{{"a bare window, first frame", bare}, {"Kettleside, first frame", first}, {"Kettleside, takes input", ready}} {
		fmt.Fprintf(out, "%-32s %8s %8s %8s %8.2f\n", row.name, inMs(median(row.took)), inMs(slices.Min(row.took)), inMs(slices.Max(row.took)),
			float64(median(row.took))/float64(median(bare)))
	}
}

func median(took []time.Duration) time.Duration {
	sorted := slices.Sorted(slices.Values(took))
	return sorted[len(sorted)/2]
}

func inMs(d time.Duration) string {
	return fmt.Sprintf("%.0f ms", float64(d)/float64(time.Millisecond))
}
