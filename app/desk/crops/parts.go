package crops

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// parts are the parts of a record below its minutes; empty ones are left out.
func parts(r *record, units measure.System, crop reference.Crop, t reference.Treatment) []fyne.CanvasObject {
	table := r.crops.session.Table()
	var out []fyne.CanvasObject
	add := func(title string, lines []fyne.CanvasObject) {
		if len(lines) > 0 {
			heading := look.NewText(title, look.SizeText, look.Ink, fyne.TextStyle{Bold: true})
			out = append(out, look.Column(6, look.Column(3, heading, look.Hairline()), look.Column(8, lines...)))
		}
	}
	add("Changed here", changes(r, t))
	add("The whole treatment", facts(table, units, crop, t))
	add("Also published", others(table, t))
	add("Select and prepare", preparation(table, crop))
	add("How much it gives", yields(table, crop))
	return out
}

// fact is a label over a value, with a line of source below where it has one.
func fact(label, value, source string) fyne.CanvasObject {
	lines := []fyne.CanvasObject{look.Label(label), look.Body(value)}
	if source != "" {
		lines = append(lines, look.Small(source))
	}
	return look.Column(0, lines...)
}

// ruleSource names a source, and its standing where nobody read it there.
func ruleSource(table *reference.Table, id string, s reference.Standing) string {
	if id == "" {
		return string(s)
	}
	return joined(" · ", sourceName(table, id), standingUnlessRead(s))
}

// printed is a value of the table as a rule of the method prints it, in the
// units of the class.
func printed(units measure.System, value float64, unit string) string {
	one := reference.Rule{ID: unit, Value: value, High: value, Unit: unit}
	return batch.RuleTexts(&reference.Table{Rules: []reference.Rule{one}}, units)[unit]
}

func facts(table *reference.Table, units measure.System, crop reference.Crop, t reference.Treatment) []fyne.CanvasObject {
	rules := batch.RuleTexts(table, units)
	out := []fyne.CanvasObject{fact("Chill", chillFact(table, t), ruleSource(table, t.ChillSource, t.ChillStanding))}
	if t.WaterGalPerLb > 0 {
		water := look.Sentence(printed(units, t.WaterGalPerLb, "gal/lb"))
		if crop.Leafy && t.WaterGalPerLb == table.Rule("water-leafy-gal-per-lb").Value {
			water += ", as leafy greens take; other vegetables take " + rules["water-gal-per-lb"]
		}
		out = append(out, fact("Boiling water", water, ruleSource(table, t.WaterSource, t.WaterStanding)))
	}
	if t.BlanchWater != "" {
		out = append(out, fact("Into the water or before it", t.BlanchWater, sourceName(table, t.BlanchSource)))
	}
	out = append(out,
		fact("Pack", look.Sentence(packWords(t.Pack)), ""),
		fact("Headspace", look.Sentence(headspaceFact(table, units, t)), ruleSource(table, t.HeadspaceSource, t.HeadspaceStanding)))
	if t.StorageMonths > 0 {
		months := measure.Range(measure.Plain(t.StorageMonths), measure.Plain(t.StorageMonthsHigh), "months at "+rules["hold-f"])
		out = append(out, fact("Best quality", months, sourceName(table, t.StorageSource)))
	}
	for _, note := range []string{t.Note, crop.Note} {
		if note != "" {
			out = append(out, fact("Note", note, ""))
		}
	}
	return out
}

func chillFact(table *reference.Table, t reference.Treatment) string {
	if t.ChillFactor == 0 || t.Minutes == 0 {
		return look.Sentence(chillWords(table, t))
	}
	if t.ChillFactor == 1 {
		return chillWords(table, t) + ", as long as the blanch"
	}
	return fmt.Sprintf("%s, %s times the blanch", chillWords(table, t), measure.Plain(t.ChillFactor))
}

// headspaceFact spells the headspace table out where it is by size and mouth.
func headspaceFact(table *reference.Table, units measure.System, t reference.Treatment) string {
	switch {
	case t.HeadspaceRow == "" && t.HeadspaceIn > 0:
		return printed(units, t.HeadspaceIn, "in")
	case t.HeadspaceRow == "":
		return headspaceWords(t)
	}
	text := ""
	for _, size := range []batch.Size{batch.Pint, batch.Quart} {
		for _, mouth := range []reference.Mouth{reference.WideMouth, reference.NarrowMouth} {
			if h, err := table.HeadspaceFor(t.HeadspaceRow, string(size), mouth); err == nil {
				text = joined("; ", text, fmt.Sprintf("%s, %s mouth: %s", size, mouth, printed(units, h.Inches, "in")))
			}
		}
	}
	return text
}

// changes lists what was changed here, each with a button to take it back.
func changes(r *record, t reference.Treatment) []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, field := range reference.EditFields {
		e, ok := t.Changed[field]
		if !ok {
			continue
		}
		says := look.NewText(fmt.Sprintf("%s: %s instead of %s as shipped.", fieldNames[field], fieldWords(field, reference.FieldText(t, field)), fieldWords(field, e.Old)),
			look.SizeText, look.Edited, fyne.TextStyle{}).Wrapped()
		why := look.Small(fmt.Sprintf("%s — %s, %s", e.Why, e.Who, e.When.Format("2006-01-02")))
		back := widget.NewButton("Take back", func() { r.takeBack(t.ID, field) })
		out = append(out, look.Marked(look.IconEdited(), look.Column(3, says, why, container.NewHBox(back))))
	}
	return out
}

func (r *record) takeBack(treatment, field string) {
	if err := r.crops.session.TakeBack(treatment, field); err != nil {
		r.say(look.Sentence(err.Error()))
	}
}

// others are the values that other sources publish.
func others(table *reference.Table, t reference.Treatment) []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, p := range t.Also {
		out = append(out, fact(alsoLabel(p), alsoText(p), joined(" · ", sourceName(table, p.Source), string(p.Standing), p.Note)))
	}
	return out
}

func alsoLabel(p reference.Published) string {
	label := "Another value"
	switch {
	case p.Agrees && p.Minutes > 0:
		label = "The same minutes"
	case p.Agrees:
		label = "The same words"
	}
	if p.Method != "" {
		label += ", " + session.MethodName(p.Method)
	}
	return label
}

// alsoText is a published value with its start, which it may not say.
func alsoText(p reference.Published) string {
	text := p.Words
	if p.Minutes > 0 {
		text = timeAndWords(p.Minutes, p.MinutesHigh, p.Words)
	}
	switch p.ClockStart {
	case "":
		if p.Minutes > 0 {
			text += "; the page does not say when the clock starts"
		}
	case reference.NoClock:
	default:
		text += "; the clock starts " + p.ClockStart.Says()
	}
	return look.Sentence(text)
}

func preparation(table *reference.Table, crop reference.Crop) []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, p := range crop.Prep {
		from := joined(" · ", sourceName(table, p.Source), standingUnlessRead(p.Standing))
		for _, one := range [][2]string{{"Select", p.Select}, {"Prepare", p.Prepare}, {"Soak", p.Soak}} {
			if one[1] != "" {
				out = append(out, fact(one[0], one[1], ""))
			}
		}
		out = append(out, look.Small(from))
	}
	return out
}

func standingUnlessRead(s reference.Standing) string {
	if s == reference.Read {
		return ""
	}
	return string(s)
}

func yields(table *reference.Table, crop reference.Crop) []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, y := range table.Yields {
		if y.Crop != crop.ID {
			continue
		}
		label := joined(", ", y.MarketUnit, y.AsBought)
		if label == "" {
			label = "As bought"
		}
		if y.Chosen {
			label += " (used for shopping)"
		}
		out = append(out, fact(look.Sentence(label), yieldText(y), joined(" · ", sourceName(table, y.Source), standingUnlessRead(y.Standing), y.Note)))
	}
	return out
}

func yieldText(y reference.Yield) string {
	span := func(low, high float64, unit string) string {
		if low == 0 {
			return ""
		}
		return measure.Range(measure.Plain(low), measure.Plain(max(low, high)), unit)
	}
	text := joined(" gives ", span(y.WeightLb, y.WeightHighLb, "lb"), span(y.Pints, y.PintsHigh, "pints frozen"))
	each := span(y.LbPerPint, y.LbPerPintHigh, "lb for a pint")
	left := ""
	if y.UsableShare > 0 {
		left = measure.Plain(y.UsableShare*100) + " % is left after trimming"
	}
	return joined("; ", text, each, left)
}
