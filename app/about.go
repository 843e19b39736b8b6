package app

import (
	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/content/licences"
	"example.org/kettleside/content/typeface"
)

// showAbout says what the program is, which edition of the table it carries, and
// what it is built from.
func (d *desk) showAbout() {
	d.ask.Page(look.Say("About Kettleside"), look.Column(12,
		look.Heading("Kettleside "+d.version),
		look.Body(look.Say("For people who teach the public to freeze vegetables: water, minutes, ice, packs and freezer space for a class, with the working and the source of every figure.")),
		look.Body(look.Say("It teaches published rules; it does not replace your own agency, your local code, or your eyes on the kettle.")),
		look.Small(look.Say("Crop table: %s, from %d sources. Settings and table edits are kept on this computer only; the program never uses the network.",
			d.session.Table().Edition, len(d.session.Table().Sources))),
		d.builtFrom()))
}

// builtFrom lists what is built into the program; each line opens a licence.
func (d *desk) builtFrom() fyne.CanvasObject {
	lines := look.Column(0)
	add := func(name, kind, text string) {
		line := look.NewLine(func() { d.ask.Page(name, look.Small(text)) })
		line.SetText(name, kind)
		lines.Add(line)
	}
	add("IBM Plex Sans", "SIL Open Font License 1.1", typeface.License)
	for _, l := range licences.All() {
		add(l.Module, l.Kind(), l.Text)
	}
	return look.Section(look.Say("Built from these, under their licences"), lines)
}
