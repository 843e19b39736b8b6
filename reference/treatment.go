package reference

import "example.org/kettleside/content/words"

// Method is how heat reaches the vegetable before freezing, or that none does.
type Method string

const (
	WaterBlanch Method = "water" // in boiling water
	SteamBlanch Method = "steam" // above boiling water, in a single layer
	CookThrough Method = "cook"  // cooked until soft or tender, not a timed blanch
	NoHeat      Method = "raw"   // packed without heating
)

// ClockStart says which event starts the minutes of a treatment.
type ClockStart string

const (
	AtReturnToBoil ClockStart = "boil"    // when the water boils again
	AtOnce         ClockStart = "at once" // when the lid goes on
	NoClock        ClockStart = "none"    // the treatment has no minutes
)

// Says puts the start of the clock in words, for every surface the same; a
// surface says them by its voice.
func (c ClockStart) Says() string {
	switch c {
	case AtReturnToBoil:
		return words.Key("when the water boils again")
	case AtOnce:
		return words.Key("at once, when the lid goes on")
	case NoClock:
		return words.Key("no clock: go by the words")
	}
	return ""
}

// Pack is how pieces lie in the container.
type Pack string

const (
	SolidPack  Pack = "solid"  // packs tightly: headspace counts
	LoosePack  Pack = "loose"  // packs loosely by itself: no headspace
	TrayPack   Pack = "tray"   // frozen loose on a tray first, then packed: no headspace
	LiquidPack Pack = "liquid" // puree, juice or in its own liquid: more headspace
)

// Standing says how sure a value is: how it came into the table. The program
// compares it, so it is the same in every language; a surface prints what its
// voice says of it.
type Standing string

const (
	Read           Standing = "read"            // somebody read it on the source's page
	ReadElsewhere  Standing = "read elsewhere"  // read as a quotation of the named source, or in a source without an author
	FromMemory     Standing = "from memory"     // not yet seen on a page
	CommonPractice Standing = "common practice" // done in the trade, no single source
	EnteredHere    Standing = "entered here"    // an educator's edit
)

// Treatment is one complete record: what is done to one cut and grade of one
// crop by one method, and everything needed to do it. Minutes are at low
// altitude, as published.
type Treatment struct {
	ID    string // stable, lower case with hyphens: "broccoli-flowerets-water"
	Crop  string // Crop.ID
	Cut   string // "flowerets", "whole ears", "1/2 in slices"
	Grade string // size class: "small", "medium", "large", or ""
	Size  string // the limits of that class in words: "up to 1 1/4 in across", or ""

	Method  Method
	Minutes float64 // 0 where Words stand instead
	// MinutesHigh is the upper end of a published range and equals Minutes
	// where one figure is published.
	MinutesHigh float64
	Words       string // what to do where no minutes exist: "cook until soft, then mash"; with minutes: what ends them
	ClockStart  ClockStart
	// SourceClock is the start of the clock on the page of the minutes, or on
	// the general page of the same series; "" where it is not stated or no
	// minutes stand. Counting from the boil never shortens what a page counts
	// at once.
	SourceClock ClockStart

	// ShorterThanShipped names the sources that print minutes as short as the
	// ones entered, where those are below the shipped ones; empty otherwise.
	ShorterThanShipped []string

	// ChillFactor times the minutes is the chilling time: 1 as a rule, 2 for
	// corn on the cob, 0 where ChillWords stand instead: always one of the two.
	ChillFactor   float64
	ChillWords    string
	ChillSource   string // Source.ID of the chilling rule
	ChillStanding Standing

	Pack              Pack
	HeadspaceIn       float64 // inches; 0 with an empty HeadspaceRow means: none
	HeadspaceRow      string  // row of the headspace table that gives it by size and mouth: "liquid" or "juice"; "" where HeadspaceIn stands
	HeadspaceSource   string  // Source.ID of the page that prints the headspace, also that there is none
	HeadspaceStanding Standing

	WaterGalPerLb float64 // US gallons of boiling water per pound prepared; 0 where no water blanch
	WaterSource   string  // Source.ID of the rule of water; "" where no water blanch
	WaterStanding Standing
	BlanchWater   string // what goes into the blanching water or a dip before: "4 tsp salt per gallon", or ""
	BlanchSource  string // Source.ID of BlanchWater, or ""

	Note              string  // what a person should know, in one or two sentences, or ""
	StorageMonths     float64 // best-quality window at 0 °F: from ...
	StorageMonthsHigh float64 // ... to
	StorageSource     string

	Source   string // Source.ID of the minutes or words
	Standing Standing

	// Rows name the rows of testdata/published/treatments.csv that this record
	// was taken from: "P027".
	Rows []string

	// Also are the values that other sources publish for the same thing.
	Also []Published

	// Changed maps the name of an edited field (EditFields) to the edit, whose
	// Old is the shipped text; empty for a treatment as shipped. Every surface marks these.
	Changed map[string]Edit
}

// ShippedMinutes returns the minutes as shipped and their source, also where
// the minutes were edited; zeros for a treatment that goes by words.
func (x Treatment) ShippedMinutes() (low, high float64, source string) {
	if p, ok := x.kept(); ok {
		return p.Minutes, p.MinutesHigh, p.Source
	}
	return x.Minutes, x.MinutesHigh, x.Source
}

// kept returns the shipped value that keepPublished put first among the
// published ones; false where minutes and words rest on a source still.
func (x *Treatment) kept() (Published, bool) {
	if x.Source != EnteredHereSource || len(x.Also) == 0 {
		return Published{}, false
	}
	return x.Also[0], true
}

// Published is one source's differing or confirming value for a treatment.
type Published struct {
	Treatment   string // Treatment.ID
	Method      Method // "" where it is the treatment's own method
	Minutes     float64
	MinutesHigh float64
	Words       string
	ClockStart  ClockStart // "" where the page does not say
	Source      string
	Standing    Standing
	Agrees      bool // the same value as the one chosen
	Note        string
	Row         string // row of testdata/published/treatments.csv, or ""
}

// Group is a group of crops. Views filter by it, so it is the same in every
// language; a surface prints what its voice says of it.
type Group string

// AsBought says what is weighed where a crop is bought. The arithmetic asks for
// it, so it is the same in every language; a surface prints what its voice says
// of it.
type AsBought string

const (
	InPods      AsBought = "in pods"
	InHusk      AsBought = "in husk"
	WithoutTops AsBought = "without tops"
	WithTops    AsBought = "bunched, with tops"
)

// InHull says whether most of what is weighed never goes into the pack.
func (a AsBought) InHull() bool { return a == InPods || a == InHusk }

// Crop is one vegetable or herb of the table.
type Crop struct {
	ID         string   // "snap-beans"
	Name       string   // "Snap beans"
	AlsoCalled []string // other common names, which a search finds: "green beans"
	Group      Group    // "beans and peas", "greens", "roots and tubers", ...
	Leafy      bool     // leafy greens take twice the water
	Prep       []Prep
	Note       string
}

// Prep is how a crop is selected and prepared, from one source.
type Prep struct {
	Crop     string
	Prepare  string // own words
	Select   string
	Soak     string // insect soak, anti-darkening dip
	Source   string
	Standing Standing
}

// Yield is what one source says of weight as bought and pints frozen.
type Yield struct {
	Crop          string
	MarketUnit    string  // "bushel", "crate of 12 bunches", or ""
	Lot           bool    // MarketUnit is what the yield was printed for and no unit of the market: "3 peppers"
	WeightLb      float64 // net weight of the market unit; 0 unknown
	WeightHighLb  float64
	Pints         float64 // frozen pints from one market unit; 0 unknown
	PintsHigh     float64
	LbPerPint     float64 // pounds as bought for one frozen pint; 0 unknown
	LbPerPintHigh float64
	Source        string
	Standing      Standing
	Chosen        bool // the yield that shopping uses for this crop
	// UsableShare is the share of the weight as bought that is left after
	// trimming, shelling or husking, 0 where no source gives it.
	UsableShare       float64
	UsableShareSource string
	AsBought          AsBought // or ""
	Note              string
}

// Source is one document.
type Source struct {
	ID        string
	Title     string
	Publisher string
	Edition   string // year or edition in words: "So Easy to Preserve, 5th ed. 2006"
	Address   string
	Seen      string // what was read of it; "not read" where all is from memory
}

// Rule is one numeric rule of the method: "water-gal-per-lb" = 1 gal/lb.
type Rule struct {
	ID       string
	Value    float64
	High     float64 // equals Value where the rule is one number
	Unit     string
	Says     string // the rule in one plain sentence, own words
	Source   string
	Standing Standing
	Note     string // where sources differ, or ""
}

// Mouth is the opening of a rigid container.
type Mouth string

const (
	WideMouth   Mouth = "wide"
	NarrowMouth Mouth = "narrow"
)

// Headspace is one cell of the published headspace table.
type Headspace struct {
	Pack   string // "dry", "liquid", "juice"
	Size   string // "pint", "quart"
	Mouth  Mouth
	Inches float64
	Source string
}
