package bench

import (
	"image/color"
	"slices"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/session"
)

// strip stands over the batch as soon as there is a trial: the plan and the
// trials to choose from, and what can be done with the one on view.
type strip struct {
	bench   *Bench
	content *fyne.Container
	whole   *fyne.Container // with white round it; hidden without trials

	views  *fyne.Container // a button for the plan and for each trial
	shown  []string        // their names, the chosen one first
	notice *fyne.Container // of the trial on view: what it is, its name, adopt, drop
	name   *look.Field
}

func newStrip(b *Bench) *strip {
	s := &strip{bench: b, views: container.NewHBox()}
	s.name = look.NewField("", "", func(text string) error { return b.session.RenameTrial(b.session.TryingIndex(), text) })
	adopt := look.NewButton(look.Say("Adopt into the plan"), s.adopt)
	drop := look.NewButton(look.Say("Drop it"), s.drop)
	back := look.NewButton(look.Say("Return to the plan"), s.back)
	back.Importance = widget.HighImportance
	says := look.NewText(look.Say("This is a trial. Nothing here changes the class."), look.SizeText, look.Edited, fyne.TextStyle{Bold: true}).Wrapped()
	s.notice = container.NewBorder(nil, nil, nil, look.AtTop(container.NewHBox(look.Wide(150, s.name), adopt, drop, back)), says)
	s.content = look.Column(6, s.views, s.notice)
	return s
}

// leave does something with the trials after what is being typed was handed
// over to where it was typed.
func (s *strip) leave(do func()) {
	if s.bench.inputs.takeAll() {
		do()
	}
}

func (s *strip) start() {
	s.leave(func() {
		if err := s.bench.session.StartTrial(""); err != nil {
			s.bench.inputs.refuse(err)
		}
	})
}

func (s *strip) back() { s.leave(s.bench.session.ReturnToPlan) }

func (s *strip) adopt() {
	s.leave(func() {
		if err := s.bench.session.AdoptTrial(s.bench.session.TryingIndex()); err != nil {
			s.bench.inputs.refuse(err)
		}
	})
}

func (s *strip) drop() { s.leave(func() { s.bench.session.DropTrial(s.bench.session.TryingIndex()) }) }

// show brings the strip up to date; true where it takes another height.
func (s *strip) show() bool {
	before := s.whole.Visible()
	noticed := s.notice.Visible()
	trials, at := s.bench.session.Trials(), s.bench.session.TryingIndex()
	look.Show(s.whole, len(trials) > 0)
	look.Show(s.notice, at >= 0)
	names := []string{look.Say("The plan")}
	for _, t := range trials {
		names = append(names, t.Name)
	}
	if at >= 0 {
		s.name.SetValue(trials[at].Name)
	}
	if shown := append([]string{names[at+1]}, names...); !slices.Equal(shown, s.shown) {
		s.shown = shown
		s.views.Objects = nil
		for i, name := range names {
			button := look.NewButton(name, func() { s.leave(func() { s.view(i - 1) }) })
			if i == at+1 {
				button.Importance = widget.HighImportance
			}
			s.views.Add(button)
		}
	}
	return before != s.whole.Visible() || noticed != s.notice.Visible()
}

// view puts a trial on view, or the plan for −1.
func (s *strip) view(i int) {
	if i < 0 {
		s.bench.session.ReturnToPlan()
	} else {
		s.bench.session.ViewTrial(i)
	}
}

// trialFrame marks everything in it as a trial.
func trialFrame(content fyne.CanvasObject) (whole *fyne.Container, line *edge) {
	line = &edge{rectangle: canvas.NewRectangle(color.Transparent)}
	line.ExtendBaseWidget(line)
	return container.NewStack(content, line), line
}

// edge is a line round its whole area that lets everything through to what lies
// under it.
type edge struct {
	widget.BaseWidget
	rectangle *canvas.Rectangle
}

// CreateRenderer is for the toolkit.
func (e *edge) CreateRenderer() fyne.WidgetRenderer {
	paint := func() {
		e.rectangle.StrokeColor, e.rectangle.StrokeWidth = look.Color(look.Edited), 4
	}
	paint()
	return look.Painted(e.rectangle, paint)
}

// beside compares the trial on view with the plan: what was changed, and what
// follows from it.
type beside struct {
	content *fyne.Container
	rows    *fyne.Container
	shown   []session.Difference
}

func newBeside() *beside {
	b := &beside{rows: look.Column(5)}
	b.content = look.Section(look.Say("Beside the plan"), b.rows)
	return b
}

// followsShown is how many of the figures that follow are listed; the rest is
// counted.
const followsShown = 10

func (b *beside) show(differences []session.Difference, trying bool) {
	look.Show(b.content, trying)
	if !trying || len(b.rows.Objects) > 0 && slices.Equal(differences, b.shown) {
		return
	}
	b.shown = slices.Clone(differences)
	b.rows.Objects = nil
	if len(differences) == 0 {
		b.rows.Add(look.Small(look.Say("Nothing differs from the plan yet. Change something at the left.")))
	} else {
		b.fill(differences)
	}
	b.rows.Refresh()
}

func (b *beside) fill(differences []session.Difference) {
	b.rows.Add(differenceRow(look.InkSoft, look.SizeSmall, false, "", look.Say("Plan"), look.Say("Trial"), ""))
	follows := 0
	for i, d := range differences {
		if !d.Entered {
			if follows++; follows > followsShown {
				continue
			}
			if i > 0 && differences[i-1].Entered {
				b.rows.Add(look.Hairline())
			}
		}
		b.rows.Add(differenceRow(look.Ink, look.SizeText, d.Entered, d.Label, d.Plan, d.Trial, d.By))
	}
	switch rest := follows - followsShown; {
	case rest == 1:
		b.rows.Add(look.Small(look.Say("1 more figure differs.")))
	case rest > 1:
		b.rows.Add(look.Small(look.Say("%d more figures differ.", rest)))
	}
}

func differenceRow(ink fyne.ThemeColorName, size fyne.ThemeSizeName, strong bool, label, plan, trial, by string) fyne.CanvasObject {
	text := func(s string, ink fyne.ThemeColorName, bold bool) fyne.CanvasObject {
		return look.NewText(s, size, ink, fyne.TextStyle{Bold: bold}).Wrapped()
	}
	return look.Columns(12, []float32{1.5, 1.1, 1.1, 1.1}, text(label, look.InkSoft, false), text(plan, ink, false), text(trial, ink, strong), text(by, look.InkSoft, false))
}
