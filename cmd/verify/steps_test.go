package main

import (
	"context"
	"errors"
	"flag"
	"io"
	"slices"
	"strings"
	"testing"

	"example.org/kettleside/cmd/internal/setup"
	"example.org/kettleside/cmd/internal/setup/setuptest"
)

func names(steps []step) []string {
	var list []string
	for _, s := range steps {
		list = append(list, s.name)
	}
	return list
}

func TestChoose(t *testing.T) {
	window, all := []setup.Need{setup.Window}, []setup.Need{setup.Window, setup.Screen, setup.Papers, setup.Solver}
	tests := []struct {
		name, only string
		want       []string
		needs      []setup.Need // of the step that installs
		wantErr    string
	}{
		{"all", "", []string{"packages", "format", "vet", "nocgo", "test", "race", "staticcheck", "window", "cross"}, all, ""},
		{"one that needs nothing", "format", []string{"format"}, nil, ""},
		{"one that needs packages", "vet", []string{"packages", "vet"}, window, ""},
		{"in their own order, each once", "cross, vet,format,vet", []string{"packages", "format", "vet", "cross"}, window, ""},
		{"the tests without a window", "test", []string{"packages", "test"}, []setup.Need{setup.Papers, setup.Solver}, ""},
		{"packages alone", "packages", []string{"packages"}, all, ""},
		{"packages by name", "packages,format", []string{"packages", "format"}, all, ""},
		{"unknown", "format,lint", nil, nil, `there is no step "lint"; the steps are packages, format, vet`},
		{"empty name", "format,", nil, nil, `there is no step ""`},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			got, err := parse([]string{"-only", tt.only}, allSteps(), io.Discard)
			if (err != nil) != (tt.wantErr != "") || err != nil && !strings.Contains(err.Error(), tt.wantErr) {
				t.Fatalf("error %v, want %q", err, tt.wantErr)
			}
			if !slices.Equal(names(got), tt.want) {
				t.Errorf("steps %v, want %v", names(got), tt.want)
			}
			if tt.needs != nil && !slices.Equal(got[0].needs, tt.needs) {
				t.Errorf("installs %v, want %v", got[0].needs, tt.needs)
			}
			for _, s := range got {
				if s.run == nil || s.title == "" {
					t.Errorf("step %s cannot run or has no title", s.name)
				}
			}
		})
	}
}

func TestParseRefuses(t *testing.T) {
	if _, err := parse([]string{"format"}, allSteps(), io.Discard); err == nil {
		t.Error("an argument that is no flag is accepted")
	}
	if _, err := parse([]string{"-nothing"}, allSteps(), io.Discard); err == nil {
		t.Error("an unknown flag is accepted")
	}
	var usage strings.Builder
	if _, err := parse([]string{"-h"}, allSteps(), &usage); !errors.Is(err, flag.ErrHelp) {
		t.Errorf("-h: error %v", err)
	}
	for _, s := range allSteps() {
		if !strings.Contains(usage.String(), s.name) || !strings.Contains(usage.String(), s.title) {
			t.Errorf("-h does not explain %s", s.name)
		}
	}
}

func TestRunAllGoesOnAndCounts(t *testing.T) {
	bad := errors.New("it broke")
	ok := func(context.Context, *bench) error { return nil }
	fail := func(context.Context, *bench) error { return bad }
	tests := []struct {
		name   string
		steps  []step
		passed bool
		last   string
	}{
		{"all pass", []step{{name: "a", run: ok}, {name: "b", run: ok}}, true, "2 passed, 0 failed"},
		{"first fails", []step{{name: "a", run: fail}, {name: "b", run: ok}, {name: "c", run: fail}}, false, "1 passed, 2 failed"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			var out strings.Builder
			if got := (bench{}).runAll(t.Context(), &out, tt.steps); got != tt.passed {
				t.Errorf("runAll = %t", got)
			}
			lines := strings.Split(strings.TrimSuffix(out.String(), "\n"), "\n")
			if last := lines[len(lines)-1]; last != tt.last {
				t.Errorf("last line %q, want %q", last, tt.last)
			}
		})
	}
}

func TestRunAllStopsWhenInterrupted(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	steps := []step{
		{name: "first", run: func(ctx context.Context, _ *bench) error { cancel(); return ctx.Err() }},
		{name: "second", run: func(context.Context, *bench) error { t.Error("ran all the same"); return nil }},
	}
	var out strings.Builder
	if (bench{}).runAll(ctx, &out, steps) {
		t.Error("counts as passed")
	}
	if !strings.Contains(out.String(), "not run") || !strings.HasSuffix(out.String(), "\n0 passed, 1 failed\n") {
		t.Errorf("printed:\n%s", &out)
	}
}

func TestInstallStepRunsWithItsNeeds(t *testing.T) {
	steps, err := choose(allSteps(), "test")
	if err != nil {
		t.Fatal(err)
	}
	runner := &setuptest.Runner{Answers: map[string][]setuptest.Answer{
		"dpkg-query": {{Stdout: "libreoffice-calc\tinstalled\npoppler-utils\tinstalled\nfonts-liberation\tinstalled\npython3-scipy\tinstalled\n"}},
	}}
	b := bench{runner: runner, machine: setup.Machine{Family: setup.Debian, Root: true}, out: io.Discard}
	if err := steps[0].run(t.Context(), &b); err != nil {
		t.Fatal(err)
	}
	if got := runner.Lines(); len(got) != 1 || !strings.HasSuffix(got[0], "libreoffice-calc poppler-utils fonts-liberation python3-scipy") {
		t.Errorf("ran %q", got)
	}
}
