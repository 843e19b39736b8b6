package crops

import (
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/reference"
)

// edit fills in the form and saves it.
func (r *room) edit(field, value, why, who string) {
	test.Tap(r.crops.record.change)
	r.crops.form.field.SetSelected(look.Say(fieldNames[field]))
	r.crops.form.value.SetText(value)
	r.crops.form.why.SetText(why)
	r.crops.form.who.SetText(who)
	r.crops.form.save()
}

func TestChangeAValueAndTakeItBack(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	r.crops.choose(beans)
	row := r.crops.grid.at()
	before, _ := r.session.Table().Treatment(beans)
	r.edit(reference.FieldMinutes, "4", "our own bulletin", "A. Lead")
	if r.crops.form.content.Visible() {
		t.Fatalf("the form stands: %s", r.crops.form.problem.Text())
	}
	after, _ := r.session.Table().Treatment(beans)
	equal(t, "minutes", after.Minutes, 4)
	equal(t, "name of who changed it", after.Changed[reference.FieldMinutes].Who, "A. Lead")
	equal(t, "day of the change", after.Changed[reference.FieldMinutes].When.Format("2006-01-02"), "2027-06-01")
	minutes := r.cellOf(row, r.column("minutes"))
	equal(t, "cell", minutes.first, "4 min")
	equal(t, "beside it", minutes.second, "shipped 3 min")
	equal(t, "its ink", minutes.ink, look.Edited)
	if !r.cellOf(row, 0).marked || r.cellOf(row+1, 0).marked {
		t.Error("the sign of a change stands in the wrong row")
	}
	markup := test.RenderObjectToMarkup(r.crops.record.content)
	for _, text := range []string{"Entered here", "4 min instead of 3 min", "our own bulletin", "Take back"} {
		if !strings.Contains(strings.Join(strings.Fields(markup), " "), text) {
			t.Errorf("the record does not say %q", text)
		}
	}
	if b, _ := r.session.SelectedBatch(); b.Minutes.Text != "4 min" {
		t.Errorf("the batch has %s", b.Minutes.Text)
	}
	r.crops.changed.SetChecked(true)
	equal(t, "rows changed here", len(r.shown()), 1)
	r.crops.changed.SetChecked(false)

	test.Tap(r.crops.record.change)
	if !r.crops.form.back.Visible() || !strings.Contains(r.crops.form.shipped.Text(), "As shipped: 3 min") {
		t.Errorf("the form says %q", r.crops.form.shipped.Text())
	}
	test.Tap(r.crops.form.back)
	back, _ := r.session.Table().Treatment(beans)
	equal(t, "minutes taken back", back.Minutes, before.Minutes)
	equal(t, "source taken back", back.Source, before.Source)
	equal(t, "changes left", len(back.Changed), 0)
	if r.cellOf(row, 0).marked {
		t.Error("the sign of a change stands after it was taken back")
	}
}

func TestRefusedChangesAreSaid(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	r.crops.choose(beans)
	for _, one := range []struct{ field, value, why, who, says string }{
		{reference.FieldMinutes, "2", "quicker", "A", "never shortened"},
		{reference.FieldMinutes, "lots", "why", "A", "allowed is"},
		{reference.FieldMinutes, "4", "", "A", "needs a name and a reason"},
		{reference.FieldMinutes, "4", "why", "", "needs a name and a reason"},
		{reference.FieldMinutes, "3", "why", "A", "is the shipped value"},
		{reference.FieldHeadspace, "9", "why", "A", "1/4 to 3"},
	} {
		r.edit(one.field, one.value, one.why, one.who)
		f := r.crops.form
		if !f.content.Visible() || !strings.Contains(f.problem.Text(), one.says) {
			t.Errorf("%q is answered with %q", one.value, f.problem.Text())
		}
		equal(t, "what was typed", f.value.Text, one.value)
		f.value.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
		if f.content.Visible() {
			t.Error("Escape does not leave the form")
		}
	}
	if x, _ := r.session.Table().Treatment(beans); len(x.Changed) > 0 {
		t.Error("a refused change was kept")
	}
}

// TestEveryFieldOpensInTheForm walks through all fields of some treatments.
func TestEveryFieldOpensInTheForm(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	for _, id := range []string{beans, "pumpkin-mashed-cook", "broccoli-flowerets-steam"} {
		r.crops.choose(id)
		test.Tap(r.crops.record.change)
		for _, name := range r.crops.form.field.Options {
			r.crops.form.field.SetSelected(name)
			if look.Say(fieldNames[r.crops.form.chosen()]) != name || r.crops.form.shipped.Text() == "" {
				t.Errorf("%s: %s shows nothing", id, name)
			}
		}
	}
	for _, field := range reference.EditFields {
		if fieldNames[field] == "" {
			t.Errorf("the field %s has no name", field)
		}
	}
}

// TestUnfinishedChangeIsKept asks that a click on another row loses nothing
// that was typed into the form, and says what to do.
func TestUnfinishedChangeIsKept(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	r.crops.choose(beans)
	f := r.crops.form
	test.Tap(r.crops.record.change)
	if r.crops.Unfinished() {
		t.Error("a form in which nothing is typed is unfinished")
	}
	for _, e := range []*formEntry{f.value, f.why, f.who} {
		test.Type(e, "9")
		row := r.crops.grid.at()
		r.crops.grid.chooseRow(row + 1)
		if !r.crops.Unfinished() || !f.content.Visible() || r.crops.record.content.Visible() {
			t.Fatal("another row gives the change up")
		}
		equal(t, "what it says", f.problem.Text(), unfinished)
		equal(t, "row that is marked", r.crops.grid.at(), row)
		e.TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
		equal(t, "unfinished after Escape", r.crops.Unfinished(), false)
		test.Tap(r.crops.record.change)
	}
	r.crops.grid.chooseRow(r.crops.grid.at() + 1) // nothing typed: no question
	if f.content.Visible() || r.crops.record.shown == beans {
		t.Error("an untouched form holds the row")
	}
}
