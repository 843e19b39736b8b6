package looktest

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// Markup compares what a window shows with the golden markup testdata/NAME.
// Where they differ it names the first line that does and writes what was
// shown to testdata/failed, from where a wanted change is taken over by
// copying.
func Markup(t testing.TB, w fyne.Window, name string) {
	t.Helper()
	got := test.RenderToMarkup(w.Canvas())
	golden, err := os.ReadFile(filepath.Join("testdata", name))
	if err == nil && string(golden) == got {
		return
	}
	if err := os.MkdirAll(filepath.Join("testdata", "failed"), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join("testdata", "failed", name), []byte(got), 0o644); err != nil {
		t.Fatal(err)
	}
	want, have := strings.Split(string(golden), "\n"), strings.Split(got, "\n")
	for i, line := range have {
		if i >= len(want) || want[i] != line {
			t.Errorf("%s differs from line %d on, which is now %s (see testdata/failed)", name, i+1, strings.TrimSpace(line))
			return
		}
	}
	t.Errorf("%s is longer than what is shown now (see testdata/failed)", name)
}
