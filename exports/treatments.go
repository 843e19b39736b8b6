package exports

import (
	"fmt"
	"slices"
	"strings"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content"
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
	add(class.Work(trial, w.Table).Batches)
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
	s := m.newSheet(def, 109, 82, 58, 97, 76, 102) // each head on one line, on both papers
	s.add(row{cells: []cell{s.wide(title, "Treatments")}, keep: true})
	s.add(row{cells: []cell{s.wide(subtitle, m.altitudeLine())}, space: 6, keep: true})
	s.headFrom = s.add(row{cells: []cell{
		{role: head, value: "Vegetable"},
		{col: 1, role: headUnit, value: "As published"},
		{col: 2, role: headUnit, value: "Here"},
		{col: 3, role: headUnit, value: "The clock starts"},
		{col: 4, role: headUnit, value: "Chill"},
		{col: 5, role: headUnit, value: "Headspace, pack"},
	}, space: 3, keep: true})
	s.headTo = s.headFrom
	if len(m.listed) == 0 {
		s.para(plain, "The class has no batches yet: choose a treatment in the crop table and add a batch.")
	}
	for _, b := range m.listed {
		m.treatment(s, b)
	}
	s.headUntil = len(s.rows)
	m.footnotes(s)
	m.steps(s)
	m.cautions(s, "Cautions", cautionsOf(m.Worked.Batches, m.listed))
	if help := short(m.Class.People.HelpLine); help != "" {
		s.heading("Questions afterwards")
		s.para(plain, help)
	}
	m.notes(s)
	m.sources.list(s, "Sources of this sheet")
	return s
}

// altitudeLine says for which height the minutes of the column “Here” are.
func (m *maker) altitudeLine() string {
	if a := m.Class.Place.Altitude; a.Given() {
		return "“Here” is at " + grouped(a) + ". Minutes always go with the event that starts the clock, and with their source."
	}
	return "No altitude is entered: “Here” is for low altitude. Minutes always go with the event that starts the clock, and with their source."
}

// treatment is one record: minutes or words with what starts the clock,
// chilling, headspace and pack; under it source, water, and what others say.
func (m *maker) treatment(s *sheet, b class.BatchWorked) {
	t := b.Treatment
	name := []run{{true, b.Crop.Name}, {false, ", " + strings.TrimPrefix(pieceName(b.Crop, t), b.Crop.Name+", ")}}
	if t.Size != "" {
		name = append(name, run{false, ", " + t.Size})
	}
	name = append(name, run{false, "; " + methodWords(t.Method)})
	r := row{cells: []cell{{role: plain, runs: name}}, space: 4, keep: true}
	if b.Minutes.InWords() {
		r.cells = append(r.cells, cell{col: 1, span: 2, role: words, value: b.Minutes.Text})
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
		cell{col: 5, role: column, value: b.Headspace.Text + "; " + packWords(t.Pack)})
	s.add(r)

	details := m.treatmentDetails(b)
	edits := editTexts(t)
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
	list := []string{fmt.Sprintf("Source: %s; %s.", m.sources.named(t.Source), t.Standing)}
	switch {
	case t.Method == reference.WaterBlanch:
		list = append(list, fmt.Sprintf("Water: %s %s%s.", m.waterRule(t), m.sources.ref(t.WaterSource), notRead(t.WaterStanding)))
	default:
		list = append(list, "Water: "+b.Water.Text+".")
	}
	if t.BlanchWater != "" {
		list = append(list, fmt.Sprintf("In the water: %s %s.", strings.TrimSuffix(t.BlanchWater, "."), m.sources.ref(t.BlanchSource)))
	}
	if r := m.sources.ref(t.ChillSource); r != "" {
		list = append(list, "Chilling rule "+r+notRead(t.ChillStanding)+".")
	}
	if r := m.sources.ref(b.Headspace.Source); r != "" {
		list = append(list, fmt.Sprintf("Headspace: %s %s%s.", strings.TrimSuffix(b.Headspace.Working, "."), r, notRead(reference.Standing(b.Headspace.Standing))))
	}
	if b.BestBy.Text != "" {
		list = append(list, fmt.Sprintf("Best quality: %s %s.", b.BestBy.Text, m.sources.ref(t.StorageSource)))
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
		return measure.Plain(measure.New(rate, measure.Gallon).SI()/measure.New(1, measure.Pound).SI()) + " L per kg prepared"
	}
	return measure.Plain(rate) + " gal per lb prepared"
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
			text += " (" + methodWords(p.Method) + ")"
		}
		if p.ClockStart == reference.AtOnce && t.ClockStart != reference.AtOnce {
			text += ", counted at once"
		}
		text = fmt.Sprintf("Also published: %s %s, %s", text, m.sources.ref(p.Source), p.Standing)
		if p.Note != "" {
			text += " (" + strings.TrimSuffix(p.Note, ".") + ")"
		}
		list = append(list, text+".")
	}
	if len(agree) > 0 {
		list = append([]string{"The same in " + m.sources.refs(agree...) + "."}, list...)
	}
	return list
}

// footnotes explain the columns.
func (m *maker) footnotes(s *sheet) {
	texts := batch.RuleTexts(m.Table, m.Class.Units)
	altitude := m.Table.Rule("altitude-ft")
	height := measure.New(altitude.Value, measure.Foot)
	if m.Class.Units == measure.Metric {
		height = height.To(measure.Metre)
	}
	back := m.Table.Rule("return-to-boil-min")
	for _, note := range []string{
		fmt.Sprintf("Published minutes are for low altitude; from %s up they are %s longer %s.",
			grouped(height), texts["altitude-extra-min"], m.sources.refs(altitude.Source, m.Table.Rule("altitude-extra-min").Source)),
		fmt.Sprintf("The water should boil again within %s; if it does not, the load is too big %s.", texts["return-to-boil-min"], m.sources.ref(back.Source)),
		"“read”: somebody read the value on a page of that source. “from memory”: not yet. “read elsewhere”: read as a quotation. [3] is number 3 of the sources at the end.",
	} {
		s.add(row{cells: []cell{s.wide(small, note)}})
	}
}

// steps are the method in steps for every way that the class uses.
func (m *maker) steps(s *sheet) {
	texts := batch.RuleTexts(m.Table, m.Class.Units)
	s.heading("The method, step by step")
	methods := m.methods()
	for i, step := range mergedSteps(methods) {
		text := filled(step.ID, step.Text, texts)
		name := fmt.Sprintf("%d. %s", i+1, step.Title)
		if only := stepFor(step, methods); only != "" {
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
func mergedSteps(methods []content.Topic) []content.Step {
	var list []content.Step
	for _, method := range methods {
		at := 0 // where the next step of this method may stand
		steps := content.Steps(method)
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
func stepFor(step content.Step, methods []content.Topic) string {
	var list []string
	for _, method := range methods {
		if slices.Contains(step.Topics, content.Always) || slices.Contains(step.Topics, method) {
			list = append(list, stepMethod(method))
		}
	}
	if len(list) == len(methods) {
		return ""
	}
	return strings.Join(list, ", ")
}

func stepMethod(method content.Topic) string {
	switch method {
	case content.BoilWater:
		return "water blanch"
	case content.Steam:
		return "steam blanch"
	case content.Cook:
		return "cooked through"
	}
	return "packed raw"
}
