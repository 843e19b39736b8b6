package bench

import (
	"fmt"
	"strconv"

	"fyne.io/fyne/v2"
	"fyne.io/fyne/v2/container"
	"fyne.io/fyne/v2/theme"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/class"
	"example.org/kettleside/app/desk/look"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// inputs is the column of what goes into the batch.
type inputs struct {
	bench   *Bench
	content *fyne.Container
	showing bool // choices are being set from the class
	bound   bound

	place         *look.Button // "Batch 2 of 4": opens the list
	try           *look.Button // starts a trial
	refused       *look.Text   // why a trial could not be started
	before, after *look.Button
	name          *look.Field

	treatment *look.Text
	does      *look.Text

	prepared, start, holds *look.Dial
	bath, ice, tap         *look.Dial
	altitude, freezer      *look.Dial
	stations               *look.Field
	kettle, burner         *choice
	container, size, mouth *choice
	count                  *look.Field
	tray                   *look.Check
	rescale                []func() // the dials, where the units change
}

func newInputs(b *Bench) *inputs {
	in := &inputs{bench: b}
	in.before = look.NewButtonWithIcon("", theme.NavigateBackIcon(), func() { in.step(-1) })
	in.after = look.NewButtonWithIcon("", theme.NavigateNextIcon(), func() { in.step(1) })
	in.place = look.NewButton("", in.chooseBatch)
	in.name = look.NewField(look.Say("Name of the batch"), "", in.rename)
	in.treatment = look.NewText("", look.SizeText, look.Ink, fyne.TextStyle{Bold: true}).Wrapped()
	in.does = look.Small("")
	choose := look.NewButton(look.Say("Choose a treatment…"), in.chooseTreatment)

	in.makeFields()
	in.makeChoices()
	in.try = look.NewButton(look.Say("Try it on a copy"), b.strip.start)
	in.refused = look.NewText("", look.SizeSmall, look.Stop, fyne.TextStyle{}).Wrapped()
	in.refused.Hide()
	in.content = look.Column(9,
		container.NewBorder(nil, nil, in.before, in.after, in.place),
		in.try, in.refused,
		in.name,
		look.Column(3, look.Label(look.Say("Treatment")), in.treatment, in.does, choose),
		look.Hairline(),
		in.prepared,
		look.Labelled(look.Say("Kettle"), look.Boxed(in.kettle.Select)),
		look.Labelled(look.Say("Burner"), look.Boxed(in.burner.Select)),
		pair(in.stations, in.holds),
		pair(in.start, in.tap),
		pair(in.bath, in.ice),
		pair(in.altitude, in.freezer),
		look.Hairline(),
		pair(look.Labelled(look.Say("Container"), look.Boxed(in.container.Select)), look.Labelled(look.Say("Mouth"), look.Boxed(in.mouth.Select))),
		look.Columns(10, []float32{1.7, 1}, look.Labelled(look.Say("Size"), look.Boxed(in.size.Select)), in.count),
		in.tray,
	)
	return in
}

// makeFields makes the entries; each is tried out while it is typed. Its label
// is a text to be said later: it names the change in the Edit menu too.
func (in *inputs) makeFields() {
	field := func(label string, read func(text string) (func(*class.Class), error)) *look.Field {
		f := look.NewField(look.Say(label), "", func(text string) error { return in.commit(label, text, read) })
		f.Typing = func(text string) {
			if in.showing { // not typed, but set from the class
				return
			}
			if !f.Dirty() {
				in.bench.settle()
			} else if change, err := read(text); err == nil {
				in.bench.tryOut(change)
			}
		}
		return f
	}
	in.makeDials(field)
	in.stations = field(words.Key("Stations"), in.readStations)
	in.count = field(words.Key("Packs wanted"), in.readCount)
	in.count.SetPlaceHolder(look.Say("as it gives"))
	in.start.SetPlaceHolder(look.Say("guessed"))
	in.ice.SetPlaceHolder(look.Say("by the rule"))
	for _, f := range []*look.Dial{in.altitude, in.freezer, in.bath, in.tap} {
		f.SetPlaceHolder(look.Say("not entered"))
	}
}

func (in *inputs) makeChoices() {
	pick := func(label string, change func(c *class.Class, value string), options ...option) *choice {
		return newChoice(func(value string) {
			if !in.showing {
				in.change(label, func(c *class.Class) { change(c, value) })
			}
		}, options...)
	}
	in.kettle = pick(words.Key("Kettle"), func(c *class.Class, name string) { in.of(c).Kettle = name })
	in.burner = pick(words.Key("Burner"), func(c *class.Class, name string) { in.of(c).Burner = name })
	in.container = pick(words.Key("Container"), func(c *class.Class, value string) { in.of(c).Pack.Container = batch.Container(value) },
		option{string(batch.Bag), look.Say("Bag")}, option{string(batch.Box), look.Say("Box")}, option{string(batch.Jar), look.Say("Jar")})
	in.size = pick(words.Key("Size of pack"), func(c *class.Class, value string) { in.of(c).Pack.Size = batch.Size(value) },
		option{string(batch.Pint), look.Say("Pint")}, option{string(batch.Quart), look.Say("Quart")})
	in.mouth = pick(words.Key("Mouth"), func(c *class.Class, value string) { in.of(c).Pack.Mouth = reference.Mouth(value) },
		option{string(reference.WideMouth), look.Say("Wide")}, option{string(reference.NarrowMouth), look.Say("Narrow")})
	in.tray = look.NewCheck(look.Say("Freeze loose on a tray first"), func(on bool) {
		if !in.showing {
			in.change(words.Key("Tray first"), func(c *class.Class) { in.of(c).Pack.Tray = on })
		}
	})
}

// of is the batch that the fields are bound to, in a copy of the class.
func (in *inputs) of(c *class.Class) *class.Batch {
	if in.bound.at < len(c.Batches) {
		return &c.Batches[in.bound.at]
	}
	return &class.Batch{} // gone in the meantime: nothing changes
}

// change takes what is being typed elsewhere first, then makes a change. It
// cannot be refused: choices offer only what the class allows.
func (in *inputs) change(label string, change func(*class.Class)) {
	in.takeAll()
	if err := in.bench.session.ChangeView(label, change); err != nil {
		fyne.LogError("a choice was refused", err)
	}
	in.bench.show()
}

// refuse says why something could not be done with a trial.
func (in *inputs) refuse(err error) {
	in.refused.SetText(look.Sentence(look.Voice().Error(err)) + ".")
	in.refused.Show()
	look.Rearrange(in.content)
}

// takeAll takes over whatever is typed in any field; false where one is
// refused, which then says why.
func (in *inputs) takeAll() bool {
	for _, f := range append(in.ofBatch(), in.ofClass()...) {
		if !f.Done() {
			return false
		}
	}
	return true
}

// commit reads what was typed and changes the class; the error is said under
// the field, and the figures go back to what the class holds.
func (in *inputs) commit(label, text string, read func(string) (func(*class.Class), error)) error {
	change, err := read(text)
	if err == nil {
		err = in.bench.session.ChangeView(label, change)
	}
	in.bench.settle()
	return err
}

func (in *inputs) rename(text string) error {
	return in.bench.session.ChangeView(words.Key("Rename batch"), func(c *class.Class) { in.of(c).Name = text })
}

// show brings every field up to date.
func (in *inputs) show(now shown) {
	in.showing = true
	defer func() { in.showing = false }()
	for _, f := range in.rescale {
		f()
	}
	in.refused.Hide()
	look.Show(in.try, !now.trying)
	one, c := now.batch.Batch, now.class
	n, at := len(c.Batches), in.bench.selected()
	in.place.SetText(look.Say("Batch %d of %d", at+1, n))
	enable(in.before, at > 0)
	enable(in.after, at < n-1)
	in.name.SetValue(one.Name)
	in.treatment.SetText(look.Say("Not in the crop table"))
	in.does.SetText("")
	if now.batch.Known {
		in.treatment.SetText(in.bench.session.TreatmentName(now.batch.Treatment))
		in.does.SetText(look.Sentence(now.batch.Treatment.Size))
	}
	look.Show(in.does, in.does.Text() != "")

	in.prepared.SetValue(amount(one.Prepared))
	in.stations.SetValue(strconv.Itoa(one.Stations))
	in.showKit(c.Kit, one)
	in.start.SetValue(amount(one.Start))
	in.ice.SetValue(amount(one.Ice))
	in.altitude.SetValue(amount(c.Place.Altitude))
	in.freezer.SetValue(amount(c.Place.Freezer))
	in.bath.SetValue(amount(c.Kit.BathWater))
	in.tap.SetValue(amount(c.Place.Tap))
	in.container.show(string(one.Pack.Container))
	in.size.show(string(one.Pack.Size))
	in.mouth.show(string(one.Pack.Mouth))
	enable(in.mouth, one.Pack.Container != batch.Bag)
	in.tray.SetChecked(one.Pack.Tray)
	count := ""
	if one.Pack.Count > 0 {
		count = strconv.Itoa(one.Pack.Count)
	}
	in.count.SetValue(count)
	in.content.Refresh()
}

// showKit offers the kettles and burners of the kit and shows those of the batch.
func (in *inputs) showKit(kit class.Kit, one class.Batch) {
	var kettles, burners []string
	for _, k := range kit.Kettles {
		kettles = append(kettles, k.Name)
	}
	for _, b := range kit.Burners {
		burners = append(burners, b.Name)
	}
	in.kettle.offer(ofKit(kettles, look.Say("No kettle")))
	in.kettle.show(one.Kettle)
	in.burner.offer(ofKit(burners, look.Say("No burner")))
	in.burner.show(one.Burner)
	kettle, ok := kit.KettleNamed(one.Kettle)
	in.holds.SetValue(amount(kettle.Holds))
	look.Show(in.holds, ok)
}

func (in *inputs) step(by int) {
	if in.takeAll() {
		in.bench.session.Select(in.bench.selected() + by)
	}
}

func (in *inputs) chooseBatch() {
	if !in.takeAll() {
		return
	}
	var choices []look.Choice
	for i, one := range in.bench.session.View().Batches {
		c := look.Choice{ID: strconv.Itoa(i), Title: fmt.Sprintf("%d  %s", i+1, one.Batch.Name), Detail: one.Prepared.Text}
		if one.Known {
			c.Detail += " · " + in.bench.session.TreatmentName(one.Treatment)
		}
		choices = append(choices, c)
	}
	look.ShowChoice(in.bench.window, look.Say("Batches of this class"), choices, strconv.Itoa(in.bench.selected()), in.pickBatch)
}

func (in *inputs) pickBatch(id string) {
	if i, err := strconv.Atoi(id); err == nil {
		in.bench.session.Select(i)
	}
}

func (in *inputs) chooseTreatment() {
	if !in.takeAll() {
		return
	}
	now, ok := in.bench.now()
	if !ok {
		return
	}
	choices := TreatmentChoices(in.bench.session)
	look.ShowChoice(in.bench.window, look.Say("Treatments in the crop table"), choices, now.batch.Batch.Treatment, in.pickTreatment)
}

func (in *inputs) pickTreatment(id string) {
	in.change(words.Key("Treatment"), func(c *class.Class) { in.of(c).Treatment = id })
}
