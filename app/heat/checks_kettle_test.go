package heat

import "math"

// openKettle is the time to the boil of a pot without its lid, on a burner
// whose power is fitted to the time with the lid on. The pot's height is not
// given; 12 cm of wall for 2 quarts and 20 cm for 2 gallons are assumed.
func openKettle(r run) float64 {
	const roomC, boilC, damp = 22, 99.97, 0.5
	diameterM, startC := r.num("D_assumed"), r.num("T0_assumed")
	wallM := 0.12
	if r.num("water_kg") > 4 {
		wallM = 0.20
	}
	topM2 := math.Pi / 4 * diameterM * diameterM
	wallM2 := math.Pi * diameterM * wallM
	dry := func(areaM2, waterC float64) float64 { // sides, lid: natural convection and some radiation
		return areaM2 * (5.9 + 1) * (waterC - roomC)
	}
	boilS := func(burnerW float64, covered bool) float64 {
		pot := Pot{CapacityJPK: r.num("water_kg") * 4190, WaterC: startC, BoilC: boilC}
		pot.NetW = func(_, waterC float64) float64 {
			net := burnerW - dry(wallM2, waterC)
			if covered {
				return net - dry(topM2, waterC)
			}
			return net - openSurfaceW(diameterM, waterC, roomC, damp)
		}
		m, err := MarchInPot(pot, 5)
		if err != nil {
			r.Fatal(err)
		}
		for m.BackS() == 0 && m.AfterS() < 1e5 {
			if err := m.Step(10); err != nil {
				r.Fatal(err)
			}
		}
		return m.BackS()
	}
	low, high := 500.0, 5000.0
	for high-low > 1e-6 {
		mid := 0.5 * (low + high)
		if boilS(mid, true) > r.num("covered_s") {
			low = mid
		} else {
			high = mid
		}
	}
	r.Logf("%s: burner power fitted to the covered run %.0f W (the row's own fit %.0f W)", r.id, low, r.num("net_W_fitted"))
	return boilS(low, false)
}

// openSurfaceW is what an open surface of water loses by natural convection,
// evaporation and radiation (method of Cengel, example 14-13: read).
func openSurfaceW(diameterM, waterC, roomC, damp float64) float64 {
	const pressurePa, gasConstant = 101325.0, 8.314
	areaM2 := math.Pi / 4 * diameterM * diameterM
	lengthM := diameterM / 4
	waterK, roomK := waterC+zeroCelsiusK, roomC+zeroCelsiusK
	filmK := 0.5 * (waterK + roomK)
	vapourPa, _ := SaturationPressurePa(math.Min(waterC, 99.9))
	roomVapourPa, _ := SaturationPressurePa(roomC)
	roomVapourPa *= damp
	moist := func(vapourPa, tempK float64) float64 {
		return ((pressurePa-vapourPa)*0.02897 + vapourPa*0.018015) / (gasConstant * tempK)
	}
	surface, room := moist(vapourPa, waterK), moist(roomVapourPa, roomK)
	viscosity := 1.458e-6 * math.Pow(filmK, 1.5) / (filmK + 110.4) // Sutherland
	kinematic := viscosity / (pressurePa * 0.02897 / (gasConstant * filmK))
	conductivity := 0.0241 * math.Pow(filmK/273.15, 0.81)
	diffusivity := 1.87e-10 * math.Pow(filmK, 2.072)
	prandtl, schmidt := 0.71, kinematic/diffusivity
	grashof := 9.80665 * math.Max(room-surface, 0) * math.Pow(lengthM, 3) / (0.5 * (room + surface) * kinematic * kinematic)
	nusselt := func(number float64) float64 {
		if ra := grashof * number; ra < 1e7 {
			return 0.54 * math.Pow(ra, 0.25)
		}
		return 0.15 * math.Cbrt(grashof*number)
	}
	convection := nusselt(prandtl) * conductivity / lengthM * areaM2 * (waterC - roomC)
	massTransfer := nusselt(schmidt) * diffusivity / lengthM
	vapour := (vapourPa/waterK - roomVapourPa/roomK) * 0.018015 / gasConstant
	evaporation := massTransfer * areaM2 * vapour * (2.5e6 - 2400*waterC)
	radiation := 0.95 * 5.670e-8 * areaM2 * (math.Pow(waterK, 4) - math.Pow(roomK, 4))
	return convection + evaporation + radiation
}
