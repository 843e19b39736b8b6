package drawing

import "example.org/kettleside/app/desk/look"

// namedHeight is a name for something at a height of a drawing, written beside
// it with a thin leader.
type namedHeight struct {
	text   string
	y      float64
	shown  bool
	figure bool // strong
}

// lineGap is how far apart the middles of two labels must be.
const lineGap = 19

// drawNames writes names in a column at textX, each led to its height at fromX,
// moved apart where they would touch, between two heights.
func drawNames(p *pen, names []namedHeight, fromX, textX, low, high float64) {
	var shown []namedHeight
	var wanted []float64
	for _, n := range names {
		if n.shown && n.text != "" {
			shown = append(shown, n)
			wanted = append(wanted, n.y)
		}
	}
	for i, y := range spread(wanted, lineGap, low, high) {
		n := shown[i]
		p.stroke(line(point{fromX, n.y}, point{textX - 11, n.y}, point{textX - 8, y}, point{textX - 3, y}), 1, p.colour(look.InkSoft))
		if n.figure {
			p.tell(n.text, textX, y, start)
		} else {
			p.say(n.text, textX, y, start)
		}
	}
}
