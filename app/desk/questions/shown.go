package questions

import (
	"strings"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/content"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// shown is what is on view in the session: a class, and one batch of it.
type shown struct {
	class class.Class
	table *reference.Table
	batch class.BatchWorked
	there bool   // false where the class has no batch
	trial string // its name; "" where the plan is on view
	voice *words.Voice
	open  content.Question // without an id there is none

	rules      map[string]string
	sourceName func(string) string
}

func shownOf(s *session.Session) shown {
	one, there := s.ViewedBatch()
	trial, _ := s.Trying()
	c := s.View().Class
	id, _ := s.Asked()
	open, _ := questionOf(s, id)
	return shown{
		class: c, table: s.Table(), batch: one, there: there, trial: trial.Name, voice: s.Voice(), open: open,
		rules: batch.RuleTexts(s.Table(), c.Units, s.Voice()), sourceName: s.SourceName,
	}
}

// known says whether there is a batch whose treatment the table has.
func (s shown) known() bool { return s.there && s.batch.Known }

// name is what the batch on view is called: “Beans at every station”.
func (s shown) name() string {
	name := s.batch.Batch.Name
	if name == "" {
		name = s.batch.Crop.Name
	}
	if s.trial != "" {
		return look.Say("“%s” in the trial “%s”", name, s.trial)
	}
	return "“" + name + "”"
}

// concerns says whether a question is about the batch on view.
func (s shown) concerns(q content.Question) bool {
	b := s.batch
	return s.known() && q.Concerns(string(b.Treatment.Method), string(b.Batch.Pack.Container), b.Crop.ID)
}

// answer is the general answer.
func (s shown) answer(q content.Question) string {
	text, err := q.Answer(s.rules)
	if err != nil {
		fyne.LogError("an answer has a gap", err)
	}
	return text
}

// source names the publication behind an answer, and how sure its main point is
// where nobody read it on a page.
func (s shown) source(q content.Question) string {
	if q.Source == "" {
		return look.Say("No publication behind it: %s", look.Say(q.Standing))
	}
	line := s.sourceName(q.Source)
	if source, ok := s.table.Source(q.Source); ok && source.Publisher != "" {
		line = source.Publisher + ", " + line
	}
	return look.Say("Source: %s", withStanding(line, q.Standing))
}

func withStanding(source, standing string) string {
	if standing == "" || standing == string(reference.Read) {
		return source
	}
	return source + " · " + look.Say(standing)
}

// deference says whose advice stands above every answer and whom to ask, as far
// as the class has them.
func (s shown) deference() string {
	var lines []string
	if agency := s.class.People.Agency; agency != "" {
		lines = append(lines, look.Say("Your agency’s advice stands above this: %s", agency))
	}
	if help := s.class.People.HelpLine; help != "" {
		lines = append(lines, look.Say("Help line: %s", help))
	}
	return strings.Join(lines, "\n")
}

// prompt is what stands where no question is open yet.
func (s shown) prompt() string {
	if s.known() {
		return look.Say("Type a few words at the left, such as “how much ice”, and press Enter. The short answer stands here, with its source and, where it has some, the numbers of %s.", s.name())
	}
	return look.Say("Type a few words at the left, such as “how much ice”, and press Enter. The short answer stands here, with its source.")
}
