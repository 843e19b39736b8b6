package crops

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/bench"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// record is everything that belongs to one treatment.
type record struct {
	crops   *Crops
	content *fyne.Container

	crop, what    *look.Text
	minutes       *look.FigureView
	clock, source *look.Text
	caution       *look.Text
	use, change   *widget.Button
	told          *look.Text // what "Use in a batch" did
	work          *widget.Button
	parts         *fyne.Container // facts, changes, other values, preparation, yields
	scroll        *container.Scroll
	shown         string
	shownTable    *reference.Table
	shownUnits    measure.System
}

func newRecord(c *Crops, openBatch func()) *record {
	r := &record{crops: c}
	r.crop = look.Heading("")
	r.crop.Wrapped()
	r.what = look.Body("")
	r.minutes = look.NewFigure(measure.Figure{})
	r.minutes.SourceName = c.session.SourceName
	r.clock = look.NewText("", look.SizeText, look.Ink, fyne.TextStyle{Bold: true}).Wrapped()
	r.source = look.Small("")
	r.caution = look.NewText("", look.SizeSmall, look.Ink, fyne.TextStyle{}).Wrapped()
	r.use = widget.NewButton(look.Say("Use in a batch"), c.use)
	r.use.Importance = widget.HighImportance
	r.change = widget.NewButton(look.Say("Change a value…"), c.openForm)
	r.told = look.Small("")
	r.work = widget.NewButton(look.Say("Work it through"), openBatch)
	r.parts = look.Column(16)

	head := look.Column(4, r.crop, r.what)
	buttons := look.Column(6, look.Columns(8, []float32{1, 1}, r.use, r.change), r.told, container.NewHBox(r.work))
	body := look.Column(14, look.Column(3, r.minutes, r.clock, r.source), look.Marked(look.IconCaution(), r.caution), r.parts)
	r.scroll = look.VScroll(14, 10, body)
	top := look.Column(0, look.Inset(14, 10, look.Column(10, head, buttons)), look.Hairline())
	r.content = container.NewBorder(top, nil, nil, nil, r.scroll)
	r.quiet()
	return r
}

func (r *record) quiet() { r.say("") }

// say puts a sentence under the buttons.
func (r *record) say(text string) {
	r.told.SetText(text)
	look.Show(r.told, text != "")
	r.work.Hide()
	r.content.Refresh()
}

// added says that a batch was added and offers to open it.
func (r *record) added(text string) {
	r.say(text)
	r.work.Show()
	r.content.Refresh()
}

// show shows the record of a treatment.
func (r *record) show(id string) {
	table := r.crops.session.Table()
	units := r.crops.session.Class().Units
	if id == r.shown && table == r.shownTable && units == r.shownUnits {
		return
	}
	t, ok := table.Treatment(id)
	look.Show(r.content, ok && !r.crops.form.content.Visible() && !r.crops.choosing.content.Visible())
	if !ok {
		return
	}
	if id != r.shown || table != r.shownTable { // what was said is about what was
		r.quiet()
	}
	if id != r.shown {
		r.scroll.ScrollToTop()
	}
	r.shown, r.shownTable, r.shownUnits = id, table, units
	crop, _ := table.Crop(t.Crop)
	r.crop.SetText(crop.Name)
	r.what.SetText(treatmentWords(t))
	r.minutes.SetFigure(published(t))
	_, minutes := t.Changed[reference.FieldMinutes]
	_, words := t.Changed[reference.FieldWords]
	r.minutes.SetEdited(minutes || words)
	r.clock.SetText(look.Say("The clock starts %s.", look.Say(t.ClockStart.Says())))
	if t.ClockStart == reference.NoClock {
		r.clock.SetText(look.Say("No clock: go by the words."))
	}
	source := sourceText(table, t.Source, t.Standing)
	if t.SourceClock != "" && t.SourceClock != t.ClockStart {
		source += "\n" + look.Say("This page starts the clock %s; the table starts it later, which never shortens the minutes.", look.Say(t.SourceClock.Says()))
	}
	r.source.SetText(source)
	r.caution.SetText(bench.CautionLine(table, units, string(t.Method), "", t.Crop))
	r.parts.Objects = parts(r, units, crop, t)
	r.parts.Refresh()
	r.content.Refresh()
}

// published are the minutes or words of the table as a figure.
func published(t reference.Treatment) measure.Figure {
	f := measure.Figure{
		ID: "published-minutes", Label: look.Say("As published, for low altitude"), Basis: measure.Tabled, Source: t.Source,
		Value: t.Minutes, High: t.MinutesHigh, Unit: "min", Words: t.Words,
	}
	if t.Minutes == 0 {
		f.Label, f.Text, f.Working = look.Say("Treatment"), t.Words, look.Say("no minutes are published")
		return f
	}
	f.Text = measure.MinutesRangeBy(look.Voice(), t.Minutes, t.MinutesHigh)
	f.Also = t.Words
	f.Working = look.Say("%s as published; a batch adds the step for altitude", f.Text)
	if _, ok := t.Changed[reference.FieldMinutes]; ok {
		f.Label = look.Say("Entered here, for low altitude")
		f.Working = look.Say("%s entered here instead of %s; a batch adds the step for altitude", f.Text, fieldShipped(t, reference.FieldMinutes))
	}
	return f
}

// sourceText names a source in full: title, publisher, edition, address and
// how the value came into the table.
func sourceText(table *reference.Table, id string, standing reference.Standing) string {
	if id == reference.EnteredHereSource {
		return look.Say("Source: entered here, not published. The value as shipped stands under “Also published”.")
	}
	text := look.Say("Source: %s", sourceName(table, id))
	if s, ok := table.Source(id); ok && s.Address != "" {
		text += "\n" + s.Address
	}
	return text + "\n" + look.Sentence(standingWords(standing)) + "."
}

// sourceName is publisher, title and edition.
func sourceName(table *reference.Table, id string) string {
	s, ok := table.Source(id)
	if !ok {
		return id
	}
	return joined(", ", s.Publisher, s.Title, s.Edition)
}
