package main

import (
	"context"
	"fmt"
	"io"
	"time"

	"example.org/kettleside/cmd/internal/setup"
)

// quiet is how long a step may say nothing before a line says that it is still
// at work.
const quiet = 30 * time.Second

// bench is where the steps run: all that they touch of the machine.
type bench struct {
	root, temp string // the module's folder, and one for what the checks write
	goos       string
	env        []string
	machine    setup.Machine
	runner     setup.Runner
	asking     bool   // a person can type a password
	keep       string // folder for the pictures of the window's tests
	// screen starts a display in memory and returns its name and what ends it.
	screen func(ctx context.Context, log io.Writer) (display string, end func(), err error)
	out    io.Writer // where the step at hand prints
}

// outcome is how one step went.
type outcome struct {
	name string
	err  error
	took time.Duration
	ran  bool
}

// runAll runs the steps in turn, prints the table and the count, and returns
// whether all of them passed.
func (b bench) runAll(ctx context.Context, out io.Writer, steps []step) bool {
	var outcomes []outcome
	for i, s := range steps {
		if ctx.Err() != nil {
			outcomes = append(outcomes, outcome{name: s.name})
			continue
		}
		fmt.Fprintf(out, "\n== %d/%d %s: %s\n", i+1, len(steps), s.name, s.title)
		began := time.Now()
		err := b.runOne(ctx, out, s)
		o := outcome{s.name, err, time.Since(began), true}
		if err != nil {
			fmt.Fprintf(out, "%v\n", err)
		}
		fmt.Fprintf(out, "-- %s %s in %s\n", s.name, o.verdict(), setup.Clock(o.took))
		outcomes = append(outcomes, o)
	}
	return report(out, outcomes)
}

func (b bench) runOne(ctx context.Context, out io.Writer, s step) error {
	p := startPulse(out, s.name, quiet)
	defer p.stop()
	b.out = p
	return s.run(ctx, &b)
}

func (b *bench) install(ctx context.Context, needs []setup.Need) error {
	return setup.Installer{Machine: b.machine, Runner: b.runner, Out: b.out, Asking: b.asking}.Install(ctx, needs...)
}

// run runs one command in the module's folder, after printing it, with its
// output shown.
func (b *bench) run(ctx context.Context, env []string, name string, args ...string) error {
	c := setup.Command{Name: name, Args: args, Dir: b.root, Env: env, Stdout: b.out, Stderr: b.out}
	fmt.Fprintf(b.out, "$ %s\n", c)
	return b.runner.Run(ctx, c)
}

// goTool runs the go command with some environment set on top of the bench's.
func (b *bench) goTool(ctx context.Context, set []string, args ...string) error {
	return b.run(ctx, setup.Environ(b.env, nil, set...), "go", args...)
}

// goTest runs `go test` in an environment that does not depend on who calls:
// the language is fixed, nothing tunes the toolkit, and a test that lacks a
// tool fails rather than skips.
func (b *bench) goTest(ctx context.Context, set []string, args ...string) error {
	set = append([]string{"LANG=en_US.UTF-8", "KETTLESIDE_VERIFY=1"}, set...)
	env := setup.Environ(b.env, []string{"FYNE_", "LC_", "LANGUAGE", "WAYLAND_DISPLAY"}, set...)
	return b.run(ctx, env, "go", append([]string{"test", "-count=1"}, args...)...)
}
