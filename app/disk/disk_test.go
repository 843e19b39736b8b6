package disk

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestReplace(t *testing.T) {
	dir := t.TempDir()
	path := filepath.Join(dir, "Zoë’s class é.kettleside")
	for _, text := range []string{"one", "two"} {
		if err := Replace(path, []byte(text)); err != nil {
			t.Fatal(err)
		}
		if got, _ := os.ReadFile(path); string(got) != text {
			t.Errorf("the file holds %q; want %q", got, text)
		}
	}
	if info, _ := os.Stat(path); info.Mode().Perm() != 0o644 {
		t.Errorf("a new file has mode %o", info.Mode().Perm())
	}
	if left, _ := os.ReadDir(dir); len(left) != 1 {
		t.Errorf("%d files are left behind", len(left))
	}
}

// What stands in the way is said in plain words, and what is there stays.
func TestReplaceRefuses(t *testing.T) {
	dir := t.TempDir()
	protected := filepath.Join(dir, "protected.kettleside")
	open := filepath.Join(dir, "open.xlsx")
	for _, path := range []string{protected, open} {
		if err := os.WriteFile(path, []byte("before"), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Chmod(protected, 0o444); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(filepath.Join(dir, ".~lock.open.xlsx#"), nil, 0o644); err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]string{
		protected: "write-protected",
		open:      "open in another program",
		filepath.Join(dir, "no folder", "x.xlsx"): "there is no folder",
		dir: "not a file that can be replaced",
	} {
		if err := Replace(path, []byte("after")); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v; want %q", filepath.Base(path), err, want)
		}
	}
	for _, path := range []string{protected, open} {
		if got, _ := os.ReadFile(path); string(got) != "before" {
			t.Errorf("%s was changed to %q", filepath.Base(path), got)
		}
	}
}

// A link stays a link, and the file behind it is written.
func TestReplaceFollowsALink(t *testing.T) {
	dir := t.TempDir()
	target, link := filepath.Join(dir, "target"), filepath.Join(dir, "link")
	if err := os.WriteFile(target, []byte("before"), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(target, link); err != nil {
		t.Skip("this file system has no links: ", err)
	}
	if err := Replace(link, []byte("after")); err != nil {
		t.Fatal(err)
	}
	info, err := os.Lstat(link)
	if got, _ := os.ReadFile(target); string(got) != "after" || err != nil || info.Mode()&os.ModeSymlink == 0 {
		t.Errorf("the target holds %q, the link is %v, %v", got, info.Mode(), err)
	}
}
