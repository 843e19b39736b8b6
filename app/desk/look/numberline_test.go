package look_test

import (
	"testing"

	"example.org/kettleside/app/desk/drawing/textfits"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/measure"
)

func TestALongFigureKeepsToItsWidth(t *testing.T) {
	looktest.App(t, look.Light)
	short := measure.Figure{ID: "p", Label: "Packs", Text: "9 packs", Unit: "packs", Basis: measure.Estimate}
	long := short
	long.Text = "at least 1,017–1,018 packs"
	f := look.NewFigure(short)
	w := looktest.Window(t, look.Column(0, f), 210, 300)
	one := f.MinSize().Height
	for _, width := range []float32{300, 210, 150} {
		f.SetFigure(long)
		looktest.Settle(w, width, 300)
		textfits.Check(t, w)
	}
	f.SetFigure(short)
	looktest.Settle(w, 210, 300)
	if got := f.MinSize().Height; got != one {
		t.Errorf("a short figure is %v high, before it was %v", got, one)
	}
}

// Where label and “estimate” have no room on one line, the word goes below.
func TestALongLabelKeepsToItsWidth(t *testing.T) {
	looktest.App(t, look.Light)
	short := measure.Figure{ID: "i", Label: "Ice", Text: "25 lb", Unit: "lb", Basis: measure.Estimate}
	long := short
	long.Label = "Hielo, por balance de calor"
	f := look.NewFigure(short)
	w := looktest.Window(t, look.Column(0, f), 190, 300)
	looktest.Settle(w, 190, 300)
	one := f.MinSize().Height
	f.SetFigure(long)
	looktest.Settle(w, 190, 300)
	textfits.Check(t, w)
	if got := f.MinSize().Height; got <= one {
		t.Errorf("the label with its word is %v high, a short one %v", got, one)
	}
	f.SetFigure(short)
	looktest.Settle(w, 190, 300)
	if got := f.MinSize().Height; got != one {
		t.Errorf("a short label is %v high, before it was %v", got, one)
	}
}
