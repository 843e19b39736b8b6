package bench

import (
	"image"
	"slices"
	"testing"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/measure"
)

func weigh(pounds float64) func(*class.Class) {
	return func(c *class.Class) { c.Batches[0].Prepared = measure.New(pounds, measure.Pound) }
}

// What changes while the area is hidden is shown when it is shown again, and
// not before; then it stands as it would in an area made anew, the curves too.
func TestHiddenAreaWaits(t *testing.T) {
	change := func(r *room, pounds float64) {
		t.Helper()
		if err := r.session.Change("Weight", weigh(pounds)); err != nil {
			t.Fatal(err)
		}
	}
	r := open(t, look.Light, demo(t), areaWide, 3000) // all of it in sight
	chart := r.bench.answers.below.heat.pieces[0].chart
	before := chart.ReadAt(1)
	r.bench.Content.Hide()
	r.window.Canvas().Capture()
	change(r, 5)
	change(r, 0.5)
	equal(t, "loads while hidden", r.bench.answers.loads.Figure().Text, "3 loads")
	equal(t, "field while hidden", r.bench.inputs.prepared.Text(), "3 lb")
	equal(t, "curve while hidden", chart.ReadAt(1), before)
	r.bench.Content.Show()
	r.bench.Shown()
	equal(t, "loads, shown again", r.bench.answers.loads.Figure().Text, "1 load")
	equal(t, "field, shown again", r.bench.inputs.prepared.Text(), "0.5 lb")
	looktest.Settle(r.window, areaWide, 3000)
	shown := looktest.Picture(t, r.window, "bench-shown-again")
	c := demo(t)
	weigh(0.5)(&c)
	if afresh := open(t, look.Light, c, areaWide, 3000); !same(shown, afresh.window.Canvas().Capture()) {
		t.Error("what is shown again is not what a new area shows")
	}
}

func same(a, b image.Image) bool {
	x, y := a.(*image.NRGBA), b.(*image.NRGBA)
	return x.Bounds() == y.Bounds() && slices.Equal(x.Pix, y.Pix)
}

// What was refused goes to no other batch, also where batches move while the
// area is hidden.
func TestRefusedTextStaysWithItsBatchWhileHidden(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	in := r.bench.inputs
	r.typeInto(in.prepared.Field, "lots")
	r.press(fyne.KeyReturn)
	r.bench.Content.Hide()
	for _, step := range []func() error{
		func() error { return r.session.MoveBatch(0, 1) },
		func() error { return r.session.RemoveBatch(1) },
		func() error { r.session.Select(0); return nil },
	} {
		if err := step(); err != nil {
			t.Fatal(err)
		}
	}
	r.bench.Content.Show()
	r.bench.Shown()
	equal(t, "field", in.prepared.Text(), r.first().Prepared.String())
	equal(t, "problem", in.prepared.Problem(), "")
}
