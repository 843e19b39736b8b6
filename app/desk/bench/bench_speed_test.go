package bench

import (
	"testing"

	"example.org/kettleside/app/desk/look"
)

// BenchmarkTyping is one keystroke in a field of the bench, with everything
// that follows it.
func BenchmarkTyping(b *testing.B) {
	r := open(b, look.Light, demo(b), areaWide, areaHigh)
	for i := 0; b.Loop(); i++ {
		r.bench.inputs.prepared.SetText([]string{"4 lb", "6 lb"}[i%2])
	}
}
