package handouts

import (
	"testing"

	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/desk/look"
)

func TestTheAreaSaysThatItExports(t *testing.T) {
	a, _ := demo(t, look.Light)
	during := false
	a.away = func(work func()) { during = a.Exporting() && a.export.Disabled(); work() }
	test.Tap(a.export)
	if !during || a.Exporting() {
		t.Errorf("exporting %v, afterwards %v", during, a.Exporting())
	}
}
