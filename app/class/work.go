package class

import (
	"fmt"
	"sync"
	"time"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// Work computes everything that can be computed about a class with a table.
// It is pure and total: what is missing or cannot be used becomes a finding.
func Work(c Class, table *reference.Table) Worked {
	return WorkWith(&estimate.Memory{}, c, table)
}

// WorkWith is Work with a memory of estimates, for classes that are worked out
// again at every change.
func WorkWith(memory *estimate.Memory, c Class, table *reference.Table) Worked {
	w := Worked{Class: c.Clone(), Table: table}
	day, _ := ParseDate(c.Date) // a date that is no date was refused at entry
	w.Batches = make([]BatchWorked, len(c.Batches))
	var all sync.WaitGroup
	for i := range c.Batches { // the estimates take milliseconds each
		all.Go(func() { w.Batches[i] = workBatch(memory, c, i, day, table) })
	}
	all.Wait()
	w.totals(memory)
	w.shopping()
	w.classFindings()
	return w
}

func workBatch(memory *estimate.Memory, c Class, i int, day time.Time, table *reference.Table) BatchWorked {
	b := c.Batches[i]
	one := BatchWorked{Batch: b}
	one.Treatment, one.Known = table.Treatment(b.Treatment)
	if !one.Known {
		one.Findings = []measure.Finding{{
			ID: "unknown-treatment", Severity: measure.Stop,
			Says: fmt.Sprintf("The table has no treatment “%s”.", b.Treatment),
			Do:   "Choose one from the crop table.",
		}}
		return one
	}
	one.Crop, _ = table.Crop(one.Treatment.Crop)
	kettle, _ := c.Kit.KettleNamed(b.Kettle)
	burner, _ := c.Kit.BurnerNamed(b.Burner)
	one.Worked = batch.Work(batch.Job{
		Crop: one.Crop, Treatment: one.Treatment,
		Prepared: b.Prepared, Kettle: kettle.Holds, Basket: kettle.Across, Burner: burner.Heat, Start: b.Start,
		Tap: c.Place.Tap, Bath: c.Kit.BathWater, Altitude: c.Place.Altitude, Freezer: c.Place.Freezer,
		Pack: b.Pack, FreezeOn: day, Units: c.Units, Memory: memory,
	}, table)
	return one
}

func (w *Worked) find(severity measure.Severity, id, source, says, do string) {
	w.Findings = append(w.Findings, measure.Finding{ID: id, Severity: severity, Says: says, Do: do, Source: source})
}

// classFindings are what concerns the class as a whole.
func (w *Worked) classFindings() {
	c := w.Class
	if len(c.Batches) == 0 {
		w.find(measure.Note, "no-batches", "", "The class has no batches yet.", "Choose a treatment in the crop table and add a batch.")
	}
	if c.Edition != "" && c.Edition != w.Table.Edition {
		w.find(measure.Mind, "other-edition", "",
			fmt.Sprintf("This class was planned with “%s”; the figures here come from “%s”.", c.Edition, w.Table.Edition),
			"Look through the treatments before printing.")
	}
	if f, ok := batch.FreezerWarning("class-freezer", "What the class packs ("+w.Totals.Prepared.Text+")", w.Totals.FreezerDay, w.Totals.FreezerDays); ok {
		f.Do = "Packs that go home on ice do not count. " + f.Do
		w.Findings = append(w.Findings, f)
	}
	w.sharing()
	stations := int(w.Totals.Stations.Value)
	for i, b := range w.Batches {
		if b.Known && b.Batch.Stations > stations {
			w.find(measure.Mind, fmt.Sprintf("batch-%d-stations", i+1), "",
				fmt.Sprintf("“%s” is planned for %s; there are only %s for %s.", b.Batch.Name, plural(b.Batch.Stations, "station", "stations"), plural(stations, "station", "stations"), plural(c.People.Headcount, "person", "people")),
				"Lower the stations of the batch, or the people at a station.")
		}
	}
	if rest := c.People.Headcount % max(c.People.PerStation, 1); rest != 0 && c.People.Headcount > c.People.PerStation {
		w.find(measure.Note, "uneven-station", "", fmt.Sprintf("Station %d has %s; the others have %d.", stations, plural(rest, "person", "people"), c.People.PerStation), "")
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
	for _, of := range []struct {
		id, one, many string
		have          int
		needed        bool
	}{
		{"burners-shared", "burner", "burners", kit.BurnerCount(), true},
		{"kettles-shared", "kettle", "kettles", kit.KettleCount(), true},
		{"baths-shared", "ice bath", "ice baths", kit.Baths, chilled},
	} {
		if of.needed && heated > of.have {
			w.find(measure.Mind, of.id, "", fmt.Sprintf("%s work at once and there %s %s.", plural(heated, "station", "stations"), isAre(of.have), plural(of.have, of.one, of.many)),
				"They have to take turns: plan more time than one station needs, or borrow more. How long it takes is not worked out.")
		}
	}
	limit := w.Table.Rule("chill-water-max-f")
	if tap := w.Class.Place.Tap; chilled && tap.Given() && tap.In(measure.Fahrenheit) > limit.Value {
		w.find(measure.Mind, "warm-tap", limit.Source, fmt.Sprintf("Tap water of %s is warmer than a bath should be (%s).", tap, batch.RuleTexts(w.Table, w.Class.Units)["chill-water-max-f"]),
			"Have more ice than the rule of thumb says: it cools the water too.")
	}
}

func isAre(n int) string {
	if n == 1 {
		return "is"
	}
	return "are"
}
