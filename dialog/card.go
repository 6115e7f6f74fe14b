package dialog

import (
	"cmp"
	"time"

	"warmstick/dialog/compost"
)

// Card is what an officer needs of one farmer, made from the diary whenever it
// changes so that a morning board or a digest never folds hundreds of diaries.
type Card struct {
	Person          PersonID
	Name            string       `json:",omitempty"`
	Lang            string       `json:",omitempty"`
	Area            string       `json:",omitempty"`
	Town            string       `json:",omitempty"`
	Zone            string       `json:",omitempty"`
	Keeper          PersonID     `json:",omitempty"` // who answers for a farmer without a phone
	Nameless        bool         `json:",omitempty"`
	Asking          time.Time    `json:",omitzero"`
	PutOff          Day          `json:",omitempty"`
	Seen            time.Time    `json:",omitzero"`
	Stopped, Barred bool         `json:",omitempty"`
	Peril           string       `json:",omitempty"` // at no heap in particular
	PerilAt         time.Time    `json:",omitzero"`
	Since           time.Time    `json:",omitzero"`
	Hours           []HourTally  `json:",omitempty"`
	Roles           []Membership `json:",omitempty"`
	Heaps           []HeapCard   `json:",omitempty"` // those that want something
	Tales           []Tale       `json:",omitempty"` // all, for the figures
}

// HeapCard is the part of a card that one heap fills.
type HeapCard struct {
	Heap     HeapID
	Stage    Stage
	Path     Path      `json:",omitempty"`
	Begun    Day       `json:",omitempty"`
	Round    int       `json:",omitempty"`
	Built    Day       `json:",omitempty"`
	First    Day       `json:",omitempty"` // built in the first round
	ColdRuns int       `json:",omitempty"`
	Redo     bool      `json:",omitempty"` // ordered and not yet told
	Turns    int       `json:",omitempty"`
	Warmth   string    `json:",omitempty"`
	ReadDay  Day       `json:",omitempty"`
	Until    Day       `json:",omitempty"` // after it, cold means "build again"
	Next     Task      `json:",omitempty"`
	From     Day       `json:",omitempty"`
	Latest   Day       `json:",omitempty"`
	Silent   bool      `json:",omitempty"`
	Sent     int       `json:",omitempty"` // reminders without an answer
	Asked    time.Time `json:",omitzero"`  // when the last of them went
	Peril    string    `json:",omitempty"`
	PerilAt  time.Time `json:",omitzero"`
	Bottle   string    `json:",omitempty"`
	Mixed    Day       `json:",omitempty"` // the bottle, while it works
	Bed      string    `json:",omitempty"`
	BedDay   Day       `json:",omitempty"`
	Fed      Day       `json:",omitempty"`
	LastDay  Day       `json:",omitempty"`
}

// Tale is what became of one heap, in the figures that teach something.
type Tale struct {
	Heap    HeapID
	Stage   Stage
	Path    Path      `json:",omitempty"`
	Left    Stage     `json:",omitempty"` // where it was given up
	Mix     string    `json:",omitempty"` // class of compost.Mix's C:N, "" = not known
	Starter Starter   `json:",omitempty"`
	Begun   Day       `json:",omitempty"`
	Built   Day       `json:",omitempty"` // first round
	Check   string    `json:",omitempty"` // the first stick from day 3 on
	HotIn   int       `json:",omitempty"` // round in which it was hot
	Heat    FirstHeat `json:",omitzero"`
	Rounds  int       `json:",omitempty"`
	Turns   int       `json:",omitempty"`
	Opened  Day       `json:",omitempty"`
	InKg    float64   `json:",omitempty"` // weighed or estimated stuff
	FeedKg  float64   `json:",omitempty"` // sieved compost
	OutKg   float64   `json:",omitempty"` // harvest
	LastDay Day       `json:",omitempty"`
	Silent  bool      `json:",omitempty"`
	Stars   int       `json:",omitempty"`
}

// CardOf makes a farmer's card.
func CardOf(s State) Card {
	p := s.Person
	c := Card{Person: p.ID, Name: p.Name, Lang: p.Lang, Area: p.Area, Town: p.Town, Zone: p.ZoneName, Keeper: p.Keeper, Nameless: p.Nameless,
		Asking: p.Asking, PutOff: p.PutOff, Seen: p.Seen, Stopped: p.Stopped, Barred: p.Barred,
		Peril: p.Peril, PerilAt: p.PerilAt, Since: p.Since, Hours: p.Habit.Hours, Roles: p.Roles}
	for _, h := range s.Heaps {
		if h.Active() {
			c.Heaps = append(c.Heaps, heapCard(h))
		}
		if h.ID != 0 && !h.Gone { // its tale goes on in another's card
			c.Tales = append(c.Tales, taleOf(h, p.Measures))
		}
	}
	return c
}

func heapCard(h Heap) HeapCard {
	c := HeapCard{Heap: h.ID, Stage: h.Stage, Path: h.Path, Begun: h.Begun, Round: h.Round, Built: h.Built, First: h.First,
		ColdRuns: h.ColdRuns, Redo: h.Redo, Turns: len(h.Turns), Silent: h.Silent(), Peril: h.Peril, PerilAt: h.PerilAt,
		Bottle: h.Bottle.State, Bed: h.Bed, BedDay: h.BedDay, Fed: h.Fed, LastDay: h.LastDay}
	if h.Bottle.Working() && h.Built == 0 {
		c.Mixed = h.Bottle.Mixed
	}
	if h.Built != 0 {
		c.Until = h.Built + h.checkUntil()
	}
	if r, ok := h.Read(); ok {
		c.Warmth, c.ReadDay = r.Warmth, r.Day
	}
	if w := h.Windows(); len(w) > 0 {
		c.Next, c.From, c.Latest = w[0].Task, w[0].From, w[0].Latest
	}
	for t, a := range h.Acts {
		if t != TaskShake || a.Sent >= shakePatience {
			c.Sent, c.Asked = max(c.Sent, a.Sent), later(c.Asked, a.Asked)
		}
	}
	return c
}

func taleOf(h Heap, measures compost.Calibration) Tale {
	t := Tale{Heap: h.ID, Stage: h.Stage, Path: h.Path, Left: h.Left, Starter: h.Starter, Begun: h.Begun, Built: h.First,
		Check: h.Check, HotIn: h.HotIn, Heat: h.Heat, Rounds: h.Round, Turns: len(h.Turns), Opened: h.FirstOpen,
		FeedKg: h.PassedKg, OutKg: h.YieldKg, LastDay: h.LastDay, Silent: h.Active() && h.Silent(), Stars: h.Stars}
	if mix, ok := compost.Blend(portions(h), measures); ok {
		t.InKg = mix.Kg.Likely
		if mix.CN.Likely > 0 {
			t.Mix = string(cmp.Or(compost.JudgeCN(mix.CN.Likely), compost.MixOK))
		}
	}
	return t
}
