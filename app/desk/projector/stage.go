package projector

import (
	"fmt"
	"image/color"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
)

// stage is the theme of the view: colours and face are those of the window, and
// each text has a size of its own, under a name that only the stage knows. So
// the layout can set every size from the height of the view.
type stage struct {
	sizes map[fyne.ThemeSizeName]float32
	// tight is the share of its full size in which a page is set, so that it
	// fits; no text goes below the least of its manner.
	tight float32
}

func newStage() *stage { return &stage{sizes: map[fyne.ThemeSizeName]float32{}, tight: 1} }

// name makes a name for the size of one more text.
func (s *stage) name() fyne.ThemeSizeName {
	name := fyne.ThemeSizeName(fmt.Sprintf("projector-%d", len(s.sizes)+1))
	s.sizes[name] = look.Size(look.SizeText)
	return name
}

// Size answers the size of a text; all other sizes are those of the window.
func (s *stage) Size(name fyne.ThemeSizeName) float32 {
	if size, ok := s.sizes[name]; ok {
		return size
	}
	return look.Size(name)
}

// Color answers a colour of the window's theme.
func (s *stage) Color(name fyne.ThemeColorName, v fyne.ThemeVariant) color.Color {
	return look.Current().Color(name, v)
}

// Font answers the one face.
func (s *stage) Font(style fyne.TextStyle) fyne.Resource { return look.Current().Font(style) }

// Icon answers the toolkit's own icons.
func (s *stage) Icon(name fyne.ThemeIconName) fyne.Resource { return look.Current().Icon(name) }

// lettering is the theme of one drawing, whose labels have a size that its
// place in the view allows. Larger labels enlarge the whole drawing.
type lettering struct {
	*stage
	label float32
}

// Size answers the size of the labels.
func (l *lettering) Size(name fyne.ThemeSizeName) float32 {
	if name == look.SizeSmall {
		return l.label
	}
	return l.stage.Size(name)
}
