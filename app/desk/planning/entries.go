package planning

import (
	"strconv"
	"strings"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/widget"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
)

// The label of a field is a text to be said later: the field says it, and so
// does the Edit menu, where it names the change. The hint is said already.

// text makes a field for a text of the class.
func (a *Area) text(label, hint string, set func(c *class.Class, text string)) *look.Field {
	return look.NewField(look.Say(label), hint, func(typed string) error {
		return a.change(label, func(c *class.Class) { set(c, strings.TrimSpace(typed)) })
	})
}

// count makes a field for a whole number of the class.
func (a *Area) count(label, hint string, allowed class.Counts, set func(c *class.Class, n int)) *look.Field {
	return look.NewField(look.Say(label), hint, takeCount(a, label, allowed, set))
}

// takeCount reads a typed whole number into the class; change is how that is
// called in the Edit menu.
func takeCount(a *Area, change string, allowed class.Counts, set func(c *class.Class, n int)) func(typed string) error {
	return func(typed string) error {
		n, err := allowed.Enter("", typed)
		if err != nil {
			return err
		}
		return a.change(change, func(c *class.Class) { set(c, n) })
	}
}

// amount makes a field for an amount of the class. A bare number is in the
// unit for the class's system; an empty field is an amount that is not given.
func amount[D measure.Dimension](a *Area, label, hint string, allowed measure.Limits[D], us, metric *measure.Unit[D], set func(c *class.Class, q measure.Of[D])) *look.Field {
	return look.NewQuantity(look.Say(label), hint, takeAmount(a, label, allowed, us, metric, set))
}

// takeAmount reads a typed amount into the class; change is how that is called
// in the Edit menu.
func takeAmount[D measure.Dimension](a *Area, change string, allowed measure.Limits[D], us, metric *measure.Unit[D], set func(c *class.Class, q measure.Of[D])) func(typed string) error {
	return func(typed string) error {
		var q measure.Of[D]
		if strings.TrimSpace(typed) != "" {
			unit := us
			if a.session.Class().Units == measure.Metric {
				unit = metric
			}
			var err error
			if q, err = allowed.Enter("", typed, unit); err != nil {
				return err
			}
		}
		return a.change(change, func(c *class.Class) { set(c, q) })
	}
}

// shownAmount is an amount as its field shows it; "" where it is not given.
func shownAmount[D measure.Dimension](q measure.Of[D]) string { return look.Amount(q.String()) }

// option is one of a few values, with its words as they are shown.
type option struct{ value, words string }

// choice is a row of options of which one holds.
type choice struct {
	group   *widget.RadioGroup
	box     *fyne.Container // what stands on the page
	options []option
	filling bool
}

// newChoice makes the row; set is called only where a person picks another.
func newChoice(set func(value string), options ...option) *choice {
	c := &choice{options: options}
	words := make([]string, len(options))
	for i, o := range options {
		words[i] = o.words
	}
	c.group = widget.NewRadioGroup(words, func(picked string) {
		if !c.filling {
			set(meant(picked, c.options))
		}
	})
	c.group.Horizontal, c.group.Required = true, true
	c.box = container.New(&acrossOrDown{c.group}, c.group)
	return c
}

// meant is the value that words stand for.
func meant(words string, options []option) string {
	for _, o := range options {
		if o.words == words {
			return o.value
		}
	}
	return ""
}

// show marks the option that holds, without calling set.
func (c *choice) show(value string) {
	c.filling = true
	defer func() { c.filling = false }()
	for _, o := range c.options {
		if o.value == value {
			c.group.SetSelected(o.words)
		}
	}
}

// pick is a list that opens, of options of which one holds.
type pick struct {
	list    *look.Select
	options []option
}

// newPick makes the list; set is called only where a person picks another.
func newPick(set func(value string), options ...option) *pick {
	p := &pick{}
	p.list = look.NewSelect(nil, func(picked string) { set(meant(picked, p.options)) })
	p.offer(options...)
	return p
}

// offer offers other options.
func (p *pick) offer(options ...option) {
	p.options, p.list.Options = options, nil
	for _, o := range options {
		p.list.Options = append(p.list.Options, o.words)
	}
}

// show shows the option that holds, without calling set.
func (p *pick) show(value string) {
	for _, o := range p.options {
		if o.value == value {
			p.list.Selected = o.words
		}
	}
	p.list.Refresh()
}

// whole prints a whole number for a field.
func whole(n int) string { return strconv.Itoa(n) }
