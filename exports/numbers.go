package exports

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
)

// NumbersSchema is the version of the document that Numbers writes. It grows
// by one when a name changes its meaning or goes away; names may be added.
const NumbersSchema = 1

// Numbers is everything that was worked out about a class, as JSON. The names
// are stable; the texts are in the language that the class was worked through in:
//
//	schema      version of this document, see NumbersSchema
//	edition     of the crop table that the figures come from
//	class       title, date, units ("us" or "metric"), place, educator,
//	            agency, helpLine, headcount, perStation
//	totals      figures of the class as a whole: stations, prepared-total,
//	            ice-total, ice-bags, ice-balance-total, packs-total,
//	            freezer-day, freezer-days, freezer-warmth
//	batches     one for each batch, in the order of the class:
//	  name, stations, kettle, burner
//	  start       of the vegetables, as typed: "70 °F"; "" where it is guessed
//	  known       false where the table has no such treatment
//	  treatment   id, crop, cut, grade, size, method ("water", "steam",
//	              "cook", "raw"), clock ("boil", "at once", "none"), pack,
//	              source, standing, and changed: what an educator changed,
//	              each with field, new, shipped, why, who
//	  figures     prepared, water, kettle-takes, loads, load-weight,
//	              load-water, published-minutes, minutes, clock, boils, chill, ice,
//	              ice-entered (where it was),
//	              packs, headspace, buy, freezer-day, freezer-days, best-by
//	  estimates   figures of the heat model, those that apply: burner-power,
//	              first-boil, back-at-boil, dip, in-a-minute, largest-load,
//	              layer, layers, boiled-away, centre, enzyme-left, vitamin-c,
//	              ice-balance, chill-cool, chill-cold, freezing, growth
//	  charts      of the heat model, those that apply: kettle, bath, freezer
//	  findings
//	  label       food, cut, frozen, amount, bestFrom, bestBy, cook
//	shopping    one for each crop: crop, marketUnit, buy (a figure)
//	findings    of the class as a whole
//	sources     those named above: id, title, publisher, edition, seen
//
// A figure has id, label, value and high (numbers, equal where there is one;
// null where words stand), unit, words, text as printed, also (the same in
// other units), working, basis ("table", "rule", "entered", "estimate"),
// source (an id, "entered" or ""), standing (how its value came into the
// table, "" where it is no value of the table), note. A finding has id, severity ("stop",
// "mind", "note"), says, do, source.
//
// A chart has id, title, x and y (each label, unit), curves (each id, label and
// the numbers x and y, as many of one as of the other, in the units of x and y),
// marks (each id, label, onX: whether at is a place on x, else on y; at), basis,
// note. Its numbers are rounded to four digits that count.
//
// What people do are the figures; estimates and charts only explain.
func Numbers(w class.Worked) ([]byte, error) {
	doc := numbersDoc{
		Schema: NumbersSchema, Edition: w.Table.Edition,
		Class: numbersClass{
			Title: w.Class.Title, Date: w.Class.Date, Units: string(w.Class.Units), Place: w.Class.Place.Name,
			Educator: w.Class.People.Educator, Agency: w.Class.People.Agency, HelpLine: w.Class.People.HelpLine,
			Headcount: w.Class.People.Headcount, PerStation: w.Class.People.PerStation,
		},
		Totals:   figuresOf(w.Totals.Figures()),
		Findings: findingsOf(w.Findings),
		Batches:  []numbersBatch{}, Shopping: []numbersShopping{}, Sources: []numbersSource{},
	}
	for _, b := range w.Batches {
		doc.Batches = append(doc.Batches, numbersOf(b))
	}
	for _, l := range w.Shopping {
		doc.Shopping = append(doc.Shopping, numbersShopping{l.Crop.Name, l.MarketUnit, figureOf(l.Buy)})
	}
	for _, id := range newSources(w, nil).order {
		s, _ := w.Table.Source(id)
		doc.Sources = append(doc.Sources, numbersSource{s.ID, s.Title, s.Publisher, s.Edition, s.Seen})
	}
	var buf bytes.Buffer
	enc := json.NewEncoder(&buf)
	enc.SetEscapeHTML(false) // people read it
	enc.SetIndent("", "  ")
	if err := enc.Encode(doc); err != nil {
		return nil, fmt.Errorf("exports: numbers: %w", err)
	}
	return inLines(buf.Bytes()), nil
}

type numbersDoc struct {
	Schema   int               `json:"schema"`
	Edition  string            `json:"edition"`
	Class    numbersClass      `json:"class"`
	Totals   []numbersFigure   `json:"totals"`
	Batches  []numbersBatch    `json:"batches"`
	Shopping []numbersShopping `json:"shopping"`
	Findings []numbersFinding  `json:"findings"`
	Sources  []numbersSource   `json:"sources"`
}

type numbersClass struct {
	Title      string `json:"title"`
	Date       string `json:"date"`
	Units      string `json:"units"`
	Place      string `json:"place"`
	Educator   string `json:"educator"`
	Agency     string `json:"agency"`
	HelpLine   string `json:"helpLine"`
	Headcount  int    `json:"headcount"`
	PerStation int    `json:"perStation"`
}

type numbersBatch struct {
	Name      string           `json:"name"`
	Stations  int              `json:"stations"`
	Kettle    string           `json:"kettle"`
	Burner    string           `json:"burner"`
	Start     string           `json:"start"`
	Known     bool             `json:"known"`
	Treatment numbersTreatment `json:"treatment"`
	Figures   []numbersFigure  `json:"figures"`
	Estimates []numbersFigure  `json:"estimates"`
	Charts    []numbersChart   `json:"charts"`
	Findings  []numbersFinding `json:"findings"`
	Label     *numbersLabel    `json:"label"`
}

type numbersTreatment struct {
	ID       string        `json:"id"`
	Crop     string        `json:"crop"`
	Cut      string        `json:"cut"`
	Grade    string        `json:"grade"`
	Size     string        `json:"size"`
	Method   string        `json:"method"`
	Clock    string        `json:"clock"`
	Pack     string        `json:"pack"`
	Source   string        `json:"source"`
	Standing string        `json:"standing"`
	Changed  []numbersEdit `json:"changed"`
}

type numbersEdit struct {
	Field   string `json:"field"`
	New     string `json:"new"`
	Shipped string `json:"shipped"`
	Why     string `json:"why"`
	Who     string `json:"who"`
}

type numbersFigure struct {
	ID       string   `json:"id"`
	Label    string   `json:"label"`
	Value    *float64 `json:"value"`
	High     *float64 `json:"high"`
	Unit     string   `json:"unit"`
	Words    string   `json:"words"`
	Text     string   `json:"text"`
	Also     string   `json:"also"`
	Working  string   `json:"working"`
	Basis    string   `json:"basis"`
	Source   string   `json:"source"`
	Standing string   `json:"standing"`
	Note     string   `json:"note"`
}

type numbersFinding struct {
	ID       string `json:"id"`
	Severity string `json:"severity"`
	Says     string `json:"says"`
	Do       string `json:"do"`
	Source   string `json:"source"`
}

type numbersLabel struct {
	Food     string `json:"food"`
	Cut      string `json:"cut"`
	Frozen   string `json:"frozen"`
	Amount   string `json:"amount"`
	BestFrom string `json:"bestFrom"`
	BestBy   string `json:"bestBy"`
	Cook     string `json:"cook"`
}

type numbersShopping struct {
	Crop       string        `json:"crop"`
	MarketUnit string        `json:"marketUnit"`
	Buy        numbersFigure `json:"buy"`
}

type numbersSource struct {
	ID        string `json:"id"`
	Title     string `json:"title"`
	Publisher string `json:"publisher"`
	Edition   string `json:"edition"`
	Seen      string `json:"seen"`
}

func numbersOf(b class.BatchWorked) numbersBatch {
	t := b.Treatment
	n := numbersBatch{
		Name: b.Batch.Name, Stations: b.Batch.Stations, Kettle: b.Batch.Kettle, Burner: b.Batch.Burner, Known: b.Known,
		Treatment: numbersTreatment{ID: b.Batch.Treatment, Changed: []numbersEdit{}},
		Figures:   []numbersFigure{}, Estimates: figuresOf(b.Estimates.Figures()), Charts: chartsOf(b.Estimates.Charts()),
		Findings: findingsOf(b.Findings),
	}
	if b.Batch.Start.Given() {
		n.Start = b.Batch.Start.String()
	}
	if !b.Known {
		return n
	}
	n.Treatment = numbersTreatment{
		ID: t.ID, Crop: b.Crop.Name, Cut: t.Cut, Grade: t.Grade, Size: t.Size, Method: string(t.Method),
		Clock: string(t.ClockStart), Pack: string(t.Pack), Source: t.Source, Standing: string(t.Standing),
		Changed: []numbersEdit{},
	}
	for _, field := range editedFields(t) {
		e := t.Changed[field]
		n.Treatment.Changed = append(n.Treatment.Changed, numbersEdit{field, e.New, e.Old, e.Why, e.Who})
	}
	n.Figures = figuresOf(b.Figures())
	l := b.Label
	n.Label = &numbersLabel{l.Food, l.Cut, l.Frozen, l.Amount, l.BestFrom, l.BestBy, l.Cook}
	return n
}

func figuresOf(list []measure.Figure) []numbersFigure {
	out := make([]numbersFigure, len(list))
	for i, f := range list {
		out[i] = figureOf(f)
	}
	return out
}

// figureOf keeps a number only where it is one: words have none, and JSON has
// no word for what is not a number.
func figureOf(f measure.Figure) numbersFigure {
	n := numbersFigure{
		ID: f.ID, Label: f.Label, Unit: f.Unit, Words: f.Words, Text: f.Text, Also: f.Also,
		Working: f.Working, Basis: string(f.Basis), Source: f.Source, Standing: f.Standing, Note: f.Note,
	}
	if finite := !math.IsNaN(f.Value-f.High) && !math.IsInf(f.Value-f.High, 0); !f.InWords() && finite {
		n.Value, n.High = &f.Value, &f.High
	}
	return n
}

func findingsOf(list []measure.Finding) []numbersFinding {
	out := make([]numbersFinding, len(list))
	for i, f := range list {
		out[i] = numbersFinding{f.ID, string(f.Severity), f.Says, f.Do, f.Source}
	}
	return out
}
