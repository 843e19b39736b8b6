package class

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// Work computes everything that can be computed about a class with a table.
// It is pure and total: what is missing or cannot be used becomes a finding.
func Work(c Class, table *reference.Table) Worked {
	w := Worked{Class: c.Clone(), Table: table}
	day, _ := ParseDate(c.Date) // a date that is no date was refused at entry
	for _, b := range c.Batches {
		one := BatchWorked{Batch: b}
		one.Treatment, one.Known = table.Treatment(b.Treatment)
		if !one.Known {
			one.Findings = []measure.Finding{{
				ID: "unknown-treatment", Severity: measure.Stop,
				Says: fmt.Sprintf("The table has no treatment “%s”.", b.Treatment),
				Do:   "Choose one from the crop table.",
			}}
			w.Batches = append(w.Batches, one)
			continue
		}
		one.Crop, _ = table.Crop(one.Treatment.Crop)
		kettle, _ := c.Kit.KettleNamed(b.Kettle)
		one.Worked = batch.Work(batch.Job{
			Crop: one.Crop, Treatment: one.Treatment,
			Prepared: b.Prepared, Kettle: kettle.Holds, Altitude: c.Place.Altitude, Freezer: c.Place.Freezer,
			Pack: b.Pack, FreezeOn: day, Units: c.Units,
		}, table)
		w.Batches = append(w.Batches, one)
	}
	w.totals()
	w.shopping()
	w.classFindings()
	return w
}

// totals adds up all batches on all their stations.
func (w *Worked) totals() {
	c := w.Class
	unit := measure.Pound
	if c.Units == measure.Metric {
		unit = measure.Kilogram
	}
	stations := math.Ceil(float64(c.People.Headcount) / float64(max(c.People.PerStation, 1)))
	w.Totals.Stations = measure.Figure{
		ID: "stations", Label: "Stations", Value: stations, High: stations, Unit: "stations", Text: measure.Plain(stations),
		Basis: measure.Entered, Source: "entered",
		Working: fmt.Sprintf("%d people ÷ at most %d at a station = %s", c.People.Headcount, c.People.PerStation, measure.Plain(stations)),
	}
	var massKg, ice, packsLow, packsHigh float64
	var massParts, iceParts, packParts []string
	uncounted := 0 // batches whose packs are not known
	iceSource := ""
	for _, b := range w.Batches {
		if !b.Known {
			continue
		}
		n := float64(b.Batch.Stations)
		massKg += b.Batch.Prepared.SI() * n
		massParts = append(massParts, times(b.Batch.Stations, b.Prepared.Text))
		if !b.Ice.InWords() {
			ice += b.Ice.Value * n
			iceParts = append(iceParts, times(b.Batch.Stations, b.Ice.Text))
			iceSource = b.Ice.Source
		}
		if b.Packs.InWords() {
			uncounted++
			continue
		}
		packsLow += b.Packs.Value * n
		packsHigh += b.Packs.High * n
		packParts = append(packParts, times(b.Batch.Stations, measure.Range(measure.Plain(b.Packs.Value), measure.Plain(b.Packs.High), "")))
	}
	total := massKg / unit.Factor
	w.Totals.Prepared = measure.Figure{
		ID: "prepared-total", Label: "Prepared in all", Value: total, High: total, Unit: unit.Symbol,
		Text: measure.Plain(total) + " " + unit.Symbol, Basis: measure.Entered, Source: "entered",
		Working: sum(massParts, measure.Plain(total)+" "+unit.Symbol),
	}
	iceText := measure.Plain(ice) + " " + unit.Symbol
	w.Totals.Ice = measure.Figure{
		ID: "ice-total", Label: "Ice, by rule of thumb", Value: ice, High: ice, Unit: unit.Symbol, Text: iceText,
		Basis: measure.Ruled, Source: iceSource, Working: sum(iceParts, iceText),
		Note: "The rule of thumb counts the food only; warm tap water in the baths needs more.",
	}
	w.Totals.IceBags = iceBags(ice*unit.Factor, iceText, c.Kit.IceBag)
	w.Totals.Packs = measure.Figure{
		ID: "packs-total", Label: "Packs in all", Value: packsLow, High: packsHigh, Unit: "packs",
		Text: measure.Range(measure.Plain(packsLow), measure.Plain(packsHigh), "packs"), Basis: measure.Estimate,
		Working: sum(packParts, measure.Range(measure.Plain(packsLow), measure.Plain(packsHigh), "packs")),
	}
	if uncounted > 0 {
		w.Totals.Packs.Text += " and what " + plural(uncounted, "more batch gives", "more batches give")
		w.Totals.Packs.Note = "Fill one and count where no yield is published."
	}
	w.Totals.FreezerDay = batch.FreezerDay(c.Place.Freezer, c.Units, w.Table)
	w.Totals.FreezerDays = batch.FreezerDays(massKg, c.Units, w.Totals.FreezerDay)
}

// times prints "4 × 3 lb", or "3 lb" for a single station.
func times(stations int, text string) string {
	if stations == 1 {
		return text
	}
	return fmt.Sprintf("%d × %s", stations, text)
}

// sum prints "4 × 3 lb + 2 × 1 lb = 14 lb".
func sum(parts []string, result string) string {
	if len(parts) == 0 {
		return "no batches yet"
	}
	text := strings.Join(parts, " + ")
	if text == result { // one batch at one station
		return result
	}
	return text + " = " + result
}

func iceBags(iceKg float64, iceText string, bag measure.Mass) measure.Figure {
	f := measure.Figure{ID: "ice-bags", Label: "Bags of ice", Unit: "bags", Basis: measure.Ruled, Source: "entered"}
	if !bag.Given() {
		f.Words, f.Text, f.Working = "bag weight not entered", "bag weight not entered", "no bag weight entered"
		return f
	}
	f.Value = math.Ceil(iceKg/bag.SI() - 1e-9)
	f.High = f.Value
	f.Text = measure.Plain(f.Value) + " of " + bag.String()
	f.Working = fmt.Sprintf("%s ÷ %s a bag, whole bags = %s", iceText, bag, measure.Plain(f.Value))
	return f
}

// shopping adds up what to buy, crop by crop.
func (w *Worked) shopping() {
	for _, b := range w.Batches {
		if !b.Known {
			continue
		}
		n := float64(b.Batch.Stations)
		part := times(b.Batch.Stations, b.Buy.Text)
		i := slices.IndexFunc(w.Shopping, func(l ShoppingLine) bool { return l.Crop.ID == b.Crop.ID })
		if i < 0 {
			line := ShoppingLine{Crop: b.Crop, Buy: b.Buy}
			line.Buy.ID, line.Buy.Label = "buy-"+b.Crop.ID, b.Crop.Name
			line.Buy.Value, line.Buy.High, line.Buy.Working = 0, 0, ""
			if y, ok := w.Table.ChosenYield(b.Crop.ID); ok && y.MarketUnit != "" && y.WeightLb > 0 {
				line.MarketUnit = y.MarketUnit + " of about " + measure.Range(measure.Plain(y.WeightLb), measure.Plain(max(y.WeightLb, y.WeightHighLb)), "lb")
			}
			w.Shopping = append(w.Shopping, line)
			i = len(w.Shopping) - 1
		}
		line := &w.Shopping[i]
		if b.Buy.InWords() {
			// a crop with one batch in words cannot be added up; each is listed
			line.Buy.Words = part
		}
		line.Buy.Value += b.Buy.Value * n
		line.Buy.High += b.Buy.High * n
		if line.Buy.Working != "" {
			line.Buy.Working += " + "
		}
		line.Buy.Working += part
	}
	for i := range w.Shopping {
		line := &w.Shopping[i]
		numbers := measure.Range(measure.Plain(line.Buy.Value), measure.Plain(line.Buy.High), line.Buy.Unit)
		switch {
		case line.Buy.Words != "" && line.Buy.High == 0:
			line.Buy.Text = line.Buy.Working
		case line.Buy.Words != "":
			line.Buy.Text = numbers + " and " + line.Buy.Words
		default:
			line.Buy.Text = numbers
			line.Buy.Working += " = " + numbers
		}
		if y, ok := w.Table.ChosenYield(line.Crop.ID); ok && y.AsBought != "" && line.Buy.High > 0 {
			line.Buy.Text += " " + y.AsBought
		}
	}
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
	if c.Place.Freezer.Given() && w.Totals.FreezerDays.High > 1 {
		w.find(measure.Mind, "class-freezer", w.Totals.FreezerDay.Source,
			fmt.Sprintf("The class makes %s of packs; the freezer should take %s in a day.", w.Totals.Prepared.Text, w.Totals.FreezerDay.Text),
			fmt.Sprintf("Spread it over %s, send packs home on ice, or use more freezers.", w.Totals.FreezerDays.Text))
	}
	stations := int(w.Totals.Stations.Value)
	for i, b := range w.Batches {
		if b.Known && b.Batch.Stations > stations {
			w.find(measure.Mind, fmt.Sprintf("batch-%d-stations", i+1), "",
				fmt.Sprintf("“%s” is planned for %d stations; %d people make %d.", b.Batch.Name, b.Batch.Stations, c.People.Headcount, stations),
				"Lower the stations of the batch, or the people at a station.")
		}
	}
	if rest := c.People.Headcount % max(c.People.PerStation, 1); rest != 0 && c.People.Headcount > c.People.PerStation {
		w.find(measure.Note, "uneven-station", "", fmt.Sprintf("Station %d has %s; the others have %d.", stations, plural(rest, "person", "people"), c.People.PerStation), "")
	}
}

func plural(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}
