package planning

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/bench"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// batchPage holds the batch that is selected.
type batchPage struct {
	area               *Area
	name               *look.Field
	treatment, does    *look.Text
	edited             fyne.CanvasObject
	prepared, stations *look.Field
	start, ice         *look.Field
	kettle, burner     *pick
	container, size    *choice
	mouth              *choice
	mouthBox           fyne.CanvasObject
	tray               *look.Check
	count              *look.Field
	findings           *look.Findings
	look               *look.Button
	box                fyne.CanvasObject
	filling            bool
	shownBatch         int
}

func newBatchPage(a *Area) *batchPage {
	p := &batchPage{area: a}
	p.name = a.text(words.Key("Name of the batch"), "", func(c *class.Class, text string) { p.of(c).Name = text })
	p.treatment = look.NewText("", look.SizeText, look.Ink, fyne.TextStyle{Bold: true}).Wrapped()
	p.does = look.Small("")
	p.edited = look.NewText(look.Say("This treatment holds a value that you edited."), look.SizeSmall, look.Edited, fyne.TextStyle{})
	choose := look.NewButton(look.Say("Choose…"), p.chooseTreatment)
	p.prepared = amount(a, words.Key("Prepared, one station"), look.Say("trimmed, such as 3 lb"), class.PreparedLimits, measure.Pound, measure.Kilogram,
		func(c *class.Class, q measure.Mass) { p.of(c).Prepared = q })
	p.stations = a.count(words.Key("Stations"), look.Say("that work this batch"), class.StationCounts, func(c *class.Class, n int) { p.of(c).Stations = n })
	p.start = amount(a, words.Key("Vegetables at"), look.Say("when they go in"), class.StartLimits, measure.Fahrenheit, measure.Celsius,
		func(c *class.Class, q measure.Temperature) { p.of(c).Start = q })
	p.start.SetPlaceHolder(look.Say("guessed"))
	p.ice = amount(a, words.Key("Ice in its bath"), look.Say("one station, such as 3 lb"), class.IceLimits, measure.Pound, measure.Kilogram,
		func(c *class.Class, q measure.Mass) { p.of(c).Ice = q })
	p.ice.SetPlaceHolder(look.Say("by the rule"))
	p.kettle = p.newUse(kettles.called, func(b *class.Batch, name string) { b.Kettle = name })
	p.burner = p.newUse(burners.called, func(b *class.Batch, name string) { b.Burner = name })
	p.container = newChoice(func(v string) { p.pack(func(k *batch.Packing) { k.Container = batch.Container(v) }) },
		option{string(batch.Bag), look.Say("Bag")}, option{string(batch.Box), look.Say("Box")}, option{string(batch.Jar), look.Say("Jar")})
	p.size = newChoice(func(v string) { p.pack(func(k *batch.Packing) { k.Size = batch.Size(v) }) },
		option{string(batch.Pint), look.Say("Pint")}, option{string(batch.Quart), look.Say("Quart")})
	p.mouth = newChoice(func(v string) { p.pack(func(k *batch.Packing) { k.Mouth = reference.Mouth(v) }) },
		option{string(reference.WideMouth), look.Say("Wide")}, option{string(reference.NarrowMouth), look.Say("Narrow")})
	p.mouthBox = look.Labelled(look.Say("Mouth"), p.mouth.box)
	p.tray = look.NewCheck(look.Say("Frozen loose on a tray first"), p.setTray)
	p.count = a.count(words.Key("Packs from one station"), look.Say("0: as many as it gives"), class.PackCounts, func(c *class.Class, n int) { p.of(c).Pack.Count = n })
	p.findings = look.NewFindings(look.Say("Nothing to mind in this batch."), nil)
	p.look = look.NewButton(look.Say("See it worked through"), func() { a.OpenBatch() })
	p.look.Importance = widget.HighImportance
	treatment := look.Column(2, look.Label(look.Say("Treatment")), container.NewBorder(nil, nil, nil, look.AtTop(choose), look.Column(0, p.treatment, p.does, p.edited)))
	p.box = look.Column(22,
		look.Section(look.Say("Batch"), p.name, treatment,
			look.Row(p.prepared, p.stations),
			look.Row(look.Labelled(look.Say(kettles.called), look.Boxed(p.kettle.list)), look.Labelled(look.Say(burners.called), look.Boxed(p.burner.list))),
			look.Row(p.start, p.ice)),
		look.Section(look.Say("Packs"),
			look.Columns(16, []float32{1.2, 1}, look.Labelled(look.Say("Container"), p.container.box), look.Labelled(look.Say("Size"), p.size.box)),
			p.mouthBox, p.tray, look.Columns(16, []float32{1, 1}, p.count, look.Column(0))),
		look.Section(look.Say("To mind"), p.findings, container.NewHBox(p.look)))
	return p
}

func (p *batchPage) id() string                { return "batch" }
func (p *batchPage) object() fyne.CanvasObject { return p.box }

// of is the batch on view in a class that is being changed.
func (p *batchPage) of(c *class.Class) *class.Batch {
	if p.shownBatch < len(c.Batches) {
		return &c.Batches[p.shownBatch]
	}
	return &class.Batch{} // gone in the meantime: nothing changes
}

func (p *batchPage) pack(change func(*batch.Packing)) {
	p.area.change(words.Key("Packing"), func(c *class.Class) { change(&p.of(c).Pack) })
}

// newUse makes the choice of something in the kit that the batch uses.
func (p *batchPage) newUse(change string, set func(b *class.Batch, name string)) *pick {
	return newPick(func(name string) {
		p.area.change(change, func(c *class.Class) { set(p.of(c), name) })
	})
}

func (p *batchPage) setTray(tray bool) {
	if !p.filling {
		p.pack(func(k *batch.Packing) { k.Tray = tray })
	}
}

func (p *batchPage) chooseTreatment() {
	p.area.committed(func() {
		b, _ := p.area.session.SelectedBatch()
		look.ShowChoice(p.area.window, look.Say("Which treatment?"), bench.TreatmentChoices(p.area.session), b.Batch.Treatment, func(id string) {
			p.area.must(p.area.change(words.Key("Treatment"), func(c *class.Class) { p.of(c).Treatment = id }))
		})
	})
}

func (p *batchPage) show(c class.Class) {
	b, ok := p.area.session.SelectedBatch()
	if !ok {
		return
	}
	p.filling = true
	defer func() { p.filling = false }()
	if i := p.area.session.Selected(); i != p.shownBatch {
		p.shownBatch = i
		for _, f := range []*look.Field{p.name, p.prepared, p.stations, p.start, p.ice, p.count} {
			f.Restore() // what was refused belongs to the batch before
		}
	}
	p.name.SetValue(b.Batch.Name)
	p.showTreatment(b)
	p.prepared.SetValue(shownAmount(b.Batch.Prepared))
	p.stations.SetValue(whole(b.Batch.Stations))
	p.start.SetValue(shownAmount(b.Batch.Start))
	p.ice.SetValue(shownAmount(b.Batch.Ice))
	showUse(p.kettle, kettles, c.Kit, b.Batch)
	showUse(p.burner, burners, c.Kit, b.Batch)
	p.container.show(string(b.Batch.Pack.Container))
	p.size.show(string(b.Batch.Pack.Size))
	p.mouth.show(string(b.Batch.Pack.Mouth))
	look.Show(p.mouthBox, b.Batch.Pack.Container != batch.Bag)
	p.tray.SetChecked(b.Batch.Pack.Tray)
	p.count.SetValue(whole(b.Batch.Pack.Count))
	p.findings.SetFindings(b.Findings)
	look.Show(p.look, p.area.OpenBatch != nil)
	p.box.Refresh()
}

func (p *batchPage) showTreatment(b class.BatchWorked) {
	if !b.Known {
		p.treatment.SetText(b.Batch.Treatment)
		p.does.SetText(look.Say("The crop table does not have this treatment."))
		p.edited.Hide()
		return
	}
	p.treatment.SetText(p.area.session.TreatmentName(b.Treatment))
	does := look.Sentence(p.area.session.BatchDoes(b))
	if source := p.area.session.SourceOf(b.Treatment); source != "" {
		does = strings.TrimSuffix(does, ".") + ". " + source + "."
	}
	p.does.SetText(does)
	look.Show(p.edited, len(b.Treatment.Changed) > 0)
}

// showUse offers what is on a shelf of the kit and shows what a batch uses of it.
func showUse[T any](p *pick, s shelf[T], kit class.Kit, b class.Batch) {
	options := []option{{"", look.Say("None chosen")}}
	for _, item := range *s.of(&kit) {
		name := *s.name(&item)
		options = append(options, option{name, name})
	}
	p.offer(options...)
	p.show(*s.usedBy(&b))
}
