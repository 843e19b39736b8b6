// Package disk writes files whole or not at all: what stood there before stays
// until the new file is on disk. Errors say in plain words what stands in the
// way.
package disk

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/natefinch/atomic"

	"example.org/kettleside/content/words"
)

// Replace writes a file whole or not at all. A name that leads to another file
// (a link) is followed, so that the link stays one. The error says in plain
// words why it could not be written.
func Replace(path string, data []byte) error {
	name := filepath.Base(path)
	if target, err := filepath.EvalSymlinks(path); err == nil {
		path = target
	}
	fresh, err := writable(path)
	if err != nil {
		return err
	}
	if err := atomic.WriteFile(path, bytes.NewReader(data)); err != nil {
		// the library's errors are texts only; they begin with the step
		switch {
		case strings.HasPrefix(err.Error(), "cannot create temp file"):
			return words.Errorf("%s cannot be written: the folder it goes into is write-protected or full", name)
		case strings.HasPrefix(err.Error(), "cannot replace"):
			return words.Errorf("%s cannot be replaced: it is open in another program or write-protected; close it there, or choose another name", name)
		}
		return words.Errorf("%s cannot be written: %w", name, err)
	}
	if fresh {
		// the library makes a new file private; a class or handout is to be shared
		if err := os.Chmod(path, 0o644); err != nil {
			return words.Errorf("%s was written, but cannot be opened to others: %w", name, err)
		}
	}
	return nil
}

// writable looks before writing whether a file can be put there, and whether
// it would be a new one.
func writable(path string) (fresh bool, err error) {
	dir, name := filepath.Dir(path), filepath.Base(path)
	folder, err := os.Stat(dir)
	if err != nil || !folder.IsDir() {
		return false, words.Errorf("there is no folder %s to write %s into", dir, name)
	}
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return true, nil
	}
	if err != nil {
		return false, words.Errorf("%s cannot be written: %w", name, err)
	}
	if !info.Mode().IsRegular() {
		return false, words.Errorf("%s is not a file that can be replaced: give another name", name)
	}
	if info.Mode().Perm()&0o200 == 0 {
		return false, words.Errorf("%s is write-protected: choose another name, or take the protection off", name)
	}
	// spreadsheet programs mark an open file with one beside it
	for _, lock := range []string{".~lock." + name + "#", "~$" + name} {
		if _, err := os.Stat(filepath.Join(dir, lock)); err == nil {
			return false, words.Errorf("%s is open in another program (%s lies beside it): close it there, or choose another name", name, lock)
		}
	}
	f, err := os.OpenFile(path, os.O_WRONLY, 0) // without changing it
	if err != nil {
		return false, words.Errorf("%s cannot be replaced: it is open in another program or write-protected; close it there, or choose another name", name)
	}
	return false, f.Close()
}
