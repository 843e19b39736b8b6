package questions

import (
	"slices"
	"unicode/utf8"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/content"
)

// found is what the list shows: questions, or what to do where there are none.
type found struct {
	typed  bool // words were typed
	groups []group
	none   string
}

// group is questions under one heading; without a heading they just stand there.
type group struct {
	heading   string
	questions []content.Question
}

func (f found) equal(o found) bool {
	return f.typed == o.typed && f.none == o.none && slices.EqualFunc(f.groups, o.groups, func(a, b group) bool {
		return a.heading == b.heading &&
			slices.EqualFunc(a.questions, b.questions, func(p, q content.Question) bool { return p.ID == q.ID })
	})
}

// find finds the questions for what was typed, best first. Where nothing is
// typed it is all of them, those on the batch on view before the others.
func (s shown) find(typed string) found {
	if typed == "" {
		return found{groups: s.all()}
	}
	list := content.Ask(s.voice.Language(), typed, s.batch.Crop.ID)
	if len(list) == 0 {
		return found{typed: true, none: s.nothing(typed)}
	}
	return found{typed: true, groups: []group{{questions: list}}}
}

func (s shown) all() []group {
	all := content.Questions(s.voice.Language())
	if !s.known() {
		return []group{{questions: all}}
	}
	var crop, method, rest []content.Question
	for _, q := range all {
		switch {
		case s.concerns(q) && len(q.Crops) > 0:
			crop = append(crop, q)
		case s.concerns(q) && s.touches(q):
			method = append(method, q)
		default:
			rest = append(rest, q)
		}
	}
	return []group{{look.Say("For %s", s.name()), append(crop, method...)}, {look.Say("All other questions"), rest}}
}

// touches says whether a question is about what is done with the batch on view.
func (s shown) touches(q content.Question) bool {
	b := s.batch
	topics := content.TopicsOf(string(b.Treatment.Method), string(b.Batch.Pack.Container), b.Crop.ID)
	return slices.ContainsFunc(q.Topics, func(t content.Topic) bool { return slices.Contains(topics, t) })
}

// nothing is what to do where nothing was found for what was typed.
func (s shown) nothing(typed string) string {
	or := look.Say("Or ask the agency whose advice you follow.")
	switch people := s.class.People; {
	case people.HelpLine != "":
		or = look.Say("Or ask the help line: %s", people.HelpLine)
	case people.Agency != "":
		or = look.Say("Or ask your agency: %s", people.Agency)
	}
	return look.Say("Nothing found for “%s”. Try one plain word for it, such as “ice”, “lid” or “jars”.", shortened(typed)) + "\n" + or
}

// mostQuoted is how many letters of what was typed are said again.
const mostQuoted = 40

func shortened(text string) string {
	if utf8.RuneCountInString(text) <= mostQuoted {
		return text
	}
	return string([]rune(text)[:mostQuoted]) + "…"
}
