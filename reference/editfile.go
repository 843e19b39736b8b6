package reference

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"
	"unicode/utf8"

	"example.org/kettleside/app/disk"
	"example.org/kettleside/content/words"
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
		return "", words.Errorf("find a folder for the table edits: %w", err)
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
		return nil, words.Errorf("read table edits: %w", err)
	}
	edits, err := decodeEdits(data)
	if err != nil {
		return nil, words.Errorf("read table edits from %s, which is left as it is: %w", filepath.Base(path), err)
	}
	return edits, nil
}

// decodeEdits reads one JSON list of edits and nothing beside it. It walks the
// tokens itself, because the decoder takes names in any capitals, names that
// stand twice and null for nothing at all: each would change an edit unseen.
func decodeEdits(data []byte) ([]Edit, error) {
	data = bytes.TrimPrefix(data, []byte("\uFEFF"))
	if !utf8.Valid(data) {
		return nil, words.Errorf("it is not UTF-8 text")
	}
	dec := json.NewDecoder(bytes.NewReader(data))
	if err := expect(dec, json.Delim('['), words.Key("a list")); err != nil {
		return nil, err
	}
	var edits []Edit
	for dec.More() {
		e, err := decodeEdit(dec)
		if err != nil {
			return nil, words.Errorf("edit %d: %w", len(edits)+1, err)
		}
		edits = append(edits, e)
	}
	if err := expect(dec, json.Delim(']'), words.Key("the end of the list")); err != nil {
		return nil, err
	}
	if _, err := dec.Token(); !errors.Is(err, io.EOF) {
		return nil, words.Errorf("something stands after the list")
	}
	return edits, nil
}

// decodeEdit reads one object whose names are those of Edit, each at most once,
// and whose values are texts.
func decodeEdit(dec *json.Decoder) (Edit, error) {
	var e Edit
	var when string
	into := map[string]*string{"treatment": &e.Treatment, "field": &e.Field, "old": &e.Old, "new": &e.New,
		"why": &e.Why, "who": &e.Who, "when": &when}
	if err := expect(dec, json.Delim('{'), words.Key("an edit")); err != nil {
		return Edit{}, err
	}
	for dec.More() {
		token, err := next(dec)
		if err != nil {
			return Edit{}, err
		}
		name, _ := token.(string)
		value, known := into[name]
		if !known {
			return Edit{}, words.Errorf("%q is no name of an edit, or stands there twice", name)
		}
		delete(into, name)
		if token, err = next(dec); err != nil {
			return Edit{}, err
		}
		text, ok := token.(string)
		if !ok {
			return Edit{}, words.Errorf("%s is %v and not a text", name, token)
		}
		*value = text
	}
	if len(into) > 0 {
		return Edit{}, words.Errorf("it lacks %s", strings.Join(slices.Sorted(maps.Keys(into)), ", "))
	}
	var err error
	if e.When, err = time.Parse(time.RFC3339Nano, when); err != nil {
		return Edit{}, words.Errorf("when is %q and not a day and time", when)
	}
	return e, expect(dec, json.Delim('}'), words.Key("the end of the edit"))
}

// next reads one token of a text that may not end here.
func next(dec *json.Decoder) (json.Token, error) {
	token, err := dec.Token()
	if errors.Is(err, io.EOF) {
		err = words.Errorf("it ends too early")
	}
	return token, err
}

// expect reads one token that must be want.
func expect(dec *json.Decoder, want json.Delim, named string) error {
	token, err := next(dec)
	if err != nil {
		return err
	}
	if token != want {
		return words.Errorf("%v stands where %s should", token, words.Later(named))
	}
	return nil
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
		return words.Errorf("write table edits: %w", err)
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return words.Errorf("write table edits: %w", err)
	}
	if err := disk.Replace(path, buf.Bytes()); err != nil {
		return words.Errorf("write table edits: %w", err)
	}
	return nil
}
