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
// the time. An answer does not count when its moment was too early: when an
// earlier call of the same transaction wrote to the person meanwhile, or when the
// conversation asked the register about others. Then it is thought anew in its turn.
type ahead struct {
	thoughts []*thought // nil = to be thought of in its turn
	next     atomic.Int64
	working  sync.WaitGroup
}

// thought is one call on its way to an answer. Whoever comes first, another core
// or the writer in its turn, thinks; the other waits for it.
type thought struct {
	once   sync.Once
	think  func() (dialog.Answer, error)
	early  unasked
	answer dialog.Answer
	err    error
}

func (t *thought) now() { t.once.Do(func() { t.answer, t.err = t.think() }) }

// think begins with calls; the caller ends it.
func (db *DB) think(now time.Time, calls []Call) (*ahead, error) {
	a := &ahead{thoughts: make([]*thought, len(calls))}
	cores := runtime.GOMAXPROCS(0)
	if len(calls) == 1 || cores == 1 {
		return a, nil
	}
	first := map[dialog.PersonID]bool{}
	for i, c := range calls {
		p, err := db.known(c)
		if err != nil {
			return nil, err
		}
		if p == nil || first[p.state.Person.ID] {
			continue
		}
		first[p.state.Person.ID] = true
		in, ok := p.hears(c.In, now)
		if !ok {
			continue
		}
		t, state := &thought{}, p.state
		t.think = func() (dialog.Answer, error) { return db.ask(state, &t.early, in, now) }
		a.thoughts[i] = t
	}
	for range min(cores-1, len(calls)) {
		a.working.Go(a.work)
	}
	return a, nil
}

func (a *ahead) work() {
	for {
		i := int(a.next.Add(1)) - 1
		if i >= len(a.thoughts) {
			return
		}
		if t := a.thoughts[i]; t != nil {
			t.now()
		}
	}
}

// end waits for thoughts under way and begins no more.
func (a *ahead) end() {
	a.next.Store(int64(len(a.thoughts)))
	a.working.Wait()
}

// of gives what was thought early, if it counts in the person's turn.
func (t *thought) of(p *page) (answer dialog.Answer, err error, counts bool) {
	if t == nil || p.told {
		return dialog.Answer{}, nil, false
	}
	t.now()
	return t.answer, t.err, !t.early.asked
}

// unasked is the register of a thought that came early: it knows nothing yet, and
// remembers that it was asked.
type unasked struct{ asked bool }

func (u *unasked) Diary(dialog.PersonID) []dialog.Entry { u.asked = true; return nil }
func (u *unasked) State(dialog.PersonID) (dialog.State, bool) {
	u.asked = true
	return dialog.State{}, false
}
func (u *unasked) Group(dialog.GroupID) (dialog.Group, bool) {
	u.asked = true
	return dialog.Group{}, false
}
func (u *unasked) Members(dialog.GroupID) []dialog.Card  { u.asked = true; return nil }
func (u *unasked) Invite(string) (dialog.Invite, bool)   { u.asked = true; return dialog.Invite{}, false }
func (u *unasked) Sending(string) (waiting, refused int) { u.asked = true; return 0, 0 }
func (u *unasked) NewID() int64                          { u.asked = true; return 1 }
func (u *unasked) Chance(n int) string                   { u.asked = true; return "aaaaaaaaaaaaaaaa"[:min(n, 16)] }
