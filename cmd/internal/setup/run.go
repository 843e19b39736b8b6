package setup

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/exec"
	"strings"
	"time"
)

// Command is one program to run. The zero value of every field but Name is
// useful: no arguments, this folder, this process's environment, no input, and
// output thrown away.
type Command struct {
	Name string
	Args []string
	Dir  string
	// Env is the whole environment, or nil for this process's own.
	Env    []string
	Stdin  io.Reader
	Stdout io.Writer
	Stderr io.Writer
	// Foreground leaves the program in the terminal's own process group, so
	// that it can ask for a password, and asks it to end before it is killed.
	// All others get a group to themselves and are killed with everything they
	// started.
	Foreground bool
}

// String gives the command as a person would type it.
func (c Command) String() string {
	words := []string{quote(c.Name)}
	for _, arg := range c.Args {
		words = append(words, quote(arg))
	}
	return strings.Join(words, " ")
}

// quote puts single quotes around a word that a shell would take apart.
func quote(word string) string {
	if word != "" && !strings.ContainsAny(word, " \t\n'\"\\$&|;<>()*?[]{}#`!") {
		return word
	}
	return "'" + strings.ReplaceAll(word, "'", `'\''`) + "'"
}

// A Runner runs programs. Tests put their own in place of System.
type Runner interface {
	// Run runs the command to its end. The error says which command failed.
	Run(ctx context.Context, c Command) error
	// Find returns the path of a program, or an error if there is none.
	Find(name string) (string, error)
}

// System is the Runner that runs programs for real.
type System struct{}

var _ Runner = System{}

// Find looks the program up in PATH.
func (System) Find(name string) (string, error) {
	path, err := exec.LookPath(name)
	if errors.Is(err, exec.ErrDot) {
		return "", fmt.Errorf("find %s: only found in the current folder, which is not searched", name)
	}
	if err != nil {
		return "", fmt.Errorf("find %s: not installed or not in PATH", name)
	}
	return path, nil
}

// Run starts the command, waits for it, and stops it when ctx ends.
func (System) Run(ctx context.Context, c Command) error {
	cmd := exec.CommandContext(ctx, c.Name, c.Args...)
	cmd.Dir = c.Dir
	cmd.Env = c.Env
	cmd.Stdin = c.Stdin
	cmd.Stdout = c.Stdout
	cmd.Stderr = c.Stderr
	cmd.WaitDelay = 5 * time.Second
	if c.Foreground {
		// It may have a person's work in hand: ask it to end, and kill it only
		// when it does not.
		cmd.Cancel = func() error { return cmd.Process.Signal(os.Interrupt) }
	} else {
		OwnGroup(cmd)
	}
	err := cmd.Run()
	if ctx.Err() != nil {
		return fmt.Errorf("%s: interrupted: %w", c, ctx.Err())
	}
	if err != nil {
		return fmt.Errorf("%s: %w", c, err)
	}
	return nil
}

// Output runs the command and returns what it printed to standard output.
func Output(ctx context.Context, r Runner, c Command) (string, error) {
	var out, complaint strings.Builder
	c.Stdout = &out
	if c.Stderr == nil {
		c.Stderr = &complaint
	}
	err := r.Run(ctx, c)
	if text := strings.TrimSpace(complaint.String()); err != nil && text != "" {
		err = fmt.Errorf("%w\n%s", err, text)
	}
	return out.String(), err
}
