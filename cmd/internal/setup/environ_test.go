package setup_test

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"example.org/kettleside/cmd/internal/setup"
	"example.org/kettleside/cmd/internal/setup/setuptest"
)

func TestEnviron(t *testing.T) {
	base := []string{"PATH=/bin", "FYNE_SCALE=2", "LANG=de", "LANGUAGE=de", "CGO_ENABLED=1", "EMPTY="}
	got := setup.Environ(base, []string{"FYNE_", "LANGUAGE"}, "LANG=en_US.UTF-8", "NEW=1")
	want := []string{"PATH=/bin", "CGO_ENABLED=1", "EMPTY=", "LANG=en_US.UTF-8", "NEW=1"}
	if !slices.Equal(got, want) {
		t.Errorf("Environ = %q, want %q", got, want)
	}
}

func TestRoot(t *testing.T) {
	file := filepath.Join(t.TempDir(), "go.mod")
	tests := []struct {
		name, printed string
		lacking       []string
		want, wantErr string
	}{
		{"inside", file + "\n", nil, filepath.Dir(file), ""},
		{"outside of any module", os.DevNull + "\n", nil, "", "inside Kettleside's folder"},
		{"modules turned off", "\n", nil, "", "inside Kettleside's folder"},
		{"no go command", "", []string{"go"}, "", "find go"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			runner := &setuptest.Runner{Lacking: tt.lacking, Answers: map[string][]setuptest.Answer{"go env GOMOD": {{Stdout: tt.printed}}}}
			got, err := setup.Root(t.Context(), runner)
			if got != tt.want {
				t.Errorf("Root = %q, want %q", got, tt.want)
			}
			if (err != nil) != (tt.wantErr != "") || err != nil && !strings.Contains(err.Error(), tt.wantErr) {
				t.Errorf("error %v, want %q", err, tt.wantErr)
			}
		})
	}
}

func TestUnstamped(t *testing.T) {
	tests := []struct{ name, flags, want string }{
		{"nothing set", "\n", "GOFLAGS=-buildvcs=false"},
		{"others kept", "-mod=vendor -v\n", "GOFLAGS=-mod=vendor -v -buildvcs=false"},
		{"set already", "-buildvcs=true\n", "GOFLAGS=-buildvcs=true"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			runner := &setuptest.Runner{Answers: map[string][]setuptest.Answer{"go env GOFLAGS": {{Stdout: tt.flags}}}}
			got, err := setup.Unstamped(t.Context(), runner, []string{"A=1", "GOFLAGS=old"})
			if want := []string{"A=1", tt.want}; err != nil || !slices.Equal(got, want) {
				t.Errorf("Unstamped = %q, %v; want %q", got, err, want)
			}
		})
	}
}
