package exports

import (
	"strings"
	"testing"
	"unicode/utf16"
)

// A unit stays with its figure.
func TestBind(t *testing.T) {
	for text, want := range map[string]string{
		"Cook to 165 °F before eating":   "Cook to 165~°F before eating",
		"1 1/2 gal, 6 qt · 5.7 L":        "1 1/2~gal, 6~qt · 5.7~L",
		"½ in of 20 cu ft":               "½~in of 20~cu~ft",
		"2 lb 3 oz; 5 kg 4 g":            "2~lb 3~oz; 5~kg 4~g",
		"3–4 min (90 s, 2 h)":            "3–4~min (90~s, 2~h)",
		"4 cm, 5,000 ft, 1,524 m, 12 mm": "4~cm, 5,000~ft, 1,524~m, 12~mm",
		"1 pt, 1 cup, 2 cups, 5 mL":      "1~pt, 1~cup, 2~cups, 5~mL",
		"1,800 W, 55 % left, 20 °C":      "1,800~W, 55~% left, 20~°C",
		"2 gal/lb":                       "2~gal/lb",
		"3 minutes, 2 inches, 4 people":  "3 minutes, 2 inches, 4 people",
		"in the water":                   "in the water",
	} {
		if got := strings.ReplaceAll(bind(text), noBreak, "~"); got != want {
			t.Errorf("%q; want %q", got, want)
		}
	}
	s := describe(demoWorked(t), mustSettle(t, Options{})).sheets[0]
	s.settle()
	for _, r := range s.rows {
		for _, c := range r.cells {
			if bound.MatchString(c.text()) {
				t.Errorf("a unit may wrap away: %q", c.text())
			}
		}
	}
}

func TestHeadFootCodes(t *testing.T) {
	got := edgeLine{"4 & 5 beans", "Page &P of &N"}.codes()
	// a digit right after the size would become part of it
	if want := `&L&"Arial,Regular"&10 4 && 5 beans&R&"Arial,Regular"&10 Page &P of &N`; got != want {
		t.Errorf("got %s", got)
	}
	for _, long := range []string{strings.Repeat("&", 500), strings.Repeat("🥦", 150), "x" + strings.Repeat("🥦&", 70), "x" + strings.Repeat("&", 500), strings.Repeat("ä", 260)} {
		got := edgeLine{long, "Page &P of &N"}.codes()
		n := len(utf16.Encode([]rune(got)))
		left, whole := strings.CutSuffix(got, `…&R&"Arial,Regular"&10 Page &P of &N`)
		left, _ = strings.CutPrefix(left, `&L&"Arial,Regular"&10 `)
		if n > 255 || n < 250 || !whole || strings.Count(left, "&")%2 != 0 || !strings.HasPrefix(long, strings.ReplaceAll(left, "&&", "&")) {
			t.Errorf("%d units of UTF-16; 255 are allowed: %s", n, got)
		}
	}
}

// A long title leaves room for the name of the sheet.
func TestHeadersStandOnOneLine(t *testing.T) {
	p := handoutPage(A4)
	for _, text := range []string{"Beans", strings.Repeat("long ", 40), strings.Repeat("W", 300), strings.Repeat("🥦", 100), ""} {
		got := p.oneLine(text)
		left, cut := strings.CutSuffix(got, "…")
		if wide := arial.width(got, 10, false, false); wide > p.width()-100 || cut && wide < p.width()-150 || !strings.HasPrefix(text, left) || cut != (got != text) {
			t.Errorf("%q of %q takes %.0f points of %.0f", got, text, wide, p.width())
		}
	}
}
