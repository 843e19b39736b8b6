package planning

import (
	"fmt"
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
)

// kitPage holds what stands in the kitchen.
type kitPage struct {
	area                   *Area
	kettles                *rows
	burners, baths, iceBag *look.Field
	box                    fyne.CanvasObject
}

func newKitPage(a *Area) *kitPage {
	p := &kitPage{area: a}
	p.kettles = newRows(p.kettleRow)
	p.burners = a.count("Burners", "", class.KitCounts, func(c *class.Class, n int) { c.Kit.Burners = n })
	p.baths = a.count("Ice baths", "", class.KitCounts, func(c *class.Class, n int) { c.Kit.Baths = n })
	p.iceBag = amount(a, "One bag of ice", "", class.IceBagLimits, measure.Pound, measure.Kilogram,
		func(c *class.Class, q measure.Mass) { c.Kit.IceBag = q })
	add := widget.NewButtonWithIcon("Add a kettle", look.IconAdd(), p.addKettle)
	p.box = look.Column(22,
		look.Section("Kettles", look.Small("How much water a kettle holds with room to boil."), p.kettles.box, container.NewHBox(add)),
		look.Section("Burners, baths, ice", look.Row(p.burners, p.baths, p.iceBag)))
	return p
}

func (p *kitPage) id() string                { return "kit" }
func (p *kitPage) object() fyne.CanvasObject { return p.box }

func (p *kitPage) addKettle() {
	p.area.committed(func() {
		p.area.must(p.area.change("Add a kettle", func(c *class.Class) {
			c.Kit.Kettles = append(c.Kit.Kettles, class.Kettle{Name: freeName(c.Kit), Count: 1})
		}))
	})
}

// freeName is a name that no kettle has yet.
func freeName(k class.Kit) string {
	for n := len(k.Kettles) + 1; ; n++ {
		name := fmt.Sprintf("Kettle %d", n)
		if _, taken := k.KettleNamed(name); !taken {
			return name
		}
	}
}

func (p *kitPage) kettleRow(i int) (fyne.CanvasObject, []*look.Field) {
	name := look.NewField(onFirst(i, "Name"), "", func(typed string) error {
		return p.area.change("Kettle", func(c *class.Class) { rename(c, i, strings.TrimSpace(typed)) })
	})
	holds := amount(p.area, onFirst(i, "Holds"), "", class.KettleLimits, measure.Quart, measure.Litre, func(c *class.Class, q measure.Volume) {
		if i < len(c.Kit.Kettles) {
			c.Kit.Kettles[i].Holds = q
		}
	})
	count := p.area.count(onFirst(i, "How many"), "", class.KitCounts, func(c *class.Class, n int) {
		if i < len(c.Kit.Kettles) {
			c.Kit.Kettles[i].Count = n
		}
	})
	remove := removeButton(func() {
		p.area.committed(func() { p.area.must(p.area.change("Remove a kettle", func(c *class.Class) { removeKettle(c, i) })) })
	})
	fields := look.Columns(12, []float32{2, 1.2, 1}, name, holds, count)
	return container.NewBorder(nil, nil, nil, inLine(i, remove), fields), []*look.Field{name, holds, count}
}

// rename gives a kettle another name, also in the batches that use it.
func rename(c *class.Class, i int, name string) {
	if i >= len(c.Kit.Kettles) {
		return
	}
	old := c.Kit.Kettles[i].Name
	c.Kit.Kettles[i].Name = name
	for j := range c.Batches {
		if c.Batches[j].Kettle == old {
			c.Batches[j].Kettle = name
		}
	}
}

// removeKettle takes a kettle out of the kit; batches that used it have none
// then, and say so.
func removeKettle(c *class.Class, i int) {
	if i >= len(c.Kit.Kettles) {
		return
	}
	old := c.Kit.Kettles[i].Name
	c.Kit.Kettles = slices.Delete(c.Kit.Kettles, i, i+1)
	for j := range c.Batches {
		if c.Batches[j].Kettle == old {
			c.Batches[j].Kettle = ""
		}
	}
}

func (p *kitPage) show(c class.Class) {
	p.burners.SetValue(whole(c.Kit.Burners))
	p.baths.SetValue(whole(c.Kit.Baths))
	p.iceBag.SetValue(c.Kit.IceBag.String())
	p.kettles.show(len(c.Kit.Kettles), func(i int) []string {
		k := c.Kit.Kettles[i]
		return []string{k.Name, k.Holds.String(), whole(k.Count)}
	})
}
