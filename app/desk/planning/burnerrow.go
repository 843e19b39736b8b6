package planning

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
)

const aboutBurners = "A rehearsal says most about a burner: water from the tap in a kettle with its lid on, timed until it boils. " +
	"How long a load takes to come back to the boil follows from it. It counts once all three are entered. A rating alone is a guess."

// burnerKinds are the kinds of burner in words.
var burnerKinds = []option{
	{string(batch.Coil), "electric coil or cast plate"},
	{string(batch.Radiant), "electric under glass"},
	{string(batch.Induction), "induction"},
	{string(batch.Gas), "gas"},
	{string(batch.UnknownBurner), "not known"},
}

// burnerRow is name and number of a burner, its kind and rating below, and its
// rehearsal as a sentence below that.
func (p *kitPage) burnerRow(i int) (fyne.CanvasObject, []*look.Field) {
	a := p.area
	name := burners.nameField(a, i)
	count := burners.countField(a, i, func(b *class.Burner, n int) { b.Count = n })
	kind := newPick(func(kind string) {
		a.must(a.change("Burner", burners.set(i, func(b *class.Burner) { b.Heat.Kind = batch.BurnerKind(kind) })))
	}, burnerKinds...)
	p.kinds = append(p.kinds, kind)
	rating := amountField(a, burners, i, onFirst(i, "Rating"), class.RatingLimits, measure.Watt, measure.Watt,
		func(b *class.Burner, q measure.Power) { b.Heat.Rating = q })
	rating.SetPlaceHolder("not known")
	water := amountField(a, burners, i, "", class.TrialLimits, measure.Quart, measure.Litre,
		func(b *class.Burner, q measure.Volume) { b.Heat.Rehearsal.Water = q })
	water.SetPlaceHolder("how much")
	from := amountField(a, burners, i, "", class.TrialFromLimits, measure.Fahrenheit, measure.Celsius,
		func(b *class.Burner, q measure.Temperature) { b.Heat.Rehearsal.From = q })
	from.SetPlaceHolder("how warm")
	took := amountField(a, burners, i, "", class.TookLimits, measure.Minute, measure.Minute,
		func(b *class.Burner, q measure.Duration) { b.Heat.Rehearsal.Took = q })
	took.SetPlaceHolder("how long")

	row := look.Column(8,
		look.Columns(8, kitShares, name, count),
		look.Columns(8, []float32{2, 1}, labelledOnFirst(i, "Kind", look.Boxed(kind.list)), rating),
		look.Labelled("One boil on it, lid on:", look.Columns(8, []float32{0.8, 1.1, 1.1}, water, ledBy("from", from), ledBy("took", took))))
	return container.NewBorder(nil, nil, nil, inLine(i, burners.removeButton(a, i)), row),
		[]*look.Field{name, count, rating, water, from, took}
}

// ledBy sets a word in front of a field, in line with what is typed in it.
func ledBy(word string, f *look.Field) fyne.CanvasObject {
	return container.NewBorder(nil, nil, look.Inset(0, 9, look.Label(word)), nil, f)
}

func (p *kitPage) showBurners(list []class.Burner) {
	p.burners.show(len(list), func(i int) []string {
		b := list[i]
		trial := b.Heat.Rehearsal
		return []string{b.Name, whole(b.Count), b.Heat.Rating.String(), trial.Water.String(), trial.From.String(), trial.Took.String()}
	})
	for i, b := range list {
		p.kinds[i].show(string(b.Heat.Kind))
	}
}
