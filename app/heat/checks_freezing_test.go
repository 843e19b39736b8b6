package heat

import (
	"math"
	"strings"
)

var freezingChecks = []handler{
	{"geankoplis-5.5-2", func(r run) float64 {
		return plankS(r.num("rho")*r.num("L"), r.num("Tf_K"), r.num("Ta_K"), r.num("D"), r.num("P"), r.num("R"), r.num("h"), r.num("k")) / 3600
	}},
	{"plank-second-implementation", func(r run) float64 {
		p, q := plankFactors(Slab)
		return plankS(r.num("rho")*r.num("L"), r.num("tf"), r.num("ta"), r.num("D"), p, q, r.num("h_eff"), r.num("k")) / 3600
	}},
	{"plank-brick-P-", func(r run) float64 { p, _ := plankBrick(r.num("b1"), r.num("b2")); return p }},
	{"plank-brick-R-", func(r run) float64 { _, q := plankBrick(r.num("b1"), r.num("b2")); return q }},
	{"pham-second-implementation", func(r run) float64 {
		mean := meanFreezingC(r.num("Tc"), r.num("Ta"))
		c := phamCase{
			startC: r.num("Ti"), airC: r.num("Ta"), coreC: r.num("Tc"), halfM: r.num("d"), faces: r.num("E"),
			filmWPerM2K: r.num("h_eff"), frozenWPerMK: r.num("k"), coolJPerM3K: r.num("rho_u") * r.num("c_u"),
			freezeJPerM3: r.num("rho_f") * (r.num("Lf") + r.num("c_f")*(mean-r.num("Tc"))),
		}
		return c.seconds() / 3600
	}},
	{"ashrae20-ex3-", func(r run) float64 {
		c := clelandEarle{
			heatJPerM3: (r.num("rho_l")*r.num("H_l") - r.num("rho_s")*r.num("H_s")) * 1000,
			liquid:     r.num("rho_l") * r.num("c_l") * 1000, solid: r.num("rho_s") * r.num("c_s") * 1000,
			startC: r.num("Ti"), freezingC: r.num("tf"), airC: r.num("Tm"), coreC: r.num("Tc"),
			fullM: r.num("D"), film: r.num("h"), k: r.num("k_s"),
		}
		p1, r1 := plankBrick(r.num("b1"), r.num("b2"))
		pk, ste, bi := c.numbers()
		p, q := brickFactors(p1, r1, pk, ste, bi)
		return map[string]float64{
			"dH": c.heatJPerM3 / 1000, "Pk": pk, "Ste": ste, "Bi": bi, "P1": p1, "R1": r1, "P": p, "R": q, "t": c.seconds(p, q),
		}[r.rest("ashrae20-ex3-")]
	}},
	{"E-rod-", func(r run) float64 { return barFaces(r.num("Bi"), r.num("b1")) }},
	{"E-brick-", func(r run) float64 { return brickFaces(r.num("Bi"), r.num("b1"), r.num("b2")) }},
	{"E-tall-", func(r run) float64 { return tallFaces(r.num("Bi"), r.num("height_per_diameter")) }},
	{"E-squat-", func(r run) float64 { return squatFaces(r.num("Bi"), r.num("diameter_per_height")) }},
	{"E-ellipsoid-", func(r run) float64 { return ellipsoidFaces(r.num("Bi"), r.num("b1"), r.num("b2")) }},
	{"Elin-", func(r run) float64 {
		cases := map[string]struct{ regression, exact float64 }{
			"Elin-rod-2-1.5":     {linFaces(2, 1.5, math.Inf(1), 1, 1, 0), barFaces(2, 1.5)},
			"Elin-tall-2-2":      {linFaces(2, 1, 2, 2, 0, 1), tallFaces(2, 2)},
			"Elin-squat-2-2":     {linFaces(2, 2, math.Inf(1), 1, 2, 0), squatFaces(2, 2)},
			"Elin-brick-2-1.5-2": {linFaces(2, 1.5, 2, 1, 1, 1), brickFaces(2, 1.5, 2)},
		}
		c, ok := cases[r.in["case"]]
		if !ok {
			r.Fatalf("no case %q", r.in["case"])
		}
		nearly(r, r.id+": own exact E", c.exact, r.want, 1e-8)
		return c.regression
	}},
	{"fd-", func(r run) float64 {
		s := tyloseLike(r)
		if numeric := freezeNumerically(r, s, 60); math.Abs(numeric/r.want-1) > 0.01 {
			r.Errorf("%s: the enthalpy method gives %.4f h, this row's own solution %.4f h", r.id, numeric, r.want)
		} else {
			r.Logf("%s: enthalpy method %.4f h against this row's %.4f h (%+.2f %%)", r.id, numeric, r.want, 100*(numeric/r.want-1))
		}
		if strings.HasSuffix(r.id, "-pham") {
			return phamOf(r, s).seconds() / 3600
		}
		return clelandEarleOf(r, s)
	}},
}

// tyloseLike is the material of the benchmark in the fd- rows.
func tyloseLike(r run) substance {
	return substance{
		content:        newContent(r.num("tf"), r.num("Cs"), r.num("L_vol_to_minus10")/0.94, r.num("Cl")),
		unfrozenWPerMK: r.num("kl"), icy: r.num("ks") - r.num("kl"),
	}
}

func freezeNumerically(r run, s substance, cells int) float64 {
	f := newFreezing(r.shape(), r.num("D")/2, r.num("h"), 1, r.num("Ti"), s, cells)
	seconds, err := f.UntilCore(r.num("Tc"), r.num("Ta"))
	return must(r, seconds, err) / 3600
}

func phamOf(r run, s substance) *phamCase {
	return &phamCase{
		startC: r.num("Ti"), airC: r.num("Ta"), coreC: r.num("Tc"), halfM: r.num("D") / 2, faces: r.shape().dims(),
		filmWPerM2K: r.num("h"), frozenWPerMK: r.num("ks"), coolJPerM3K: s.unfrozen,
		freezeJPerM3: r.num("L_vol_to_minus10") + s.frozen*(meanFreezingC(r.num("Tc"), r.num("Ta"))-r.num("Tc")),
	}
}

var kitchenChecks = []handler{
	{"geankoplis-4.6-2", func(r run) float64 {
		return (2 + 0.6*math.Sqrt(r.num("Re"))*math.Cbrt(r.num("Pr"))) * r.num("k") / r.num("D")
	}},
	{"geankoplis-4.7-1", func(r run) float64 {
		// wall at 505.4 K, air at 311 K, 0.305 m high; air at 408.2 K has
		// 0.867 kg/m³ and 2.32e−5 Pa s (all from memory; the difference is that
		// of the row geankoplis-4.7-2)
		const heightM, differenceK, meanK, density, viscosity = 0.305, 194.4, 408.2, 0.867, 2.32e-5
		grashof := heightM * heightM * heightM * density * density * 9.80665 * differenceK / meanK / (viscosity * viscosity)
		return 0.59 * math.Pow(grashof*r.num("Pr"), 0.25) * r.num("k") / heightM
	}},
	{"geankoplis-4.7-2", func(r run) float64 { return 1.37 * math.Pow(r.num("dT")/r.num("L"), 0.25) }},
	{"kettle-open-", openKettle},
}
