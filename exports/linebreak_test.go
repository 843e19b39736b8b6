package exports

import (
	"testing"

	"pgregory.net/rapid"
)

// Lines are never longer than they may be, and say the whole text.
func TestLinesAreBrokenAtBlanks(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		runs := []run{{true, rapid.StringOf(rapid.RuneFrom([]rune("ab W½\n"))).Draw(r, "bold")}, {false, rapid.StringOf(rapid.RuneFrom([]rune("cd .-\n"))).Draw(r, "plain")}}
		width := rapid.Float64Range(20, 200).Draw(r, "width")
		for _, f := range []*lettering{arial, plex} {
			said, lines := "", f.lines(runs, width, 10, false)
			for i, line := range lines {
				length := 0.0
				for _, piece := range line {
					said += piece.text
					length += f.width(piece.text, 10, piece.bold, false)
				}
				if length > width+f.over+1e-6 {
					r.Fatalf("line %d is %.2f points long; %.2f are free", i+1, length, width)
				}
			}
			if want := bare(runs[0].text + runs[1].text); bare(said) != want {
				r.Fatalf("%q became %q", want, said)
			}
		}
	})
	for text, want := range map[string]int{"": 1, "aa aa": 1, "aa aa aa": 2, "aa\naa": 2, "aaaaaaaaaaaa": 2, "a\n\na": 3} {
		if got := arial.wrapped(text, 35, 10, false); got != want { // five of these letters and a blank
			t.Errorf("%q takes %d lines; want %d", text, got, want)
		}
	}
}
