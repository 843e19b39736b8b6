// Package setuptest stands in for the machine in the tests of cmd/start,
// cmd/verify and what they share: it records commands instead of running them.
package setuptest

import (
	"context"
	"fmt"
	"io"
	"strings"
	"sync"

	"example.org/kettleside/cmd/internal/setup"
)

// An Answer is what a command prints and how it ends.
type Answer struct {
	Stdout, Stderr string
	Err            error
}

// Runner records the commands it is given. It answers the first time with the
// first answer listed for the longest prefix of the command that is known, the
// second time with the second, and so on; the last answer stays. A command
// without an answer prints nothing and succeeds.
type Runner struct {
	// Answers maps the beginning of a command, as typed, to its answers.
	Answers map[string][]Answer
	// Lacking names the programs that Find does not find.
	Lacking []string

	mu   sync.Mutex
	runs []setup.Command
	used map[string]int
}

var _ setup.Runner = (*Runner)(nil)

// Run records the command and answers it.
func (r *Runner) Run(ctx context.Context, c setup.Command) error {
	r.mu.Lock()
	defer r.mu.Unlock()
	if ctx.Err() != nil {
		return fmt.Errorf("%s: interrupted: %w", c, ctx.Err())
	}
	r.runs = append(r.runs, c)
	a := r.answer(c.String())
	write(c.Stdout, a.Stdout)
	write(c.Stderr, a.Stderr)
	if a.Err != nil {
		return fmt.Errorf("%s: %w", c, a.Err)
	}
	return nil
}

func (r *Runner) answer(line string) Answer {
	best := ""
	for prefix := range r.Answers {
		if strings.HasPrefix(line, prefix) && len(prefix) > len(best) {
			best = prefix
		}
	}
	list := r.Answers[best]
	if len(list) == 0 {
		return Answer{}
	}
	if r.used == nil {
		r.used = make(map[string]int)
	}
	i := min(r.used[best], len(list)-1)
	r.used[best]++
	return list[i]
}

func write(w io.Writer, text string) {
	if w != nil && text != "" {
		_, _ = io.WriteString(w, text)
	}
}

// Find finds every program that is not said to be lacking.
func (r *Runner) Find(name string) (string, error) {
	for _, lacking := range r.Lacking {
		if name == lacking {
			return "", fmt.Errorf("find %s: not installed or not in PATH", name)
		}
	}
	return "/bin/" + name, nil
}

// Runs returns the commands run so far.
func (r *Runner) Runs() []setup.Command {
	r.mu.Lock()
	defer r.mu.Unlock()
	return append([]setup.Command(nil), r.runs...)
}

// Lines returns the commands run so far, as typed.
func (r *Runner) Lines() []string {
	var lines []string
	for _, c := range r.Runs() {
		lines = append(lines, c.String())
	}
	return lines
}
