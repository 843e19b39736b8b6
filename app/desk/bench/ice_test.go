package bench

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/desk/session"
)

// finds says whether a finding is shown.
func (r *room) finds(id string) bool {
	for _, f := range r.bench.answers.below.findings.List() {
		if f.ID == id {
			return true
		}
	}
	return false
}

// Ice that is typed is tried out, taken over on Enter and taken back by undo;
// the ice of the rule never moves.
func TestIceOfABatch(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	in, a := r.bench.inputs, r.bench.answers
	equal(t, "field", in.ice.Text(), "")
	equal(t, "less than the rule, before", r.finds("ice-under-rule"), false)
	r.typeInto(in.ice.Field, "2")
	equal(t, "less than the rule, while typing", r.finds("ice-under-rule"), true)
	equal(t, "ice in the class while typing", r.first().Ice.Given(), false)
	r.press(fyne.KeyReturn)
	equal(t, "ice in the class", r.first().Ice.String(), "2 lb")
	equal(t, "ice of the next batch", r.session.Class().Batches[1].Ice.Given(), false)
	equal(t, "ice by the rule", a.ice.Figure().Text, "3 lb")
	change, _ := r.session.CanUndo()
	equal(t, "name of the change", change, "Ice in it")
	r.typeInto(in.ice.Field, "much")
	r.press(fyne.KeyReturn)
	if says := in.ice.Problem(); !strings.Contains(says, "much") || !strings.Contains(says, "0 lb to 500 lb") {
		t.Errorf("“much” is answered with “%s”", says)
	}
	equal(t, "ice after a refusal", r.first().Ice.String(), "2 lb")
	r.press(fyne.KeyEscape)
	r.session.Undo()
	equal(t, "ice after undo", r.first().Ice.Given(), false)
	equal(t, "field after undo", in.ice.Text(), "")
	equal(t, "less than the rule, after undo", r.finds("ice-under-rule"), false)
}

// What if there is no ice at all? A trial says it beside the plan.
func TestTrialWithoutIce(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	r.bench.Try()
	r.typeInto(r.bench.inputs.ice.Field, "0 lb")
	r.press(fyne.KeyReturn)
	equal(t, "ice of the plan", r.session.Class().Batches[0].Ice.Given(), false)
	var said []session.Difference
	for _, d := range r.session.Compare() {
		if d.Entered {
			said = append(said, d)
		}
	}
	if len(said) != 1 || said[0].Plan != "by the rule" || said[0].Trial != "0 lb" {
		t.Errorf("entered: %+v", said)
	}
	r.bench.AdoptTrial()
	equal(t, "ice of the plan, adopted", r.first().Ice.String(), "0 lb")
}

// The piece cut through stands where a piece is estimated, in water and in
// steam, and nowhere else.
func TestPieceCutThrough(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	tile := r.bench.answers.below.heat.through
	for i, want := range []bool{true, true, true, false} {
		r.session.Select(i)
		equal(t, "cut through", tile.content.Visible(), want)
	}
	r.session.Select(2)
	looktest.Settle(r.window, areaWide, areaHigh)
	if says := tile.says.Text(); !strings.Contains(says, "round piece") {
		t.Errorf("taken as %q", says)
	}
}

// Each curve stands under its title.
func TestCurvesHaveTitles(t *testing.T) {
	r := open(t, look.Light, demo(t), areaWide, areaHigh)
	one, _ := r.session.SelectedBatch()
	for i, tile := range r.bench.answers.below.heat.pieces {
		equal(t, "title", tile.title.Text(), one.Estimates.Charts()[i].Title)
		equal(t, "shown", tile.title.Visible(), true)
	}
}
