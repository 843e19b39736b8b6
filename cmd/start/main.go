// Command start gets Kettleside onto the screen. It installs the system
// packages the window is compiled with, compiles the window and opens it:
//
//	go run ./cmd/start [CLASS.kettleside]
//
// With no class file the window opens the class it was shipped with. Where
// there is no display, or with -no-window, it does the same work without a
// window: it writes the class's handouts as a workbook and prints the figures.
// That takes no C compiler and no system packages.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"runtime"
	"syscall"

	"example.org/kettleside/cmd/internal/setup"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	os.Exit(run(ctx, os.Args[1:]))
}

func run(ctx context.Context, args []string) int {
	opts, err := parse(args, os.Stderr)
	switch {
	case errors.Is(err, flag.ErrHelp):
		return 0
	case err != nil:
		fmt.Fprintln(os.Stderr, err)
		return 2
	}
	runner := setup.System{}
	root, err := setup.Root(ctx, runner)
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	here, err := os.Getwd()
	if err != nil {
		fmt.Fprintf(os.Stderr, "find the current folder: %v\n", err)
		return 1
	}
	s := starter{
		root: root, here: here, goos: runtime.GOOS, env: os.Environ(),
		machine: setup.ThisMachine(), runner: runner,
		in: os.Stdin, out: os.Stdout, errs: os.Stderr,
		terminal: setup.IsTerminal(os.Stdout), asking: setup.IsTerminal(os.Stdin),
		screenless: setup.Screenless(runtime.GOOS, os.Getenv, setup.Reach),
	}
	err = s.start(ctx, opts)
	switch {
	case ctx.Err() != nil:
		fmt.Fprintln(os.Stderr, "Stopped.")
		return 1
	case err != nil:
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	return 0
}

// options is what the command line asks for.
type options struct {
	class    string // the class file, or "" for the class that is shipped
	noWindow bool
}

// parse reads the arguments and explains them to usage where they ask for it
// or are wrong. Flags may stand before or after the class file.
func parse(args []string, usage io.Writer) (options, error) {
	var opts options
	flags := flag.NewFlagSet("start", flag.ContinueOnError)
	flags.SetOutput(usage)
	flags.BoolVar(&opts.noWindow, "no-window", false, "write the workbook and print the figures, even where a window could open")
	flags.Usage = func() {
		fmt.Fprintln(usage, "go run ./cmd/start [-no-window] [CLASS.kettleside]")
		fmt.Fprintln(usage, "Installs what the window is compiled with, compiles it and opens the class.")
		flags.PrintDefaults()
	}
	for {
		if err := flags.Parse(args); err != nil {
			if errors.Is(err, flag.ErrHelp) {
				return opts, err
			}
			return opts, fmt.Errorf("start: %w", err)
		}
		if flags.NArg() == 0 {
			return opts, nil
		}
		if opts.class != "" {
			return opts, fmt.Errorf("start: opens one class file, and got %s and %s", opts.class, flags.Arg(0))
		}
		opts.class, args = flags.Arg(0), flags.Args()[1:]
	}
}
