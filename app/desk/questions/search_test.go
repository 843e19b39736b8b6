package questions

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/content"
	"example.org/kettleside/content/words"
)

func TestTypingFindsAndEnterOpens(t *testing.T) {
	r := openDemo(t)
	r.ask("how much ice")
	equal(t, "first question", r.area.list.listed[0], "ice-how-much")
	equal(t, "marked question", r.area.list.marked, "ice-how-much")
	equal(t, "open question while typing", r.asked(), "")
	r.press(fyne.KeyReturn)
	question, answer, here := r.area.Answer()
	equal(t, "question", question, "How much ice do I need?")
	equal(t, "sentence of the batch", here, "This batch: 3 lb by the rule of thumb.")
	has(t, "answer", answer, "1 lb per lb of vegetables")
	has(t, "window", r.shows(), question, here, "For “Beans at every station”", "from memory")
	equal(t, "what is selected in the entry", r.area.search.SelectedText(), "how much ice")
	if !r.area.list.lines["ice-how-much"].Chosen() {
		t.Error("the line of the open question is not chosen")
	}
}

// TestCropComesFirst asks that the crop of the batch on view decides between
// questions that fit alike.
func TestCropComesFirst(t *testing.T) {
	r := openDemo(t)
	r.ask("how long")
	equal(t, "first question for beans", r.area.list.listed[0], "beans-many-times")
	r.session.Select(1)
	equal(t, "first question for spinach", r.area.list.listed[0], "greens")
}

func TestWalksByKeys(t *testing.T) {
	r := openDemo(t)
	l := r.area.list
	r.press(fyne.KeyReturn)
	equal(t, "open question with nothing marked", r.asked(), "")
	r.press(fyne.KeyUp)
	equal(t, "marked after Up", l.marked, l.listed[0])
	l.marked = ""
	r.press(fyne.KeyPageDown)
	equal(t, "marked after the first Page Down", l.marked, l.listed[0])
	r.press(fyne.KeyDown)
	r.press(fyne.KeyPageDown)
	r.press(fyne.KeyUp)
	r.press(fyne.KeyPageUp)
	equal(t, "marked", l.marked, l.listed[0])
	r.press(fyne.KeyDown)
	r.press(fyne.KeyDown)
	equal(t, "marked after two steps", l.marked, l.listed[2])
	r.press(fyne.KeyEnter)
	equal(t, "open", r.asked(), l.listed[2])
	if r.window.Canvas().Focused() != fyne.Focusable(r.area.search) {
		t.Error("the entry has lost the focus")
	}
}

// TestMarkStaysInView walks the whole list down and up again.
func TestMarkStaysInView(t *testing.T) {
	r := openDemo(t)
	l := r.area.list
	inView := func() {
		t.Helper()
		top := fyne.CurrentApp().Driver().AbsolutePositionForObject(l.lines[l.marked].box).Y
		from := fyne.CurrentApp().Driver().AbsolutePositionForObject(l.scroll).Y
		if low := top + l.lines[l.marked].box.Size().Height; top < from-1 || low > areaHigh+1 {
			t.Fatalf("%s stands from %.0f to %.0f", l.marked, top, low)
		}
	}
	for range l.listed {
		r.press(fyne.KeyDown)
		inView()
	}
	equal(t, "marked at the end", l.marked, l.listed[len(l.listed)-1])
	for range l.listed {
		r.press(fyne.KeyUp)
		inView()
	}
	equal(t, "offset at the first question, under its heading", l.scroll.Offset.Y, 0)
}

// TestMarkIsSeenInTheEntryOnly asks that no ring stands around a line that Enter
// would not open.
func TestMarkIsSeenInTheEntryOnly(t *testing.T) {
	r := openDemo(t)
	r.ask("ice")
	first := r.area.list.lines[r.area.list.listed[0]]
	equal(t, "marked", first.marked, true)
	r.window.Canvas().Unfocus()
	equal(t, "marked without the focus", first.marked, false)
	r.area.Focus(r.window.Canvas())
	equal(t, "marked again", first.marked, true)
}

func TestEscapeEmptiesTheEntry(t *testing.T) {
	r := openDemo(t)
	r.ask("ice")
	r.press(fyne.KeyReturn)
	asked := r.asked()
	r.press(fyne.KeyEscape)
	equal(t, "entry", r.area.search.Text, "")
	equal(t, "questions listed", len(r.area.list.listed), len(content.Questions(words.English)))
	equal(t, "open question", r.asked(), asked)
	equal(t, "marked", r.area.list.marked, "")
}

func TestFocusSelectsTheWords(t *testing.T) {
	r := openDemo(t)
	r.ask("lid")
	r.window.Canvas().Unfocus()
	r.area.Focus(r.window.Canvas())
	equal(t, "selected", r.area.search.SelectedText(), "lid")
	r.ask("salt")
	equal(t, "entry", r.area.search.Text, "salt")
}

func TestNothingFound(t *testing.T) {
	r := openDemo(t)
	r.area.Open("lid")
	r.ask("zzzzq")
	equal(t, "questions listed", len(r.area.list.listed), 0)
	has(t, "window", r.shows(), "Nothing found for “zzzzq”", "Try one plain word", "Or ask the help line:", "The number of your own food preservation line")
	r.press(fyne.KeyDown)
	r.press(fyne.KeyReturn)
	equal(t, "open question", r.asked(), "lid")
	r.change(t, func(c *class.Class) { c.People.HelpLine = "" })
	has(t, "sentence without a help line", r.area.list.none.Text(), "Or ask your agency: Your own extension office")
	r.change(t, func(c *class.Class) { c.People.Agency = "" })
	has(t, "sentence without an agency", r.area.list.none.Text(), "Or ask the agency whose advice you follow.")
	r.area.search.SetText(strings.Repeat("ü", 60))
	has(t, "sentence for a long text", r.area.list.none.Text(), "“"+strings.Repeat("ü", 40)+"…”")
	r.press(fyne.KeyEscape)
	lacks(t, "window after Escape", r.shows(), "Nothing found")
}

// TestListsTheBatchFirst asks that with nothing typed each question stands there
// once, those of the crop first, then those of the method, then the others in
// the order of the file.
func TestListsTheBatchFirst(t *testing.T) {
	r := openDemo(t)
	l := r.area.list
	for batch, want := range map[int]struct{ first, method, other string }{
		0: {"beans-many-times", "water-how-much", "corn-cob"},
		1: {"greens", "water-how-much", "steam-setup"},
		2: {"headspace-none", "steam-setup", "water-how-much"},
		3: {"cool-mash", "outlets", "water-how-much"},
	} {
		r.session.Select(batch)
		equal(t, "first question", l.listed[0], want.first)
		b, _ := r.session.ViewedBatch()
		own := l.now.groups[0]
		equal(t, "heading", own.heading, "For “"+b.Batch.Name+"”")
		in := func(g group, id string) bool {
			return slices.ContainsFunc(g.questions, func(q content.Question) bool { return q.ID == id })
		}
		if !in(own, want.method) || !in(l.now.groups[1], want.other) {
			t.Errorf("batch %d: %s or %s stands in the wrong group", batch, want.method, want.other)
		}
		equal(t, "questions listed", len(l.listed), len(content.Questions(words.English)))
		if sorted := slices.Compact(slices.Sorted(slices.Values(l.listed))); len(sorted) != len(l.listed) {
			t.Error("a question is listed twice")
		}
	}
}

// TestListAndAnswerBeginAtTheTop asks that nobody has to scroll back for what was
// just found or opened.
func TestListAndAnswerBeginAtTheTop(t *testing.T) {
	r := openDemo(t)
	r.enlarge(look.Light, 1.5) // so that a few lines fill the list
	down := fyne.NewPos(0, 90)
	r.ask("water")
	r.area.list.scroll.ScrollToOffset(down)
	test.Type(r.area.search, " how much")
	equal(t, "offset of the list", r.area.list.scroll.Offset.Y, 0)
	r.area.Open("clock-start")
	r.area.answer.scroll.ScrollToOffset(down)
	r.session.Select(1)
	equal(t, "offset of the answer for another batch", r.area.answer.scroll.Offset.Y, down.Y)
	r.area.Open("greens")
	equal(t, "offset of the answer", r.area.answer.scroll.Offset.Y, 0)
}

func TestClickOpens(t *testing.T) {
	r := openDemo(t)
	test.Tap(r.area.list.lines["lid"])
	equal(t, "open question", r.asked(), "lid")
	r.area.Open("no such question")
	equal(t, "open question", r.asked(), "lid")
}

func TestRelatedQuestionsOpen(t *testing.T) {
	r := openDemo(t)
	r.area.Open("chill-how-long")
	r.window.Canvas().FocusNext()
	if r.window.Canvas().Focused() != fyne.Focusable(r.area.answer.related[0].Line) {
		t.Fatal("the related questions do not follow the entry")
	}
	r.press(fyne.KeyReturn)
	equal(t, "open question", r.asked(), "chill-water-temperature")
	test.Tap(r.area.answer.related[0])
	equal(t, "open question", r.asked(), "bath-warms")
}

func TestRelated(t *testing.T) {
	byID := map[string]content.Question{}
	for _, q := range content.Questions(words.English) {
		byID[q.ID] = q
	}
	for id, want := range map[string]string{
		"corn-chill":        "corn-husk corn-ears corn-cob", // on the same crop, the nearest first
		"sprouts":           "insects headspace-none carrots",
		"ice-how-much":      "ice-estimate chill-how-long chill-water-temperature",
		"clock-start":       "minutes-of-a-crop sort-by-size shorter-time",
		"jars":              "jar-headspace",
		"outlets":           "first-boil largest-load",
		"do-not-freeze":     "chewy colour", // on no topic, but of one subject
		"pints-from-bushel": "how-much-to-buy metric",
		"dry-ice":           "planned-cut power-cut refreeze", // the only one on its topic
	} {
		var ids []string
		for _, q := range related(content.Questions(words.English), byID[id]) {
			ids = append(ids, q.ID)
		}
		equal(t, "related to "+id, strings.Join(ids, " "), want)
	}
	for id, q := range byID {
		list := related(content.Questions(words.English), q)
		if len(list) == 0 || len(list) > mostRelated || slices.ContainsFunc(list, func(o content.Question) bool { return o.ID == id }) {
			t.Errorf("%s is related to itself, or to %d questions", id, len(list))
		}
	}
}

// TestFewRelated asks that no line is left from the question before.
func TestFewRelated(t *testing.T) {
	r := openDemo(t)
	r.area.Open("clock-start")
	r.area.Open("jars")
	for i, want := range []bool{true, false, false} {
		equal(t, "line of a related question", r.area.answer.related[i].box.Visible(), want)
	}
}

// TestNoBatch asks that every question opens in a class without a batch, and for
// a batch with a treatment that is not in the table.
func TestNoBatch(t *testing.T) {
	unknown := demo(t)
	unknown.Batches[0].Treatment = "gone"
	none := demo(t)
	none.Batches = nil
	for name, c := range map[string]class.Class{"unknown treatment": unknown, "no batch": none} {
		r := open(t, look.Light, c, areaWide, areaHigh)
		equal(t, name+": groups", len(r.area.list.now.groups), 1)
		lacks(t, name, r.shows(), "All other questions", "For “", "numbers of")
		for i, q := range content.Questions(words.English) {
			equal(t, name+": question in the list", r.area.list.listed[i], q.ID)
			r.area.Open(q.ID)
			equal(t, name+": sentence of the batch", r.here(), "")
		}
		has(t, name, r.shows(), "May I run four hot plates?", "Count breakers")
		r.ask("headspace")
		equal(t, name+": first found", r.area.list.listed[0], "headspace")
	}
}

// TestAsksInSpanish asks that a Spanish class finds and reads Spanish, whichever
// of the two languages somebody in the room speaks.
func TestAsksInSpanish(t *testing.T) {
	r := openDemo(t)
	r.session.Speak(words.In(words.Spanish))
	a := r.area
	for _, c := range []struct{ typed, first, asks string }{
		{"cuanto hielo", "ice-how-much", "¿Cuánto hielo necesito?"},
		{"how much ice", "ice-how-much", "¿Cuánto hielo necesito?"},
		{"cuánto tiempo", "beans-many-times", "He visto desde medio minuto"}, // the crop of the batch on view
		{"brocoli gusanos", "insects", "¿Cómo le saco los insectos al brócoli?"},
	} {
		r.ask(c.typed)
		equal(t, "first question for "+c.typed, a.list.listed[0], c.first)
		r.press(fyne.KeyReturn)
		question, answer, _ := a.Answer()
		has(t, "question", question, c.asks)
		has(t, "window", r.shows(), question)
		lacks(t, "answer to "+c.typed, answer, "{")
		for _, one := range related(content.Questions(words.Spanish), shownOf(a.session).open) {
			has(t, "window", r.shows(), one.Asks)
		}
	}
	r.press(fyne.KeyEscape)
	equal(t, "questions listed", len(a.list.listed), len(content.Questions(words.Spanish)))
}
