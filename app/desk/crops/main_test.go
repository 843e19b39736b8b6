package crops

import (
	"bytes"
	"testing"
	"time"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/test"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/look/looktest"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/content"
	"example.org/kettleside/reference"
)

// room is the crop table in a window, with the class of the demo.
type room struct {
	session *session.Session
	crops   *Crops
	window  fyne.Window
	opened  int // how often the batch area was asked for
}

// The size that the area has in the least window.
const areaWide, areaHigh = 925, 600

func open(t testing.TB, v look.Variant, wide, high float32) *room {
	t.Helper()
	looktest.App(t, v)
	c, err := class.Read(bytes.NewReader(content.DemoClass()), "demo")
	if err != nil {
		t.Fatal(err)
	}
	r := &room{session: session.New(reference.Shipped(), c)}
	r.crops = New(r.session, func() { r.opened++ })
	r.crops.now = func() time.Time { return time.Date(2027, 6, 1, 9, 0, 0, 0, time.UTC) }
	r.window = test.NewTempWindow(t, nil)
	r.window.SetPadded(false)
	r.window.SetContent(look.NewSurface(look.Paper, r.crops.Content))
	looktest.Settle(r.window, wide, high)
	return r
}

// TestMarkup compares the area with its golden markup. It changes where the crop
// table does; a wanted change is taken over by copying testdata/failed.
func TestMarkup(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	looktest.Markup(t, r.window, "crops.xml")
	r.crops.search.SetText("zzz")
	looktest.Markup(t, r.window, "nothing-fits.xml")
}

// TestToLookAt draws the area for a person to look at.
func TestToLookAt(t *testing.T) {
	r := open(t, look.Light, areaWide, areaHigh)
	looktest.Picture(t, r.window, "crops")
	r.crops.choose("snap-beans-cut-water")
	looktest.Settle(r.window, areaWide, areaHigh)
	r.crops.openForm()
	looktest.Picture(t, r.window, "crops-form")
	r.crops.form.value.SetText("4")
	r.crops.form.why.SetText("our own bulletin of 2026")
	r.crops.form.save()
	looktest.Settle(r.window, areaWide, areaHigh)
	r.crops.grid.move(0)
	looktest.Picture(t, r.window, "crops-changed")
	r.crops.search.SetText("zzz")
	looktest.Picture(t, r.window, "crops-none")
	r = open(t, look.Dark, 1181, 700)
	r.crops.choose("broccoli-flowerets-steam")
	r.crops.use()
	looktest.Settle(r.window, 1181, 700)
	looktest.Picture(t, r.window, "crops-dark")
	r = open(t, look.Light, 1400, 1400)
	r.crops.choose("snap-beans-cut-water")
	looktest.Settle(r.window, 1400, 1400)
	looktest.Picture(t, r.window, "crops-tall")
	r = open(t, look.Light, 700, 500)
	looktest.Picture(t, r.window, "crops-narrow")
}

// TestLargeType asks that the area can be used with type half as large again.
func TestLargeType(t *testing.T) {
	r := open(t, look.Light, 1181, 700)
	fyne.CurrentApp().Settings().SetTheme(look.NewScaled(look.Light, 1.5))
	r.window.Content().Refresh()
	looktest.Settle(r.window, 1181, 700)
	looktest.Picture(t, r.window, "crops-large-type")
	if least := r.crops.Content.MinSize(); least.Width > 1181 {
		t.Errorf("the area needs %v", least)
	}
}
