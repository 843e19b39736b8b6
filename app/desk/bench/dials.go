package bench

import (
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// scale is what a dial runs over in one system of units: what a class is likely
// to try. Anything else can be typed.
type scale[D measure.Dimension] struct {
	over look.Range
	unit *measure.Unit[D]
}

// dial puts a slide under a field, in the units of the class.
func dial[D measure.Dimension](in *inputs, field *look.Field, us, metric scale[D]) *look.Dial {
	now := func() scale[D] {
		if in.metric() {
			return metric
		}
		return us
	}
	read := func(text string) (float64, bool) {
		q, err := measure.Parse(text, now().unit)
		return q.In(now().unit), err == nil
	}
	d := look.NewDial(field, now().over, read, func(x float64) string { return amount(measure.New(x, now().unit)) })
	in.rescale = append(in.rescale, func() { d.SetRange(now().over) })
	return d
}

// over is a scale from low to high in one unit.
func over[D measure.Dimension](low, high, step float64, unit *measure.Unit[D]) scale[D] {
	return scale[D]{look.Range{Low: low, High: high, Step: step}, unit}
}

func (in *inputs) makeDials(field func(label string, read func(text string) (change, error)) *look.Field) {
	in.prepared = dial(in, field(words.Key("Prepared"), in.readPrepared), over(0.25, 10, 0.25, measure.Pound), over(0.1, 5, 0.1, measure.Kilogram))
	in.holds = dial(in, field(words.Key("Water, room to boil"), in.readHolds), over(2, 24, 0.5, measure.Quart), over(2, 24, 0.5, measure.Litre))
	in.start = dial(in, field(words.Key("Vegetables at"), in.readStart), over(34, 90, 1, measure.Fahrenheit), over(1, 32, 0.5, measure.Celsius))
	in.bath = dial(in, field(words.Key("Water in a bath"), in.readBath), over(1, 24, 0.5, measure.Quart), over(1, 24, 0.5, measure.Litre))
	in.ice = dial(in, field(words.Key("Ice in it"), in.readIce), over(0, 20, 0.5, measure.Pound), over(0, 10, 0.25, measure.Kilogram))
	in.tap = dial(in, field(words.Key("Tap water"), in.readTap), over(34, 90, 1, measure.Fahrenheit), over(1, 32, 0.5, measure.Celsius))
	in.altitude = dial(in, field(words.Key("Altitude"), in.readAltitude), over(0, 10000, 100, measure.Foot), over(0, 3000, 50, measure.Metre))
	in.freezer = dial(in, field(words.Key("Freezer"), in.readFreezer), over(2, 30, 0.5, measure.CubicFoot), over(50, 850, 10, measure.Litre))
}
