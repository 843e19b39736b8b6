package session

import (
	"fmt"
	"maps"
	"reflect"
	"slices"
	"strings"

	"pgregory.net/rapid"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// line is the history of a class as the model has it.
type line struct {
	states []class.Class
	labels []string // of the change that led to each state
	edited []bool   // whether the minutes of a treatment are, in each state
	now    int
	saved  int // -1: no state is on disk
}

func newLine(c class.Class) *line {
	return &line{states: []class.Class{c}, labels: []string{""}, edited: []bool{false}}
}

func (l *line) class() class.Class { return l.states[l.now].Clone() }

// add is false where nothing changes, or the class is refused.
func (l *line) add(label string, c class.Class) bool {
	if reflect.DeepEqual(c, l.states[l.now]) || c.Check() != nil {
		return false
	}
	if l.saved > l.now {
		l.saved = -1
	}
	l.states = append(l.states[:l.now+1:l.now+1], c)
	l.labels = append(l.labels[:l.now+1:l.now+1], label)
	l.edited = append(l.edited[:l.now+1:l.now+1], l.edited[l.now])
	l.now++
	return true
}

// edit changes the table, and says whether it is edited then.
func (l *line) edit() bool {
	edited, label := !l.edited[l.now], takenBack
	if edited {
		label = changeOfTable
	}
	l.states = append(l.states[:l.now+1:l.now+1], l.states[l.now])
	l.labels = append(l.labels[:l.now+1:l.now+1], label)
	l.edited = append(l.edited[:l.now+1:l.now+1], edited)
	l.now++
	return edited
}

// changes counts those of the class.
func (l *line) changes() (n int) {
	for i := range l.now {
		if l.edited[i] == l.edited[i+1] {
			n++
		}
	}
	return n
}

func (l *line) step(by int) {
	if to := l.now + by; to >= 0 && to < len(l.states) {
		l.now = to
	}
}

// label names the change that leads to a state, "" where there is none.
func (l *line) label(state int) string {
	if state <= 0 || state >= len(l.states) {
		return ""
	}
	return l.labels[state]
}

type modelTrial struct {
	name  string
	line  *line
	batch int
}

// model is what a session should be, in the plainest form.
type model struct {
	session  *Session
	memory   *estimate.Memory
	started  int
	plan     *line
	selected int
	trials   []*modelTrial
	viewed   *modelTrial
	laid     bool // the table just changed
}

func (m *model) onView() *line {
	if m.viewed != nil {
		return m.viewed.line
	}
	return m.plan
}

// step goes back or forth on a line; on that of the plan the table may follow.
func (m *model) step(l *line, by int) {
	was := l.edited[l.now]
	l.step(by)
	m.laid = l.edited[l.now] != was
	m.clamp()
}

// clamp is what a smaller class does to what is selected in it.
func (m *model) clamp() {
	m.selected = max(0, min(m.selected, len(m.plan.class().Batches)-1))
	for _, t := range m.trials {
		t.batch = max(0, min(t.batch, len(t.line.class().Batches)-1))
	}
}

func (m *model) drop(t *modelTrial) {
	m.trials = slices.DeleteFunc(m.trials, func(o *modelTrial) bool { return o == t })
	if m.viewed == t {
		m.viewed = nil
	}
}

// index draws one that may be that of no trial.
func (m *model) index(t *rapid.T) (int, *modelTrial) {
	i := rapid.IntRange(-1, len(m.trials)).Draw(t, "trial")
	if i < 0 || i == len(m.trials) {
		return i, nil
	}
	return i, m.trials[i]
}

// refused says why a name cannot be had, "" where it can.
func (m *model) refused(name string, own *modelTrial) string {
	name = strings.TrimSpace(name)
	taken := slices.IndexFunc(m.trials, func(t *modelTrial) bool { return t.name == name && t != own })
	switch {
	case name == "":
		return "nothing typed"
	case taken >= 0:
		return "taken"
	case strings.Contains(name, "\n"):
		return "one line"
	}
	return ""
}

func (m *model) has(name string) bool { return m.refused(name, nil) == "taken" }

// smallClass is quick to work out.
func smallClass() class.Class {
	c := class.New(reference.Edition)
	c.Kit.Kettles = append(c.Kit.Kettles, class.Kettle{Name: "Pot", Holds: measure.New(6, measure.Quart), Count: 1})
	one := class.Batch{Name: "Beans", Treatment: beans, Prepared: measure.New(2, measure.Pound), Stations: 1, Kettle: "Kettle",
		Pack: batch.Packing{Container: batch.Bag, Size: batch.Pint, Mouth: reference.WideMouth}}
	two := one
	two.Name, two.Treatment = "Spinach", "spinach-leaves-water"
	c.Batches = []class.Batch{one, two}
	return c
}

// someChange draws a change by its label: some change nothing, some are refused.
func someChange(t *rapid.T, batches int) (string, func(*class.Class)) {
	i := rapid.IntRange(0, max(batches-1, 0)).Draw(t, "batch")
	of := func(change func(*class.Batch)) func(*class.Class) {
		return func(c *class.Class) {
			if i < len(c.Batches) {
				change(&c.Batches[i])
			}
		}
	}
	n := rapid.IntRange(0, 3).Draw(t, "n")
	changes := map[string]func(*class.Class){
		"weight":   of(func(b *class.Batch) { b.Prepared = measure.New(float64(n), measure.Pound) }), // none is refused
		"stations": of(func(b *class.Batch) { b.Stations = n }),                                      // none is refused
		"packs":    of(func(b *class.Batch) { b.Pack.Count = n }),
		"treatment": of(func(b *class.Batch) {
			b.Treatment = []string{beans, "sweet-peppers-raw", "pumpkin-mashed-cook", "none"}[n]
		}),
		"kettle":   of(func(b *class.Batch) { b.Kettle = []string{"Kettle", "Pot", "", "gone"}[n] }), // the last is refused
		"holds":    func(c *class.Class) { c.Kit.Kettles[0].Holds = measure.New(float64(n+3), measure.Quart) },
		"altitude": func(c *class.Class) { c.Place.Altitude = measure.New(float64(n)*1000, measure.Foot) },
		"units":    func(c *class.Class) { c.Units = []measure.System{measure.US, measure.US, measure.Metric, ""}[n] },
		"title":    func(c *class.Class) { c.Title = fmt.Sprint(n) },
		"remove": func(c *class.Class) {
			if i < len(c.Batches) {
				c.Batches = slices.Delete(c.Batches, i, i+1)
			}
		},
		"copy": func(c *class.Class) {
			if i < len(c.Batches) && len(c.Batches) < 4 {
				c.Batches = append(c.Batches, c.Batches[i])
			}
		},
		"nothing": func(*class.Class) {},
	}
	label := rapid.SampledFrom(slices.Sorted(maps.Keys(changes))).Draw(t, "change")
	return label, changes[label]
}

// seen is everything that a listener can see of the model.
func (m *model) seen() string {
	text := fmt.Sprint(m.plan.class(), m.plan.now, m.selected, m.plan.edited[m.plan.now], slices.Index(m.trials, m.viewed))
	for _, one := range m.trials {
		text += fmt.Sprint(one.name, one.line.class(), one.line.now, one.batch)
	}
	return text
}
