package app

import (
	"fmt"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/content"
	"example.org/kettleside/content/typeface"
)

// showSources says what the figures rest on: the kinds of figures, the rules
// of method with their numbers, and the documents.
func (d *desk) showSources() {
	table := d.session.Table()
	page := look.Column(22, look.Section("Four kinds of figures",
		look.Body("A figure from the crop table was published by the source named beside it. A rule of method is published arithmetic applied to what you entered. An estimate is worked out or judged; it is marked with ≈ and the word estimate, and never replaces a published time. The rest is as you entered it."),
		look.Body("Click a figure, or press Enter on it, to see its working and its source.")))
	rules := look.Column(8)
	for _, r := range table.Rules {
		rules.Add(look.Column(0, look.Body(r.Says), look.Small(string(r.Standing)+" · "+d.session.SourceName(r.Source))))
	}
	sources := look.Column(8)
	for _, s := range table.Sources {
		line := s.Title
		if s.Publisher != "" {
			line += ". " + s.Publisher
		}
		sources.Add(look.Column(0, look.Body(line), look.Small(join(" · ", s.Edition, s.Address, s.Seen))))
	}
	page.Add(look.Section("Rules of method", rules))
	page.Add(look.Section("Sources", look.Small("Table: "+table.Edition+". It was made for this program; no agency has published it. Follow your own agency where it says otherwise."), sources))
	d.ask.Page("What the figures rest on", page)
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
	for _, c := range content.Cautions(content.AllTopics()...) {
		title := look.NewText(c.Title, look.SizeText, look.Ink, fyne.TextStyle{Bold: true})
		page.Add(look.Marked(look.IconCaution(), look.Column(2, title, look.Body(d.filled(c.Text)))))
	}
	d.ask.Page("Cautions", page)
}

// filled puts the numbers of the rules into a text of the content.
func (d *desk) filled(text string) string {
	full, err := content.Fill(text, batch.RuleTexts(d.session.Table(), d.session.Class().Units))
	if err != nil {
		return text
	}
	return full
}

// showKeys lists what the keyboard does.
func (d *desk) showKeys() {
	page := look.Column(6)
	for _, line := range [][2]string{
		{"Ctrl+1 to Ctrl+5", "Crops, Class, Batch, Handouts, Questions"},
		{"Ctrl+F", "Search the crop table"},
		{"Ctrl+B, Ctrl+D", "Add a batch, duplicate it"},
		{"Ctrl+Shift+↑ and ↓", "Move a batch"},
		{"Ctrl+K", "Ask a question from the room"},
		{"Ctrl+T, Ctrl+R", "Try it on a copy, return to the plan"},
		{"Ctrl+P, F11", "Projector view, full screen"},
		{"Ctrl+Page down and up", "Next and previous page of the projector"},
		{"Ctrl+M", "What to mind in this class"},
		{"Ctrl+N, Ctrl+O", "New class, open a class"},
		{"Ctrl+S, Ctrl+Shift+S", "Save, save as"},
		{"Ctrl+Z, Ctrl+Y", "Undo, redo"},
		{"Ctrl+= and Ctrl+−", "Larger and smaller text"},
		{"Tab, Shift+Tab", "Next and previous field"},
		{"Enter", "Hand over what is typed; open the working of a figure"},
		{"Escape", "Take back what is typed; leave a dialog"},
		{"Ctrl+Q", "Quit"},
	} {
		keys := look.NewText(line[0], look.SizeText, look.Ink, fyne.TextStyle{Bold: true})
		page.Add(look.Columns(16, []float32{2, 3}, keys, look.Body(line[1])))
	}
	page.Add(look.Small("On a Mac, Command takes the place of Ctrl."))
	d.ask.Page("Keys", page)
}

func (d *desk) showAbout() {
	d.ask.Page("About Kettleside", look.Column(12,
		look.Heading("Kettleside "+d.version),
		look.Body("For people who teach the public to freeze vegetables: water, minutes, ice, packs and freezer space for a class, with the working and the source of every figure."),
		look.Body("It teaches published rules; it does not replace your own agency, your local code, or your eyes on the kettle."),
		look.Small(fmt.Sprintf("Crop table: %s. Settings and table edits are kept on this computer only; the program never uses the network.", d.session.Table().Edition)),
		look.Section("Typeface", look.Small("IBM Plex Sans, under the SIL Open Font License 1.1:"), look.Small(typeface.License))))
}
