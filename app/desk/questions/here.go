package questions

import (
	"regexp"
	"slices"
	"strings"

	"example.org/kettleside/app/desk/bench"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content"
)

// here is a sentence with the numbers of the batch on view, with what must not
// be missing beside them; without a sentence there is nothing to show.
type here struct {
	says    string
	rests   string // what its figures rest on; "" where that is the answer's source
	caution string // beside minutes
}

// figureIn finds the figures of the batch in a sentence.
var figureIn = regexp.MustCompile(`\{figure:([^{}]+)\}`)

// here is the sentence of a question for the batch on view.
func (s shown) here(q content.Question) here {
	if !s.concerns(q) {
		return here{}
	}
	figures := s.figures()
	texts := map[string]string{}
	for id, f := range figures {
		texts[id] = f.Text
	}
	says, ok := q.Here(s.rules, texts)
	if !ok {
		return here{}
	}
	h := here{says: says}
	var sources []string
	timed := false
	for _, part := range figureIn.FindAllStringSubmatch(q.SaysHere, -1) {
		f := figures[part[1]]
		timed = timed || isTime(f)
		if source := withStanding(s.sourceName(f.Source), f.Standing); f.Source != "" && !slices.Contains(sources, source) {
			sources = append(sources, source)
		}
		if f.ID == s.batch.Minutes.ID {
			t := s.batch.Treatment
			h.says = strings.TrimSpace(says + " " + t.Words)
			h.caution = bench.CautionLine(s.table, s.class.Units, string(t.Method), string(s.batch.Batch.Pack.Container), s.batch.Crop.ID)
		}
	}
	own := withStanding(s.sourceName(q.Source), q.Standing)
	if len(sources) > 0 && (timed || !slices.Equal(sources, []string{own})) {
		h.rests = look.Say("Figures from: %s", strings.Join(sources, "; "))
	}
	return h
}

// isTime says whether a figure is a time or the start of one.
func isTime(f measure.Figure) bool {
	return f.ID == "clock" || slices.Contains([]string{measure.Second.Symbol, measure.Minute.Symbol, measure.Hour.Symbol}, f.Unit)
}

// figures are the figures of the batch that answer something, by their id:
// numbers, and the words of a headspace and of the clock.
func (s shown) figures() map[string]measure.Figure {
	all := map[string]measure.Figure{}
	for _, f := range append(s.batch.Worked.Figures(), s.batch.Estimates.Figures()...) {
		if !f.InWords() || f.ID == "headspace" || f.ID == "clock" {
			all[f.ID] = f
		}
	}
	return all
}
