package crops

import (
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/desk/look"
)

// BenchmarkSearch types one letter into the search and draws what is found.
func BenchmarkSearch(b *testing.B) {
	r := open(b, look.Light, areaWide, areaHigh)
	b.ResetTimer()
	for i := range b.N {
		if i%2 == 0 {
			r.crops.search.TypedRune('b')
		} else {
			r.crops.search.TypedKey(&fyne.KeyEvent{Name: fyne.KeyBackspace})
		}
	}
}

// BenchmarkScroll turns the wheel by a row and back.
func BenchmarkScroll(b *testing.B) {
	r := open(b, look.Light, areaWide, areaHigh)
	b.ResetTimer()
	for i := range b.N {
		by := float32(-50)
		if i%2 == 1 {
			by = 50
		}
		test.Scroll(r.window.Canvas(), fyne.NewPos(300, 300), 0, by)
	}
}
