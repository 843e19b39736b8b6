package bench

import (
	"strings"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/desk/session"
	"example.org/kettleside/app/measure"
)

// Each read function turns a typed text into a change of the class, or says
// what is wrong with it. A bare number is in the unit of the class.

type change = func(*class.Class)

func (in *inputs) readPrepared(text string) (change, error) {
	unit := measure.Pound
	if in.metric() {
		unit = measure.Kilogram
	}
	q, err := class.PreparedLimits.Enter("", text, unit)
	return func(c *class.Class) { in.of(c).Prepared = q }, err
}

func (in *inputs) readStations(text string) (change, error) {
	n, err := class.StationCounts.Enter("", text)
	return func(c *class.Class) { in.of(c).Stations = n }, err
}

// readCount reads the packs wanted; an empty entry is as many as it gives.
func (in *inputs) readCount(text string) (change, error) {
	n := 0
	var err error
	if strings.TrimSpace(text) != "" {
		n, err = class.PackCounts.Enter("", text)
	}
	return func(c *class.Class) { in.of(c).Pack.Count = n }, err
}

// readHolds reads what the chosen kettle holds; it is a property of the kit.
func (in *inputs) readHolds(text string) (change, error) {
	unit := measure.Quart
	if in.metric() {
		unit = measure.Litre
	}
	q, err := class.KettleLimits.Enter("", text, unit)
	return func(c *class.Class) {
		for i := range c.Kit.Kettles {
			if c.Kit.Kettles[i].Name == in.of(c).Kettle {
				c.Kit.Kettles[i].Holds = q
			}
		}
	}, err
}

func (in *inputs) readAltitude(text string) (change, error) {
	unit := measure.Foot
	if in.metric() {
		unit = measure.Metre
	}
	var q measure.Length
	var err error
	if strings.TrimSpace(text) != "" {
		q, err = class.AltitudeLimits.Enter("", text, unit)
	}
	return func(c *class.Class) { c.Place.Altitude = q }, err
}

func (in *inputs) readFreezer(text string) (change, error) {
	unit := measure.CubicFoot
	if in.metric() {
		unit = measure.Litre
	}
	var q measure.Volume
	var err error
	if strings.TrimSpace(text) != "" {
		q, err = class.FreezerLimits.Enter("", text, unit)
	}
	return func(c *class.Class) { c.Place.Freezer = q }, err
}

// TreatmentChoices lists every treatment of the table for a choice list, each
// with its minutes and when they start, or its words, and whether anything in
// it was changed here.
func TreatmentChoices(s *session.Session) []look.Choice {
	var choices []look.Choice
	for _, t := range s.Table().Treatments {
		detail := session.TreatmentDoes(t)
		if len(t.Changed) > 0 {
			detail += " · edited"
		}
		choices = append(choices, look.Choice{ID: t.ID, Title: s.TreatmentName(t), Detail: detail})
	}
	return choices
}
