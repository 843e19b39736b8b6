package heat

import "math"

// saturation holds the coefficients n1 to n10 of the saturation line of water,
// IAPWS R7-97(2012), region 4, table 34; index 0 is unused.
var saturation = [11]float64{
	0,
	0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5, -0.32325550322333e7,
	0.14915108613530e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3,
}

const zeroCelsiusK = 273.15

// SaturationPressurePa is the pressure at which water boils at tempC, 0 to
// 373.946 °C. Source: IAPWS R7-97(2012), equation 30.
func SaturationPressurePa(tempC float64) (float64, error) {
	if err := within("temperature", tempC, 0, 373.946, "°C"); err != nil {
		return 0, err
	}
	n := &saturation
	t := tempC + zeroCelsiusK
	theta := t + n[9]/(t-n[10])
	a := theta*theta + n[1]*theta + n[2]
	b := n[3]*theta*theta + n[4]*theta + n[5]
	c := n[6]*theta*theta + n[7]*theta + n[8]
	root := 2 * c / (-b + math.Sqrt(b*b-4*a*c))
	return root * root * root * root * 1e6, nil
}

// BoilingPointC is the temperature at which water boils under a pressure of
// 611.213 Pa to 22.064 MPa. Source: IAPWS R7-97(2012), equation 31.
func BoilingPointC(pressurePa float64) (float64, error) {
	if err := within("pressure", pressurePa, 611.213, 22.064e6, "Pa"); err != nil {
		return 0, err
	}
	n := &saturation
	beta := math.Sqrt(math.Sqrt(pressurePa / 1e6))
	e := beta*beta + n[3]*beta + n[6]
	f := n[1]*beta*beta + n[4]*beta + n[7]
	g := n[2]*beta*beta + n[5]*beta + n[8]
	d := 2 * g / (-f - math.Sqrt(f*f-4*e*g))
	s := n[10] + d
	return (s-math.Sqrt(s*s-4*(n[9]+n[10]*d)))/2 - zeroCelsiusK, nil
}

// AirPressurePa is the pressure of the standard atmosphere at a geometric
// altitude of −2,000 to 11,000 m. Weather moves it by about ±2 %. Source: US
// Standard Atmosphere 1976 (form from memory, table values read).
func AirPressurePa(altitudeM float64) (float64, error) {
	const (
		earthRadiusM = 6356766.0
		lapseKPerM   = 0.0065
		seaLevelK    = 288.15
		seaLevelPa   = 101325.0
		exponent     = 9.80665 * 28.9644 / (8314.32 * lapseKPerM) // g M / (R L)
	)
	if err := within("altitude", altitudeM, -2000, 11000, "m"); err != nil {
		return 0, err
	}
	geopotentialM := earthRadiusM * altitudeM / (earthRadiusM + altitudeM)
	return seaLevelPa * math.Pow(1-lapseKPerM*geopotentialM/seaLevelK, exponent), nil
}

// BoilingPointAtC is the temperature at which water boils at an altitude of
// −2,000 to 11,000 m in the standard atmosphere. Weather moves it by about
// ±0.5 °C.
func BoilingPointAtC(altitudeM float64) (float64, error) {
	pressurePa, err := AirPressurePa(altitudeM)
	if err != nil {
		return 0, err
	}
	return BoilingPointC(pressurePa)
}
