package store

import (
	"runtime"
	"sync"
	"sync/atomic"
	"time"

	"warmstick/dialog"
)

// ahead thinks about the calls of a transaction on the other cores, while the
// writer keeps the answers one after the other. A conversation is a pure function
// of a state that does not change under it, so thinking early changes nothing but
// the time. An answer does not count when it came too early: when an earlier call
// of the same transaction wrote to the person meanwhile, or when the conversation
// asked the register about others. Then it is thought anew in its turn.
type ahead struct {
	db       *DB
	now      time.Time
	thoughts []thought // one for each call
	next     atomic.Int64
	working  sync.WaitGroup
}

// thought is one call on its way to an answer. Whoever comes first, another core
// or the writer in its turn, thinks; the other waits.
type thought struct {
	early  bool // may be thought of before its turn
	state  dialog.State
	in     dialog.Input
	once   sync.Once
	done   atomic.Bool
	asked  unasked
	answer dialog.Answer
	err    error
}

// think begins with calls; the caller ends it.
func (db *DB) think(now time.Time, calls []Call) (*ahead, error) {
	a := &ahead{db: db, now: now}
	cores := runtime.GOMAXPROCS(0)
	if len(calls) == 1 || cores == 1 {
		return a, nil
	}
	if len(calls) > len(db.paper) {
		db.paper = make([]thought, len(calls))
	}
	a.thoughts = db.paper[:len(calls)]
	if err := db.recall(calls); err != nil {
		return nil, err
	}
	first := make(map[dialog.PersonID]bool, len(calls))
	for i, c := range calls {
		p, err := db.known(c)
		if err != nil {
			return nil, err
		}
		if p == nil || first[p.state.Person.ID] {
			continue // a stranger, or one who speaks again after this
		}
		first[p.state.Person.ID] = true
		if in, ok := p.hears(c.In, now); ok {
			t := &a.thoughts[i]
			t.early, t.state, t.in = true, p.state, in
		}
	}
	for range min(cores, len(calls)) - 1 {
		a.working.Go(func() {
			for a.more() {
			}
		})
	}
	return a, nil
}

// more thinks about the next call, if there is one.
func (a *ahead) more() bool {
	i := int(a.next.Add(1)) - 1
	if i >= len(a.thoughts) {
		return false
	}
	if a.thoughts[i].early {
		a.finish(&a.thoughts[i])
	}
	return true
}

func (a *ahead) finish(t *thought) {
	t.once.Do(func() {
		t.answer, t.err = a.db.ask(t.state, &t.asked, t.in, a.now)
		t.done.Store(true)
	})
}

// of gives what was thought about a call, if it counts in its turn. Until another
// core is done with it, the writer helps with the calls after it.
func (a *ahead) of(i int, p *page) (answer dialog.Answer, err error, counts bool) {
	if len(a.thoughts) == 0 || !a.thoughts[i].early || p.told {
		return dialog.Answer{}, nil, false
	}
	t := &a.thoughts[i]
	if i < int(a.next.Load()) {
		for !t.done.Load() && a.more() {
		}
	}
	a.finish(t)
	return t.answer, t.err, !t.asked.any
}

// paperKept is the most thoughts for which room is kept from one batch to the next,
// more than the desk takes at once. It saves a tenth of what a message allocates.
const paperKept = 128

// end waits for thoughts under way and begins no more.
func (a *ahead) end() {
	a.next.Store(int64(len(a.thoughts)))
	a.working.Wait()
	clear(a.thoughts)
	if len(a.thoughts) > paperKept {
		a.db.paper = nil
	}
}

// unasked is the register of a thought that came early: it knows nothing yet, and
// remembers that it was asked anything.
type unasked struct{ any bool }

var _ dialog.Register = (*unasked)(nil)

func (u *unasked) Diary(dialog.PersonID) []dialog.Entry { u.any = true; return nil }
func (u *unasked) State(dialog.PersonID) (s dialog.State, ok bool) {
	u.any = true
	return s, false
}
func (u *unasked) Group(dialog.GroupID) (g dialog.Group, ok bool) {
	u.any = true
	return g, false
}
func (u *unasked) Members(dialog.GroupID) []dialog.Card { u.any = true; return nil }
func (u *unasked) Invite(string) (i dialog.Invite, ok bool) {
	u.any = true
	return i, false
}
func (u *unasked) Sending(string) (waiting, refused int) { u.any = true; return 0, 0 }
func (u *unasked) NewID() int64                          { u.any = true; return 1 }
func (u *unasked) Chance(n int) string                   { u.any = true; return "aaaaaaaaaaaaaaaa"[:min(n, 16)] }
