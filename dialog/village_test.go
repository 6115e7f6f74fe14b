package dialog

import (
	"slices"
	"strconv"
	"testing"
	"time"

	_ "time/tzdata"
)

// village is the plainest world a conversation can live in: diaries in memory,
// a clock that jumps from due moment to due moment. It is what the store is
// checked against, and what the properties of this package play in.
type village struct {
	t       testing.TB
	now     time.Time
	diaries map[PersonID][]Entry
	talks   map[PersonID]Talk
	states  map[PersonID]State // kept folds, made anew after a struck line
	heard   map[PersonID][]Letter
	ids     int64
	chances int
	check   func(PersonID, Letter)
}

func newVillage(t testing.TB, at string) *village {
	now, err := time.Parse(time.RFC3339, at)
	if err != nil {
		t.Fatal(err)
	}
	return &village{t: t, now: now, diaries: map[PersonID][]Entry{}, talks: map[PersonID]Talk{},
		states: map[PersonID]State{}, heard: map[PersonID][]Letter{}, ids: 1000}
}

func (v *village) Diary(id PersonID) []Entry { return slices.Clone(v.diaries[id]) }

func (v *village) State(id PersonID) (State, bool) {
	s, ok := v.states[id]
	s.Talk = v.talks[id]
	return s, ok
}

func (v *village) Group(id GroupID) (Group, bool) {
	var g Group
	for _, p := range v.people() {
		for _, made := range v.states[p].Person.Made {
			if made.ID == id {
				g = made
			}
		}
	}
	for _, p := range v.people() {
		for _, m := range v.states[p].Person.Roles {
			if m.Group == id && m.Role != Farmer {
				g.Staff = append(g.Staff, Membership{Person: p, Group: id, Role: m.Role})
			}
		}
	}
	return g, g.ID != 0
}

func (v *village) people() []PersonID {
	var ids []PersonID
	for id := range v.states {
		ids = append(ids, id)
	}
	slices.Sort(ids)
	return ids
}

func (v *village) Members(id GroupID) []Card {
	var cards []Card
	for _, p := range v.people() {
		if slices.ContainsFunc(v.states[p].Person.Roles, func(m Membership) bool { return m.Group == id && m.Role != Officer }) {
			cards = append(cards, CardOf(v.states[p]))
		}
	}
	return cards
}

func (v *village) Invite(code string) (Invite, bool) {
	for _, p := range v.people() {
		for _, inv := range v.states[p].Person.Invites {
			if inv.Code == code {
				return inv, true
			}
		}
	}
	return Invite{}, false
}

// Sending: letters arrive at once in the village, save those that wait.
func (v *village) Sending(batch string) (waiting, refused int) {
	for _, letters := range v.heard {
		for _, l := range letters {
			if l.Batch == batch && l.After.After(v.now) {
				waiting++
			}
		}
	}
	return waiting, 0
}

func (v *village) NewID() int64 { v.ids++; return v.ids }

func (v *village) Chance(n int) string {
	v.chances++
	return ("code" + strconv.Itoa(v.chances) + "xxxxxxxxxxxxxxxxxxxxxxxxxxxx")[:n]
}

// step runs one input of one person and keeps what follows.
func (v *village) step(id PersonID, in Input) Answer {
	s, ok := v.states[id]
	if !ok {
		s = Fold(id, nil)
	}
	s.Talk, s.Register = v.talks[id], v
	a := Step(s, in, v.now)
	v.states[id] = s
	for _, e := range a.Entries {
		if e.Person == 0 {
			e.Person = id
		}
		v.keep(e)
	}
	v.talks[id] = a.Talk
	for _, t := range a.Talks {
		v.talks[t.Person] = t.Talk
	}
	for _, l := range a.Letters {
		if l.Opens != nil {
			v.talks[l.To] = WithQuestion(v.talks[l.To], *l.Opens)
		}
		if v.check != nil {
			v.check(l.To, l)
		}
		v.heard[l.To] = append(v.heard[l.To], l)
	}
	for _, batch := range a.Halt {
		for id, letters := range v.heard {
			v.heard[id] = slices.DeleteFunc(letters, func(l Letter) bool { return l.Batch == batch && l.After.After(v.now) })
		}
	}
	for _, gone := range a.Forget {
		delete(v.diaries, gone)
		delete(v.states, gone)
		delete(v.talks, gone)
	}
	return a
}

func (v *village) keep(e Entry) {
	v.ids++
	e.ID = EntryID(v.ids)
	v.diaries[e.Person] = append(v.diaries[e.Person], e)
	s, ok := v.states[e.Person]
	if !ok {
		s = Fold(e.Person, nil)
	}
	if _, struck := e.Event.(Struck); struck {
		v.states[e.Person] = Fold(e.Person, v.diaries[e.Person])
		return
	}
	v.states[e.Person] = s.After(e)
}

func (v *village) says(id PersonID, line string) Answer {
	return v.step(id, Message{Kind: Text, Text: line})
}

// wait lets time pass, waking whoever has something due on the way.
func (v *village) wait(d time.Duration) {
	end := v.now.Add(d)
	for {
		next := end.Add(time.Nanosecond)
		for _, id := range v.people() {
			for _, due := range Plan(v.states[id]) {
				if due.At.Before(next) {
					next = due.At
				}
			}
		}
		if next.After(end) {
			break
		}
		if next.After(v.now) {
			v.now = next
		}
		for _, id := range v.people() {
			var due []Due
			for _, d := range Plan(v.states[id]) {
				if !d.At.After(v.now) {
					due = append(due, d)
				}
			}
			if len(due) > 0 {
				if a := v.step(id, Reminder{Due: due}); len(a.Entries) == 0 {
					v.t.Fatalf("the clock spoke of %v and nothing came of it", due)
				}
			}
		}
	}
	v.now = end
}

// last is the last letter a person got.
func (v *village) last(id PersonID) Letter {
	if l := v.heard[id]; len(l) > 0 {
		return l[len(l)-1]
	}
	return Letter{}
}

// tells keeps facts that a farmer told of heap 1 so many days ago.
func (v *village) tells(id PersonID, daysAgo int, facts ...Event) {
	for _, e := range facts {
		line := v.entry(id, e)
		line.Heap, line.By, line.Told = 1, id, 1
		line.At, line.Noted, line.Day = line.At.AddDate(0, 0, -daysAgo), line.Noted.AddDate(0, 0, -daysAgo), line.Day-Day(daysAgo)
		v.keep(line)
	}
}
