package dialog

import (
	"cmp"
	"math"
	"slices"
	"time"

	"warmstick/dialog/compost"
)

// Who needs me today? For every farmer of an officer: what is likely to be lost
// if nobody goes there within the week, in days of composting. All chances are
// our estimates, no source; they are shown on request and kept here, together.

// Concern is one reason to see a farmer.
type Concern struct {
	Heap   HeapID // 0 = the person
	Kind   string // tail of the phrases concern_… and because_…
	Task   Task   // the act that is late, for those that name it
	Since  Day
	Chance float64 // that it is lost if nobody goes within the week
	Days   float64 // of composting that are lost then
}

// Loss is the expected loss of not going, in days of composting.
func (c Concern) Loss() float64 { return c.Chance * c.Days }

// Line is one farmer on the board.
type Line struct {
	Card     Card
	Today    Day       // where the farmer lives
	Concerns []Concern // the worst first; never empty
	Danger   bool
}

// Loss is what not going may cost: the whole of the worst concern and half of
// the others, which one visit would often mend too.
func (l Line) Loss() float64 {
	sum := l.Concerns[0].Loss()
	for _, c := range l.Concerns[1:] {
		sum += c.Loss() / 2
	}
	return sum
}

// What stands behind the chances.
const (
	wholeHeap  = 40 // days from building to opening (stages, usual 35-42)
	bottleDays = 22 // days of a new bottle (stages, usual)
	// The worms double in 60 to 120 days, 75 likely (compost.Doubling): half a
	// bed dead is one doubling lost.
	wormDays = 75
	// visitHolds is how long a visit answers for what was known then.
	visitHolds = 3
	// silenceHolds is the same for silence, which a visit explains.
	silenceHolds = 7
	leastLoss    = 0.4 // days; below it nobody needs to go
)

// Board sorts the farmers who need somebody: dangers first, then by expected
// loss. Farmers with nothing to say of are left out. It depends on the cards
// and the moment only.
func Board(cards []Card, now time.Time) []Line {
	var board []Line
	for i := range cards {
		if l, ok := lineOf(&cards[i], now); ok {
			board = append(board, l)
		}
	}
	slices.SortStableFunc(board, func(a, b Line) int {
		if a.Danger != b.Danger {
			if a.Danger {
				return -1
			}
			return 1
		}
		return cmp.Or(cmp.Compare(b.Loss(), a.Loss()), cmp.Compare(a.Card.Person, b.Card.Person))
	})
	return board
}

func lineOf(c *Card, now time.Time) (Line, bool) {
	zone := Zone(c.Zone)
	today := DayOf(now, zone)
	l := Line{Today: today}
	if c.Nameless || c.PutOff > today {
		return l, false
	}
	seen := Day(0)
	if !c.Seen.IsZero() {
		seen = DayOf(c.Seen, zone)
	}
	add := func(list ...Concern) {
		for _, k := range list {
			holds := Day(visitHolds)
			if k.Kind == "silent" || k.Kind == "barred" || k.Kind == "stopped" {
				holds = silenceHolds
			}
			if seen != 0 && k.Since <= seen && today < seen+holds || k.Loss() < leastLoss {
				continue
			}
			l.Concerns = append(l.Concerns, k)
		}
	}
	if c.Peril != "" && c.PerilAt.After(c.Seen) {
		l.Danger = true
		add(Concern{Kind: "peril_" + c.Peril, Since: DayOf(c.PerilAt, zone), Chance: 1, Days: perilDays(c.Peril)})
	}
	for _, h := range c.Heaps {
		if h.Peril != "" && h.PerilAt.After(c.Seen) {
			l.Danger = l.Danger || h.Peril != "third_cold"
			add(Concern{Heap: h.Heap, Kind: "peril_" + h.Peril, Since: DayOf(h.PerilAt, zone), Chance: 1, Days: perilDays(h.Peril)})
		}
		add(heapConcerns(h, c, today)...)
	}
	if !c.Asking.IsZero() {
		since := DayOf(c.Asking, zone)
		// A farmer who asks and hears nothing stops asking.
		add(Concern{Kind: "asks", Since: since, Chance: min(0.08+0.04*float64(today-since), 0.3), Days: wholeHeap})
	}
	if len(c.Heaps) > 0 && c.Barred {
		add(Concern{Kind: "barred", Since: lastDay(c), Chance: 0.15, Days: ageOf(c.Heaps[0], today)})
	}
	if len(c.Heaps) > 0 && c.Stopped {
		add(Concern{Kind: "stopped", Since: lastDay(c), Chance: 0.08, Days: ageOf(c.Heaps[0], today)})
	}
	if len(l.Concerns) == 0 {
		return l, false
	}
	slices.SortStableFunc(l.Concerns, func(a, b Concern) int { return cmp.Compare(b.Loss(), a.Loss()) })
	l.Card = *c
	return l, true
}

// perilDays only orders dangers among themselves: what burns comes before what
// bleeds, and both before what is lost.
func perilDays(what string) float64 {
	switch what {
	case "fire", "smoke":
		return 1000
	case "burst":
		return 300
	case "worms_dead":
		return wormDays
	case "third_cold":
		return wholeHeap
	}
	return 600 // an injury or illness: the clinic is first, the officer follows
}

func lastDay(c *Card) Day {
	var last Day
	for _, h := range c.Heaps {
		last = max(last, h.LastDay)
	}
	return last
}

// ageOf is what would be lost with the heap: the days it has taken so far, and
// some for the gathering.
func ageOf(h HeapCard, today Day) float64 {
	switch {
	case h.Fed != 0:
		return wormDays
	case h.First != 0:
		return min(float64(today-h.First), wholeHeap) + 10
	case h.Mixed != 0:
		return bottleDays
	}
	return 10
}

func heapConcerns(h HeapCard, c *Card, today Day) []Concern {
	var list []Concern
	add := func(kind string, since Day, chance, days float64) {
		list = append(list, Concern{h.Heap, kind, h.Next, since, min(chance, 0.95), days})
	}
	late := float64(0)
	if h.Latest != 0 && today > h.Latest {
		late = float64(today - h.Latest)
	}
	cold := h.Warmth == "cold" && h.Turns == 0 && h.Fed == 0 && h.ReadDay > h.Until && h.ReadDay-h.Built < openFrom
	colds := h.ColdRuns
	if cold && !h.Redo {
		colds++
	}
	waits := float64(today - max(h.ReadDay, h.LastDay))
	switch {
	case (cold || h.Redo) && colds >= 3 && h.Peril == "":
		add("cold3", coldSince(h), 0.7, wholeHeap)
	case (cold || h.Redo) && colds == 2:
		add("cold2", coldSince(h), 0.5+0.03*waits, wholeHeap)
	case (cold || h.Redo) && colds == 1:
		add("cold1", coldSince(h), 0.1+0.04*waits, wholeHeap)
	case h.Round >= 3 && h.Stage == Heating && h.Warmth == "":
		add("third_try", h.Built, 0.15, wholeHeap)
	}
	if h.Mixed != 0 {
		age := today - h.Mixed
		switch {
		case h.Bottle == "bloated" && h.Sent >= 2:
			add("bottle_hard", h.LastDay, 0.5, bottleDays)
		case age > Day(compost.ReadyDays().Likely)+3: // good from day 18, over-ripe after 35
			add("ferment", h.Mixed+bottleReady, 0.35+0.05*float64(age-25), bottleDays)
		case h.Bottle == "flat" && age >= gasFrom+2:
			add("bottle_flat", h.LastDay, 0.3, bottleDays)
		}
	}
	if h.Bed == "worms_escaping" {
		add("bed", h.BedDay, 0.14, wormDays)
	} else if h.Bed == "worms_dead" && h.Peril == "" {
		add("bed_dead", h.BedDay, 0.4, wormDays)
	}
	switch {
	case (h.Silent || h.Sent >= 2 && c.Keeper == 0) && unheard(h, c, today):
		// Of those who leave two questions unanswered some have given up; young
		// heaps lose more by it than resting ones.
		chance := 0.2
		if h.Stage == Resting || h.Stage == Opening || h.Stage == ColdDung || h.Stage == Planning {
			chance = 0.1
		}
		add("silent", h.LastDay, chance+0.01*math.Min(late, 10), ageOf(h, today))
	case late > 0 && h.Next == TaskTurn:
		add("late_turn", h.Latest, 0.12+0.03*late, 20) // the outside never had its heat
	case late > 0 && len(list) == 0:
		add("late", h.Latest, 0.05+0.02*late, 10)
	}
	if c.Keeper != 0 && h.From != 0 && today >= h.From && len(list) == 0 {
		add("no_phone", h.From, 0.06+0.03*float64(today-h.From), 20)
	}
	return list
}

// unheard: nothing was told of the heap since it was last asked about, and the
// question is not of today.
func unheard(h HeapCard, c *Card, today Day) bool {
	asked := DayOf(h.Asked, Zone(c.Zone))
	return h.LastDay < asked && asked < today
}

// coldSince is when the cold was found.
func coldSince(h HeapCard) Day {
	if h.ReadDay != 0 {
		return h.ReadDay
	}
	return h.LastDay
}
