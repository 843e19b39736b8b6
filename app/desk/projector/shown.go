package projector

import (
	"strings"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/bench"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/questions"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// shown is what is on view: one batch worked through, of the plan or of a
// trial, and the class it belongs to.
type shown struct {
	class  class.Class
	totals class.Totals
	table  *reference.Table
	batch  class.BatchWorked
	there  bool // false where the class has no batch

	trial       string            // its name; "" where the plan is on view
	plan        class.BatchWorked // the batch of the plan beside it
	differences []session.Difference
	sourceName  func(string) string

	asked questions.Answered // the open question; empty where none is
}

func shownOf(s *session.Session) shown {
	worked := s.View()
	one, there := s.ViewedBatch()
	trial, _ := s.Trying()
	plan, _ := s.SelectedBatch()
	asked, _ := questions.Open(s)
	return shown{
		class: worked.Class, totals: worked.Totals, table: worked.Table, batch: one, there: there,
		trial: trial.Name, plan: plan, differences: s.Compare(), sourceName: s.SourceName, asked: asked,
	}
}

// trying says whether a trial is on view.
func (s shown) trying() bool { return s.trial != "" }

// known says whether there is a batch whose treatment the table has.
func (s shown) known() bool { return s.there && s.batch.Known }

// heated says whether the treatment is done in a kettle by rule.
func (s shown) heated() bool {
	m := s.batch.Treatment.Method
	return m == reference.WaterBlanch || m == reference.SteamBlanch
}

// steamed says whether it is done above the water.
func (s shown) steamed() bool { return s.batch.Treatment.Method == reference.SteamBlanch }

// chilled says whether it is chilled in ice water by the clock.
func (s shown) chilled() bool { return s.batch.Chill.Value > 0 }

// edited says whether one of the fields of the treatment was changed here.
func (s shown) edited(fields ...string) bool {
	for _, f := range fields {
		if _, ok := s.batch.Treatment.Changed[f]; ok {
			return true
		}
	}
	return false
}

// food is the crop with its size class, and cut the piece with the limits of
// that class.
func (s shown) food() string {
	t := s.batch.Treatment
	return join(", ", s.batch.Crop.Name, t.Grade)
}

func (s shown) cut() string {
	t := s.batch.Treatment
	return join(", ", t.Cut, t.Size)
}

// name is what the batch is called.
func (s shown) name() string {
	if s.batch.Batch.Name != "" {
		return s.batch.Batch.Name
	}
	return s.batch.Crop.Name
}

// station says for whom the figures are.
func (s shown) station() string {
	if n := s.batch.Batch.Stations; n > 1 {
		return look.Say("for each of %d stations", n)
	}
	return ""
}

// source names the document that the minutes or words come from, and how they
// came into the table where nobody read them on a page.
func (s shown) source() string {
	t := s.batch.Treatment
	line := s.sourceName(t.Source)
	if source, ok := s.table.Source(t.Source); ok && source.Publisher != "" {
		line = source.Publisher + ", " + line
	}
	if t.Standing != reference.Read && t.Standing != "" {
		line += " · " + look.Say(string(t.Standing))
	}
	return look.Say("Source: %s", line)
}

// caution is the caution of the method, and that the food is not ready to eat.
func (s shown) caution() string {
	b := s.batch
	return bench.CautionLine(s.table, s.class.Units, string(b.Treatment.Method), string(b.Batch.Pack.Container), b.Crop.ID)
}

// beforehand is what goes into the blanching water or a dip before it.
func (s shown) beforehand() string {
	if water := s.batch.Treatment.BlanchWater; water != "" {
		return look.Say("Into the water or before it: %s", water)
	}
	return ""
}

// ends are the words that stand beside the minutes of some treatments.
func (s shown) ends() string {
	if s.batch.Minutes.InWords() {
		return ""
	}
	return s.batch.Treatment.Words
}

// onTray says whether the pieces are frozen loose on a tray first.
func (s shown) onTray() bool { return s.batch.Batch.Pack.OnTray(s.batch.Treatment) }

// renamed is a figure under a shorter label, for where its place says the rest.
func renamed(f measure.Figure, label string) measure.Figure {
	f.Label = label
	return f
}

func join(with string, parts ...string) string {
	var said []string
	for _, p := range parts {
		if p != "" {
			said = append(said, p)
		}
	}
	return strings.Join(said, with)
}
