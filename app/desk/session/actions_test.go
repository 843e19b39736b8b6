package session

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"pgregory.net/rapid"

	"example.org/kettleside/app/class"
	"example.org/kettleside/reference"
)

// actions are what can be done to session and model at once, each with what it
// must return.
func (m *model) actions() map[string]func(*rapid.T) {
	s := m.session
	adds := func(t *rapid.T, l *line, label string, change func(*class.Class)) {
		c := l.class()
		change(&c)
		refused := c.Check() != nil && !reflect.DeepEqual(c, l.class())
		l.add(label, c)
		m.clamp()
		do := s.ChangeView
		if l == m.plan && m.viewed != nil {
			do = s.Change
		}
		if err := do(label, change); (err != nil) != refused {
			t.Fatalf("%s: %v; refused is %v", label, err, refused)
		}
	}
	changeView := func(t *rapid.T) {
		label, change := someChange(t, len(m.onView().class().Batches))
		adds(t, m.onView(), label, change)
	}
	return map[string]func(*rapid.T){
		"start": func(t *rapid.T) {
			name := rapid.SampledFrom([]string{"", "", "", " ", " Trial 2", "pot", "two\nlines"}).Draw(t, "name")
			if len(m.trials) == maxTrials || strings.TrimSpace(name) != "" && m.refused(name, nil) != "" {
				if s.StartTrial(name) == nil {
					t.Fatalf("%q was started", name)
				}
				return
			}
			one := &modelTrial{strings.TrimSpace(name), newLine(m.onView().class()), m.selected}
			for n := 1; one.name == "" || strings.TrimSpace(name) == "" && m.has(one.name); n++ {
				one.name = fmt.Sprintf("Trial %d", n)
			}
			if m.viewed != nil {
				one.batch = m.viewed.batch
			}
			m.trials, m.viewed = append(m.trials, one), one
			if err := s.StartTrial(name); err != nil {
				t.Fatal(err)
			}
		},
		"view": func(t *rapid.T) {
			i, one := m.index(t)
			if one != nil && one != m.viewed {
				m.viewed, m.selected = one, one.batch
				m.clamp()
			}
			s.ViewTrial(i)
		},
		"return": func(*rapid.T) { m.viewed = nil; s.ReturnToPlan() },
		"rename": func(t *rapid.T) {
			i, one := m.index(t)
			name := rapid.SampledFrom([]string{"", "Trial 1", "Trial 2 ", "pot", "two\nlines"}).Draw(t, "name")
			refused := one == nil || m.refused(name, one) != ""
			if !refused {
				one.name = strings.TrimSpace(name)
			}
			if err := s.RenameTrial(i, name); (err != nil) != refused {
				t.Fatalf("%q: %v; refused is %v", name, err, refused)
			}
		},
		"drop": func(t *rapid.T) {
			i, one := m.index(t)
			m.drop(one)
			s.DropTrial(i)
		},
		"adopt": func(t *rapid.T) {
			i, one := m.index(t)
			before := s.Class()
			if one != nil {
				m.plan.add("Adopt the trial", one.line.class())
				m.drop(one)
				m.viewed, m.selected = nil, one.batch
				m.clamp()
			}
			if err := s.AdoptTrial(i); (err != nil) != (one == nil) {
				t.Fatalf("adopt %d: %v", i, err)
			}
			if one != nil && !reflect.DeepEqual(s.Class(), before) && rapid.Bool().Draw(t, "undo") { // restores exactly
				s.Undo()
				if !reflect.DeepEqual(s.Class(), before) {
					t.Fatal("undo did not take the adopted trial back")
				}
				s.Redo()
				s.Select(one.batch)
			}
		},
		"change plan": func(t *rapid.T) {
			label, change := someChange(t, len(m.plan.class().Batches))
			adds(t, m.plan, label, change)
		},
		"change view":       changeView,
		"change view again": changeView, // what is done most
		"change view more":  changeView,
		"try": func(t *rapid.T) {
			_, change := someChange(t, len(m.onView().class().Batches))
			c := m.onView().class()
			change(&c)
			at := m.selected
			if m.viewed != nil {
				at = m.viewed.batch
			}
			tried, ok := s.TryView(change)
			if can := c.Check() == nil && at < len(c.Batches); ok != can {
				t.Fatalf("tried: %v", ok)
			}
			if ok && (!reflect.DeepEqual(tried.Class, c) || !reflect.DeepEqual(tried.Batch, class.WorkWith(class.With{Memory: m.memory}, c, s.Table()).Batches[at])) {
				t.Fatal("tried, the batch is another than the changed class has")
			}
		},
		"undo plan": func(*rapid.T) { m.step(m.plan, -1); _ = s.Undo() },
		"redo plan": func(*rapid.T) { m.step(m.plan, 1); _ = s.Redo() },
		"undo view": func(*rapid.T) { m.step(m.onView(), -1); _ = s.UndoView() },
		"redo view": func(*rapid.T) { m.step(m.onView(), 1); _ = s.RedoView() },
		"select": func(t *rapid.T) {
			i := rapid.IntRange(-1, 5).Draw(t, "i")
			m.selected = i
			if m.viewed != nil {
				m.viewed.batch = i
			}
			m.clamp()
			s.Select(i)
		},
		"duplicate": func(t *rapid.T) {
			n := len(m.plan.class().Batches)
			if n == 0 || n > 4 {
				return
			}
			i := rapid.IntRange(0, n-1).Draw(t, "i")
			c := m.plan.class()
			c.Batches = slices.Insert(c.Batches, i+1, c.Batches[i])
			m.plan.add("Duplicate batch", c)
			m.viewed, m.selected = nil, i+1
			if err := s.DuplicateBatch(i); err != nil {
				t.Fatal(err)
			}
		},
		"edit table": func(t *rapid.T) {
			m.laid = true
			var err error
			if m.plan.edit() {
				err = s.ApplyEdit(edit(s, "4"))
			} else {
				err = s.TakeBack(beans, reference.FieldMinutes)
			}
			if err != nil {
				t.Fatal(err)
			}
		},
	}
}
