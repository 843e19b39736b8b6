package session

import (
	"strings"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// entry is one thing that is entered and that a batch depends on.
type entry struct {
	id, label string
	text      func(side) string
	by        func(plan, trial side) string // nil: no difference of numbers can be said
}

// entered lists what was entered differently.
func (s *Session) entered(plan, trial side) []Difference {
	var all []Difference
	for _, e := range s.entries() {
		d := Difference{ID: e.id, Label: e.label, Plan: e.text(plan), Trial: e.text(trial), Entered: true}
		if d.Plan == d.Trial {
			continue
		}
		if e.by != nil {
			d.By = e.by(plan, trial)
		}
		all = append(all, d)
	}
	return all
}

// entries lists everything entered that a figure of a batch can follow from.
func (s *Session) entries() []entry {
	v := s.voice
	return []entry{
		amount(v, "prepared", v.Say("Prepared weight"), v.Say("not entered"), func(of side) measure.Mass { return of.Batch.Prepared }),
		{id: "treatment", label: v.Say("Treatment"), text: s.treatmentText},
		{"kettle", v.Say("Kettle"), s.kettleText, func(plan, trial side) string {
			return amountBy(v, trial.class.Units, kettleOf(plan).Holds, kettleOf(trial).Holds)
		}},
		{id: "burner", label: v.Say("Burner"), text: s.burnerText},
		amount(v, "start", v.Say("Vegetables at"), v.Say("guessed"), func(of side) measure.Temperature { return of.Batch.Start }),
		amount(v, "altitude", v.Say("Altitude"), v.Say("not entered"), func(of side) measure.Length { return of.class.Place.Altitude }),
		amount(v, "tap", v.Say("Tap water"), v.Say("guessed"), func(of side) measure.Temperature { return of.class.Place.Tap }),
		amount(v, "bath-water", v.Say("Water in one bath"), v.Say("not entered"), func(of side) measure.Volume { return of.class.Kit.BathWater }),
		amount(v, "ice-entered", v.Say("Ice in the bath"), v.Say("by the rule"), func(of side) measure.Mass { return of.Batch.Ice }),
		amount(v, "freezer", v.Say("Freezer"), v.Say("not entered"), func(of side) measure.Volume { return of.class.Place.Freezer }),
		{id: "pack", label: v.Say("Packing"), text: func(of side) string { return s.packText(of.Batch.Pack) }},
		{"stations", v.Say("Stations"), s.stationsText, func(plan, trial side) string {
			return signed(float64(trial.Batch.Stations-plan.Batch.Stations), "")
		}},
		{id: "units", label: v.Say("Figures in"), text: s.unitsText},
	}
}

// amount is an entry of a quantity; none is said where it is not given.
func amount[D measure.Dimension](v *words.Voice, id, label, none string, of func(side) measure.Of[D]) entry {
	return entry{id, label,
		func(one side) string {
			if q := of(one); q.Given() {
				return v.Amount(q.String())
			}
			return none
		},
		func(plan, trial side) string { return amountBy(v, trial.class.Units, of(plan), of(trial)) }}
}

// treatmentText names a treatment, with what it does where others have the same
// name.
func (s *Session) treatmentText(of side) string {
	if !of.Known {
		return s.voice.Say("“%s”, not in the table", of.Batch.Treatment)
	}
	name := s.TreatmentName(of.Treatment)
	for _, other := range s.table.Treatments {
		if other.ID != of.Treatment.ID && s.TreatmentName(other) == name {
			return name + ": " + s.TreatmentDoes(of.Treatment)
		}
	}
	return name
}

func kettleOf(of side) class.Kettle {
	kettle, _ := of.class.Kit.KettleNamed(of.Batch.Kettle)
	return kettle
}

// noneChosen is said where a batch has no kettle or no burner.
func (s *Session) noneChosen() string { return s.voice.Say("none chosen") }

// kettleText is "Steamer, 2 qt, basket 9 in across".
func (s *Session) kettleText(of side) string {
	kettle := kettleOf(of)
	if kettle.Name == "" {
		return s.noneChosen()
	}
	parts := []string{kettle.Name}
	if kettle.Holds.Given() {
		parts = append(parts, s.voice.Amount(kettle.Holds.String()))
	} else {
		parts = append(parts, s.voice.Say("not known what it holds"))
	}
	if kettle.Across.Given() {
		parts = append(parts, s.voice.Say("basket %s across", s.voice.Amount(kettle.Across.String())))
	}
	return strings.Join(parts, ", ")
}

// burnerText is the name of a burner and what is known of its heat. A rehearsal
// counts once all of it is entered.
func (s *Session) burnerText(of side) string {
	burner, ok := of.class.Kit.BurnerNamed(of.Batch.Burner)
	if !ok {
		return s.noneChosen()
	}
	parts := []string{burner.Name}
	if kind := s.burnerKindName(burner.Heat.Kind); kind != "" {
		parts = append(parts, kind)
	}
	if burner.Heat.Rating.Given() {
		parts = append(parts, burner.Heat.Rating.String())
	}
	if r := burner.Heat.Rehearsal; r.Given() {
		parts = append(parts, s.voice.Say("%s from %s boiled in %s", r.Water, r.From, r.Took))
	}
	if len(parts) == 1 {
		parts = append(parts, s.voice.Say("its heat not known"))
	}
	return strings.Join(parts, ", ")
}

// burnerKindName says a kind in words, "" for one that is not known.
func (s *Session) burnerKindName(kind batch.BurnerKind) string {
	switch kind {
	case batch.Coil:
		return s.voice.Say("electric coil or cast plate")
	case batch.Radiant:
		return s.voice.Say("electric under glass")
	case batch.Induction:
		return s.voice.Say("induction")
	case batch.Gas:
		return s.voice.Say("gas")
	}
	return ""
}

// packText is "3 pint bags", "wide-mouth quart jars, as many as it gives, loose
// on a tray first". A bag has no mouth.
func (s *Session) packText(p batch.Packing) string {
	v := s.voice
	one, many := p.ContainerName(v)
	if p.Container != batch.Bag {
		one, many = v.Say(mouthed[p.Mouth], one), v.Say(mouthed[p.Mouth], many)
	}
	text := v.Say("%s, as many as it gives", many)
	if p.Count > 0 {
		text = measure.Counted(float64(p.Count), one, many)
	}
	if p.Tray {
		text = v.Say("%s, loose on a tray first", text)
	}
	return text
}

// mouthed names a container with its mouth.
var mouthed = map[reference.Mouth]string{
	reference.WideMouth: words.Key("wide-mouth %s"), reference.NarrowMouth: words.Key("narrow-mouth %s"),
}

func (s *Session) stationsText(of side) string {
	return measure.Counted(float64(of.Batch.Stations), s.voice.Say("station"), s.voice.Say("stations"))
}

func (s *Session) unitsText(of side) string {
	if of.class.Units == measure.Metric {
		return s.voice.Say("kilograms, litres, °C")
	}
	return s.voice.Say("pounds, gallons, °F")
}
