package exports

import (
	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// shoppingList is what to buy and to bring, to tick off, with a column for the
// price. Every amount is one that the class was worked through with.
func (m *maker) shoppingList(def Sheet) *sheet {
	s := m.newSheet(def, m.shoppingShares()...)
	s.add(row{cells: []cell{s.wide(title, m.Say("Shopping list"))}, keep: true})
	s.add(row{cells: []cell{s.wide(subtitle, m.whenAndWhere()+" · "+m.peopleAtStations())}, space: 6, keep: true})
	s.headFrom = s.add(row{cells: []cell{
		{role: head, value: m.Say("Got")},
		{col: 1, span: 2, role: headUnit, value: m.Say("What")},
		{col: amountColumn, span: 2, role: head, value: m.Say("How much")},
		{col: workingColumn, span: 2, role: head, value: m.Say("How it is worked out")},
		{col: restsColumn, role: head, value: m.Say("Rests on")},
		{col: priceColumn, role: headRight, value: m.Say("Price")},
	}, keep: true})
	s.headTo = s.headFrom
	if len(m.Shopping) == 0 {
		s.para(plain, m.Say("The class has no batches yet: choose a treatment in the crop table and add a batch."))
	} else {
		m.buyCrops(s)
		m.buyIce(s)
		m.buyPacks(s)
		first := len(s.rows)
		m.drawWater(s)
		s.keepFrom(first)
	}
	m.buyMore(s)
	m.priceTotal(s)
	m.measuresLegend(s)
	m.sources.list(s, m.Say("Sources of this sheet"))
	return s
}

// The columns of the list after the box to tick and the name; what lies between
// them stays white, so that no text runs into the next.
const (
	amountColumn  = 3
	workingColumn = 5
	restsColumn   = 7
	priceColumn   = 8
)

// shoppingShares are the widths of all of them.
func (m *maker) shoppingShares() []float64 {
	if m.Voice.Language() == words.Spanish {
		return []float64{26, 122, 6, 104, 6, 142, 6, 72, 54}
	}
	return []float64{26, 116, 6, 102, 6, 158, 6, 66, 52}
}

// buy is one line to tick.
func (m *maker) buy(s *sheet, what string, amount cell, working string, rests cell) {
	amount.col, rests.col = amountColumn, restsColumn
	s.add(row{cells: []cell{
		{role: tick},
		{col: 1, role: column, value: what},
		amount,
		{col: workingColumn, role: small, value: working},
		rests,
		{col: priceColumn, role: inputAmount, name: "price"},
	}, space: 4})
}

// buyFigure is a line for a figure.
func (m *maker) buyFigure(s *sheet, what string, f measure.Figure, more ...string) {
	m.buy(s, what, figureText(amountColumn, f), sentences(append([]string{f.Working, f.Note}, more...)...), m.basis(f))
}

func (m *maker) buyCrops(s *sheet) {
	s.heading(m.Say("Vegetables, weight as bought"))
	for _, l := range m.Shopping {
		market := ""
		if l.MarketUnit != "" {
			market = m.Say("Market unit: %s", l.MarketUnit)
		}
		m.buyFigure(s, l.Crop.Name, l.Buy, market)
	}
}

// buyIce is one line: what the rule of thumb asks for or what a balance of heat
// does, whichever is more, with both said.
func (m *maker) buyIce(s *sheet) {
	t := m.Totals
	if t.Ice.InWords() || t.Ice.Value == 0 && t.IceBalance.InWords() {
		return
	}
	s.heading(m.Say("Ice"))
	f, amount := t.Ice, t.Ice.Text
	if !t.IceBags.InWords() {
		amount = t.IceBags.Text
	}
	byRule := m.Say("By rule of thumb: %s (%s)", t.Ice.Text, amount)
	if t.IceBalance.InWords() {
		m.buy(s, m.Say("Clean ice"), cell{role: value, value: amount}, sentences(byRule, m.Say("By heat balance: %s", t.IceBalance.Text), t.Ice.Note), m.basis(f))
		return
	}
	balance := t.IceBalance.Text
	if t.IceBalance.Also != "" {
		balance = t.IceBalance.Also
	}
	byHeat := m.Say("By heat balance, an estimate: %s (%s)", t.IceBalance.Text, balance)
	as := value
	if t.IceBalance.Value > t.Ice.Value {
		f, amount, as = t.IceBalance, balance, guessValue
	}
	m.buy(s, m.Say("Clean ice"), cell{role: as, runs: []run{{true, amount}}}, sentences(byRule, byHeat, m.Say("The larger one is listed"), t.IceBalance.Note), m.basis(f))
}

// buyPacks are the containers, batch by batch, and the labels.
func (m *maker) buyPacks(s *sheet) {
	s.heading(m.Say("For packing"))
	for _, b := range m.Worked.Batches {
		if !b.Known {
			continue
		}
		_, many := b.Batch.Pack.ContainerName(m.Voice)
		f := b.Packs
		f.Note = "" // the batch sheet says it
		f.Text = atStations(b.Batch.Stations, f.Text)
		m.buyFigure(s, upperFirst(many)+": "+b.Crop.Name, f, containerSays(m.Voice, b.Batch.Pack))
	}
	labels := m.Totals.Packs
	m.buyFigure(s, m.Say("Labels or freezer tape: one for each pack"), labels, m.Say("With a waterproof marker"))
}

// containerSays is what to look for when a container is bought.
func containerSays(v *words.Voice, p batch.Packing) string {
	if p.Container == batch.Jar {
		return v.Say("Only jars made for freezing")
	}
	return v.Say("Made for freezing")
}

// drawWater is the water, which comes from the tap where that is for drinking.
func (m *maker) drawWater(s *sheet) {
	s.heading(m.Say("Drinking water, from the tap or bought"))
	for _, b := range m.Worked.Batches {
		if b.Known && !b.Water.InWords() {
			f := b.Water
			f.Text, f.Also = atStations(b.Batch.Stations, f.Text), ""
			m.buyFigure(s, m.Say("Kettles: %s", b.Crop.Name), f)
		}
	}
	if kit := m.Class.Kit; kit.Baths > 0 && kit.BathWater.Given() {
		m.buyFigure(s, m.Say("Ice baths"), measure.Figure{
			Text: atStations(kit.Baths, m.Voice.Amount(kit.BathWater.String())), Basis: measure.Entered,
			Working: m.Say("As entered: cold water in each bath, before the ice"),
		})
	}
}

// atStations is an amount of one station as so many stations need it: "4 × 3 gal".
func atStations(stations int, text string) string {
	if stations == 1 {
		return text
	}
	return measure.Plain(float64(stations)) + " × " + text
}

// buyMore are lines for what else is needed.
func (m *maker) buyMore(s *sheet) {
	s.heading(m.Say("And this"))
	for range 4 {
		s.add(row{cells: []cell{{role: tick}, {col: 1, span: priceColumn - 1, role: line}, {col: priceColumn, role: inputAmount, name: "price"}}, height: 22})
	}
}

// priceTotal adds the prices up, once there are some.
func (m *maker) priceTotal(s *sheet) {
	s.rows[len(s.rows)-1].keep = true
	s.add(row{cells: []cell{
		{col: 1, span: priceColumn - 1, role: resultLabel, value: m.Say("Prices added up")},
		{col: priceColumn, role: resultAmount, name: "price_total", value: "", formula: priceSum},
	}, space: 6})
	s.checks = append(s.checks, check{
		cell: "price", title: m.Say("Price"), low: 0, high: highestPrice,
		help: m.Say("Type what it cost, without the sign of the currency."),
		stop: m.Say("Allowed is a number from 0 to %s.", measure.Plain(highestPrice)),
	})
}

// priceSum is empty where no price was typed.
const priceSum = `IF(COUNT(price)=0,"",SUM(price))`

// highestPrice bounds what may be typed as a price.
const highestPrice = 100000
