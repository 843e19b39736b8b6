package projector

import (
	"testing"

	"example.org/kettleside/app/desk/look"
)

// A change while the view is open: the next batch, with everything set again.
func BenchmarkChange(b *testing.B) {
	r := open(b, look.Light, demo(b), 1280, 720)
	for i := 0; b.Loop(); i++ {
		r.session.Select(i % 2)
	}
}
