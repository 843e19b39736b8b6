package setup

import (
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"
	"time"
)

// ErrBuild is wrapped by Build's error when the program does not compile.
var ErrBuild = errors.New("the program did not compile")

// A Build is one program to compile, with its progress shown.
type Build struct {
	// Package is the program's folder, such as ./cmd/handouts, within Root.
	Package string
	Root    string
	// Target is the file to write.
	Target string
	Tags   string
	// Env is the whole environment of the compile.
	Env    []string
	Runner Runner
	Out    io.Writer
	// Terminal is true when Out is a terminal.
	Terminal bool
}

// Run compiles the program and returns how long it took.
func (b Build) Run(ctx context.Context) (time.Duration, error) {
	if _, err := b.Runner.Find("go"); err != nil {
		return 0, fmt.Errorf("%w: %w", ErrBuild, err)
	}
	var count Count
	ticker := StartTicker(b.Out, b.Terminal, func(elapsed time.Duration) string { return count.Line(elapsed) })
	err := b.compile(ctx, ticker, &count)
	return ticker.Stop(), err
}

func (b Build) compile(ctx context.Context, ticker *Ticker, count *Count) error {
	var messages []string
	follow := &Lines{Each: func(line string) {
		ticker.Update(func() {
			if count.Take(line) {
				return
			}
			messages = append(messages, line)
			ticker.Say(line)
		})
	}}
	listing, err := Output(ctx, b.Runner, b.goCommand(follow, "list", "-deps", "-f", "{{.ImportPath}} {{.Stale}}"))
	follow.Flush()
	if err != nil {
		return b.failure(err, messages)
	}
	ticker.Update(func() {
		*count = ReadPackages(listing)
		ticker.Say(fmt.Sprintf("%d packages, %d of them still to compile", count.Total, count.Todo))
	})
	err = b.Runner.Run(ctx, b.goCommand(follow, "build", "-v", "-o", b.Target))
	follow.Flush()
	if err != nil {
		return b.failure(err, messages)
	}
	return nil
}

// goCommand builds a call of the go command whose messages go to follow. The
// version stamp is left out: it fails in a copy of the sources that belongs to
// another user.
func (b Build) goCommand(follow io.Writer, args ...string) Command {
	args = append(args, "-buildvcs=false")
	if b.Tags != "" {
		args = append(args, "-tags", b.Tags)
	}
	return Command{Name: "go", Args: append(args, b.Package), Dir: b.Root, Env: b.Env, Stderr: follow}
}

// failure adds to the error what most likely stands behind it, and how to see
// it again.
func (b Build) failure(err error, messages []string) error {
	byHand := "go build -buildvcs=false "
	if b.Tags != "" {
		byHand += "-tags " + b.Tags + " "
	}
	target := b.Target
	if short, relErr := filepath.Rel(b.Root, target); relErr == nil {
		target = short
	}
	byHand += fmt.Sprintf("-o %s %s", quote(target), b.Package)
	text := fmt.Sprintf("By hand, in Kettleside's folder:\n  %s", byHand)
	if hint := buildHint(messages); hint != "" {
		text = hint + "\n" + text
	}
	return fmt.Errorf("%w: %w\n%s", ErrBuild, err, text)
}

// buildHint recognises the two things that stop a sound program from
// compiling: no C compiler or headers, and no way to fetch modules.
func buildHint(messages []string) string {
	all := strings.Join(messages, "\n")
	switch {
	case containsAny(all, "C compiler", "cgo: exec", "No such file or directory", "file not found", "pkg-config", "cannot find -l"):
		return "The C compiler, or a header or library that the window is compiled with, is missing."
	case containsAny(all, "dial tcp", "no such host", "i/o timeout", "connection refused", "TLS handshake"):
		return "A Go module could not be fetched: the first build needs the network, later ones do not."
	}
	return ""
}

func containsAny(text string, parts ...string) bool {
	for _, part := range parts {
		if strings.Contains(text, part) {
			return true
		}
	}
	return false
}
