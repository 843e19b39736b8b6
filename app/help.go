package app

import (
	"fyne.io/fyne/v2"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/content"
	"example.org/kettleside/content/words"
)

// showSources says what the figures rest on: the kinds of figures, the rules
// of method with their numbers, and the documents.
func (d *desk) showSources() {
	table := d.session.Table()
	page := look.Column(22, look.Section(look.Say("Four kinds of figures"),
		look.Body(look.Say("A figure from the crop table was published by the source named beside it. A rule of method is published arithmetic applied to what you entered. An estimate is worked out or judged; it is marked with ≈ and the word estimate, and never replaces a published time. The rest is as you entered it.")),
		look.Body(look.Say("Click a figure, or press Enter on it, to see its working and its source."))))
	rules := look.Column(8)
	for _, r := range table.Rules {
		rules.Add(look.Column(0, look.Body(r.Says), look.Small(look.Say(string(r.Standing))+" · "+d.session.SourceName(r.Source))))
	}
	sources := look.Column(8)
	for _, s := range table.Sources {
		line := s.Title
		if s.Publisher != "" {
			line += ". " + s.Publisher
		}
		sources.Add(look.Column(0, look.Body(line), look.Small(join(" · ", s.Edition, s.Address, s.Seen))))
	}
	page.Add(look.Section(look.Say("Rules of method"), rules))
	page.Add(look.Section(look.Say("Sources"), look.Small(look.Say("Table: %s. It was made for this program; no agency has published it. Follow your own agency where it says otherwise.", table.Edition)), sources))
	d.ask.Page(look.Say("What the figures rest on"), page)
}

func join(between string, parts ...string) string {
	text := ""
	for _, p := range parts {
		if p == "" {
			continue
		}
		if text != "" {
			text += between
		}
		text += p
	}
	return text
}

// showCautions lists everything that always applies.
func (d *desk) showCautions() {
	page := look.Column(16)
	for _, c := range content.Cautions(look.Voice().Language(), content.AllTopics()...) {
		title := look.NewText(c.Title, look.SizeText, look.Ink, fyne.TextStyle{Bold: true})
		page.Add(look.Marked(look.IconCaution(), look.Column(2, title, look.Body(d.filled(c.Text)))))
	}
	d.ask.Page(look.Say("Cautions"), page)
}

// filled puts the numbers of the rules into a text of the content.
func (d *desk) filled(text string) string {
	full, err := content.Fill(text, batch.RuleTexts(d.session.Table(), d.session.Class().Units, d.session.Voice()))
	if err != nil {
		return text
	}
	return full
}

// showKeys lists what the keyboard does.
func (d *desk) showKeys() {
	page := look.Column(6)
	for _, line := range [][2]string{
		{"Ctrl+1 … Ctrl+5", words.Key("Crops, Class, Batch, Handouts, Questions")},
		{"Ctrl+F", words.Key("Search the crop table")},
		{"Ctrl+B, Ctrl+D", words.Key("Add a batch, duplicate it")},
		{"Ctrl+Shift+↑, ↓", words.Key("Move a batch")},
		{"Ctrl+K", words.Key("Ask a question from the room, in the projector window too")},
		{"Ctrl+T, Ctrl+R", words.Key("Try it on a copy, return to the plan")},
		{"Ctrl+P, F11", words.Key("Projector view, full screen")},
		{"Ctrl+PgDn, Ctrl+PgUp", words.Key("Next and previous page of the projector")},
		{"PgDn, PgUp, →, ←", words.Key("In the projector window: next and previous page; Home and End turn to the first and last")},
		{"Escape, Ctrl+P", words.Key("In the projector window: Escape leaves full screen, then closes it; Ctrl+P closes it")},
		{"Ctrl+M", words.Key("What to mind in this class")},
		{"Ctrl+N, Ctrl+O", words.Key("New class, open a class")},
		{"Ctrl+S, Ctrl+Shift+S", words.Key("Save, save as")},
		{"Ctrl+Z, Ctrl+Y", words.Key("Undo, redo")},
		{"Ctrl+=, Ctrl+−", words.Key("Larger and smaller text")},
		{"Tab, Shift+Tab", words.Key("Next and previous field")},
		{"Enter", words.Key("Hand over what is typed; open the working of a figure")},
		{"Enter, F2", words.Key("In the crop table: change the cell; where it cannot be changed, Enter uses the treatment in a batch")},
		{"Escape", words.Key("Take back what is typed; leave a dialog")},
		{"Ctrl+Shift+1 … 7", words.Key("Light, dark, high contrast; pounds, kilograms; English, Spanish")},
		{"Ctrl+Q", words.Key("Quit")},
	} {
		keys := look.NewText(line[0], look.SizeText, look.Ink, fyne.TextStyle{Bold: true})
		page.Add(look.Columns(16, []float32{2, 3}, keys, look.Body(look.Say(line[1]))))
	}
	page.Add(look.Small(look.Say("On a Mac, Command takes the place of Ctrl.")))
	d.ask.Page(look.Say("Keys"), page)
}
