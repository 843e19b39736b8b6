package looktest

import (
	"flag"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// Several packages have the flag, and a test binary may hold two of them.
func init() {
	if flag.Lookup("update") == nil {
		flag.Bool("update", false, "write the golden markup anew")
	}
}

// Markup compares what a window shows with the golden markup testdata/NAME.
// Where they differ it names the first line that does and writes what was
// shown to testdata/failed. With the flag -update it writes the golden anew.
func Markup(t testing.TB, w fyne.Window, name string) {
	t.Helper()
	compare(t, test.RenderToMarkup(w.Canvas()), name)
}

// ObjectMarkup does the same for one object.
func ObjectMarkup(t testing.TB, o fyne.CanvasObject, name string) {
	t.Helper()
	compare(t, test.RenderObjectToMarkup(o), name)
}

func compare(t testing.TB, got, name string) {
	t.Helper()
	if flag.Lookup("update").Value.String() == "true" {
		write(t, filepath.Join("testdata", name), got)
		return
	}
	golden, err := os.ReadFile(filepath.Join("testdata", name))
	if err == nil && string(golden) == got {
		return
	}
	write(t, filepath.Join("testdata", "failed", name), got)
	want, have := strings.Split(string(golden), "\n"), strings.Split(got, "\n")
	for i, line := range have {
		if i >= len(want) || want[i] != line {
			t.Errorf("%s differs from line %d on, which is now %s (see testdata/failed)", name, i+1, strings.TrimSpace(line))
			return
		}
	}
	t.Errorf("%s is longer than what is shown now (see testdata/failed)", name)
}

func write(t testing.TB, path, text string) {
	t.Helper()
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}
