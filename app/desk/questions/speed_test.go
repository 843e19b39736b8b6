package questions

import (
	"testing"

	"example.org/kettleside/app/desk/look"
)

// BenchmarkTyping is one keystroke in the search.
func BenchmarkTyping(b *testing.B) {
	r := open(b, look.Light, demo(b), 925, 600)
	words := []string{"how much", "how much i", "how much ic", "how much ice"}
	for i := 0; b.Loop(); i++ {
		r.area.search.SetText(words[i%len(words)])
	}
}

// BenchmarkBatch is another batch on view, with all questions listed anew.
func BenchmarkBatch(b *testing.B) {
	r := open(b, look.Light, demo(b), 925, 600)
	r.area.Open("clock-start")
	for i := 0; b.Loop(); i++ {
		r.session.Select(i % 3)
	}
}
