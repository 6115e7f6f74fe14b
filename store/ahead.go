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
	cold   row  // of one who is not at hand, to be unpacked first
	state  dialog.State
	in     dialog.Input
	once   sync.Once
	done   atomic.Bool
	page   *page // what cold was unpacked to; nil when it could not be
	asked  unasked
	spoke  bool // there is an answer
	answer script
	err    error
}

// think begins with calls; the caller ends it.
func (db *DB) think(now time.Time, calls []Call) (*ahead, error) {
	if a := db.foreseenFor(now, calls); a != nil {
		return a, nil
	}
	return db.ponder(now, calls)
}

// ponder begins with calls whoever foresaw them; with one, or on one core, there is
// nothing to begin.
func (db *DB) ponder(now time.Time, calls []Call) (*ahead, error) {
	a := &ahead{db: db, now: now}
	if len(calls) == 1 || runtime.GOMAXPROCS(0) == 1 {
		return a, nil
	}
	if err := a.gather(calls); err != nil {
		return nil, err
	}
	a.begin()
	return a, nil
}

// gather lays out what there is to think about: of each who speaks, the first call.
// A stranger waits for their turn.
func (a *ahead) gather(calls []Call) error {
	if len(calls) > len(a.db.paper) {
		a.db.paper = make([]thought, len(calls))
	}
	a.thoughts = a.db.paper[:len(calls)]
	first := make(map[dialog.PersonID]bool, len(calls))
	for i, c := range calls {
		p, cold, err := a.db.atHand(c)
		if err != nil {
			return err
		}
		t := &a.thoughts[i]
		switch {
		case p != nil && !first[p.state.Person.ID]:
			first[p.state.Person.ID] = true
			t.state = p.state
			t.in, t.early = p.hears(c.In, a.now)
		case cold != nil && !first[dialog.PersonID(cold.int(0))]:
			first[dialog.PersonID(cold.int(0))] = true
			t.cold, t.in, t.early = cold, c.In, c.In != nil
		}
	}
	return nil
}

// begin sets the other cores to work.
func (a *ahead) begin() {
	for range min(runtime.GOMAXPROCS(0), len(a.thoughts)) - 1 {
		a.working.Go(func() {
			for a.more() {
			}
		})
	}
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
		defer t.done.Store(true)
		t.spoke = t.cold == nil || a.unpack(t)
		if t.spoke {
			t.answer, t.err = a.db.ask(t.state, &t.asked, t.in, a.now)
		}
	})
}

// unpack makes a page of a cold row and says whether there is anything to answer.
// Who cannot be unpacked is left to load.
func (a *ahead) unpack(t *thought) (hears bool) {
	p, err := unpack(t.cold)
	if err != nil {
		return false
	}
	t.page, t.state = p, p.state
	t.in, hears = p.hears(t.in, a.now)
	return hears
}

// await finishes the i-th thought. Until another core is done with it, the writer
// helps with the calls after it.
func (a *ahead) await(i int) *thought {
	t := &a.thoughts[i]
	if i < int(a.next.Load()) {
		for !t.done.Load() && a.more() {
		}
	}
	a.finish(t)
	return t
}

// lay puts the page of who makes the i-th call on the desk, if it was not at hand.
func (a *ahead) lay(i int) {
	if len(a.thoughts) == 0 || a.thoughts[i].cold == nil || !a.thoughts[i].early {
		return
	}
	// Somebody may have written to them meanwhile, and have loaded them.
	if p := a.await(i).page; p != nil && a.db.shelf.take(p.state.Person.ID) == nil {
		a.db.shelf.lay(p)
	}
}

// of gives what was thought about a call, if it counts in its turn.
func (a *ahead) of(i int, p *page) (answer script, err error, counts bool) {
	if len(a.thoughts) == 0 || !a.thoughts[i].early || p.told {
		return script{}, nil, false
	}
	t := a.await(i)
	return t.answer, t.err, t.spoke && !t.asked.any
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
	a.thoughts = nil
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
