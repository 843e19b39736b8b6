package main

import (
	"context"
	"errors"
	"fmt"
	"path/filepath"
	"strings"

	"example.org/kettleside/cmd/internal/setup"
)

const (
	windowPackages = "./cmd/kettleside/..."
	windowTags     = "migrated_fynedo" // as the window is compiled for use
	staticcheck    = "honnef.co/go/tools/cmd/staticcheck@v0.8.2"
)

// noCgo lists what has to compile without cgo: all but the window program.
var noCgo = []string{
	"./cmd/handouts", "./cmd/start", "./cmd/verify",
	"./exports/...", "./reference/...", "./content/...", "./app/...",
}

// raced lists the packages with work on more than one goroutine.
var raced = []string{"./app/class/...", "./reference/...", "./exports/...", "./cmd/internal/setup", "./cmd/verify"}

// crossed lists the programs that have to compile for every target: the
// handouts program, and the two that a person with the sources starts with.
var crossed = []string{"./cmd/handouts", "./cmd/start", "./cmd/verify"}

// targets lists the systems and processors that the programs are built for.
var targets = []struct{ goos, goarch string }{
	{"linux", "amd64"},
	{"linux", "arm64"},
	{"darwin", "amd64"},
	{"darwin", "arm64"},
	{"windows", "amd64"},
	{"windows", "arm64"},
}

func checkFormat(ctx context.Context, b *bench) error {
	return errors.Join(
		b.formatted(ctx),
		b.goTool(ctx, nil, "mod", "verify"),
	)
}

func checkVet(ctx context.Context, b *bench) error {
	return b.goTool(ctx, []string{"CGO_ENABLED=1"}, "vet", "-tags", windowTags, "./...")
}

func checkNoCgo(ctx context.Context, b *bench) error {
	return b.goTool(ctx, []string{"CGO_ENABLED=0"}, append([]string{"build"}, noCgo...)...)
}

func checkTests(ctx context.Context, b *bench) error {
	packages, err := b.screenlessPackages(ctx)
	if err != nil {
		return err
	}
	return b.goTest(ctx, []string{"CGO_ENABLED=0"}, append([]string{"-timeout", "30m"}, packages...)...)
}

// screenlessPackages lists every package but those of the window program.
func (b *bench) screenlessPackages(ctx context.Context) ([]string, error) {
	list := func(pattern string) ([]string, error) {
		// Without -find the go command would follow the window program's
		// imports and stop where they need cgo.
		out, err := setup.Output(ctx, b.runner, setup.Command{
			Name: "go", Args: []string{"list", "-find", pattern}, Dir: b.root,
			Env: setup.Environ(b.env, nil, "CGO_ENABLED=0"),
		})
		if err != nil {
			return nil, fmt.Errorf("list the packages to test: %w", err)
		}
		return strings.Fields(out), nil
	}
	all, err := list("./...")
	if err != nil {
		return nil, err
	}
	window, err := list(windowPackages)
	if err != nil {
		return nil, err
	}
	return without(all, window), nil
}

// without returns the entries of all that are not in some.
func without(all, some []string) []string {
	leave := make(map[string]bool, len(some))
	for _, s := range some {
		leave[s] = true
	}
	var rest []string
	for _, s := range all {
		if !leave[s] {
			rest = append(rest, s)
		}
	}
	return rest
}

func checkRaces(ctx context.Context, b *bench) error {
	args := append([]string{"-race", "-short", "-timeout", "30m"}, raced...)
	return b.goTest(ctx, []string{"CGO_ENABLED=1"}, args...)
}

func checkStatic(ctx context.Context, b *bench) error {
	return b.goTool(ctx, []string{"CGO_ENABLED=1"}, "run", staticcheck, "-tags", windowTags, "./...")
}

// checkWindow runs the window's tests without the tag it is compiled with for
// use: so compiled, the toolkit reports calls from the wrong goroutine, and the
// tests fail on such reports.
func checkWindow(ctx context.Context, b *bench) error {
	set, end, err := b.display(ctx)
	if err != nil {
		return err
	}
	defer end()
	set = append(set, "CGO_ENABLED=1")
	return b.goTest(ctx, set, "-timeout", "20m", "-artifacts", "-outputdir", b.keep, windowPackages)
}

// display starts a display in memory, on systems that draw with X, and returns
// what to set in the environment of a program that draws on it. The caller must
// call end.
func (b *bench) display(ctx context.Context) (set []string, end func(), err error) {
	if b.goos == "darwin" || b.goos == "windows" {
		return nil, func() {}, nil
	}
	name, end, err := b.screen(ctx, b.out)
	if err != nil {
		return nil, nil, err
	}
	fmt.Fprintf(b.out, "The display in memory is %s.\n", name)
	return []string{"DISPLAY=" + name, "LIBGL_ALWAYS_SOFTWARE=1"}, end, nil
}

func checkCross(ctx context.Context, b *bench) error {
	var failed []error
	for _, t := range targets {
		// The separator at the end says that it is a folder for all of them.
		folder := filepath.Join(b.temp, t.goos+"-"+t.goarch) + string(filepath.Separator)
		set := []string{"CGO_ENABLED=0", "GOOS=" + t.goos, "GOARCH=" + t.goarch}
		fmt.Fprintf(b.out, "For %s on %s:\n", t.goos, t.goarch)
		if err := b.goTool(ctx, set, append([]string{"build", "-o", folder}, crossed...)...); err != nil {
			failed = append(failed, fmt.Errorf("for %s on %s: %w", t.goos, t.goarch, err))
		}
	}
	return errors.Join(failed...)
}
