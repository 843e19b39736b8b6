package session

import (
	"strings"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
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
	return []entry{
		amount("prepared", "Prepared weight", "not entered", func(of side) measure.Mass { return of.Batch.Prepared }),
		{id: "treatment", label: "Treatment", text: s.treatmentText},
		{"kettle", "Kettle", kettleText, func(plan, trial side) string { return amountBy(kettleOf(plan).Holds, kettleOf(trial).Holds) }},
		{id: "burner", label: "Burner", text: burnerText},
		amount("start", "Vegetables at", "guessed", func(of side) measure.Temperature { return of.Batch.Start }),
		amount("altitude", "Altitude", "not entered", func(of side) measure.Length { return of.class.Place.Altitude }),
		amount("tap", "Tap water", "guessed", func(of side) measure.Temperature { return of.class.Place.Tap }),
		amount("bath-water", "Water in one bath", "not entered", func(of side) measure.Volume { return of.class.Kit.BathWater }),
		amount("freezer", "Freezer", "not entered", func(of side) measure.Volume { return of.class.Place.Freezer }),
		{id: "pack", label: "Packing", text: func(of side) string { return packText(of.Batch.Pack) }},
		{"stations", "Stations", stationsText, func(plan, trial side) string {
			return signed(float64(trial.Batch.Stations-plan.Batch.Stations), "stations")
		}},
		{id: "units", label: "Figures in", text: unitsText},
	}
}

// amount is an entry of a quantity; none is said where it is not given.
func amount[D measure.Dimension](id, label, none string, of func(side) measure.Of[D]) entry {
	return entry{id, label,
		func(one side) string {
			if q := of(one); q.Given() {
				return q.String()
			}
			return none
		},
		func(plan, trial side) string { return amountBy(of(plan), of(trial)) }}
}

// treatmentText names a treatment, with what it does where others have the same
// name.
func (s *Session) treatmentText(of side) string {
	if !of.Known {
		return "“" + of.Batch.Treatment + "”, not in the table"
	}
	name := s.TreatmentName(of.Treatment)
	for _, other := range s.table.Treatments {
		if other.ID != of.Treatment.ID && s.TreatmentName(other) == name {
			return name + ": " + TreatmentDoes(of.Treatment)
		}
	}
	return name
}

func kettleOf(of side) class.Kettle {
	kettle, _ := of.class.Kit.KettleNamed(of.Batch.Kettle)
	return kettle
}

// noneChosen is said where a batch has no kettle or no burner.
const noneChosen = "none chosen"

// kettleText is "Steamer, 2 qt, basket 9 in across".
func kettleText(of side) string {
	kettle := kettleOf(of)
	if kettle.Name == "" {
		return noneChosen
	}
	text := kettle.Name + ", not known what it holds"
	if kettle.Holds.Given() {
		text = kettle.Name + ", " + kettle.Holds.String()
	}
	if kettle.Across.Given() {
		text += ", basket " + kettle.Across.String() + " across"
	}
	return text
}

// burnerText is the name of a burner and what is known of its heat. A rehearsal
// counts once all of it is entered.
func burnerText(of side) string {
	burner, ok := of.class.Kit.BurnerNamed(of.Batch.Burner)
	if !ok {
		return noneChosen
	}
	parts := []string{burner.Name}
	if kind := burnerKindName(burner.Heat.Kind); kind != "" {
		parts = append(parts, kind)
	}
	if burner.Heat.Rating.Given() {
		parts = append(parts, burner.Heat.Rating.String())
	}
	if r := burner.Heat.Rehearsal; r.Given() {
		parts = append(parts, r.Water.String()+" from "+r.From.String()+" boiled in "+r.Took.String())
	}
	if len(parts) == 1 {
		parts = append(parts, "its heat not known")
	}
	return strings.Join(parts, ", ")
}

// burnerKindName says a kind in words, "" for one that is not known.
func burnerKindName(kind batch.BurnerKind) string {
	switch kind {
	case batch.Coil:
		return "electric coil or cast plate"
	case batch.Radiant:
		return "electric under glass"
	}
	return string(kind)
}

// packText is "3 pint bags", "wide-mouth quart jars, as many as it gives, loose
// on a tray first". A bag has no mouth.
func packText(p batch.Packing) string {
	one := string(p.Size) + " " + string(p.Container)
	if p.Container != batch.Bag {
		one = string(p.Mouth) + "-mouth " + one
	}
	text := plural(one) + ", as many as it gives"
	if p.Count > 0 {
		text = measure.Counted(float64(p.Count), one, plural(one))
	}
	if p.Tray {
		text += ", loose on a tray first"
	}
	return text
}

func stationsText(of side) string {
	return measure.Counted(float64(of.Batch.Stations), "station", "stations")
}

func unitsText(of side) string {
	if of.class.Units == measure.Metric {
		return "kilograms, litres, °C"
	}
	return "pounds, gallons, °F"
}
