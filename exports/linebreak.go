package exports

import "strings"

// lines breaks a text in bold and plain pieces into lines of a width in points,
// at blanks as a spreadsheet breaks it. A word that is too long for a line is
// broken anywhere. There is at least one line; blanks at its ends are left out.
func (f *lettering) lines(runs []run, width, size float64, italic bool) [][]run {
	b := &lineBreaker{face: f, width: width, size: size, italic: italic}
	for _, r := range runs {
		for _, c := range r.text {
			switch c {
			case '\n':
				b.endWord()
				b.endLine()
			case ' ':
				b.endWord()
				b.blank = append(b.blank, b.glyph(c, r.bold))
			default:
				b.word = append(b.word, b.glyph(c, r.bold))
			}
		}
	}
	b.endWord()
	b.endLine()
	return b.done
}

// glyph is a character with its width in points.
type glyph struct {
	char  rune
	bold  bool
	width float64
}

type lineBreaker struct {
	face        *lettering
	width, size float64
	italic      bool
	done        [][]run
	line        []glyph // what stands on the line so far
	at          float64 // its length
	blank, word []glyph // what comes after it
}

func (b *lineBreaker) glyph(c rune, bold bool) glyph {
	return glyph{c, bold, float64(b.face.advance(c, bold, b.italic)) / float64(b.face.perEm) * b.size}
}

// endLine puts the line to those that are done and begins the next.
func (b *lineBreaker) endLine() {
	var runs []run
	for i := 0; i < len(b.line); {
		var text strings.Builder
		bold := b.line[i].bold
		for ; i < len(b.line) && b.line[i].bold == bold; i++ {
			text.WriteRune(b.line[i].char)
		}
		runs = append(runs, run{bold, text.String()})
	}
	b.done = append(b.done, runs)
	b.line, b.at, b.blank = b.line[:0], 0, b.blank[:0]
}

// endWord puts the word that was gathered onto the line or onto the next.
func (b *lineBreaker) endWord() {
	if len(b.word) == 0 {
		return
	}
	long := length(b.word)
	if b.at > 0 && b.at+length(b.blank)+long > b.width {
		b.endLine()
	}
	if b.at > 0 {
		b.put(b.blank)
	}
	for i, g := range b.word {
		if b.at > 0 && b.at+g.width > b.width && long > b.width+b.face.over {
			b.endLine()
		}
		b.put(b.word[i : i+1])
	}
	b.blank, b.word = b.blank[:0], b.word[:0]
}

// put sets characters at the end of the line.
func (b *lineBreaker) put(list []glyph) {
	b.line = append(b.line, list...)
	b.at += length(list)
}

func length(list []glyph) float64 {
	sum := 0.0
	for _, g := range list {
		sum += g.width
	}
	return sum
}
