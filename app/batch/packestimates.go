package batch

import (
	"math"

	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/heat"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// packForm is the pack as the heat model takes it: a bag lying flat, a box, a
// jar, or a single piece on a tray. Zero where the table has no such container.
func (w *worker) packForm(piece estimate.Piece) heat.Pack {
	if w.Pack.OnTray(w.Treatment) {
		if piece.Shape == 0 {
			return heat.Pack{}
		}
		return heat.Pack{Shape: piece.Shape, SizeM: max(piece.SizeM.Likely, 0.001)}
	}
	c, ok := w.container()
	if !ok {
		return heat.Pack{}
	}
	highM := c.HeightMm / 1000
	p := heat.Pack{AirShare: w.airShare()}
	switch w.Pack.Container {
	case Bag:
		p.Shape, p.SizeM, p.SecondM, p.ThirdM = heat.Slab, c.ThicknessMm/2000, c.WidthMm/2000, highM/2
	case Box:
		side := math.Sqrt(c.VolumeML / 1e6 / highM)
		p.Shape, p.SizeM, p.SecondM, p.ThirdM = heat.Slab, min(side, highM)/2, side/2, max(side, highM)/2
	case Jar:
		p.Shape, p.SizeM, p.SecondM = heat.Cylinder, math.Sqrt(c.VolumeML/1e6/highM/math.Pi), highM/2
	}
	return p
}

func (w *worker) container() (reference.Container, bool) {
	return w.table.ContainerFor(string(w.Pack.Container), string(w.Pack.Size), w.Pack.Mouth)
}

// airShare is the air between the pieces of a pack.
func (w *worker) airShare() float64 {
	switch w.Treatment.Pack {
	case reference.LiquidPack:
		return 0
	case reference.SolidPack:
		return estimate.SolidPackAir
	}
	return estimate.LoosePackAir
}

// freezingEstimates words how long one pack takes.
func (w *worker) freezingEstimates(c estimate.Case, f estimate.Freezing) {
	cold, warm := w.degrees(c.FreezerC[0]), w.degrees(c.FreezerC[1])
	what := w.Say(containerNames[containerOf{w.Pack.Size, w.Pack.Container}].a)
	if w.Pack.OnTray(w.Treatment) {
		what = w.Say("a piece on the tray")
	}
	fig := w.timeRangeFigure("freezing", w.Say("Frozen through after"), f.QuickS, f.SlowS, "")
	packed, core, likely, later := w.degrees(c.PackedC), w.degrees(c.CoreC), w.lasting(f.LikelyS), w.lasting(f.WarmS)
	fig.Working = w.Say("%s, from %s until its core is at %s: about %s at %s, %s at %s; sooner with air all round, later in a crowd", what, packed, core, likely, cold, later, warm)
	if f.PhamS > 0 {
		fig.Working = w.Say("%s, from %s until its core is at %s: about %s at %s, %s at %s; sooner with air all round, later in a crowd; by Pham’s formula %s at %s", what, packed, core, likely, cold, later, warm, w.lasting(f.PhamS), cold)
	}
	fig.Note = w.Say("Packs in one layer against cold shelves freeze soonest; stack them when they are hard. The sizes of containers are guessed.")
	if w.Pack.OnTray(w.Treatment) {
		fig.Note = w.Say("Spread the pieces in one layer; heaped they take far longer.")
	}
	w.out.Estimates.Freezing = fig
	title := w.Say("One pack in the freezer")
	if w.Pack.OnTray(w.Treatment) {
		title = w.Say("One piece on the tray")
	}
	chart := w.chart("freezer", title, w.Say("after it goes in"), "h", 3600, f.Course)
	chart.Curves[0].ID, chart.Curves[0].Label = "air", w.Say("air")
	chart.Curves[1].ID, chart.Curves[1].Label, chart.Curves[1].Short = "core", w.Say("core"), ""
	chart.Curves[2].Label = w.Say("whole pack, on average")
	if w.Pack.OnTray(w.Treatment) {
		chart.Curves[2].Label = w.Say("whole piece, on average")
	}
	chart.Marks = append(chart.Marks, measure.Mark{ID: "frozen", Label: w.degrees(c.CoreC), At: w.markAt(frozenThroughF)})
	w.out.Estimates.Freezer = chart
}

// growth is how much the filling grows in the freezer and whether the headspace
// of the table holds it.
func (w *worker) growth(food heat.Composition) {
	c, ok := w.container()
	if !ok || food == (heat.Composition{}) || w.Pack.OnTray(w.Treatment) {
		return
	}
	percent, err := heat.Filling{AirShare: w.airShare()}.GrowthPercent(food, celsius(coolF), celsius(w.table.Rule("hold-f").Value))
	if err != nil {
		return // a food too dry for the model
	}
	f := model(measure.Figure{ID: "growth", Label: w.Say("Grows in the freezer by"), Value: percent, High: percent, Unit: "%", Text: measure.Plain(math.Round(percent*2)/2) + " %",
		Working: w.Say("food is %s of the filling and water %s of the food; most of it turns to ice, which takes 9 %% more room; the air between the pieces does not grow", w.percentText(1-w.airShare()), w.percentText(food.Water))})
	w.out.Estimates.Growth = f
	box, err := rigid(c)
	if err != nil {
		return
	}
	if box == nil {
		w.out.Estimates.Frozen = w.frozenBag(percent)
		return
	}
	if w.headspaceIn == 0 { // the table's way with what packs loosely
		w.out.Estimates.Growth.Also = w.Say("the air between the pieces takes it up")
		w.out.Estimates.Frozen = w.frozenLoose(percent)
		return
	}
	headspaceM := w.headspaceIn * measure.Inch.Factor
	fit, err := box.Fit(headspaceM, percent)
	if err != nil {
		return
	}
	w.out.Estimates.Frozen = w.frozenIn(headspaceM, percent, fit)
	_, left, _ := w.length(fit.LeftM / measure.Inch.Factor)
	need := w.lengthUp(fit.NeedM)
	switch {
	case fit.Holds && fit.LeftM > tightM:
		w.out.Estimates.Growth.Also = w.Say("the headspace holds it, %s left", left)
		return
	case fit.NeedM < headspaceM+tightM:
		w.out.Estimates.Growth.Also = w.Say("the headspace just holds it")
		return
	}
	w.out.Estimates.Growth.Also = w.Say("needs %s of headspace", need)
	w.find(measure.Note, "headspace-tight", reference.HeatModelSource,
		w.Say("Estimate: the filling grows by %s and would need %s of headspace in a %s of the form taken here; the table says %s.", f.Text, need, c.Name, w.out.Headspace.Text),
		w.Say("Never less than the table, and rather more. The model takes the filling to rise straight up in rigid walls. Glass can break with headspace to spare, because the top freezes first; fill a container that draws in only to below its shoulder."))
}

// tightM is a difference that nobody measures in a headspace, 1/16 inch.
const tightM = 0.0016

// rigid is the inside of a box or jar; nil for a bag.
func rigid(c reference.Container) (heat.Container, error) {
	volumeM3, highM := c.VolumeML/1e6, c.HeightMm/1000
	switch Container(c.Kind) {
	case Box:
		return heat.NewBox(volumeM3, highM, c.BottomShare)
	case Jar:
		return heat.NewJar(volumeM3, highM, c.ShoulderShare, c.NeckShare, c.MouthShare)
	}
	return nil, nil
}
