package session

import (
	"slices"
	"strings"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// AddBatch adds a batch with a treatment to the class and looks at it: one
// pound prepared at every station, in the first kettle of the kit on its first
// burner.
func (s *Session) AddBatch(treatment string) error {
	t, ok := s.table.Treatment(treatment)
	if !ok {
		return &measure.EntryError{Field: "Treatment", Typed: treatment, Problem: words.Key("is not in the crop table"), Allowed: words.Later("a treatment of the table")}
	}
	crop, _ := s.table.Crop(t.Crop)
	err := s.Change(words.Key("Add a batch"), func(c *class.Class) {
		b := class.Batch{
			Name: crop.Name, Treatment: t.ID, Prepared: measure.New(1, measure.Pound),
			Stations: min(max(int(s.worked.Totals.Stations.Value), class.StationCounts.Low), class.StationCounts.High),
			Pack:     batch.Packing{Container: batch.Bag, Size: batch.Pint, Mouth: reference.WideMouth, Tray: t.Pack == reference.TrayPack},
		}
		if c.Units == measure.Metric {
			b.Prepared = measure.New(0.5, measure.Kilogram)
		}
		if len(c.Kit.Kettles) > 0 {
			b.Kettle = c.Kit.Kettles[0].Name
		}
		if len(c.Kit.Burners) > 0 {
			b.Burner = c.Kit.Burners[0].Name
		}
		c.Batches = append(c.Batches, b)
	})
	if err == nil {
		s.lookAt(len(s.worked.Batches) - 1)
	}
	return err
}

// DuplicateBatch puts a copy of a batch behind it and looks at the copy.
func (s *Session) DuplicateBatch(i int) error {
	err := s.Change(words.Key("Duplicate batch"), func(c *class.Class) {
		if i < len(c.Batches) {
			c.Batches = slices.Insert(c.Batches, i+1, c.Batches[i])
		}
	})
	if err == nil {
		s.lookAt(i + 1)
	}
	return err
}

// MoveBatch moves a batch up (-1) or down (+1) in the order of the class.
func (s *Session) MoveBatch(i, by int) error {
	j := i + by
	if n := len(s.worked.Batches); i >= n || j < 0 || j >= n {
		return nil
	}
	err := s.Change(words.Key("Move batch"), func(c *class.Class) {
		c.Batches[i], c.Batches[j] = c.Batches[j], c.Batches[i]
	})
	if err == nil {
		s.lookAt(j)
	}
	return err
}

// RemoveBatch takes a batch out of the class.
func (s *Session) RemoveBatch(i int) error {
	return s.Change(words.Key("Remove batch"), func(c *class.Class) {
		if i < len(c.Batches) {
			c.Batches = slices.Delete(c.Batches, i, i+1)
		}
	})
}

// MethodName is a method in words, as a key to be said.
func MethodName(m reference.Method) string {
	switch m {
	case reference.WaterBlanch:
		return words.Key("water blanch")
	case reference.SteamBlanch:
		return words.Key("steam blanch")
	case reference.CookThrough:
		return words.Key("cook")
	default:
		return words.Key("without heating")
	}
}

// TreatmentName is a treatment in one line: "Snap beans, cut, water blanch".
func (s *Session) TreatmentName(t reference.Treatment) string {
	crop, ok := s.table.Crop(t.Crop)
	if !ok {
		crop.Name = t.Crop
	}
	parts := []string{crop.Name}
	for _, p := range []string{t.Cut, t.Grade, s.voice.Say(MethodName(t.Method))} {
		if p != "" {
			parts = append(parts, p)
		}
	}
	return strings.Join(parts, ", ")
}

// TreatmentDoes says what a treatment asks for as the table has it, for low
// altitude: its minutes and when they start, or its words.
func (s *Session) TreatmentDoes(t reference.Treatment) string {
	if t.Minutes == 0 {
		return t.Words
	}
	return s.does(t, s.voice.Say("%s at low altitude", measure.MinutesRange(t.Minutes, max(t.Minutes, t.MinutesHigh))))
}

// BatchDoes says what a batch asks for in this kitchen: its minutes with the
// altitude step and when they start, or its words.
func (s *Session) BatchDoes(b class.BatchWorked) string {
	if b.Treatment.Minutes == 0 {
		return b.Treatment.Words
	}
	return s.does(b.Treatment, b.Minutes.Text)
}

func (s *Session) does(t reference.Treatment, text string) string {
	switch t.ClockStart {
	case reference.AtReturnToBoil:
		text = s.voice.Say("%s, from the return to the boil", text)
	case reference.AtOnce:
		text = s.voice.Say("%s, from when the lid goes on", text)
	}
	if t.Words != "" {
		text += ", " + t.Words
	}
	return text
}

// SourceOf says where a treatment comes from, and how sure it is where nobody
// read it on a page.
func (s *Session) SourceOf(t reference.Treatment) string {
	name := s.SourceName(t.Source)
	if t.Standing != reference.Read && t.Standing != "" {
		name += " · " + s.voice.Say(string(t.Standing))
	}
	return name
}
