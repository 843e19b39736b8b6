package setup_test

import (
	"os"
	"strings"
	"testing"

	"example.org/kettleside/cmd/internal/setup"
)

// TestCommandsNeedNothingButGo guards what makes the two commands of use on a
// bare machine: they compile with the standard library and without cgo.
func TestCommandsNeedNothingButGo(t *testing.T) {
	out, err := setup.Output(t.Context(), setup.System{}, setup.Command{
		Name: "go",
		Args: []string{"list", "-deps", "-f", "{{.ImportPath}} {{.Standard}} {{len .CgoFiles}}", "../../start", "../../verify"},
		Env:  setup.Environ(os.Environ(), nil, "CGO_ENABLED=1"),
	})
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(out, "example.org/kettleside/cmd/start false 0") {
		t.Fatalf("the list lacks the commands themselves:\n%s", out)
	}
	for line := range strings.Lines(out) {
		words := strings.Fields(line)
		if words[1] != "true" && !strings.HasPrefix(words[0], "example.org/kettleside/cmd/") {
			t.Errorf("%s is not of the standard library", words[0])
		}
		if words[2] != "0" && words[0] != "runtime/cgo" {
			t.Errorf("%s uses cgo", words[0])
		}
	}
}
