// Package look is how Kettleside looks: the theme with its one face, the type
// scale, the colours by substance, and the small widgets that every area of
// the window uses.
//
// Substances have one colour each in every drawing, plot and sheet; text and
// surfaces are ink and paper. Light, dark and high contrast share the
// substances.
package look

import "fyne.io/fyne/v2"

// Colour names beyond the toolkit's own, answered by Theme.
const (
	Ink     fyne.ThemeColorName = "ink"      // text and outlines
	InkSoft fyne.ThemeColorName = "ink-soft" // labels, units, working lines
	Paper   fyne.ThemeColorName = "paper"    // the page
	Card    fyne.ThemeColorName = "card"     // a surface on the page
	Rule    fyne.ThemeColorName = "rule"     // hairlines

	Boiling fyne.ThemeColorName = "boiling" // boiling water
	Ice     fyne.ThemeColorName = "ice"     // ice water and ice
	Heat    fyne.ThemeColorName = "heat"    // burner, heat
	Plant   fyne.ThemeColorName = "plant"   // vegetables
	Metal   fyne.ThemeColorName = "metal"   // kettles, baskets
	Air     fyne.ThemeColorName = "air"     // headspace, empty freezer

	Stop   fyne.ThemeColorName = "stop"   // finding: stop
	Mind   fyne.ThemeColorName = "mind"   // finding: mind
	Note   fyne.ThemeColorName = "note"   // finding: note
	Edited fyne.ThemeColorName = "edited" // a value changed here
)

// Sizes of the type scale: 13, 16, 21, 28, 44, 72.
const (
	SizeSmall   fyne.ThemeSizeName = "size-small"   // 13: working, sources
	SizeText    fyne.ThemeSizeName = "size-text"    // 16: text
	SizeHeading fyne.ThemeSizeName = "size-heading" // 21: headings, units
	SizeFigure  fyne.ThemeSizeName = "size-figure"  // 28: figures
	SizeLarge   fyne.ThemeSizeName = "size-large"   // 44: the figure that matters
	SizeHuge    fyne.ThemeSizeName = "size-huge"    // 72: projector
)
