package look_test

import (
	"errors"
	"strings"
	"testing"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/test"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/measure"
)

var (
	water = measure.Figure{
		ID: "water", Label: "Boiling water", Value: 3, High: 3, Unit: "gal", Text: "3 gal", Also: "12 qt · 11.4 L",
		Working: "3 lb × 1 gal/lb = 3 gal", Basis: measure.Ruled, Source: "so-easy",
	}
	buy = measure.Figure{
		ID: "buy", Label: "Buy", Value: 4, High: 5.5, Unit: "lb", Text: "4–5.5 lb", Also: "1.8–2.5 kg",
		Working: "3 lb ÷ (0.55 to 0.75)", Basis: measure.Estimate, Source: "usda-yields",
	}
	cook = measure.Figure{
		ID: "minutes", Label: "Minutes", Words: "cook until soft, then mash", Text: "cook until soft, then mash",
		Basis: measure.Tabled, Source: "so-easy",
	}
	troubles = []measure.Finding{
		{ID: "a", Severity: measure.Note, Says: "Station 4 has 3 people; the others have 4."},
		{ID: "b", Severity: measure.Stop, Says: "The kettle holds 1 gal; 3 lb at once need 3 gal.", Do: "Work in three loads, or use a larger kettle."},
		{ID: "c", Severity: measure.Mind, Says: "The class makes 24 lb of packs; the freezer should take 14–21 lb in a day.", Do: "Spread it over 2 days, send packs home on ice, or use more freezers."},
	}
)

// sheet shows every shared widget at once.
func sheet() fyne.CanvasObject {
	bad := look.NewQuantity("Prepared, per station", "such as 3 lb, 8 oz or 1.5 kg", func(string) error {
		return errors.New("you typed “3 apples”, which has a unit that does not fit; allowed is 0.05 lb to 500 lb")
	})
	bad.SetText("3 apples")
	bad.Done()
	good := look.NewQuantity("Altitude", "such as 640 ft or 200 m", nil)
	good.SetValue("640 ft")
	open := look.NewFigure(water)
	open.SetOpen(true)
	edited := look.NewFigure(water)
	edited.SetEdited(true)
	icons := container.NewHBox()
	for _, i := range []fyne.Resource{look.IconCrops(), look.IconClass(), look.IconBatch(), look.IconHandouts(),
		look.IconSeverity(measure.Stop), look.IconSeverity(measure.Mind), look.IconSeverity(measure.Note), look.IconCaution(),
		look.IconEdited(), look.IconAdd(), look.IconRemove(), look.IconUp(), look.IconDown(), look.IconCopy()} {
		icons.Add(look.Icon(i, 28))
	}
	save := widget.NewButton("Export", nil)
	save.Importance = widget.HighImportance
	left := look.Column(18,
		look.Section("Figures", look.Row(look.NewFigure(water), look.NewFigure(buy)), look.NewLargeFigure(buy), look.Row(open, edited), look.NewFigure(cook), look.NewSmallFigure(buy)))
	right := look.Column(18,
		look.Section("Entries", look.Row(bad, good)),
		look.Section("Findings", look.NewFindings("", troubles)),
		icons, container.NewHBox(save, widget.NewButton("Cancel", nil), widget.NewCheck("On a tray first", nil)),
		widget.NewSelect([]string{"a", "b"}, nil))
	return look.Inset(24, 20, look.Columns(40, []float32{1, 1}, left, right))
}

func TestEveryVariantDrawsEveryWidget(t *testing.T) {
	for _, v := range []look.Variant{look.Light, look.Dark, look.HighContrast} {
		t.Run(string(v), func(t *testing.T) {
			looktest.App(t, v)
			w := looktest.Window(t, sheet(), 1024, 760)
			looktest.Picture(t, w, "look-"+string(v))
		})
	}
}

func TestEveryWidgetIsLaidOutAsBefore(t *testing.T) {
	looktest.App(t, look.Light)
	w := looktest.Window(t, sheet(), 1024, 760)
	looktest.Markup(t, w, "sheet.xml")
}

func TestFieldKeepsWhatWasTyped(t *testing.T) {
	looktest.App(t, look.Light)
	var got []string
	f := look.NewQuantity("Prepared", "such as 3 lb", func(text string) error {
		if text == "apples" {
			return errors.New("you typed “apples”, which has no number at the start")
		}
		got = append(got, text)
		return nil
	})
	f.SetValue("3 lb")
	w := looktest.Window(t, f, 300, 120)
	w.Canvas().Focus(f.Entry())

	f.SetText("apples")
	f.Entry().TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if f.Text() != "apples" || f.Problem() == "" || len(got) != 0 {
		t.Fatalf("a refused entry: text %q, problem %q, handed over %v", f.Text(), f.Problem(), got)
	}
	f.SetValue("3 lb") // something else in the class changed
	if f.Text() != "apples" {
		t.Fatalf("a refused entry was lost: %q", f.Text())
	}
	f.Entry().TypedKey(&fyne.KeyEvent{Name: fyne.KeyEscape})
	if f.Text() != "3 lb" || f.Problem() != "" {
		t.Fatalf("Escape: text %q, problem %q", f.Text(), f.Problem())
	}
	f.SetText("4 lb")
	w.Canvas().Focus(nil)
	if len(got) != 1 || got[0] != "4 lb" || f.Dirty() {
		t.Fatalf("leaving the field handed over %v, dirty %v", got, f.Dirty())
	}
	f.SetText("5 lb")
	w.Canvas().Focus(f.Entry())
	if !look.CommitFocused(w.Canvas()) || got[len(got)-1] != "5 lb" {
		t.Fatalf("CommitFocused handed over %v", got)
	}
}

func TestFigureOpensItsWorking(t *testing.T) {
	looktest.App(t, look.Light)
	f := look.NewFigure(buy)
	w := looktest.Window(t, f, 300, 200)
	closed := f.MinSize().Height
	test.Tap(f)
	if !f.Open() || f.MinSize().Height <= closed {
		t.Fatalf("tapping did not open the working: %v, %v → %v", f.Open(), closed, f.MinSize().Height)
	}
	w.Canvas().Focus(f)
	f.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if f.Open() {
		t.Fatal("Enter did not close the working")
	}
	changed := buy
	changed.Text = "5–6 lb"
	f.SetFigure(changed)
	looktest.ObjectMarkup(t, f, "figure.xml")
}

func TestFindingsStandWeightiestFirst(t *testing.T) {
	looktest.App(t, look.Light)
	list := look.NewFindings("", troubles).List()
	if list[0].Severity != measure.Stop || list[1].Severity != measure.Mind || list[2].Severity != measure.Note {
		t.Fatalf("order: %v", list)
	}
	if got := look.CountFindings(troubles); got != "1 stop, 1 to mind" {
		t.Fatalf("count: %q", got)
	}
}

func TestChoiceListSearchesAndPicks(t *testing.T) {
	looktest.App(t, look.Light)
	w := looktest.Window(t, widget.NewLabel("under"), 800, 600)
	choices := []look.Choice{
		{ID: "beans", Title: "Snap beans, cut", Detail: "3 min from the return to the boil"},
		{ID: "broccoli", Title: "Broccoli, flowerets", Detail: "3 min from the return to the boil"},
		{ID: "spinach", Title: "Spinach", Detail: "2 min from the return to the boil"},
	}
	picked := ""
	list := look.ShowChoice(w, "Treatment", choices, "broccoli", func(id string) { picked = id })
	looktest.Picture(t, w, "choice")
	list.Search("min spin")
	list.Pick()
	if picked != "spinach" {
		t.Fatalf("search left %q first", picked)
	}
	list = look.ShowChoice(w, "Treatment", choices, "broccoli", func(id string) { picked = id })
	list.Search("min")
	focused := w.Canvas().Focused()
	focused.TypedKey(&fyne.KeyEvent{Name: fyne.KeyDown})
	focused.TypedKey(&fyne.KeyEvent{Name: fyne.KeyReturn})
	if picked != "broccoli" {
		t.Fatalf("picked %q", picked)
	}
}

// Escape and Enter do the same wherever in the dialog the focus is.
func TestAChoiceIsLeftAndTakenFromEveryPlaceInIt(t *testing.T) {
	looktest.App(t, look.Light)
	w := looktest.Window(t, widget.NewLabel("under"), 800, 600)
	choices := []look.Choice{{ID: "beans", Title: "Snap beans"}, {ID: "spinach", Title: "Spinach"}}
	for tabs := range 3 { // the search, Cancel, the list
		picked := ""
		open := func() {
			look.ShowChoice(w, "Treatment", choices, "spinach", func(id string) { picked = id })
			for range tabs {
				test.FocusNext(w.Canvas())
			}
		}
		press := func(name fyne.KeyName) { w.Canvas().Focused().TypedKey(&fyne.KeyEvent{Name: name}) }
		open()
		if press(fyne.KeyEscape); w.Canvas().Overlays().Top() != nil || picked != "" {
			t.Errorf("Escape after %d Tabs in %T: picked %q", tabs, w.Canvas().Focused(), picked)
		}
		open()
		_, cancel := w.Canvas().Focused().(*look.Button)
		want := map[bool]string{false: "spinach"}[cancel]
		if press(fyne.KeyReturn); w.Canvas().Overlays().Top() != nil || picked != want {
			t.Errorf("Enter after %d Tabs: picked %q, want %q", tabs, picked, want)
		}
	}
}

func TestAChoiceIsFoundByItsOtherNames(t *testing.T) {
	looktest.App(t, look.Light)
	picked := ""
	list := look.NewChoiceList([]look.Choice{{ID: "corn", Title: "Corn"}, {ID: "beans", Title: "Snap beans", Also: "string beans haricots"}}, "", func(id string) { picked = id })
	list.Search("string bean")
	list.Pick()
	if picked != "beans" {
		t.Errorf("picked %q", picked)
	}
}

// What stands in place of a list follows, also from one empty list to another.
func TestAnEmptyListOfFindingsSaysWhatItsPlaceSays(t *testing.T) {
	looktest.App(t, look.Light)
	f := look.NewFindings("Nothing yet.", nil)
	w := looktest.Window(t, f, 300, 200)
	f.Empty = "Nothing stands in the way."
	f.SetFindings(nil)
	if got := test.RenderToMarkup(w.Canvas()); !strings.Contains(got, "Nothing stands in the way.") || strings.Contains(got, "Nothing yet.") {
		t.Error(got)
	}
}
