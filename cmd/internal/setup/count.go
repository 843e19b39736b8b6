package setup

import (
	"fmt"
	"strings"
	"time"
)

// A Count follows a compile by what `go build -v` prints.
type Count struct {
	// Total is how many packages the program is made of, Todo how many of them
	// are not compiled yet. Zero means not known.
	Total, Todo int
	// Started is how many the compiler has begun so far, Last the latest one.
	Started int
	Last    string
	// Fetching is the module that is being downloaded, if that comes first.
	Fetching string
}

// ReadPackages counts the lines "IMPORT/PATH STALE" that the go command lists,
// STALE being true for a package that is not compiled yet.
func ReadPackages(listing string) Count {
	var c Count
	for line := range strings.Lines(listing) {
		words := strings.Fields(line)
		if len(words) != 2 {
			continue
		}
		c.Total++
		if words[1] == "true" {
			c.Todo++
		}
	}
	return c
}

// Take reads one line of the go command's messages. It returns false for a
// line that is not about progress: a compiler's warning or error, which a
// person should see.
func (c *Count) Take(line string) bool {
	if module, ok := strings.CutPrefix(line, "go: downloading "); ok {
		c.Fetching = module
		return true
	}
	if !isImportPath(line) {
		return false
	}
	c.Started++
	c.Last = line
	c.Fetching = ""
	return true
}

// isImportPath tells a package that is being compiled from all else that the
// go command prints: those lines hold spaces, or a colon after a file's name.
func isImportPath(line string) bool {
	return line != "" && !strings.ContainsAny(line, " \t:\"'()")
}

// Line says how far the compile is, on one line.
func (c *Count) Line(elapsed time.Duration) string {
	clock := Clock(elapsed)
	switch {
	case c.Fetching != "":
		return fmt.Sprintf("%s  fetching %s", clock, c.Fetching)
	case c.Total == 0:
		return fmt.Sprintf("%s  reading what the program is made of", clock)
	case c.Started == 0:
		return fmt.Sprintf("%s  %d of %d packages to compile", clock, c.Todo, c.Total)
	}
	// The last one named is the latest to begin; a slow one begun before it
	// may be what the compiler is still busy with.
	return fmt.Sprintf("%s  package %d of %d, %s", clock, c.Started, max(c.Todo, c.Started), c.Last)
}

// Clock prints a span of time to the second: 7s, 3m05s, 1h02m03s.
func Clock(d time.Duration) string {
	s := int(d.Round(time.Second) / time.Second)
	switch {
	case s < 60:
		return fmt.Sprintf("%ds", s)
	case s < 3600:
		return fmt.Sprintf("%dm%02ds", s/60, s%60)
	}
	return fmt.Sprintf("%dh%02dm%02ds", s/3600, s/60%60, s%60)
}
