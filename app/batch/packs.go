package batch

import (
	"fmt"
	"strings"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// pack gives headspace and the number of containers.
func (w *worker) pack() {
	w.out.Headspace = w.headspace()
	w.out.Packs = w.packs()
	if w.Pack.Container == Jar {
		w.find(measure.Mind, "glass", "", w.Say("Glass can break in the freezer."),
			w.Say("Use only jars made for freezing, wide-mouthed where you can; leave the headspace, fill a jar with a shoulder only to below it, and thaw before emptying."))
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
		w.find(measure.Note, "no-tray", "", w.Say("This is packed wet or mashed, so it does not go on a tray first."), w.Say("Fill the containers and leave the headspace."))
	}
	return w.Pack.OnTray(w.Treatment)
}

func (w *worker) headspace() measure.Figure {
	t := w.Treatment
	f := measure.Figure{ID: "headspace", Label: w.Say("Headspace")}
	inches, working := t.HeadspaceIn, w.Say("packs solid")
	switch {
	case w.tray():
		rule := w.table.Rule("tray-headspace-in")
		f = by(rule, f)
		inches, working = rule.Value, w.Say("frozen loose on a tray first: no headspace")
	case t.HeadspaceRow != "":
		mouth, size := w.Pack.Mouth, w.Pack.Size
		row := w.Say(headspaceRows[t.HeadspaceRow])
		working = strings.Join([]string{row, w.Say(mouths[mouth]), w.Say(string(size))}, ", ")
		if w.Pack.Container == Bag {
			mouth = reference.WideMouth
			working = w.Say("%s, %s; a bag is counted as a wide mouth", row, w.Say(string(size)))
		}
		cell, err := w.table.HeadspaceFor(t.HeadspaceRow, string(size), mouth)
		if err != nil { // an unknown size or mouth is refused where a class is read
			return from(t.Source, t.Standing, inWords(f.ID, f.Label, w.Say("not in the table"), w.Error(err)))
		}
		f = from(cell.Source, reference.Read, f)
		inches = cell.Inches
	default:
		f = from(t.HeadspaceSource, t.HeadspaceStanding, f)
		if inches == 0 {
			working = w.Say("packs loosely: no headspace")
		}
	}
	f.Working = working
	w.headspaceIn = inches
	value, text, unit := w.length(inches)
	f.Unit = unit
	if inches == 0 {
		f.Words = w.Say("none")
		f.Text = f.Words
		return f
	}
	f.Value, f.High, f.Text = value, value, text
	f.Working = fmt.Sprintf("%s: %s", working, text)
	if w.Pack.Container == Bag {
		f.Note = w.Say("Press the air out of the bag before it is closed.")
	}
	return f
}

// headspaceRows and mouths say what the headspace goes by.
var (
	headspaceRows = map[string]string{"liquid": words.Key("liquid pack"), "dry": words.Key("dry pack"), "juice": words.Key("juice pack")}
	mouths        = map[reference.Mouth]string{reference.WideMouth: words.Key("wide mouth"), reference.NarrowMouth: words.Key("narrow mouth")}
)

// ContainerName is "pint bag" and "pint bags", said by a voice.
func (p Packing) ContainerName(v *words.Voice) (one, many string) {
	name := containerNames[containerOf{p.Size, p.Container}]
	return v.Say(name.one), v.Say(name.many)
}

type containerOf struct {
	size      Size
	container Container
}

var containerNames = map[containerOf]struct{ a, one, many string }{
	{Pint, Bag}:  {words.Key("a pint bag"), words.Key("pint bag"), words.Key("pint bags")},
	{Pint, Box}:  {words.Key("a pint box"), words.Key("pint box"), words.Key("pint boxes")},
	{Pint, Jar}:  {words.Key("a pint jar"), words.Key("pint jar"), words.Key("pint jars")},
	{Quart, Bag}: {words.Key("a quart bag"), words.Key("quart bag"), words.Key("quart bags")},
	{Quart, Box}: {words.Key("a quart box"), words.Key("quart box"), words.Key("quart boxes")},
	{Quart, Jar}: {words.Key("a quart jar"), words.Key("quart jar"), words.Key("quart jars")},
}

// packs is the number of containers: as entered, or as many as the batch fills.
func (w *worker) packs() measure.Figure {
	filled := w.packsFilled()
	n := float64(w.Pack.Count)
	if n == 0 {
		return filled
	}
	one, many := w.Pack.ContainerName(w.kitchen.Voice)
	w.checkCount(n, filled)
	return measure.Figure{ID: "packs", Label: w.Say("Packs"), Value: n, High: n, Unit: string(w.Pack.Size) + "s", Text: measure.Counted(n, one, many),
		Working: w.Say("as entered"), Basis: measure.Entered, Source: "entered"}
}

// packsFilled works out from the published yield how many containers the batch
// fills. The yields count weight as bought; where the share left after trimming
// is known it is used, otherwise the figure is a lower bound and says so.
func (w *worker) packsFilled() measure.Figure {
	f := measure.Figure{ID: "packs", Label: w.Say("Packs"), Unit: string(w.Pack.Size) + "s", Basis: measure.Estimate}
	count := func(working string) measure.Figure {
		f.Words = w.Say("fill one and count")
		f.Text, f.Working = f.Words, working
		return f
	}
	y, ok := w.table.ChosenYield(w.Crop.ID)
	if ok {
		f.Source, f.Standing = y.Source, string(y.Standing)
	}
	switch {
	case !w.weighed():
		return w.noWeight("packs", w.Say("Packs"))
	case !ok:
		return count(w.Say("no published yield for this crop in the table"))
	case y.LbPerPint == 0:
		return count(w.Say("the table has no pounds per pint for this crop"))
	case y.UsableShare == 0 && y.AsBought.InHull():
		return count(w.Say("the published yield weighs the crop %s; the share that is left is not published", w.Say(string(y.AsBought))))
	}
	share := y.UsableShare
	if share == 0 {
		share, w.out.PacksAtLeast = 1, true
	}
	boughtKg := w.Prepared.SI() / share
	low := boughtKg / measure.Pound.Factor / y.LbPerPintHigh / w.Pack.Size.Pints()
	high := boughtKg / measure.Pound.Factor / y.LbPerPint / w.Pack.Size.Pints()
	f.Value, f.High = wholeUp(low), wholeUp(high)
	one, many := w.Pack.ContainerName(w.kitchen.Voice)
	f.Text = countedRange(f.Value, f.High, one, many)
	if w.out.PacksAtLeast {
		f.Text = w.Say("at least %s", f.Text)
	}
	bought, perPack, packs := w.massExact(boughtKg), w.perPack(y), measure.Range(measure.Plain(low), measure.Plain(high), "")
	if w.out.PacksAtLeast {
		f.Working = w.Say("trimming not counted: %s as bought ÷ %s = %s, whole packs = %s", bought, perPack, packs, f.Text)
		f.Note = w.Say("The table weighs the crop as bought; prepared weight fills more.")
	} else {
		f.Working = w.Say("%[1]s prepared ÷ %[2]s left after trimming = %[3]s as bought; %[3]s as bought ÷ %[4]s = %[5]s, whole packs = %[6]s",
			w.massExact(w.Prepared.SI()), percent(share), bought, perPack, packs, f.Text)
	}
	return f
}

// checkCount says so where the packs that were asked for are not what the
// prepared weight fills.
func (w *worker) checkCount(n float64, filled measure.Figure) {
	if filled.InWords() || n >= filled.Value && n <= filled.High {
		return
	}
	says := words.Key("%s packs are wanted; %s prepared is estimated to fill %s.")
	if n == 1 {
		says = words.Key("%s pack is wanted; %s prepared is estimated to fill %s.")
	}
	w.find(measure.Note, "packs-and-weight", filled.Source,
		w.Say(says, measure.Plain(n), w.out.Prepared.Text, filled.Text),
		w.Say("Change the weight or the number of packs, or have containers ready for both."))
}

// perPack prints the weight as bought for one pack.
func (w *worker) perPack(y reference.Yield) string {
	unit, pints := w.massUnit(), w.Pack.Size.Pints()
	low, high := y.LbPerPint*pints*measure.Pound.Factor/unit.Factor, y.LbPerPintHigh*pints*measure.Pound.Factor/unit.Factor
	each := words.Key("%s a pint")
	if w.Pack.Size == Quart {
		each = words.Key("%s a quart")
	}
	return w.Say(each, measure.Range(measure.Exact(low), measure.Exact(high), unit.Symbol))
}

// sizes counts pints or quarts.
func (w *worker) sizes(n float64) string {
	if w.Pack.Size == Quart {
		return measure.Counted(n, w.Say("quart"), w.Say("quarts"))
	}
	return measure.Counted(n, w.Say("pint"), w.Say("pints"))
}

func percent(share float64) string { return measure.Exact(share*100) + " %" }

// buy is the weight as bought, a range where the source gives one.
func (w *worker) buy() {
	unit := w.massUnit()
	f := measure.Figure{ID: "buy", Label: w.Say("Buy"), Unit: unit.Symbol, Basis: measure.Estimate}
	y, ok := w.table.ChosenYield(w.Crop.ID)
	switch n := float64(w.Pack.Count); {
	case ok && y.LbPerPint > 0 && n > 0:
		f.Source, f.Standing = y.Source, string(y.Standing)
		pounds := n * w.Pack.Size.Pints() * measure.Pound.Factor / unit.Factor
		f.Value, f.High = pounds*y.LbPerPint, pounds*y.LbPerPintHigh
		f.Text = measure.Range(measure.Plain(f.Value), measure.Plain(f.High), unit.Symbol)
		f.Working = fmt.Sprintf("%s × %s = %s", w.sizes(n), w.perPack(y), f.Text)
	case !w.weighed():
		f = w.noWeight("buy", w.Say("Buy"))
	case ok && y.UsableShare > 0:
		f.Source, f.Standing = y.UsableShareSource, string(y.Standing)
		amount, _ := w.mass(w.Prepared.SI() / y.UsableShare)
		f.Value, f.High = amount, amount
		f.Text = w.Say("about %s", measure.Plain(amount)+" "+unit.Symbol)
		f.Working = w.Say("%s prepared ÷ %s left after trimming = %s", w.massExact(w.Prepared.SI()), percent(y.UsableShare), measure.Plain(amount)+" "+unit.Symbol)
	default:
		_, prepared := w.mass(w.Prepared.SI()) // rounded, as the workbook's formula prints it
		f.Words = w.Say("more than %s", prepared)
		f.Text, f.Working = f.Words, w.Say("prepared weight plus what trimming takes; no share is published for this crop. Enter how many packs you want to get a range")
	}
	if y.AsBought != "" && !f.InWords() {
		f.Text += " " + w.Say(string(y.AsBought))
	}
	w.out.Buy = f
}
