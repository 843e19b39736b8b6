package crops

import (
	"fmt"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
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
	add(look.Say("Changed here"), changes(r, t))
	add(look.Say("All treatments of this crop"), treatments(r, table, t))
	add(look.Say("The whole treatment"), facts(table, units, crop, t))
	add(look.Say("Also published"), others(table, t))
	add(look.Say("Select and prepare"), preparation(table, crop))
	add(look.Say("How much it gives"), yields(table, crop))
	add(look.Say("Questions people ask"), questions(r, t))
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
		return look.Say(string(s))
	}
	return joined(" · ", sourceName(table, id), standingUnlessRead(s))
}

// printed is a value of the table as a rule of the method prints it, in the
// units of the class.
func printed(units measure.System, value float64, unit string) string {
	one := reference.Rule{ID: unit, Value: value, High: value, Unit: unit}
	return batch.RuleTexts(&reference.Table{Rules: []reference.Rule{one}}, units, look.Voice())[unit]
}

func facts(table *reference.Table, units measure.System, crop reference.Crop, t reference.Treatment) []fyne.CanvasObject {
	rules := batch.RuleTexts(table, units, look.Voice())
	out := []fyne.CanvasObject{fact(look.Say("Chill"), chillFact(table, t), ruleSource(table, t.ChillSource, t.ChillStanding))}
	if t.WaterGalPerLb > 0 {
		water := look.Sentence(printed(units, t.WaterGalPerLb, "gal/lb"))
		if crop.Leafy && t.WaterGalPerLb == table.Rule("water-leafy-gal-per-lb").Value {
			water = look.Say("%s, as leafy greens take; other vegetables take %s", water, rules["water-gal-per-lb"])
		}
		out = append(out, fact(look.Say("Boiling water"), water, ruleSource(table, t.WaterSource, t.WaterStanding)))
	}
	if t.BlanchWater != "" {
		out = append(out, fact(look.Say("Into the water or before it"), t.BlanchWater, sourceName(table, t.BlanchSource)))
	}
	out = append(out,
		fact(look.Say("Pack"), look.Sentence(packWords(t.Pack)), ""),
		fact(look.Say("Headspace"), look.Sentence(headspaceFact(table, units, t)), ruleSource(table, t.HeadspaceSource, t.HeadspaceStanding)))
	if t.StorageMonths > 0 {
		cold := look.Say("%s months at %s", months(t), rules["hold-f"])
		out = append(out, fact(look.Say("Best quality"), cold, sourceName(table, t.StorageSource)))
	}
	for _, note := range []string{t.Note, crop.Note} {
		if note != "" {
			out = append(out, fact(look.Say("Note"), note, ""))
		}
	}
	return out
}

func chillFact(table *reference.Table, t reference.Treatment) string {
	if t.ChillFactor == 0 || t.Minutes == 0 {
		return look.Sentence(chillWords(table, t))
	}
	if t.ChillFactor == 1 {
		return look.Say("%s, as long as the blanch", chillWords(table, t))
	}
	return look.Say("%s, %s times the blanch", chillWords(table, t), measure.Plain(t.ChillFactor))
}

// mouths name the mouths of containers, as keys to be said.
var mouths = map[reference.Mouth]string{reference.WideMouth: words.Key("wide mouth"), reference.NarrowMouth: words.Key("narrow mouth")}

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
				text = joined("; ", text, fmt.Sprintf("%s, %s: %s", look.Say(string(size)), look.Say(mouths[mouth]), printed(units, h.Inches, "in")))
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
		says := look.NewText(look.Say("%s: %s instead of %s as shipped.", look.Say(fieldNames[field]), fieldNow(t, field), fieldShipped(t, field)),
			look.SizeText, look.Edited, fyne.TextStyle{}).Wrapped()
		why := look.Small(fmt.Sprintf("%s — %s, %s", e.Why, e.Who, e.When.Format("2006-01-02")))
		back := look.NewButton(look.Say("Take back"), func() { r.takeBack(t.ID, field) })
		out = append(out, look.Marked(look.IconEdited(), look.Column(3, says, why, container.NewHBox(back))))
	}
	return out
}

func (r *record) takeBack(treatment, field string) {
	if err := r.crops.session.TakeBack(treatment, field); err != nil {
		r.say(plain(err))
	}
}

// others are the values that other sources publish.
func others(table *reference.Table, t reference.Treatment) []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, p := range t.Also {
		out = append(out, fact(alsoLabel(p), alsoText(p), joined(" · ", sourceName(table, p.Source), look.Say(string(p.Standing)), p.Note)))
	}
	return out
}

func alsoLabel(p reference.Published) string {
	label := look.Say("Another value")
	switch {
	case p.Agrees && p.Minutes > 0:
		label = look.Say("The same minutes")
	case p.Agrees:
		label = look.Say("The same words")
	}
	if p.Method != "" {
		label += ", " + look.Say(session.MethodName(p.Method))
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
			text = look.Say("%s; the page does not say when the clock starts", text)
		}
	case reference.NoClock:
	default:
		text = withClock(text, p.ClockStart)
	}
	return look.Sentence(text)
}

func preparation(table *reference.Table, crop reference.Crop) []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, p := range crop.Prep {
		from := joined(" · ", sourceName(table, p.Source), standingUnlessRead(p.Standing))
		for _, one := range [][2]string{{look.Say("Select"), p.Select}, {look.Say("Prepare"), p.Prepare}, {look.Say("Soak"), p.Soak}} {
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
	return look.Say(string(s))
}

func yields(table *reference.Table, crop reference.Crop) []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, y := range table.Yields {
		if y.Crop != crop.ID {
			continue
		}
		label := joined(", ", y.MarketUnit, look.Say(string(y.AsBought)))
		if label == "" {
			label = look.Say("As bought")
		}
		if y.Chosen {
			label = look.Say("%s (used for shopping)", label)
		}
		out = append(out, fact(look.Sentence(label), yieldText(y), joined(" · ", sourceName(table, y.Source), standingUnlessRead(y.Standing), y.Note)))
	}
	return out
}

func yieldText(y reference.Yield) string {
	span := func(low, high float64) string {
		return measure.Range(measure.Plain(low), measure.Plain(max(low, high)), "")
	}
	given, pint, left := "", "", ""
	weight, pints := span(y.WeightLb, y.WeightHighLb)+" lb", span(y.Pints, y.PintsHigh)
	switch {
	case y.WeightLb > 0 && y.Pints > 0:
		given = look.Say("%s gives %s pints frozen", weight, pints)
	case y.WeightLb > 0:
		given = weight
	case y.Pints > 0:
		given = look.Say("%s pints frozen", pints)
	}
	if y.LbPerPint > 0 {
		pint = look.Say("%s lb for a pint", span(y.LbPerPint, y.LbPerPintHigh))
	}
	if y.UsableShare > 0 {
		left = look.Say("%s %% is left after trimming", measure.Plain(y.UsableShare*100))
	}
	return look.Sentence(joined("; ", given, pint, left))
}
