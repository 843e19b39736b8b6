package planning

import (
	"slices"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/content/words"
)

// peoplePage holds who comes and who helps.
type peoplePage struct {
	area                       *Area
	head, per                  *look.Field
	educator, agency, helpLine *look.Field
	roles                      *rows
	box                        fyne.CanvasObject
}

func newPeoplePage(a *Area) *peoplePage {
	p := &peoplePage{area: a}
	p.head = a.count(words.Key("People who come"), "", class.PeopleCounts, func(c *class.Class, n int) { c.People.Headcount = n })
	p.per = a.count(words.Key("At most at one station"), "", class.ShareCounts, func(c *class.Class, n int) { c.People.PerStation = n })
	p.educator = a.text(words.Key("Educator"), "", func(c *class.Class, text string) { c.People.Educator = text })
	p.agency = a.text(words.Key("Agency"), look.Say("whose table and advice stand above this one"), func(c *class.Class, text string) { c.People.Agency = text })
	p.helpLine = a.text(words.Key("Help line"), look.Say("whom a participant asks afterwards"), func(c *class.Class, text string) { c.People.HelpLine = text })
	p.roles = newRows(8, p.roleRow)
	add := look.NewButtonWithIcon(look.Say("Add a helper's task"), look.IconAdd(), p.addRole)
	p.box = look.Column(22,
		look.Section(look.Say("People"), look.Row(p.head, p.per), p.educator, p.agency, p.helpLine),
		look.Section(look.Say("Who does what"), p.roles.box, container.NewHBox(add)))
	return p
}

func (p *peoplePage) id() string                { return "people" }
func (p *peoplePage) object() fyne.CanvasObject { return p.box }

func (p *peoplePage) addRole() {
	p.area.committed(func() {
		p.area.must(p.area.change(words.Key("Add a task"), func(c *class.Class) {
			c.People.Roles = append(c.People.Roles, class.Role{Name: look.Say("Helper")})
		}))
	})
}

func (p *peoplePage) roleRow(i int) (fyne.CanvasObject, []*look.Field) {
	name := look.NewSentence(onFirst(i, look.Say("Task")), "", p.setRole(i, func(r *class.Role, text string) { r.Name = text }))
	does := look.NewSentence(onFirst(i, look.Say("What it means")), "", p.setRole(i, func(r *class.Role, text string) { r.Does = text }))
	remove := removeButton(func() {
		p.area.committed(func() {
			p.area.must(p.area.change(words.Key("Remove a task"), func(c *class.Class) {
				if i < len(c.People.Roles) {
					c.People.Roles = slices.Delete(c.People.Roles, i, i+1)
				}
			}))
		})
	})
	fields := look.Columns(12, []float32{1, 2}, name, does)
	return container.NewBorder(nil, nil, nil, inLine(i, remove), fields), []*look.Field{name, does}
}

func (p *peoplePage) setRole(i int, set func(r *class.Role, text string)) func(typed string) error {
	return func(typed string) error {
		return p.area.change(words.Key("Task"), func(c *class.Class) {
			if i < len(c.People.Roles) {
				set(&c.People.Roles[i], strings.TrimSpace(typed))
			}
		})
	}
}

func (p *peoplePage) show(c class.Class) {
	p.head.SetValue(whole(c.People.Headcount))
	p.per.SetValue(whole(c.People.PerStation))
	p.educator.SetValue(c.People.Educator)
	p.agency.SetValue(c.People.Agency)
	p.helpLine.SetValue(c.People.HelpLine)
	p.roles.show(len(c.People.Roles), func(i int) []string {
		return []string{c.People.Roles[i].Name, c.People.Roles[i].Does}
	})
}
