package crops

import (
	"errors"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/reference"
)

// form changes one value of a treatment. It stands in place of the record.
type form struct {
	crops   *Crops
	content *fyne.Container

	treatment reference.Treatment
	name      *look.Text
	field     *widget.Select
	shipped   *look.Text
	value     *formEntry
	why, who  *formEntry
	signed    string // who, as the form opened
	problem   *look.Text
	back      *widget.Button // take the edit of this field back
}

func newForm(c *Crops) *form {
	f := &form{crops: c, name: look.Body(""), shipped: look.Body("")}
	f.field = widget.NewSelect(nil, func(string) { f.showField() })
	f.field.PlaceHolder = " "
	f.value, f.why, f.who = f.entry(), f.entry(), f.entry()
	f.problem = look.NewText("", look.SizeText, look.Stop, fyne.TextStyle{}).Wrapped()
	save := widget.NewButton("Change it here", f.save)
	save.Importance = widget.HighImportance
	cancel := widget.NewButton("Cancel", c.closeForm)
	f.back = widget.NewButton("Take the change back", f.takeBack)
	body := look.Column(12, look.Column(3, look.Heading("Change a value"), f.name),
		look.Small("The shipped table is never overwritten. A change lies over it, is marked wherever it shows, and can be taken back."),
		look.Labelled("Which value", look.Boxed(f.field)), f.shipped,
		look.Labelled("New value", f.value),
		look.Labelled("Why: the reason, or your agency’s bulletin", f.why),
		look.Labelled("Who changes it", f.who),
		f.problem,
		container.NewHBox(save, cancel), container.NewHBox(f.back))
	f.content = container.NewStack(container.NewVScroll(look.Inset(14, 10, body)))
	return f
}

// entry is an entry of the form: Enter saves, Escape leaves.
func (f *form) entry() *formEntry {
	e := &formEntry{save: f.save, leave: f.crops.closeForm}
	e.ExtendBaseWidget(e)
	return e
}

// start opens the form for a treatment.
func (f *form) start(t reference.Treatment) {
	f.treatment = t
	f.name.SetText(f.crops.session.TreatmentName(t))
	names := changeable(t)
	f.field.SetOptions(names)
	f.field.SetSelected(names[0])
	f.why.SetText("")
	if f.who.Text == "" {
		f.who.SetText(f.crops.session.Class().People.Educator)
	}
	f.signed = f.who.Text
	f.showField()
}

// typed says whether anything was typed since the form opened.
func (f *form) typed() bool {
	now := reference.FieldText(f.treatment, fieldNamed(f.field.Selected))
	return f.value.Text != now || f.why.Text != "" || f.who.Text != f.signed
}

// showField shows the value of the chosen field, and what was shipped.
func (f *form) showField() {
	field := fieldNamed(f.field.Selected)
	now, shipped := reference.FieldText(f.treatment, field), reference.ShippedText(f.treatment, field)
	_, changed := f.treatment.Changed[field]
	text := "As shipped: " + fieldWords(field, shipped)
	if changed {
		text = "Now: " + fieldWords(field, now) + "\n" + text
	}
	f.shipped.SetText(text)
	f.value.SetText(now)
	look.Show(f.back, changed)
	f.complain("")
}

func (f *form) complain(text string) {
	f.problem.SetText(text)
	look.Show(f.problem, text != "")
	f.content.Refresh()
}

func (f *form) save() {
	field := fieldNamed(f.field.Selected)
	e := f.crops.session.Shipped().NewEdit(f.treatment.ID, field, f.value.Text, strings.TrimSpace(f.why.Text), strings.TrimSpace(f.who.Text), f.crops.now())
	if err := f.crops.session.ApplyEdit(e); err != nil {
		f.complain(plain(err))
		return
	}
	f.crops.closeForm()
	f.crops.record.say("Changed here: " + f.field.Selected + ".")
}

func (f *form) takeBack() {
	if err := f.crops.session.TakeBack(f.treatment.ID, fieldNamed(f.field.Selected)); err != nil {
		f.complain(plain(err))
		return
	}
	f.crops.closeForm()
	f.crops.record.say("As shipped again: " + f.field.Selected + ".")
}

// plain is what an error says to a person.
func plain(err error) string {
	var refused *reference.EditError
	if errors.As(err, &refused) {
		return refused.Says
	}
	return look.Sentence(err.Error())
}

// formEntry is an entry with keys for the whole form.
type formEntry struct {
	widget.Entry
	save, leave func()
}

// TypedKey is for the toolkit.
func (e *formEntry) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		e.save()
	case fyne.KeyEscape:
		e.leave()
	default:
		e.Entry.TypedKey(key)
	}
}
