package bench

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/drawing"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// answers is everything worked out from the batch.
type answers struct {
	content *fyne.Container
	figures *fyne.Container // all but the findings
	heights []float32       // of everything in content, as it was last laid out

	station       *look.Text // for whom the figures are
	minutes       *look.FigureView
	clock         *look.FigureView
	source        *look.Text
	remarks       *look.Text // on the clock, and what goes into the blanching water
	line          *drawing.ClockStart
	urgent        *urgent
	water, loads  *look.FigureView
	chill, ice    *look.FigureView
	space, packs  *look.FigureView
	freezer, days *look.FigureView
	kettle        *drawing.Kettle
	bath          *drawing.Bath
	pack          *drawing.PackSection
	shelf         *drawing.FreezerShelf
	below         *below
	beside        *beside
	sourceName    func(string) string
}

func newAnswers(sourceName func(string) string) *answers {
	a := &answers{sourceName: sourceName}
	figure := func() *look.FigureView { return a.named(look.NewFigure(measure.Figure{})) }
	a.minutes = a.named(look.NewLargeFigure(measure.Figure{}))
	a.clock = a.named(look.NewLargeFigure(measure.Figure{}))
	a.water, a.loads, a.chill, a.ice = figure(), figure(), figure(), figure()
	a.space, a.packs, a.freezer, a.days = figure(), figure(), figure(), figure()
	a.source, a.remarks, a.station = look.Small(""), look.Small(""), look.Small("")
	a.line = drawing.NewClockStart()
	a.kettle, a.bath, a.pack, a.shelf = drawing.NewKettle(), drawing.NewBath(), drawing.NewPackSection(), drawing.NewFreezerShelf()
	a.urgent = newUrgent()
	a.below, a.beside = newBelow(a.named), newBeside()

	top := look.Columns(20, []float32{1, 2.6}, look.Column(4, a.minutes, a.station), look.Column(5, a.clock, a.source, a.remarks, a.line))
	grid := tiles(284, 20,
		tile(a.loads, a.water, 1, 1.25, 0.36, a.kettle),
		tile(a.chill, a.ice, 1, 1.25, 0.36, a.bath),
		tile(a.space, a.packs, 1, 1.6, 0.6, a.pack),
		tile(a.freezer, a.days, 1.6, 1, 0.45, a.shelf),
	)
	a.figures = look.Column(10, top, a.urgent.content, look.Hairline(), grid)
	a.content = look.Column(22, a.beside.content, a.figures, a.below.content)
	return a
}

func (a *answers) named(v *look.FigureView) *look.FigureView {
	v.SourceName = a.sourceName
	return v
}

// tile is two figures over the drawing that shows them, a share of its width
// high.
func tile(left, right fyne.CanvasObject, leftShare, rightShare, high float32, picture fyne.CanvasObject) fyne.CanvasObject {
	return look.Column(6,
		look.Columns(12, []float32{leftShare, rightShare}, left, right),
		scaled(high, 190, picture))
}

// show brings every figure and drawing up to date.
func (a *answers) show(now shown) {
	look.Show(a.figures, now.batch.Known)
	a.below.show(now)
	a.beside.show(now.differences, now.trying)
	a.urgent.show(now)
	if now.batch.Known {
		a.showFigures(now)
	}
	a.arrange()
}

// arrange lays everything out anew where something takes another height.
func (a *answers) arrange() {
	if now := heights(a.content, nil); !slices.Equal(now, a.heights) {
		look.Rearrange(a.content)
		a.heights = heights(a.content, nil)
	}
}

func (a *answers) showFigures(now shown) {
	w := now.batch.Worked
	a.showMinutes(now)
	a.loads.SetFigure(counted(w.Loads))
	a.water.SetFigure(renamed(w.LoadWater, look.Say("Water, each load")))
	a.chill.SetFigure(renamed(w.Chill, look.Say("Chill")))
	a.ice.SetFigure(renamed(w.Ice, look.Say("Ice, by rule")))
	a.space.SetFigure(w.Headspace)
	a.packs.SetFigure(counted(w.Packs))
	a.freezer.SetFigure(renamed(w.FreezerDay, look.Say("Freezer, a day")))
	a.days.SetFigure(counted(renamed(w.FreezerDays, look.Say("Days"))))
	a.markEdited(now.batch.Treatment.Changed)
	a.draw(now)
}

// showMinutes shows the minutes with their start and their source, which never
// stand without each other.
func (a *answers) showMinutes(now shown) {
	w, t := now.batch.Worked, now.batch.Treatment
	a.minutes.SetFigure(w.Minutes)
	a.clock.SetFigure(w.Clock)
	a.source.SetText(sourceLine(now, a.sourceName))
	remarks := w.Clock.Note
	if t.BlanchWater != "" {
		remarks = strings.TrimSpace(remarks + "\n" + look.Say("Into the water or before it: %s (%s)", t.BlanchWater, a.sourceName(t.BlanchSource)))
	}
	a.remarks.SetText(remarks)
	look.Show(a.remarks, remarks != "")
	a.station.SetText(stationLine(now))
	look.Show(a.line, now.timed())
}

func (a *answers) draw(now shown) {
	look.Show(a.kettle, now.drawsKettle())
	look.Show(a.bath, now.drawsBath())
	a.kettle.Set(now.kettleState())
	a.bath.Set(now.bathState())
	a.pack.Set(now.packState())
	a.shelf.Set(now.freezerState())
	a.line.Set(now.clockState())
}

// markEdited marks the figures that rest on a value changed here.
func (a *answers) markEdited(changed map[string]reference.Edit) {
	is := func(fields ...string) bool {
		for _, f := range fields {
			if _, ok := changed[f]; ok {
				return true
			}
		}
		return false
	}
	minutes := is(reference.FieldMinutes, reference.FieldWords)
	water := is(reference.FieldWater)
	a.minutes.SetEdited(minutes)
	a.chill.SetEdited(minutes || is(reference.FieldChillFactor, reference.FieldChillWords))
	a.space.SetEdited(is(reference.FieldHeadspace))
	a.water.SetEdited(water)
	a.loads.SetEdited(water)
}
