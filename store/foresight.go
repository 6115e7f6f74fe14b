package store

import (
	"slices"
	"time"

	"warmstick/dialog"
)

// foresight thinks about those who are due next while the disk takes a batch of
// reminders, for which the writer can only wait (a third of a reminder's time).
// It counts only when nobody's page was changed before its turn came.
type foresight struct {
	*ahead
	people []dialog.PersonID
	limit  int // of whom no more were looked for
	turn   int // of the shelf, when nobody was changed but by the transaction it was made in
}

// foresee begins with the people due after those of calls, at the end of their
// transaction; what it holds true of them is of no use if that does not hold.
func (db *DB) foresee(now time.Time, calls []Call) error {
	if len(calls) == 1 || slices.ContainsFunc(calls, func(c Call) bool { return !reminds(c) }) {
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
	a, err := db.ponder(now, next)
	if err == nil {
		db.foreseen = &foresight{a, people, len(calls), db.shelf.turn + 1}
	}
	return err
}

// dueForeseen gives those due next where they have been looked up already.
func (db *DB) dueForeseen(now time.Time, limit int) []dialog.PersonID {
	if f := db.foreseen; f != nil && f.holds(now) && f.limit == limit {
		return slices.Clone(f.people)
	}
	return nil
}

// holds says whether nobody's page was changed since, and the moment is the same.
func (f *foresight) holds(now time.Time) bool {
	return f.turn == f.db.shelf.turn && f.now.Equal(at(ms(now)))
}

// foreseenFor gives what was thought early about calls, if they are those foreseen.
func (db *DB) foreseenFor(now time.Time, calls []Call) *ahead {
	f := db.foreseen
	if f == nil {
		return nil
	}
	fits := f.holds(now) && slices.EqualFunc(calls, f.people, func(c Call, id dialog.PersonID) bool {
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
