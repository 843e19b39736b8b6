package exports

import (
	"fmt"
	"image/color"

	"github.com/xuri/excelize/v2"

	"example.org/kettleside/content/palette"
)

// role says what a cell is for; it decides how the cell looks and whether it
// can be typed into.
type role string

const (
	title      role = "title"      // name of the class, name of the sheet
	subtitle   role = "subtitle"   // the line under it
	heading    role = "heading"    // opens a part of a sheet
	subheading role = "subheading" // opens a part of a part
	head       role = "head"       // over a column
	headRight  role = "head right" // over a column of numbers
	headUnit   role = "head unit"  // over a column of units
	plain      role = "text"       // running text
	column     role = "column"     // running text in a narrow column
	small      role = "small"      // sources, workings: 10 point, the least on paper
	guess      role = "estimate"   // says that a figure is an estimate
	guessValue role = "estimate value"
	labelSmall role = "label small" // the same, 10 point
	label      role = "label"       // names what stands beside it
	value      role = "value"       // a figure with its unit, as text
	phrase     role = "words"       // words where no number exists
	boilValue  role = "boil value"  // minutes in boiling water or steam
	iceValue   role = "ice value"   // chilling
	number     role = "number"      // a number of the line, as text
	mark       role = "mark"        // a reference to a source: [3]
	line       role = "line"        // a line to write on
	ruled      role = "ruled"       // a hairline between records

	stopWord     role = "stop" // severity of a finding
	mindWord     role = "mind"
	noteWord     role = "note"
	edited       role = "edited"        // a value changed by the educator
	warningSmall role = "caution small" // where room is short: 10 point
	warning      role = "caution"

	inputText   role = "input text"   // typed by the participant: a choice
	inputAmount role = "input amount" // a decimal number
	inputCount  role = "input count"  // a whole number
	unit        role = "unit"         // unit of the number before it
	entryLabel  role = "entry label"  // names an open cell
	entryHow    role = "entry how"    // says what is meant and allowed

	resultAmount role = "result amount" // worked out by a formula: two decimals
	resultTenth  role = "result tenth"  // one decimal
	resultCount  role = "result count"  // a whole number
	resultTime   role = "result time"   // minutes, with the digits they have
	resultInch   role = "result inch"   // inches on eighths, as a fraction
	resultLabel  role = "result label"
	resultHow    role = "result how" // how it is worked out, in words
	resultText   role = "result text"
	resultUnit   role = "result unit"
	resultMark   role = "result mark"
	minding      role = "minding" // what to mind, worked out by a formula

	constant      role = "constant"       // a number of the table or a rule
	constantInch  role = "constant inch"  // inches on eighths, as a fraction
	constantCount role = "constant count" // a whole number
	constantText  role = "constant text"
	constantUnit  role = "constant unit"
	constantTwo   role = "constant two"  // two decimals
	constantFour  role = "constant four" // four decimals

	cardTitle    role = "card title"   // name of a batch, read from a step away
	cardWhat     role = "card what"    // what is done, read while standing
	cardMinutes  role = "card minutes" // the minutes of a card
	cardClock    role = "card clock"   // what starts them
	cardWords    role = "card words"   // words where there are no minutes
	cardGuess    role = "card estimate"
	cardValue    role = "card value"     // another figure of a card, read while standing
	cardLabel    role = "card label"     // names it
	cardTask     role = "card task"      // who does what
	writeBox     role = "write box"      // a box to write into
	boxLabel     role = "box label"      // names it
	boxLabelWide role = "box label wide" // says what belongs into a row of them
	warningCard  role = "caution card"   // a caution on a card
	tick         role = "tick"           // a box to tick
	choice       role = "choice"         // a number to ring
	choiceNow    role = "choice now"     // the same, for after the class
	choiceWord   role = "choice word"    // a word to ring
	headMiddle   role = "head middle"    // over several columns

	curveValue role = "curve value" // an estimate that a curve is drawn from
	tableOpen  role = "table open"  // of the crop table that goes out: may be edited
	tableShut  role = "table shut"  // may not

	packLabel role = "pack label"    // one label of a grid, 10 point
	packLarge role = "pack label 12" // the same, 12 point
	blank     role = "blank"
)

// face is a typeface that spreadsheet programs have, or have one of the same
// widths for (Liberation Sans, Helvetica).
const face = "Arial"

// baseSize is the size of the document's standard type, which decides how wide
// one unit of column width is.
const baseSize = 12

// pointsPerUnit is the width of one unit of column width in points: the width
// of a digit in 12 point Arial (1139/2048 em = 6.67 pt), as LibreOffice lays it
// out on paper (133.0 pt for 20 units, measured in a PDF).
const pointsPerUnit = 6.66

// look is how a role looks.
type look struct {
	size     float64
	bold     bool
	italic   bool
	ink      color.NRGBA
	fill     *color.NRGBA
	across   string // horizontal alignment; "" lets text stand left and numbers right
	middle   bool   // in the middle of the row; else at its top
	low      bool   // at the foot of the row
	wrap     bool
	indent   int
	above    edge
	below    edge
	box      edge // all four edges
	leftEdge edge
	format   string // number format
	open     bool   // can be typed into
}

// edge is a line at the edge of a cell; the zero value is none.
type edge struct {
	ink    color.NRGBA
	weight int // 1 thin, 2 medium, 5 thick, 4 dotted
}

var (
	ground   = palette.Light
	hair     = edge{ground.Rule, 1}
	inked    = edge{ground.Ink, 1}
	band     = shade(0xF1ECE2) // over columns: prints as a light grey
	typeHere = shade(0xFFF3CF) // tinted for typing: prints lighter than #E0E0E0
)

func shade(rgb uint32) *color.NRGBA {
	return &color.NRGBA{R: uint8(rgb >> 16), G: uint8(rgb >> 8), B: uint8(rgb), A: 0xFF}
}

// Number formats. Fractions stay numbers and are shown as a ruler shows them.
const (
	twoDecimals  = "0.00"
	fourDecimals = "0.0000"
	oneDecimal   = "0.0"
	noDecimals   = "0"
	eighths      = "# ?/?"
	asText       = "@"
)

// roleOrder fixes the order in which styles are made, and so the bytes.
var roleOrder = []role{
	title, subtitle, heading, subheading, head, headRight, headUnit, plain, column, small, guess, guessValue, label, labelSmall, value, phrase,
	boilValue, iceValue, number, mark, line, ruled, stopWord, mindWord, noteWord, edited, warning, warningSmall,
	inputText, inputAmount, inputCount, unit, entryLabel, entryHow, resultAmount, resultTenth, resultCount, resultTime,
	resultInch, resultLabel, resultHow, resultText, resultUnit, resultMark, minding, constant, constantInch, constantCount, constantTwo, constantFour, constantText, constantUnit,
	cardTitle, cardWhat, cardMinutes, cardClock, cardWords, cardGuess, cardValue, cardLabel, cardTask, writeBox, boxLabel, boxLabelWide, warningCard, tick, choice, choiceNow, choiceWord, headMiddle,
	curveValue, tableOpen, tableShut, packLabel, packLarge, blank,
}

// looks has a look for every role. No type is smaller than 10 point.
var looks = map[role]look{
	title:      {size: 20, bold: true, ink: ground.Ink, wrap: true, middle: true},
	subtitle:   {size: 12, ink: ground.InkSoft, wrap: true},
	heading:    {size: 14, bold: true, low: true, ink: ground.Ink, wrap: true, across: "left", below: edge{ground.Ink, 2}},
	subheading: {size: 12, bold: true, low: true, ink: ground.Ink, wrap: true},
	head:       {size: 10, bold: true, low: true, ink: ground.Ink, fill: band, wrap: true, below: inked, across: "left"},
	headRight:  {size: 10, bold: true, low: true, ink: ground.Ink, fill: band, wrap: true, below: inked, across: "right"},
	headUnit:   {size: 10, bold: true, low: true, ink: ground.Ink, fill: band, wrap: true, below: inked, across: "left", indent: 1},
	plain:      {size: 11, ink: ground.Ink, wrap: true, across: "left"},
	column:     {size: 11, ink: ground.Ink, wrap: true, across: "left", indent: 1},
	small:      {size: 10, ink: ground.InkSoft, wrap: true, across: "left"},
	guess:      {size: 10, bold: true, italic: true, ink: ground.InkSoft, wrap: true, across: "left"},
	guessValue: {size: 11, italic: true, ink: ground.InkSoft, wrap: true, across: "left"},
	label:      {size: 11, ink: ground.InkSoft, wrap: true, across: "left"},
	labelSmall: {size: 10, ink: ground.Ink, wrap: true, across: "left"},
	value:      {size: 11, bold: true, ink: ground.Ink, wrap: true, across: "left"},
	phrase:     {size: 11, bold: true, ink: ground.Ink, wrap: true, across: "left", indent: 1},
	boilValue:  {size: 12, bold: true, ink: ground.Ink, wrap: true, across: "left", leftEdge: edge{palette.Boiling, 5}, indent: 1},
	iceValue:   {size: 11, ink: ground.Ink, wrap: true, across: "left", leftEdge: edge{palette.Ice, 5}, indent: 1},
	number:     {size: 11, bold: true, ink: ground.Ink, across: "right"},
	mark:       {size: 10, ink: ground.InkSoft, wrap: true, across: "right"},
	line:       {size: 11, ink: ground.Ink, below: edge{ground.Edge, 1}, open: true, across: "left", wrap: true},
	ruled:      {size: 10, ink: ground.Ink, below: hair},

	stopWord:     {size: 11, bold: true, ink: ground.Stop, across: "left"},
	mindWord:     {size: 11, bold: true, ink: ground.Mind, across: "left"},
	noteWord:     {size: 11, bold: true, ink: ground.Note, across: "left"},
	edited:       {size: 11, bold: true, ink: ground.Edited, wrap: true, across: "left"},
	warning:      {size: 11, ink: ground.Ink, wrap: true, across: "left", leftEdge: edge{ground.Ink, 5}, indent: 1},
	warningSmall: {size: 10, ink: ground.Ink, wrap: true, across: "left", leftEdge: edge{ground.Ink, 5}, indent: 1},

	inputText:   {size: 12, indent: 1, bold: true, ink: ground.Ink, fill: typeHere, box: edge{ground.Edge, 1}, wrap: true, across: "left", middle: true, open: true},
	inputAmount: {size: 12, indent: 1, bold: true, ink: ground.Ink, fill: typeHere, box: edge{ground.Edge, 1}, across: "right", middle: true, open: true},
	inputCount:  {size: 12, indent: 1, bold: true, ink: ground.Ink, fill: typeHere, box: edge{ground.Edge, 1}, across: "right", middle: true, open: true, format: noDecimals},
	unit:        {size: 11, ink: ground.InkSoft, across: "left", indent: 1, middle: true},
	entryLabel:  {size: 11, ink: ground.Ink, across: "left", wrap: true, middle: true},
	entryHow:    {size: 10, ink: ground.InkSoft, across: "left", wrap: true, middle: true},

	resultAmount: {size: 11, bold: true, ink: ground.Ink, across: "right", wrap: true, format: twoDecimals, below: hair},
	resultTenth:  {size: 11, bold: true, ink: ground.Ink, across: "right", wrap: true, format: oneDecimal, below: hair},
	resultCount:  {size: 11, bold: true, ink: ground.Ink, across: "right", wrap: true, format: noDecimals, below: hair},
	resultTime:   {size: 11, bold: true, ink: ground.Ink, across: "right", wrap: true, below: hair},
	resultInch:   {size: 11, bold: true, ink: ground.Ink, across: "right", wrap: true, format: eighths, below: hair},
	resultLabel:  {size: 11, ink: ground.InkSoft, across: "left", wrap: true, below: hair},
	resultHow:    {size: 10, ink: ground.InkSoft, across: "left", wrap: true, below: hair},
	resultText:   {size: 11, bold: true, ink: ground.Ink, across: "left", wrap: true, below: hair},
	resultUnit:   {size: 11, ink: ground.InkSoft, across: "left", indent: 1, below: hair},
	resultMark:   {size: 10, ink: ground.InkSoft, across: "right", below: hair},
	minding:      {size: 11, bold: true, ink: ground.Mind, across: "left", wrap: true},

	constant:      {size: 10, ink: ground.Ink, across: "right", wrap: true},
	constantInch:  {size: 10, ink: ground.Ink, across: "right", format: eighths, wrap: true},
	constantCount: {size: 10, ink: ground.Ink, across: "right", format: noDecimals, wrap: true},
	constantText:  {size: 10, ink: ground.Ink, across: "left", wrap: true},
	constantUnit:  {size: 10, ink: ground.Ink, across: "left", wrap: true, indent: 1},
	constantTwo:   {size: 10, ink: ground.Ink, across: "right", wrap: true, format: twoDecimals},
	constantFour:  {size: 10, ink: ground.Ink, across: "right", wrap: true, format: fourDecimals},

	cardTitle:    {size: 24, bold: true, ink: ground.Ink, wrap: true, across: "left"},
	cardWhat:     {size: 18, ink: ground.Ink, wrap: true, across: "left"},
	cardMinutes:  {size: 40, bold: true, ink: ground.Ink, wrap: true, across: "left", middle: true, leftEdge: edge{palette.Boiling, 5}, indent: 1},
	cardClock:    {size: 18, ink: ground.Ink, wrap: true, across: "left", middle: true},
	cardWords:    {size: 22, bold: true, ink: ground.Ink, wrap: true, across: "left"},
	cardGuess:    {size: 18, bold: true, italic: true, ink: ground.InkSoft, wrap: true, across: "left"},
	cardValue:    {size: 18, bold: true, ink: ground.Ink, wrap: true, across: "left"},
	cardLabel:    {size: 11, ink: ground.InkSoft, wrap: true, across: "left", low: true, above: hair},
	cardTask:     {size: 13, ink: ground.Ink, wrap: true, across: "left"},
	writeBox:     {size: 18, ink: ground.Ink, box: edge{ground.Edge, 1}, across: "center", middle: true, open: true},
	boxLabel:     {size: 11, ink: ground.Ink, across: "center", wrap: true, middle: true},
	boxLabelWide: {size: 12, bold: true, ink: ground.Ink, wrap: true, across: "left", above: hair},
	warningCard:  {size: 12, ink: ground.Ink, wrap: true, across: "left", leftEdge: edge{ground.Ink, 5}, indent: 1},
	tick:         {size: 11, ink: ground.Ink, box: edge{ground.Edge, 1}, across: "center", middle: true, open: true},
	choice:       {size: 12, ink: ground.Ink, across: "center"},
	choiceNow:    {size: 12, bold: true, ink: ground.Ink, across: "center"},
	choiceWord:   {size: 11, ink: ground.Ink, across: "center", wrap: true},
	headMiddle:   {size: 10, bold: true, low: true, ink: ground.Ink, fill: band, wrap: true, below: inked, across: "center"},

	curveValue: {size: 10, italic: true, ink: ground.InkSoft, across: "right", format: oneDecimal},
	tableOpen:  {size: 11, ink: ground.Ink, fill: typeHere, box: edge{ground.Edge, 1}, wrap: true, across: "left", open: true, format: asText},
	tableShut:  {size: 11, ink: ground.InkSoft, below: hair, wrap: true, across: "left"},

	packLabel: {size: 10, ink: ground.Ink, across: "left", middle: true, wrap: true, indent: 1, open: true, format: asText},
	packLarge: {size: 12, ink: ground.Ink, across: "left", middle: true, wrap: true, indent: 1, open: true, format: asText},
	blank:     {size: 10, ink: ground.Ink},
}

// makeStyles puts a style for each role into the file.
func makeStyles(f *excelize.File) (map[role]int, error) {
	if err := f.SetDefaultFont(face); err != nil {
		return nil, err
	}
	size := float64(baseSize)
	f.Styles.Fonts.Font[0].Sz.Val = &size
	ids := map[role]int{}
	for _, r := range roleOrder {
		id, err := f.NewStyle(looks[r].style())
		if err != nil {
			return nil, fmt.Errorf("exports: style of %s: %w", r, err)
		}
		ids[r] = id
	}
	return ids, nil
}

func (l look) style() *excelize.Style {
	s := &excelize.Style{
		Font:       &excelize.Font{Family: face, Size: l.size, Bold: l.bold, Italic: l.italic, Color: hex(l.ink)},
		Alignment:  &excelize.Alignment{Horizontal: l.across, Vertical: "top", WrapText: l.wrap, Indent: l.indent},
		Protection: &excelize.Protection{Locked: !l.open},
	}
	if l.middle {
		s.Alignment.Vertical = "center"
	}
	if l.low {
		s.Alignment.Vertical = "bottom"
	}
	if l.fill != nil {
		s.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{hex(*l.fill)}}
	}
	for _, side := range []struct {
		name string
		edge edge
	}{{"left", l.leftEdge}, {"top", l.above}, {"bottom", l.below}} {
		if side.edge.weight > 0 {
			s.Border = append(s.Border, excelize.Border{Type: side.name, Style: side.edge.weight, Color: hex(side.edge.ink)})
		}
	}
	if l.box.weight > 0 {
		for _, side := range []string{"left", "right", "top", "bottom"} {
			s.Border = append(s.Border, excelize.Border{Type: side, Style: l.box.weight, Color: hex(l.box.ink)})
		}
	}
	if l.format != "" {
		format := l.format
		s.CustomNumFmt = &format
	}
	return s
}

func hex(c color.NRGBA) string { return fmt.Sprintf("%02X%02X%02X", c.R, c.G, c.B) }
