package crops

import (
	"slices"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/content"
	"example.org/kettleside/reference"
)

// treatments lead to each treatment of the crop; the one on view is marked.
func treatments(r *record, table *reference.Table, t reference.Treatment) []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, other := range table.Treatments {
		if other.Crop != t.Crop {
			continue
		}
		open := func() { r.crops.jump(other.ID) }
		if other.ID == t.ID {
			open = nil
		}
		out = append(out, newLink(treatmentWords(other), timeAndClock(other), open))
	}
	if len(out) < 2 { // the record is all of it
		return nil
	}
	return []fyne.CanvasObject{look.Column(3, out...)}
}

// treatmentWords are what a treatment is, without its crop.
func treatmentWords(t reference.Treatment) string {
	return look.Sentence(joined(" · ", joined(", ", t.Cut, t.Grade, t.Size), look.Say(session.MethodName(t.Method))))
}

// questions are what people ask about the crop, then about the method; each
// leads to its answer.
func questions(r *record, t reference.Treatment) []fyne.CanvasObject {
	var out []fyne.CanvasObject
	for _, q := range concerning(t) {
		out = append(out, newLink(q.Asks, "", func() { r.crops.openQuestion(q.ID) }))
	}
	if len(out) == 0 {
		return nil
	}
	return []fyne.CanvasObject{look.Column(3, out...)}
}

// mostQuestions is how many questions a record lists.
const mostQuestions = 8

// concerning are the questions about the crop of a treatment, and after them
// those about its method.
func concerning(t reference.Treatment) []content.Question {
	var own, general []content.Question
	for _, q := range content.Questions(look.Voice().Language()) {
		switch {
		case slices.Contains(q.Crops, t.Crop):
			own = append(own, q)
		case len(q.Crops) == 0 && slices.Contains(q.Topics, content.Topic(t.Method)) && q.Concerns(string(t.Method), "", t.Crop):
			general = append(general, q)
		}
	}
	all := append(own, general...)
	return all[:max(len(own), min(len(all), mostQuestions))]
}
