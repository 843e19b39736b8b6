package heat_test

import (
	"errors"
	"fmt"

	"example.org/kettleside/app/heat"
)

// A row of a food table is all that the thermal properties need.
func ExampleComposition() {
	// snap beans: ASHRAE Refrigeration 2006, chapter 9, table 3
	beans := heat.FromPercent(90.27, 1.82, 0.12, 7.14, 3.40, 0.66, -0.7)
	density, err := beans.DensityKgPerM3(20, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	specific, err := beans.HeatJPerKgK(20)
	if err != nil {
		fmt.Println(err)
		return
	}
	ice, err := beans.IceFraction(-18)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f kg/m³, %.2f kJ/(kg K), %.0f %% ice at −18 °C\n", density, specific/1000, 100*ice)
	// Output: 1027 kg/m³, 3.94 kJ/(kg K), 86 % ice at −18 °C
}

// A pint of beans in a bag lying flat in still freezer air.
func ExamplePack() {
	beans := heat.FromPercent(90.27, 1.82, 0.12, 7.14, 3.40, 0.66, -0.7)
	film, err := heat.ThroughLayers(6, heat.Layer{ThicknessM: 0.0001, ConductivityWPerMK: heat.PolyethyleneWPerMK})
	if err != nil {
		fmt.Println(err)
		return
	}
	bag := heat.Pack{Shape: heat.Slab, SizeM: 0.0125, SecondM: 0.065, ThirdM: 0.075, FilmWPerM2K: film, AirShare: 0.1}
	seconds, err := bag.FreezingTimeS(beans, 10, -18, -15)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("core at −15 °C after about %.0f hours\n", seconds/3600)

	_, err = bag.FreezingTimeS(beans, 10, -18, -18)
	var never *heat.UnreachableError
	if errors.As(err, &never) {
		fmt.Println(err)
	}
	// Output:
	// core at −15 °C after about 11 hours
	// a core of -18 °C is not reached in air of -18 °C, it only comes ever nearer: ask for -17 °C or warmer, or for colder air
}
