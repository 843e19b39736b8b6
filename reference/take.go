package reference

import (
	"slices"
	"strings"
	"time"

	"example.org/kettleside/content/words"
)

// Take makes edits of the differences that are called by name (Difference.Name),
// or of all that can be edits where none is called; left are the others. It is
// refused as a whole where a name is not among the differences or cannot be an
// edit, and where the edits do not go together.
func Take(t *Table, list []Difference, only []string, why, who string, when time.Time) (edits []Edit, left []Difference, err error) {
	for _, name := range only {
		i := slices.IndexFunc(list, func(d Difference) bool { return d.Name() == name })
		switch {
		case i < 0:
			return nil, nil, words.Errorf("There is no difference %s.", quoted(name))
		case list[i].Refused != nil:
			return nil, nil, words.Errorf("%s cannot be taken: %w", name, list[i].Refused)
		}
	}
	for _, d := range list {
		if d.Refused != nil || len(only) > 0 && !slices.Contains(only, d.Name()) {
			left = append(left, d)
			continue
		}
		edits = append(edits, t.NewEdit(d.Treatment, d.Field, d.There, strings.TrimSpace(why), strings.TrimSpace(who), when))
	}
	if _, err := t.With(edits); err != nil {
		return nil, nil, err
	}
	return edits, left, nil
}

// Over lays newer edits over older ones: of one field of one treatment only the
// newer stays.
func Over(older, newer []Edit) []Edit {
	out := slices.Clone(older)
	for _, e := range newer {
		out = append(Without(out, e.Treatment, e.Field), e)
	}
	return out
}

// Takes says whether an edit of a field can be laid over the treatment at all.
// Some are what the treatment is: minutes where there are none, headspace of
// what is packed loosely or goes by the headspace table.
func (x Treatment) Takes(field string) bool {
	switch field {
	case FieldMinutes:
		return x.ClockStart != NoClock
	case FieldChillFactor:
		return x.ChillFactor != 0
	case FieldChillWords:
		return x.ChillFactor == 0
	case FieldHeadspace:
		return x.Pack != LoosePack && x.Pack != TrayPack && x.HeadspaceRow == ""
	case FieldWater:
		return x.Method == WaterBlanch
	}
	return slices.Contains(EditFields, field)
}
