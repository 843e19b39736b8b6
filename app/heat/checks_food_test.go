package heat

import (
	"math"
	"strings"
	"testing"
)

var waterChecks = []handler{
	{"if97-ps-", func(r run) float64 {
		p, err := SaturationPressurePa(r.num("T_K") - zeroCelsiusK)
		return must(r, p, err) / 1e6
	}},
	{"if97-ts-", func(r run) float64 {
		b, err := BoilingPointC(r.num("p_MPa") * 1e6)
		return must(r, b, err) + zeroCelsiusK
	}},
	{"ussa-geom-", func(r run) float64 { return r.pressure() }},
	{"ashrae-atm-", func(r run) float64 { return r.pressure() }},
	{"boil-", func(r run) float64 {
		b, err := BoilingPointAtC(r.altitudeM())
		if r.unit == "F" {
			return must(r, b, err)*1.8 + 32
		}
		return must(r, b, err)
	}},
	{"fusion-latent", func(r run) float64 {
		latent := r.num("h_liquid") - r.num("h_ice")
		nearly(r, "heat of fusion in the bath", fusionJPerKg/1000, latent, 0.01)
		return latent
	}},
	{"fusion-expansion", func(r run) float64 {
		nearly(r, "density of cold water in a pack", coldWaterKgPerM3, r.num("rho_liquid"), 0.1)
		nearly(r, "density of ice in a pack", components[ofIce].densityAt(0), r.num("rho_ice"), 0.2)
		nearly(r, "growth of water", waterGrowthPercent(0), r.want, 0.03)
		return 100 * (r.num("rho_liquid")/r.num("rho_ice") - 1)
	}},
}

func (r run) altitudeM() float64 {
	if _, feet := r.in["z_ft"]; feet {
		return r.num("z_ft") * ft
	}
	return r.num("z_m")
}

func (r run) pressure() float64 {
	p, err := AirPressurePa(r.altitudeM())
	if r.unit == "psia" {
		return must(r, p, err) / psi
	}
	return must(r, p, err)
}

var produceChecks = []handler{
	{"co-alpha-", func(r run) float64 {
		c, t := componentNamed(r, r.in["component"]), r.num("t_C")
		return c.conductivityAt(t) / (c.densityAt(t) * c.heatAt(t)) * 1e7
	}},
	{"co-water-rho-", func(r run) float64 { return components[ofWater].densityAt(r.num("t_C")) }},
	{"co-water-cp-", func(r run) float64 { return components[ofWater].heatAt(r.num("t_C")) / 1000 }},
	{"co-water-k-", func(r run) float64 { return components[ofWater].conductivityAt(r.num("t_C")) }},
	{"co-ice-rho-", func(r run) float64 { return components[ofIce].densityAt(r.num("t_C")) }},
	{"co-ice-cp-", func(r run) float64 { return components[ofIce].heatAt(r.num("t_C")) / 1000 }},

	{"ashrae19-ex1-xice", func(r run) float64 { return tchigeovIce(r.num("xwo"), r.num("tf"), r.num("t")) }},
	{"ashrae19-ex1-ice", func(r run) float64 { return r.num("mass_kg") * tchigeovIce(r.num("xwo"), r.num("tf"), r.num("t")) }},
	{"ashrae19-ex1-water", func(r run) float64 {
		return r.num("mass_kg") * (r.num("xwo") - tchigeovIce(r.num("xwo"), r.num("tf"), r.num("t")))
	}},
	{"ashrae19-ex2-c", func(r run) float64 { return specificHeat(r.lamb(), r.num("t")) / 1000 }},
	{"ashrae19-ex2-Q", func(r run) float64 {
		from, to := r.num("from"), r.num("to")
		return r.num("mass_kg") * specificHeat(r.lamb(), 0.5*(from+to)) * (from - to) / 1000
	}},
	{"ashrae19-ex3-Q", func(r run) float64 {
		h := chenContent(r.num("xwo"), r.num("xp"), r.num("tf"))
		return r.num("mass_kg") * (h.at(10) - h.at(-20)) / 1000
	}},
	{"ashrae19-ex3-", func(r run) float64 { return r.chen() / 1000 }},
	{"ashrae19-ex4-xice", func(r run) float64 { return r.pork()[ofIce] }},
	{"ashrae19-ex4-kpar", func(r run) float64 { return parallel(r.pork(), r.num("t")) }},
	{"ashrae19-ex4-rho", func(r run) float64 { return density(r.pork(), r.num("t")) }},
	{"ashrae19-ex4-kper", func(r run) float64 { return perpendicular(r.pork(), r.num("t")) }},

	{"t3-cabove-", func(r run) float64 {
		x := r.table3()
		x[ofCarbohydrate] += x[ofFiber] // the table counts the fiber twice
		return specificHeat(x, r.num("t_C")) / 1000
	}},
	{"t3-cbelow-", func(r run) float64 {
		x := r.table3()
		solids := x[ofProtein] + x[ofFat] + x[ofCarbohydrate] + 2*x[ofFiber] + x[ofAsh]
		t := r.num("t_C")
		return (1550 + 1260*solids - (x[ofWater]-0.4*x[ofProtein])*chenFusionJPerKg*r.table3Freezing()/(t*t)) / 1000
	}},
	{"t3-latent-", func(r run) float64 { return 334 * r.table3()[ofWater] }},
	{"alpha-", func(r run) float64 {
		c, _ := compositionOf(r, r.in["item"])
		x, t := c.fractions(r.num("t_C")), r.num("t_C")
		return parallel(x, t) / (density(x, t) * specificHeat(x, t)) * 1e7
	}},
	{"enth-consistent-", meltingAndSensible},
	{"enth-chen-", func(r run) float64 { return r.chen() / 1000 }},
}

// tchigeovIce is the mass of ice per mass of food by Tchigeov (1979), for
// comparison: −45 °C up to the freezing point.
func tchigeovIce(water, freezingC, tempC float64) float64 {
	if tempC >= freezingC {
		return 0
	}
	return 1.105 * water / (1 + 0.7138/math.Log(freezingC-tempC+1))
}

func componentNamed(t testing.TB, name string) *component {
	for i := range components {
		if components[i].name == name {
			return &components[i]
		}
	}
	t.Fatalf("no component %q", name)
	return nil
}

// perpendicular is the conductivity of components lying across the heat's way:
// the lower bound. ASHRAE Refrigeration 2006, chapter 9.
func perpendicular(x [nComponents]float64, tempC float64) float64 {
	sum, volume := 0.0, 0.0
	for i, xi := range x {
		v := xi / components[i].densityAt(tempC)
		sum += v / components[i].conductivityAt(tempC)
		volume += v
	}
	return volume / sum
}

func (r run) lamb() [nComponents]float64 {
	return [nComponents]float64{ofWater: r.num("x.water"), ofProtein: r.num("x.protein"), ofFat: r.num("x.fat"), ofAsh: r.num("x.ash")}
}

func (r run) pork() [nComponents]float64 {
	frozen := tchigeovIce(r.num("xwo"), r.num("tf"), r.num("t"))
	return [nComponents]float64{
		ofWater: r.num("xwo") - frozen, ofIce: frozen, ofProtein: r.num("xp"), ofFat: r.num("xf"), ofAsh: r.num("xa"),
	}
}

func (r run) chen() float64 {
	h := chenContent(r.num("xwo"), r.num("xp"), r.num("tf"))
	return h.at(r.num("t"))
}

// compositionOf is a row of composition.csv.
func compositionOf(t testing.TB, item string) (Composition, map[string]string) {
	t.Helper()
	for _, row := range readTable(t, "composition.csv") {
		if row["item"] == item {
			return compositionIn(t, row), row
		}
	}
	t.Fatalf("no composition of %q", item)
	return Composition{}, nil
}

func compositionIn(t testing.TB, row map[string]string) Composition {
	freezingC := 0.0
	if text := row["freezing_c"]; text != "" {
		freezingC = number(t, text)
	}
	n := func(key string) float64 { return number(t, row[key]) }
	return FromPercent(n("water_pct"), n("protein_pct"), n("fat_pct"), n("carbohydrate_pct"), n("fiber_pct"), n("ash_pct"), freezingC)
}

// table3 has a row of the table as it is printed, but for the carbohydrate
// without its fiber, which is less than none for watercress.
func (r run) table3() [nComponents]float64 {
	c, row := compositionOf(r, r.in["row"])
	x := c.fractions(20)
	x[ofCarbohydrate] = (number(r, row["carbohydrate_pct"]) - number(r, row["fiber_pct"])) / 100
	return x
}

func (r run) table3Freezing() float64 {
	c, row := compositionOf(r, r.in["row"])
	if row["freezing_c"] == "" {
		r.Fatalf("%s: no freezing point", r.id)
	}
	return c.InitialFreezingC
}

// meltingAndSensible adds up, over the rows of a food in enthalpy.csv that give
// its unfrozen water, what the melting and the warming take: the two columns of
// that table against each other.
func meltingAndSensible(r run) float64 {
	from, to := r.num("from"), r.num("to")
	sum, wasC, wasUnfrozen := 0.0, math.NaN(), 0.0
	for _, row := range readTable(r, "enthalpy.csv") {
		t := number(r, row["temp_c"])
		if row["item"] != r.in["item"] || t < from || t > to || row["unfrozen_pct"] == "" {
			continue
		}
		water := number(r, row["water_pct"]) / 100
		unfrozen := water * number(r, row["unfrozen_pct"]) / 100
		if !math.IsNaN(wasC) {
			middle, liquid := 0.5*(wasC+t), 0.5*(wasUnfrozen+unfrozen)
			melting := 333.6 + 2.1*middle // kJ/kg: water takes 2.1 kJ/(kg K) more than ice
			warming := (1-water)*1.55 + liquid*4.2 + (water-liquid)*components[ofIce].heatAt(middle)/1000
			sum += (unfrozen-wasUnfrozen)*melting + warming*(t-wasC)
		}
		wasC, wasUnfrozen = t, unfrozen
	}
	return sum
}

// A crop of the table has a composition that closes, with source and standing.
func TestCropComposition(t *testing.T) {
	crops := map[string]bool{}
	for _, row := range readTable(t, "crop-composition.csv") {
		crop := row["crop"]
		if crops[crop] {
			t.Errorf("%s is there twice", crop)
		}
		crops[crop] = true
		c := compositionIn(t, row)
		if err := c.Check(); err != nil {
			t.Errorf("%s: %v", crop, err)
		}
		sum := c.Water + c.Protein + c.Fat + c.Carbohydrate + c.Fiber + c.Ash
		near(t, crop+": sum of the components", sum, 1, 0.0006)
		for _, key := range []string{"standing", "freezing_standing"} {
			if s := row[key]; s != "read" && s != "from memory" && (key == "standing" || s != "") {
				t.Errorf("%s: %s is %q", crop, key, s)
			}
		}
		if (row["freezing_c"] == "") != (row["freezing_source"] == "") || row["source"] == "" || row["item"] == "" {
			t.Errorf("%s: no item or source", crop)
		}
		if row["stands"] != "own" && (row["stands"] != "stand-in" || !strings.Contains(row["note"], "o row for")) {
			t.Errorf("%s: stands is %q, note %q", crop, row["stands"], row["note"])
		}
	}
	for _, row := range readCrops(t) {
		if !crops[row["id"]] {
			t.Errorf("no composition for %s", row["id"])
		}
	}
}

func readCrops(t testing.TB) []map[string]string {
	return readTable(t, "../../reference/data/crops.csv")
}
