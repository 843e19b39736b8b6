package setup

import "bytes"

// Lines is an io.Writer that hands on what is written to it one line at a
// time, without the line end. Like the writers of os/exec it is used by one
// goroutine at a time.
type Lines struct {
	Each func(line string)
	rest []byte
}

// Write takes more text.
func (l *Lines) Write(p []byte) (int, error) {
	l.rest = append(l.rest, p...)
	for {
		line, rest, ok := bytes.Cut(l.rest, []byte("\n"))
		if !ok {
			return len(p), nil
		}
		l.Each(string(bytes.TrimSuffix(line, []byte("\r"))))
		l.rest = rest
	}
}

// Flush hands on a last line that had no line end.
func (l *Lines) Flush() {
	if len(l.rest) > 0 {
		l.Each(string(l.rest))
		l.rest = nil
	}
}
