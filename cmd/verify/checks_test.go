package main

import (
	"context"
	"errors"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/kettleside/cmd/internal/setup/setuptest"
)

// stand is a bench on which nothing really runs.
func stand(t *testing.T, answers map[string][]setuptest.Answer) (*bench, *setuptest.Runner) {
	t.Helper()
	runner := &setuptest.Runner{Answers: answers}
	b := &bench{
		root: t.TempDir(), temp: t.TempDir(), goos: "linux", runner: runner, out: io.Discard,
		env:  []string{"PATH=/bin", "FYNE_SCALE=2", "LC_ALL=C", "LANG=C", "WAYLAND_DISPLAY=wayland-0", "DISPLAY=:0"},
		keep: "kept",
	}
	return b, runner
}

func TestChecksRunTheseCommands(t *testing.T) {
	list := map[string][]setuptest.Answer{
		"go list -find ./...":                {{Stdout: "m/app\nm/cmd/handouts\nm/cmd/kettleside\nm/cmd/kettleside/part\n"}},
		"go list -find ./cmd/kettleside/...": {{Stdout: "m/cmd/kettleside\nm/cmd/kettleside/part\n"}},
	}
	tests := []struct {
		name string
		run  func(context.Context, *bench) error
		last string   // the last command that runs
		env  []string // has to be in its environment
	}{
		{"vet", checkVet, "go vet -tags migrated_fynedo ./...", []string{"CGO_ENABLED=1", "FYNE_SCALE=2"}},
		{"nocgo", checkNoCgo, "go build ./cmd/handouts ./cmd/start ./cmd/verify ./exports/... ./reference/... ./content/... ./app/...", []string{"CGO_ENABLED=0"}},
		{"test", checkTests, "go test -count=1 -timeout 30m m/app m/cmd/handouts", []string{"CGO_ENABLED=0", "LANG=en_US.UTF-8", "KETTLESIDE_VERIFY=1"}},
		{"race", checkRaces, "go test -count=1 -race -short -timeout 30m ./app/class/... ./reference/... ./exports/... ./cmd/internal/setup ./cmd/verify", []string{"CGO_ENABLED=1", "KETTLESIDE_VERIFY=1"}},
		{"staticcheck", checkStatic, "go run " + staticcheck + " -tags migrated_fynedo ./...", []string{"CGO_ENABLED=1"}},
		{"window", checkWindow, "go test -count=1 -timeout 20m -artifacts -outputdir kept ./cmd/kettleside/...", []string{"DISPLAY=:42", "LIBGL_ALWAYS_SOFTWARE=1", "CGO_ENABLED=1"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			b, runner := stand(t, list)
			ended := false
			b.screen = func(context.Context, io.Writer) (string, func(), error) {
				return ":42", func() { ended = true }, nil
			}
			if err := tt.run(t.Context(), b); err != nil {
				t.Fatal(err)
			}
			runs := runner.Runs()
			c := runs[len(runs)-1]
			if c.String() != tt.last || c.Dir != b.root {
				t.Errorf("ran %s in %s, want %s", c, c.Dir, tt.last)
			}
			for _, entry := range tt.env {
				if !slices.Contains(c.Env, entry) {
					t.Errorf("environment %q lacks %s", c.Env, entry)
				}
			}
			if c.Args[0] == "test" {
				for _, entry := range []string{"FYNE_SCALE=2", "LC_ALL=C", "LANG=C", "WAYLAND_DISPLAY=wayland-0"} {
					if slices.Contains(c.Env, entry) {
						t.Errorf("the tests see %s", entry)
					}
				}
			}
			if tt.name == "window" && !ended {
				t.Error("the display in memory was left running")
			}
		})
	}
}

func TestWindowCheckWithoutAServer(t *testing.T) {
	b, runner := stand(t, nil)
	bad := errors.New("no server")
	b.screen = func(context.Context, io.Writer) (string, func(), error) { return "", nil, bad }
	if err := checkWindow(t.Context(), b); !errors.Is(err, bad) || len(runner.Runs()) > 0 {
		t.Errorf("error %v, ran %q", err, runner.Lines())
	}
	b.goos = "darwin" // brings its own display
	if err := checkWindow(t.Context(), b); err != nil || len(runner.Runs()) != 1 {
		t.Errorf("on macOS: error %v, ran %q", err, runner.Lines())
	}
}

func TestWindowCheckEndsTheServerWhenTestsFail(t *testing.T) {
	b, _ := stand(t, map[string][]setuptest.Answer{"go test": {{Err: errors.New("exit status 1")}}})
	ended := false
	b.screen = func(context.Context, io.Writer) (string, func(), error) { return ":1", func() { ended = true }, nil }
	if err := checkWindow(t.Context(), b); err == nil || !ended {
		t.Errorf("error %v, server ended: %t", err, ended)
	}
}

func TestCrossBuildsAllAndNamesTheOneThatFails(t *testing.T) {
	b, runner := stand(t, nil)
	broken := filepath.Join(b.temp, "darwin-arm64")
	runner.Answers = map[string][]setuptest.Answer{"go build -o " + broken: {{Err: errors.New("exit status 1")}}}
	err := checkCross(t.Context(), b)
	if err == nil || !strings.HasPrefix(err.Error(), "for darwin on arm64: ") {
		t.Errorf("error %v", err)
	}
	var built []string
	for _, c := range runner.Runs() {
		if !slices.Contains(c.Env, "CGO_ENABLED=0") {
			t.Errorf("%s: environment %q", c, c.Env)
		}
		built = append(built, strings.Join(c.Env[len(c.Env)-2:], " "))
	}
	want := []string{
		"GOOS=linux GOARCH=amd64", "GOOS=linux GOARCH=arm64", "GOOS=darwin GOARCH=amd64",
		"GOOS=darwin GOARCH=arm64", "GOOS=windows GOARCH=amd64", "GOOS=windows GOARCH=arm64",
	}
	if !slices.Equal(built, want) {
		t.Errorf("built for %q, want %q", built, want)
	}
}

func TestFormatted(t *testing.T) {
	const clean, untidy, broken = "package a\n\nvar x = 1\n", "package a\nvar  x=1\n", "package a\nvar x = \n"
	tests := []struct {
		name    string
		files   map[string]string
		git     setuptest.Answer
		wantErr []string
	}{
		{"clean", map[string]string{"a.go": clean}, setuptest.Answer{Stdout: "a.go\x00"}, nil},
		{"untidy and broken", map[string]string{"a.go": clean, "b.go": untidy, "c.go": broken}, setuptest.Answer{Stdout: "a.go\x00b.go\x00c.go\x00b.go\x00"}, []string{"gofmt -w", "\n  b.go", "\n  c.go: "}},
		{"not tracked and ignored", map[string]string{"a.go": clean, "b.go": untidy}, setuptest.Answer{Stdout: "a.go\x00"}, nil},
		{"taken away", map[string]string{"a.go": clean}, setuptest.Answer{Stdout: "a.go\x00gone.go\x00"}, nil},
		{"no git", map[string]string{"a.go": clean, "in/b.go": untidy, ".hidden/c.go": broken}, setuptest.Answer{Err: errors.New("exit status 128")}, []string{"in/b.go"}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			b, _ := stand(t, map[string][]setuptest.Answer{"git ls-files": {tt.git}})
			for name, text := range tt.files {
				path := filepath.Join(b.root, name)
				if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
					t.Fatal(err)
				}
				if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			err := b.formatted(t.Context())
			if (err != nil) != (tt.wantErr != nil) {
				t.Fatalf("error %v", err)
			}
			for _, part := range tt.wantErr {
				if !strings.Contains(filepath.ToSlash(err.Error()), part) {
					t.Errorf("error does not say %q: %v", part, err)
				}
			}
			if err != nil && strings.Contains(err.Error(), "a.go") || err != nil && strings.Contains(err.Error(), ".hidden") {
				t.Errorf("error names too much: %v", err)
			}
		})
	}
}

func TestFormatAlsoAsksForTheModules(t *testing.T) {
	b, runner := stand(t, map[string][]setuptest.Answer{"go mod verify": {{Err: errors.New("exit status 1")}}})
	if err := checkFormat(t.Context(), b); err == nil || !strings.Contains(err.Error(), "go mod verify") {
		t.Errorf("error %v, ran %q", err, runner.Lines())
	}
}
