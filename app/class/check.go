package class

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"time"
	"unicode"

	"example.org/kettleside/app/batch"
	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
	"example.org/kettleside/reference"
)

// The limits of what can be entered. They are wide: they catch a slip of the
// finger or of the unit, and leave judgement to the findings.
var (
	PreparedLimits  = measure.Between(0.05, 500, measure.Pound)     // one station's batch
	KettleLimits    = measure.Between(0.25, 100, measure.Gallon)    // water a kettle holds
	FreezerLimits   = measure.Between(0.5, 2000, measure.CubicFoot) // capacity
	AltitudeLimits  = measure.Between(-1400, 20000, measure.Foot)
	TapLimits       = measure.Between(32, 120, measure.Fahrenheit)
	IceBagLimits    = measure.Between(1, 100, measure.Pound)
	BathLimits      = measure.Between(0.25, 100, measure.Gallon)   // water in one bath
	IceLimits       = measure.Between(0, 500, measure.Pound)       // of one station's batch; none is an answer too
	AcrossLimits    = measure.Between(3.5, 30, measure.Inch)       // inside width of a basket
	StartLimits     = measure.Between(32, 120, measure.Fahrenheit) // vegetables before they go in
	RatingLimits    = measure.Between(300, 15000, measure.Watt)    // a burner's plate
	TrialLimits     = measure.Between(0.25, 10, measure.Gallon)    // water of a rehearsal
	TrialFromLimits = measure.Between(32, 130, measure.Fahrenheit) // its temperature at the start
	TookLimits      = measure.Between(1, 180, measure.Minute)      // how long a rehearsal took
)

// Counts is the allowed range of a whole number.
type Counts struct{ Low, High int }

var (
	PeopleCounts  = Counts{1, 500}  // headcount
	ShareCounts   = Counts{1, 50}   // people at one station
	StationCounts = Counts{1, 100}  // stations that work one batch
	KitCounts     = Counts{0, 100}  // burners, baths, kettles
	PackCounts    = Counts{0, 2000} // packs wanted; 0: as many as it gives
)

// Enter reads a typed whole number within the range.
func (c Counts) Enter(field, text string) (int, error) {
	n, err := measure.ParseNumber(text)
	wrong := func(problem string) (int, error) {
		return 0, &measure.EntryError{Field: field, Typed: text, Problem: problem, Allowed: c.allowed()}
	}
	switch {
	case err != nil || n != math.Trunc(n):
		return wrong(words.Key("is not a whole number"))
	case n < float64(c.Low):
		return wrong(words.Key("is too little"))
	case n > float64(c.High):
		return wrong(words.Key("is too much"))
	}
	return int(n), nil
}

// Check says whether n lies in the range.
func (c Counts) Check(field string, n int) error {
	if n >= c.Low && n <= c.High {
		return nil
	}
	problem := words.Key("is too much")
	if n < c.Low {
		problem = words.Key("is too little")
	}
	return &measure.EntryError{Field: field, Typed: fmt.Sprint(n), Problem: problem, Allowed: c.allowed()}
}

func (c Counts) allowed() words.Phrase {
	return words.Later("a whole number from %d to %d", c.Low, c.High)
}

// optional checks an amount that may be left out.
func optional[D measure.Dimension](limits measure.Limits[D], field string, q measure.Of[D]) error {
	if !q.Given() {
		return nil
	}
	return limits.Check(field, q)
}

// oneOf checks a choice from a short list.
func oneOf[T ~string](field string, got T, allowed ...T) error {
	if slices.Contains(allowed, got) {
		return nil
	}
	names := make([]string, len(allowed))
	for i, a := range allowed {
		names[i] = string(a)
	}
	return &measure.EntryError{Field: field, Typed: string(got), Problem: words.Key("is not a choice"), Allowed: words.Later("one of %s", strings.Join(names, ", "))}
}

// Check returns every entry that is out of its range, joined, or nil. An
// amount that is simply not there yet is not an error: Work says what is
// missing.
func (c Class) Check() error {
	errs := []error{
		oneOf("units", c.Units, measure.US, measure.Metric),
		optional(AltitudeLimits, "place.altitude", c.Place.Altitude),
		optional(TapLimits, "place.tap", c.Place.Tap),
		optional(FreezerLimits, "place.freezer", c.Place.Freezer),
		PeopleCounts.Check("people.headcount", c.People.Headcount),
		ShareCounts.Check("people.perStation", c.People.PerStation),
		KitCounts.Check("kit.baths", c.Kit.Baths),
		optional(BathLimits, "kit.bathWater", c.Kit.BathWater),
		optional(IceBagLimits, "kit.iceBag", c.Kit.IceBag),
		checkDate(c.Date),
		lineOfText("title", c.Title), lineOfText("edition", c.Edition), lineOfText("place.name", c.Place.Name),
		lineOfText("people.educator", c.People.Educator), lineOfText("people.agency", c.People.Agency), lineOfText("people.helpLine", c.People.HelpLine),
		checkNotes("notes", c.Notes),
	}
	for i, r := range c.People.Roles {
		field := fmt.Sprintf("people.roles[%d]", i)
		errs = append(errs, lineOfText(field+".name", r.Name), lineOfText(field+".does", r.Does))
	}
	errs = append(errs, c.Kit.check()...)
	for i, b := range c.Batches {
		field := fmt.Sprintf("batches[%d]", i)
		errs = append(errs, lineOfText(field+".name", b.Name), lineOfText(field+".treatment", b.Treatment),
			optional(PreparedLimits, field+".prepared", b.Prepared), optional(StartLimits, field+".start", b.Start), optional(IceLimits, field+".ice", b.Ice),
			StationCounts.Check(field+".stations", b.Stations),
			oneOf(field+".pack.container", b.Pack.Container, batch.Bag, batch.Box, batch.Jar),
			oneOf(field+".pack.size", b.Pack.Size, batch.Pint, batch.Quart),
			oneOf(field+".pack.mouth", b.Pack.Mouth, reference.WideMouth, reference.NarrowMouth),
			PackCounts.Check(field+".pack.count", b.Pack.Count),
		)
		if _, ok := c.Kit.KettleNamed(b.Kettle); b.Kettle != "" && !ok {
			errs = append(errs, &measure.EntryError{Field: field + ".kettle", Typed: b.Kettle, Problem: words.Key("is not in the kit"), Allowed: words.Later("the name of a kettle of the kit")})
		}
		if _, ok := c.Kit.BurnerNamed(b.Burner); b.Burner != "" && !ok {
			errs = append(errs, &measure.EntryError{Field: field + ".burner", Typed: b.Burner, Problem: words.Key("is not in the kit"), Allowed: words.Later("the name of a burner of the kit")})
		}
	}
	return errors.Join(errs...)
}

// check returns what is wrong with the kettles and burners.
func (k Kit) check() []error {
	var errs []error
	names := map[string]bool{}
	named := func(field, name string, taken *measure.EntryError) error {
		of := taken.Problem + name // kettles and burners may share a name
		twice := names[of]
		names[of] = true
		if name == "" || twice {
			taken.Field, taken.Typed = field+".name", name
			return taken
		}
		return lineOfText(field+".name", name)
	}
	for i, kettle := range k.Kettles {
		field := fmt.Sprintf("kit.kettles[%d]", i)
		errs = append(errs, named(field, kettle.Name, &measure.EntryError{Problem: words.Key("is taken by another kettle"), Allowed: words.Later("a name of its own for each kettle")}), optional(KettleLimits, field+".holds", kettle.Holds),
			optional(AcrossLimits, field+".across", kettle.Across), KitCounts.Check(field+".count", kettle.Count))
	}
	for i, burner := range k.Burners {
		field := fmt.Sprintf("kit.burners[%d]", i)
		heat, trial := burner.Heat, burner.Heat.Rehearsal
		errs = append(errs, named(field, burner.Name, &measure.EntryError{Problem: words.Key("is taken by another burner"), Allowed: words.Later("a name of its own for each burner")}), KitCounts.Check(field+".count", burner.Count),
			optional(RatingLimits, field+".heat.rating", heat.Rating),
			optional(TrialLimits, field+".heat.rehearsal.water", trial.Water),
			optional(TrialFromLimits, field+".heat.rehearsal.from", trial.From),
			optional(TookLimits, field+".heat.rehearsal.took", trial.Took))
		if heat.Kind != batch.UnknownBurner {
			errs = append(errs, oneOf(field+".heat.kind", heat.Kind, batch.BurnerKinds...))
		}
	}
	return errs
}

// lineOfText checks a text that stands on one line of a sheet.
func lineOfText(field, text string) error {
	if len([]rune(text)) <= maxLine && !strings.ContainsFunc(text, unprintable) {
		return nil
	}
	return &measure.EntryError{Field: field, Typed: text, Problem: words.Key("is not one line of text"), Allowed: words.Later("one line of at most %d characters", maxLine)}
}

const maxLine = 200

// unprintable are control characters and marks that turn the direction of text.
func unprintable(r rune) bool {
	return unicode.IsControl(r) || unicode.In(r, unicode.Cf, unicode.Zl, unicode.Zp)
}

// checkNotes checks a text of several lines.
func checkNotes(field, text string) error {
	if len([]rune(text)) <= 10000 && !strings.ContainsFunc(text, func(r rune) bool { return unprintable(r) && r != '\n' && r != '\t' }) {
		return nil
	}
	return &measure.EntryError{Field: field, Typed: text, Problem: words.Key("is not plain text"), Allowed: words.Later("lines of text, at most 10,000 characters")}
}

func checkDate(date string) error {
	if _, err := ParseDate(date); err != nil {
		return err
	}
	return nil
}

// ParseDate reads a day as year-month-day; an empty text is the zero time.
func ParseDate(date string) (time.Time, error) {
	if date == "" {
		return time.Time{}, nil
	}
	day, err := time.Parse(time.DateOnly, date)
	if err != nil || day.Year() < 1950 || day.Year() > 2200 {
		return time.Time{}, &measure.EntryError{Field: "date", Typed: date, Problem: words.Key("is not a day of a class"), Allowed: words.Later("a day from 1950 to 2200 as year-month-day, such as 2027-02-20")}
	}
	return day, nil
}
