package look

import (
	_ "embed"

	"fyne.io/fyne/v2"
)

//go:embed appicon.png
var appIcon []byte

// AppIcon is the sign of the program: a kettle with its water and a pod in it.
// TestAppIconIsDrawnByUs draws it.
func AppIcon() fyne.Resource { return fyne.NewStaticResource("kettleside.png", appIcon) }
