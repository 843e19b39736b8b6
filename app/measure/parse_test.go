package measure

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/kettleside/content/words"
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

// Units are read in Spanish too, whatever the language of the window, with and
// without their accents.
func TestParseSpanishUnits(t *testing.T) {
	reads(t, Pound, "3 libras", "3 libra", "3 Libras")
	reads(t, Ounce, "3 onzas", "3 onza")
	reads(t, Kilogram, "3 kilos", "3 kilogramos", "3 kilo")
	reads(t, Gram, "3 gramos")
	reads(t, Gallon, "3 galones", "3 galón", "3 galon", "3 GALÓN")
	reads(t, Quart, "3 cuartos de galón", "3 cuarto de galón", "3 cuartos  de galon")
	reads(t, Pint, "3 pintas", "3 pinta")
	reads(t, Cup, "3 tazas", "3 taza")
	reads(t, FluidOunce, "3 onzas líquidas")
	reads(t, Litre, "3 litros", "3 litro")
	reads(t, Millilitre, "3 mililitros")
	reads(t, CubicFoot, "3 pies cúbicos", "3 pie cúbico", "3 pies cubicos", "3 pies³")
	reads(t, Inch, "3 pulgadas", "3 pulgada", "3 pulg", "3 pulg.")
	reads(t, Foot, "3 pies", "3 pie")
	reads(t, Metre, "3 metros", "3 metro")
	reads(t, Centimetre, "3 centímetros")
	reads(t, Millimetre, "3 milímetros")
	reads(t, Fahrenheit, "3 grados F", "3 grados Fahrenheit")
	reads(t, Celsius, "3 grados C", "3 grados centígrados")
	reads(t, Second, "3 segundos", "3 segundo", "3 seg")
	reads(t, Minute, "3 minutos", "3 minuto")
	reads(t, Hour, "3 horas", "3 hora")
	reads(t, Watt, "3 vatios", "3 vatio")
	reads(t, Kilowatt, "3 kilovatios")
	if q, err := Parse("3 libras 4 onzas", Pound); err != nil || q != New(3.25, Pound) {
		t.Errorf("3 libras 4 onzas: %v, %v", q, err)
	}
	// what Spanish prints reads back
	v := words.In(words.Spanish)
	for _, q := range []Length{New(1, Foot), New(5000, Foot), New(1.5, Inch)} {
		if back, err := Parse[lengthDim](v.Amount(q.String()), nil); err != nil || back != q {
			t.Errorf("%s prints as %s and reads back as %v, %v", q, v.Amount(q.String()), back, err)
		}
	}
}

func reads[D Dimension](t *testing.T, unit *Unit[D], typed ...string) {
	t.Helper()
	for _, text := range typed {
		if q, err := Parse[D](text, nil); err != nil || q != New(3, unit) {
			t.Errorf("%q reads as %v, %v; want 3 %s", text, q, err, unit.Symbol)
		}
	}
}

// No word is read as two units.
func TestUnitWordsAreUnlike(t *testing.T) {
	seen := map[string]string{}
	unlike(t, unitsOf[massDim](), seen)
	unlike(t, unitsOf[volumeDim](), seen)
	unlike(t, unitsOf[lengthDim](), seen)
	unlike(t, unitsOf[temperatureDim](), seen)
	unlike(t, unitsOf[durationDim](), seen)
	unlike(t, unitsOf[powerDim](), seen)
}

func unlike[D Dimension](t *testing.T, units []*Unit[D], seen map[string]string) {
	t.Helper()
	for _, u := range units {
		for _, word := range append([]string{strings.ToLower(u.Symbol)}, u.words...) {
			if other, twice := seen[word]; twice {
				t.Errorf("%q is %s and %s", word, other, u.Symbol)
			}
			seen[word] = u.Symbol
		}
	}
}

func TestRefusesInSpanish(t *testing.T) {
	v := words.In(words.Spanish)
	limits := Between(0.5, 5000, Foot)
	for typed, want := range map[string]string{
		"":        "Altitud: no se escribió nada; se permite: 0.5 pies a 5,000 pies",
		"9000 ft": "Altitud: escribió “9000 ft”, que es demasiado; se permite: 0.5 pies a 5,000 pies",
		"3 lb":    "Altitud: escribió “3 lb”, que tiene una unidad que no corresponde; se permite: 0.5 pies a 5,000 pies",
	} {
		if _, err := limits.Enter("Altitud", typed, Foot); v.Error(err) != want {
			t.Errorf("%q: %s\nwant %s", typed, v.Error(err), want)
		}
	}
	_, err := Parse("a lot", Pound)
	if got, want := v.Error(err), "escribió “a lot”, que no empieza con un número; se permite: un peso como 3 lb, 8 oz o 1.5 kg"; got != want {
		t.Errorf("%s\nwant %s", got, want)
	}
	if missing := v.Untranslated(); len(missing) > 0 {
		t.Errorf("not translated: %q", missing)
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
