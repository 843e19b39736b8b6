package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"go/format"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.org/kettleside/cmd/internal/setup"
)

// formatted reports every Go source that gofmt would change.
func (b *bench) formatted(ctx context.Context) error {
	files, err := b.sources(ctx)
	if err != nil {
		return fmt.Errorf("list the Go sources: %w", err)
	}
	var bad []string
	for _, name := range files {
		text, err := os.ReadFile(filepath.Join(b.root, name))
		if errors.Is(err, fs.ErrNotExist) {
			continue // taken away, and git not told yet
		}
		if err != nil {
			return fmt.Errorf("read a Go source: %w", err)
		}
		clean, err := format.Source(text)
		if err != nil {
			bad = append(bad, fmt.Sprintf("%s: %v", name, err))
			continue
		}
		if !bytes.Equal(text, clean) {
			bad = append(bad, name)
		}
	}
	if len(bad) > 0 {
		return fmt.Errorf("not formatted; run gofmt -w on:\n  %s", strings.Join(bad, "\n  "))
	}
	fmt.Fprintf(b.out, "%d Go sources are formatted.\n", len(files))
	return nil
}

// sources lists the Go files that git tracks or would track; where git cannot
// tell, all there are.
func (b *bench) sources(ctx context.Context) ([]string, error) {
	out, err := setup.Output(ctx, b.runner, setup.Command{
		Name: "git", Args: []string{"ls-files", "-z", "-co", "--exclude-standard", "--", "*.go"},
		Dir: b.root, Env: b.env,
	})
	if err != nil {
		return walkSources(b.root)
	}
	var files []string
	for name := range strings.SplitSeq(out, "\x00") {
		if name != "" {
			files = append(files, name)
		}
	}
	slices.Sort(files)
	return slices.Compact(files), nil
}

// walkSources lists the Go files below root, leaving out folders whose name
// starts with a dot.
func walkSources(root string) ([]string, error) {
	var files []string
	err := filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() && path != root && strings.HasPrefix(entry.Name(), ".") {
			return fs.SkipDir
		}
		if entry.Type().IsRegular() && filepath.Ext(path) == ".go" {
			name, err := filepath.Rel(root, path)
			if err != nil {
				return err
			}
			files = append(files, name)
		}
		return nil
	})
	return files, err
}
