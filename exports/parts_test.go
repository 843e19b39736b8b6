package exports

import (
	"archive/zip"
	"bytes"
	"io"
	"slices"
	"testing"
)

// partsOf are the parts of a workbook by path.
func partsOf(t testing.TB, data []byte) map[string][]byte {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	noErr(t, err)
	parts := map[string][]byte{}
	var names []string
	for _, f := range z.File {
		r, err := f.Open()
		noErr(t, err)
		body, err := io.ReadAll(r)
		noErr(t, err)
		parts[f.Name] = body
		names = append(names, f.Name)
		if f.Modified.Year() >= 1980 { // no time is read back as the day before 1980
			t.Errorf("%s has a time: %v", f.Name, f.Modified)
		}
	}
	if !slices.IsSorted(names) {
		t.Errorf("the parts are not in order: %v", names)
	}
	return parts
}

func TestPartsAreInOrderWithoutTimes(t *testing.T) {
	data, err := Workbook(demoWorked(t), Options{})
	noErr(t, err)
	if len(partsOf(t, data)) < 10 {
		t.Error("the workbook has too few parts")
	}
}

func TestDefaultsAreSorted(t *testing.T) {
	got := sortDefaults([]byte(`<Types><Default Extension="xml" a="b"></Default><Default Extension="png" a="b"/><Override x="y"></Override></Types>`))
	want := `<Types><Default Extension="png" a="b"/><Default Extension="xml" a="b"></Default><Override x="y"></Override></Types>`
	if string(got) != want {
		t.Errorf("got %s", got)
	}
}
