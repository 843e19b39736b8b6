package crops

import (
	"slices"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/drawing/textfits"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

func equal[T comparable](t *testing.T, what string, got, want T) {
	t.Helper()
	if got != want {
		t.Errorf("%s is %v, want %v", what, got, want)
	}
}

// shown are the ids of the rows on the screen.
func (r *room) shown() []string { return r.crops.grid.table.IDs(r.crops.grid.rows) }

// cellOf is what stands in one cell.
func (r *room) cellOf(row, col int) *cell {
	c := newCell()
	r.crops.grid.update(place{row, col}, c)
	return c
}

// column is where the column with this id stands.
func (r *room) column(id string) int {
	return slices.IndexFunc(r.crops.grid.columns, func(c column) bool { return c.id == id })
}

const beans = "snap-beans-cut-water"

func TestEveryRowSaysWhatIsDoneAndFromWhere(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	equal(t, "rows", len(r.shown()), len(r.session.Table().Treatments))
	for row := range r.crops.grid.rows {
		for col, c := range r.crops.grid.columns {
			if text := r.cellOf(row, col).first; text == "" || text == "0" || strings.HasPrefix(text, "0 ") {
				t.Errorf("row %d has %q as %s", row, text, c.title)
			}
		}
	}
}

func TestSearchAndFilters(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	test.Type(r.crops.search, "BEANS cut")
	if rows := r.shown(); len(rows) == 0 || len(rows) > 20 || !slices.Contains(rows, beans) {
		t.Errorf("search shows %v", rows)
	}
	if !strings.Contains(r.crops.count.Text(), " of ") {
		t.Errorf("the count says %q", r.crops.count.Text())
	}
	r.crops.search.SetText("no such crop")
	if r.crops.grid.Visible() || !r.crops.none.Visible() {
		t.Error("an empty result is not said")
	}
	r.crops.ShowAll()
	equal(t, "rows after showing all", len(r.shown()), len(r.session.Table().Treatments))
	r.crops.method.SetSelected("Steam blanch")
	for _, id := range r.shown() {
		if x, _ := r.session.Table().Treatment(id); x.Method != reference.SteamBlanch {
			t.Errorf("%s is no steam blanch", id)
		}
	}
	r.crops.method.SetSelected("All methods")
	r.crops.group.SetSelected("greens")
	if n := len(r.shown()); n == 0 || n > 40 {
		t.Errorf("%d greens", n)
	}
	r.crops.standing.SetSelected(string(reference.FromMemory))
	for _, id := range r.shown() {
		if x, _ := r.session.Table().Treatment(id); x.Standing != reference.FromMemory {
			t.Errorf("%s is %s", id, x.Standing)
		}
	}
	r.crops.ShowAll()
	r.crops.changed.SetChecked(true)
	equal(t, "rows changed here", len(r.shown()), 0)
}

func TestSorting(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	first := r.shown()[0]
	minutes := func() (out []float64) {
		for _, id := range r.shown() {
			if x, _ := r.session.Table().Treatment(id); x.Minutes > 0 {
				out = append(out, x.Minutes)
			}
		}
		return out
	}
	h := newHead(r.crops.grid.sort)
	col := r.column("minutes")
	r.crops.grid.updateHead(col, h)
	h.Tapped(nil)
	if m := minutes(); !slices.IsSorted(m) {
		t.Errorf("not sorted: %v", m)
	}
	last, _ := r.session.Table().Treatment(r.shown()[len(r.shown())-1])
	equal(t, "minutes of the last row", last.Minutes, 0)
	h.TypedKey(&fyne.KeyEvent{Name: fyne.KeySpace})
	m := minutes()
	slices.Reverse(m)
	if !slices.IsSorted(m) {
		t.Error("not sorted downwards")
	}
	r.crops.grid.updateHead(col, h)
	if h.arrow == nil || h.arrow.Name() != look.IconDown().Name() {
		t.Error("the heading does not show that it sorts downwards")
	}
	h.Tapped(nil)
	equal(t, "first row in the order of the table", r.shown()[0], first)
	clock := newHead(r.crops.grid.sort)
	r.crops.grid.updateHead(r.column("clock"), clock)
	clock.Tapped(nil)
	equal(t, "first row", r.shown()[0], first)
}

func TestKeysMoveThroughRows(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	r.window.Canvas().Focus(r.crops.grid)
	press := func(key fyne.KeyName) { r.crops.grid.TypedKey(&fyne.KeyEvent{Name: key}) }
	press(fyne.KeyDown)
	press(fyne.KeyDown)
	equal(t, "row", r.crops.grid.at(), 2)
	press(fyne.KeyUp)
	equal(t, "row", r.crops.grid.at(), 1)
	equal(t, "record", r.crops.record.shown, r.shown()[1])
	press(fyne.KeyEnd)
	equal(t, "row", r.crops.grid.at(), len(r.shown())-1)
	press(fyne.KeyPageUp)
	press(fyne.KeyHome)
	equal(t, "row", r.crops.grid.at(), 0)
	press(fyne.KeyEnter)
	equal(t, "batches after Enter", len(r.session.Class().Batches), 5)
}

func TestTapShowsTheRecord(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	test.TapCanvas(r.window.Canvas(), fyne.NewPos(60, 200))
	if at := r.crops.grid.at(); at < 1 || r.crops.record.shown != r.shown()[at] {
		t.Errorf("row %d, record %s", at, r.crops.record.shown)
	}
}

func TestTextIsBrokenIntoLines(t *testing.T) {
	looktest.App(t, look.Light)
	style := fyne.TextStyle{}
	wide := fyne.MeasureText("Cook until soft,", 13, style).Width + 1
	for _, one := range [][]string{
		{"hearts", "hearts"},
		{"Cook until soft, then mash", "Cook until soft,", "then mash"},
		{"Cook until soft, then mash potatoes well", "Cook until soft,", "then mash", "potatoes well"},
		{"", ""},
	} {
		if lines := broken(one[0], wide, 13, style, 3); !slices.Equal(lines, one[1:]) {
			t.Errorf("%q breaks into %q", one[0], lines)
		}
	}
	for _, long := range []string{"Cook until soft, then put through a sieve and cool in cold water", "Unbreakablelongwordthatgoesonandon"} {
		lines := broken(long, wide, 13, style, 2)
		for _, line := range lines {
			if fyne.MeasureText(line, 13, style).Width > wide {
				t.Errorf("%q is too wide", line)
			}
		}
		if len(lines) > 2 || !strings.HasSuffix(strings.Join(lines, ""), "…") {
			t.Errorf("%q do not say that something is left out", lines)
		}
	}
}

// TestFits asks in each language that the area fits the least window, with the
// minutes and their clock in view.
func TestFits(t *testing.T) {
	for _, l := range words.Languages() {
		speak(t, l)
		r := open(t, look.Light, areaWide, areaHigh)
		if least := r.crops.Content.MinSize(); least.Width > 820 || least.Height > areaHigh {
			t.Errorf("%s: the area needs %v", l, least)
		}
		g := r.crops.grid
		if pos, size := g.sheet.where(place{0, r.column("clock")}); pos.X+size.Width > g.Size().Width {
			t.Errorf("minutes and clock need %.0f, there are %.0f", pos.X+size.Width, g.Size().Width)
		}
	}
	for _, wide := range []float32{300, 900, 2000} {
		for i, w := range widths(columns, wide) {
			if w < columns[i].wide-1 {
				t.Errorf("%s is only %.0f wide", columns[i].title, w)
			}
		}
	}
}

// TestNamesStandWhole asks in each language that no heading, no first choice of a
// filter and no name of a crop is cut in the least window; a row is as high as
// the name needs.
func TestNamesStandWhole(t *testing.T) {
	for _, l := range words.Languages() {
		speak(t, l)
		r := open(t, look.Light, areaWide, areaHigh)
		g := r.crops.grid
		crops := map[string]bool{}
		for at := range g.rows {
			g.sheet.reveal(place{at, 0})
			shown := strings.Join(strings.Fields(textfits.All(g.sheet.cells[place{at, 0}])), " ")
			want, _ := cropCell(g.table, g.treatment(at))
			equal(t, string(l)+": crop", shown, want)
			crops[want] = true
		}
		equal(t, "crops looked at", len(crops) > 50, true)
		for at, h := range g.sheet.heads {
			if col := g.columns[at].id; col != "source" && !strings.Contains(textfits.All(h), h.title) {
				t.Errorf("%s: %q is cut", l, h.title)
			}
		}
		for _, s := range []*widget.Select{r.crops.group, r.crops.method, r.crops.standing} {
			if text := textfits.All(s); !strings.Contains(text, s.Selected) {
				t.Errorf("%s: %q is cut to %q", l, s.Selected, text)
			}
		}
	}
}
