package main

import (
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"example.org/kettleside/cmd/internal/setup"
)

const (
	windowProgram   = "./cmd/kettleside"
	handoutsProgram = "./cmd/handouts"
	// windowTags makes the toolkit trust that the program keeps to its thread
	// rules; cmd/verify tests the window without the tag, where it checks them.
	windowTags = "migrated_fynedo"

	builtFolder = ".build" // compiled programs, within the module's folder
	madeFolder  = "out"    // what is written for people
)

// starter is one run of the command, with all that it touches of the machine.
type starter struct {
	root, here string // the module's folder and the current one
	goos       string
	env        []string
	machine    setup.Machine
	runner     setup.Runner
	in         io.Reader
	out, errs  io.Writer
	terminal   bool   // out is a terminal
	asking     bool   // a person can answer at in
	screenless string // why no window can be shown, or ""
}

func (s starter) start(ctx context.Context, opts options) error {
	class := opts.class
	if class != "" {
		if !filepath.IsAbs(class) {
			class = filepath.Join(s.here, class)
		}
		if info, err := os.Stat(class); err != nil {
			return fmt.Errorf("open the class: %w", err)
		} else if info.IsDir() {
			return fmt.Errorf("open the class: %s is a folder; name a .kettleside file", opts.class)
		}
	}
	switch {
	case opts.noWindow:
		s.say("No window, as asked: writing the workbook and printing the figures.")
		return s.withoutWindow(ctx, class)
	case s.screenless != "":
		s.say("There is no display here (%s), so no window can open.", s.screenless)
		s.say("Doing the same work without it: writing the workbook and printing the figures.")
		return s.withoutWindow(ctx, class)
	}
	return s.withWindow(ctx, class)
}

func (s starter) withWindow(ctx context.Context, class string) error {
	s.say("Kettleside: checking the system packages, compiling the window, opening it.")
	installer := setup.Installer{Machine: s.machine, Runner: s.runner, Out: s.out, Asking: s.asking}
	if err := installer.Install(ctx, setup.Window); err != nil {
		return s.orWithout(err)
	}
	s.say("Compiling the window. The first time takes some minutes, later times seconds.")
	program, err := s.build(ctx, windowProgram, windowTags, "CGO_ENABLED=1")
	if err != nil {
		if s.machine.Family != setup.Debian {
			err = fmt.Errorf("%w\n%s", err, setup.Advice(s.machine, setup.Window))
		}
		return s.orWithout(err)
	}
	var args []string
	if class != "" {
		args = append(args, class)
	}
	s.say("Opening the window. This command ends when it is closed.")
	err = s.runner.Run(ctx, setup.Command{
		Name: program, Args: args, Dir: s.here, Env: s.env, Stdin: s.in, Stdout: s.out, Stderr: s.errs,
		Foreground: true,
	})
	if err != nil {
		return s.orWithout(fmt.Errorf("the window program ended with an error: %w", err))
	}
	return nil
}

// orWithout adds to an error the way that needs no window.
func (s starter) orWithout(err error) error {
	return fmt.Errorf("%w\nThe workbook and the figures can be had without the window:\n  go run ./cmd/start -no-window", err)
}

// build compiles one of the module's programs and returns its file.
func (s starter) build(ctx context.Context, pkg, tags string, env ...string) (string, error) {
	name := filepath.Base(pkg)
	if s.goos == "windows" {
		name += ".exe"
	}
	target := filepath.Join(s.root, builtFolder, name)
	took, err := setup.Build{
		Package: pkg, Root: s.root, Target: target, Tags: tags,
		Env:    setup.Environ(s.env, nil, env...),
		Runner: s.runner, Out: s.out, Terminal: s.terminal,
	}.Run(ctx)
	if err != nil {
		return "", err
	}
	s.say("Compiled in %s.", setup.Clock(took))
	return target, nil
}

func (s starter) say(format string, args ...any) {
	fmt.Fprintf(s.out, format+"\n", args...)
}
