package app

import (
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/content/words"
)

// setLanguage says everything in another language from now on, also in the
// middle of a class. Nothing of the class changes: what was typed stays as it
// was typed.
func (d *desk) setLanguage(l words.Language) {
	if l == d.settings.Language {
		return
	}
	if d.exporting() {
		d.ask.Notice(look.Say("The workbook is being written"), look.Say("Change the language when it is done."))
		return
	}
	d.guardTyped(func() {
		d.settings.Language = l
		d.keepSettings()
		voice := words.In(l)
		look.Speak(voice)
		d.session.EndSubscriptions()
		d.session.Speak(voice)
		d.furnish(func() {})
		d.open(d.settings.Area)
		if d.projection != nil {
			d.projection.furnish(d.session)
		}
	})
}
