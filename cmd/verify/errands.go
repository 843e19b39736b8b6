package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"time"

	"example.org/kettleside/cmd/internal/setup"
)

// errands are what a person may ask for by a flag of its own; no check of the
// list does them. Each prints what it found and fails only where it cannot.
type errands struct {
	pictures string
	start    bool
	speed    bool
	sliders  time.Duration
}

// keeping lets the step that drives the real window keep its pictures in a
// folder.
func keeping(steps []step, folder string) ([]step, error) {
	full, err := filepath.Abs(folder)
	if err != nil {
		return nil, fmt.Errorf("find the folder for the pictures: %w", err)
	}
	for i := range steps {
		if run := steps[i].run; steps[i].name == "window" {
			steps[i].run = func(ctx context.Context, b *bench) error {
				if err := os.MkdirAll(full, 0o755); err != nil {
					return fmt.Errorf("make the folder for the pictures: %w", err)
				}
				b.keep = full
				return run(ctx, b)
			}
		}
	}
	return steps, nil
}

func (e *errands) register(flags *flag.FlagSet) {
	flags.StringVar(&e.pictures, "pictures", "", "draw every screen, without a display, and write the pictures to this `folder`")
	flags.BoolVar(&e.start, "start", false, "measure the start to the first frame, beside that of a bare window")
	flags.BoolVar(&e.speed, "speed", false, "measure a keystroke in the whole window, with a class of twelve batches")
	flags.DurationVar(&e.sliders, "sliders", 0, "move the sliders for this `time`, such as 10m, and compare the memory in use at the beginning and the end")
}

// asked lists the errands that were asked for, as steps to run.
func (e *errands) asked() []step {
	var steps []step
	if e.pictures != "" {
		steps = append(steps, step{"pictures", "every screen in every look, in " + e.pictures, nil, e.draw})
	}
	if e.start {
		steps = append(steps, step{"start", "start to the first frame", []setup.Need{setup.Window, setup.Screen}, measureStart})
	}
	if e.speed {
		steps = append(steps, step{"speed", "from a keystroke to the new figures", nil, measureKeystrokes})
	}
	if e.sliders > 0 {
		steps = append(steps, step{"sliders", "memory while the sliders move", nil, e.slide})
	}
	return steps
}

// instead puts the errands in the place of the checks that were picked.
func (e *errands) instead(all []step, only string) ([]step, error) {
	asked := e.asked()
	if len(asked) > 0 && only != "" {
		return nil, errors.New("verify: -only names checks; ask for pictures and measurements by themselves")
	}
	if len(asked) == 0 {
		return choose(all, only)
	}
	return withPackages(all, asked), nil
}

func (e *errands) draw(ctx context.Context, b *bench) error {
	folder, err := filepath.Abs(e.pictures)
	if err != nil {
		return fmt.Errorf("find the folder for the pictures: %w", err)
	}
	return b.windowTest(ctx, "-run", "^TestPictures$", "-args", "-pictures", folder)
}

func (e *errands) slide(ctx context.Context, b *bench) error {
	return b.windowTest(ctx, "-run", "^TestSliders$", "-v", "-args", "-sliders", e.sliders.String())
}

func measureKeystrokes(ctx context.Context, b *bench) error {
	return b.windowTest(ctx, "-run", "^$", "-bench", "^BenchmarkKeystroke$", "-benchtime", "200x")
}

// windowTest runs some tests of the package that puts the window together; they
// draw in memory, without a display.
func (b *bench) windowTest(ctx context.Context, args ...string) error {
	at := slices.Index(args, "-args")
	if at < 0 {
		at = len(args)
	}
	args = slices.Insert(args, at, "-timeout", "0", "./app")
	return b.goTest(ctx, []string{"CGO_ENABLED=0"}, args...)
}
