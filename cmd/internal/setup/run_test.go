package setup

import (
	"context"
	"errors"
	"os/exec"
	"strings"
	"testing"
	"time"
)

func TestCommandString(t *testing.T) {
	tests := []struct {
		c    Command
		want string
	}{
		{Command{Name: "go"}, "go"},
		{Command{Name: "go", Args: []string{"build", "-o", "my folder/x", ""}}, "go build -o 'my folder/x' ''"},
		{Command{Name: "echo", Args: []string{"it's"}}, `echo 'it'\''s'`},
	}
	for _, tt := range tests {
		if got := tt.c.String(); got != tt.want {
			t.Errorf("String = %s, want %s", got, tt.want)
		}
	}
}

func TestOutputSaysWhatTheCommandComplainedAbout(t *testing.T) {
	needShell(t)
	out, err := Output(t.Context(), System{}, Command{Name: "sh", Args: []string{"-c", "echo good; echo bad >&2; exit 3"}})
	if out != "good\n" {
		t.Errorf("output %q", out)
	}
	var exit *exec.ExitError
	if !errors.As(err, &exit) || exit.ExitCode() != 3 || !strings.HasSuffix(err.Error(), "\nbad") {
		t.Errorf("error %v", err)
	}
}

// TestRunEndsTheWholeGroup starts a shell whose child would hold the output
// open for a minute, and cuts it short.
func TestRunEndsTheWholeGroup(t *testing.T) {
	needShell(t)
	ctx, cancel := context.WithCancel(t.Context())
	began := time.Now()
	ready := &Lines{Each: func(string) { cancel() }}
	err := System{}.Run(ctx, Command{Name: "sh", Args: []string{"-c", "(echo ready; sleep 60); true"}, Stdout: ready})
	if !errors.Is(err, context.Canceled) || !strings.Contains(err.Error(), "interrupted") {
		t.Errorf("error %v", err)
	}
	if took := time.Since(began); took > 4*time.Second {
		t.Errorf("took %v: the shell's child was left running", took)
	}
}

func TestFind(t *testing.T) {
	if path, err := (System{}).Find("no-such-program-anywhere"); err == nil || path != "" {
		t.Errorf("Find = %q, %v", path, err)
	}
}

func needShell(t *testing.T) {
	t.Helper()
	if _, err := exec.LookPath("sh"); err != nil {
		t.Skip("no sh here")
	}
}
