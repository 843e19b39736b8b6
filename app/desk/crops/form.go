package crops

import (
	"errors"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/reference"
)

// form changes one value of a treatment. It stands in place of the record, or
// over the cell of the table that holds the value.
type form struct {
	crops   *Crops
	content *fyne.Container
	close   func()

	treatment reference.Treatment
	name      *look.Text
	fields    []string       // that the treatment has
	field     *widget.Select // which of them; chosen by the cell where the form stands over one
	shipped   *look.Text
	value     *formEntry
	why, who  *formEntry
	signed    string // who, as the form opened
	started   int    // the class that it was signed for last
	at        string // id of the column whose cell the form stands over
	problem   *look.Text
	back      *widget.Button // take the edit of this field back
}

func newForm(c *Crops, closeIt func()) *form {
	f := &form{crops: c, close: closeIt, name: look.Body(""), shipped: look.Body("")}
	f.field = widget.NewSelect(nil, func(string) { f.showField() })
	f.field.PlaceHolder = " "
	f.value, f.why, f.who = f.entry(f.valueDone), f.entry(f.save), f.entry(f.save)
	f.problem = look.NewText("", look.SizeText, look.Stop, fyne.TextStyle{}).Wrapped()
	f.back = widget.NewButton(look.Say("Take the change back"), f.takeBack)
	return f
}

// newSideForm is a form in place of the record, for any value.
func newSideForm(c *Crops) *form {
	f := newForm(c, c.closeForm)
	body := look.Column(12, look.Column(3, look.Heading(look.Say("Change a value")), f.name),
		look.Small(look.Say("The shipped table is never overwritten. A change lies over it, is marked wherever it shows, and can be taken back.")),
		look.Labelled(look.Say("Which value"), look.Boxed(f.field)), f.shipped,
		look.Labelled(look.Say("New value"), f.value),
		look.Labelled(look.Say("Why: the reason, or your agency’s bulletin"), f.why), look.Labelled(look.Say("Who changes it"), f.who),
		f.problem, f.buttons(look.Say("Change it here"), look.Say("Cancel")), container.NewHBox(f.back))
	f.content = container.NewStack(container.NewVScroll(look.Inset(14, 10, body)))
	return f
}

// buttons make the change and give it up.
func (f *form) buttons(make, leave string) fyne.CanvasObject {
	save := widget.NewButton(make, f.save)
	save.Importance = widget.HighImportance
	return container.NewHBox(save, widget.NewButton(leave, f.close))
}

// entry is an entry of the form: Escape leaves it.
func (f *form) entry(enter func()) *formEntry {
	e := &formEntry{enter: enter, leave: f.close, typing: f.typed}
	e.ExtendBaseWidget(e)
	return e
}

// start opens the form for a treatment and one of its fields; "" is the first.
func (f *form) start(t reference.Treatment, field string) {
	f.treatment = t
	f.name.SetText(f.crops.session.TreatmentName(t))
	f.fields = changeable(t)
	var names []string
	for _, field := range f.fields {
		names = append(names, look.Say(fieldNames[field]))
	}
	f.field.SetOptions(names)
	f.field.SetSelectedIndex(max(0, slices.Index(f.fields, field)))
	f.why.SetText("")
	if now := f.crops.session.Started(); f.who.Text == "" || f.started != now {
		f.started = now
		f.who.SetText(f.crops.session.Class().People.Educator)
	}
	f.signed = f.who.Text
	f.showField()
}

// chosen is the field that the form is about.
func (f *form) chosen() string { return f.fields[max(0, f.field.SelectedIndex())] }

// typed says whether anything was typed since the form opened.
func (f *form) typed() bool {
	now := reference.FieldText(f.treatment, f.chosen())
	return f.value.Text != now || f.why.Text != "" || f.who.Text != f.signed
}

// showField shows the value of the chosen field, and what was shipped.
func (f *form) showField() {
	field := f.chosen()
	_, changed := f.treatment.Changed[field]
	text := look.Say("As shipped: %s", fieldShipped(f.treatment, field))
	if changed {
		text = look.Say("Now: %s", fieldNow(f.treatment, field)) + "\n" + text
	}
	f.shipped.SetText(text)
	f.value.SetText(reference.FieldText(f.treatment, field))
	look.Show(f.back, changed)
	f.complain("")
}

func (f *form) complain(text string) {
	f.problem.SetText(text)
	look.Show(f.problem, text != "")
	f.content.Refresh()
}

// edit is the change as it stands in the entries.
func (f *form) edit() reference.Edit {
	return f.crops.session.Table().NewEdit(f.treatment.ID, f.chosen(), f.value.Text,
		strings.TrimSpace(f.why.Text), strings.TrimSpace(f.who.Text), f.crops.now())
}

// valueDone is Enter after the value: one that cannot be used is answered at
// once, and where reason or name are missing they are next.
func (f *form) valueDone() {
	e := f.edit()
	next := f.why
	if e.Why != "" {
		next = f.who
	}
	if e.Why != "" && e.Who != "" {
		f.save()
		return
	}
	e.Why, e.Who = "to be said", "to be said" // only the value is asked about
	if _, err := f.crops.session.Shipped().With([]reference.Edit{e}); err != nil {
		f.complain(plain(err))
		f.value.TypedShortcut(&fyne.ShortcutSelectAll{}) // what is typed next takes its place
		return
	}
	f.complain("")
	f.crops.focus(next)
}

func (f *form) save() {
	if err := f.crops.session.ApplyEdit(f.edit()); err != nil {
		f.complain(plain(err))
		return
	}
	f.close()
	f.crops.record.say(look.Say("Changed here: %s.", f.field.Selected))
}

func (f *form) takeBack() {
	if err := f.crops.session.TakeBack(f.treatment.ID, f.chosen()); err != nil {
		f.complain(plain(err))
		return
	}
	f.close()
	f.crops.record.say(look.Say("As shipped again: %s.", f.field.Selected))
}

// plain is what an error says to a person.
func plain(err error) string {
	var refused *reference.EditError
	if errors.As(err, &refused) {
		return refused.Say(look.Voice())
	}
	return look.Sentence(look.Voice().Error(err))
}

// formEntry is an entry with keys for the whole form.
type formEntry struct {
	widget.Entry
	enter, leave func()
	typing       func() bool // in any entry of the form
}

// TypedKey is for the toolkit.
func (e *formEntry) TypedKey(key *fyne.KeyEvent) {
	switch key.Name {
	case fyne.KeyReturn, fyne.KeyEnter:
		e.enter()
	case fyne.KeyEscape:
		e.leave()
	default:
		e.Entry.TypedKey(key)
	}
}

// UndoTyping takes back the last of what was typed; false where nothing is typed
// in the form.
func (e *formEntry) UndoTyping() bool { return e.typed(e.Undo) }

// RedoTyping brings back what UndoTyping took; false where there is nothing to
// bring back and nothing is typed in the form.
func (e *formEntry) RedoTyping() bool { return e.typed(e.Redo) }

// typed goes a step back or forward and says whether the form has the step: the
// class and the table wait until nothing is being typed.
func (e *formEntry) typed(step func()) bool {
	before := e.Text
	step()
	return e.Text != before || e.typing()
}
