// Command verify installs what the tests need and runs every check there is:
//
//	go run ./cmd/verify [-only STEP[,STEP]] [-keep FOLDER]
//
// It runs all steps even after one has failed, prints a table of them, and
// ends with a line that counts them. The exit code is 1 if any step failed.
//
// With one of the other flags it draws the screens or measures instead: see -h.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"

	"example.org/kettleside/cmd/internal/setup"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	os.Exit(run(ctx, os.Args[1:]))
}

func run(ctx context.Context, args []string) int {
	steps, err := parse(args, allSteps(), os.Stderr)
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
	env, err := setup.Unstamped(ctx, runner, os.Environ())
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	temp, err := os.MkdirTemp("", "kettleside-verify-")
	if err != nil {
		fmt.Fprintf(os.Stderr, "make a folder for what the checks write: %v\n", err)
		return 1
	}
	defer os.RemoveAll(temp)
	b := bench{
		root: root, temp: temp, goos: runtime.GOOS, env: env,
		machine: setup.ThisMachine(), runner: runner, asking: setup.IsTerminal(os.Stdin),
		screen: startScreen,
	}
	if !b.runAll(ctx, os.Stdout, steps) {
		return 1
	}
	return 0
}

// parse reads the arguments and returns the steps to run.
func parse(args []string, all []step, usage io.Writer) ([]step, error) {
	flags := flag.NewFlagSet("verify", flag.ContinueOnError)
	flags.SetOutput(usage)
	only := flags.String("only", "", "run only these `steps`, parted by commas")
	keep := flags.String("keep", filepath.Join("out", "window"), "keep the pictures that the step window takes of the real window in this `folder`")
	var e errands
	e.register(flags)
	flags.Usage = func() {
		fmt.Fprintln(usage, "go run ./cmd/verify [-only STEP[,STEP]] [-keep FOLDER]")
		fmt.Fprintln(usage, "go run ./cmd/verify [-pictures FOLDER] [-start] [-speed] [-sliders TIME]")
		fmt.Fprintln(usage, "Installs what the tests need and runs every check; or draws and measures what is asked for.")
		flags.PrintDefaults()
		fmt.Fprintln(usage, "Steps, in the order they run:")
		for _, s := range all {
			fmt.Fprintf(usage, "  %-12s %s\n", s.name, s.title)
		}
	}
	if err := flags.Parse(args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			return nil, err
		}
		return nil, fmt.Errorf("verify: %w", err)
	}
	if flags.NArg() > 0 {
		return nil, fmt.Errorf("verify: takes no arguments but flags, and got %s", strings.Join(flags.Args(), " "))
	}
	steps, err := e.instead(all, *only)
	if err != nil {
		return nil, err
	}
	return keeping(steps, *keep)
}
