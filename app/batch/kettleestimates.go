package batch

import (
	"math"

	"example.org/kettleside/app/estimate"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// kettleEstimates words what one load does in boiling water.
func (w *worker) kettleEstimates(c estimate.Case, k estimate.Kettle) {
	e := &w.out.Estimates
	load, water, power := w.out.LoadWeight.Text, w.out.LoadWater.Text, toTen(c.PowerW.Likely)+" W"
	start := w.startText(c)
	spread := k.Spread
	e.FirstBoil = w.timeFigure("first-boil", w.Say("First boil"), k.FirstBoilS.Likely,
		w.Say("%s from %s to %s at %s: %s kg × 4.19 kJ/(kg °C) × %s °C ÷ %s", water, w.tapText(c), w.degrees(c.BoilC), power, measure.Exact(c.WaterKg), measure.Exact(c.BoilC-c.TapC), power))
	e.FirstBoil.Also = w.timeRange(k.FirstBoilS.Low, k.FirstBoilS.High)
	e.FirstBoil.Note = w.Say("Lid on. Put the kettle on in time.")

	e.Back = w.timeFigure("back-at-boil", w.Say("Back at the boil after"), k.BackS,
		w.Say("%s at %s into %s of boiling water at %s", load, start, water, power))
	e.Back.Also = w.eightOfTen(e.Back, w.lastingRange(spread.BackS.Low, spread.BackS.High))
	if k.BackS < hardlyS {
		e.Back = model(inWords("back-at-boil", w.Say("Back at the boil after"), w.Say("it hardly stops boiling"), e.Back.Working))
	}
	e.Dip = w.temperatureFigure("dip", w.Say("The water falls to"), k.DipC, w.Say("at its coldest, %s after the load goes in", w.lasting(k.DipAtS)))
	e.Dip.Also = w.eightOfTen(e.Dip, w.degreesRange(spread.DipC.Low, spread.DipC.High))

	e.InAMinute = model(measure.Figure{ID: "in-a-minute", Label: w.Say("Back within a minute"), Value: spread.Within * 10, High: spread.Within * 10, Unit: "of 10 kitchens",
		Text:    w.ofTen(spread.Within),
		Working: w.Say(w.drawn(), measure.Plain(float64(spread.Draws)))})
	w.largestLoad(c, k)

	e.Centre = w.centre(k.CentreC, k.MeanC)
	e.Centre.Also = w.eightOfTen(e.Centre, w.degreesRange(spread.CentreC.Low, spread.CentreC.High))
	w.enzymeLeft(k.Doneness)
	w.vitaminC()
	e.Kettle = w.kettleChart(k.Course, k.BackS)
	e.Through = w.section(c, k.Through, words.Key("at the lift, %s"))
	w.returnFinding(c, k)
	w.coolCentre(k.CentreC)
}

// eightOfTen is the band that stands beside a figure, "" where it prints the
// same.
func (k kitchen) eightOfTen(f measure.Figure, band string) string {
	if band == f.Text {
		return ""
	}
	return k.Say("8 of 10 kitchens: %s", band)
}

// drawn says what is drawn at random.
func (w *worker) drawn() string {
	if w.Start.Given() {
		return words.Key("%s kitchens drawn at random around this one: strength of the burner, size of the pieces, how the water moves")
	}
	return words.Key("%s kitchens drawn at random around this one: strength of the burner, size of the pieces, their start temperature, how the water moves")
}

// hardlyS is a return that nobody would notice.
const hardlyS = 5

// ofTen prints a share of ten kitchens, "7 of 10 kitchens"; all and none only
// where it is all or none.
func (k kitchen) ofTen(share float64) string {
	switch n := math.Round(share * 10); {
	case share == 0:
		return k.Say("none of 10 kitchens")
	case n == 0:
		return k.Say("fewer than 1 of 10 kitchens")
	case n == 10 && share < 1:
		return k.Say("more than 9 of 10 kitchens")
	default:
		return k.Say("%s of 10 kitchens", measure.Plain(n))
	}
}

func (w *worker) largestLoad(c estimate.Case, k estimate.Kettle) {
	working := w.Say("found by trying loads in the full kettle, %s of water, at %s W", w.typedVolume(w.Kettle), toTen(c.PowerW.Likely))
	f := model(measure.Figure{ID: "largest-load", Label: w.Say("Largest load back within a minute"), Unit: w.massUnit().Symbol, Working: working})
	switch {
	case k.LargestKg <= 0:
		f.Words = w.Say("none: the burner is too weak")
		f.Text = f.Words
	case k.LargestKg >= c.MostKg*(1-1e-9):
		f.Words = w.Say("all that the rule lets in")
		f.Text = f.Words
		f.Note = w.Say("More water holds more, more heat brings it back sooner; the rule of water stands.")
	default:
		f.Value, _ = w.mass(k.LargestKg)
		f.High, f.Text = f.Value, w.roundedLoad(k.LargestKg)
	}
	w.out.Estimates.LargestLoad = f
}

// roundedLoad prints a load that is at most so heavy, as a kitchen scale shows
// it: to a twentieth of a pound or of a kilogram, downward.
func (w *worker) roundedLoad(massKg float64) string {
	amount := massKg / w.massUnit().Factor
	steps := math.Floor(amount*20 + 1e-9)
	if steps < 1 {
		return w.Say("under %s", measure.Plain(0.05)+" "+w.massUnit().Symbol)
	}
	return measure.Plain(steps/20) + " " + w.massUnit().Symbol
}

// centre is the temperature in the middle of a piece when it is lifted.
func (w *worker) centre(centreC, meanC float64) measure.Figure {
	working := w.Say("a %s; as a mean over the piece %s", w.pieceWords(), w.degrees(meanC))
	f := w.temperatureFigure("centre", w.Say("Centre of a piece at the lift"), centreC, working)
	if p, ok := w.table.Piece(w.Treatment.ID); ok && p.Basis == reference.OurGuess {
		f.Note = w.Say("The size of the piece is guessed.")
	}
	return f
}

// pieceWords says what form and thickness the model takes for a piece: "round
// piece 22–38 mm across".
func (w *worker) pieceWords() string {
	p, _ := w.table.Piece(w.Treatment.ID)
	return w.Say(pieceForms[p.Shape], w.thickness(2*p.SizeLowMm, 2*p.SizeHighMm))
}

var pieceForms = map[reference.PieceShape]string{
	reference.SlabPiece: words.Key("flat piece %s thick"), reference.CylinderPiece: words.Key("long round piece %s across"), reference.SpherePiece: words.Key("round piece %s across"),
}

// thickness prints a range of thickness: "22–38 mm".
func (k kitchen) thickness(lowMm, highMm float64) string {
	if k.metric || highMm < leastInchesMm {
		return measure.Range(measure.Plain(lowMm), measure.Plain(highMm), "mm")
	}
	return k.Amount(measure.Range(measure.Plain(lowMm/25.4), measure.Plain(highMm/25.4), "in"))
}

// leastInchesMm is the thickness below which nobody measures in inches.
const leastInchesMm = 3

func (w *worker) startText(c estimate.Case) string {
	if w.Start.Given() {
		return w.typedTemp(w.Start)
	}
	return w.Say("a guessed %s", w.degrees(c.StartC.Likely))
}

func (w *worker) tapText(c estimate.Case) string {
	if w.Tap.Given() {
		return w.typedTemp(w.Tap)
	}
	return w.Say("a guessed %s", w.degrees(c.TapC))
}

// kettleChart is the water and a piece from the lid to the lift.
func (w *worker) kettleChart(course estimate.Course, backS float64) measure.Chart {
	chart := w.chart("kettle", w.Say("One load in the kettle"), w.Say("after the load goes in"), "min", 60, course)
	if backS > 0 {
		chart.Marks = append(chart.Marks,
			measure.Mark{ID: "one-minute", Label: measure.Minutes(1), OnX: true, At: 1},
			measure.Mark{ID: "back", Label: w.Say("boils again"), OnX: true, At: backS / 60})
	}
	return chart
}

// chart is a course in the units of the class; perS are the seconds of one unit
// of its x axis.
func (w *worker) chart(id, title, after, unit string, perS float64, course estimate.Course) measure.Chart {
	_, degree := w.tempIn(0)
	x := make([]float64, len(course.AfterS))
	for i, s := range course.AfterS {
		x[i] = s / perS
	}
	curve := func(id, label, short string, tempsC []float64) measure.Curve {
		y := make([]float64, len(tempsC))
		for i, t := range tempsC {
			y[i], _ = w.tempIn(t)
		}
		return measure.Curve{ID: id, Label: label, Short: short, X: x, Y: y}
	}
	return measure.Chart{
		ID: id, Title: title, X: measure.Axis{Label: after, Unit: unit}, Y: measure.Axis{Label: w.Say("temperature"), Unit: degree.Symbol},
		Curves: []measure.Curve{curve("water", w.Say("water"), "", course.AroundC), curve("centre", w.Say("centre of a piece"), w.Say("centre"), course.CentreC), curve("mean", w.Say("whole piece, on average"), w.Say("average"), course.MeanC)},
		Basis:  measure.Estimate, Source: reference.HeatModelSource,
	}
}

// notHeated says why it is not estimated what heat does in the kettle.
func (w *worker) notHeated(c estimate.Case, outside estimate.Outside) {
	id, label, to := "back-at-boil", w.Say("Back at the boil after"), &w.out.Estimates.Back
	err := outside.Kettle
	if c.Heating == estimate.InSteam {
		id, label, to, err = "centre", w.Say("Centre of a piece at the end"), &w.out.Estimates.Centre, outside.Steam
	}
	f := model(inWords(id, label, "", ""))
	switch {
	case err != nil:
		f = w.outside(id, label, err)
	case c.Food.Water == 0 || c.Piece.Shape == 0:
		f.Words, f.Working = w.Say("not estimated"), w.Say("the table has no composition or no size of the pieces for this treatment")
	case c.WaterKg == 0:
		f.Basis, f.Source = measure.Entered, "entered"
		f.Words, f.Working = w.Say("kettle not known"), w.Say("the water that the kettle holds is not entered")
	default:
		f.Basis, f.Source = measure.Entered, "entered"
		f.Words, f.Working = w.Say("burner not known"), w.Say("no burner is chosen, or nothing is known of it")
		w.find(measure.Note, "no-burner", "", w.Say("How soon this kettle boils again is not estimated: nothing is known of its burner."),
			w.Say("Choose a burner; time one boil on it with the lid on and enter that as its rehearsal."))
	}
	f.Text = f.Words
	*to = f
	w.out.Estimates.Kettle = w.noChart("kettle", f.Working)
}
