package heat

// component is one of the things that a vegetable is made of. A property is
// a0 + a1 t + a2 t² with t in °C.
type component struct {
	name         string
	conductivity [3]float64 // W/(m K)
	density      [3]float64 // kg/m³
	heat         [3]float64 // specific heat, J/(kg K)
}

const (
	ofProtein = iota
	ofFat
	ofCarbohydrate
	ofFiber
	ofAsh
	ofWater
	ofIce
	nComponents
)

// components are the properties of the components of food, −40 to 150 °C (ice
// −40 to 0 °C). Source: Choi & Okos (1986), as in ASHRAE Refrigeration 2006,
// chapter 9, tables 1 and 2 (read in public transcriptions). Where copies
// differ: water's specific heat above 0 °C starts at 4,176.2 (one edition
// prints 4,128.9, which its own table 3 does not follow), fat's second
// conductivity coefficient is −2.7604e−4.
var components = [nComponents]component{
	{
		"protein",
		[3]float64{1.7881e-1, 1.1958e-3, -2.7178e-6},
		[3]float64{1.3299e3, -5.1840e-1, 0},
		[3]float64{2008.2, 1.2089, -1.3129e-3},
	},
	{
		"fat",
		[3]float64{1.8071e-1, -2.7604e-4, -1.7749e-7},
		[3]float64{9.2559e2, -4.1757e-1, 0},
		[3]float64{1984.2, 1.4733, -4.8008e-3},
	},
	{
		"carbohydrate",
		[3]float64{2.0141e-1, 1.3874e-3, -4.3312e-6},
		[3]float64{1.5991e3, -3.1046e-1, 0},
		[3]float64{1548.8, 1.9625, -5.9399e-3},
	},
	{
		"fiber",
		[3]float64{1.8331e-1, 1.2497e-3, -3.1683e-6},
		[3]float64{1.3115e3, -3.6589e-1, 0},
		[3]float64{1845.9, 1.8306, -4.6509e-3},
	},
	{
		"ash",
		[3]float64{3.2962e-1, 1.4011e-3, -2.9069e-6},
		[3]float64{2.4238e3, -2.8063e-1, 0},
		[3]float64{1092.6, 1.8896, -3.6817e-3},
	},
	{
		"water",
		[3]float64{5.7109e-1, 1.7625e-3, -6.7036e-6},
		[3]float64{9.9718e2, 3.1439e-3, -3.7574e-3},
		[3]float64{4176.2, -9.0864e-2, 5.4731e-3}, // from 0 °C up; see supercooled
	},
	{
		"ice",
		[3]float64{2.2196, -6.2489e-3, 1.0154e-4},
		[3]float64{9.1689e2, -1.3071e-1, 0},
		[3]float64{2062.3, 6.0769, 0},
	},
}

// supercooled is the specific heat of liquid water from −40 to 0 °C, same
// source (from memory; one copy has a last coefficient ten times larger, which
// would give 20,000 J/(kg K)).
var supercooled = [3]float64{4081.7, -5.3062, 0.99516}

func polynomial(a [3]float64, t float64) float64 { return a[0] + t*(a[1]+t*a[2]) }

func (c *component) conductivityAt(t float64) float64 { return polynomial(c.conductivity, t) }
func (c *component) densityAt(t float64) float64      { return polynomial(c.density, t) }

func (c *component) heatAt(t float64) float64 {
	if t < 0 && c == &components[ofWater] {
		return polynomial(supercooled, t)
	}
	return polynomial(c.heat, t)
}
