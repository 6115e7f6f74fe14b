package dialog

import (
	"time"

	"warmstick/dialog/phrases"
)

// Step reads one input and says what to write and what to send. It has no error
// result: what it cannot understand, it asks about.
func Step(s State, in Input, now time.Time) Answer {
	if s.Register == nil {
		s.Register = nobody{}
	}
	if s.Person.Helps != 0 {
		if a, ok := forOwner(s, in, now); ok {
			return a
		}
	}
	x := begin(s, now)
	x.meet(in)
	return x.answer()
}

// begin opens an exchange.
func begin(s State, now time.Time) *exchange {
	return &exchange{was: s, s: s, by: s.Person.ID, now: now, today: DayOf(now, s.Person.Zone()), open: s.Talk.Open}
}

// meet lets one input be heard.
func (x *exchange) meet(in Input) {
	x.arrived()
	switch in := in.(type) {
	case Message:
		x.hear(in)
	case Press:
		x.press(in.Button)
	case Reminder:
		x.remind(in.Due)
	case OfficerMade:
		x.appoint()
	case Barred:
		x.bar(in.Now)
	}
}

// exchange is one Step under way: the state as it changes, and what has been
// noted and said so far.
type exchange struct {
	was     State
	s       State
	by      PersonID // who speaks: the person, or a second phone of theirs
	tongue  string   // the language of that phone, where it is not the person's
	now     time.Time
	today   Day
	line    string // what the person wrote, for the rule against repeating
	entries []Entry
	told    int      // number of this message's lines; 0 until there is one
	open    Question // the question that will be open afterwards
	fresh   bool     // the open question was put just now and stands at the end
	led     bool     // it was said what comes next
	kind    LetterKind
	pieces  []piece
	breaks  int // the piece, from 1, that begins a new letter
	care    int // how many pieces, from the first, are safety words
	heap    HeapID
	letters []Letter
	forget  []PersonID
	halt    []string // announcements to take back
	talks   []TalkOf // conversations of others that change with this one
	asked   *piece   // the words that put the open question, where they are not its own
}

// piece is one sentence or two to the person who speaks.
type piece struct {
	key    string
	args   phrases.Args
	advice []string
	pic    *Picture
	file   *Enclosed
	apart  bool // begins a letter of its own
}

// note writes a line in the person's own diary, as told just now.
func (x *exchange) note(h HeapID, e Event) { x.noteOn(h, x.today, e) }

// noteOn writes a line for something that happened on an earlier day.
func (x *exchange) noteOn(h HeapID, day Day, e Event) {
	at := x.now
	if day != 0 && day < x.today {
		at = x.now.AddDate(0, 0, int(day-x.today))
	}
	if day == 0 || day > x.today {
		day = x.today
	}
	if x.told == 0 {
		x.told = x.s.Person.Told + 1
	}
	x.write(Entry{Person: x.s.Person.ID, Heap: h, At: at, Day: day, Noted: x.now, By: x.by, Told: x.told, Event: e})
}

// remark writes a line that undo does not reach.
func (x *exchange) remark(h HeapID, e Event) {
	x.write(Entry{Person: x.s.Person.ID, Heap: h, At: x.now, Day: x.today, Noted: x.now, By: x.by, Event: e})
}

// clock writes a line that nobody told.
func (x *exchange) clock(h HeapID, e Event) {
	x.write(Entry{Person: x.s.Person.ID, Heap: h, At: x.now, Day: x.today, Noted: x.now, Event: e})
}

func (x *exchange) write(e Entry) {
	x.entries = append(x.entries, e)
	x.s = x.s.After(e)
	if h := e.Heap; h != 0 {
		x.heap = h
	}
}

// noteFor writes a line in another person's diary, as told by this one.
func (x *exchange) noteFor(who PersonID, zone *time.Location, h HeapID, e Event) {
	x.entries = append(x.entries, Entry{Person: who, Heap: h, At: x.now, Day: DayOf(x.now, zone), Noted: x.now, By: x.by, Event: e})
}

// say adds a sentence to the reply.
func (x *exchange) say(key string, args phrases.Args, advice ...string) {
	x.pieces = append(x.pieces, piece{key: key, args: args, advice: advice, apart: x.breaks == len(x.pieces)+1})
}

// apart begins a new letter with the next sentence.
func (x *exchange) apart() { x.breaks = len(x.pieces) + 1 }

// show adds a picture to the last sentence said, for those who want pictures.
func (x *exchange) show(p Picture) {
	if n := len(x.pieces); n > 0 && !x.s.Person.NoPicture {
		x.pieces[n-1].pic = &p
	}
}

// advise adds advice classes to the last sentence said.
func (x *exchange) advise(classes ...string) {
	if n := len(x.pieces); n > 0 {
		x.pieces[n-1].advice = append(x.pieces[n-1].advice, classes...)
	}
}

// Heap is the named heap as it now is.
func (x *exchange) Heap(id HeapID) Heap {
	h, _ := x.s.Heap(id)
	return h
}

// lang is the language the person reads.
func (x *exchange) lang() string {
	if x.tongue != "" {
		return x.tongue
	}
	return langOf(x.s)
}

func langOf(s State) string {
	switch {
	case s.Person.Lang != "":
		return s.Person.Lang
	case s.Talk.Lang != "":
		return s.Talk.Lang
	}
	return phrases.Fallback
}

// nobody is the register of a world with one person in it.
type nobody struct{}

func (nobody) Diary(PersonID) []Entry       { return nil }
func (nobody) State(PersonID) (State, bool) { return State{}, false }
func (nobody) Group(GroupID) (Group, bool)  { return Group{}, false }
func (nobody) Members(GroupID) []Card       { return nil }
func (nobody) Invite(string) (Invite, bool) { return Invite{}, false }
func (nobody) Sending(string) (int, int)    { return 0, 0 }
func (nobody) NewID() int64                 { return 1 }
func (nobody) Chance(n int) string          { return "AAAAAAAAAAAAAAAA"[:min(n, 16)] }
