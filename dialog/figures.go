package dialog

import (
	"cmp"
	"math"
	"slices"
	"time"
)

// Figures are what a group's heaps have to teach. They come from the cards
// alone. No share is told of fewer than five heaps.

// leastCount is the smallest count of which a share is told (our choice).
const leastCount = 5

// Share is how many of how many, with what that is likely to mean.
type Share struct {
	Of  string // a class, a starter, a stage; empty for all
	Hit int
	All int
}

// Enough says whether a share may be told at all.
func (s Share) Enough() bool { return s.All >= leastCount }

// Part is the share as a number from 0 to 1.
func (s Share) Part() float64 {
	if s.All == 0 {
		return 0
	}
	return float64(s.Hit) / float64(s.All)
}

// z95 is the normal deviate of a 95 % interval.
const z95 = 1.959964

// Wilson is the 95 % score interval of a share (Wilson 1927; the formula is in
// every statistics text): it holds for small counts and never leaves 0 to 1.
func (s Share) Wilson() (low, high float64) {
	if s.All == 0 {
		return 0, 1
	}
	n, p := float64(s.All), s.Part()
	mid := (p + z95*z95/(2*n)) / (1 + z95*z95/n)
	half := z95 / (1 + z95*z95/n) * math.Sqrt(p*(1-p)/n+z95*z95/(4*n*n))
	return max(0, mid-half), min(1, mid+half)
}

// Figures of some cards at a moment.
type Figures struct {
	Farmers, Phoneless, Quiet int // Quiet: with a heap that gets no answers
	ByStage                   []Share
	Hot                       Share   // hot on the first check
	HotByMix, HotByStarter    []Share // the same by class
	HotIn                     []Share // hot in the first, second, third round, of all that were checked
	HotBy                     []Share // hot by day 1, 2 … of the heaps that heated and of which that is known
	OpenDays                  []int   // days from the first building to the opening, sorted
	InKg, FeedKg, OutKg       float64
	Dropped                   []Share // given up or silent, of all that came to the stage
	Hours                     []HourTally
	Started, Harvested        int
}

// planDays is when a heap is opened by the plan (stages, usual 30-40).
const planDays = 35

// stillOf is the order in which a heap passes its stages, for drop-outs.
var stillOf = []Stage{Planning, Gathering, Ferment, Building, Heating, Turned, Resting, Opening, Cooling, Worms, Harvest}

// FiguresOf sums the cards up.
func FiguresOf(cards []Card, now time.Time) Figures {
	var f Figures
	stages, mixes, starters := map[string]*Share{}, map[string]*Share{}, map[string]*Share{}
	reached, dropped := map[Stage]int{}, map[Stage]int{}
	hours := map[int]HourTally{}
	hotIn := [3]int{}
	var heats []FirstHeat
	for _, c := range cards {
		if !c.Nameless {
			f.Farmers++
		}
		if c.Keeper != 0 {
			f.Phoneless++
		}
		quiet := false
		for _, h := range c.Hours {
			t := hours[h.Hour]
			hours[h.Hour] = HourTally{h.Hour, t.Asked + h.Asked, t.Answered + h.Answered, t.Minutes + h.Minutes}
		}
		for _, t := range c.Tales {
			count(stages, string(t.Stage), true)
			f.InKg, f.FeedKg, f.OutKg = f.InKg+t.InKg, f.FeedKg+t.FeedKg, f.OutKg+t.OutKg
			if t.Built != 0 {
				f.Started++
			}
			if t.OutKg > 0 || t.Stage == Done {
				f.Harvested++
			}
			quiet = quiet || t.Silent
			if t.Path == HotHeap && t.Check != "" {
				hot := t.Check == "hot"
				heats = append(heats, t.Heat)
				f.Hot.All++
				if hot {
					f.Hot.Hit++
				}
				count(mixes, cmp.Or(t.Mix, "unknown"), hot)
				count(starters, cmp.Or(string(t.Starter), "unknown"), hot)
				if t.HotIn >= 1 && t.HotIn <= 3 {
					hotIn[t.HotIn-1]++
				}
			}
			if t.Opened != 0 && t.Built != 0 && t.Path == HotHeap {
				f.OpenDays = append(f.OpenDays, int(t.Opened-t.Built))
			}
			last := cmp.Or(t.Left, t.Stage)
			if i := slices.Index(stillOf, last); i >= 0 {
				for _, s := range stillOf[:i+1] {
					reached[s]++
				}
				if t.Stage == Abandoned || t.Silent {
					dropped[last]++
				}
			} else if t.Stage == Done {
				for _, s := range stillOf {
					reached[s]++
				}
			}
		}
		if quiet {
			f.Quiet++
		}
	}
	for _, s := range allStages {
		if n := stages[string(s)]; n != nil {
			f.ByStage = append(f.ByStage, Share{string(s), n.Hit, len(cards)})
		}
	}
	f.HotByMix, f.HotByStarter = sortedShares(mixes), sortedShares(starters)
	for i, n := range hotIn {
		f.HotIn = append(f.HotIn, Share{string(rune('1' + i)), n, f.Hot.All})
	}
	f.HotBy = hotBy(heats)
	slices.Sort(f.OpenDays)
	for _, s := range stillOf {
		if reached[s] > 0 {
			f.Dropped = append(f.Dropped, Share{string(s), dropped[s], reached[s]})
		}
	}
	for _, t := range hours {
		f.Hours = append(f.Hours, t)
	}
	slices.SortFunc(f.Hours, func(a, b HourTally) int { return cmp.Compare(a.Hour, b.Hour) })
	return f
}

func count(set map[string]*Share, of string, hit bool) {
	s := set[of]
	if s == nil {
		s = &Share{Of: of}
		set[of] = s
	}
	s.All++
	if hit {
		s.Hit++
	}
}

func sortedShares(set map[string]*Share) []Share {
	var list []Share
	for _, s := range set {
		list = append(list, *s)
	}
	slices.SortFunc(list, func(a, b Share) int { return cmp.Compare(a.Of, b.Of) })
	return list
}

// Median of the days to open; false when there are too few.
func (f Figures) Median() (int, bool) {
	n := len(f.OpenDays)
	if n < leastCount {
		return 0, false
	}
	return f.OpenDays[n/2], true
}

// Weakest is the class of mix that most surely heats worse than the rest: its
// interval's upper end lies below the share of all. That is what to teach next.
func (f Figures) Weakest(list []Share) (Share, bool) {
	var weakest Share
	found := false
	for _, s := range list {
		_, high := s.Wilson()
		if !s.Enough() || s.Of == "unknown" || high >= f.Hot.Part() {
			continue
		}
		if !found || s.Part() < weakest.Part() {
			weakest, found = s, true
		}
	}
	return weakest, found
}

// Leak is the stage at which most heaps are lost, of those enough have reached.
func (f Figures) Leak() (Share, bool) {
	var worst Share
	for _, s := range f.Dropped {
		if s.Enough() && s.Hit >= 2 && s.Part() > worst.Part() {
			worst = s
		}
	}
	return worst, worst.Hit > 0
}
