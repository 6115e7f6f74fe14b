package dialog

import "strconv"

// The first heat: a group's own heaps show on which day a heap of theirs is
// usually hot. Nobody watches a heap all day: a stick that is hot on day 4 and was
// not on day 3 says "between the two", one that is hot the first time it is felt
// says "by then". The figures claim no more than that.

// FirstHeat bounds the day on which a heap first grew hot, in days after it was
// built. The zero FirstHeat knows nothing.
type FirstHeat struct {
	Until int `json:",omitempty"` // felt on that day and not hot yet
	By    int `json:",omitempty"` // hot on that day
}

// felt takes one stick; sticks may be told late.
func (f FirstHeat) felt(day int, warmth string) FirstHeat {
	switch {
	case day <= 0:
	case warmth == "hot" && (f.By == 0 || day < f.By):
		f.By = day
	case warmth != "hot" && day > f.Until:
		f.Until = day
	}
	if f.By > 0 && f.Until >= f.By { // cooler after its heat: that says nothing of the first
		f.Until = f.By - 1
	}
	return f
}

// on says whether the heap had been hot by a day; known is false when nobody
// felt it near enough to tell.
func (f FirstHeat) on(day int) (hot, known bool) {
	switch {
	case f.By > 0 && f.By <= day:
		return true, true
	case f.Until >= day:
		return false, true
	}
	return false, false
}

// lastHeatDay ends the table: what is not hot in a week is built again.
const lastHeatDay = 7

// hotBy counts, for each day of the first week, the heaps that had been hot by
// then among those that grew hot at all and of which it is known. Heaps that
// stayed cold say nothing of the day.
func hotBy(heats []FirstHeat) []Share {
	var days []Share
	for day := 1; day <= lastHeatDay; day++ {
		s := Share{Of: strconv.Itoa(day)}
		for _, h := range heats {
			hot, known := h.on(day)
			if known && h.By > 0 {
				s.All++
			}
			if hot {
				s.Hit++
			}
		}
		days = append(days, s)
	}
	return days
}

// UsualHeat is the first day by which more than half of the heaps that heat are
// hot, if that is sure: the lower end of the interval lies above a half.
func (f Figures) UsualHeat() (Share, bool) {
	for _, s := range f.HotBy {
		if low, _ := s.Wilson(); s.Enough() && low > 0.5 {
			return s, true
		}
	}
	return Share{}, false
}
