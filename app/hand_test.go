package app

import (
	"fmt"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// found are all objects of one kind that are shown in an object, in the order in
// which they stand there.
func found[T any](o fyne.CanvasObject) []T {
	var all []T
	if !o.Visible() {
		return nil
	}
	if one, ok := o.(T); ok {
		all = append(all, one)
	}
	var inside []fyne.CanvasObject
	switch x := o.(type) {
	case *fyne.Container:
		inside = x.Objects
	case fyne.Widget:
		inside = test.WidgetRenderer(x).Objects()
	}
	for _, one := range inside {
		all = append(all, found[T](one)...)
	}
	return all
}

// dials are those of the batch area, the weight first.
func (d *desk) dials(t testing.TB) []*look.Dial {
	t.Helper()
	all := found[*look.Dial](d.bench.Content)
	if len(all) < 5 {
		t.Fatalf("%d dials are shown", len(all))
	}
	return all
}

// classOfTwelve is the demo class with each of its batches three times, each
// with another weight.
func classOfTwelve() class.Class {
	c := demoClass(words.English)
	four := c.Batches
	for i := len(four); i < 12; i++ {
		one := four[i%len(four)]
		one.Name = fmt.Sprintf("%s, %d", one.Name, 1+i/len(four))
		one.Prepared = measure.New(one.Prepared.Amount()*(1+float64(i)/10), one.Prepared.Unit())
		c.Batches = append(c.Batches, one)
	}
	return c
}

// tapButton taps the button that is called so.
func tapButton(t testing.TB, in fyne.CanvasObject, label string) {
	t.Helper()
	for _, b := range found[*look.Button](in) {
		if b.Text == label {
			test.Tap(b)
			return
		}
	}
	t.Fatalf("no button %q is shown", label)
}
