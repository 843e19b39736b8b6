package class

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"unicode/utf8"

	"example.org/kettleside/app/disk"
	"example.org/kettleside/content/words"
)

// Extension is the ending of a class file's name.
const Extension = ".kettleside"

// maxFileBytes bounds what is read: a class is a few kilobytes.
const maxFileBytes = 4 << 20

// FileError is a class file that cannot be read as it stands. It names the
// file and lists every problem with its field.
type FileError struct {
	File     string
	Problems []error // of type *measure.EntryError where a field is at fault
}

func (e *FileError) Error() string { return e.Say(nil) }

// Say is the error by a voice, with each of its problems.
func (e *FileError) Say(v *words.Voice) string {
	lines := make([]string, len(e.Problems))
	for i, p := range e.Problems {
		lines[i] = v.Error(p)
	}
	return v.Say("%s cannot be used as a class:\n  %s", e.File, strings.Join(lines, "\n  "))
}

func (e *FileError) Unwrap() []error { return e.Problems }

// Open reads a class file.
func Open(path string) (Class, error) {
	f, err := os.Open(path)
	if err != nil {
		return Class{}, words.Errorf("open class: %w", err)
	}
	defer f.Close()
	return Read(f, filepath.Base(path))
}

// Read reads a class; name stands for the file in messages. A file with any
// problem is refused whole, with all of its problems.
func Read(r io.Reader, name string) (Class, error) {
	data, err := io.ReadAll(io.LimitReader(r, maxFileBytes+1))
	if err != nil {
		return Class{}, words.Errorf("read class %s: %w", name, err)
	}
	refuse := func(problems ...error) (Class, error) { return Class{}, &FileError{name, problems} }
	if len(data) > maxFileBytes {
		return refuse(words.Errorf("the file is larger than %d MB, which no class is", maxFileBytes>>20))
	}
	if !utf8.Valid(data) {
		return refuse(words.Errorf("the file is not written in UTF-8, as class files are; open it in the program that wrote it and save it again"))
	}
	tree, err := decodeTree(bytes.TrimPrefix(data, []byte("\ufeff")))
	if err != nil {
		return refuse(err)
	}
	object, ok := tree.(map[string]any)
	if !ok {
		return refuse(words.Errorf("the file holds no class: a class starts with { and has a field “schema”"))
	}
	if err := checkSchema(object["schema"]); err != nil {
		return refuse(err)
	}
	upgrade(object)
	c := Class{}
	var f filler
	f.fill("", tree, &c)
	if len(f.problems) > 0 {
		return refuse(f.problems...)
	}
	if err := c.Check(); err != nil {
		return refuse(err.(interface{ Unwrap() []error }).Unwrap()...)
	}
	return c, nil
}

func checkSchema(schema any) error {
	n, ok := schema.(json.Number)
	if !ok {
		return words.Errorf("schema: the field is missing; allowed is 1 to %d", Schema)
	}
	switch v, err := n.Int64(); {
	case err != nil || v < 1:
		return words.Errorf("schema: “%s” stands there; allowed is 1 to %d", n, Schema)
	case v > Schema:
		return words.Errorf("schema: the file was written by a newer Kettleside (schema %d; this one reads %d)", v, Schema)
	}
	return nil
}

// Encode is the class as it stands in a file.
func Encode(c Class) ([]byte, error) {
	c.Schema = Schema
	var buf bytes.Buffer
	enc := json.NewEncoder(&buf)
	enc.SetEscapeHTML(false) // people read it
	enc.SetIndent("", "  ")
	if err := enc.Encode(c); err != nil {
		return nil, fmt.Errorf("encode class: %w", err)
	}
	return buf.Bytes(), nil
}

// Save writes a class file, whole or not at all: the file on disk is the old
// one or the new one, never a part.
func Save(path string, c Class) error {
	data, err := Encode(c)
	if err != nil {
		return err
	}
	return disk.Replace(path, data)
}
