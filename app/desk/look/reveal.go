package look

import (
	"cmp"
	"slices"
	"weak"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
)

// scrolls are all that VScroll and Scroll made. The toolkit does not tell an
// object what it lies in, and an area that is made anew leaves its scrolls
// behind: they are held weakly.
var scrolls []weak.Pointer[container.Scroll]

// VScroll scrolls content from top to bottom, with white round it, of which there
// must be some. What gets the focus in it is scrolled into view.
func VScroll(horizontal, vertical float32, content fyne.CanvasObject) *container.Scroll {
	return known(container.NewVScroll(Inset(horizontal, vertical, content)))
}

// Scroll is VScroll for content that may be too wide as well.
func Scroll(horizontal, vertical float32, content fyne.CanvasObject) *container.Scroll {
	return known(container.NewScroll(Inset(horizontal, vertical, content)))
}

func known(s *container.Scroll) *container.Scroll {
	scrolls = slices.DeleteFunc(scrolls, func(p weak.Pointer[container.Scroll]) bool { return p.Value() == nil })
	scrolls = append(scrolls, weak.Make(s))
	return s
}

// Reveal scrolls as little as brings an object into view in every scroll that
// it lies in; where it is in view nothing moves. Whatever can get the focus in a
// scroll calls it when it does.
func Reveal(o fyne.CanvasObject) {
	for _, s := range onView(o) {
		if holds(s, o) { // which may be so only now that an inner one was scrolled
			s.ScrollToOffset(offsetFor(s, at(o).Subtract(at(s.Content)), o.Size()))
		}
	}
}

// revealMargin is the white that is left round what was scrolled into view.
const revealMargin = 12

// offsetFor is the offset of a scroll that shows a place in its content, with
// the beginning first where there is no room for all of it.
func offsetFor(s *container.Scroll, place fyne.Position, size fyne.Size) fyne.Position {
	along := func(now, from, long, view, all float32) float32 {
		if from >= now && from+long <= now+view {
			return now
		}
		margin := max(0, min(revealMargin*Current().Scale, (view-long)/2))
		now = min(max(now, from+long+margin-view), from-margin)
		return max(0, min(now, all-view))
	}
	all := s.Content.Size()
	offset := s.Offset
	offset.Y = along(offset.Y, place.Y, size.Height, s.Size().Height, all.Height)
	if s.Direction == container.ScrollBoth {
		offset.X = along(offset.X, place.X, size.Width, s.Size().Width, all.Width)
	}
	return offset
}

// onView are the scrolls in the window of an object that nothing hides, the
// smallest first: an inner one comes before the one that it lies in.
func onView(o fyne.CanvasObject) []*container.Scroll {
	driver := fyne.CurrentApp().Driver()
	canvas := driver.CanvasForObject(o)
	var list []*container.Scroll
	for _, p := range scrolls {
		if s := p.Value(); s != nil && s.Visible() && driver.CanvasForObject(s) == canvas && hasPlace(s) {
			list = append(list, s)
		}
	}
	slices.SortFunc(list, func(a, b *container.Scroll) int {
		return cmp.Compare(a.Size().Width*a.Size().Height, b.Size().Width*b.Size().Height)
	})
	return list
}

// hasPlace says whether a scroll is in the window and nothing that it lies in is
// hidden. The toolkit has no place for what is not: then the content and what
// stands in it behind white are at the same one.
func hasPlace(s *container.Scroll) bool {
	return at(s.Content.(*fyne.Container).Objects[0]) != at(s.Content)
}

// holds says whether an object lies in the content of a scroll.
func holds(s *container.Scroll, o fyne.CanvasObject) bool {
	from, place := at(s.Content), at(o)
	to, end := from.Add(s.Content.Size()), place.Add(o.Size())
	return place.X >= from.X && place.Y >= from.Y && end.X <= to.X && end.Y <= to.Y
}

func at(o fyne.CanvasObject) fyne.Position {
	return fyne.CurrentApp().Driver().AbsolutePositionForObject(o)
}
