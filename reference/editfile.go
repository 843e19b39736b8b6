package reference

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/natefinch/atomic"
)

// editsFile is the name of the file that holds the edits: a JSON list of Edit.
const editsFile = "table-edits.json"

// EditsPath returns where the edits of this user are kept: in the folder
// kettleside-data beside the program where such a folder exists (a stick in a
// borrowed laptop), else in the user's configuration folder.
func EditsPath() (string, error) {
	program, err := os.Executable()
	if err != nil {
		program = ""
	}
	return editsPath(program, os.UserConfigDir)
}

func editsPath(program string, configDir func() (string, error)) (string, error) {
	if program != "" {
		beside := filepath.Join(filepath.Dir(program), "kettleside-data")
		if info, err := os.Stat(beside); err == nil && info.IsDir() {
			return filepath.Join(beside, editsFile), nil
		}
	}
	dir, err := configDir()
	if err != nil {
		return "", fmt.Errorf("find a folder for the table edits: %w", err)
	}
	return filepath.Join(dir, "kettleside", editsFile), nil
}

// ReadEdits reads the edits from a file. A file that does not exist is no
// error: nothing was edited yet. A damaged file is an error and left alone.
func ReadEdits(path string) ([]Edit, error) {
	data, err := os.ReadFile(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, fmt.Errorf("read table edits: %w", err)
	}
	edits, err := decodeEdits(data)
	if err != nil {
		return nil, fmt.Errorf("read table edits from %s, which is left as it is: %w", filepath.Base(path), err)
	}
	return edits, nil
}

// decodeEdits reads one JSON list with known fields only.
func decodeEdits(data []byte) ([]Edit, error) {
	dec := json.NewDecoder(bytes.NewReader(bytes.TrimPrefix(data, []byte("\uFEFF"))))
	dec.DisallowUnknownFields()
	var edits []Edit
	if err := dec.Decode(&edits); err != nil {
		return nil, err
	}
	if _, err := dec.Token(); !errors.Is(err, io.EOF) {
		return nil, errors.New("something stands after the list")
	}
	return edits, nil
}

// WriteEdits writes the edits to a file and makes its folder. The previous
// file stays until the new one is wholly on disk.
func WriteEdits(path string, edits []Edit) error {
	if edits == nil {
		edits = []Edit{}
	}
	var buf bytes.Buffer
	enc := json.NewEncoder(&buf)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	if err := enc.Encode(edits); err != nil {
		return fmt.Errorf("write table edits: %w", err)
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return fmt.Errorf("write table edits: %w", err)
	}
	if err := atomic.WriteFile(path, &buf); err != nil {
		return fmt.Errorf("write table edits: %w", err)
	}
	return nil
}
