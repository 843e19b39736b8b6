package class

import (
	"fmt"
	"sync"
	"time"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// Work computes everything that can be computed about a class with a table.
// It is pure and total: what is missing or cannot be used becomes a finding.
// It speaks English.
func Work(c Class, table *reference.Table) Worked {
	return WorkWith(With{}, c, table)
}

// With is what a class is worked out with, beside the table. The zero value is
// good for a class that is worked out once, in English.
type With struct {
	Memory *estimate.Memory // of estimates, for a class that is worked out again at every change; nil: none
	Voice  *words.Voice     // that everything is said by; nil: English. The table's own texts are said already
}

// WorkWith is Work with a memory and a voice.
func WorkWith(with With, c Class, table *reference.Table) Worked {
	memory := with.Memory
	if memory == nil {
		memory = &estimate.Memory{}
	}
	w := Worked{Class: c.Clone(), Table: table, Voice: with.Voice}
	day, _ := ParseDate(c.Date) // a date that is no date was refused at entry
	w.Batches = make([]BatchWorked, len(c.Batches))
	var all sync.WaitGroup
	for i := range c.Batches { // the estimates take milliseconds each
		all.Go(func() { w.Batches[i] = workBatch(With{memory, with.Voice}, c, i, day, table) })
	}
	all.Wait()
	w.totals(memory)
	w.shopping()
	w.classFindings()
	return w
}

// WorkBatch works out one batch of a class by itself, as WorkWith does: for what
// follows one batch at every keystroke. The totals of a class take longer than
// a batch.
func WorkBatch(with With, c Class, i int, table *reference.Table) BatchWorked {
	day, _ := ParseDate(c.Date)
	return workBatch(with, c, i, day, table)
}

func workBatch(with With, c Class, i int, day time.Time, table *reference.Table) BatchWorked {
	b := c.Batches[i]
	one := BatchWorked{Batch: b}
	one.Treatment, one.Known = table.Treatment(b.Treatment)
	if !one.Known {
		one.Findings = []measure.Finding{{
			ID: "unknown-treatment", Severity: measure.Stop,
			Says: with.Voice.Say("The table has no treatment “%s”.", b.Treatment),
			Do:   with.Voice.Say("Choose one from the crop table."),
		}}
		return one
	}
	one.Crop, _ = table.Crop(one.Treatment.Crop)
	kettle, _ := c.Kit.KettleNamed(b.Kettle)
	burner, _ := c.Kit.BurnerNamed(b.Burner)
	one.Worked = batch.Work(batch.Job{
		Crop: one.Crop, Treatment: one.Treatment,
		Prepared: b.Prepared, Kettle: kettle.Holds, Basket: kettle.Across, Burner: burner.Heat, Start: b.Start,
		Tap: c.Place.Tap, Bath: c.Kit.BathWater, Ice: b.Ice, Altitude: c.Place.Altitude, Freezer: c.Place.Freezer,
		Pack: b.Pack, FreezeOn: day, Units: c.Units, Memory: with.Memory, Voice: with.Voice,
	}, table)
	return one
}

func (w *Worked) find(severity measure.Severity, id, source, says, do string) {
	w.Findings = append(w.Findings, measure.Finding{ID: id, Severity: severity, Says: says, Do: do, Source: source})
}

// classFindings are what concerns the class as a whole.
func (w *Worked) classFindings() {
	c, v := w.Class, w.Voice
	if len(c.Batches) == 0 {
		w.find(measure.Note, "no-batches", "", v.Say("The class has no batches yet."), v.Say("Choose a treatment in the crop table and add a batch."))
	}
	if c.Edition != "" && c.Edition != w.Table.Edition {
		w.find(measure.Mind, "other-edition", "",
			v.Say("This class was planned with “%s”; the figures here come from “%s”.", c.Edition, w.Table.Edition),
			v.Say("Look through the treatments before printing."))
	}
	if f, ok := batch.FreezerWarning("class-freezer", v.Say("What the class packs (%s)", w.Totals.Prepared.Text), w.Totals.FreezerDay, w.Totals.FreezerDays, v); ok {
		f.Do = v.Say("Packs that go home on ice do not count. %s", f.Do)
		w.Findings = append(w.Findings, f)
	}
	w.sharing()
	stations := int(w.Totals.Stations.Value)
	for i, b := range w.Batches {
		if b.Known && b.Batch.Stations > stations {
			w.find(measure.Mind, fmt.Sprintf("batch-%d-stations", i+1), "",
				v.Say("“%s” is planned for %s; there are only %s for %s.", b.Batch.Name, stationCount(v, b.Batch.Stations), stationCount(v, stations), peopleCount(v, c.People.Headcount)),
				v.Say("Lower the stations of the batch, or the people at a station."))
		}
	}
	if rest := c.People.Headcount % max(c.People.PerStation, 1); rest != 0 && c.People.Headcount > c.People.PerStation {
		w.find(measure.Note, "uneven-station", "", v.Say("Station %d has %s; the others have %d.", stations, peopleCount(v, rest), c.People.PerStation), "")
	}
}

// sharing says where stations have to take turns, and where the tap is too warm
// for the baths. How long taking turns needs is not worked out here.
func (w *Worked) sharing() {
	heated, chilled := 0, false
	for _, b := range w.known() {
		if b.Treatment.Method != reference.NoHeat {
			heated = max(heated, b.Batch.Stations)
		}
		chilled = chilled || b.Treatment.ChillFactor > 0
	}
	kit := w.Class.Kit
	v := w.Voice
	for _, of := range []struct {
		id, one, many string
		have          int
		needed        bool
	}{
		{"burners-shared", words.Key("%s work at once and there is 1 burner."), words.Key("%s work at once and there are %d burners."), kit.BurnerCount(), true},
		{"kettles-shared", words.Key("%s work at once and there is 1 kettle."), words.Key("%s work at once and there are %d kettles."), kit.KettleCount(), true},
		{"baths-shared", words.Key("%s work at once and there is 1 ice bath."), words.Key("%s work at once and there are %d ice baths."), kit.Baths, chilled},
	} {
		if !of.needed || heated <= of.have {
			continue
		}
		says := v.Say(of.many, stationCount(v, heated), of.have)
		if of.have == 1 {
			says = v.Say(of.one, stationCount(v, heated))
		}
		w.find(measure.Mind, of.id, "", says,
			v.Say("They have to take turns: plan more time than one station needs, or borrow more. How long it takes is not worked out."))
	}
	limit := w.Table.Rule("chill-water-max-f")
	if tap := w.Class.Place.Tap; chilled && tap.Given() && tap.In(measure.Fahrenheit) > limit.Value {
		w.find(measure.Mind, "warm-tap", limit.Source, v.Say("Tap water of %s is warmer than a bath should be (%s).", tap, batch.RuleTexts(w.Table, w.Class.Units, v)["chill-water-max-f"]),
			v.Say("Have more ice than the rule of thumb says: it cools the water too."))
	}
}

func stationCount(v *words.Voice, n int) string {
	return measure.Counted(float64(n), v.Say("station"), v.Say("stations"))
}

func peopleCount(v *words.Voice, n int) string {
	return measure.Counted(float64(n), v.Say("person"), v.Say("people"))
}
