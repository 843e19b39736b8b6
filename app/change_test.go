package app

import (
	"fmt"
	"testing"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
)

func BenchmarkChange(b *testing.B) {
	a := looktest.App(b, look.Light)
	d := newDesk(a, Options{Folder: b.TempDir()})
	d.window.Show()
	looktest.Settle(d.window, 1024, 700)
	i := 0
	for b.Loop() {
		i++
		d.session.Change("x", func(c *class.Class) { c.Title = fmt.Sprint(i) })
	}
}
