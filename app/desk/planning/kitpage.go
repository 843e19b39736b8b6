package planning

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
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
	p.baths = a.count("Ice baths", "", class.KitCounts, func(c *class.Class, n int) { c.Kit.Baths = n })
	p.bathWater = amount(a, "Water in one bath", "before the ice", class.BathLimits, measure.Quart, measure.Litre,
		func(c *class.Class, q measure.Volume) { c.Kit.BathWater = q })
	p.bathWater.SetPlaceHolder("not entered")
	p.iceBag = amount(a, "One bag of ice", "", class.IceBagLimits, measure.Pound, measure.Kilogram,
		func(c *class.Class, q measure.Mass) { c.Kit.IceBag = q })
	p.box = look.Column(22,
		look.Section("Kettles",
			look.Small("How much water a kettle holds with room to boil. The inside width of its basket counts for steam."),
			p.kettles.box, container.NewHBox(kettles.addButton(p.addKettle))),
		look.Section("Burners", look.Small(aboutBurners), p.burners.box, container.NewHBox(burners.addButton(p.addBurner))),
		look.Section("Baths and ice", look.Row(p.baths, p.bathWater, p.iceBag)))
	return p
}

func (p *kitPage) id() string                { return "kit" }
func (p *kitPage) object() fyne.CanvasObject { return p.box }

func (p *kitPage) addKettle() {
	kettles.add(p.area, func(name string) class.Kettle { return class.Kettle{Name: name, Count: 1} })
}

func (p *kitPage) addBurner() {
	burners.add(p.area, func(name string) class.Burner { return class.Burner{Name: name, Count: 1} })
}

func (p *kitPage) kettleRow(i int) (fyne.CanvasObject, []*look.Field) {
	name := kettles.nameField(p.area, i)
	holds := amountField(p.area, kettles, i, onFirst(i, "Holds"), class.KettleLimits, measure.Quart, measure.Litre,
		func(k *class.Kettle, q measure.Volume) { k.Holds = q })
	across := amountField(p.area, kettles, i, onFirst(i, "Basket across"), class.AcrossLimits, measure.Inch, measure.Centimetre,
		func(k *class.Kettle, q measure.Length) { k.Across = q })
	across.SetPlaceHolder("for steam")
	count := kettles.countField(p.area, i, func(k *class.Kettle, n int) { k.Count = n })
	row := look.Columns(8, kitShares, look.Columns(8, []float32{1.6, 1, 1.2}, name, holds, across), count)
	return container.NewBorder(nil, nil, nil, inLine(i, kettles.removeButton(p.area, i)), row), []*look.Field{name, holds, across, count}
}

// kitShares share the width out between what describes a kettle or a burner
// and how many there are of it, so that the numbers stand in line.
var kitShares = []float32{4.6, 1}

func (p *kitPage) show(c class.Class) {
	p.baths.SetValue(whole(c.Kit.Baths))
	p.bathWater.SetValue(c.Kit.BathWater.String())
	p.iceBag.SetValue(c.Kit.IceBag.String())
	p.kettles.show(len(c.Kit.Kettles), func(i int) []string {
		k := c.Kit.Kettles[i]
		return []string{k.Name, k.Holds.String(), k.Across.String(), whole(k.Count)}
	})
	p.showBurners(c.Kit.Burners)
}
