package crops

import (
	"strings"

	"fyne.io/fyne/v2"
)

// broken breaks a text into lines of a width, at most so many; what does not fit
// ends in an ellipsis.
func broken(text string, wide, size float32, style fyne.TextStyle, most int) []string {
	if most < 2 || fits(text, wide, size, style) {
		return []string{clipped(text, wide, size, style)}
	}
	words := strings.Fields(text)
	n := 0
	for n < len(words) && fits(strings.Join(words[:n+1], " "), wide, size, style) {
		n++
	}
	if n == 0 {
		return []string{clipped(text, wide, size, style)}
	}
	return append([]string{strings.Join(words[:n], " ")}, broken(strings.Join(words[n:], " "), wide, size, style, most-1)...)
}

// clipped is a text cut to a width.
func clipped(text string, wide, size float32, style fyne.TextStyle) string {
	if fits(text, wide, size, style) {
		return text
	}
	runes := []rune(text)
	low, high := 0, len(runes) // the longest start that fits, by halves
	for low < high {
		mid := (low + high + 1) / 2
		if fits(strings.TrimRight(string(runes[:mid]), " ,")+"…", wide, size, style) {
			low = mid
		} else {
			high = mid - 1
		}
	}
	if low == 0 {
		return ""
	}
	return strings.TrimRight(string(runes[:low]), " ,") + "…"
}

func fits(text string, wide, size float32, style fyne.TextStyle) bool {
	return fyne.MeasureText(text, size, style).Width <= wide
}
