package look

import "fyne.io/fyne/v2"

// Follower brings an area up to date after a change: at once where the area is
// shown, and otherwise when it is shown again. What nobody sees costs nothing.
type Follower struct {
	content fyne.CanvasObject
	refresh func()
	behind  bool
}

// Follow makes a follower of an area; refresh shows the area as things are.
func Follow(content fyne.CanvasObject, refresh func()) *Follower {
	return &Follower{content: content, refresh: refresh}
}

// Changed is called after every change.
func (f *Follower) Changed() {
	if f.behind = !f.content.Visible(); !f.behind {
		f.refresh()
	}
}

// Shown is called when the area was hidden and is shown again.
func (f *Follower) Shown() {
	if f.behind {
		f.behind = false
		f.refresh()
	}
}
