package store

import (
	"runtime"
	"slices"
	"time"

	"warmstick/dialog"
)

// foresight thinks about those who are due next while the disk takes a batch of
// reminders, for which the writer can only wait (a quarter of a reminder's time).
// It counts only when nobody's page was changed before its turn came.
type foresight struct {
	*ahead
	people []dialog.PersonID
	turn   int // of the shelf, when nobody was changed but by the transaction it was made in
}

// foresee begins with the people due after those of calls, at the end of their
// transaction; what it holds true of them is of no use if that does not hold.
func (db *DB) foresee(now time.Time, calls []Call) error {
	if len(calls) == 1 || runtime.GOMAXPROCS(0) == 1 || slices.ContainsFunc(calls, func(c Call) bool { return !reminds(c) }) {
		return nil
	}
	people, err := db.nextDue(now, len(calls))
	if err != nil || len(people) < 2 {
		return err
	}
	next := make([]Call, len(people))
	for i, id := range people {
		next[i] = Call{Person: id, In: dialog.Reminder{}}
	}
	f := &foresight{&ahead{db: db, now: now}, people, db.shelf.turn + 1}
	if err := f.gather(next); err != nil {
		return err
	}
	db.foreseen = f
	f.begin()
	return nil
}

// foreseenFor gives what was thought early about calls, if they are those foreseen.
func (db *DB) foreseenFor(now time.Time, calls []Call) *ahead {
	f := db.foreseen
	if f == nil {
		return nil
	}
	fits := f.turn == db.shelf.turn && f.now.Equal(now) && slices.EqualFunc(calls, f.people, func(c Call, id dialog.PersonID) bool {
		return reminds(c) && c.Person == id
	})
	if !fits {
		db.forgetForeseen()
		return nil
	}
	db.foreseen = nil
	return f.ahead
}

func (db *DB) forgetForeseen() {
	if db.foreseen != nil {
		db.foreseen.end()
		db.foreseen = nil
	}
}

// reminds says whether a call is a reminder and nothing else.
func reminds(c Call) bool {
	_, ok := c.In.(dialog.Reminder)
	return ok && c.Person != 0 && c.Inbox == 0
}
