package exports

import (
	"slices"
	"strings"
	"time"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/disk"
	"example.org/kettleside/content/words"
)

// Sheet is one sheet that a workbook can have.
type Sheet struct {
	ID    string // stable, for settings and the command line
	Title string // on the tab, in English: a voice says it
	Usual bool   // in a workbook for which no sheets were chosen
}

// The ids of the sheets.
const (
	CoverSheet        = "cover"
	TreatmentsSheet   = "treatments"
	BatchSheet        = "batch"
	OwnNumbersSheet   = "own-numbers"
	ShoppingSheet     = "shopping"
	StationCardsSheet = "station-cards"
	PowerCutSheet     = "power-cut"
	PracticeSheet     = "practice"
	AnswersSheet      = "answers"
	EvaluationSheet   = "evaluation"
	CurvesSheet       = "curves"
	LabelsSheet       = "labels"
)

// Sheets lists the sheets in the order in which they stand in a workbook.
var Sheets = []Sheet{
	{CoverSheet, words.Key("Cover"), true},
	{TreatmentsSheet, words.Key("Treatments"), true},
	{BatchSheet, words.Key("Batches"), true},
	{OwnNumbersSheet, words.Key("Your own numbers"), true},
	{ShoppingSheet, words.Key("Shopping list"), true},
	{StationCardsSheet, words.Key("Station cards"), false},
	{PowerCutSheet, words.Key("Power cut"), false},
	{PracticeSheet, words.Key("Practice"), false},
	{AnswersSheet, words.Key("Answer key"), false},
	{EvaluationSheet, words.Key("Evaluation"), false},
	{CurvesSheet, words.Key("Curves"), false},
	{LabelsSheet, words.Key("Labels"), true},
}

// Options say what a workbook holds. The zero value is the usual sheets on letter
// paper with the class's own treatments and without the time it was made.
type Options struct {
	Sheets []string // ids; empty: the usual ones
	Paper  Paper    // empty: Letter
	Made   time.Time

	// AllTreatments lists every treatment of the class's crops, not only
	// those that the class uses.
	AllTreatments bool

	// LabelGrid is the id of a grid in Grids; empty: the first grid for the
	// paper. A grid decides the paper of the label sheet.
	LabelGrid string

	// The labels are shifted by so much to the right and down, in millimetres,
	// where a printer draws in its paper a little off.
	NudgeXMm, NudgeYMm float64
}

// OptionError is an option that a workbook cannot be made with. Options and
// what they may be are called as on the command line, in every language.
type OptionError struct {
	Option, Got string
	Allowed     []string
}

func (e *OptionError) Error() string { return e.Say(nil) }

// Say is the sentence by a voice.
func (e *OptionError) Say(v *words.Voice) string {
	return v.Say("%s: “%s” is not known; allowed is %s", e.Option, e.Got, either(v, e.Allowed))
}

// either lists what can be chosen: "a or b", "a, b, c".
func either(v *words.Voice, choices []string) string {
	if len(choices) == 2 {
		return v.Say("%s or %s", choices[0], choices[1])
	}
	return strings.Join(choices, ", ")
}

// settle fills what was left empty and refuses what is not known.
func (o Options) settle() (Options, error) {
	if o.Paper == "" {
		o.Paper = Letter
	}
	if !slices.Contains(Papers, o.Paper) {
		return o, &OptionError{"paper", string(o.Paper), each(Papers, func(p Paper) string { return string(p) })}
	}
	if len(o.Sheets) == 0 {
		for _, s := range Sheets {
			if s.Usual {
				o.Sheets = append(o.Sheets, s.ID)
			}
		}
	}
	for _, id := range o.Sheets {
		if !slices.ContainsFunc(Sheets, func(s Sheet) bool { return s.ID == id }) {
			return o, &OptionError{"sheets", id, each(Sheets, func(s Sheet) string { return s.ID })}
		}
	}
	if o.LabelGrid == "" {
		o.LabelGrid = firstGrid(o.Paper)
	}
	g, ok := gridNamed(o.LabelGrid)
	if !ok {
		return o, &OptionError{"labels", o.LabelGrid, each(Grids(), func(g Grid) string { return g.ID })}
	}
	_, err := g.nudged(o.NudgeXMm, o.NudgeYMm)
	return o, err
}

func each[T any](list []T, name func(T) string) []string {
	names := make([]string, len(list))
	for i, x := range list {
		names[i] = name(x)
	}
	return names
}

// Workbook makes the handout workbook of a class: an xlsx file, in the language
// that the class was worked through in. Equal class, table and options give
// equal bytes.
func Workbook(w class.Worked, o Options) ([]byte, error) {
	return workbook(w, o, nil)
}

// workbook builds and writes; change, if given, may alter the description
// before it is written, which the tests use to prove that formulas are live.
func workbook(w class.Worked, o Options, change func(*book)) ([]byte, error) {
	o, err := o.settle()
	if err != nil {
		return nil, err
	}
	b := describe(w, o)
	if change != nil {
		change(b)
	}
	return encode(b)
}

// describe builds the plain description of a workbook.
func describe(w class.Worked, o Options) *book {
	b := &book{
		title: short(w.Class.Title), author: short(w.Class.People.Educator),
		about:   w.Voice.Say("Handouts for a class. Times and rules from: %s", w.Table.Edition),
		created: stamp(w.Class.Date, o.Made), language: documentLanguage(w.Voice),
	}
	if b.title == "" {
		b.title = w.Voice.Say("Class")
	}
	if b.author == "" {
		b.author = "Kettleside"
	}
	m := newMaker(w, o)
	for _, s := range Sheets {
		if !slices.Contains(o.Sheets, s.ID) {
			continue
		}
		m.sources.begin()
		b.sheets = append(b.sheets, m.build(s))
	}
	if len(b.sheets) > 0 {
		m.inEnglish(b)
	}
	return b
}

// maker holds what the builders of the sheets share.
type maker struct {
	class.Worked
	options Options
	listed  []class.BatchWorked // one of each treatment on the treatments sheet
	sources *sources
	asked   []exercise // of the practice sheet, once they are worked out for it or its key
}

func newMaker(w class.Worked, o Options) *maker {
	m := &maker{Worked: w, options: o}
	m.listed = listedTreatments(w, o.AllTreatments)
	m.sources = newSources(w, m.listed)
	if slices.Contains(o.Sheets, OwnNumbersSheet) { // what another choice there rests on
		for _, b := range m.listed {
			y, _ := w.Table.ChosenYield(b.Crop.ID)
			m.sources.number(y.Source)
			m.sources.number(y.UsableShareSource)
		}
		m.sources.number(w.Table.Rule("tray-headspace-in").Source)
	}
	if slices.Contains(o.Sheets, PowerCutSheet) {
		m.numberPowerCut()
	}
	if slices.Contains(o.Sheets, AnswersSheet) {
		m.numberStatements()
	}
	return m
}

func (m *maker) build(s Sheet) *sheet {
	switch s.ID {
	case CoverSheet:
		return m.cover(s)
	case TreatmentsSheet:
		return m.treatments(s)
	case BatchSheet:
		return m.batches(s)
	case OwnNumbersSheet:
		return m.ownNumbers(s)
	case ShoppingSheet:
		return m.shoppingList(s)
	case StationCardsSheet:
		return m.stationCards(s)
	case PowerCutSheet:
		return m.powerCut(s)
	case PracticeSheet:
		return m.practice(s)
	case AnswersSheet:
		return m.answers(s)
	case EvaluationSheet:
		return m.evaluation(s)
	case CurvesSheet:
		return m.curves(s)
	}
	return m.labels(s)
}

// newSheet is an empty handout sheet with its header and footer.
func (m *maker) newSheet(s Sheet, shares ...float64) *sheet {
	p := handoutPage(m.options.Paper)
	name := m.Say(s.Title)
	p.header = edgeLine{p.oneLine(m.className()), name}
	foot := []string{m.Table.Edition}
	if m.Class.Date != "" {
		foot = append(foot, m.Say("class of %s", m.typedDay(m.Class.Date)))
	}
	if !m.options.Made.IsZero() {
		foot = append(foot, m.Say("made %s", m.day(m.options.Made)))
	}
	p.footer = edgeLine{p.oneLine(strings.Join(foot, " · ")), m.Say("Page &P of &N")}
	return &sheet{id: s.ID, name: name, page: p, face: arial, cols: p.columns(shares...), sealed: true}
}

// className is the title of the class, or what stands in its place.
func (m *maker) className() string {
	if t := short(m.Class.Title); t != "" {
		return t
	}
	return m.Say("A class in freezing vegetables")
}

// stamp is the time written into the file: when it was made, else the day of
// the class, else a fixed day. The clock is never asked.
func stamp(date string, made time.Time) string {
	if made.IsZero() {
		made, _ = class.ParseDate(date) // a date that is none was refused at entry
	}
	if made.IsZero() {
		made = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	}
	return made.UTC().Format(time.RFC3339)
}

// WriteWorkbook makes the workbook and puts it into a file as Replace does.
func WriteWorkbook(path string, w class.Worked, o Options) error {
	data, err := Workbook(w, o)
	if err != nil {
		return err
	}
	return disk.Replace(path, data)
}
