package planning

import (
	"fmt"
	"slices"
	"strings"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// shelf is a list of the kit, its kettles or its burners. Whatever stands on it
// has a name of its own, by which batches use it.
type shelf[T any] struct {
	called, add, remove string // "Kettle", "Add a kettle", "Remove a kettle": said where they are shown
	left                string // says which batches have none any more

	of     func(*class.Kit) *[]T
	name   func(*T) *string
	usedBy func(*class.Batch) *string // the name of the one that a batch uses
}

var (
	kettles = shelf[class.Kettle]{
		called: words.Key("Kettle"), add: words.Key("Add a kettle"), remove: words.Key("Remove a kettle"),
		left:   words.Key("“%s” is out of the kit. Without a kettle now: %s. Undo brings it back."),
		of:     func(k *class.Kit) *[]class.Kettle { return &k.Kettles },
		name:   func(k *class.Kettle) *string { return &k.Name },
		usedBy: func(b *class.Batch) *string { return &b.Kettle },
	}
	burners = shelf[class.Burner]{
		called: words.Key("Burner"), add: words.Key("Add a burner"), remove: words.Key("Remove a burner"),
		left:   words.Key("“%s” is out of the kit. Without a burner now: %s. Undo brings it back."),
		of:     func(k *class.Kit) *[]class.Burner { return &k.Burners },
		name:   func(b *class.Burner) *string { return &b.Name },
		usedBy: func(b *class.Batch) *string { return &b.Burner },
	}
)

// set is the change of the class that changes item i; where that is gone in
// the meantime nothing changes.
func (s shelf[T]) set(i int, change func(*T)) func(*class.Class) {
	return func(c *class.Class) {
		if list := *s.of(&c.Kit); i < len(list) {
			change(&list[i])
		}
	}
}

// rename gives an item another name, also in the batches that use it.
func (s shelf[T]) rename(c *class.Class, i int, name string) {
	s.set(i, func(item *T) {
		s.useInstead(c, *s.name(item), name)
		*s.name(item) = name
	})(c)
}

// takeOut takes an item out of the kit; batches that used it have none then,
// and say so.
func (s shelf[T]) takeOut(c *class.Class, i int) {
	s.set(i, func(item *T) { s.useInstead(c, *s.name(item), "") })(c)
	if list := s.of(&c.Kit); i < len(*list) {
		*list = slices.Delete(*list, i, i+1)
	}
}

// useInstead lets every batch that uses one item use another.
func (s shelf[T]) useInstead(c *class.Class, old, other string) {
	for i := range c.Batches {
		if used := s.usedBy(&c.Batches[i]); *used == old {
			*used = other
		}
	}
}

// freeName is a name that nothing on the shelf has yet: "Kettle 3".
func (s shelf[T]) freeName(k class.Kit) string {
	list := *s.of(&k)
	for n := len(list) + 1; ; n++ {
		name := fmt.Sprintf("%s %d", look.Say(s.called), n)
		if !slices.ContainsFunc(list, func(item T) bool { return *s.name(&item) == name }) {
			return name
		}
	}
}

// addOne puts one more on the shelf, under a free name.
func (s shelf[T]) addOne(a *Area, newItem func(name string) T) {
	a.committed(func() {
		a.must(a.change(s.add, func(c *class.Class) {
			list := s.of(&c.Kit)
			*list = append(*list, newItem(s.freeName(c.Kit)))
		}))
	})
}

// addButton is the button below the rows.
func (s shelf[T]) addButton(add func()) *look.Button {
	return look.NewButtonWithIcon(look.Say(s.add), look.IconAdd(), add)
}

// removeButton takes item i away, and says in its place which batches have none
// then.
func (s shelf[T]) removeButton(a *Area, i int, list *rows) *look.Button {
	return removeButton(func() {
		a.committed(func() {
			lost := s.lost(a.session.Class(), i)
			err := a.change(s.remove, func(c *class.Class) { s.takeOut(c, i) })
			if err == nil {
				list.sayAt(i, lost)
			}
			a.must(err)
		})
	})
}

// lost says which batches use item i and have none without it; "" where none
// does.
func (s shelf[T]) lost(c class.Class, i int) string {
	list := *s.of(&c.Kit)
	if i >= len(list) {
		return ""
	}
	name := *s.name(&list[i])
	var batches []string
	for _, b := range c.Batches {
		if *s.usedBy(&b) == name {
			batches = append(batches, batchName(b))
		}
	}
	if len(batches) == 0 {
		return ""
	}
	return look.Say(s.left, name, strings.Join(batches, ", "))
}

// nameField is the field for the name of item i.
func (s shelf[T]) nameField(a *Area, i int) *look.Field {
	return look.NewField(onFirst(i, look.Say("Name")), "", func(typed string) error {
		return a.change(s.called, func(c *class.Class) { s.rename(c, i, strings.TrimSpace(typed)) })
	})
}

// countField is the field for how many there are of item i.
func (s shelf[T]) countField(a *Area, i int, set func(item *T, n int)) *look.Field {
	return look.NewField(onFirst(i, look.Say("How many")), "", takeCount(a, s.called, class.KitCounts, func(c *class.Class, n int) {
		s.set(i, func(item *T) { set(item, n) })(c)
	}))
}

// amountField is the field for an amount of item i.
func amountField[T any, D measure.Dimension](a *Area, s shelf[T], i int, label string, allowed measure.Limits[D], us, metric *measure.Unit[D], set func(item *T, q measure.Of[D])) *look.Field {
	return look.NewQuantity(label, "", takeAmount(a, s.called, allowed, us, metric, func(c *class.Class, q measure.Of[D]) {
		s.set(i, func(item *T) { set(item, q) })(c)
	}))
}
