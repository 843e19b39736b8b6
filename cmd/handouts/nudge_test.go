package main

import (
	"path/filepath"
	"strings"
	"testing"

	"example.org/kettleside/content"
)

func TestNudge(t *testing.T) {
	dir := home(t)
	demo := write(t, filepath.Join(dir, "demo.kettleside"), string(content.DemoClass()))
	for nudge, c := range map[string]struct {
		code int
		says string
	}{
		"":          {done, ""},
		"1.5, -0.5": {done, ""},
		"-3,4.5":    {done, ""},
		"6,0":       {failed, "shifted by 6, 0 mm"},
		"0,-5.5":    {failed, "at most"},
		"NaN,0":     {failed, "at most"},
		"1":         {misspelt, "two numbers of millimetres"},
		"a,b":       {misspelt, "“a,b” is not known"},
	} {
		for command, ending := range map[string]string{"workbook": ".xlsx", "pdf": ".pdf"} {
			got := call(command, "-sheets", "labels", "-nudge", nudge, demo, filepath.Join(dir, "out"+ending))
			if got.code != c.code || !strings.Contains(got.errors, c.says) {
				t.Errorf("%s -nudge %q: exit %d, %.300s; want %d, %s", command, nudge, got.code, got.errors, c.code, c.says)
			}
		}
	}
}
