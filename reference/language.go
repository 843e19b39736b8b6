package reference

import (
	"slices"
	"strings"
	"sync"

	"example.org/kettleside/content/words"
)

// In returns the table as it is read in the voice's language: a copy whose
// texts are said by the voice, with the crops' English and regional names among
// their other names. Ids, numbers and sources stay, and so does what an
// educator typed. In English it is the table itself.
//
// Some texts are also compared by the program and stay as they are in every
// language; surfaces say them: Crop.Group, Yield.AsBought, every Standing,
// ClockStart.Says and Source.Seen. Documents keep their own language.
//
// A copy never carries edits of its own: its With and NewEdit work on the table
// that it was made from.
func (t *Table) In(v *words.Voice) *Table {
	if t.base != nil {
		t = t.base
	}
	if v.Language() == words.English {
		return t
	}
	out := *t
	out.base, out.voice = t, v
	s := sayer{&out}
	out.Crops = each(t.Crops, s.crop)
	out.Treatments = each(t.Treatments, s.treatment)
	out.Yields = each(t.Yields, func(y *Yield) { s.say(&y.MarketUnit, &y.Note) })
	out.Rules = each(t.Rules, func(r *Rule) { s.say(&r.Says, &r.Note) })
	out.Sources = each(t.Sources, s.source)
	out.Compositions = each(t.Compositions, func(c *Composition) { s.say(&c.Note) })
	out.Pieces = each(t.Pieces, func(p *Piece) { s.say(&p.Note) })
	out.Kinetics = each(t.Kinetics, s.enzyme)
	out.Containers = each(t.Containers, func(c *Container) { s.say(&c.Name, &c.Note) })
	return &out
}

// each returns a copy of a list with a change made to every element.
func each[T any](list []T, change func(*T)) []T {
	out := slices.Clone(list)
	for i := range out {
		change(&out[i])
	}
	return out
}

// sayer says the texts of a record in place, by the voice of its table.
type sayer struct{ *Table }

func (s sayer) say(texts ...*string) {
	for _, text := range texts {
		*text = s.voice.Say(*text)
	}
}

func (s sayer) crop(c *Crop) {
	english := c.Name
	s.say(&c.Name, &c.Note)
	c.AlsoCalled = distinct(regionalNames()[c.ID], []string{english}, c.AlsoCalled)
	c.Prep = each(c.Prep, func(p *Prep) { s.say(&p.Prepare, &p.Select, &p.Soak) })
}

func (s sayer) treatment(x *Treatment) {
	s.say(&x.Cut, &x.Grade, &x.Size)
	for field, text := range map[string]*string{FieldWords: &x.Words, FieldChillWords: &x.ChillWords, FieldBlanchWater: &x.BlanchWater, FieldNote: &x.Note} {
		if _, typed := x.Changed[field]; !typed {
			s.say(text)
		}
	}
	x.Also = each(x.Also, func(p *Published) { s.say(&p.Words, &p.Note) })
	x.ShorterThanShipped = s.shorter(x)
}

// source says what stands in place of a document for a value entered here.
func (s sayer) source(x *Source) {
	if x.ID == EnteredHereSource {
		s.say(&x.Title, &x.Publisher, &x.Edition)
	}
}

func (s sayer) enzyme(e *Enzyme) {
	s.say(&e.Name, &e.MeasuredOn, &e.Limits)
	e.Parts = each(e.Parts, func(p *EnzymePart) { s.say(&p.Ours) })
}

// distinct joins lists of names and leaves out what stands there already, in
// whatever capitals.
func distinct(lists ...[]string) []string {
	var out []string
	for _, name := range slices.Concat(lists...) {
		if !slices.ContainsFunc(out, func(n string) bool { return strings.EqualFold(n, name) }) {
			out = append(out, name)
		}
	}
	return out
}

// nameColumns are those of names_es.csv: a name that Spanish speakers of one
// region use for a crop, where, and what that rests on. The ids in source are
// those of the project's list of Spanish sources.
var nameColumns = []string{"crop", "name", "where", "basis", "source"}

// regionalNames are the names of names_es.csv by Crop.ID, for the search.
var regionalNames = sync.OnceValue(func() map[string][]string {
	f := &faults{}
	names := map[string][]string{}
	for _, r := range readSheet(shippedFiles(), "names_es.csv", nameColumns, f).rows {
		crop := r.id("crop")
		names[crop] = append(names[crop], r.needed("name"))
	}
	if err := f.err(); err != nil {
		panic("reference: embedded data: " + err.Error())
	}
	return names
})
