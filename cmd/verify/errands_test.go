package main

import (
	"context"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"example.org/kettleside/cmd/internal/setup"
)

func TestErrands(t *testing.T) {
	tests := []struct {
		args    []string
		want    []string
		wantErr string
	}{
		{[]string{"-pictures", "p"}, []string{"pictures"}, ""},
		{[]string{"-start"}, []string{"packages", "start"}, ""},
		{[]string{"-speed", "-sliders", "10m"}, []string{"speed", "sliders"}, ""},
		{[]string{"-speed", "-only", "format"}, nil, "-only names checks"},
	}
	for _, tt := range tests {
		t.Run(strings.Join(tt.args, " "), func(t *testing.T) {
			got, err := parse(tt.args, allSteps(), io.Discard)
			if (err != nil) != (tt.wantErr != "") || err != nil && !strings.Contains(err.Error(), tt.wantErr) {
				t.Fatalf("error %v, want %q", err, tt.wantErr)
			}
			if !slices.Equal(names(got), tt.want) {
				t.Errorf("steps %v, want %v", names(got), tt.want)
			}
		})
	}
}

func TestErrandsRunTheseCommands(t *testing.T) {
	folder, err := filepath.Abs("p")
	if err != nil {
		t.Fatal(err)
	}
	e := errands{pictures: "p", sliders: 10 * time.Minute}
	for _, tt := range []struct {
		run  func(context.Context, *bench) error
		want string
	}{
		{e.draw, "go test -count=1 -run '^TestPictures$' -timeout 0 ./app -args -pictures " + folder},
		{e.slide, "go test -count=1 -run '^TestSliders$' -v -timeout 0 ./app -args -sliders 10m0s"},
		{measureKeystrokes, "go test -count=1 -run ^$ -bench ^BenchmarkKeystroke$ -benchtime 200x -timeout 0 ./app"},
	} {
		b, runner := stand(t, nil)
		if err := tt.run(t.Context(), b); err != nil {
			t.Fatal(err)
		}
		got := runner.Lines()
		if want := strings.ReplaceAll(tt.want, "'", ""); len(got) != 1 || strings.ReplaceAll(got[0], "'", "") != want {
			t.Errorf("ran %q, want %q", got, want)
		}
	}
}

func TestTheWindowsPicturesAreKept(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "kept")
	steps, err := parse([]string{"-only", "window", "-keep", folder}, allSteps(), io.Discard)
	if err != nil {
		t.Fatal(err)
	}
	b, runner := stand(t, nil)
	b.screen = func(context.Context, io.Writer) (string, func(), error) { return ":42", func() {}, nil }
	if err := steps[len(steps)-1].run(t.Context(), b); err != nil {
		t.Fatal(err)
	}
	want := "go test -count=1 -timeout 20m -artifacts -outputdir " + folder + " ./cmd/kettleside/..."
	if got := runner.Lines(); len(got) != 1 || got[0] != want {
		t.Errorf("ran %q, want %q", got, want)
	}
	if _, err := os.Stat(folder); err != nil {
		t.Error(err)
	}
}

func TestHear(t *testing.T) {
	tests := []struct{ name, said, wantErr string }{
		{"all", "a warning\nfirst\nsecond\nmore\n", ""},
		{"one is missing", "first\n", `did not say "second"`},
		{"in another order", "second\nfirst\n", `did not say "second"`},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			took, err := hear(strings.NewReader(tt.said), time.Now(), []string{"first", "second"})
			if (err != nil) != (tt.wantErr != "") || err != nil && !strings.Contains(err.Error(), tt.wantErr) {
				t.Fatalf("error %v, want %q", err, tt.wantErr)
			}
			if err == nil && (len(took) != 2 || took[1] < took[0]) {
				t.Errorf("heard after %v", took)
			}
		})
	}
}

func TestStartOnceTakesTimesAndEndsTheProgram(t *testing.T) {
	sh, err := (setup.System{}).Find("sh")
	if err != nil {
		t.Skip("there is no shell to stand for the program")
	}
	script := filepath.Join(t.TempDir(), "program")
	write := func(text string) {
		if err := os.WriteFile(script, []byte("#!"+sh+"\n"+text), 0o700); err != nil {
			t.Fatal(err)
		}
	}
	write("echo first >&2\nexec sleep 600\n")
	took, err := startOnce(t.Context(), nil, script, "first")
	if err != nil || len(took) != 1 {
		t.Errorf("took %v, %v", took, err)
	}
	write("exit 1\n")
	if _, err := startOnce(t.Context(), nil, script, "first"); err == nil || !strings.Contains(err.Error(), `did not say "first"`) {
		t.Errorf("error %v", err)
	}
}

func TestReportStart(t *testing.T) {
	ms := func(list ...int) []time.Duration {
		var all []time.Duration
		for _, n := range list {
			all = append(all, time.Duration(n)*time.Millisecond)
		}
		return all
	}
	var out strings.Builder
	reportStart(&out, ms(90, 100, 300), ms(125, 120, 130), ms(240, 250, 260))
	for _, want := range []string{"3 starts of each", "100 ms", "125 ms", "1.25", "2.50"} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("%q is not in\n%s", want, &out)
		}
	}
}
