package planning

import (
	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

var aboutBurners = words.Key("A rehearsal says most about a burner: water from the tap in a kettle with its lid on, timed until it boils. " +
	"How long a load takes to come back to the boil follows from it. It counts once all three are entered. A rating alone is a guess.")

// burnerKinds are the kinds of burner in words.
func burnerKinds() []option {
	return []option{
		{string(batch.Coil), look.Say("electric coil or cast plate")},
		{string(batch.Radiant), look.Say("electric under glass")},
		{string(batch.Induction), look.Say("induction")},
		{string(batch.Gas), look.Say("gas")},
		{string(batch.UnknownBurner), look.Say("not known")},
	}
}

// burnerRow is name and number of a burner, its kind and rating below, and its
// rehearsal as a sentence below that.
func (p *kitPage) burnerRow(i int) (fyne.CanvasObject, []*look.Field) {
	a := p.area
	name := burners.nameField(a, i)
	count := burners.countField(a, i, func(b *class.Burner, n int) { b.Count = n })
	kind := newPick(func(kind string) {
		a.must(a.change(burners.called, burners.set(i, func(b *class.Burner) { b.Heat.Kind = batch.BurnerKind(kind) })))
	}, burnerKinds()...)
	p.kinds = append(p.kinds, kind)
	rating := amountField(a, burners, i, onFirst(i, look.Say("Rating")), class.RatingLimits, measure.Watt, measure.Watt,
		func(b *class.Burner, q measure.Power) { b.Heat.Rating = q })
	rating.Commit = withUnit(rating.Commit)
	rating.SetPlaceHolder(look.Say("not known"))
	water := amountField(a, burners, i, "", class.TrialLimits, measure.Quart, measure.Litre,
		func(b *class.Burner, q measure.Volume) { b.Heat.Rehearsal.Water = q })
	water.SetPlaceHolder(look.Say("how much"))
	from := amountField(a, burners, i, "", class.TrialFromLimits, measure.Fahrenheit, measure.Celsius,
		func(b *class.Burner, q measure.Temperature) { b.Heat.Rehearsal.From = q })
	from.SetPlaceHolder(look.Say("how warm"))
	took := amountField(a, burners, i, "", class.TookLimits, measure.Minute, measure.Minute,
		func(b *class.Burner, q measure.Duration) { b.Heat.Rehearsal.Took = q })
	took.Commit = byStopwatch(took.Commit)
	took.SetPlaceHolder(look.Say("how long"))

	row := look.Column(8,
		withCount(name, count),
		look.Columns(8, []float32{2, 1}, labelledOnFirst(i, look.Say("Kind"), look.Boxed(kind.list)), rating),
		look.Labelled(look.Say("One boil on it, lid on:"), look.Columns(8, []float32{0.8, 1.1, 1.1}, water, ledBy(look.Say("from"), from), ledBy(look.Say("took"), took))))
	return container.NewBorder(nil, nil, nil, inLine(i, burners.removeButton(a, i, p.burners)), row),
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
		return []string{b.Name, whole(b.Count), shownAmount(b.Heat.Rating), shownAmount(trial.Water), shownAmount(trial.From), shownAmount(trial.Took)}
	})
	for i, b := range list {
		p.kinds[i].show(string(b.Heat.Kind))
	}
}
