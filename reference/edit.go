package reference

import (
	"errors"
	"maps"
	"slices"
	"strings"
	"time"

	"example.org/kettleside/content/words"
)

// Edit is one change that an educator made to one field of one treatment. It
// lies over the shipped table and never in it.
type Edit struct {
	Treatment string    `json:"treatment"` // Treatment.ID
	Field     string    `json:"field"`     // one of EditFields
	Old       string    `json:"old"`       // the shipped text (FieldText) when the edit was made
	New       string    `json:"new"`       // as typed
	Why       string    `json:"why"`       // the reason, or the agency's own bulletin
	Who       string    `json:"who"`
	When      time.Time `json:"when"`
}

// The fields of a treatment that may be edited.
const (
	FieldMinutes     = "minutes"      // "3", "1 1/2", "4-6", "10 s", "2 min 18 s"
	FieldWords       = "words"        // what is done, or what ends the minutes
	FieldChillFactor = "chill factor" // chilling minutes for one blanching minute: "1", "2"
	FieldChillWords  = "chill words"
	FieldHeadspace   = "headspace" // inches; shown as "liquid table" where the headspace table stands
	FieldWater       = "water"     // US gallons of boiling water for a pound
	FieldBlanchWater = "blanch water"
	FieldNote        = "note"
	FieldStorage     = "storage" // whole months at 0 °F: "8-12"
)

// EditFields are the editable fields in the order in which they are shown.
var EditFields = []string{FieldMinutes, FieldWords, FieldChillFactor, FieldChillWords, FieldHeadspace,
	FieldWater, FieldBlanchWater, FieldNote, FieldStorage}

// inWords says whether a field is a text and no number.
func inWords(field string) bool {
	return field == FieldWords || field == FieldChillWords || field == FieldBlanchWater || field == FieldNote
}

// EnteredHereSource is the source id of a value that an educator entered. The
// shipped files may not use it; With adds it to the sources of its copy, so
// that no agency is named for a number it never printed.
const EnteredHereSource = "ENTERED_HERE"

var enteredHere = Source{
	ID: EnteredHereSource, Title: words.Key("Entered here, not published"), Publisher: words.Key("the person who teaches from this table"),
	Edition: words.Key("no edition"), Seen: words.Key("nothing: it is not a publication"),
}

// EditError is an edit that could not be laid over the table. Says is one
// sentence: what was typed and what is allowed, or that the shipped value is
// another one by now.
type EditError struct {
	Index int // place in the list given to With
	Edit  Edit
	Says  string
	Stale bool // Old is not the shipped value any more: an educator decides
	fault error
}

// Error returns the sentence.
func (e *EditError) Error() string { return e.Says }

// Say is the sentence by a voice.
func (e *EditError) Say(v *words.Voice) string { return v.Error(e.fault) }

// NewEdit returns an edit of the treatment's field from its shipped value to
// what was typed, ready for With, which checks it. The shipped words typed in
// the language of the table are the shipped words.
func (t *Table) NewEdit(treatment, field, typed, why, who string, when time.Time) Edit {
	if t.base != nil {
		e := t.base.NewEdit(treatment, field, typed, why, who, when)
		if inWords(field) && e.New == t.voice.Say(e.Old) {
			e.New = e.Old
		}
		return e
	}
	e := Edit{Treatment: treatment, Field: field, New: strings.TrimSpace(typed), Why: why, Who: who, When: when}
	if x, ok := t.Treatment(treatment); ok {
		e.Old = ShippedText(x, field)
	}
	return e
}

// Without returns the edits less those of one field of one treatment: taking
// an edit back. The given slice stays as it is.
func Without(edits []Edit, treatment, field string) []Edit {
	return slices.DeleteFunc(slices.Clone(edits), func(e Edit) bool { return e.Treatment == treatment && e.Field == field })
}

// With returns a copy of the table with the edits laid over it in their order;
// of several edits of one field the last usable one counts. Each edit must pass
// the checks that the shipped files pass. An edit that cannot be used, or whose
// Old is not the shipped value any more, is left out and reported: the error
// then joins one *EditError for each, and the table holds all the others. The
// table is never nil and t is never changed. A copy in another language (In)
// lays the edits over the table that it was made from and is made anew.
func (t *Table) With(edits []Edit) (*Table, error) {
	if t.base != nil {
		out, err := t.base.With(edits)
		return out.In(t.voice), err
	}
	out := *t
	out.Treatments = slices.Clone(t.Treatments)
	var problems []error
	entered := false
	for i, e := range edits {
		if fault, stale := out.lay(e); fault != nil {
			problems = append(problems, &EditError{Index: i, Edit: e, Says: fault.Error(), Stale: stale, fault: fault})
			continue
		}
		entered = true
	}
	if _, ok := t.Source(EnteredHereSource); entered && !ok {
		out.Sources = append(slices.Clone(t.Sources), enteredHere)
	}
	return &out, errors.Join(problems...)
}

// lay applies one edit to the copy, or says why it cannot.
func (t *Table) lay(e Edit) (refused error, stale bool) {
	at := slices.IndexFunc(t.Treatments, func(x Treatment) bool { return x.ID == e.Treatment })
	if at < 0 {
		return words.Errorf("The table has no treatment %s, so the edit of its %s is not used.", shown(e.Treatment), orField(e.Field)), false
	}
	x := t.Treatments[at]
	if !slices.Contains(EditFields, e.Field) {
		return words.Errorf("%s cannot be edited in %s; allowed is %s.", shown(e.Field), t.named(&x), oneOf(EditFields)), false
	}
	was := ShippedText(x, e.Field)
	switch {
	case e.Old != was:
		return words.Errorf("%s: the %s was changed from %s, but the shipped value is %s by now; look at it again.",
			t.named(&x), words.Later(e.Field), shown(e.Old), shown(was)), true
	case strings.TrimSpace(e.Who) == "" || strings.TrimSpace(e.Why) == "":
		return words.Errorf("%s: a change of the %s needs a name and a reason.", t.named(&x), words.Later(e.Field)), false
	case e.When.IsZero():
		return words.Errorf("%s: a change of the %s needs the day on which it was made.", t.named(&x), words.Later(e.Field)), false
	}
	for _, text := range []string{e.Who, e.Why} {
		if refused := badText(text); refused != nil {
			return words.Errorf("%s: name and reason: %w", t.named(&x), refused), false
		}
	}
	x.Also = slices.Clone(x.Also)
	x.Changed = maps.Clone(x.Changed)
	if refused := t.set(&x, e.Field, strings.TrimSpace(e.New)); refused != nil {
		return words.Errorf("%s: %w", t.named(&x), refused), false
	}
	if FieldText(x, e.Field) == was {
		return words.Errorf("%s: %s is the shipped value of the %s; take the edit back instead.", t.named(&x), shown(was), words.Later(e.Field)), false
	}
	for _, f := range checkTreatment(&x) {
		return words.Errorf("%s: you typed %s and that makes %s; allowed is %s.", t.named(&x), shown(e.New), f.found, f.allowed), false
	}
	if x.Changed == nil {
		x.Changed = map[string]Edit{}
	}
	x.Changed[e.Field] = e
	t.Treatments[at] = x
	return nil, false
}

// ShippedText is FieldText of the treatment as it was shipped, also where the
// field is edited.
func ShippedText(x Treatment, field string) string {
	if e, ok := x.Changed[field]; ok {
		return e.Old
	}
	return FieldText(x, field)
}

// FieldText returns one editable field as text, in the form that an edit may
// give back. An unknown field is "".
func FieldText(x Treatment, field string) string {
	switch field {
	case FieldMinutes:
		return minutesText(x.Minutes, x.MinutesHigh)
	case FieldWords:
		return x.Words
	case FieldChillFactor:
		return emptyZero(x.ChillFactor)
	case FieldChillWords:
		return x.ChillWords
	case FieldHeadspace:
		if x.HeadspaceRow != "" {
			return x.HeadspaceRow + " table"
		}
		return emptyZero(x.HeadspaceIn)
	case FieldWater:
		return emptyZero(x.WaterGalPerLb)
	case FieldBlanchWater:
		return x.BlanchWater
	case FieldNote:
		return x.Note
	case FieldStorage:
		return spanText(x.StorageMonths, x.StorageMonthsHigh)
	}
	return ""
}

// named is how a sentence names a treatment: "Snap beans, green or wax (whole
// or cut 2 to 4 in)".
func (t *Table) named(x *Treatment) words.Phrase {
	name := x.Crop
	if c, ok := t.Crop(x.Crop); ok {
		name = c.Name
	}
	if x.Grade == "" {
		return words.Later("%s (%s)", words.Later(name), words.Later(x.Cut))
	}
	return words.Later("%s (%s, %s)", words.Later(name), words.Later(x.Grade), words.Later(x.Cut))
}

func orField(field string) words.Phrase {
	if !slices.Contains(EditFields, field) {
		return words.Later("field")
	}
	return words.Later(field)
}

// tableWords are words of the table, quoted in a sentence and said by its voice.
type tableWords string

func (w tableWords) Say(v *words.Voice) string { return quoted(v.Say(string(w))) }

// String is the quotation in English.
func (w tableWords) String() string { return w.Say(nil) }

// shown is a found text in a sentence.
func shown(text string) any {
	if text == "" {
		return words.Later("nothing")
	}
	return quoted(text)
}

func emptyZero(v float64) string {
	if v == 0 {
		return ""
	}
	return plain(v)
}

func spanText(low, high float64) string {
	if low == high {
		return emptyZero(low)
	}
	return plain(low) + "-" + plain(high)
}

// minutesText prints minutes, and what is under a minute in seconds.
func minutesText(low, high float64) string {
	if low == 0 {
		return ""
	}
	if low == high {
		return oneTime(low)
	}
	return oneTime(low) + "-" + oneTime(high)
}

func oneTime(m float64) string {
	if s := m * 60; m < 1 && s == float64(int(s+0.5)) {
		return plain(s) + " s"
	}
	return plain(m)
}
