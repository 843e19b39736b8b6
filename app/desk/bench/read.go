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
	q, err := read(in, text, class.PreparedLimits, measure.Pound, measure.Kilogram)
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
	q, err := read(in, text, class.KettleLimits, measure.Quart, measure.Litre)
	return func(c *class.Class) {
		for i := range c.Kit.Kettles {
			if c.Kit.Kettles[i].Name == in.of(c).Kettle {
				c.Kit.Kettles[i].Holds = q
			}
		}
	}, err
}

// readStart reads how warm the vegetables go in; an empty entry is a guess.
func (in *inputs) readStart(text string) (change, error) {
	q, err := readOptional(in, text, class.StartLimits, measure.Fahrenheit, measure.Celsius)
	return func(c *class.Class) { in.of(c).Start = q }, err
}

func (in *inputs) readAltitude(text string) (change, error) {
	q, err := readOptional(in, text, class.AltitudeLimits, measure.Foot, measure.Metre)
	return func(c *class.Class) { c.Place.Altitude = q }, err
}

// readBath reads the cold water of one ice bath, which the kit's baths share.
func (in *inputs) readBath(text string) (change, error) {
	q, err := readOptional(in, text, class.BathLimits, measure.Quart, measure.Litre)
	return func(c *class.Class) { c.Kit.BathWater = q }, err
}

// readIce reads the ice that the bath gets for this batch; an empty entry is by
// the rule.
func (in *inputs) readIce(text string) (change, error) {
	q, err := readOptional(in, text, class.IceLimits, measure.Pound, measure.Kilogram)
	return func(c *class.Class) { in.of(c).Ice = q }, err
}

func (in *inputs) readTap(text string) (change, error) {
	q, err := readOptional(in, text, class.TapLimits, measure.Fahrenheit, measure.Celsius)
	return func(c *class.Class) { c.Place.Tap = q }, err
}

func (in *inputs) readFreezer(text string) (change, error) {
	q, err := readOptional(in, text, class.FreezerLimits, measure.CubicFoot, measure.Litre)
	return func(c *class.Class) { c.Place.Freezer = q }, err
}

func (in *inputs) metric() bool { return in.bench.session.View().Class.Units == measure.Metric }

func read[D measure.Dimension](in *inputs, text string, allowed measure.Limits[D], us, metric *measure.Unit[D]) (measure.Of[D], error) {
	unit := us
	if in.metric() {
		unit = metric
	}
	return allowed.Enter("", text, unit)
}

// readOptional reads an amount that may be left out.
func readOptional[D measure.Dimension](in *inputs, text string, allowed measure.Limits[D], us, metric *measure.Unit[D]) (measure.Of[D], error) {
	if strings.TrimSpace(text) == "" {
		return measure.Of[D]{}, nil
	}
	return read(in, text, allowed, us, metric)
}

// TreatmentChoices lists every treatment of the table for a choice list, each
// with its minutes and when they start, or its words, its size of piece, and
// whether anything in it was changed here. It is found by all names of its crop.
func TreatmentChoices(s *session.Session) []look.Choice {
	var choices []look.Choice
	for _, t := range s.Table().Treatments {
		crop, _ := s.Table().Crop(t.Crop)
		detail := look.Sentence(s.TreatmentDoes(t))
		if t.Size != "" {
			detail += " · " + t.Size
		}
		if len(t.Changed) > 0 {
			detail += " · " + look.Say("edited")
		}
		choices = append(choices, look.Choice{ID: t.ID, Title: s.TreatmentName(t), Detail: detail, Also: strings.Join(crop.AlsoCalled, " ")})
	}
	return choices
}
