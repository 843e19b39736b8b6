package reference

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/cases"
	"golang.org/x/text/unicode/norm"

	"example.org/kettleside/reference/gotaframe"
)

// Column is a column of the crop table that views sort, group or describe by.
type Column string

// The columns of views. Minutes, chill factor, headspace, water and storage are
// numbers, the others text.
const (
	ByCrop      Column = "crop"
	ByGroup     Column = "group"
	ByCut       Column = "cut"
	ByGrade     Column = "grade"
	ByMethod    Column = "method"
	ByPack      Column = "pack"
	BySource    Column = "source"
	ByStanding  Column = "standing"
	ByChanged   Column = "changed"
	ByMinutes   Column = "minutes"       // low end; missing where words stand
	ByChill     Column = "chill minutes" // factor times the high end of the minutes
	ByHeadspace Column = "headspace"     // inches; missing where there is none of its own
	ByWater     Column = "water"         // US gallons a pound; missing where no water blanch
	ByStorage   Column = "storage"       // months, low end
)

// textColumns give the text of a column. It is what views sort and group by,
// in the table's own words.
var textColumns = map[Column]func(*Table, *Treatment) string{
	ByCrop:     func(t *Table, x *Treatment) string { return t.cropOf(x).Name },
	ByGroup:    func(t *Table, x *Treatment) string { return t.voice.Say(string(t.cropOf(x).Group)) },
	ByCut:      func(_ *Table, x *Treatment) string { return x.Cut },
	ByGrade:    func(_ *Table, x *Treatment) string { return x.Grade },
	ByMethod:   func(_ *Table, x *Treatment) string { return string(x.Method) },
	ByPack:     func(_ *Table, x *Treatment) string { return string(x.Pack) },
	BySource:   func(_ *Table, x *Treatment) string { return x.Source },
	ByStanding: func(t *Table, x *Treatment) string { return t.voice.Say(string(x.Standing)) },
	ByChanged: func(t *Table, x *Treatment) string {
		if len(x.Changed) > 0 {
			return t.voice.Say("changed here")
		}
		return t.voice.Say("as shipped")
	},
}

// numberColumns give the number of a column; 0 means missing.
var numberColumns = map[Column]func(*Treatment) float64{
	ByMinutes:   func(x *Treatment) float64 { return x.Minutes },
	ByChill:     func(x *Treatment) float64 { return x.ChillFactor * x.MinutesHigh },
	ByHeadspace: func(x *Treatment) float64 { return x.HeadspaceIn },
	ByWater:     func(x *Treatment) float64 { return x.WaterGalPerLb },
	ByStorage:   func(x *Treatment) float64 { return x.StorageMonths },
}

// View says which treatments are shown and in which order. The zero View shows
// all in table order.
type View struct {
	// Text must occur in the crop's name, cut, grade, size, words or note, or
	// start a word of another name of the crop; of several words each must.
	// Capitals and accents do not matter, and "1½" is "1 1/2".
	Text      string
	Crop      string     // Crop.ID, or "" for all
	Group     Group      // Crop.Group, or "" for all
	Methods   []Method   // none means all
	Standings []Standing // none means all
	Changed   bool       // only those that were changed here
	Sort      []SortBy   // first key first; ties keep table order
}

// SortBy is one key of a sorting. Missing numbers come last in both directions.
type SortBy struct {
	Column     Column
	Descending bool
}

// Count is how many treatments share the same text in the columns asked for.
type Count struct {
	Values []string // one a column
	N      int
	Rows   []int // places in Table.Treatments, ascending
}

// Summary describes one numeric column of a view: how many treatments have a
// number and how many have none, and the least, middle, greatest and mean of
// those that have one (NaN where none has).
type Summary struct {
	N, Missing             int
	Min, Median, Max, Mean float64
}

// Rows returns the places in t.Treatments that the view shows, in its order.
func (t *Table) Rows(v View) ([]int, error) {
	terms := searchTerms(v.Text)
	keep := func(row int) bool { return t.shows(&v, terms, &t.Treatments[row]) }
	rows, err := gotaframe.Filter(len(t.Treatments), keep)
	if err != nil || len(rows) == 0 || len(v.Sort) == 0 {
		return rows, err
	}
	var columns []gotaframe.Column
	var keys []gotaframe.Key
	for _, s := range v.Sort {
		if !slices.ContainsFunc(columns, func(c gotaframe.Column) bool { return c.Name == string(s.Column) }) {
			c, err := t.column(s.Column, rows)
			if err != nil {
				return nil, err
			}
			for i := range c.Text {
				c.Text[i] = Folded(c.Text[i])
			}
			columns = append(columns, c)
		}
		keys = append(keys, gotaframe.Key{Column: string(s.Column), Descending: s.Descending})
	}
	order, err := gotaframe.Arrange(columns, keys)
	if err != nil {
		return nil, err
	}
	out := make([]int, len(order))
	for i, o := range order {
		out[i] = rows[o]
	}
	return out, nil
}

// IDs returns the treatment ids of rows; places outside of the table are left
// out.
func (t *Table) IDs(rows []int) []string {
	var out []string
	for _, r := range rows {
		if r >= 0 && r < len(t.Treatments) {
			out = append(out, t.Treatments[r].ID)
		}
	}
	return out
}

// CountBy groups rows of the table by text columns and counts them, in the
// order in which the groups first appear.
func (t *Table) CountBy(rows []int, by ...Column) ([]Count, error) {
	if err := t.within(rows); err != nil {
		return nil, err
	}
	var columns []gotaframe.Column
	var names []string
	for _, b := range by {
		if _, ok := textColumns[b]; !ok {
			return nil, fmt.Errorf("the table cannot be grouped by %s", quoted(string(b)))
		}
		c, err := t.column(b, rows)
		if err != nil {
			return nil, err
		}
		columns, names = append(columns, c), append(names, c.Name)
	}
	groups, err := gotaframe.GroupBy(columns, names)
	if err != nil {
		return nil, err
	}
	out := make([]Count, len(groups))
	for i, g := range groups {
		out[i] = Count{Values: g.Values, N: len(g.Rows)}
		for _, r := range g.Rows {
			out[i].Rows = append(out[i].Rows, rows[r])
		}
		slices.Sort(out[i].Rows)
	}
	return out, nil
}

// Describe summarises a numeric column over rows of the table.
func (t *Table) Describe(rows []int, c Column) (Summary, error) {
	if err := t.within(rows); err != nil {
		return Summary{}, err
	}
	if _, ok := numberColumns[c]; !ok {
		return Summary{}, fmt.Errorf("the column %s has no numbers to describe", quoted(string(c)))
	}
	col, err := t.column(c, rows)
	if err != nil {
		return Summary{}, err
	}
	return Summary(gotaframe.Describe(col.Numbers)), nil
}

// shows says whether a treatment passes the view's filter.
func (t *Table) shows(v *View, terms []string, x *Treatment) bool {
	c := t.cropOf(x)
	switch {
	case v.Crop != "" && x.Crop != v.Crop,
		v.Group != "" && c.Group != v.Group,
		len(v.Methods) > 0 && !slices.Contains(v.Methods, x.Method),
		len(v.Standings) > 0 && !slices.Contains(v.Standings, x.Standing),
		v.Changed && len(x.Changed) == 0:
		return false
	case len(terms) == 0:
		return true
	}
	text := Folded(strings.Join([]string{c.Name, x.Grade, x.Cut, x.Size, string(x.Method), x.Words, x.Note}, "\n"))
	text = otherWords.Replace(text)
	names := Folded(" " + strings.Join(c.AlsoCalled, " "))
	names += strings.ReplaceAll(names, "-", " ")
	for _, term := range terms {
		if !strings.Contains(text, term) && !strings.Contains(names, " "+term) {
			return false
		}
	}
	return true
}

// otherWords adds, for a search, what a cut is called elsewhere.
var otherWords = strings.NewReplacer("flowerets", "flowerets florets", "ramitos", "ramitos floretes")

// searchTerms splits what is searched for into words; a whole number and the
// fraction behind it are one.
func searchTerms(text string) []string {
	var out []string
	for _, term := range strings.Fields(Folded(text)) {
		if n := len(out); n > 0 && strings.Trim(out[n-1], "0123456789") == "" && strings.Contains(term, "/") && strings.Trim(term, "0123456789/") == "" {
			out[n-1] += " " + term
			continue
		}
		out = append(out, term)
	}
	return out
}

// column makes one column over rows.
func (t *Table) column(c Column, rows []int) (gotaframe.Column, error) {
	out := gotaframe.Column{Name: string(c)}
	if text, ok := textColumns[c]; ok {
		out.Text = make([]string, len(rows))
		for i, r := range rows {
			out.Text[i] = text(t, &t.Treatments[r])
		}
		return out, nil
	}
	number, ok := numberColumns[c]
	if !ok {
		return out, fmt.Errorf("the table has no column %s", quoted(string(c)))
	}
	out.Numbers = make([]float64, len(rows))
	for i, r := range rows {
		if out.Numbers[i] = number(&t.Treatments[r]); out.Numbers[i] == 0 {
			out.Numbers[i] = math.NaN()
		}
	}
	return out, nil
}

// within checks that rows are places of the table.
func (t *Table) within(rows []int) error {
	for _, r := range rows {
		if r < 0 || r >= len(t.Treatments) {
			return fmt.Errorf("the table has no row %d; it has rows 0 to %d", r, len(t.Treatments)-1)
		}
	}
	return nil
}

// cropOf returns the crop of a treatment, or an empty one.
func (t *Table) cropOf(x *Treatment) *Crop {
	for i := range t.Crops {
		if t.Crops[i].ID == x.Crop {
			return &t.Crops[i]
		}
	}
	return &Crop{}
}

// Folded takes away what a search does not look at: capitals, accents, and the
// difference between "1½" and "1 1/2".
func Folded(s string) string {
	plain := true
	for i := 0; i < len(s) && plain; i++ {
		plain = s[i] < 0x80
	}
	if plain {
		return strings.ToLower(s)
	}
	var spread strings.Builder
	digit := false
	for _, r := range s {
		if digit && r != fractionSlash && strings.ContainsRune(norm.NFKD.String(string(r)), fractionSlash) {
			spread.WriteByte(' ')
		}
		spread.WriteRune(r)
		digit = r >= '0' && r <= '9'
	}
	out := make([]rune, 0, len(s))
	for _, r := range norm.NFKD.String(cases.Fold().String(spread.String())) {
		switch {
		case unicode.Is(unicode.Mn, r):
		case r == fractionSlash:
			out = append(out, '/')
		default:
			out = append(out, r)
		}
	}
	return string(out)
}

const fractionSlash = '\u2044' // as in "½" written out
