package reference

import (
	"fmt"
	"strings"
)

// DataError says where a data file is wrong, what was found there and what is
// allowed. Its message is one sentence for the person who edits the file.
type DataError struct {
	File    string // "treatments.csv"
	Line    int    // 1-based line of the file on which the record starts; 0 for the file as a whole
	Column  int    // 1-based number of the field in its record; 0 for the record as a whole
	Name    string // name of the column, or "" where none is concerned
	Found   string // what stands there
	Allowed string // what may stand there
}

// Error returns the sentence.
func (e *DataError) Error() string {
	place := e.File
	if e.Line > 0 {
		place += fmt.Sprintf(" line %d", e.Line)
	}
	if e.Column > 0 {
		place += fmt.Sprintf(" column %d", e.Column)
	}
	if e.Name != "" {
		place += fmt.Sprintf(" (%s)", e.Name)
	}
	return fmt.Sprintf("%s: found %s; allowed is %s.", place, e.Found, e.Allowed)
}

// DataErrors are all faults of one reading, in file and line order. It is
// returned only where there are two or more; errors.As finds the first.
type DataErrors []*DataError

// Error returns one sentence a line.
func (e DataErrors) Error() string {
	lines := make([]string, len(e))
	for i, one := range e {
		lines[i] = one.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap lets errors.As and errors.Is look at each fault.
func (e DataErrors) Unwrap() []error {
	out := make([]error, len(e))
	for i, one := range e {
		out[i] = one
	}
	return out
}

// maxFaults is how many faults one reading collects before it gives up: a file
// of another kind would otherwise fill the screen.
const maxFaults = 100

// faults collects the errors of one reading.
type faults struct{ list DataErrors }

func (f *faults) add(e *DataError) {
	if len(f.list) < maxFaults {
		f.list = append(f.list, e)
	}
}

func (f *faults) err() error {
	switch len(f.list) {
	case 0:
		return nil
	case 1:
		return f.list[0]
	}
	return f.list
}

// quoted prints a found text so that blanks and endings are seen.
func quoted(s string) string {
	if s == "" {
		return "nothing"
	}
	const most = 60
	if r := []rune(s); len(r) > most {
		s = string(r[:most]) + "..."
	}
	return fmt.Sprintf("%q", s)
}

// oneOf lists allowed values for a sentence.
func oneOf[T ~string](values []T) string {
	parts := make([]string, len(values))
	for i, v := range values {
		parts[i] = fmt.Sprintf("%q", string(v))
	}
	if len(parts) == 1 {
		return parts[0]
	}
	return strings.Join(parts[:len(parts)-1], ", ") + " or " + parts[len(parts)-1]
}
