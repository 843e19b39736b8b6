package setup_test

import (
	"errors"
	"path/filepath"
	"strings"
	"testing"

	"example.org/kettleside/cmd/internal/setup"
	"example.org/kettleside/cmd/internal/setup/setuptest"
)

func TestBuild(t *testing.T) {
	list := "go list -deps -f '{{.ImportPath}} {{.Stale}}' -buildvcs=false -tags sharp ./cmd/tool"
	listed := setuptest.Answer{Stdout: "errors false\nexample.org/a true\nexample.org/cmd/tool true\n", Stderr: "go: downloading example.org/b v1.0.0\n"}
	failed := errors.New("exit status 1")
	tests := []struct {
		name       string
		list       setuptest.Answer
		build      setuptest.Answer
		says       []string
		wantErr    []string
		notInError []string
	}{
		{
			name: "compiles", list: listed,
			build: setuptest.Answer{Stderr: "example.org/a\n# example.org/a\na.c:3: warning: old style\nexample.org/cmd/tool"},
			says:  []string{"3 packages, 2 of them still to compile", "# example.org/a\n", "a.c:3: warning: old style"},
		},
		{
			name: "no compiler", list: listed,
			build:   setuptest.Answer{Stderr: "# runtime/cgo\ncgo: C compiler \"gcc\" not found: exec: \"gcc\"", Err: failed},
			says:    []string{`cgo: C compiler "gcc" not found`},
			wantErr: []string{"The C compiler, or a header", "go build -buildvcs=false -tags sharp -o .build/tool ./cmd/tool"},
		},
		{
			name: "no network",
			list: setuptest.Answer{Stderr: "go: example.org/b@v1.0.0: dial tcp: lookup: no such host\n", Err: failed},
			says: []string{"no such host"}, wantErr: []string{"needs the network", "By hand"},
		},
		{
			name: "our own mistake", list: listed,
			build: setuptest.Answer{Stderr: "# example.org/a\na.go:3:1: undefined: b\n", Err: failed},
			says:  []string{"undefined: b"}, wantErr: []string{"exit status 1", "By hand"},
			notInError: []string{"C compiler", "network"},
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			root := t.TempDir()
			runner := &setuptest.Runner{Answers: map[string][]setuptest.Answer{"go list": {tt.list}, "go build": {tt.build}}}
			var out strings.Builder
			_, err := setup.Build{
				Package: "./cmd/tool", Root: root, Target: filepath.Join(root, ".build", "tool"), Tags: "sharp",
				Env: []string{"CGO_ENABLED=0"}, Runner: runner, Out: &out,
			}.Run(t.Context())
			if (err != nil) != (tt.wantErr != nil) || err != nil && !errors.Is(err, setup.ErrBuild) {
				t.Fatalf("error %v", err)
			}
			for _, part := range tt.says {
				if !strings.Contains(out.String(), part) {
					t.Errorf("does not say %q:\n%s", part, &out)
				}
			}
			for _, part := range tt.wantErr {
				if !strings.Contains(filepath.ToSlash(err.Error()), part) {
					t.Errorf("error does not say %q: %v", part, err)
				}
			}
			for _, part := range tt.notInError {
				if strings.Contains(err.Error(), part) {
					t.Errorf("error says %q: %v", part, err)
				}
			}
			if got := runner.Lines()[0]; got != list {
				t.Errorf("first ran\n%s\nwant\n%s", got, list)
			}
			for _, c := range runner.Runs() {
				if c.Dir != root || len(c.Env) != 1 {
					t.Errorf("%s ran in %s with environment %v", c, c.Dir, c.Env)
				}
			}
		})
	}
}

func TestBuildWithoutGo(t *testing.T) {
	_, err := setup.Build{Runner: &setuptest.Runner{Lacking: []string{"go"}}}.Run(t.Context())
	if !errors.Is(err, setup.ErrBuild) || !strings.Contains(err.Error(), "find go") {
		t.Errorf("error %v", err)
	}
}
