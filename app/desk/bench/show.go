package bench

import (
	"image/color"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/canvas"

	"example.org/kettleside/app/desk/look"
)

func enable(o fyne.Disableable, on bool) {
	if on {
		o.Enable()
	} else {
		o.Disable()
	}
}

// upright is a thin rule between inputs and answers.
func upright() fyne.CanvasObject {
	line := canvas.NewRectangle(color.Transparent)
	line.SetMinSize(fyne.NewSize(1, 1))
	return look.NewSurface(look.Rule, line)
}

// pair sets two fields side by side.
func pair(left, right fyne.CanvasObject) fyne.CanvasObject {
	return look.Columns(10, []float32{1, 1}, left, right)
}
