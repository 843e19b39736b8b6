package measure

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestKitchenPrintsWhatAToolShows(t *testing.T) {
	for _, c := range []struct {
		amount float64
		unit   *VolumeUnit
		want   string
	}{
		{7.4, Cup, "7 ⅓ cup"}, {7.2, Cup, "7 ¼ cup"}, // needs.md 9
		{3, Gallon, "3 gal"}, {0.01, Gallon, "¼ gal"}, {2.99, Quart, "3 qt"}, {0.5, Quart, "½ qt"}, {11.356, Litre, "11.4 L"},
		{0, Cup, "0 cup"}, {0.97, Cup, "1 cup"},
	} {
		if got := Kitchen(c.amount, c.unit); got != c.want {
			t.Errorf("Kitchen(%v) = %q; want %q", c.amount, got, c.want)
		}
	}
	for amount, want := range map[float64]string{1.125: "1 ¼ gal", 3: "3 gal", 6.5: "6 ½ gal", 0.9: "1 gal", 2.7: "2 ¾ gal"} {
		if got, above := KitchenUp(amount, Gallon); got != want || above < 0 || above > 0.25 {
			t.Errorf("KitchenUp(%v gal) = %q, %v above; want %q", amount, got, above, want)
		}
	}
	if got := Kitchen(0.5, Inch); got != "½ in" {
		t.Errorf("half an inch prints %q", got)
	}
	if got := Kitchen(0.125, Inch); got != "⅛ in" {
		t.Errorf("an eighth of an inch prints %q", got)
	}
}

func TestPlain(t *testing.T) {
	for x, want := range map[float64]string{
		0: "0", 3: "3", 11.356: "11.4", 0.9375: "0.94", 5000: "5,000", 1258.3: "1,258", 0.001: "0.001", -18: "−18", 99.96: "100", 6.5: "6.5", 1234567: "1,234,567",
	} {
		if got := Plain(x); got != want {
			t.Errorf("Plain(%v) = %q; want %q", x, got, want)
		}
	}
}

func TestExactForWorkings(t *testing.T) {
	for x, want := range map[float64]string{2.0 / 3: "⅔", 1.5: "1.5", 0.45359237: "0.4536", 8.345404452: "8.345", 3: "3", 12.3456: "12.35", 1 + 1.0/3: "1 ⅓", 0: "0", 1234.5: "1,234"} {
		if got := Exact(x); got != want {
			t.Errorf("Exact(%v) = %q; want %q", x, got, want)
		}
	}
	if got := Plain(math.Copysign(0, -1)); got != "0" {
		t.Errorf("minus nothing prints %q", got)
	}
}

func TestMinutes(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		want      string
	}{
		{3, 3, "3 min"}, {1.5, 1.5, "1 ½ min"}, {3, 7, "3–7 min"}, {10.0 / 60, 15.0 / 60, "10–15 s"}, {2.3, 2.3, "2 min 18 s"},
		{3.008, 3.008, "3 min 1 s"}, {0.5, 1, "30 s to 1 min"}, {1.25, 1.25, "1 ¼ min"}, {70.0 / 60, 75.0 / 60, "1 min 10 s to 1 ¼ min"},
	} {
		if got := MinutesRange(c.low, c.high); got != c.want {
			t.Errorf("MinutesRange(%v, %v) = %q; want %q", c.low, c.high, got, c.want)
		}
	}
}

// Something is never printed as nothing, and the printed amount is the nearest
// mark: at most half the smallest gap between marks away.
func TestKitchenIsNearAndNeverNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		amount := rapid.Float64Range(1e-6, 99).Draw(t, "amount")
		text := KitchenNumber(amount, kitchenParts)
		if text == "0" {
			t.Fatalf("%v printed as nothing", amount)
		}
		back, err := ParseNumber(text)
		if err != nil {
			t.Fatalf("%v printed as %q: %v", amount, text, err)
		}
		if gap := max(back-amount, amount-back); gap > 0.125+1e-9 && amount > 0.25 {
			t.Fatalf("%v printed as %q, %v away", amount, text, gap)
		}
	})
}
