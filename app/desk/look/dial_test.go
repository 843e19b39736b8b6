package look

import (
	"errors"
	"fmt"
	"strconv"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
)

// pounds is a dial of pounds in a window; it notes what is tried and what is
// handed over.
func pounds(t *testing.T) (d *Dial, tried, taken *[]string) {
	t.Helper()
	test.NewTempApp(t)
	fyne.CurrentApp().Settings().SetTheme(New(Light))
	tried, taken = &[]string{}, &[]string{}
	f := NewField("Prepared", "", func(text string) error {
		if text == "0 lb" {
			return errors.New("is too little")
		}
		*taken = append(*taken, text)
		return nil
	})
	f.Typing = func(text string) { *tried = append(*tried, text) }
	read := func(text string) (float64, bool) {
		x, err := strconv.ParseFloat(strings.TrimSuffix(text, " lb"), 64)
		return x, err == nil
	}
	d = NewDial(f, Range{0.5, 8, 0.5}, read, func(x float64) string { return fmt.Sprint(x) + " lb" })
	w := test.NewTempWindow(t, d)
	w.Resize(fyne.NewSize(200, 90))
	d.SetValue("3 lb")
	*tried = nil
	return d, tried, taken
}

func TestDialFollowsTheField(t *testing.T) {
	d, _, _ := pounds(t)
	if d.Slide().At() != 3 || !d.Slide().given {
		t.Errorf("the slide is at %v", d.Slide().At())
	}
	d.SetText("12 lb")
	if d.Slide().At() != 12 {
		t.Errorf("typed 12 lb, the slide is at %v", d.Slide().At())
	}
	d.SetText("a lot")
	if d.Slide().given {
		t.Error("the slide shows an amount where none is typed")
	}
}

// Dragging tries every mark and hands over one value, when it is let go.
func TestDraggingTriesAndLettingGoHandsOver(t *testing.T) {
	d, tried, taken := pounds(t)
	s := d.Slide()
	wide := s.Size().Width
	for _, share := range []float32{0.5, 0.6, 0.7, 0.7} {
		s.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(share*wide, 8)}})
	}
	if len(*tried) != 3 || len(*taken) != 0 {
		t.Fatalf("tried %v, taken %v", *tried, *taken)
	}
	s.DragEnd()
	if len(*taken) != 1 || (*taken)[0] != d.Text() || d.Dirty() {
		t.Errorf("taken %v, the field says %q", *taken, d.Text())
	}
	s.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: fyne.NewPos(-50, 8)}})
	s.DragEnd()
	if d.Text() != "0.5 lb" {
		t.Errorf("dragged over the edge: %q", d.Text())
	}
}

// Up and Down step in the entry as on the slide, also beyond the range.
func TestSteps(t *testing.T) {
	d, _, taken := pounds(t)
	key := func(name fyne.KeyName) { d.Entry().TypedKey(&fyne.KeyEvent{Name: name}) }
	key(fyne.KeyUp)
	key(fyne.KeyUp)
	key(fyne.KeyDown)
	if d.Text() != "3.5 lb" || len(*taken) != 3 {
		t.Errorf("%q after %v", d.Text(), *taken)
	}
	d.SetText("3.7 lb")
	key(fyne.KeyUp)
	if d.Text() != "4 lb" {
		t.Errorf("up from 3.7: %q", d.Text())
	}
	d.SetText("20 lb")
	key(fyne.KeyUp)
	if d.Text() != "20.5 lb" {
		t.Errorf("up from over the range: %q", d.Text())
	}
	d.Slide().TypedKey(&fyne.KeyEvent{Name: fyne.KeyHome})
	key(fyne.KeyDown)
	if d.Text() != "0.5 lb" {
		t.Errorf("down from the end: %q", d.Text())
	}
	d.SetText("0 lb")
	if d.Done() || d.Problem() == "" {
		t.Error("a refused amount was taken")
	}
}

func TestRangeNext(t *testing.T) {
	r := Range{0, 10000, 100}
	for _, c := range []struct {
		from     float64
		up       bool
		expected float64
	}{{640, true, 700}, {640, false, 600}, {700, true, 800}, {700, false, 600}, {0, false, 0}, {10000, true, 10100}, {-50, false, -50}, {-50, true, 0}, {12050, false, 12000}} {
		if got := r.next(c.from, c.up); got != c.expected {
			t.Errorf("next to %v, up %v: %v; want %v", c.from, c.up, got, c.expected)
		}
	}
}
