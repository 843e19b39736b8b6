package batch

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"time"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// pack gives headspace and the number of containers.
func (w *worker) pack() {
	w.out.Headspace = w.headspace()
	w.out.Packs = w.packs()
	if w.Pack.Container == Jar {
		w.find(measure.Mind, "glass", "", "Glass can break in the freezer.",
			"Use only jars made for freezing, straight-sided and wide, fill below the shoulder, leave the headspace, and thaw before emptying.")
	}
}

func (w *worker) headspace() measure.Figure {
	t := w.Treatment
	f := measure.Figure{ID: "headspace", Label: "Headspace", Basis: measure.Tabled, Source: t.Source}
	inches := t.HeadspaceIn
	switch {
	case w.Pack.Tray || t.Pack == reference.TrayPack:
		inches = 0
		f.Working = "frozen loose on a tray first: no headspace"
		f.Source = w.table.Rule("tray-first-look-h").Source // the same page says to pack tray-frozen pieces without headspace
	case t.HeadspaceRow != "" && w.Pack.Container != Bag:
		cell, err := w.table.HeadspaceFor(t.HeadspaceRow, string(w.Pack.Size), w.Pack.Mouth)
		if err != nil { // an unknown size or mouth was refused when the class was checked
			f.Words, f.Text, f.Working = "not in the table", "not in the table", err.Error()
			return f
		}
		inches = cell.Inches
		f.Source = cell.Source
		f.Working = fmt.Sprintf("%s pack, %s mouth, %s", t.HeadspaceRow, w.Pack.Mouth, w.Pack.Size)
	case t.HeadspaceRow != "":
		cell, err := w.table.HeadspaceFor(t.HeadspaceRow, string(w.Pack.Size), reference.WideMouth)
		if err != nil {
			f.Words, f.Text, f.Working = "not in the table", "not in the table", err.Error()
			return f
		}
		inches = cell.Inches
		f.Source = cell.Source
		f.Working = fmt.Sprintf("%s pack; a bag is counted as a wide mouth", t.HeadspaceRow)
	case inches == 0:
		f.Working = "packs loosely: no headspace"
	default:
		f.Working = "packs solid"
	}
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

// packs is the number of containers that the batch fills. The published yields
// count weight as bought; where the share left after trimming is known it is
// used, where only little is trimmed the figure is a lower bound.
func (w *worker) packs() measure.Figure {
	f := measure.Figure{ID: "packs", Label: "Packs", Unit: string(w.Pack.Size) + "s", Basis: measure.Estimate}
	container := string(w.Pack.Size) + " " + string(w.Pack.Container)
	if n := float64(w.Pack.Count); n > 0 {
		f.Value, f.High, f.Basis, f.Source = n, n, measure.Entered, "entered"
		f.Text, f.Working = counted(n, container, plural(container)), "as entered"
		w.checkCount(w.packsFilled(f))
		return f
	}
	return w.packsFilled(f)
}

// packsFilled works out from the published yield how many containers the
// batch fills.
func (w *worker) packsFilled(f measure.Figure) measure.Figure {
	f.Basis = measure.Estimate
	container := string(w.Pack.Size) + " " + string(w.Pack.Container)
	inWords := func(words, working string) measure.Figure {
		f.Words, f.Text, f.Working = words, words, working
		return f
	}
	y, ok := w.table.ChosenYield(w.Crop.ID)
	f.Source = y.Source
	if !ok || y.LbPerPint == 0 {
		f.Source = ""
		return inWords("fill one and count", "no published yield for this crop in the table")
	}
	share, atLeast := y.UsableShare, ""
	if share == 0 {
		if y.AsBought == "in pods" || y.AsBought == "in husk" {
			return inWords("fill one and count", "the published yield weighs the crop "+y.AsBought+"; the share that is left is not published")
		}
		share, atLeast = 1, "at least, trimming not counted: "
	}
	boughtLb := w.Prepared.SI() / measure.Pound.Factor / share
	low := boughtLb / y.LbPerPintHigh / w.Pack.Size.Pints()
	high := boughtLb / y.LbPerPint / w.Pack.Size.Pints()
	f.Value, f.High = math.Ceil(low-1e-9), math.Ceil(high-1e-9)
	f.Text = measure.Range(measure.Plain(f.Value), measure.Plain(f.High), plural(container))
	if f.High == 1 {
		f.Text = counted(1, container, "")
	}
	_, bought := w.mass(boughtLb * measure.Pound.Factor)
	f.Working = fmt.Sprintf("%s%s as bought ÷ %s = %s %ss, rounded up", atLeast, bought, w.perPint(y),
		measure.Range(measure.Plain(low), measure.Plain(high), ""), w.Pack.Size)
	if y.UsableShare > 0 {
		_, prepared := w.mass(w.Prepared.SI())
		f.Working = fmt.Sprintf("%s prepared ÷ %s left after trimming = %s as bought; ", prepared, percent(share), bought) + f.Working
	}
	return f
}

// checkCount says so where the packs that were asked for are not what the
// prepared weight fills.
func (w *worker) checkCount(filled measure.Figure) {
	n := float64(w.Pack.Count)
	if filled.InWords() || n >= filled.Value && n <= filled.High {
		return
	}
	_, prepared := w.mass(w.Prepared.SI())
	w.find(measure.Note, "packs-and-weight", filled.Source,
		fmt.Sprintf("%s are wanted; %s prepared is estimated to fill %s.", counted(n, "pack", "packs"), prepared, filled.Text),
		"Change the weight or the number of packs, or have containers ready for both.")
}

// perPint prints pounds as bought for one pint, with the size of the pack
// worked in by the caller.
func (w *worker) perPint(y reference.Yield) string {
	unit := w.massUnit()
	low, high := y.LbPerPint*measure.Pound.Factor/unit.Factor, y.LbPerPintHigh*measure.Pound.Factor/unit.Factor
	per := "pint"
	if w.Pack.Size == Quart {
		low, high, per = low*2, high*2, "quart"
	}
	return measure.Range(measure.Plain(low), measure.Plain(high), unit.Symbol) + " per " + per
}

func percent(share float64) string { return measure.Plain(math.Round(share*100)) + " %" }

func plural(container string) string {
	if container[len(container)-1] == 'x' {
		return container + "es"
	}
	return container + "s"
}

// buy is the weight as bought, always a range where the source gives one.
func (w *worker) buy() {
	unit := w.massUnit()
	f := measure.Figure{ID: "buy", Label: "Buy", Unit: unit.Symbol, Basis: measure.Estimate}
	y, ok := w.table.ChosenYield(w.Crop.ID)
	f.Source = y.Source
	_, prepared := w.mass(w.Prepared.SI())
	switch n := float64(w.Pack.Count); {
	case ok && y.LbPerPint > 0 && n > 0:
		pints := n * w.Pack.Size.Pints()
		low, high := pints*y.LbPerPint*measure.Pound.Factor/unit.Factor, pints*y.LbPerPintHigh*measure.Pound.Factor/unit.Factor
		f.Value, f.High = low, high
		f.Text = measure.Range(measure.Plain(low), measure.Plain(high), unit.Symbol)
		f.Working = fmt.Sprintf("%s × %s = %s", counted(n, string(w.Pack.Size), string(w.Pack.Size)+"s"), w.perPint(y), f.Text)
	case ok && y.UsableShare > 0:
		amount := w.Prepared.SI() / y.UsableShare / unit.Factor
		f.Value, f.High = amount, amount
		f.Text = "about " + measure.Plain(amount) + " " + unit.Symbol
		f.Working = fmt.Sprintf("%s prepared ÷ %s left after trimming = %s %s", prepared, percent(y.UsableShare), measure.Plain(amount), unit.Symbol)
		f.Source = y.UsableShareSource
	default:
		f.Words = "more than " + prepared
		f.Text, f.Working = f.Words, "prepared weight plus what trimming takes; no share is published for this crop. Say how many packs you want to get a range"
		f.Source = ""
	}
	if y.AsBought != "" && !f.InWords() {
		f.Text += " " + y.AsBought
	}
	w.out.Buy = f
}

// FreezerDay is the most food that a freezer of this capacity should be given
// in 24 hours.
func FreezerDay(capacity measure.Volume, units measure.System, table *reference.Table) measure.Figure {
	rule := table.Rule("freezer-lb-per-cuft-day")
	k := kitchen{metric: units == measure.Metric}
	f := measure.Figure{ID: "freezer-day", Label: "The freezer takes in a day", Unit: k.massUnit().Symbol, Basis: measure.Ruled, Source: rule.Source}
	if !capacity.Given() {
		f.Words, f.Text, f.Working = "freezer not entered", "freezer not entered", "no capacity entered"
		return f
	}
	cuFt := capacity.In(measure.CubicFoot)
	low, _ := k.mass(cuFt * rule.Value * measure.Pound.Factor)
	high, _ := k.mass(cuFt * rule.High * measure.Pound.Factor)
	f.Value, f.High = low, high
	f.Text = measure.Range(measure.Plain(low), measure.Plain(high), f.Unit)
	f.Working = fmt.Sprintf("%s cu ft × %s–%s lb per cu ft = %s", measure.Plain(cuFt), measure.Plain(rule.Value), measure.Plain(rule.High), f.Text)
	if k.metric {
		perL := measure.Pound.Factor / measure.CubicFoot.Factor * 100
		f.Working = fmt.Sprintf("%s L × %s–%s kg per 100 L = %s", measure.Plain(capacity.In(measure.Litre)), measure.Plain(rule.Value*perL), measure.Plain(rule.High*perL), f.Text)
	}
	return f
}

// FreezerDays is how many days a load needs in a freezer that takes perDay a
// day, as a range: the quick end for the higher limit.
func FreezerDays(massKg float64, units measure.System, perDay measure.Figure) measure.Figure {
	k := kitchen{metric: units == measure.Metric}
	load, text := k.mass(massKg)
	f := measure.Figure{ID: "freezer-days", Label: "Days to freeze it", Unit: "days", Basis: measure.Ruled, Source: perDay.Source}
	if perDay.InWords() || perDay.Value <= 0 {
		f.Words, f.Text, f.Working = "freezer not entered", "freezer not entered", "no capacity entered"
		return f
	}
	f.Value, f.High = math.Ceil(load/perDay.High-1e-9), math.Ceil(load/perDay.Value-1e-9)
	f.Text = measure.Range(measure.Plain(f.Value), measure.Plain(f.High), "days")
	if f.High == 1 {
		f.Text = "1 day"
	}
	f.Working = fmt.Sprintf("%s ÷ %s a day, whole days = %s", text, perDay.Text, f.Text)
	return f
}

func (w *worker) freezer() {
	w.out.FreezerDay = FreezerDay(w.Freezer, w.Units, w.table)
	w.out.FreezerDays = FreezerDays(w.Prepared.SI(), w.Units, w.out.FreezerDay)
	if w.Freezer.Given() && w.out.FreezerDays.High > 1 {
		w.find(measure.Mind, "freezer-more-than-a-day", w.out.FreezerDay.Source,
			fmt.Sprintf("One batch of %s is more than this freezer should take in a day (%s).", w.out.Prepared.Text, w.out.FreezerDay.Text),
			"Spread it over "+w.out.FreezerDays.Text+", or use more freezers; keep the rest in the refrigerator.")
	}
}

// storage gives the best-quality window and the text of the label.
func (w *worker) storage() {
	t := w.Treatment
	low, high := t.StorageMonths, t.StorageMonthsHigh
	f := measure.Figure{
		ID: "best-by", Label: "Best quality", Value: low, High: high, Unit: "months", Basis: measure.Ruled, Source: t.StorageSource,
		Text:    measure.Range(measure.Plain(low), measure.Plain(high), "months") + " at 0 °F or below",
		Working: "kept at 0 °F (−18 °C) or below; later it is a loss of quality, not of safety",
	}
	w.out.Label = Label{Food: w.food(), Cut: t.Cut, Amount: "1 " + string(w.Pack.Size), Cook: "Cook before eating."}
	if !w.FreezeOn.IsZero() {
		from, to := monthsLater(w.FreezeOn, int(low)), monthsLater(w.FreezeOn, int(high))
		f.Also = from.Format("2006-01-02") + " to " + to.Format("2006-01-02")
		if low == high {
			f.Also = to.Format("2006-01-02")
		}
		w.out.Label.Frozen = w.FreezeOn.Format("2006-01-02")
		w.out.Label.BestBy = to.Format(time.DateOnly)
		w.out.Label.BestFrom = from.Format(time.DateOnly)
	}
	w.out.BestBy = f
}

// monthsLater is the same day of a later month, or that month's last day
// where it is shorter.
func monthsLater(day time.Time, months int) time.Time {
	first := time.Date(day.Year(), day.Month()+time.Month(months), 1, 0, 0, 0, 0, time.UTC)
	last := first.AddDate(0, 1, -1)
	return first.AddDate(0, 0, min(day.Day(), last.Day())-1)
}

func (w *worker) food() string {
	if w.Treatment.Grade != "" {
		return w.Crop.Name + ", " + w.Treatment.Grade
	}
	return w.Crop.Name
}

// provenance says what the minutes rest on where a person should know.
func (w *worker) provenance() {
	t := w.Treatment
	if t.Standing == reference.FromMemory {
		w.find(measure.Mind, "from-memory", t.Source, "This treatment was entered from memory; the page was not read for this table.",
			"Check it against your agency's current table before class.")
	}
	for _, field := range slices.Sorted(maps.Keys(t.Changed)) {
		edit := t.Changed[field]
		w.find(measure.Note, "changed-here-"+field, "", fmt.Sprintf("Changed here: %s is %s; the shipped value is %s.", field, edit.New, edit.Old),
			"Reason given: "+orNone(edit.Why)+".")
	}
	if t.Note != "" {
		w.find(measure.Note, "treatment-note", t.Source, t.Note, "")
	}
}

func orNone(s string) string {
	if s == "" {
		return "none"
	}
	return s
}
