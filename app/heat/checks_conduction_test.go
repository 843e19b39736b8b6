package heat

import (
	"math"
	"strings"
)

var conductionChecks = []handler{
	{"eig-", func(r run) float64 {
		bi := 1e9
		if r.in["Bi"] != "inf" {
			bi = r.num("Bi")
		}
		var m modes
		m.solve(r.shape(), bi, 0, 0, 1)
		if strings.HasSuffix(r.id, "-C1") {
			return m.integ[0] / m.norm[0]
		}
		return m.z[0]
	}},
	{"lacroix-", func(r run) float64 {
		var m modes
		m.solve(r.shape(), r.num("Bi"), 0, 0, 1)
		nearly(r, r.id+": own root", m.z[0], r.want, 1e-9)
		return lacroixRoot(r.shape(), r.num("Bi"))
	}},
	{"incropera-5-4-T", func(r run) float64 { return r.wall().CentreC(r.num("t_s")) }},
	{"incropera-5-4-q", func(r run) float64 {
		c := r.wall()
		return c.FluxWPerM2(r.num("t_s"))
	}},
	{"incropera-5-4-Q", func(r run) float64 {
		_, all := readChecks(r)
		wall := run{r.TB, all["incropera-5-4-T"]}
		rise := wall.wall().MeanC(wall.num("t_s")) - wall.num("Ti")
		return r.num("rho") * r.num("c") * math.Pi * r.num("D") * wall.num("L") * rise
	}},
	{"incropera-5-5", func(r run) float64 { return r.reaches(r.num("r")) }},
	{"incropera-5-5-book", func(r run) float64 {
		share := (r.num("Tc") - r.num("Tinf")) / (r.num("Ti") - r.num("Tinf"))
		return -math.Log(share/1.376) / (1.800 * 1.800) * r.num("r") * r.num("r") / r.num("alpha")
	}},
	{"geankoplis-5.3-2-", func(r run) float64 {
		size := r.num("L")
		c := conduction(r, r.num("h")*size/r.num("k"), size*size*r.num("rho")*r.num("c")/r.num("k"), r.num("Ti_K"), r.num("Tinf_K"), r.num("h"))
		return c.AtC(r.num("t_s"), r.num("depth"))
	}},
	{"geankoplis-5.3-3", func(r run) float64 { return r.can(0).CentreC(r.num("t_s")) }},
	{"geankoplis-5.3-4", func(r run) float64 { return r.can(r.num("H") / 2).CentreC(r.num("t_s")) }},
	{"geankoplis-5.5-1", func(r run) float64 { return r.reaches(r.num("half")) / 3600 }},
	{"geankoplis-5.4-3-", func(r run) float64 {
		_, all := readChecks(r)
		case1 := run{r.TB, all["geankoplis-5.4-3-node1"]}
		if depth, ok := r.in["depth"]; ok {
			size := case1.num("L")
			c := conductionOf(r, Slab, case1.num("h")*size/case1.num("k"), size*size/case1.num("alpha"), case1.num("Ti"), case1.num("Tinf"), case1.num("h"))
			return c.AtC(case1.num("t_s"), number(r, depth))
		}
		return explicitSlab(case1)[int(number(r, r.rest("geankoplis-5.4-3-node")))-1]
	}},
	{"lin-", linTime},
}

// conductionOf is a Conduction outside of what Into lets in: metal walls.
func conductionOf(r run, shape Shape, bi, scaleS, startC, aroundC, film float64) *Conduction {
	c := &Conduction{n: 1, filmWPerM2K: film, startC: startC, aroundC: aroundC}
	c.factor[0].set(shape, bi, scaleS)
	return c
}

func conduction(r run, bi, scaleS, startC, aroundC, film float64) *Conduction {
	return conductionOf(r, r.shape(), bi, scaleS, startC, aroundC, film)
}

func (r run) wall() *Conduction {
	size := r.num("L")
	return conduction(r, r.num("h")*size/r.num("k"), size*size/r.num("alpha"), r.num("Ti"), r.num("Tinf"), r.num("h"))
}

// reaches is the time until the centre is at Tc.
func (r run) reaches(size float64) float64 {
	var alpha float64
	if r.in["alpha"] != "" {
		alpha = r.num("alpha")
	} else {
		alpha = r.num("k") / (r.num("rho") * r.num("c"))
	}
	c := conduction(r, r.num("h")*size/r.num("k"), size*size/alpha, r.num("Ti"), r.num("Tinf"), r.num("h"))
	s, err := c.ReachesS(0, r.num("Tc"))
	return must(r, s, err)
}

func (r run) can(halfHeight float64) *Conduction {
	radius := r.num("D") / 2
	c := conductionOf(r, Cylinder, r.num("h")*radius/r.num("k"), radius*radius/r.num("alpha"), r.num("Ti"), r.num("Tinf"), r.num("h"))
	if halfHeight > 0 {
		c.n = 2
		c.factor[1].set(Slab, r.num("h")*halfHeight/r.num("k"), halfHeight*halfHeight/r.num("alpha"))
	}
	return c
}

// explicitSlab is the explicit scheme of Geankoplis 5.4-3: M = 4, film at node
// 1, insulated behind the last node.
func explicitSlab(r run) []float64 {
	const m = 4.0
	slices := int(r.num("slices"))
	step := r.num("L") / float64(slices)
	n := r.num("h") * step / r.num("k")
	around := r.num("Tinf")
	t := make([]float64, slices+1)
	for i := range t {
		t[i] = r.num("Ti")
	}
	steps := int(math.Round(r.num("t_s") * m * r.num("alpha") / (step * step)))
	next := make([]float64, len(t))
	for range steps {
		next[0] = (2*n*around + (m-2*n-2)*t[0] + 2*t[1]) / m
		for i := 1; i < slices; i++ {
			next[i] = (t[i-1] + (m-2)*t[i] + t[i+1]) / m
		}
		next[slices] = (2*t[slices-1] + (m-2)*t[slices]) / m
		t, next = next, t
	}
	return t
}

// lacroixRoot is the polynomial of Lacroix & Castaigne (1987) for the first
// root (sphere from memory), 0.1 < Bi < 100. It sags near Bi 30 to 60; the
// engine finds the roots themselves.
func lacroixRoot(shape Shape, bi float64) float64 {
	a := map[Shape][6]float64{
		Slab:     {0.860972, 0.312133, 0.007986, -0.016192, -0.001190, 0.000581},
		Cylinder: {1.257493, 0.487941, 0.025322, -0.026568, -0.002888, 0.001078},
		Sphere:   {1.573729, 0.642906, 0.047859, -0.03553, -0.004907, 0.001563},
	}[shape]
	x, power, sum := math.Log(bi), 1.0, 0.0
	for _, ai := range a {
		sum += ai * power
		power *= x
	}
	return sum
}

// linShape is a row of the geometry table of Lin et al. (ASHRAE Refrigeration
// 2010, chapter 20).
type linShape struct{ n, p1, p2, p3, g1, g2, lambda, e0 float64 }

// linTime is the dimensionless time until the centre has a tenth of the first
// difference left by Lin et al., and checks the exact time, which the row
// expects, on the way.
func linTime(r run) float64 {
	bi := r.num("Bi")
	var c *Conduction
	var g linShape
	b1, b2 := 1.0, 1.0
	inf := math.Inf(1)
	switch name := r.rest("lin-"); {
	case strings.HasPrefix(name, "brick"):
		b1, b2 = r.num("b1"), r.num("b2")
		g = linShape{3, 0.75, 0.75, -1, 4 * b1 / math.Pi, 1.5 * b2, 4 * b1 / math.Pi, 1 + 1/b1 + 1/b2}
		c = conductionOf(r, Slab, bi, 1, 1, 0, 1)
		c.n = 3
		c.factor[1].set(Slab, bi*b1, b1*b1)
		c.factor[2].set(Slab, bi*b2, b2*b2)
	case strings.HasPrefix(name, "short"):
		b2 = r.num("b2")
		g = linShape{3, 1.01, 0.75, -1, b1, 1.5 * b2, b1, 1 + 1/b1 + 1/b2}
		c = conductionOf(r, Cylinder, bi, 1, 1, 0, 1)
		c.n = 2
		c.factor[1].set(Slab, bi*b2, b2*b2)
	case strings.HasPrefix(name, "slab"):
		b1, b2 = inf, inf
		g = linShape{1, 0, 0, 0, inf, inf, 1, 1}
		c = conduction(r, bi, 1, 1, 0, 1)
	case strings.HasPrefix(name, "cyl"):
		b2 = inf
		g = linShape{2, 1.01, 0, 0, 1, inf, 1, 2}
		c = conduction(r, bi, 1, 1, 0, 1)
	case strings.HasPrefix(name, "sph"):
		g = linShape{3, 1.01, 1.24, 0, 1, 1, 1, 3}
		c = conduction(r, bi, 1, 1, 0, 1)
	}
	exact, err := c.ReachesS(0, 0.1)
	nearly(r, r.id+": own exact time", must(r, exact, err), r.want, 1e-8)

	far := func(b float64) float64 {
		if math.IsInf(b, 1) {
			return 0
		}
		return 1/(b*b) + 0.01*g.p3*math.Exp(b-b*b/6)
	}
	gone := func(a, b, x float64) float64 { // exp(a x − b x²), 0 for x without end
		if math.IsInf(x, 1) {
			return 0
		}
		return math.Exp(a*x - b*x*x)
	}
	eInf := 0.75 + g.p1*far(b1) + g.p2*far(b2)
	power := math.Pow(bi, 4.0/3)
	e := (power + 1.85) / (power/eInf + 1.85/g.e0)
	jInf := 1.271 + 0.305*gone(0.172, 0.115, g.g1) + 0.425*gone(0.09, 0.128, g.g2)
	power = math.Pow(bi, 1.35)
	j := (power + 1/g.lambda) / (power/jInf + 1/g.lambda)
	var sphere modes
	sphere.solve(Sphere, bi, 0, 0, 1)
	omega := sphere.z[0]
	return 3 / (omega * omega * e) * math.Log(j/0.1)
}
