package measure

import (
	"math"

	"example.org/kettleside/content/words"
)

// Limits are the lowest and highest amount that an entry may have, both
// included.
type Limits[D Dimension] struct{ Low, High Of[D] }

// Between makes limits in one unit.
func Between[D Dimension](low, high float64, unit *Unit[D]) Limits[D] {
	return Limits[D]{New(low, unit), New(high, unit)}
}

// Check returns nil where q lies within the limits and otherwise an
// *EntryError that names the field, what was typed and what is allowed.
func (l Limits[D]) Check(field string, q Of[D]) error {
	si := q.SI()
	// a converted limit may miss by a rounding of the last digit
	slack := 1e-9 * math.Max(math.Abs(l.Low.SI()), math.Abs(l.High.SI()))
	if q.Given() && si >= l.Low.SI()-slack && si <= l.High.SI()+slack && !math.IsNaN(si) {
		return nil
	}
	problem := ""
	switch {
	case !q.Given():
	case si < l.Low.SI():
		problem = words.Key("is too little")
	default:
		problem = words.Key("is too much")
	}
	return &EntryError{Field: field, Typed: q.String(), Problem: problem, Allowed: l.text(q.unit)}
}

// text is "0.1 lb to 500 lb", in the unit of the entry where it has one.
func (l Limits[D]) text(u *Unit[D]) words.Phrase {
	low, high := l.Low, l.High
	if u != nil {
		low, high = low.To(u), high.To(u)
	}
	// rounded inward, so that what is said to be allowed is
	return words.Later("%s to %s", printed(plainUp(low.amount)+" "+low.unit.Symbol), printed(plainDown(high.amount)+" "+high.unit.Symbol))
}

// printed is an amount whose unit is said in the language of the reader.
type printed string

func (p printed) Say(v *words.Voice) string { return v.Amount(string(p)) }

// Enter reads a typed amount and checks it: the one way from a form, a file
// or a command line into the class.
func (l Limits[D]) Enter(field, text string, fallback *Unit[D]) (Of[D], error) {
	q, err := Parse(text, fallback)
	if err != nil {
		entry := err.(*EntryError)
		entry.Field = field
		entry.Allowed = l.text(fallback)
		return q, entry
	}
	if err := l.Check(field, q); err != nil {
		entry := err.(*EntryError)
		entry.Typed = text
		return Of[D]{}, entry
	}
	return q, nil
}
