package exports

import (
	"fmt"
	"slices"
	"strings"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// listedTreatments are the treatments of a class, one batch of each: those it
// uses, or all of its crops. Those that the class does not use are worked with
// its altitude and packs like any other, as batches of a trial.
func listedTreatments(w class.Worked, all bool) []class.BatchWorked {
	var list []class.BatchWorked
	seen := map[string]bool{}
	add := func(batches []class.BatchWorked) {
		for _, b := range batches {
			if b.Known && !seen[b.Treatment.ID] {
				seen[b.Treatment.ID] = true
				list = append(list, b)
			}
		}
	}
	add(w.Batches)
	if !all {
		return list
	}
	trial := w.Class.Clone()
	trial.Batches = nil
	crops := map[string]bool{}
	for _, b := range w.Batches {
		if !b.Known || crops[b.Crop.ID] {
			continue
		}
		crops[b.Crop.ID] = true
		for _, t := range w.Table.TreatmentsOf(b.Crop.ID) {
			one := b.Batch
			one.Treatment, one.Name = t.ID, ""
			trial.Batches = append(trial.Batches, one)
		}
	}
	add(again(w, trial).Batches)
	// crops in the order of the class, treatments in the order of the table
	place := map[string]int{}
	for i, t := range w.Table.Treatments {
		place[t.ID] = i
	}
	order := func(b class.BatchWorked) int {
		return slices.IndexFunc(w.Batches, func(x class.BatchWorked) bool { return x.Known && x.Crop.ID == b.Crop.ID })
	}
	slices.SortStableFunc(list, func(a, b class.BatchWorked) int {
		if d := order(a) - order(b); d != 0 {
			return d
		}
		return place[a.Treatment.ID] - place[b.Treatment.ID]
	})
	return list
}

// treatments is the sheet that a participant works from: each treatment whole,
// then the method in steps.
func (m *maker) treatments(def Sheet) *sheet {
	s := m.newSheet(def, m.treatmentShares()...)
	s.add(row{cells: []cell{s.wide(title, m.Say("Treatments"))}, keep: true})
	s.add(row{cells: []cell{s.wide(subtitle, m.altitudeLine())}, space: 6, keep: true})
	s.headFrom = s.add(row{cells: []cell{
		{role: head, value: m.Say("Vegetable")},
		{col: 1, role: headUnit, value: m.Say("As published")},
		{col: 2, role: headUnit, value: m.Say("Here")},
		{col: 3, role: headUnit, value: m.Say("The clock starts")},
		{col: 4, role: headUnit, value: m.Say("Chill")},
		{col: 5, role: headUnit, value: m.Say("Headspace, pack")},
	}, space: 3, keep: true})
	s.headTo = s.headFrom
	if len(m.listed) == 0 {
		s.para(plain, m.Say("The class has no batches yet: choose a treatment in the crop table and add a batch."))
	}
	for _, b := range m.listed {
		m.treatment(s, b)
	}
	s.headUntil = len(s.rows)
	m.footnotes(s)
	m.steps(s)
	m.cautions(s, m.Say("Cautions"), m.cautionsOf(m.Worked.Batches, m.listed))
	if help := short(m.Class.People.HelpLine); help != "" {
		s.heading(m.Say("Questions afterwards"))
		s.para(plain, help)
	}
	m.notes(s)
	m.measuresLegend(s)
	m.sources.list(s, m.Say("Sources of this sheet"))
	return s
}

// treatmentShares are the columns: in English each head stands on one line, on
// both papers; in Spanish no word of the table is broken.
func (m *maker) treatmentShares() []float64 {
	if m.Voice.Language() == words.Spanish {
		return []float64{107, 70, 74, 93, 76, 104}
	}
	return []float64{109, 82, 58, 97, 76, 102}
}

// altitudeLine says for which height the minutes of the column “Here” are.
func (m *maker) altitudeLine() string {
	if a := m.Class.Place.Altitude; a.Given() {
		return m.Say("“Here” is at %s. Minutes always go with the event that starts the clock, and with their source.", grouped(m.Voice, a))
	}
	return m.Say("No altitude is entered: “Here” is for low altitude. Minutes always go with the event that starts the clock, and with their source.")
}

// treatment is one record: minutes or words with what starts the clock,
// chilling, headspace and pack; under it source, water, and what others say.
func (m *maker) treatment(s *sheet, b class.BatchWorked) {
	t := b.Treatment
	name := []run{{true, b.Crop.Name}}
	for _, part := range []string{t.Cut, t.Grade, t.Size} {
		if part != "" {
			name = append(name, run{false, ", " + part})
		}
	}
	name = append(name, run{false, "; " + methodWords(m.Voice, t.Method)})
	r := row{cells: []cell{{role: plain, runs: name}}, space: 4, keep: true}
	if b.Minutes.InWords() {
		r.cells = append(r.cells, cell{col: 1, span: 2, role: phrase, value: b.Minutes.Text})
	} else {
		here := b.Minutes.Text
		if b.Minutes.Words != "" {
			here += "\n" + b.Minutes.Words
		}
		r.cells = append(r.cells,
			cell{col: 1, role: column, value: b.Published.Text},
			cell{col: 2, role: boilValue, value: here})
	}
	chill := iceValue
	if b.Chill.InWords() {
		chill = column
	}
	r.cells = append(r.cells,
		cell{col: 3, role: column, value: b.Clock.Text},
		cell{col: 4, role: chill, value: b.Chill.Text},
		cell{col: 5, role: column, value: b.Headspace.Text + "; " + packWords(m.Voice, t.Pack)})
	s.add(r)

	details := m.treatmentDetails(b)
	edits := m.editTexts(t)
	s.add(row{cells: []cell{s.wide(small, strings.Join(details, " "))}, space: 2, keep: len(edits) > 0})
	for i, text := range edits {
		s.add(row{cells: []cell{s.wide(edited, text)}, keep: i < len(edits)-1})
	}
	s.rows[len(s.rows)-1].keep = true
	s.add(row{cells: []cell{s.wide(ruled, nil)}, height: 3})
}

// treatmentDetails are the sentences under a treatment.
func (m *maker) treatmentDetails(b class.BatchWorked) []string {
	t := b.Treatment
	list := []string{m.Say("Source: %s; %s.", m.sources.named(t.Source), m.Say(string(t.Standing)))}
	switch {
	case t.Method == reference.WaterBlanch:
		list = append(list, m.Say("Water: %s %s%s.", m.waterRule(t), m.sources.ref(t.WaterSource), m.sources.notRead(t.WaterStanding)))
	default:
		list = append(list, m.Say("Water: %s.", b.Water.Text))
	}
	if t.BlanchWater != "" {
		list = append(list, m.Say("In the water: %s %s.", strings.TrimSuffix(t.BlanchWater, "."), m.sources.ref(t.BlanchSource)))
	}
	if r := m.sources.ref(t.ChillSource); r != "" {
		list = append(list, m.Say("Chilling rule %s%s.", r, m.sources.notRead(t.ChillStanding)))
	}
	if r := m.sources.ref(b.Headspace.Source); r != "" {
		list = append(list, m.Say("Headspace: %s %s%s.", strings.TrimSuffix(b.Headspace.Working, "."), r, m.sources.notRead(reference.Standing(b.Headspace.Standing))))
	}
	if b.BestBy.Text != "" {
		list = append(list, m.Say("Best quality: %s %s.", b.BestBy.Text, m.sources.ref(t.StorageSource)))
	}
	for _, note := range []string{b.Clock.Note, t.Note} {
		if note != "" {
			list = append(list, note)
		}
	}
	return append(list, m.alsoPublished(t)...)
}

// waterRule is the treatment's own rule in the units of the class.
func (m *maker) waterRule(t reference.Treatment) string {
	rate := t.WaterGalPerLb
	if m.Class.Units == measure.Metric {
		return m.Say("%s L per kg prepared", measure.Plain(measure.New(rate, measure.Gallon).SI()/measure.New(1, measure.Pound).SI()))
	}
	return m.Say("%s gal per lb prepared", measure.Plain(rate))
}

// alsoPublished says what other sources print for the same piece: those that
// agree in one sentence, each other value by itself.
func (m *maker) alsoPublished(t reference.Treatment) []string {
	var agree, list []string
	for _, p := range t.Also {
		if p.Agrees {
			agree = append(agree, p.Source)
			continue
		}
		text := p.Words
		if p.Minutes > 0 {
			text = strings.TrimSpace(measure.MinutesRange(p.Minutes, p.MinutesHigh) + " " + p.Words)
		}
		if p.Method != "" && p.Method != t.Method {
			text += " (" + methodWords(m.Voice, p.Method) + ")"
		}
		if p.ClockStart == reference.AtOnce && t.ClockStart != reference.AtOnce {
			text = m.Say("%s, counted at once", text)
		}
		text = m.Say("Also published: %s %s, %s", text, m.sources.ref(p.Source), m.Say(string(p.Standing)))
		if p.Note != "" {
			text += " (" + strings.TrimSuffix(p.Note, ".") + ")"
		}
		list = append(list, text+".")
	}
	if len(agree) > 0 {
		list = append([]string{m.Say("The same in %s.", m.sources.refs(agree...))}, list...)
	}
	return list
}

// footnotes explain the columns.
func (m *maker) footnotes(s *sheet) {
	texts := m.ruleTexts()
	altitude := m.Table.Rule("altitude-ft")
	height := measure.New(altitude.Value, measure.Foot)
	if m.Class.Units == measure.Metric {
		height = height.To(measure.Metre)
	}
	back := m.Table.Rule("return-to-boil-min")
	for _, note := range []string{
		m.Say("Published minutes are for low altitude; from %s up they are %s longer %s.",
			grouped(m.Voice, height), texts["altitude-extra-min"], m.sources.refs(altitude.Source, m.Table.Rule("altitude-extra-min").Source)),
		m.Say("The water should boil again within %s; if it does not, the load is too big %s.", texts["return-to-boil-min"], m.sources.ref(back.Source)),
		m.Say("“read”: somebody read the value on a page of that source. “from memory”: not yet. “read elsewhere”: read as a quotation. [3] is number 3 of the sources at the end."),
	} {
		s.add(row{cells: []cell{s.wide(small, note)}})
	}
}

// steps are the method in steps for every way that the class uses.
func (m *maker) steps(s *sheet) {
	texts := m.ruleTexts()
	s.heading(m.Say("The method, step by step"))
	methods := m.methods()
	for i, step := range mergedSteps(m.Voice.Language(), methods) {
		text := filled(step.ID, step.Text, texts)
		name := fmt.Sprintf("%d. %s", i+1, step.Title)
		if only := m.stepFor(step, methods); only != "" {
			name += " (" + only + ")"
		}
		s.add(row{cells: []cell{{span: len(s.cols), role: plain, runs: []run{{true, name + ". "}, {false, text}}}}, space: 3})
	}
}

// methods are the methods of the class, in the order of the work.
func (m *maker) methods() []content.Topic {
	var list []content.Topic
	for _, t := range []reference.Method{reference.WaterBlanch, reference.SteamBlanch, reference.CookThrough, reference.NoHeat} {
		if slices.ContainsFunc(m.listed, func(b class.BatchWorked) bool { return b.Treatment.Method == t }) {
			list = append(list, content.Topic(t))
		}
	}
	return list
}

// mergedSteps are the steps of several methods in one list. What they share
// stands once; what only one has stands before the next shared step.
func mergedSteps(l words.Language, methods []content.Topic) []content.Step {
	var list []content.Step
	for _, method := range methods {
		at := 0 // where the next step of this method may stand
		steps := content.Steps(l, method)
		for i, step := range steps {
			if j := slices.IndexFunc(list, func(x content.Step) bool { return x.ID == step.ID }); j >= 0 {
				at = j + 1
				continue
			}
			// before the next step that is already there
			place := len(list)
			for _, later := range steps[i+1:] {
				if j := slices.IndexFunc(list, func(x content.Step) bool { return x.ID == later.ID }); j >= 0 {
					place = j
					break
				}
			}
			at = max(at, place)
			list = slices.Insert(list, at, step)
			at++
		}
	}
	return list
}

// stepFor says for which of the class's methods a step is, "" for all.
func (m *maker) stepFor(step content.Step, methods []content.Topic) string {
	var list []string
	for _, method := range methods {
		if slices.Contains(step.Topics, content.Always) || slices.Contains(step.Topics, method) {
			list = append(list, stepMethod(m.Voice, method))
		}
	}
	if len(list) == len(methods) {
		return ""
	}
	return strings.Join(list, ", ")
}

func stepMethod(v *words.Voice, method content.Topic) string {
	switch method {
	case content.BoilWater:
		return v.Say("water blanch")
	case content.Steam:
		return v.Say("steam blanch")
	case content.Cook:
		return v.Say("cooked through")
	}
	return v.Say("packed raw")
}
