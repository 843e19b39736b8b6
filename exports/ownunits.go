package exports

import (
	"strconv"
	"strings"

	"example.org/kettleside/app/class"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/reference"
)

// ownUnits are the units and names of the sheet that a participant types into.
type ownUnits struct {
	metric   bool
	mass     *measure.MassUnit
	water    *measure.VolumeUnit
	freezer  *measure.VolumeUnit
	altitude *measure.LengthUnit

	// names of the open cells
	prepared, kettle, capacity, height string
	// name of the water for the batch, in the unit of the class
	waterName string
}

func unitsOf(s measure.System) ownUnits {
	if s == measure.Metric {
		return ownUnits{
			metric: true, mass: measure.Kilogram, water: measure.Litre, freezer: measure.Litre, altitude: measure.Metre,
			prepared: "kg_prepared", kettle: "kettle_l", capacity: "freezer_l", height: "altitude_m", waterName: "water_l",
		}
	}
	return ownUnits{
		mass: measure.Pound, water: measure.Gallon, freezer: measure.CubicFoot, altitude: measure.Foot,
		prepared: "pounds_prepared", kettle: "kettle_gal", capacity: "freezer_cuft", height: "altitude_ft", waterName: "water_gal",
	}
}

// rate is a water rule of gallons per pound in the units of the sheet.
func (u ownUnits) rate(galPerLb float64) float64 {
	if !u.metric {
		return galPerLb
	}
	return galPerLb * measure.Gallon.Factor / measure.Pound.Factor
}

func (u ownUnits) rateUnit() string { return u.water.Symbol + "/" + u.mass.Symbol }

// pounds is a number of pounds in the unit of the sheet.
func (u ownUnits) pounds(lb float64) float64 {
	if !u.metric {
		return lb
	}
	return lb * measure.Pound.Factor
}

// perDay is the freezer rule of pounds per cubic foot in the units of the
// sheet.
func (u ownUnits) perDay(lbPerCuFt float64) float64 {
	if !u.metric {
		return lbPerCuFt
	}
	return lbPerCuFt * measure.Pound.Factor / measure.CubicFoot.Factor
}

func (u ownUnits) perDayUnit() string { return u.mass.Symbol + "/" + u.freezer.Symbol }

// length is a headspace in inches or millimetres, with the roles that show it.
func (u ownUnits) length(inches float64) float64 {
	if u.metric {
		return inches * 25.4
	}
	return inches
}

func (u ownUnits) lengthUnit() string {
	if u.metric {
		return "mm"
	}
	return "in"
}

func (u ownUnits) lengthRoles() (result, table role) {
	if u.metric {
		return resultCount, constantCount
	}
	return resultInch, constantInch
}

// limitsIn are the limits of an entry in the unit of the sheet, as printed: what
// the help says is allowed is allowed to the last digit.
func limitsIn[D measure.Dimension](l measure.Limits[D], unit *measure.Unit[D]) (low, high float64) {
	return asPrinted(l.Low.In(unit)), asPrinted(l.High.In(unit))
}

// asPrinted is the number that a kitchen would read from the printed one.
func asPrinted(x float64) float64 {
	n, err := strconv.ParseFloat(strings.NewReplacer(",", "", "−", "-").Replace(measure.Plain(x)), 64)
	if err != nil { // Plain prints numbers; a test reads its limits back
		panic("exports: " + err.Error())
	}
	return n
}

// ownRecord is one treatment as a row of the sheet's own lists.
type ownRecord struct {
	class.BatchWorked
	name  string
	yield reference.Yield
	known bool // a yield is chosen for the crop
}

// records are the treatments that can be chosen on the sheet: those of the
// treatments sheet, or the whole table where the class has none yet.
func (m *maker) records() []ownRecord {
	list := m.listed
	if len(list) == 0 {
		trial := class.New(m.Table.Edition)
		trial.Units, trial.Place = m.Class.Units, m.Class.Place
		for _, t := range m.Table.Treatments {
			trial.Batches = append(trial.Batches, class.Batch{Treatment: t.ID, Stations: 1, Pack: plainPack})
		}
		list = again(m.Worked, trial).Batches
	}
	var out []ownRecord
	taken := map[string]bool{}
	for _, b := range list {
		r := ownRecord{BatchWorked: b, name: clip(pieceName(b.Crop, b.Treatment)+"; "+methodWords(m.Voice, b.Treatment.Method), 200)}
		if taken[r.name] {
			r.name += " (" + b.Treatment.ID + ")"
		}
		taken[r.name] = true
		r.yield, r.known = m.Table.ChosenYield(b.Crop.ID)
		out = append(out, r)
	}
	return out
}

// timed says whether the treatment is counted by the clock.
func (r ownRecord) timed() bool { return r.Treatment.Minutes > 0 }

// chilled says whether chilling is counted by the clock.
func (r ownRecord) chilled() bool { return r.timed() && r.Treatment.ChillFactor > 0 }
