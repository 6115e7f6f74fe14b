package store

import (
	"context"
	"errors"
	"fmt"
	"runtime/debug"
	"time"

	"warmstick/dialog"
)

// Call is one input that waits for its answer, and where it came from.
type Call struct {
	Chat   int64           // who speaks; a chat never heard of is a stranger
	Person dialog.PersonID // who speaks, when there is no chat to go by
	In     dialog.Input    // a Reminder is filled with what is due
	Inbox  int64           // the update it came with, 0 = none
	// Else is heard instead when In breaks the conversation; nil = nothing.
	Else dialog.Input
	// Spoilt says why the update could not be read; then nothing else happens.
	Spoilt string
	// Hushed keeps plain replies back: a later line of the same chat waits, and
	// one answer to the whole is enough. Care and words to others still go.
	Hushed bool
}

// Outcome is what became of a call.
type Outcome struct {
	Person  dialog.PersonID
	Letters int
	Err     error // ErrHandled, or a *Broken conversation
}

// Broken is a conversation that panicked. It holds where; what the panic said
// only in a file that is thrown away, as it may quote a person.
type Broken struct{ Where, Said string }

func (b *Broken) Error() string { return "the conversation broke off: " + b.Where + b.Said }

// Converse lets people speak, one after the other, in one transaction: the
// states are loaded, the conversation decides, and the diary, letters, due rows
// and handled marks are written. When it returns an error nothing was written.
// A call whose conversation breaks is put aside and the rest hold.
func (db *DB) Converse(ctx context.Context, now time.Time, calls ...Call) ([]Outcome, error) {
	outcomes := make([]Outcome, len(calls))
	now = at(ms(now))
	err := db.write(ctx, "converse", func() error {
		early, err := db.think(now, calls)
		if err != nil {
			return err
		}
		defer early.end()
		for i, c := range calls {
			o, err := db.converse(now, c, early, i)
			if err != nil {
				return err
			}
			outcomes[i] = o
			db.packSome()
		}
		early.end()
		return db.foresee(now, calls)
	})
	if err != nil {
		return nil, fmt.Errorf("keep the answers to %d calls: %w", len(calls), plain(err))
	}
	return outcomes, nil
}

// converse answers one call in its turn, the i-th of those thought about early.
func (db *DB) converse(now time.Time, c Call, early *ahead, i int) (Outcome, error) {
	if c.Inbox != 0 {
		n, err := db.stmts.exec(inboxDone, ms(now), c.Inbox)
		if err != nil {
			return Outcome{}, err
		}
		if n == 0 {
			return Outcome{Err: ErrHandled}, nil
		}
	}
	if c.In == nil { // not for us, or not to be read
		return Outcome{}, db.layAside(now, c)
	}
	early.lay(i)
	p, err := db.speaker(c)
	if err != nil {
		return Outcome{}, err
	}
	if p == nil {
		if c.Inbox != 0 {
			_, err = db.stmts.exec(inboxWipe, c.Inbox)
		}
		return Outcome{Err: ErrHandled}, err
	}
	o := Outcome{Person: p.state.Person.ID}
	in, ok := p.hears(c.In, now)
	if !ok {
		return Outcome{Person: o.Person, Err: ErrHandled}, db.mend(p)
	}
	r := &register{db: db}
	answer, err, good := early.of(i, p)
	if !good {
		answer, err = db.ask(p.state, r, in, now)
	}
	if r.err != nil {
		return Outcome{}, r.err
	}
	if broken, ok := errors.AsType[*Broken](err); ok {
		o.Err = broken
		if err := db.setAside(now, p, c, broken); err != nil || c.Else == nil {
			return o, err
		}
		if answer, err = db.ask(p.state, r, c.Else, now); err != nil || r.err != nil {
			return o, r.err
		}
	}
	w := &writing{db: db, now: now, speaker: p, hushed: c.Hushed}
	if err := w.keep(answer); err != nil {
		return Outcome{}, err
	}
	if _, ok := in.(dialog.Reminder); ok && len(p.due(now)) > 0 {
		if err := db.push(p, now); err != nil {
			return Outcome{}, err
		}
	}
	if c.Inbox != 0 && p.unknown() {
		_, err = db.stmts.exec(inboxWipe, c.Inbox)
	}
	o.Letters = w.letters
	return o, err
}

// ask runs the conversation and turns a panic into an error.
func (db *DB) ask(s dialog.State, r dialog.Register, in dialog.Input, now time.Time) (a script, err error) {
	defer func() {
		cause := recover()
		if cause == nil {
			return
		}
		b := &Broken{Where: where(debug.Stack())}
		if db.loose {
			b.Said = fmt.Sprint(": ", cause)
		}
		err = b
	}()
	s.Register = r
	return scriptOf(db.step(s, in, now)), nil
}

// setAside marks what broke the conversation: the update is spoiled, a due row
// is looked at again in an hour.
func (db *DB) setAside(now time.Time, p *page, c Call, broken *Broken) error {
	if c.Inbox != 0 {
		if _, err := db.stmts.exec(inboxSpoil, ms(now), broken.Error(), c.Inbox); err != nil {
			return err
		}
	}
	if _, ok := c.In.(dialog.Reminder); ok {
		return db.push(p, now)
	}
	return nil
}

// layAside marks an update as handled that nobody is to hear.
func (db *DB) layAside(now time.Time, c Call) error {
	if c.Inbox == 0 {
		return nil
	}
	if c.Spoilt != "" {
		_, err := db.stmts.exec(inboxSpoil, ms(now), c.Spoilt, c.Inbox)
		return err
	}
	_, err := db.stmts.exec(inboxWipe, c.Inbox) // what strangers say in their groups is not ours to keep
	return err
}

// lookAgain is how long a due row rests that is still due after it was spoken of. It
// should not happen; without the rest it would be looked at for ever.
const lookAgain = time.Hour

func (db *DB) push(p *page, now time.Time) error {
	_, err := db.stmts.exec(duePush, ms(now.Add(lookAgain)), int64(p.state.Person.ID), ms(now))
	return err
}

// due lists the person's due rows whose moment has come.
func (p *page) due(now time.Time) []dialog.Due {
	var due []dialog.Due
	for _, d := range p.plan {
		if !d.At.After(now) {
			due = append(due, d)
		}
	}
	return due
}

// hears fills a reminder with what is due; it says no when nothing is.
func (p *page) hears(in dialog.Input, now time.Time) (dialog.Input, bool) {
	if _, ok := in.(dialog.Reminder); !ok {
		return in, in != nil
	}
	due := p.due(now)
	return dialog.Reminder{Due: due}, len(due) > 0
}

// unknown says whether nothing of this person may be kept but chat and language.
func (p *page) unknown() bool {
	return p.state.Person.Consent == "" && !p.state.Person.Appointed
}

// known finds the page of who speaks; nil for a stranger.
func (db *DB) known(c Call) (*page, error) {
	if c.Person != 0 {
		return db.page(c.Person)
	}
	return db.pageByChat(c.Chat)
}

// speaker finds the page of who speaks and opens one for a stranger; not for one
// who only shuts the door, as somebody does who has just been deleted.
func (db *DB) speaker(c Call) (*page, error) {
	p, err := db.known(c)
	if p != nil || err != nil || c.Person != 0 {
		return p, err
	}
	if _, ok := c.In.(dialog.Barred); ok {
		return nil, nil
	}
	db.count.person++
	return db.newPage(dialog.PersonID(db.count.person), c.Chat)
}

func (db *DB) newPage(id dialog.PersonID, chat int64) (*page, error) {
	if _, err := db.stmts.exec(personAdd, int64(id), chat); err != nil {
		return nil, err
	}
	db.count.person = max(db.count.person, int64(id))
	return db.shelf.lay(&page{chat: chat, state: dialog.Fold(id, nil), fresh: true}), nil
}
