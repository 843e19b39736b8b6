package session

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"example.org/kettleside/app/class"
)

func TestABatchForMorePeopleThanStations(t *testing.T) {
	s := demo(t)
	err := s.Change("People", func(c *class.Class) {
		c.People.Headcount, c.People.PerStation = class.PeopleCounts.High, class.ShareCounts.Low
	})
	if err != nil {
		t.Fatal(err)
	}
	if err := s.AddBatch(beans); err != nil {
		t.Fatal(err)
	}
	if b, _ := s.SelectedBatch(); b.Batch.Stations != class.StationCounts.High {
		t.Errorf("%d stations", b.Batch.Stations)
	}
}

// Each damaged file keeps its own name, and one that cannot be moved is never
// written over.
func TestNoDamagedFileIsLost(t *testing.T) {
	file := filepath.Join(t.TempDir(), "edits.json")
	for range 2 {
		if err := os.WriteFile(file, []byte("["), 0o644); err != nil {
			t.Fatal(err)
		}
		if err := demo(t).KeepEditsIn(file); err == nil || !strings.Contains(err.Error(), "moved aside") {
			t.Errorf("says %v", err)
		}
	}
	if aside, _ := filepath.Glob(file + ".damaged-*"); len(aside) != 2 {
		t.Errorf("set aside: %v", aside)
	}
	s := demo(t)
	if err := s.KeepEditsIn(filepath.Dir(file) + "\x00"); err == nil {
		t.Fatal("a name that no file can have was taken")
	}
	if err := s.ApplyEdit(edit(s, "4")); err == nil || len(s.Edits()) != 0 {
		t.Errorf("an edit that is not kept looks kept: %v, %d edits", err, len(s.Edits()))
	}
}

func TestAFileNameIsShortEnough(t *testing.T) {
	for title, want := range map[string]string{"Beans: a/b?": "Beans ab.xlsx", "": "class.xlsx", "???": "class.xlsx"} {
		if got := FileName(class.Class{Title: title}, ".xlsx"); got != want {
			t.Errorf("%q gives %q", title, got)
		}
	}
	for _, letter := range []string{"b", "ß", "豆", "🫘"} {
		got := FileName(class.Class{Title: strings.Repeat(letter, 300)}, class.Extension)
		if len(got) > maxNameBytes || len(got) < maxNameBytes-4 || !utf8.ValidString(got) || !strings.HasSuffix(got, class.Extension) {
			t.Errorf("%s: %d bytes, %q", letter, len(got), got)
		}
	}
}
