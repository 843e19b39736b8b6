package questions

import (
	"slices"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/content"
)

// Answered is the open question as a room reads it, in this area and on the
// projector.
type Answered struct {
	Asks, Says, Source string

	// The sentence with the numbers of the batch on view; "" where it has none.
	Here    string
	Whose   string // whose numbers they are, as a heading
	Rests   string // what they rest on; "" where that is the source
	Caution string // beside minutes
	Tried   bool   // they are those of a trial
}

// Open is the open question with its answer for what is on view; false where no
// question is open.
func Open(s *session.Session) (Answered, bool) {
	if id, _ := s.Asked(); id == "" {
		return Answered{}, false
	}
	open := shownOf(s).read()
	return open, open.Asks != ""
}

// questionOf is a question by its id, in the language that is spoken; false where
// there is none.
func questionOf(s *session.Session, id string) (content.Question, bool) {
	all := content.Questions(s.Voice().Language())
	at := slices.IndexFunc(all, func(q content.Question) bool { return q.ID == id })
	if at < 0 {
		return content.Question{}, false
	}
	return all[at], true
}

// read is the open question with all that stands with it.
func (s shown) read() Answered {
	if s.open.ID == "" {
		return Answered{}
	}
	open := Answered{Asks: s.open.Asks, Says: s.answer(s.open), Source: s.source(s.open)}
	if h := s.here(s.open); h.says != "" {
		open.Here, open.Rests, open.Caution = h.says, h.rests, h.caution
		open.Whose, open.Tried = look.Say("For %s", s.name()), s.trial != ""
	}
	return open
}
