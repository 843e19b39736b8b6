package projector

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
)

// number is a number with its smaller unit on one line of writing. Where there
// is no room for both they become smaller, and then the unit goes below.
type number struct {
	value, unit *words
	at          fyne.Position // of the unit, from the value
}

// number makes an empty one, set in a size at scale 1.
func (s *stage) number(size float32) *number {
	unit := asUnit
	unit.size = max(unit.size, size*0.42)
	return &number{
		value: s.say("", manner{size, max(size*0.5, leastNumber), 1, look.Ink, bold}),
		unit:  s.say("", unit),
	}
}

// leastNumber is the least size of a number at scale 1.
const leastNumber = 40

// The white over and under the figures of a number, as shares of its size, that
// its neighbours may use.
const overNumber, underNumber = 0.2, 0.16

// depth is how far below its baseline the face reaches, as a share of the
// height of a line.
const depth = 0.212

func (n *number) fit(k, wide float32) float32 {
	n.value.high, n.unit.high = 0, 0
	if n.value.empty() {
		return 0
	}
	part := n.value.stage.tight
	for n.length(k, part) > wide && n.value.size*part > n.value.least {
		part *= 0.95
	}
	below := n.length(k, part) > wide
	size, unit := n.sizes(k, part)
	n.value.fitLine(size, wide)
	high := n.value.high - (overNumber+underNumber)*size
	if n.unit.empty() {
		return high
	}
	n.unit.fitLine(unit, wide)
	if below {
		n.at = fyne.NewPos(0, n.value.high-underNumber*size)
		return high + n.unit.high
	}
	n.at = fyne.NewPos(n.value.length()+apart*unit, (n.value.high-n.unit.high)*(1-depth))
	return high
}

// sizes are those of number and unit at a part of their full size.
func (n *number) sizes(k, part float32) (value, unit float32) {
	return max(n.value.size*part, n.value.least) * k, max(n.unit.size*part, n.unit.least) * k
}

// apart is how far the unit stands from its number, as a share of its size.
const apart = 0.28

// length is how wide both are beside each other.
func (n *number) length(k, part float32) float32 {
	value, unit := n.sizes(k, part)
	if n.unit.empty() {
		return n.value.lengthIn(value)
	}
	return n.value.lengthIn(value) + apart*unit + n.unit.lengthIn(unit)
}

func (n *number) put(x, y, _ float32) {
	y -= overNumber * n.value.pt()
	n.value.put(x, y, 0)
	n.unit.put(x+n.at.X, y+n.at.Y, 0)
}

func (n *number) objects() []fyne.CanvasObject { return objectsOf([]block{n.value, n.unit}) }

// numberOf cuts a figure into its number, with the sign of an estimate, and its
// unit.
func numberOf(f measure.Figure) (value, unit string) {
	if f.InWords() {
		return f.Words, ""
	}
	bare, atLeast := look.AtLeast(f.Text)
	value, unit = split(f, bare)
	switch {
	case atLeast && unit == "":
		value = f.Text
	case atLeast: // the number stays short
		unit = look.Say("%s, at least", unit)
	}
	if strings.ContainsFunc(value, unicode.IsLetter) { // “2 min 5 s” has two units
		value, unit = join(" ", value, unit), ""
	}
	if f.Basis == measure.Estimate {
		value = about(value)
	}
	return value, unit
}

// split cuts the text of a figure into its number and its unit. Things that are
// counted ("3–4 pint bags") are printed with another unit than the figure's:
// there it is what follows the number.
func split(f measure.Figure, text string) (value, unit string) {
	f.Text = text
	if value, unit = look.Split(f); unit != "" || f.Unit == "" || wordy(text) {
		return value, unit
	}
	if at := strings.IndexFunc(text, unicode.IsLetter); at > 0 {
		return strings.TrimSpace(text[:at]), text[at:]
	}
	return text, ""
}

// about puts the sign of an estimate before a number.
func about(text string) string {
	if first, _ := utf8.DecodeRuneInString(text); unicode.IsNumber(first) {
		return "≈ " + text
	}
	return text
}

// wordy says whether a text begins like a sentence.
func wordy(text string) bool {
	first, _ := utf8.DecodeRuneInString(text)
	return unicode.IsLetter(first)
}
