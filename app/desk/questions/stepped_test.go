package questions

import (
	"strings"
	"testing"
	"unicode/utf8"

	"example.org/kettleside/content"
	"example.org/kettleside/content/words"
)

// letters measures a text by its letters, each one wide.
func letters(text string) float32 { return float32(utf8.RuneCountInString(text)) }

func TestUnitsStayWithTheirFigures(t *testing.T) {
	for _, one := range []struct {
		text  string
		width float32
		want  string
	}{
		{"bring 4.6 lb of ice", 9, "bring\n4.6 lb of\nice"},
		{"leave ½ in free", 8, "leave\n½ in\nfree"},
		{"blanch", 3, "blanch"},
		{"", 10, ""},
		{"all in one", 10, "all in one"},
		{"all in one", 9, "all in\none"},
	} {
		equal(t, "text in "+one.text, broken(one.text, one.width, letters), one.want)
	}
}

// TestNoAnswerEndsALineInAFigure asks it of every answer and sentence as it
// stands in the least window.
func TestNoAnswerEndsALineInAFigure(t *testing.T) {
	r := openDemo(t)
	broke := 0
	for _, q := range content.Questions(words.English) {
		r.area.Open(q.ID)
		for _, s := range []*stepped{r.area.answer.says, r.area.answer.here.says} {
			for _, line := range strings.Split(s.texts[s.at].Text(), "\n") {
				broke++
				if endsInFigure(line) {
					t.Errorf("%s: a line ends in a figure: %s", q.ID, line)
				}
			}
		}
	}
	if broke < 300 {
		t.Errorf("%d lines only", broke)
	}
}
