package projector

import (
	"example.org/kettleside/app/desk/drawing"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/reference"
)

// freezer says how the batch is packed, and how it freezes in a freezer that the
// whole class shares.
type freezer struct {
	base
	title          *words
	space, packs   *figure
	day, through   *figure
	pack           *drawing.PackSection
	shelf          *drawing.FreezerShelf
	filled, stored *picture
	whose          *words // the food in the freezer is
}

func newFreezer(s *stage) *freezer {
	p := &freezer{
		base: base{called: look.Say("Pack and freezer")}, title: s.say(look.Say("Into the pack, into the freezer"), asTitle),
		space: s.figure(84), packs: s.figure(84), day: s.figure(84), through: s.figure(84),
		pack: drawing.NewPackSection(), shelf: drawing.NewFreezerShelf(),
		whose: s.say(look.Say("The whole class, all stations"), asRange),
	}
	p.filled, p.stored = s.picture(p.pack), s.picture(p.shelf)
	figures := newRow(40, []float32{1, 1}, newColumn(14, p.space, p.packs), newColumn(14, p.day, p.through))
	pictures := newRow(40, []float32{1, 1}, p.filled, newColumn(4, p.whose, p.stored).growing(p.stored))
	p.page = newColumn(18, p.title, figures, &rule{line: look.Hairline()}, pictures).growing(pictures)
	return p
}

func (p *freezer) applies(now shown) bool { return now.known() }

func (p *freezer) show(now shown) {
	b := now.batch
	p.space.set(b.Headspace, now.edited(reference.FieldHeadspace))
	p.packs.set(b.Packs, false)
	p.day.set(renamed(now.totals.FreezerDay, look.Say("Freezer takes in a day")), false)
	through := b.Estimates.Freezing
	if now.onTray() {
		through.Label = look.Say("Frozen on the tray after")
	}
	p.through.set(through, false)
	p.pack.Set(now.pack())
	p.shelf.Set(now.freezer())
}
