package drawing

import "strings"

// cut shortens a text to a width.
func cut(p *pen, text string, wide float64) string {
	if w, _ := p.room(text, true); w <= wide {
		return text
	}
	letters := []rune(text)
	for n := len(letters) - 1; n > 0; n-- {
		short := strings.TrimRight(string(letters[:n]), " ,.·") + "…"
		if w, _ := p.room(short, true); w <= wide {
			return short
		}
	}
	return ""
}

// drawNote writes a sentence instead of a chart.
func drawNote(p *pen, text string, wide, tall float64) {
	lines := wrapped(p, text, true, wide-2*edge, max(1, int((tall-4)/(rowHigh+2))))
	y := tall/2 - float64(len(lines)-1)*(rowHigh+2)/2
	for _, l := range lines {
		p.say(l, edge, y, start)
		y += rowHigh + 2
	}
}

// wrapped breaks a text, which may be strong, at its spaces into at most so many
// lines.
func wrapped(p *pen, text string, strong bool, wide float64, most int) []string {
	var lines []string
	words := strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '\n' || r == '\t' })
	for i, word := range words {
		if n := len(lines); n > 0 {
			longer := lines[n-1] + " " + word
			if w, _ := p.room(longer, strong); w <= wide {
				lines[n-1] = longer
				continue
			}
			if n == most {
				lines[n-1] = cut(p, lines[n-1]+" "+strings.Join(words[i:], " "), wide)
				return lines
			}
		}
		lines = append(lines, cut(p, word, wide))
	}
	return lines
}
