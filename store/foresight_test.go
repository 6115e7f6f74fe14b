package store

import (
	"fmt"
	"runtime"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"warmstick/dialog"
)

// foreseeing opens a file with farmers who have something due at the moment it gives.
// The clock says how many lines it found in the diary of whom it speaks to.
func foreseeing(t *testing.T, farmers int) (*DB, time.Time) {
	t.Helper()
	if runtime.GOMAXPROCS(0) == 1 {
		t.Skip("nobody thinks ahead on one core")
	}
	db := open(t, Options{Pages: 1, Step: func(s dialog.State, in dialog.Input, now time.Time) dialog.Answer {
		a := echo(s, in, now)
		if _, ok := in.(dialog.Reminder); ok {
			a.Letters[0].Text = fmt.Sprintf("%d knows %d", s.Person.ID, s.Person.Told)
			a.Letters[0].Kind = dialog.Reply // goes out at once
		}
		return a
	}})
	for chat := range int64(farmers) {
		for _, text := range []string{"agree", "heap", "build"} {
			tell(t, db, noon, chat+1, text)
		}
	}
	settleAll(t, db, noon)
	return db, noon.AddDate(0, 0, 5)
}

// speak is one step of the clock's morning.
func speak(t *testing.T, db *DB, now time.Time) {
	t.Helper()
	people, err := db.NextDue(t.Context(), now, 2)
	require.NoError(t, err)
	var calls []Call
	for _, id := range people {
		calls = append(calls, Call{Person: id, In: dialog.Reminder{}})
	}
	_, err = db.Converse(t.Context(), now, calls...)
	require.NoError(t, err)
}

func TestThoseDueNextAreForeseen(t *testing.T) {
	db, now := foreseeing(t, 6)
	speak(t, db, now)
	require.Equal(t, []dialog.PersonID{3, 4}, db.foreseen.people)
	speak(t, db, now)
	require.Equal(t, []dialog.PersonID{5, 6}, db.foreseen.people)
	speak(t, db, now)
	require.Nil(t, db.foreseen, "nobody is left")
	require.Equal(t, []string{"1 knows 3", "2 knows 3", "3 knows 3", "4 knows 3", "5 knows 3", "6 knows 3"}, letters(t, db, now))
}

// What was foreseen does not count once anything was written after it.
func TestAWordBetweenIsHeard(t *testing.T) {
	db, now := foreseeing(t, 4)
	speak(t, db, now)
	tell(t, db, now, 3, "it rains")
	settleAll(t, db, now)
	speak(t, db, now)
	require.Equal(t, []string{"3 knows 4", "4 knows 3"}, letters(t, db, now))
}

func TestWhoIsDeletedIsNotForeseen(t *testing.T) {
	db, now := foreseeing(t, 4)
	speak(t, db, now)
	settleAll(t, db, now)
	require.NoError(t, db.Forget(t.Context(), now, 3))
	outcomes, err := db.Converse(t.Context(), now, Call{Person: 3, In: dialog.Reminder{}}, Call{Person: 4, In: dialog.Reminder{}})
	require.NoError(t, err)
	require.ErrorIs(t, outcomes[0].Err, ErrHandled)
	require.Equal(t, []string{"4 knows 3"}, letters(t, db, now))
}

// Nor when the transaction it was made in did not hold, or another moment has come.
func TestForesightGoesWithItsTransaction(t *testing.T) {
	db, now := foreseeing(t, 4)
	db.broken = func(string) error { return errPower }
	_, err := db.Converse(t.Context(), now, Call{Person: 1, In: dialog.Reminder{}}, Call{Person: 2, In: dialog.Reminder{}})
	require.ErrorIs(t, err, errPower)
	require.Nil(t, db.foreseen)
	db.broken = nil
	speak(t, db, now)
	require.NotNil(t, db.foreseen)
	require.Nil(t, db.foreseenFor(now.Add(time.Hour), []Call{{Person: 3, In: dialog.Reminder{}}, {Person: 4, In: dialog.Reminder{}}}))
	require.Nil(t, db.foreseen, "it is not kept for later")
	speak(t, db, now)
	require.Equal(t, []string{"1 knows 3", "2 knows 3", "3 knows 3", "4 knows 3"}, letters(t, db, now))
}
