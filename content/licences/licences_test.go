package licences_test

import (
	"os"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"example.org/kettleside/content/licences"
)

// Every module that is built into one of the programs has its licence here, and
// no other.
func TestEveryModuleHasItsLicence(t *testing.T) {
	list := exec.Command("go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}}{{end}}{{end}}",
		"example.org/kettleside/cmd/kettleside", "example.org/kettleside/cmd/handouts")
	list.Env = append(os.Environ(), "CGO_ENABLED=1") // the window program needs it
	out, err := list.Output()
	if err != nil {
		t.Fatal(err)
	}
	want := append(strings.Fields(string(out)), "go")
	slices.Sort(want)
	want = slices.Compact(want)
	var got []string
	for _, l := range licences.All() {
		got = append(got, l.Module)
		if l.Kind() == "" || len(l.Text) < 500 {
			t.Errorf("%s: kind %q, %d signs", l.Module, l.Kind(), len(l.Text))
		}
	}
	slices.Sort(got)
	if !slices.Equal(got, want) {
		t.Errorf("licences of\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}
