package drawing

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"example.org/kettleside/app/desk/look"
)

// drawLabels names full mark, water and load beside the kettle and draws the
// loads as small kettles below the names.
func (k *Kettle) drawLabels(p *pen, f kettleForm, level, load, wide, tall float64) {
	s := k.state
	textX := math.Max(f.x+f.wide+26, wide*0.5+8)
	mark := f.floor - f.mark
	names := []namedHeight{
		{s.Holds, mark, s.HoldsL > 0, false},
		{s.Water, level, s.WaterL > 0 || s.DepthCm > 0, true},
		{s.Load, load, s.LoadKg > 0, true},
	}
	if names[0].shown {
		p.stroke(line(point{f.x + 1, mark}, point{f.x + 9, mark}), 1.4, onSubstance())
		p.stroke(line(point{f.x + f.wide - 9, mark}, point{f.x + f.wide - 1, mark}), 1.4, onSubstance())
	}
	// from top to bottom: too much water stands above the mark, and a steamed
	// load above the water
	slices.SortStableFunc(names, func(a, b namedHeight) int { return cmp.Compare(a.y, b.y) })
	drawNames(p, names, f.x+f.wide+3, textX, 10, tall-58)
	k.drawLoads(p, f, textX, tall, wide-textX)
}

// drawLoads draws each load as a small kettle, at most as many as there is room
// for, and says how many they are.
func (k *Kettle) drawLoads(p *pen, f kettleForm, x, tall, room float64) {
	if k.state.Loads <= 0 {
		return
	}
	const size, pitch = 19.0, 26.0
	p.say(k.state.LoadsText, x, tall-9, start)
	fit := max(1, int((room-4)/pitch))
	n := k.state.Loads
	if n > fit {
		n = fit - 1
		p.say("+"+strconv.Itoa(k.state.Loads-n), x+float64(n)*pitch+1, tall-30, start)
	}
	share := math.Min(1, k.state.waterShare(f))
	for i := range n {
		left, floor := x+float64(i)*pitch, tall-22.0
		high := size * markToWide * rimToMark
		water := share * size * markToWide
		p.block(left, floor-water, size, water, p.colour(look.Boiling))
		veg := math.Min(water, k.state.LoadKg/vegKgPerL/k.state.holds()*size*markToWide)
		if k.state.LoadKg > 0 {
			veg = math.Max(veg, 2)
		}
		p.block(left+2.5, floor-2-veg, size-5, veg, p.colour(look.Plant))
		p.stroke(line(point{left, floor - high}, point{left, floor}, point{left + size, floor}, point{left + size, floor - high}), 1.6, p.colour(look.Metal))
	}
}
