package drawing

import "math"

// heap lays count pieces of one area into a width, in rows from a floor
// upwards, each turned and shifted a little, always the same way. It returns
// the pieces and the top of the highest row.
func heap(x, floor, width float64, count int, pieceArea float64) (pieces path, top float64) {
	count = min(count, mostPieces)
	// a rounded bar 2.2 times as long as thick has this area
	thick := math.Sqrt(pieceArea / (2.2 - 1 + math.Pi/4))
	long := 2.2 * thick
	pitchX, pitchY := long*1.12, thick*1.32
	perRow := max(1, int(width/pitchX))
	spare := width - float64(perRow)*pitchX
	top = floor
	for i := range count {
		row, col := i/perRow, i%perRow
		shift := 0.5 * spare
		if row%2 == 1 {
			shift += math.Min(spare, pitchX) * 0.35 * wobble(row*7+3)
		}
		cx := x + shift + (float64(col)+0.5)*pitchX
		cy := floor - (float64(row)+0.5)*pitchY
		pieces = append(pieces, piece(cx, cy, long, thick, 0.22*wobble(i))...)
		top = math.Min(top, cy-thick/2)
	}
	return pieces, top
}

// layer lays one row of pieces on a floor, side by side over the width, as high
// as the area makes them but never higher than one piece. It returns the pieces and their top.
func layer(x, floor, width, area, pieceArea float64) (pieces path, top float64) {
	count := min(mostPieces, max(1, int(width/(math.Sqrt(pieceArea/2)*2.4))))
	pitch := width / float64(count)
	thick := math.Min(math.Max(area/(0.88*width), 2), 1.4*math.Sqrt(pieceArea/2))
	for i := range count {
		pieces = append(pieces, piece(x+(float64(i)+0.5)*pitch, floor-thick/2, pitch*0.88, thick, 0)...)
	}
	return pieces, floor - thick
}

// wobble is a fixed number between −1 and 1 for each index, without a pattern
// that the eye finds.
func wobble(i int) float64 {
	_, part := math.Modf(math.Sin(float64(i)*12.9898+4.137) * 43758.5453)
	if part < 0 {
		part++
	}
	return 2*part - 1
}

// spread moves the wanted places of labels apart so that none is nearer to the
// next than gap, keeping their order from top to bottom, and keeps them between
// low and high.
func spread(wanted []float64, gap, low, high float64) []float64 {
	out := append([]float64(nil), wanted...)
	at := low
	for i := range out {
		out[i] = math.Max(out[i], at)
		at = out[i] + gap
	}
	at = high
	for i := len(out) - 1; i >= 0; i-- {
		out[i] = math.Min(out[i], at)
		at = out[i] - gap
	}
	return out
}
