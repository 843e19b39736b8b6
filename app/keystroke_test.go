package app

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// BenchmarkKeystroke types weights into the batch area of the whole window, with
// a class of twelve batches and every area open before. A keystroke ends when all
// figures of the batch are new; Enter when header, findings and totals are too.
// Painting is measured apart: this painter works in memory, the window's on the
// graphics card. Each is given as its median and the time that 99 of 100 stay
// under, in milliseconds.
func BenchmarkKeystroke(b *testing.B) {
	d := program(b, dressing{small, measure.US, look.Light, 1, words.English})
	d.session.Start(classOfTwelve(), "")
	for _, a := range d.areas {
		d.open(a.id)
	}
	d.open("batch")
	var keys, enters, paints []time.Duration
	timed := func(list *[]time.Duration, do func()) {
		began := time.Now()
		do()
		*list = append(*list, time.Since(began))
	}
	canvas := d.window.Canvas()
	weight := d.dials(b)[0]
	canvas.Focus(weight.Entry())
	i := 0
	for b.Loop() {
		typed := fmt.Sprintf("%.2f", 2+float64(i*37%797)/100) // a weight that was not worked out before
		weight.Entry().(fyne.Shortcutable).TypedShortcut(&fyne.ShortcutSelectAll{})
		weight.Entry().TypedRune(rune(typed[0]))
		weight.Entry().TypedRune(rune(typed[1]))
		for _, digit := range typed[2:] {
			timed(&keys, func() { weight.Entry().TypedRune(digit) })
			timed(&paints, func() { canvas.Capture() })
		}
		timed(&enters, func() { weight.Entry().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn}) })
		if got := d.session.Class().Batches[0].Prepared.In(measure.Pound); fmt.Sprintf("%.2f", got) != typed {
			b.Fatalf("typed %s, the class has %v", typed, got)
		}
		i++
	}
	b.ReportMetric(0, "ns/op") // of three kinds of work together: says nothing
	for _, one := range []struct {
		name string
		took []time.Duration
	}{{"key", keys}, {"enter", enters}, {"paint", paints}} {
		slices.Sort(one.took)
		b.ReportMetric(shareUnder(one.took, 0.5), one.name+"-p50-ms")
		b.ReportMetric(shareUnder(one.took, 0.99), one.name+"-p99-ms")
	}
}

// shareUnder is the time that a share of the sorted times stays under, in ms.
func shareUnder(sorted []time.Duration, share float64) float64 {
	at := min(int(share*float64(len(sorted))), len(sorted)-1)
	return float64(sorted[at]) / float64(time.Millisecond)
}
