package look_test

import (
	"testing"

	"fyne.io/fyne/v2/container"

	"example.org/kettleside/app/desk/look"
)

func TestWhatIsHiddenFollowsWhenItIsShown(t *testing.T) {
	area := container.NewStack()
	times := 0
	f := look.Follow(area, func() { times++ })
	step := func(what string, do func(), want int) {
		t.Helper()
		if do(); times != want {
			t.Errorf("%s: brought up to date %d times, want %d", what, times, want)
		}
	}
	step("shown and nothing changed", f.Shown, 0)
	step("a change in sight", f.Changed, 1)
	area.Hide()
	step("two changes out of sight", func() { f.Changed(); f.Changed() }, 1)
	area.Show()
	step("shown again", f.Shown, 2)
	step("and again", f.Shown, 2)
	step("a change in sight", f.Changed, 3)
}
