package dialog

import "time"

// Card is what an officer's board needs of one farmer, made from the diary
// whenever it changes so that a morning board never folds hundreds of diaries.
type Card struct {
	Person          PersonID
	Name            string
	Lang            string
	Area            string
	Zone            string
	Asking          time.Time    `json:",omitzero"`
	PutOff          Day          `json:",omitempty"`
	Seen            time.Time    `json:",omitzero"`
	Stopped, Barred bool         `json:",omitempty"`
	Roles           []Membership `json:",omitempty"`
	Heaps           []HeapCard   `json:",omitempty"`
}

// HeapCard is the part of a card that one heap fills.
type HeapCard struct {
	Heap     HeapID
	Stage    Stage
	Round    int       `json:",omitempty"`
	Built    Day       `json:",omitempty"`
	ColdRuns int       `json:",omitempty"`
	Warmth   string    `json:",omitempty"`
	ReadDay  Day       `json:",omitempty"`
	Next     Task      `json:",omitempty"`
	From     Day       `json:",omitempty"`
	Latest   Day       `json:",omitempty"`
	Silent   bool      `json:",omitempty"`
	Sent     int       `json:",omitempty"` // reminders without an answer
	Peril    string    `json:",omitempty"`
	PerilAt  time.Time `json:",omitzero"`
	Bottle   string    `json:",omitempty"`
	Bed      string    `json:",omitempty"`
	LastDay  Day       `json:",omitempty"`
}

// CardOf makes a farmer's card.
func CardOf(s State) Card {
	p := s.Person
	c := Card{Person: p.ID, Name: p.Name, Lang: p.Lang, Area: p.Area, Zone: p.ZoneName, Asking: p.Asking,
		PutOff: p.PutOff, Seen: p.Seen, Stopped: p.Stopped, Barred: p.Barred, Roles: p.Roles}
	for _, h := range s.Active() {
		hc := HeapCard{Heap: h.ID, Stage: h.Stage, Round: h.Round, Built: h.Built, ColdRuns: h.ColdRuns,
			Silent: h.Silent(), Peril: h.Peril, PerilAt: h.PerilAt, Bottle: h.Bottle.State, Bed: h.Bed, LastDay: h.LastDay}
		if r, ok := h.Read(); ok {
			hc.Warmth, hc.ReadDay = r.Warmth, r.Day
		}
		if w := h.Windows(); len(w) > 0 {
			hc.Next, hc.From, hc.Latest = w[0].Task, w[0].From, w[0].Latest
		}
		for _, a := range h.Acts {
			hc.Sent = max(hc.Sent, a.Sent)
		}
		c.Heaps = append(c.Heaps, hc)
	}
	return c
}
