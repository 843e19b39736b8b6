package bench

import (
	"fmt"
	"strings"
	"testing"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
)

// heatFigures are the ids of the figures that stand large over the curves.
func heatFigures(h *heatPart) (ids []string) {
	for _, t := range h.pieces {
		for _, v := range t.figures {
			if t.content.Visible() && v.Visible() {
				ids = append(ids, v.Figure().ID)
			}
		}
	}
	return ids
}

// Each way of treating shows what heat does in it and nothing that is not
// there.
func TestHeatPartFollowsTheTreatment(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	h := r.bench.answers.below.heat
	for i, want := range []string{
		"back-at-boil in-a-minute largest-load centre ice-balance chill-cool freezing growth",
		"back-at-boil in-a-minute largest-load centre ice-balance chill-cool freezing growth",
		"centre layers ice-balance chill-cool freezing", // on a tray: no headspace to grow into
		"freezing growth",
	} {
		r.session.Select(i)
		equal(t, fmt.Sprintf("batch %d", i+1), strings.Join(heatFigures(h), " "), want)
		for j, tile := range h.pieces {
			one, _ := r.session.SelectedBatch()
			chart := []measure.Chart{one.Estimates.Kettle, one.Estimates.Bath, one.Estimates.Freezer}[j]
			equal(t, "chart "+chart.ID, tile.chart.Visible() && tile.content.Visible(), chart.ID != "")
		}
	}
}

// An unknown burner is said in words where the curve would stand, and the rules
// above it stay as they are.
func TestHeatPartWithoutABurner(t *testing.T) {
	c := demo(t)
	c.Batches[0].Burner = ""
	c.Kit.BathWater = measure.Volume{}
	r := open(t, look.Light, c, areaWide, areaHigh)
	h := r.bench.answers.below.heat
	equal(t, "kettle", h.pieces[0].figures[0].Figure().Text, "burner not known")
	equal(t, "kettle's curve", h.pieces[0].chart.ReadAt(1), "")
	equal(t, "bath", h.pieces[1].content.Visible(), true)
	equal(t, "minutes", r.bench.answers.minutes.Figure().Text, "3 min")
	equal(t, "ice", r.bench.answers.ice.Figure().Text, "3 lb")
}

// The curve follows what is typed.
func TestHeatPartFollowsTyping(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	chart := r.bench.answers.below.heat.pieces[0].chart
	before := chart.ReadAt(1)
	if !strings.Contains(before, "water") || !strings.Contains(before, "centre") {
		t.Fatalf("after a minute: %q", before)
	}
	r.typeInto(r.bench.inputs.prepared.Field, "1 lb")
	equal(t, "the same load of a pound", chart.ReadAt(1), before)
	r.typeInto(r.bench.inputs.prepared.Field, "1/2 lb")
	if after := chart.ReadAt(1); after == before {
		t.Errorf("half the load: still %q", after)
	}
}

// Estimates stand in a part of their own: none is among the rules' figures, and
// each there is one.
func TestHeatPartHoldsEstimatesOnly(t *testing.T) {
	c := demo(t)
	c.Batches = append(c.Batches, class.Batch{Name: "Sprouts", Treatment: "brussels-sprouts-large-water", Prepared: measure.New(1, measure.Pound), Stations: 1,
		Kettle: "Station kettle", Burner: "Plug-in burner", Pack: batch.Packing{Container: batch.Box, Size: batch.Pint, Mouth: "wide"}})
	r := open(t, look.Light, c, areaWide, areaHigh)
	for i := range c.Batches {
		r.session.Select(i)
		b := r.bench.answers.below
		for id, view := range b.heat.more.views {
			if f := view.Figure(); f.Basis != measure.Estimate {
				t.Errorf("batch %d: %s rests on %s", i, id, f.Basis)
			}
		}
		for id := range b.more.views {
			for _, estimate := range r.session.Worked().Batches[i].Estimates.Figures() {
				if estimate.ID == id {
					t.Errorf("batch %d: the estimate %s stands among the rules", i, id)
				}
			}
		}
	}
}
