package main

import (
	"errors"
	"flag"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/kettleside/cmd/internal/setup"
	"example.org/kettleside/cmd/internal/setup/setuptest"
)

func TestParse(t *testing.T) {
	tests := []struct {
		name    string
		args    []string
		want    options
		wantErr string
	}{
		{"nothing", nil, options{}, ""},
		{"a class", []string{"spring.kettleside"}, options{class: "spring.kettleside"}, ""},
		{"flag before", []string{"-no-window", "spring.kettleside"}, options{class: "spring.kettleside", noWindow: true}, ""},
		{"flag after", []string{"spring.kettleside", "-no-window"}, options{class: "spring.kettleside", noWindow: true}, ""},
		{"two classes", []string{"a.kettleside", "b.kettleside"}, options{}, "opens one class file, and got a.kettleside and b.kettleside"},
		{"unknown flag", []string{"-nothing"}, options{}, "not defined"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := parse(tt.args, io.Discard)
			if (err != nil) != (tt.wantErr != "") || err != nil && !strings.Contains(err.Error(), tt.wantErr) {
				t.Fatalf("error %v, want %q", err, tt.wantErr)
			}
			if err == nil && got != tt.want {
				t.Errorf("parse = %+v, want %+v", got, tt.want)
			}
		})
	}
	if _, err := parse([]string{"-h"}, io.Discard); !errors.Is(err, flag.ErrHelp) {
		t.Errorf("-h: error %v", err)
	}
}

// place is a module folder with a folder inside it that the command is called
// from, and a class file there.
func place(t *testing.T) (root, here, class string) {
	t.Helper()
	root = t.TempDir()
	here = filepath.Join(root, "papers")
	class = filepath.Join(here, "spring class.kettleside")
	if err := os.Mkdir(here, 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(class, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	return root, here, class
}

const installed = "gcc\tinstalled\npkg-config\tinstalled\nlibgl1-mesa-dev\tinstalled\nxorg-dev\tinstalled\n"

// steps sums up the commands that were run, each by its program's base name
// and its arguments, with the module's folder taken out.
func steps(runner *setuptest.Runner, root string) []string {
	var list []string
	for _, c := range runner.Runs() {
		name := filepath.Base(c.Name)
		if name == "dpkg-query" {
			list = append(list, name)
			continue
		}
		words := append([]string{name}, c.Args...)
		text := strings.ReplaceAll(strings.Join(words, " "), root+string(filepath.Separator), "")
		list = append(list, filepath.ToSlash(text))
	}
	return list
}

func TestStart(t *testing.T) {
	const (
		listPlain   = "go list -deps -f {{.ImportPath}} {{.Stale}} -buildvcs=false ./cmd/handouts"
		buildPlain  = "go build -v -o .build/handouts -buildvcs=false ./cmd/handouts"
		listWindow  = "go list -deps -f {{.ImportPath}} {{.Stale}} -buildvcs=false -tags migrated_fynedo ./cmd/kettleside"
		buildWindow = "go build -v -o .build/kettleside -buildvcs=false -tags migrated_fynedo ./cmd/kettleside"
	)
	broken := []setuptest.Answer{{Err: errors.New("exit status 1")}}
	tests := []struct {
		name       string
		opts       options
		screenless string
		answers    map[string][]setuptest.Answer
		want       []string
		says       []string
		wantErr    []string
	}{
		{
			name: "window with the shipped class",
			want: []string{"dpkg-query", listWindow, buildWindow, "kettleside"},
			says: []string{"to compile the window: gcc, pkg-config, libgl1-mesa-dev, xorg-dev", "Opening the window"},
		},
		{
			name: "window with a class", opts: options{class: "spring class.kettleside"},
			want: []string{"dpkg-query", listWindow, buildWindow, "kettleside papers/spring class.kettleside"},
		},
		{
			name: "no display", screenless: "neither is set",
			want: []string{
				listPlain, buildPlain, "handouts demo -force out/demo-class.kettleside",
				"handouts workbook out/demo-class.kettleside out/demo-class.xlsx", "handouts numbers -plain out/demo-class.kettleside",
			},
			says: []string{"There is no display here (neither is set)", "Workbook: ../out/demo-class.xlsx", "Class file: ../out/demo-class.kettleside"},
		},
		{
			name: "no display, with a class", screenless: "neither is set", opts: options{class: "spring class.kettleside"},
			want: []string{
				listPlain, buildPlain,
				"handouts workbook papers/spring class.kettleside out/spring class.xlsx", "handouts numbers -plain papers/spring class.kettleside",
			},
			says: []string{"Workbook: ../out/spring class.xlsx"},
		},
		{
			name: "no window wanted", opts: options{class: "spring class.kettleside", noWindow: true},
			want: []string{
				listPlain, buildPlain,
				"handouts workbook papers/spring class.kettleside out/spring class.xlsx", "handouts numbers -plain papers/spring class.kettleside",
			},
			says: []string{"No window, as asked"},
		},
		{name: "no such class", opts: options{class: "autumn.kettleside"}, wantErr: []string{"open the class", "autumn.kettleside"}},
		{name: "a folder", opts: options{class: "."}, wantErr: []string{"is a folder"}},
		{
			name: "window does not compile", answers: map[string][]setuptest.Answer{"go build": broken},
			want:    []string{"dpkg-query", listWindow, buildWindow},
			wantErr: []string{"did not compile", "go run ./cmd/start -no-window"},
		},
		{
			name: "handouts program fails", screenless: "neither is set", opts: options{class: "spring class.kettleside"},
			answers: map[string][]setuptest.Answer{"": broken, "go": {{}}},
			want:    []string{listPlain, buildPlain, "handouts workbook papers/spring class.kettleside out/spring class.xlsx"},
			wantErr: []string{"the handouts program failed", "exit status 1"},
		},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			root, here, _ := place(t)
			runner := &setuptest.Runner{Answers: map[string][]setuptest.Answer{"dpkg-query": {{Stdout: installed}}}}
			for prefix, answers := range tt.answers {
				runner.Answers[prefix] = answers
			}
			var out strings.Builder
			s := starter{
				root: root, here: here, goos: "linux",
				machine: setup.Machine{Name: "Debian", Family: setup.Debian, Root: true},
				runner:  runner, out: &out, errs: &out, screenless: tt.screenless,
			}
			err := s.start(t.Context(), tt.opts)
			if (err != nil) != (tt.wantErr != nil) {
				t.Fatalf("error %v", err)
			}
			for _, part := range tt.wantErr {
				if !strings.Contains(err.Error(), part) {
					t.Errorf("error does not say %q: %v", part, err)
				}
			}
			if got := steps(runner, root); !slices.Equal(got, tt.want) {
				t.Errorf("ran\n  %s\nwant\n  %s", strings.Join(got, "\n  "), strings.Join(tt.want, "\n  "))
			}
			for _, part := range tt.says {
				if !strings.Contains(filepath.ToSlash(out.String()), part) {
					t.Errorf("does not say %q:\n%s", part, &out)
				}
			}
		})
	}
}

func TestStartElsewhere(t *testing.T) {
	root, here, _ := place(t)
	runner := &setuptest.Runner{Answers: map[string][]setuptest.Answer{"go build": {{Err: errors.New("exit status 1")}}}}
	var out strings.Builder
	s := starter{
		root: root, here: here, goos: "windows", machine: setup.Machine{Name: "Windows", Family: setup.Windows},
		runner: runner, out: &out, errs: &out,
	}
	err := s.start(t.Context(), options{})
	if err == nil || !strings.Contains(err.Error(), "mingw-w64-ucrt-x86_64-gcc") {
		t.Errorf("error does not say what to install: %v", err)
	}
	if lines := steps(runner, root); len(lines) != 2 || !strings.Contains(lines[1], ".build/kettleside.exe") {
		t.Errorf("ran %q", lines)
	}
}

func TestBuildsWithoutCgoWhereNoWindowOpens(t *testing.T) {
	root, here, _ := place(t)
	runner := &setuptest.Runner{}
	s := starter{
		root: root, here: here, goos: "linux", env: []string{"CGO_ENABLED=1"},
		runner: runner, out: io.Discard, errs: io.Discard, screenless: "neither is set",
	}
	if err := s.start(t.Context(), options{}); err != nil {
		t.Fatal(err)
	}
	for _, c := range runner.Runs()[:2] {
		if !slices.Equal(c.Env, []string{"CGO_ENABLED=0"}) {
			t.Errorf("%s runs with %q", c, c.Env)
		}
	}
}
