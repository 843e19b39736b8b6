package planning

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/bench"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// outline is the list of pages at the left: the settings of the class, then
// its batches.
type outline struct {
	area    *Area
	fixed   []*look.Line
	batches *fyne.Container
	lines   []*look.Line
	none    *look.Text
	tools   []*look.Button // that need a batch
	box     fyne.CanvasObject
}

func newOutline(a *Area) *outline {
	o := &outline{area: a, batches: look.Column(0), none: look.Small(look.Say("No batches yet. Add one to see what it takes."))}
	settings := look.Column(0)
	for _, p := range a.pages {
		if p.id() == "batch" {
			continue
		}
		line := look.NewLine(func() { a.OpenPage(p.id()) })
		o.fixed = append(o.fixed, line)
		settings.Add(line)
	}
	add := look.NewButtonWithIcon(look.Say("Add batch"), look.IconAdd(), a.AddBatch)
	o.tools = []*look.Button{
		tool(look.IconUp(), func() { a.committed(func() { a.must(a.session.MoveBatch(a.session.Selected(), -1)) }) }),
		tool(look.IconDown(), func() { a.committed(func() { a.must(a.session.MoveBatch(a.session.Selected(), 1)) }) }),
		tool(look.IconCopy(), func() { a.committed(func() { a.must(a.session.DuplicateBatch(a.session.Selected())) }) }),
		tool(look.IconRemove(), func() { a.committed(func() { a.must(a.session.RemoveBatch(a.session.Selected())) }) }),
	}
	tools := container.NewHBox()
	for _, t := range o.tools {
		tools.Add(t)
	}
	heading := look.Inset(20, 6, look.NewText(look.Say("Batches"), look.SizeSmall, look.InkSoft, fyne.TextStyle{Bold: true}))
	list := look.VScroll(0, 6, look.Column(6, settings, look.Column(0, look.Inset(20, 2, look.Hairline()), heading, o.batches, look.Inset(20, 0, o.none))))
	foot := look.Inset(16, 10, look.Column(6, add, tools))
	o.box = look.Frame(nil, foot, nil, look.Upright(), list)
	return o
}

func tool(icon fyne.Resource, do func()) *look.Button {
	b := look.NewButtonWithIcon("", icon, do)
	b.Importance = widget.LowImportance
	return b
}

func (o *outline) object() fyne.CanvasObject { return o.box }

func (o *outline) show(c class.Class) {
	details := []string{
		orMissing(c.Date, look.Say("no date yet")), orMissing(c.Place.Name, look.Say("no place yet")),
		fmt.Sprintf("%s, %s", counted(c.People.Headcount, words.Key("person"), words.Key("people")), stations(int(o.area.session.Worked().Totals.Stations.Value))),
		fmt.Sprintf("%s, %s", counted(c.Kit.KettleCount(), words.Key("kettle"), words.Key("kettles")), counted(c.Kit.BurnerCount(), words.Key("burner"), words.Key("burners"))),
	}
	for i, name := range []string{look.Say("Class"), look.Say("Place"), look.Say("People"), look.Say("Kit")} {
		o.fixed[i].SetText(name, details[i])
	}
	for len(o.lines) < len(c.Batches) {
		i := len(o.lines)
		line := look.NewLine(func() { o.area.openBatch(i) })
		o.lines = append(o.lines, line)
		o.batches.Add(line)
	}
	for i, line := range o.lines {
		if i >= len(c.Batches) {
			line.Hide()
			continue
		}
		line.SetText(batchName(c.Batches[i]), o.batchDetail(i))
		line.SetIcon(o.trouble(i))
		line.Show()
	}
	look.Show(o.none, len(c.Batches) == 0)
	o.batches.Refresh()
	o.mark()
}

// mark marks the line of the page on view.
func (o *outline) mark() {
	if o == nil {
		return
	}
	for i, line := range o.fixed {
		line.SetChosen(o.area.pages[i].id() == o.area.shown)
	}
	batch := o.area.shown == "batch"
	for i, line := range o.lines {
		line.SetChosen(batch && i == o.area.session.Selected())
	}
	for _, t := range o.tools {
		if batch {
			t.Enable()
		} else {
			t.Disable()
		}
	}
}

// batchDetail is "3 lb × 4 stations".
func (o *outline) batchDetail(i int) string {
	b := o.area.session.Class().Batches[i]
	return fmt.Sprintf("%s × %s", orMissing(shownAmount(b.Prepared), look.Say("no weight")), stations(b.Stations))
}

// trouble is the shape of the weightiest finding of a batch, nil where there
// is nothing to mind.
func (o *outline) trouble(i int) fyne.Resource {
	worst := measure.Note
	for _, f := range o.area.session.Worked().Batches[i].Findings {
		switch f.Severity {
		case measure.Stop:
			return look.IconSeverity(measure.Stop)
		case measure.Mind:
			worst = measure.Mind
		}
	}
	if worst == measure.Mind {
		return look.IconSeverity(measure.Mind)
	}
	return nil
}

// AddBatch asks for a treatment and adds a batch with it.
func (a *Area) AddBatch() {
	a.committed(func() {
		look.ShowChoice(a.window, look.Say("Which treatment?"), bench.TreatmentChoices(a.session), "", func(id string) {
			if err := a.session.AddBatch(id); err != nil {
				a.must(err)
				return
			}
			a.open("batch")
		})
	})
}

func batchName(b class.Batch) string { return orMissing(b.Name, look.Say("Batch without a name")) }

func orMissing(text, missing string) string {
	if text == "" {
		return missing
	}
	return text
}

// counted is "1 kettle", "2 kettles"; one and many are said here.
func counted(n int, one, many string) string {
	return measure.Counted(float64(n), look.Say(one), look.Say(many))
}

func stations(n int) string { return counted(n, words.Key("station"), words.Key("stations")) }
