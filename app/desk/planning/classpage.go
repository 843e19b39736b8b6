package planning

import (
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// classPage holds title, date, units and notes.
type classPage struct {
	area        *Area
	title, date *look.Field
	notes       *look.Field
	units       *choice
	edition     *look.Text
	adopt       *look.Button
	box         fyne.CanvasObject
}

func newClassPage(a *Area) *classPage {
	p := &classPage{area: a}
	p.title = a.text(words.Key("Title"), "", func(c *class.Class, text string) { c.Title = text })
	p.date = look.NewField(look.Say("Date"), look.Say("year-month-day, such as 2027-06-12"), func(typed string) error {
		return a.change(words.Key("Date"), func(c *class.Class) { c.Date = strings.TrimSpace(typed) })
	})
	p.units = newChoice(func(units string) {
		a.change(words.Key("Units"), func(c *class.Class) { c.Units = measure.System(units) })
	}, option{string(measure.US), look.Say("Pounds, gallons, °F")}, option{string(measure.Metric), look.Say("Kilograms, litres, °C")})
	p.notes = look.NewNotes(look.Say("Notes for yourself"), "", func(typed string) error {
		return a.change(words.Key("Notes"), func(c *class.Class) { c.Notes = typed })
	})
	p.edition = look.Small("")
	p.adopt = look.NewButton(look.Say("Plan with the present table"), func() {
		a.committed(func() {
			a.must(a.change(words.Key("Table edition"), func(c *class.Class) { c.Edition = a.session.Table().Edition }))
		})
	})
	p.box = look.Column(18, look.Section(look.Say("Class"),
		p.title, look.Columns(16, []float32{1, 1}, p.date, look.Column(0)),
		look.Labelled(look.Say("Figures in"), p.units.box),
		p.notes,
		look.Labelled(look.Say("Planned with"), p.edition), container.NewHBox(p.adopt)))
	return p
}

func (p *classPage) id() string                { return "class" }
func (p *classPage) object() fyne.CanvasObject { return p.box }

func (p *classPage) show(c class.Class) {
	p.title.SetValue(c.Title)
	p.date.SetValue(c.Date)
	p.units.show(string(c.Units))
	p.notes.SetValue(c.Notes)
	p.edition.SetText(orMissing(c.Edition, look.Say("no table named")))
	look.Show(p.adopt, c.Edition != p.area.session.Table().Edition)
}

// placePage holds where the class is held.
type placePage struct {
	name, altitude, tap, freezer *look.Field
	box                          fyne.CanvasObject
}

func newPlacePage(a *Area) *placePage {
	p := &placePage{}
	p.name = a.text(words.Key("Name of the place"), "", func(c *class.Class, text string) { c.Place.Name = text })
	p.altitude = amount(a, words.Key("Altitude"), look.Say("such as 640 ft or 200 m; left empty it counts as low"), class.AltitudeLimits, measure.Foot, measure.Metre,
		func(c *class.Class, q measure.Length) { c.Place.Altitude = q })
	p.tap = amount(a, words.Key("Tap water"), look.Say("such as 66 °F or 19 °C"), class.TapLimits, measure.Fahrenheit, measure.Celsius,
		func(c *class.Class, q measure.Temperature) { c.Place.Tap = q })
	p.freezer = amount(a, words.Key("Freezer"), look.Say("its capacity, such as 14 cu ft or 400 L"), class.FreezerLimits, measure.CubicFoot, measure.Litre,
		func(c *class.Class, q measure.Volume) { c.Place.Freezer = q })
	p.box = look.Section(look.Say("Place"), p.name, look.Row(p.altitude, p.tap), look.Columns(16, []float32{1, 1}, p.freezer, look.Column(0)))
	return p
}

func (p *placePage) id() string                { return "place" }
func (p *placePage) object() fyne.CanvasObject { return p.box }

func (p *placePage) show(c class.Class) {
	p.name.SetValue(c.Place.Name)
	p.altitude.SetValue(shownAmount(c.Place.Altitude))
	p.tap.SetValue(shownAmount(c.Place.Tap))
	p.freezer.SetValue(shownAmount(c.Place.Freezer))
}
