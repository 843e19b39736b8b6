package app

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"example.org/kettleside/app/desk/look"
)

// pointers are what the first start says of what can be done, in a line that
// stays until it is put away or another class is opened.
func (d *desk) pointers() fyne.CanvasObject {
	line := look.Column(0)
	away := look.NewButton(look.Say("Put away"), func() {
		d.settings.Greeted = true
		line.Hide()
		d.keepSettings()
	})
	points := look.Columns(20, []float32{1, 1, 1},
		look.Small(look.Say("This is a demo class. Change a number in Batch (Ctrl+3) and watch what follows.")),
		look.Small(look.Say("Somebody asks “what if”? Try it on a copy (Ctrl+T): the plan stays as it is.")),
		look.Small(look.Say("Print what people take home: Handouts (Ctrl+4). Your own class: File, New class.")))
	line.Add(look.NewSurface(look.Card, look.Inset(20, 6, container.NewBorder(nil, nil, nil, container.NewCenter(away), look.Wide(420, points)))))
	line.Add(look.Hairline())
	return line
}
