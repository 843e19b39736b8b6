package batch

import (
	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/heat"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// Estimates is what the heat model says of a batch. A figure without an id does
// not apply to it or lacks an input; Back says in words which one.
type Estimates struct {
	Power       measure.Figure // of the burner, into the water
	FirstBoil   measure.Figure // from the tap to the boil
	Back        measure.Figure // from the lid to the return of the boil
	Dip         measure.Figure // the coldest the water gets
	InAMinute   measure.Figure // in how many of ten kitchens like this it is back within a minute
	LargestLoad measure.Figure // largest load back within a minute
	Layer       measure.Figure // most in the steaming basket at once
	Layers      measure.Figure // fillings of the basket
	BoiledAway  measure.Figure // water that a steamer loses in one filling
	Centre      measure.Figure // temperature of a piece's centre at the lift
	Enzyme      measure.Figure // left at the lift, or "no published data"
	VitaminC    measure.Figure // kept in the blanch
	IceBalance  measure.Figure // ice by heat balance
	Cool        measure.Figure // until a centre in the bath is at 50 °F
	Cold        measure.Figure // until it is at 40 °F
	Freezing    measure.Figure // until a pack is frozen through
	Growth      measure.Figure // of the pack, against its headspace

	Kettle, Bath, Freezer measure.Chart
	Through               measure.Section // a piece while it is heated
	Frozen                Frozen          // a pack after freezing

	packed estimate.Day // a pack and its food, for the freezer of the whole class
}

// all lists every estimate in the order of the work.
func (e *Estimates) all() []*measure.Figure {
	return []*measure.Figure{
		&e.Power, &e.FirstBoil, &e.Back, &e.Dip, &e.InAMinute, &e.LargestLoad, &e.Layer, &e.Layers, &e.BoiledAway,
		&e.Centre, &e.Enzyme, &e.VitaminC, &e.IceBalance, &e.Cool, &e.Cold, &e.Freezing, &e.Growth,
	}
}

// Figures lists the estimates that there are, in the order of the work.
func (e Estimates) Figures() []measure.Figure {
	var there []measure.Figure
	for _, f := range e.all() {
		if f.ID != "" {
			there = append(there, *f)
		}
	}
	return there
}

// Charts lists the charts that there are.
func (e Estimates) Charts() []measure.Chart {
	var all []measure.Chart
	for _, c := range []measure.Chart{e.Kettle, e.Bath, e.Freezer} {
		if c.Drawn() {
			all = append(all, c)
		}
	}
	return all
}

// model lets a figure rest on the heat model.
func model(f measure.Figure) measure.Figure {
	f.Basis, f.Source = measure.Estimate, reference.HeatModelSource
	return f
}

// frozenThroughF is the core at which a pack counts as frozen through, °F: hard
// to the middle, most of its water ice. A judgement of this program.
const frozenThroughF = 10

// The two marks on the way to cold, °F: at 50 a piece feels cold, and at 40 the
// bath should still be when all loads are chilled. Judgements of this program,
// both under the rule's warmest bath.
const (
	coolF = 50
	coldF = 40
)

func celsius(tempF float64) float64 { return measure.New(tempF, measure.Fahrenheit).SI() }

// waterKgPerL is water from the tap: 0.998 kg/L at 20 °C (IAPWS-95).
const waterKgPerL = 0.998

// estimates asks the heat model and words what it says.
func (w *worker) estimates() {
	c := w.heatCase()
	w.out.Estimates.packed = estimate.Day{Food: c.Food, Pack: c.Pack, PackedC: c.PackedC}
	r := w.Memory.Work(c)
	switch {
	case r.Kettle != nil:
		w.kettleEstimates(c, *r.Kettle)
	case r.Steam != nil:
		w.steamEstimates(c, *r.Steam)
	case c.Heating != estimate.NotHeated && w.weighed() && c.BlanchS > 0:
		w.notHeated(c, r.Outside)
	}
	switch {
	case r.Bath != nil:
		w.bathEstimates(c, r)
	case r.Outside.Bath != nil:
		w.out.Estimates.IceBalance = w.outside("ice-balance", w.Say("Ice, by heat balance"), r.Outside.Bath)
		w.out.Estimates.Bath = w.noChart("bath", w.out.Estimates.IceBalance.Working)
	case c.ChillS > 0 && !w.Bath.Given():
		w.out.Estimates.Bath = w.noChart("bath", w.Say("how much cold water a bath holds is not entered"))
	}
	switch {
	case r.Freezing != nil:
		w.freezingEstimates(c, *r.Freezing)
	case r.Outside.Freezing != nil:
		w.out.Estimates.Freezing = w.outside("freezing", w.Say("Frozen through after"), r.Outside.Freezing)
	}
	w.growth(c.Food)
	w.markFromMemory()
}

// outside is a figure whose input lies outside what the model covers.
func (w *worker) outside(id, label string, err error) measure.Figure {
	return model(inWords(id, label, w.Say("outside the model"), w.Error(err)))
}

// noChart says why there is no curve.
func (w *worker) noChart(id, why string) measure.Chart {
	return measure.Chart{ID: id, Note: w.Say("No curve: %s.", why), Basis: measure.Estimate, Source: reference.HeatModelSource}
}

// markFromMemory marks what rests on a composition that nobody read.
func (w *worker) markFromMemory() {
	c, _ := w.table.Composition(w.Crop.ID)
	if c.Standing != reference.FromMemory {
		return
	}
	e := &w.out.Estimates
	for _, f := range e.all() {
		if f.ID != "" && f.ID != e.Power.ID && f.ID != e.FirstBoil.ID && f.Source == reference.HeatModelSource {
			f.Standing = string(reference.FromMemory)
		}
	}
	for _, chart := range []*measure.Chart{&e.Kettle, &e.Bath, &e.Freezer} {
		chart.Standing = string(reference.FromMemory)
	}
	e.Through.Standing = string(reference.FromMemory)
}

// heatCase gathers what the heat model needs; what is not known stays zero.
func (w *worker) heatCase() estimate.Case {
	t := w.Treatment
	boilC, _ := heat.BoilingPointAtC(w.Altitude.SI()) // not given is sea level; a height beyond the model was refused where the class was read
	c := estimate.Case{
		Food: w.foodOf(), BoilC: boilC, Loads: 1, LoadKg: w.Prepared.SI(), TapC: estimate.TapC, StartC: estimate.StartC,
		BlanchS: w.out.Minutes.Value * 60, LongestS: w.out.Minutes.High * 60, WithinS: w.table.Rule("return-to-boil-min").Value * 60,
		ChillS: w.out.Chill.Value * 60, BathWaterKg: w.Bath.SI() * waterKgPerL, BathIceKg: w.bathIceKg(),
		BathEndC: celsius(coldF), MarksC: [2]float64{celsius(coolF), celsius(coldF)}, PackedC: celsius(coolF), CoreC: celsius(frozenThroughF),
		FreezerC: [2]float64{celsius(w.table.Rule("freezer-set-f").Value), celsius(w.table.Rule("hold-f").Value)},
	}
	if w.Start.Given() {
		c.StartC = heat.Known(w.Start.SI())
	}
	if w.Tap.Given() {
		c.TapC = w.Tap.SI()
	}
	if p, ok := w.table.Piece(t.ID); ok {
		c.Piece = estimate.Piece{Shape: shapes[p.Shape], SizeM: heat.Guess{Low: p.SizeLowMm / 1000, Likely: p.SizeMm / 1000, High: p.SizeHighMm / 1000}}
	}
	switch t.Method {
	case reference.WaterBlanch:
		c.Heating = estimate.InWater
		if w.Kettle.Given() {
			c.Loads, c.LoadKg = w.out.Loads.Value, w.Prepared.SI()/max(w.out.Loads.Value, 1)
			c.WaterKg, c.FullKg = w.loadWaterL*waterKgPerL, w.Kettle.SI()*waterKgPerL
			c.MostKg = w.Kettle.SI() / (t.WaterGalPerLb * gallonPerPound)
		}
	case reference.SteamBlanch:
		c.Heating = estimate.InSteam
		if across := w.Basket.SI(); across > 0 {
			depth := w.table.Rule("steam-water-in") // the basket is taken to be as wide as the water under it
			c.BasketM2 = roundM2(across)
			c.WaterKg = c.BasketM2 * depth.Value * measure.Inch.Factor * 1000 * waterKgPerL
		}
	case reference.NoHeat:
		c.PackedC = c.StartC.Likely
	}
	if c.Heating != estimate.NotHeated && c.BlanchS > 0 {
		c.PowerW, w.out.Estimates.Power = w.power(boilC)
	}
	if studies := w.table.Enzymes(w.Crop.ID); len(studies) > 0 {
		c.Enzyme = enzyme(studies[0])
	}
	c.Pack = w.packForm(c.Piece)
	return c
}

var shapes = map[reference.PieceShape]heat.Shape{
	reference.SlabPiece: heat.Slab, reference.CylinderPiece: heat.Cylinder, reference.SpherePiece: heat.Sphere,
}

// foodOf is what the crop is made of; zero where the table does not say.
func (w *worker) foodOf() heat.Composition {
	c, ok := w.table.Composition(w.Crop.ID)
	if !ok {
		return heat.Composition{}
	}
	return heat.FromPercent(c.WaterPct, c.ProteinPct, c.FatPct, c.CarbohydratePct+c.FiberPct, c.FiberPct, c.AshPct, c.FreezingC)
}

// enzyme is a study as the heat model takes it.
func enzyme(study reference.Enzyme) estimate.Enzyme {
	e := estimate.Enzyme{LowC: study.LowC, HighC: study.HighC, WithLag: study.WithLag}
	for i := range min(len(study.Parts), len(e.Fractions)) {
		p := study.Parts[i]
		e.Fractions[i] = heat.Fraction{Share: p.Share, RatePerMin: p.PerMin(), RefC: p.RefC, ActivationJPerMol: p.EaKJPerMol * 1000, ZC: p.ZC}
	}
	return e
}
