package planning

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// kitPage holds what stands in the kitchen.
type kitPage struct {
	area                     *Area
	kettles, burners         *rows
	kinds                    []*pick // of the burners, one for each row
	baths, bathWater, iceBag *look.Field
	box                      fyne.CanvasObject
}

func newKitPage(a *Area) *kitPage {
	p := &kitPage{area: a}
	p.kettles = newRows(8, p.kettleRow)
	p.burners = newRows(20, p.burnerRow)
	p.baths = a.count(words.Key("Ice baths"), "", class.KitCounts, func(c *class.Class, n int) { c.Kit.Baths = n })
	p.bathWater = amount(a, words.Key("Water in one bath"), look.Say("before the ice"), class.BathLimits, measure.Quart, measure.Litre,
		func(c *class.Class, q measure.Volume) { c.Kit.BathWater = q })
	p.bathWater.SetPlaceHolder(look.Say("not entered"))
	p.iceBag = amount(a, words.Key("One bag of ice"), "", class.IceBagLimits, measure.Pound, measure.Kilogram,
		func(c *class.Class, q measure.Mass) { c.Kit.IceBag = q })
	p.box = look.Column(22,
		look.Section(look.Say("Kettles"),
			look.Small(look.Say("How much water a kettle holds with room to boil. The inside width of its basket counts for steam.")),
			p.kettles.box, container.NewHBox(kettles.addButton(p.addKettle))),
		look.Section(look.Say("Burners"), look.Small(look.Say(aboutBurners)), p.burners.box, container.NewHBox(burners.addButton(p.addBurner))),
		look.Section(look.Say("Baths and ice"), look.Columns(16, []float32{1, 1.2, 1.2}, p.baths, p.bathWater, p.iceBag)))
	return p
}

func (p *kitPage) id() string                { return "kit" }
func (p *kitPage) object() fyne.CanvasObject { return p.box }

func (p *kitPage) addKettle() {
	kettles.addOne(p.area, func(name string) class.Kettle { return class.Kettle{Name: name, Count: 1} })
}

func (p *kitPage) addBurner() {
	burners.addOne(p.area, func(name string) class.Burner { return class.Burner{Name: name, Count: 1} })
}

func (p *kitPage) kettleRow(i int) (fyne.CanvasObject, []*look.Field) {
	name := kettles.nameField(p.area, i)
	holds := amountField(p.area, kettles, i, onFirst(i, look.Say("Holds")), class.KettleLimits, measure.Quart, measure.Litre,
		func(k *class.Kettle, q measure.Volume) { k.Holds = q })
	across := amountField(p.area, kettles, i, onFirst(i, look.Say("Basket across")), class.AcrossLimits, measure.Inch, measure.Centimetre,
		func(k *class.Kettle, q measure.Length) { k.Across = q })
	across.SetPlaceHolder(look.Say("for steam"))
	count := kettles.countField(p.area, i, func(k *class.Kettle, n int) { k.Count = n })
	row := withCount(look.Fold(280, 8, []float32{1.6, 2.2}, name, look.Columns(8, []float32{0.9, 1.2}, holds, across)), count)
	return container.NewBorder(nil, nil, nil, inLine(i, kettles.removeButton(p.area, i, p.kettles)), row), []*look.Field{name, holds, across, count}
}

// withCount sets how many there are of a kettle or a burner behind what describes
// it, in a column of one width, so that the numbers stand in line.
func withCount(described, count fyne.CanvasObject) fyne.CanvasObject {
	return container.New(&lastColumn{gap: 8, width: 66}, described, count)
}

func (p *kitPage) show(c class.Class) {
	p.baths.SetValue(whole(c.Kit.Baths))
	p.bathWater.SetValue(shownAmount(c.Kit.BathWater))
	p.iceBag.SetValue(shownAmount(c.Kit.IceBag))
	p.kettles.show(len(c.Kit.Kettles), func(i int) []string {
		k := c.Kit.Kettles[i]
		return []string{k.Name, shownAmount(k.Holds), shownAmount(k.Across), whole(k.Count)}
	})
	p.showBurners(c.Kit.Burners)
}
