package measure

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestParseNumber(t *testing.T) {
	for _, c := range []struct {
		typed string
		want  float64
	}{
		{"3", 3}, {"1.5", 1.5}, {".5", 0.5}, {"0.5", 0.5}, {"5.", 5},
		{"1/2", 0.5}, {"1 1/2", 1.5}, {"½", 0.5}, {"1½", 1.5}, {"1 ½", 1.5}, {"2⅔", 2 + 2.0/3}, {"7⁄8", 0.875},
		{"5,000", 5000}, {"1,234,567.5", 1234567.5}, {" 4 ", 4}, {"-2", -2}, {"−2", -2}, {"+2", 2}, {"3/2", 1.5},
	} {
		got, err := ParseNumber(c.typed)
		if err != nil || got != c.want {
			t.Errorf("ParseNumber(%q) = %v, %v; want %v", c.typed, got, err, c.want)
		}
	}
}

func TestParseNumberRefuses(t *testing.T) {
	for _, typed := range []string{
		"", " ", "abc", "1e9", "0x10", "inf", "NaN", "1.2.3", "1,5", "1,00", "12,34", "1234,567", "1/0", "1/2/3", "1/", "/2",
		"1 2", "1.5 1/2", "1 3/2", "--2", "1 1/2 1/2", "½½", ",", ".", "3 lb", "١", "1/-2",
		strings.Repeat("9", 400),
	} {
		if got, err := ParseNumber(typed); err == nil {
			t.Errorf("ParseNumber(%q) = %v; want an error", typed, got)
		}
	}
}

func TestParseNumberComma(t *testing.T) {
	for typed, want := range map[string]float64{"1,5": 1.5, "1.000": 1000, "1.000,25": 1000.25, "1 1/2": 1.5} {
		if got, err := ParseNumberComma(typed); err != nil || got != want {
			t.Errorf("ParseNumberComma(%q) = %v, %v; want %v", typed, got, err, want)
		}
	}
	if got, err := ParseNumberComma("1.5"); err == nil {
		t.Errorf("ParseNumberComma(\"1.5\") = %v; want an error: a point in the wrong place", got)
	}
}

func TestParseQuantity(t *testing.T) {
	mass := func(typed string, wantKg float64) {
		t.Helper()
		got, err := Parse(typed, Pound)
		if err != nil || math.Abs(got.SI()-wantKg) > 1e-12 {
			t.Errorf("Parse(%q) = %v kg, %v; want %v kg", typed, got.SI(), err, wantKg)
		}
	}
	mass("3 lb", 3*0.45359237)
	mass("3", 3*0.45359237)
	mass("3lbs.", 3*0.45359237)
	mass("8 OZ", 0.45359237/2)
	mass("1½ kg", 1.5)
	mass("500 g", 0.5)
	mass("3 lb 4 oz", 3.25*0.45359237)
	mass("3 lb, 4 oz", 3.25*0.45359237)
	mass("1 kg 200 g", 1.2)

	volume := func(typed string, wantL float64) {
		t.Helper()
		got, err := Parse[volumeDim](typed, nil)
		if err != nil || math.Abs(got.SI()-wantL) > 1e-9 {
			t.Errorf("Parse(%q) = %v L, %v; want %v L", typed, got.SI(), err, wantL)
		}
	}
	// 1 US gallon = 3.785411784 L, 1 cu ft = 28.316846592 L (NIST SP 811, 2008, from memory)
	volume("1 gal", 3.785411784)
	volume("3 3/4 qt", 3.75*3.785411784/4)
	volume("20 cu ft", 20*28.316846592)
	volume("2 cubic  feet", 2*28.316846592)
	volume("8 fl oz", 3.785411784/16)

	if got, _ := Parse[temperatureDim]("212 °F", nil); math.Abs(got.SI()-100) > 1e-12 {
		t.Errorf("212 °F = %v °C; want 100", got.SI())
	}
	if got := New(-40, Celsius).In(Fahrenheit); math.Abs(got+40) > 1e-12 {
		t.Errorf("−40 °C = %v °F; want −40", got)
	}
}

func TestParseRefusesInOneSentence(t *testing.T) {
	for _, c := range []struct{ typed, want string }{
		{"", "nothing typed; allowed is a weight such as 3 lb, 8 oz or 1.5 kg"},
		{"a lot", "you typed “a lot”, which has no number at the start; allowed is a weight such as 3 lb, 8 oz or 1.5 kg"},
		{"3 gal", "you typed “3 gal”, which has a unit that does not fit; allowed is a weight such as 3 lb, 8 oz or 1.5 kg"},
		{"1/2/3 lb", "you typed “1/2/3 lb”, which is not a number; allowed is a weight such as 3 lb, 8 oz or 1.5 kg"},
		{"3 lb 20 oz", "you typed “3 lb 20 oz”, which is not one amount; allowed is a weight such as 3 lb, 8 oz or 1.5 kg"},
		{"4 oz 3 lb", "you typed “4 oz 3 lb”, which is not one amount; allowed is a weight such as 3 lb, 8 oz or 1.5 kg"},
		{"1e9 lb", "you typed “1e9 lb”, which is not one amount; allowed is a weight such as 3 lb, 8 oz or 1.5 kg"},
	} {
		_, err := Parse(c.typed, Pound)
		var entry *EntryError
		if !errors.As(err, &entry) || err.Error() != c.want {
			t.Errorf("Parse(%q): %v\nwant %s", c.typed, err, c.want)
		}
	}
	if _, err := Parse[massDim]("3", nil); err == nil || !strings.Contains(err.Error(), "has no unit") {
		t.Errorf("a bare number without a fallback: %v", err)
	}
}

func TestLimitsNameTheRange(t *testing.T) {
	limits := Between(0.05, 500, Pound)
	for _, c := range []struct{ typed, want string }{
		{"1000000000 lb", "Prepared: you typed “1000000000 lb”, which is too much; allowed is 0.05 lb to 500 lb"},
		{"-3 lb", "Prepared: you typed “-3 lb”, which is too little; allowed is 0.05 lb to 500 lb"},
		{"0", "Prepared: you typed “0”, which is too little; allowed is 0.05 lb to 500 lb"},
		{"400 kg", "Prepared: you typed “400 kg”, which is too much; allowed is 0.023 kg to 226 kg"},
		{"", "Prepared: nothing typed; allowed is 0.05 lb to 500 lb"},
	} {
		if _, err := limits.Enter("Prepared", c.typed, Pound); err == nil || err.Error() != c.want {
			t.Errorf("Enter(%q): %v\nwant %s", c.typed, err, c.want)
		}
	}
	if q, err := limits.Enter("Prepared", "3", Pound); err != nil || q.String() != "3 lb" {
		t.Errorf("Enter(3) = %v, %v", q, err)
	}
	// a limit typed in another unit is inside: 500 lb = 226.796185 kg exactly
	if _, err := limits.Enter("Prepared", "226.796185 kg", Pound); err != nil {
		t.Errorf("the upper limit in kg: %v", err)
	}
}

// What is said to be allowed is allowed, in every unit.
func TestLimitsPrintedAreInside(t *testing.T) {
	for _, u := range unitsOf[volumeDim]() {
		limits := Between(0.25, 200, Gallon)
		_, err := limits.Enter("x", "1000000 L", u)
		text := err.Error()
		_, allowed, _ := strings.Cut(text, "allowed is ")
		low, high, _ := strings.Cut(allowed, " to ")
		for _, edge := range []string{low, high} {
			if _, err := limits.Enter("x", edge, u); err != nil {
				t.Errorf("%s: said to be allowed: %q, but: %v", u.Symbol, edge, err)
			}
		}
	}
}

// What is written reads back as the same amount in the same unit.
func TestTextRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		amount := rapid.OneOf(
			rapid.Float64Range(0, 1e6),
			rapid.Map(rapid.IntRange(0, 4000), func(n int) float64 { return float64(n) / 24 }),
		).Draw(t, "amount")
		unit := rapid.SampledFrom(unitsOf[volumeDim]()).Draw(t, "unit")
		q := New(amount, unit)
		text, _ := q.MarshalText()
		var back Volume
		if err := back.UnmarshalText(text); err != nil || back != q {
			t.Fatalf("%v → %q → %v, %v", amount, text, back, err)
		}
	})
}

// Switching the unit 100 times leaves the amount as it was (needs.md 17).
func TestConversionRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		q := New(rapid.Float64Range(0.001, 1e6).Draw(t, "lb"), Pound)
		start := q.SI()
		for range 100 {
			q = q.To(Kilogram).To(Ounce).To(Pound)
		}
		if math.Abs(q.SI()-start) > 1e-9*start {
			t.Fatalf("%v became %v", start, q.SI())
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, seed := range []string{"3 lb", "1 1/2 gal", "½ in", "-2", "1,000.5 kg", "1/2/3", "9e9", "° F", "\xff"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		q, err := Parse[massDim](text, Pound)
		if err == nil && (math.IsNaN(q.SI()) || math.IsInf(q.SI(), 0)) {
			t.Errorf("Parse(%q) = %v", text, q.SI())
		}
	})
}
