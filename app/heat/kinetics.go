package heat

import "math"

// gasConstant is R in J/(mol K).
const gasConstant = 8.314462618

// Fraction is one part of an enzyme (or of a vitamin) that heat destroys by
// first order: its rate at RefC and how the rate rises with temperature, either
// by an activation energy (Arrhenius) or by a z value (the °C that make it ten
// times faster), whichever its source gives.
type Fraction struct {
	Share             float64 // of the whole, 0 to 1
	RatePerMin        float64 // k at RefC
	RefC              float64
	ActivationJPerMol float64 // 0 where ZC is given
	ZC                float64 // 0 where ActivationJPerMol is given
}

// FromD is a fraction from a decimal reduction time (minutes for a tenth to be
// left) at refC and a z value.
func FromD(share, dMin, refC, zC float64) Fraction {
	return Fraction{Share: share, RatePerMin: math.Ln10 / dMin, RefC: refC, ZC: zC}
}

// Rate is k at tempC, per minute.
func (f Fraction) Rate(tempC float64) float64 {
	if f.ZC > 0 {
		return f.RatePerMin * math.Pow(10, (tempC-f.RefC)/f.ZC)
	}
	return f.RatePerMin * math.Exp(f.ActivationJPerMol/gasConstant*(1/(f.RefC+zeroCelsiusK)-1/(tempC+zeroCelsiusK)))
}

// Inactivation is an enzyme as a sum of fractions, with the temperatures
// between which its rates were measured.
type Inactivation struct {
	Fractions   []Fraction
	LowC, HighC float64
	WithLag     bool // the rates include the time a piece took to warm
}

// Check returns a *RangeError for the first value that is out of range.
func (i Inactivation) Check() error {
	share := 0.0
	for _, f := range i.Fractions {
		share += f.Share
		if err := first(within("share", f.Share, 0, 1, ""), within("rate", f.RatePerMin, 1e-6, 1e6, "1/min"), within("reference temperature", f.RefC, 20, 140, "°C")); err != nil {
			return err
		}
		if (f.ZC > 0) == (f.ActivationJPerMol > 0) {
			return &RangeError{"z value or activation energy (one of them)", f.ZC, 1, 60, "°C"}
		}
	}
	return within("sum of the shares", share, 0.999, 1.001, "")
}

// Left is the share that is left after a temperature history from fromS to toS
// seconds (at most a day). It is integrated by Simpson's rule on panels that
// halve until the answer stands to 1e-6.
func (i Inactivation) Left(tempC func(seconds float64) float64, fromS, toS float64) (float64, error) {
	if err := first(i.Check(), within("time", toS-fromS, 0, 86400, "s")); err != nil {
		return 0, err
	}
	left := math.NaN()
	for panels := 32; panels <= 1<<14; panels *= 2 {
		sum := 0.0
		for _, f := range i.Fractions {
			sum += f.Share * math.Exp(-simpson(func(s float64) float64 { return f.Rate(tempC(s)) / 60 }, fromS, toS, panels))
		}
		if math.Abs(sum-left) <= 1e-6 {
			return sum, nil
		}
		left = sum
	}
	return left, nil
}

func simpson(f func(float64) float64, a, b float64, panels int) float64 {
	h := (b - a) / float64(2*panels)
	sum := f(a) + f(b)
	for i := 1; i < 2*panels; i++ {
		weight := 4.0
		if i%2 == 0 {
			weight = 2
		}
		sum += weight * f(a+float64(i)*h)
	}
	return sum * h / 3
}

// VitaminCLeft is the share of vitamin C that is left after minutes (1 to 6, as
// was measured) in boiling water, as a mean of many vegetables: 72, 64 and 58 % after 1, 3 and
// 6 minutes (Adam & Horner 1941, as given by Retzer et al. 1945, read), fitted
// here as a loss of 0.28 t^0.227. Single vegetables differ: home preparation
// cost 31 to 48 % (Tosun & Yücecan 2007, read).
func VitaminCLeft(minutes float64) (float64, error) {
	if err := within("time", minutes, 1, 6, "min"); err != nil {
		return 0, err
	}
	return 1 - 0.28*math.Pow(minutes, 0.227), nil
}
