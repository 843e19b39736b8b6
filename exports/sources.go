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

// sources numbers the sources that a class uses, in the order in which it uses
// them: the same number on every sheet, whichever sheets are made.
type sources struct {
	table *reference.Table
	voice *words.Voice
	order []string // ids; the number is the place, from 1
	cited map[string]bool
}

// newSources walks through everything that the class rests on.
func newSources(w class.Worked, extra []class.BatchWorked) *sources {
	s := &sources{table: w.Table, voice: w.Voice, cited: map[string]bool{}}
	batches := append(slices.Clone(w.Batches), extra...)
	for _, b := range batches {
		t := b.Treatment
		if !b.Known {
			continue
		}
		for _, id := range []string{t.Source, t.HeadspaceSource, t.WaterSource, t.ChillSource, t.BlanchSource, t.StorageSource} {
			s.number(id)
		}
		s.figures(b.Figures())
		s.findings(b.Findings)
	}
	s.figures(w.Totals.Figures())
	s.findings(w.Findings)
	for _, l := range w.Shopping {
		s.number(l.Buy.Source)
	}
	for _, b := range w.Batches {
		s.figures(b.Estimates.Figures())
	}
	for _, b := range batches {
		for _, p := range b.Treatment.Also {
			s.number(p.Source)
		}
	}
	for _, c := range cautionsOf(w.Voice.Language(), batches) {
		s.number(c.Source)
	}
	for _, id := range methodRules {
		s.number(w.Table.Rule(id).Source)
	}
	return s
}

func (s *sources) figures(list []measure.Figure) {
	for _, f := range list {
		s.number(f.Source)
	}
}

func (s *sources) findings(list []measure.Finding) {
	for _, f := range list {
		s.number(f.Source)
	}
}

// number is the number of a source, 0 for what is no source of the table, such
// as "entered".
func (s *sources) number(id string) int {
	if i := slices.Index(s.order, id); i >= 0 {
		return i + 1
	}
	if _, ok := s.table.Source(id); !ok {
		return 0
	}
	s.order = append(s.order, id)
	return len(s.order)
}

// begin starts a sheet: what it cites is listed at its end.
func (s *sources) begin() { clear(s.cited) }

// ref is the reference to a source: "[3]", or "" where there is none.
func (s *sources) ref(id string) string {
	n := s.number(id)
	if n == 0 {
		return ""
	}
	s.cited[id] = true
	return fmt.Sprintf("[%d]", n)
}

// refs are several references: "[3] [5]".
func (s *sources) refs(ids ...string) string {
	var list []string
	for _, id := range ids {
		if r := s.ref(id); r != "" && !slices.Contains(list, r) {
			list = append(list, r)
		}
	}
	return strings.Join(list, " ")
}

// basis says in words what a figure rests on: "rule [4], from memory". That a
// value was read on its page is the rule and not said.
func (s *sources) basis(f measure.Figure) string {
	text := strings.TrimSpace(basisWords(s.voice, f.Basis) + " " + s.ref(f.Source))
	if f.Standing != "" && f.Standing != string(reference.Read) {
		text += ", " + s.voice.Say(f.Standing)
	}
	return text
}

// notRead is a standing as it is said after a source, "" where the value was
// read on its page.
func (s *sources) notRead(standing reference.Standing) string {
	switch standing {
	case "", reference.Read:
		return ""
	case reference.CommonPractice:
		return ", " + s.voice.Say("common practice in the trade without a single source")
	}
	return ", " + s.voice.Say(string(standing))
}

// named is a source in one line: publisher and edition, with its number.
func (s *sources) named(id string) string {
	x, ok := s.table.Source(id)
	if !ok {
		return s.voice.Say("no source in the table")
	}
	return fmt.Sprintf("%s, %s %s", x.Publisher, s.edition(x), s.ref(id))
}

// list ends a sheet with the sources that it cites, by number.
func (s *sources) list(to *sheet, caption string) {
	first := true
	for i, id := range s.order {
		if !s.cited[id] {
			continue
		}
		if first {
			to.heading(caption)
			first = false
		}
		x, _ := s.table.Source(id)
		to.add(row{cells: []cell{
			{col: 0, span: len(to.cols), role: small, value: s.line(i+1, x)},
		}})
	}
}

// line is a source in a list of sources, in its own language but for what
// somebody read of it.
func (s *sources) line(number int, x reference.Source) string {
	return fmt.Sprintf("[%d] %s. %s, %s. %s", number, x.Title, x.Publisher, s.edition(x), s.read(x))
}

// withoutDate are the table's own words where a document shows no edition.
var withoutDate = []string{words.Key("undated"), words.Key("year not seen"), words.Key("date not shown")}

// edition is the edition of a source in its own language, or that it shows none.
func (s *sources) edition(x reference.Source) string {
	if slices.Contains(withoutDate, x.Edition) {
		return s.voice.Say(x.Edition)
	}
	return x.Edition
}

// read says what somebody read of a source.
func (s *sources) read(x reference.Source) string {
	if x.ID == reference.EnteredHereSource {
		return s.voice.Say("Entered here.")
	}
	if x.Seen == "not read" {
		return s.voice.Say("Not read for this table: its values are from memory.")
	}
	return s.voice.Say("Read: %s.", s.voice.Say(strings.TrimSuffix(x.Seen, ".")))
}

// methodRules are the rules that the steps and footnotes of every handout name.
var methodRules = []string{
	"water-gal-per-lb", "water-leafy-gal-per-lb", "batch-lb", "return-to-boil-min", "altitude-ft",
	"altitude-extra-min", "ice-lb-per-lb", "freezer-lb-per-cuft-day", "freezer-set-f", "hold-f", "storage-months", "reheat-f",
}

// cautionsOf are the cautions that concern any of some batches: those of the
// class, and those that stand for the treatments that a sheet lists.
func cautionsOf(l words.Language, lists ...[]class.BatchWorked) []content.Caution {
	var topics []content.Topic
	for _, b := range slices.Concat(lists...) {
		topics = append(topics, topicsOf(b)...)
	}
	return content.Cautions(l, topics...)
}

func (m *maker) cautionsOf(lists ...[]class.BatchWorked) []content.Caution {
	return cautionsOf(m.Voice.Language(), lists...)
}

// topicsOf is what concerns one batch.
func topicsOf(b class.BatchWorked) []content.Topic {
	if !b.Known {
		return nil
	}
	return content.TopicsOf(string(b.Treatment.Method), string(b.Batch.Pack.Container), b.Crop.ID)
}

// basisWords say what a figure rests on.
func basisWords(v *words.Voice, b measure.Basis) string {
	switch b {
	case measure.Tabled:
		return v.Say("table")
	case measure.Ruled:
		return v.Say("rule")
	case measure.Entered:
		return v.Say("entered")
	case measure.Estimate:
		return v.Say("estimate")
	}
	return string(b)
}

// methodWords name a method.
func methodWords(v *words.Voice, m reference.Method) string {
	switch m {
	case reference.WaterBlanch:
		return v.Say("blanch in water")
	case reference.SteamBlanch:
		return v.Say("blanch in steam")
	case reference.CookThrough:
		return v.Say("cook through")
	case reference.NoHeat:
		return v.Say("pack raw")
	}
	return string(m)
}

// packWords name a pack.
func packWords(v *words.Voice, p reference.Pack) string {
	switch p {
	case reference.SolidPack:
		return v.Say("packs solid")
	case reference.LoosePack:
		return v.Say("packs loosely")
	case reference.TrayPack:
		return v.Say("frozen loose on a tray first")
	case reference.LiquidPack:
		return v.Say("packed in liquid or as a purée")
	}
	return string(p)
}

// pieceName is what is frozen: "Broccoli, flowerets".
func pieceName(crop reference.Crop, t reference.Treatment) string {
	name := crop.Name
	for _, part := range []string{t.Cut, t.Grade} {
		if part != "" {
			name += ", " + part
		}
	}
	return name
}
