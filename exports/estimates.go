package exports

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// On the sheet for the stations the heat model has no line in the table of the
// rules. What people do are the figures there; what heat does is told under them
// in small running text, under a line that says what it is.

// estimatesHead opens estimates wherever they stand, and estimatesSay says what
// they are for.
var (
	estimatesHead = words.Key("What heat does, estimated")
	estimatesSay  = words.Key("People follow the table and the rules; the model only explains.")
)

// told is how many estimates stand with a batch: as many of atStove as its page
// has room for.
type told int

const untold = told(-1) // not even where they are

var allTold = told(len(atStove)) + 1 // every one, with its working, note and source

// atStove are the estimates that help somebody who stands at the stove, the bath
// or the freezer; what helps most comes first.
var atStove = []string{
	"back-at-boil", "largest-load", "ice-balance", "freezing", "first-boil", "layers", "boiled-away",
	"chill-cool", "centre", "in-a-minute", "growth",
}

// heatPlaces are where heat does its work; what is not named here happens in
// the kettle.
var heatPlaces = map[string]string{
	"ice-balance": words.Key("Ice bath"), "chill-cool": words.Key("Ice bath"), "chill-cold": words.Key("Ice bath"),
	"freezing": words.Key("Freezer"), "growth": words.Key("Freezer"),
}

func heatPlace(id string) string {
	if place, ok := heatPlaces[id]; ok {
		return place
	}
	return words.Key("Kettle")
}

// estimates stand under the rules of a batch. What people do is never shortened
// for what explains it: where all of them do not fit on its page, some say what
// they come to, and all are worked out at the end of the sheet.
func (m *maker) estimates(s *sheet, b class.BatchWorked, n told) {
	list := b.Estimates.Figures()
	if len(list) == 0 || n == untold {
		return
	}
	s.add(row{cells: []cell{s.wide(ruled, "")}, height: 6})
	if n == allTold {
		s.add(row{cells: []cell{{span: len(s.cols), role: small, runs: []run{{true, m.Say(estimatesHead) + ". "}, {false, m.Say(estimatesSay)}}}}})
		m.estimateList(s, list)
		return
	}
	before, after, _ := strings.Cut(m.Say("%s, is worked out at the end of this sheet."), "%s")
	text := []run{{false, before}, {true, m.Say(estimatesHead)}, {false, after}}
	if some := comeTo(list, atStove[:n]); len(some) > 0 {
		text = slices.Concat([]run{{true, m.Say(estimatesHead) + ". "}, {false, m.Say(estimatesSay) + " "}}, some, []run{{false, m.Say("Worked out at the end of this sheet.")}})
	}
	s.add(row{cells: []cell{{span: len(s.cols), role: small, runs: text}}})
}

// comeTo says what some estimates come to.
func comeTo(list []measure.Figure, ids []string) []run {
	var text []run
	for _, f := range list {
		if !slices.Contains(ids, f.ID) {
			continue
		}
		also := "; "
		if f.Also != "" {
			also = " (" + f.Also + "); "
		}
		text = append(text, run{false, f.Label + ": "}, run{true, f.Text}, run{false, also})
	}
	if n := len(text); n > 0 {
		text[n-1].text = strings.TrimSuffix(text[n-1].text, "; ") + ". "
	}
	return text
}

// estimateList is one estimate a line, in the order of the work: “First boil:
// 19 min (17 min to 21 min). How it is worked out. [18]”.
func (m *maker) estimateList(s *sheet, list []measure.Figure) {
	last := ""
	for _, f := range list {
		place := heatPlace(f.ID)
		r := row{cells: []cell{{col: 1, span: len(s.cols) - 1, role: small, runs: m.estimate(f)}}}
		if place != last {
			r.cells = append(r.cells, cell{role: guess, value: m.Say(place)})
			last = place
		}
		s.add(r)
	}
}

func (m *maker) estimate(f measure.Figure) []run {
	also := ". "
	if f.Also != "" {
		also = " (" + f.Also + "). "
	}
	return []run{{false, f.Label + ": "}, {true, f.Text}, {false, also + sentences(upperFirst(f.Working), f.Note, m.sources.explained(f))}}
}

// estimatesOf lists the estimates of batches whose pages have no room for them.
func (m *maker) estimatesOf(s *sheet, batches []int) {
	if len(batches) == 0 {
		return
	}
	s.heading(m.Say(estimatesHead))
	s.para(small, m.Say(estimatesSay)+" "+m.Say("Every figure here is an estimate."))
	for _, i := range batches {
		s.add(row{cells: []cell{s.wide(subheading, m.batchName(i, m.Worked.Batches[i]))}, space: 6, keep: true})
		m.estimateList(s, m.Worked.Batches[i].Estimates.Figures())
	}
}

// explained is the source of an estimate under a line that calls it one; what is
// none, because an entry is missing, says what it rests on.
func (s *sources) explained(f measure.Figure) string {
	if f.Basis != measure.Estimate {
		return s.voice.Say("Rests on: %s", s.basis(f))
	}
	text := s.ref(f.Source)
	if f.Standing != "" && f.Standing != string(reference.Read) {
		text += ", " + s.voice.Say(f.Standing)
	}
	return text
}

func lowerFirst(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 {
		return ""
	}
	return string(unicode.ToLower(first)) + text[size:]
}

func upperFirst(text string) string {
	first, size := utf8.DecodeRuneInString(text)
	if size == 0 {
		return ""
	}
	return string(unicode.ToUpper(first)) + text[size:]
}
