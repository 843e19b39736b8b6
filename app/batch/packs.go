package batch

import (
	"fmt"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// pack gives headspace and the number of containers.
func (w *worker) pack() {
	w.out.Headspace = w.headspace()
	w.out.Packs = w.packs()
	if w.Pack.Container == Jar {
		w.find(measure.Mind, "glass", "", "Glass can break in the freezer.",
			"Use only jars made for freezing, wide-mouthed where you can; leave the headspace, fill a jar with a shoulder only to below it, and thaw before emptying.")
	}
}

// MayTray says whether a treatment's pieces can be frozen loose on a tray
// first: not what is packed wet or mashed.
func MayTray(t reference.Treatment) bool {
	return t.Pack != reference.LiquidPack && !(t.Method == reference.CookThrough && t.Pack == reference.SolidPack)
}

// OnTray says whether the pieces are frozen loose on a tray first: where it was
// chosen and can be, and where the treatment itself says so.
func (p Packing) OnTray(t reference.Treatment) bool {
	return t.Pack == reference.TrayPack || p.Tray && MayTray(t)
}

func (w *worker) tray() bool {
	if w.Pack.Tray && !MayTray(w.Treatment) {
		w.find(measure.Note, "no-tray", "", "This is packed wet or mashed, so it does not go on a tray first.", "Fill the containers and leave the headspace.")
	}
	return w.Pack.OnTray(w.Treatment)
}

func (w *worker) headspace() measure.Figure {
	t := w.Treatment
	f := measure.Figure{ID: "headspace", Label: "Headspace"}
	inches, working := t.HeadspaceIn, "packs solid"
	switch {
	case w.tray():
		rule := w.table.Rule("tray-headspace-in")
		f = by(rule, f)
		inches, working = rule.Value, "frozen loose on a tray first: no headspace"
	case t.HeadspaceRow != "":
		mouth, size := w.Pack.Mouth, w.Pack.Size
		working = fmt.Sprintf("%s pack, %s mouth, %s", t.HeadspaceRow, mouth, size)
		if w.Pack.Container == Bag {
			mouth = reference.WideMouth
			working = fmt.Sprintf("%s pack, %s; a bag is counted as a wide mouth", t.HeadspaceRow, size)
		}
		cell, err := w.table.HeadspaceFor(t.HeadspaceRow, string(size), mouth)
		if err != nil { // an unknown size or mouth is refused where a class is read
			return from(t.Source, t.Standing, inWords(f.ID, f.Label, "not in the table", err.Error()))
		}
		f = from(cell.Source, reference.Read, f)
		inches = cell.Inches
	default:
		f = from(t.HeadspaceSource, t.HeadspaceStanding, f)
		if inches == 0 {
			working = "packs loosely: no headspace"
		}
	}
	f.Working = working
	w.headspaceIn = inches
	value, text, unit := w.length(inches)
	f.Unit = unit
	if inches == 0 {
		f.Words, f.Text = "none", "none"
		return f
	}
	f.Value, f.High, f.Text = value, value, text
	f.Working += ": " + text
	if w.Pack.Container == Bag {
		f.Note = "Press the air out of the bag before it is closed."
	}
	return f
}

// containerName is "pint bag" and "pint bags".
func (p Packing) containerName() (one, many string) {
	one = string(p.Size) + " " + string(p.Container)
	if p.Container == Box {
		return one, one + "es"
	}
	return one, one + "s"
}

// packs is the number of containers: as entered, or as many as the batch fills.
func (w *worker) packs() measure.Figure {
	filled := w.packsFilled()
	n := float64(w.Pack.Count)
	if n == 0 {
		return filled
	}
	one, many := w.Pack.containerName()
	w.checkCount(n, filled)
	return measure.Figure{ID: "packs", Label: "Packs", Value: n, High: n, Unit: string(w.Pack.Size) + "s", Text: measure.Counted(n, one, many),
		Working: "as entered", Basis: measure.Entered, Source: "entered"}
}

// packsFilled works out from the published yield how many containers the batch
// fills. The yields count weight as bought; where the share left after trimming
// is known it is used, otherwise the figure is a lower bound and says so.
func (w *worker) packsFilled() measure.Figure {
	f := measure.Figure{ID: "packs", Label: "Packs", Unit: string(w.Pack.Size) + "s", Basis: measure.Estimate}
	words := func(working string) measure.Figure {
		f.Words, f.Text, f.Working = "fill one and count", "fill one and count", working
		return f
	}
	y, ok := w.table.ChosenYield(w.Crop.ID)
	if ok {
		f.Source, f.Standing = y.Source, string(y.Standing)
	}
	switch {
	case !w.weighed():
		return w.noWeight("packs", "Packs")
	case !ok:
		return words("no published yield for this crop in the table")
	case y.LbPerPint == 0:
		return words("the table has no pounds per pint for this crop")
	case y.UsableShare == 0 && (y.AsBought == "in pods" || y.AsBought == "in husk"):
		return words("the published yield weighs the crop " + y.AsBought + "; the share that is left is not published")
	}
	share, atLeast := y.UsableShare, ""
	if share == 0 {
		share, atLeast = 1, "at least "
	}
	boughtKg := w.Prepared.SI() / share
	low := boughtKg / measure.Pound.Factor / y.LbPerPintHigh / w.Pack.Size.Pints()
	high := boughtKg / measure.Pound.Factor / y.LbPerPint / w.Pack.Size.Pints()
	f.Value, f.High = wholeUp(low), wholeUp(high)
	one, many := w.Pack.containerName()
	f.Text = atLeast + countedRange(f.Value, f.High, one, many)
	bought := w.massExact(boughtKg) + " as bought"
	f.Working = fmt.Sprintf("%s ÷ %s = %s, whole packs = %s", bought, w.perPack(y), measure.Range(measure.Plain(low), measure.Plain(high), ""), f.Text)
	if atLeast != "" {
		f.Working = "trimming not counted: " + f.Working
		f.Note = "The table weighs the crop as bought; prepared weight fills more."
	} else {
		f.Working = fmt.Sprintf("%s prepared ÷ %s left after trimming = %s; %s", w.massExact(w.Prepared.SI()), percent(share), bought, f.Working)
	}
	return f
}

// checkCount says so where the packs that were asked for are not what the
// prepared weight fills.
func (w *worker) checkCount(n float64, filled measure.Figure) {
	if filled.InWords() || n >= filled.Value && n <= filled.High {
		return
	}
	are := "are"
	if n == 1 {
		are = "is"
	}
	w.find(measure.Note, "packs-and-weight", filled.Source,
		fmt.Sprintf("%s %s wanted; %s prepared is estimated to fill %s.", measure.Counted(n, "pack", "packs"), are, w.out.Prepared.Text, filled.Text),
		"Change the weight or the number of packs, or have containers ready for both.")
}

// perPack prints the weight as bought for one pack.
func (w *worker) perPack(y reference.Yield) string {
	unit, pints := w.massUnit(), w.Pack.Size.Pints()
	low, high := y.LbPerPint*pints*measure.Pound.Factor/unit.Factor, y.LbPerPintHigh*pints*measure.Pound.Factor/unit.Factor
	return measure.Range(measure.Exact(low), measure.Exact(high), unit.Symbol) + " a " + string(w.Pack.Size)
}

func percent(share float64) string { return measure.Exact(share*100) + " %" }

// buy is the weight as bought, a range where the source gives one.
func (w *worker) buy() {
	unit := w.massUnit()
	f := measure.Figure{ID: "buy", Label: "Buy", Unit: unit.Symbol, Basis: measure.Estimate}
	y, ok := w.table.ChosenYield(w.Crop.ID)
	switch n := float64(w.Pack.Count); {
	case ok && y.LbPerPint > 0 && n > 0:
		f.Source, f.Standing = y.Source, string(y.Standing)
		pounds := n * w.Pack.Size.Pints() * measure.Pound.Factor / unit.Factor
		f.Value, f.High = pounds*y.LbPerPint, pounds*y.LbPerPintHigh
		f.Text = measure.Range(measure.Plain(f.Value), measure.Plain(f.High), unit.Symbol)
		f.Working = fmt.Sprintf("%s × %s = %s", measure.Counted(n, string(w.Pack.Size), string(w.Pack.Size)+"s"), w.perPack(y), f.Text)
	case !w.weighed():
		f = w.noWeight("buy", "Buy")
	case ok && y.UsableShare > 0:
		f.Source, f.Standing = y.UsableShareSource, string(y.Standing)
		amount, _ := w.mass(w.Prepared.SI() / y.UsableShare)
		f.Value, f.High = amount, amount
		f.Text = "about " + measure.Plain(amount) + " " + unit.Symbol
		f.Working = fmt.Sprintf("%s prepared ÷ %s left after trimming = %s %s", w.massExact(w.Prepared.SI()), percent(y.UsableShare), measure.Plain(amount), unit.Symbol)
	default:
		_, prepared := w.mass(w.Prepared.SI()) // rounded, as the workbook's formula prints it
		f.Words = "more than " + prepared
		f.Text, f.Working = f.Words, "prepared weight plus what trimming takes; no share is published for this crop. Enter how many packs you want to get a range"
	}
	if y.AsBought != "" && !f.InWords() {
		f.Text += " " + y.AsBought
	}
	w.out.Buy = f
}
