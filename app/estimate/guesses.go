package estimate

import "example.org/kettleside/app/heat"

// What nobody measures in a kitchen: low, likely, high. Each is a judgement of
// this program; where it was drawn from something read, that is named.

// StartC is the temperature of vegetables that nobody took: from a cool store
// (50 °F) over a room (70 °F) to a warm one (80 °F).
var StartC = heat.Guess{Low: 10, Likely: 21.1, High: 26.7}

// TapC is cold tap water that nobody measured, 65 °F.
const TapC = 18.3

// boilFilm is the surface coefficient of pieces in a kettle, W/(m² K). Single
// pieces under natural convection alone have 600 to 2,100 (correlations as in
// Cengel); a crowded gentle boil is taken below that, a rolling one above.
var boilFilm = heat.Guess{Low: 500, Likely: 1200, High: 3000}

// steamFilm is that of pieces in household steam with air in it, W/(m² K);
// published values run from 400 to 12,000.
var steamFilm = heat.Guess{Low: 1000, Likely: 2500, High: 5000}

// bathFilm is that of pieces in a bath that is stirred now and then, W/(m² K):
// 400 to 1,000 for single pieces in slowly moving water, less in still water.
const bathFilm = 400.0

// packFilm is that of a pack in still freezer air, radiation counted,
// W/(m² K): 8 to 9 for one that stands free, 4 to 5 in a crowd.
var packFilm = heat.Guess{Low: 4, Likely: 6, High: 9}

// Covered is the share of a basket that pieces in a single layer cover: round
// ones side by side about 0.7.
const Covered = 0.7

// RehearsalSpread is how far a burner's next boil may be from the rehearsal's.
const RehearsalSpread = 0.1

// Around is a measured value with a spread to both sides.
func Around(x, spread float64) heat.Guess {
	return heat.Guess{Low: x * (1 - spread), Likely: x, High: x * (1 + spread)}
}

// ratings are burners by kind of which nobody read the plate, W: as appliance
// sellers print them (read), coil zones of 8 inches from memory.
var ratings = map[heat.BurnerKind]heat.Guess{
	heat.Coil:      {Low: 1000, Likely: 1500, High: 2400},
	heat.Radiant:   {Low: 1200, Likely: 2000, High: 3600},
	heat.Induction: {Low: 1300, Likely: 1800, High: 3700},
	heat.Gas:       {Low: 1500, Likely: 2600, High: 5300},
}

// FromPlate is the power into the water of a burner by kind and rating, either
// of which may be missing ("" and 0); false where both are.
func FromPlate(kind heat.BurnerKind, ratingW float64) (heat.Guess, bool) {
	share, known := kind.IntoThePot()
	rating := heat.Known(ratingW)
	switch {
	case !known && ratingW == 0:
		return heat.Guess{}, false
	case !known: // any kind
		share = heat.Share{Low: 0.28, Likely: 0.70, High: 0.90}
	case ratingW == 0:
		rating = ratings[kind]
	}
	return heat.Guess{Low: rating.Low * share.Low, Likely: rating.Likely * share.Likely, High: rating.High * share.High}, true
}

// Air between the pieces of a pack, as shares of its volume: pieces poured in
// loosely, about as peas lie in a heap, and pieces pressed down or with little
// between them.
const (
	LoosePackAir = 0.4
	SolidPackAir = 0.15
)
