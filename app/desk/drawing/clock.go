package drawing

import (
	"math"

	"fyne.io/fyne/v2"

	"example.org/kettleside/app/desk/look"
)

// ClockState is what the time line of one load shows.
type ClockState struct {
	AtBoil      bool    // minutes are counted from the return to the boil; otherwise from the lid
	Minutes     float64 // counted minutes; 0: no minutes, words say what ends it
	MinutesHigh float64
	ChillMin    float64 // 0: words

	In, Starts, Counted, Chill string
}

// ClockStart is a time line of one load: in, back at the boil, minutes
// counted, chill. It marks the moment at which the clock starts.
type ClockStart struct {
	surface
	state ClockState
}

// NewClockStart makes an empty picture; Set fills it.
func NewClockStart() *ClockStart {
	c := &ClockStart{}
	c.setUp(c, fyne.NewSize(240, 64), c.draw)
	return c
}

// Set shows another state.
func (c *ClockStart) Set(state ClockState) {
	state.Minutes, state.MinutesHigh = upTo(state.Minutes, mostMin), upTo(state.MinutesHigh, mostMin)
	state.ChillMin = upTo(state.ChillMin, mostMin)
	if c.state == state {
		return
	}
	c.state = state
	c.Refresh()
}

// returnMin is the longest return to the boil that the method allows, drawn
// before the clock starts.
const returnMin = 1.0

func (c *ClockStart) draw(p *pen, size fyne.Size) {
	s := c.state
	wide, tall := float64(size.Width), float64(size.Height)
	const left, right = 6.0, 6.0
	counted := math.Max(s.Minutes, s.MinutesHigh)
	if counted <= 0 {
		counted = 3
	}
	chill := s.ChillMin
	if chill <= 0 {
		chill = counted
	}
	before := 0.0
	if s.AtBoil {
		before = returnMin
	}
	unit := (wide - left - right) / (before + counted + chill)
	x0 := left
	x1 := x0 + before*unit
	x2 := x1 + counted*unit
	x3 := x2 + chill*unit
	bar, y := 16.0, tall/2-1
	if s.AtBoil {
		p.stroke(line(point{x0, y}, point{x1, y}).dashed(5, 4), 2, p.colour(look.Boiling))
		p.fill(disc(x0, y, 3.2), p.colour(look.Boiling))
		p.say(s.In, x0-4, y+bar/2+13, start)
	}
	c.drawBar(p, x1, x2, y, bar, s.Minutes > 0, look.Boiling)
	c.drawBar(p, x2, x3, y, bar, s.ChillMin > 0, look.Ice)
	ink := p.colour(look.Ink)
	startsAt := x1
	if s.Minutes > 0 { // a flag where the clock starts
		p.rule(point{x1, y - bar/2 - 7}, point{x1, y + bar/2 + 5}, 2, ink)
		p.fill(path{{{x1, y - bar/2 - 8}, {x1 + 8, y - bar/2 - 12}, {x1, y - bar/2 - 16}}}, ink)
		startsAt += 11
	}
	p.tell(s.Starts, startsAt, y-bar/2-12, start)
	p.tell(s.Counted, (x1+x2)/2, y+bar/2+13, middle)
	p.say(s.Chill, (x2+x3)/2, y+bar/2+13, middle)
}

// drawBar draws a stretch of time: solid where it has minutes, and running out
// in dashes where words end it.
func (c *ClockStart) drawBar(p *pen, from, to, y, tall float64, known bool, name fyne.ThemeColorName) {
	if known {
		p.block(from, y-tall/2, to-from, tall, p.colour(name))
		p.outline(box(from, y-tall/2, to-from, tall), 1, onSubstance())
		return
	}
	for i := range 6 {
		step := (to - from) / 6
		p.block(from+float64(i)*step, y-tall/2, step*(0.9-0.13*float64(i)), tall, p.colour(name))
	}
}
