package setup

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
)

// Environ returns base without the variables whose name starts with one of the
// prefixes in drop, and with the NAME=value settings in set put in place of
// what base says of them.
func Environ(base, drop []string, set ...string) []string {
	var env []string
	for _, entry := range base {
		name, _, _ := strings.Cut(entry, "=")
		dropped := slices.ContainsFunc(drop, func(prefix string) bool { return strings.HasPrefix(name, prefix) })
		replaced := slices.ContainsFunc(set, func(s string) bool { return strings.HasPrefix(s, name+"=") })
		if !dropped && !replaced {
			env = append(env, entry)
		}
	}
	return append(env, set...)
}

// Root finds the folder of the module that the current folder belongs to.
func Root(ctx context.Context, r Runner) (string, error) {
	if _, err := r.Find("go"); err != nil {
		return "", err
	}
	out, err := Output(ctx, r, Command{Name: "go", Args: []string{"env", "GOMOD"}})
	if err != nil {
		return "", fmt.Errorf("find the program's folder: %w", err)
	}
	file := strings.TrimSpace(out)
	if file == "" || file == os.DevNull {
		return "", errors.New("find the program's folder: run this inside Kettleside's folder, the one with go.mod")
	}
	return filepath.Dir(file), nil
}

// Unstamped returns an environment in which the go command does not ask the
// version control what it builds: that fails in a copy of the sources that
// belongs to another user, as some build machines make them.
func Unstamped(ctx context.Context, r Runner, base []string) ([]string, error) {
	out, err := Output(ctx, r, Command{Name: "go", Args: []string{"env", "GOFLAGS"}, Env: base})
	if err != nil {
		return nil, fmt.Errorf("read the go command's settings: %w", err)
	}
	flags := strings.Fields(out)
	if !slices.ContainsFunc(flags, func(f string) bool { return strings.HasPrefix(f, "-buildvcs") }) {
		flags = append(flags, "-buildvcs=false")
	}
	return Environ(base, nil, "GOFLAGS="+strings.Join(flags, " ")), nil
}

// IsTerminal is true when the file is a terminal, where one line can be
// written over and over.
func IsTerminal(f *os.File) bool {
	info, err := f.Stat()
	return err == nil && info.Mode()&os.ModeCharDevice != 0
}
