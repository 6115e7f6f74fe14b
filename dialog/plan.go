package dialog

import (
	"cmp"
	"slices"
	"time"
)

// Task is an act of the farmer's that has its day.
type Task string

const (
	TaskGather      Task = "gather"       // go on with the plan: stuff, date, starter
	TaskFresh       Task = "fresh"        // green and dung in the last three days
	TaskSite        Task = "site"         // choose the place
	TaskMix         Task = "mix"          // put the bottle together
	TaskShake       Task = "shake"        // shake and loosen the cap
	TaskGas         Task = "gas"          // is there gas
	TaskBottleSmell Task = "bottle_smell" // is the bottle ready
	TaskPrepare     Task = "prepare"      // cut and soak, the day before
	TaskBuild       Task = "build"        // building day
	TaskRebuild     Task = "rebuild"      // a cold heap is opened and built anew
	TaskStick       Task = "stick"        // feel the core
	TaskTurn        Task = "turn"         // outside to core
	TaskRest        Task = "rest"         // weekly: still damp?
	TaskOpen        Task = "open"         // is the core cold at last
	TaskSpread      Task = "spread"       // open and spread
	TaskCool        Task = "cool"         // cool right through, no ammonia
	TaskSieve       Task = "sieve"        // coarse sieve
	TaskTrialSet    Task = "trial_set"    // put 10-20 worms on a handful
	TaskTrial       Task = "trial"        // did they stay
	TaskFeed        Task = "feed"         // all the worms
	TaskCare        Task = "care"         // weekly: worms and bed
	TaskRipe        Task = "ripe"         // like tea leaves all through
	TaskHarvest     Task = "harvest"      // take it
	TaskFinish      Task = "finish"       // how much, what for
	TaskPile        Task = "pile"         // cold path: pile and cover the dung
	TaskManure      Task = "manure"       // has the old manure lost its heat
)

// Window is one act of the plan: when it is asked about first, and the last day
// on which it still goes well. All days are common practice, no source.
type Window struct {
	Task   Task
	From   Day
	Latest Day
}

// Day numbers after building unless said otherwise; common practice, no source.
const (
	stickFrom   = 3 // the core is felt on day 3 to 5,
	stickUntil  = 5 // after it, cold means "build again";
	highFrom    = 4 // in cold highlands on day 4 to 7
	highUntil   = 7
	turnFrom    = 7
	turnLatest  = 12
	secondTurn  = 14
	secondUntil = 18
	afterTurn   = 3 // days from a turn to the next stick
	restEvery   = 7
	askToOpen   = 30
	openLatest  = 60
	coolDays    = 3
	ammoniaRest = 4
	careEvery   = 7
	ripeFrom    = 45 // after the first feeding
	ripeLatest  = 90
	dryingDays  = 4 // without water before the harvest
	coldMonths  = 90
	coldTurn    = 30
	gasFrom     = 8 // bottle days
	gasUntil    = 14
	bottleFrom  = 18 // before it, a smell of alcohol says that the bottle works, not that it is ready
	bottleReady = 20
	bottleLast  = 35
)

// Windows is what the heap wants from now on, soonest first. It is a pure
// function of the heap.
func (h Heap) Windows() []Window {
	if !h.Active() {
		return nil
	}
	var w []Window
	switch h.Stage {
	case Planning, Gathering, Ferment:
		if h.Path == OldManure {
			w = []Window{{TaskManure, max(h.LastDay+1, h.notBefore(TaskManure)), h.LastDay + 7}}
			break
		}
		w = h.beforeBuilding()
	case Building:
		t := TaskBuild
		if h.Redo {
			t = TaskRebuild
		}
		w = []Window{{t, h.LastDay + 1, h.LastDay + 3}}
	case Heating, Turned:
		w = h.inHeat()
	case Resting:
		w = h.inRest()
	case Opening:
		r, _ := h.Read()
		w = []Window{{TaskSpread, r.Day + 1, h.Built + openLatest}}
	case Cooling:
		w = h.coolingDown()
	case Worms:
		w = []Window{
			{TaskCare, max(h.FedLast+2, h.BedDay+careEvery), h.BedDay + 2*careEvery},
			{TaskRipe, h.Fed + ripeFrom, h.Fed + ripeLatest},
		}
	case Harvest:
		if h.Taken == 0 {
			w = []Window{{TaskHarvest, h.Ripe + dryingDays, h.Ripe + 2*dryingDays}}
			break
		}
		w = []Window{{TaskFinish, h.LastDay + 1, h.LastDay + 7}}
	case ColdDung:
		w = h.inCold()
	}
	if h.Bottle.Working() && h.Built == 0 {
		w = append(w, h.bottleDays()...)
	}
	slices.SortStableFunc(w, func(a, b Window) int { return cmp.Compare(a.From, b.From) })
	return w
}

func (h Heap) notBefore(t Task) Day { return h.Acts[t].Until }

func (h Heap) beforeBuilding() []Window {
	if len(h.Have) == 0 || !h.GatherDone || h.Wished == 0 || h.Starter == "" {
		return []Window{{TaskGather, h.LastDay + 1, h.LastDay + 7}}
	}
	var w []Window
	if h.Starter == Bottle && h.Bottle.Mixed == 0 {
		w = append(w, Window{TaskMix, h.LastDay + 1, h.Wished - bottleReady})
	}
	if !h.Site {
		w = append(w, Window{TaskSite, h.LastDay + 1, h.Wished - 1})
	}
	if a := h.Acts[TaskFresh]; a.Sent == 0 && h.Wished-h.Begun > 4 {
		w = append(w, Window{TaskFresh, h.Wished - 3, h.Wished - 1})
	}
	if !h.Prepared {
		w = append(w, Window{TaskPrepare, h.Wished - 1, h.Wished})
	}
	return append(w, Window{TaskBuild, h.Wished, h.Wished + 7})
}

func (h Heap) bottleDays() []Window {
	b := h.Bottle
	w := []Window{{TaskShake, max(b.Mixed, b.Shaken) + 1, b.Mixed + bottleLast}}
	if !b.Gas && b.Felt < b.Mixed+gasUntil {
		w = append(w, Window{TaskGas, max(b.Mixed+gasFrom, b.Felt+2), b.Mixed + gasUntil})
	}
	return append(w, Window{TaskBottleSmell, b.Mixed + bottleReady, b.Mixed + bottleLast})
}

func (h Heap) inHeat() []Window {
	turn := h.LastTurn()
	r, read := h.Read()
	if turn != 0 {
		if !read || r.Day <= turn {
			return []Window{{TaskStick, turn + afterTurn, turn + 5}}
		}
		if r.Warmth == "cold" {
			return []Window{{TaskTurn, r.Day + 1, r.Day + 3}}
		}
		w := []Window{{TaskTurn, max(h.Built+secondTurn, turn+secondTurn-turnFrom), max(h.Built+secondUntil, turn+turnFrom+4)}}
		if h.tired(TaskTurn) {
			open := h.opening() // a second turn is no must: who did not answer is still told to open
			open.From = max(open.From, h.Acts[TaskTurn].Last+1)
			w = append(w, open)
		}
		return w
	}
	if !read {
		return []Window{{TaskStick, h.Built + h.checkFrom(), h.Built + h.checkUntil()}}
	}
	switch r.Warmth {
	case "hot":
		if r.Celsius >= tooWarm {
			return []Window{{TaskTurn, r.Day + 1, r.Day + 2}}
		}
		return []Window{{TaskTurn, max(h.Built+turnFrom, r.Day), max(h.Built+turnLatest, r.Day+5)}}
	case "cold":
		day := r.Day - h.Built
		if day > h.checkUntil() {
			return []Window{{TaskRebuild, r.Day + 1, r.Day + 2}}
		}
		return []Window{{TaskStick, max(min(r.Day+2, h.Built+h.checkUntil()+1), r.Day+1, h.Built+h.checkFrom()), h.Built + h.checkUntil() + 1}}
	}
	if h.warmLong() {
		return []Window{{TaskTurn, r.Day + 1, h.Built + turnLatest}}
	}
	return []Window{{TaskStick, r.Day + 2, r.Day + 3}}
}

// checkFrom and checkUntil bound the days of the heat check.
func (h *Heap) checkFrom() Day {
	if h.High {
		return highFrom
	}
	return stickFrom
}

func (h *Heap) checkUntil() Day {
	if h.High {
		return highUntil
	}
	return stickUntil
}

// tooWarm: from 66 C the heap is turned soon (formula band, S13, S22).
const tooWarm = 66

// warmLong: a heap that stays warm and never hot to day 10 is turned with water
// all the same, to give it air (common practice, no source).
func (h Heap) warmLong() bool {
	r, ok := h.Read()
	if !ok || r.Day-h.Built < 10 {
		return false
	}
	n := 0
	for _, r := range h.Reads {
		if r.Warmth == "warm" {
			n++
		}
	}
	return n >= 3
}

func (h Heap) inRest() []Window {
	open := h.opening()
	w := []Window{open}
	if rest := max(h.LastTurn(), h.MoistDay) + restEvery; rest < open.From-1 {
		w = append(w, Window{TaskRest, rest, open.From})
	}
	return w
}

// opening is when a heap at rest is felt, to be opened if it is cold.
func (h Heap) opening() Window {
	from := h.Built + askToOpen
	if h.Early != 0 {
		from = min(from, h.LastTurn()+5)
	}
	if r, ok := h.Read(); ok && r.Day-h.Built >= openFrom {
		from = max(from, r.Day+coolDays)
	}
	return Window{TaskOpen, from, h.Built + openLatest}
}

func (h Heap) coolingDown() []Window {
	switch {
	case !h.Cool:
		from := h.Opened + coolDays
		if h.Smell == "ammonia" && h.SmellDay >= h.Opened {
			from = max(from, h.SmellDay+ammoniaRest)
		}
		if r, ok := h.Read(); ok && r.Day >= h.Opened && r.Warmth != "cold" {
			from = max(from, r.Day+coolDays)
		}
		return []Window{{TaskCool, from, from + 7}}
	case h.Sieved == 0:
		return []Window{{TaskSieve, h.LastDay + 1, h.LastDay + 7}}
	case h.TrialOK:
		return []Window{{TaskFeed, h.LastDay + 1, h.LastDay + 7}}
	case h.Trial != 0:
		return []Window{{TaskTrial, h.Trial + 1, h.Trial + 3}}
	}
	return []Window{{TaskTrialSet, h.LastDay + 1, h.LastDay + 7}}
}

func (h Heap) inCold() []Window {
	if h.Built == 0 {
		return []Window{{TaskPile, h.LastDay + 1, h.LastDay + 7}}
	}
	open := h.Built + coldMonths
	if r, ok := h.Read(); ok && r.Day >= open {
		if r.Warmth == "cold" {
			return []Window{{TaskCool, max(r.Day, h.SmellDay) + ammoniaRest, h.Built + 2*coldMonths}}
		}
		open = r.Day + 14
	}
	w := []Window{{TaskOpen, open, h.Built + 2*coldMonths}}
	if turn := max(h.Built, h.LastTurn()) + coldTurn; turn < h.Built+coldMonths {
		w = append(w, Window{TaskTurn, turn, turn + 7})
	}
	return w
}

// patience is how many days pass before a question without an answer is put
// again: after 1 day, then after 3; then the officer's list (common practice).
var patience = [...]Day{1, 3}

// shakePatience: the bottle wants every morning, so its word comes daily and
// ends after a week without an answer.
const shakePatience = 7

// Silent says whether the heap has stopped asking because nobody answers.
func (h Heap) Silent() bool {
	for _, w := range h.Windows() {
		if h.tired(w.Task) && w.Task != TaskFresh {
			return true
		}
	}
	return false
}

func (h Heap) tired(t Task) bool {
	n := h.Acts[t].Sent
	if t == TaskShake {
		return n >= shakePatience
	}
	return n > len(patience)
}

// breather is the least time between what a farmer told and our next word on
// the same heap, so that a reminder never tells what was just said.
const breather = 3 * time.Hour

// Plan is what should reach the person and when: for each act of each heap its
// next reminder. It depends on the diary alone, so that rows kept long ago and
// rows made anew agree.
func Plan(s State) []Due {
	p := s.Person
	plan := dutiesOf(p)
	if p.Consent == "" || p.Stopped || p.Barred || p.Nameless {
		return plan
	}
	for _, h := range s.Heaps {
		for _, w := range h.Windows() {
			if d, ok := h.due(p, w); ok {
				plan = append(plan, d)
			}
		}
	}
	return plan
}

func (h Heap) due(p Person, w Window) (Due, bool) {
	a := h.Acts[w.Task]
	if a.Skipped || h.tired(w.Task) {
		return Due{}, false
	}
	day := max(w.From, a.Until, h.Pause)
	switch {
	case a.Sent == 0 || w.Task == TaskShake:
		if a.Last != 0 {
			day = max(day, a.Last+1)
		}
	default:
		day = max(day, a.Last+patience[a.Sent-1])
	}
	zone := p.Zone()
	at := day.On(p.Hour(), zone)
	if after := later(h.Last, p.Moved).Add(breather); at.Before(after) {
		day = DayOf(after, zone)
		if at = day.On(p.Hour(), zone); at.Before(after) {
			day++
			at = day.On(p.Hour(), zone)
		}
	}
	return Due{Person: p.ID, Heap: h.ID, Task: w.Task, Day: day, At: at.UTC()}, true
}
