package estimate

import "sync"

// Memory remembers results, so that a change to one batch does not work out the
// others again. A nil Memory remembers nothing; its answers are the same. It
// may be used from several goroutines. Results that it gives are shared: they
// are read-only.
type Memory struct {
	batches memo[Case, Results]
	packs   memo[Case, packResult] // apart: most changes of a batch leave its pack as it is
	days    memo[Day, dayResult]
}

type packResult struct {
	freezing *Freezing
	err      error
}

type dayResult struct {
	load Load
	err  error
}

// Work is Work, remembered.
func (m *Memory) Work(c Case) Results {
	if m == nil {
		return Work(c)
	}
	return m.batches.get(c, func(c Case) Results { return work(c, m.freezing) })
}

// freezing is Case.freezing, remembered.
func (m *Memory) freezing(c Case) (*Freezing, error) {
	r := m.packs.get(c.packed(), func(c Case) packResult {
		freezing, err := c.freezing()
		return packResult{freezing, err}
	})
	return r.freezing, r.err
}

// Day is Day.Work, remembered.
func (m *Memory) Day(d Day) (Load, error) {
	work := func(d Day) dayResult {
		load, err := d.Work()
		return dayResult{load, err}
	}
	if m == nil {
		return d.Work()
	}
	r := m.days.get(d, work)
	return r.load, r.err
}

// remembered is how many results a generation holds.
const remembered = 600

// memo keeps what was asked for lately: two generations, of which the older is
// dropped when the younger is full.
type memo[K comparable, V any] struct {
	mutex      sync.Mutex
	young, old map[K]V
}

func (m *memo[K, V]) get(key K, work func(K) V) V {
	if v, ok := m.find(key); ok {
		return v
	}
	v := work(key)
	m.mutex.Lock()
	defer m.mutex.Unlock()
	m.keep(key, v)
	return v
}

func (m *memo[K, V]) find(key K) (V, bool) {
	m.mutex.Lock()
	defer m.mutex.Unlock()
	if v, ok := m.young[key]; ok {
		return v, true
	}
	v, ok := m.old[key]
	if ok {
		m.keep(key, v)
	}
	return v, ok
}

func (m *memo[K, V]) keep(key K, v V) {
	if m.young == nil || len(m.young) >= remembered {
		m.young, m.old = map[K]V{}, m.young
	}
	m.young[key] = v
}
