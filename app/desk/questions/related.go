package questions

import (
	"cmp"
	"slices"

	"example.org/kettleside/content"
)

// mostRelated is how many related questions are named, and nearby how many
// places of the file, which is in the order of the work, are of one subject.
const mostRelated, nearby = 3, 3

// related are the questions that go with one: those on the same crops, then those
// on the same topics, and of these the nearest. Questions on no crop and no topic
// go with others like them that are near, and one that goes with none so goes
// with its neighbours. All are of one language.
func related(all []content.Question, to content.Question) []content.Question {
	own := slices.IndexFunc(all, func(q content.Question) bool { return q.ID == to.ID })
	far := func(i int) int { return max(i-own, own-i) }
	var near, akin []int
	for i, q := range all {
		if i != own {
			near = append(near, i)
		}
		if i != own && (shared(to, q) > 0 || general(to) && general(q) && far(i) <= nearby) {
			akin = append(akin, i)
		}
	}
	order := akin
	if len(akin) == 0 {
		order = near
	}
	slices.SortFunc(order, func(a, b int) int {
		return cmp.Or(
			cmp.Compare(shared(to, all[b]), shared(to, all[a])),
			cmp.Compare(far(a), far(b)),
			cmp.Compare(b, a)) // what follows before what went before
	})
	var list []content.Question
	for _, i := range order[:min(len(order), mostRelated)] {
		list = append(list, all[i])
	}
	return list
}

func general(q content.Question) bool { return len(q.Crops) == 0 && len(q.Topics) == 0 }

// shared is how much two questions have in common. A crop is worth more than
// all topics.
func shared(a, b content.Question) int {
	n := 0
	if slices.ContainsFunc(a.Crops, func(crop string) bool { return slices.Contains(b.Crops, crop) }) {
		n = len(content.AllTopics())
	}
	for _, topic := range a.Topics {
		if slices.Contains(b.Topics, topic) {
			n++
		}
	}
	return n
}
