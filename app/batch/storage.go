package batch

import (
	"time"

	"example.org/kettleside/app/measure"
	"example.org/kettleside/content/words"
)

// storage gives the best-quality window and the text of the label.
func (w *worker) storage() {
	t := w.Treatment
	low, high := t.StorageMonths, t.StorageMonthsHigh
	hold := w.temperature(w.table.Rule("hold-f").Value)
	f := from(t.StorageSource, "", measure.Figure{
		ID: "best-by", Label: w.Say("Best quality"), Value: low, High: high, Unit: "months",
		Text:    w.Say("%s at %s or colder", countedRange(low, high, w.Say("month"), w.Say("months")), hold),
		Working: w.Say("kept at %s or colder; later it is a loss of quality, not of safety", hold),
	})
	if f.Basis == measure.Tabled {
		f.Basis = measure.Ruled
	}
	w.out.Label = Label{Food: w.food(), Cut: t.Cut, Amount: w.sizes(1), Cook: w.Say("Cook before eating.")}
	if !w.FreezeOn.IsZero() {
		from, to := monthsLater(w.FreezeOn, low), monthsLater(w.FreezeOn, high)
		f.Also = w.ends(from, to)
		w.out.Label.Frozen = w.FreezeOn.Format(time.DateOnly)
		w.out.Label.BestFrom, w.out.Label.BestBy = from, to
	}
	w.out.BestBy = f
}

// Best is "Best by 2028-02-12 to 2028-06-12", "" where the day of freezing is
// not fixed.
func (l Label) Best(v *words.Voice) string {
	switch {
	case l.BestBy == "":
		return ""
	case l.BestFrom != "" && l.BestFrom != l.BestBy:
		return v.Say("Best by %s to %s", l.BestFrom, l.BestBy)
	}
	return v.Say("Best by %s", l.BestBy)
}

// monthsLater is the same day of a later month, or that month's last day where
// it is shorter, as year-month-day. Half a month counts as 15 days.
func monthsLater(day time.Time, months float64) string {
	whole := int(months)
	first := time.Date(day.Year(), day.Month()+time.Month(whole), 1, 0, 0, 0, 0, time.UTC)
	last := first.AddDate(0, 1, -1)
	later := first.AddDate(0, 0, min(day.Day(), last.Day())-1)
	return later.AddDate(0, 0, int((months-float64(whole))*30)).Format(time.DateOnly)
}

func (w *worker) food() string {
	if w.Treatment.Grade != "" {
		return w.Crop.Name + ", " + w.Treatment.Grade
	}
	return w.Crop.Name
}
