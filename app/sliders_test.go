package app

import (
	"flag"
	"math"
	"runtime"
	"slices"
	"testing"
	"testing/synctest"
	"time"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

var sliders = flag.Duration("sliders", 0, "move the sliders for this `time`, such as 10m; 0 is a few rounds")

const (
	fewRounds = 6
	maxGrowth = 0.10 // of the memory in use, from first to last
)

// forgotten is longer than the toolkit keeps what it made for widgets that are
// not shown any more.
const forgotten = 70 * time.Second

// TestSliders moves every slider of the batch area up and down again, in the plan
// and in a trial, over and over, and asks that the memory in use stays what it
// was: widgets, results and steps to undo are all bounded. With the flag it
// measures at the beginning and the end; without it after each of a few rounds,
// on a clock of its own that does not wait.
func TestSliders(t *testing.T) {
	d := program(t, dressing{small, measure.US, look.Light, 1, words.English})
	d.open("batch")
	d.slideRound(t) // what is made once is there from then on
	var inUse []float64
	rounds := 0
	if *sliders > 0 {
		inUse = append(inUse, d.memoryAtRest())
		for began := time.Now(); time.Since(began) < *sliders; rounds++ {
			d.slideRound(t)
		}
		inUse = append(inUse, d.memoryAtRest())
	} else {
		today := time.Now()
		synctest.Test(t, func(t *testing.T) {
			time.Sleep(time.Until(today)) // the clock of such a test begins long ago
			for ; rounds < fewRounds; rounds++ {
				d.slideRound(t)
				inUse = append(inUse, d.memoryAtRest())
			}
			d.recovery.Stop() // it belongs to the clock of this test
			d.recovery = nil
		})
	}
	third := max(len(inUse)/3, 1)
	before, after := middle(inUse[:third]), middle(inUse[len(inUse)-third:])
	growth := after/before - 1
	t.Logf("%d rounds: %.1f MB in use at first, %.1f MB at last, %+.1f %%", rounds, before, after, 100*growth)
	if growth > maxGrowth {
		t.Errorf("the memory in use grew by %.0f %%", 100*growth)
	}
}

// memoryAtRest is what the program holds after the toolkit has forgotten what it
// does not show any more, in MB.
func (d *desk) memoryAtRest() float64 {
	time.Sleep(forgotten)
	d.window.Canvas().Capture() // the toolkit clears its caches when it paints
	runtime.GC()
	runtime.GC() // what the first one's finalizers let go
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return float64(m.HeapAlloc) / 1e6
}

// slideRound moves all sliders, in the plan and in a trial, which is dropped
// again.
func (d *desk) slideRound(t *testing.T) {
	t.Helper()
	d.slideAll(t)
	d.bench.Try()
	d.slideAll(t)
	d.bench.DropTrial()
	d.window.Canvas().Capture()
}

// slideAll drags every slider to both ends and back to where it stood, and lets
// it go at each stop.
func (d *desk) slideAll(t *testing.T) {
	t.Helper()
	for _, dial := range d.dials(t) {
		slide, stood := dial.Slide(), dial.Slide().At()
		for _, amount := range []float64{slide.Range.Low, slide.Range.High, stood} {
			drag(slide, amount)
		}
		if at := slide.At(); math.Abs(at-stood) > slide.Range.Step/2 {
			t.Fatalf("a slider does not come back to %v but to %v", stood, at)
		}
	}
}

// drag puts the knob of a slide over an amount and lets it go.
func drag(s *look.Slide, amount float64) {
	over := s.Range
	room := float64(s.Size().Width - s.MinSize().Width/3) // between the middles of the knob at both ends
	x := float64(s.MinSize().Width)/6 + room*(amount-over.Low)/(over.High-over.Low)
	at := fyne.NewPos(float32(x), s.Size().Height/2)
	s.Dragged(&fyne.DragEvent{PointEvent: fyne.PointEvent{Position: at}})
	s.DragEnd()
}

func middle(list []float64) float64 {
	sorted := slices.Sorted(slices.Values(list))
	return sorted[len(sorted)/2]
}
