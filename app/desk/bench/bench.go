// Package bench is the batch area of the window: one batch of the class, what
// goes into it at the left, and everything worked out from it beside, with
// drawings to scale. Whatever is typed shows at once; it becomes part of the
// class on Enter and on leaving the field.
package bench

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/layout"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/session"
)

// Bench is the batch area.
type Bench struct {
	// Content is what the window shows.
	Content fyne.CanvasObject

	session  *session.Session
	window   fyne.Window
	follower *look.Follower

	inputs  *inputs
	answers *answers
	strip   *strip
	whole   *fyne.Container
	frame   *edge             // round everything, while a trial is on view
	work    fyne.CanvasObject // inputs and answers
	empty   fyne.CanvasObject // instead, where the class has no batch
}

// New makes the area. openCrops leads to the crop table, where batches are
// added.
func New(s *session.Session, window fyne.Window, openCrops func()) *Bench {
	b := &Bench{session: s, window: window}
	b.strip = newStrip(b)
	b.inputs = newInputs(b)
	b.answers = newAnswers(s.SourceName)
	form := look.VScroll(14, 12, look.Wide(inputsWide, b.inputs.content))
	left := container.NewBorder(nil, nil, nil, upright(), form)
	right := look.Scroll(14, 12, b.answers.content)
	b.work = container.New(layout.NewBorderLayout(nil, nil, left, nil), left, right) // Tab comes to the form first
	b.empty = emptyState(openCrops)
	b.strip.whole = look.Inset(14, 8, b.strip.content)
	top := container.New(shut{}, b.strip.whole)
	b.whole, b.frame = trialFrame(look.Frame(top, nil, nil, nil, container.NewStack(b.work, b.empty)))
	b.Content = b.whole
	b.follower = look.Follow(b.Content, b.show)
	s.Subscribe(b.changed)
	b.bind()
	b.show()
	return b
}

// Shown is called when the area is shown again.
func (b *Bench) Shown() { b.follower.Shown() }

// changed follows the session. The fields follow their batch from change to
// change, also while the area is hidden; the rest waits until it is seen.
func (b *Bench) changed() {
	if b.bind() {
		b.follower.Changed()
	}
}

// bind lets the fields stand for the batch that is being looked at; false where
// nothing is to be shown before that is done.
func (b *Bench) bind() bool {
	return b.inputs.bind(b.session.View().Class.Batches, b.selected(), onView{b.session.Started(), b.session.TryingIndex()})
}

// inputsWide is the width of the column of fields, in units at normal size.
const inputsWide = 250

func emptyState(openCrops func()) fyne.CanvasObject {
	open := look.NewButton(look.Say("Open the crop table"), openCrops)
	open.Importance = widget.HighImportance
	text := look.Column(12,
		look.Heading(look.Say("No batch to work through yet")),
		look.Body(look.Say("A batch is what one station works through: one vegetable, one treatment, one weight. Choose a treatment in the crop table and use it in a batch.")),
		container.NewHBox(open))
	return container.NewCenter(look.Wide(460, text))
}

// show brings the area up to date with the session.
func (b *Bench) show() {
	_, trying := b.session.Trying()
	moved := b.strip.show()
	look.Show(b.frame, trying)
	if moved {
		look.Rearrange(b.whole)
	}
	now, ok := b.now()
	if !ok {
		b.work.Hide()
		b.empty.Show()
		return
	}
	b.empty.Hide()
	b.work.Show()
	b.inputs.show(now)
	b.answers.show(now)
}

// selected is the index of the batch being looked at, in what is on view.
func (b *Bench) selected() int {
	if t, ok := b.session.Trying(); ok {
		return t.Batch
	}
	return b.session.Selected()
}

// now is the batch being looked at as it stands in what is on view.
func (b *Bench) now() (shown, bool) {
	one, ok := b.session.ViewedBatch()
	_, trying := b.session.Trying()
	return shown{b.session.View().Class, b.session.Table(), one, trying, b.session.Compare()}, ok
}

// tryOut shows what a change would make of the batch, without making it.
func (b *Bench) tryOut(change func(*class.Class)) {
	if tried, ok := b.session.TryView(change); ok {
		_, trying := b.session.Trying()
		b.answers.show(shown{tried.Class, b.session.Table(), tried.Batch, trying, tried.Differences})
	}
}

// Try starts a trial, and ReturnToPlan, AdoptTrial and DropTrial end one; each
// hands over first what is being typed.
func (b *Bench) Try()          { b.strip.start() }
func (b *Bench) ReturnToPlan() { b.strip.back() }
func (b *Bench) AdoptTrial()   { b.strip.adopt() }
func (b *Bench) DropTrial()    { b.strip.drop() }

// settle shows the class as it stands again, after something was tried out.
func (b *Bench) settle() {
	if now, ok := b.now(); ok {
		b.answers.show(now)
	}
}
