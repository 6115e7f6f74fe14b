package store

import (
	"database/sql"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"warmstick/dialog"
)

// Rare things that a file must bear.

// look opens a file from outside, as another program would.
func look(t *testing.T, db *DB) *sql.DB {
	t.Helper()
	pool, err := sql.Open("sqlite", address(db.Path())+"?_pragma=busy_timeout(5000)&_pragma=query_only(1)")
	require.NoError(t, err)
	t.Cleanup(func() { pool.Close() })
	return pool
}

func count(t *testing.T, db *DB, query string) (n int) {
	t.Helper()
	require.NoError(t, look(t, db).QueryRow(query).Scan(&n))
	return n
}

func TestAGroupTakenBackIsGone(t *testing.T) {
	db := open(t, Options{})
	tell(t, db, noon, 1, "agree")
	tell(t, db, noon, 1, "invite")
	require.Equal(t, 3, count(t, db, `SELECT (SELECT count(*) FROM crew) + (SELECT count(*) FROM invite) + (SELECT count(*) FROM membership)`))
	tell(t, db, noon, 1, "undo")
	require.Zero(t, count(t, db, `SELECT (SELECT count(*) FROM crew) + (SELECT count(*) FROM invite) + (SELECT count(*) FROM membership) + (SELECT count(*) FROM card)`))
}

func TestAReminderThatBreaksRestsAnHour(t *testing.T) {
	db := open(t, Options{Step: func(s dialog.State, in dialog.Input, now time.Time) dialog.Answer {
		if _, ok := in.(dialog.Reminder); ok {
			panic("now")
		}
		return echo(s, in, now)
	}})
	tell(t, db, noon, 1, "agree")
	p := tell(t, db, noon, 1, "build").Person
	at := noon.AddDate(0, 0, 5)
	o, err := db.Converse(t.Context(), at, Call{Person: p, In: dialog.Reminder{}})
	require.NoError(t, err)
	require.ErrorContains(t, o[0].Err, "broke off")
	people, err := db.NextDue(t.Context(), at.Add(59*time.Minute), 10)
	require.NoError(t, err)
	require.Empty(t, people)
	for _, f := range Examine(t.Context(), at, db.Path()) {
		if f.What == "looked at in vain" {
			require.False(t, f.Well())
		}
	}
}

func TestCallsThatLeaveNoTrace(t *testing.T) {
	db := open(t, Options{})
	require.NoError(t, db.Receive(t.Context(), noon, []Raw{{ID: 1, Chat: 7, Body: []byte("{}")}}, 2))
	o, err := db.Converse(t.Context(), noon, Call{Chat: 7, Inbox: 1, In: dialog.Barred{Now: true}}, Call{}, Call{Person: 99, In: dialog.Reminder{}})
	require.NoError(t, err)
	require.ErrorIs(t, o[0].Err, ErrHandled)
	require.NoError(t, o[1].Err)
	require.ErrorIs(t, o[2].Err, ErrHandled)
	require.Zero(t, count(t, db, `SELECT count(*) FROM person`))
}

// Due rows that another program wrote are put right when their heap moves on.
func TestStrayDueRowsAreMendedOnTheWay(t *testing.T) {
	db := open(t, Options{})
	tell(t, db, noon, 1, "agree")
	tell(t, db, noon, 1, "build")
	_, err := db.stmts.once("DELETE FROM due")
	require.NoError(t, err)
	tell(t, db, noon.AddDate(0, 0, 1), 1, "build")
	drifts, err := Compare(t.Context(), db.Path())
	require.NoError(t, err)
	require.Empty(t, drifts)
}

// A struck line is in no snapshot, and a snapshot that cannot be read is none.
func TestASnapshotAfterAStruckLine(t *testing.T) {
	db := open(t, Options{})
	tell(t, db, noon, 1, "agree")
	tell(t, db, noon, 1, "heap")
	tell(t, db, noon, 1, "hello")
	p := tell(t, db, noon, 1, "undo").Person
	want, err := db.StateOf(t.Context(), p)
	require.NoError(t, err)
	require.NotZero(t, count(t, db, "SELECT count(fold) FROM person"))
	db.shelf.empty()
	got, err := db.StateOf(t.Context(), p)
	require.NoError(t, err)
	require.Equal(t, want.Heaps, got.Heaps)
	_, err = db.stmts.once("UPDATE person SET fold = x'7b'")
	require.NoError(t, err)
	db.shelf.empty()
	got, err = db.StateOf(t.Context(), p)
	require.NoError(t, err, "a snapshot that cannot be read is none")
	require.Equal(t, want.Heaps, got.Heaps)
	_, err = db.stmts.once("UPDATE person SET talk = x'7b'")
	require.NoError(t, err)
	db.shelf.empty()
	_, err = db.StateOf(t.Context(), p)
	require.ErrorContains(t, err, "talk of person 1")
	_, err = db.Newest(t.Context(), p, noon)
	require.Error(t, err)
}

func TestADriftIsTold(t *testing.T) {
	db := open(t, Options{})
	tell(t, db, noon, 1, "agree")
	_, err := db.stmts.once("INSERT INTO due VALUES (1, 1, 'dance', 1, 1, 1)")
	require.NoError(t, err)
	drifts, err := Compare(t.Context(), db.Path())
	require.NoError(t, err)
	require.Equal(t, []Drift{{Table: "due", Kept: 1}}, drifts)
	_, err = db.stmts.once("DROP TABLE card")
	require.NoError(t, err)
	_, err = Compare(t.Context(), db.Path())
	require.Error(t, err)
	list := Examine(t.Context(), noon, db.Path())
	require.False(t, list[len(list)-1].Well())
	_, err = Open(t.Context(), db.Path(), Options{})
	require.ErrorContains(t, err, "no such table")
}

func TestWhatWasPutAsideIsCounted(t *testing.T) {
	db := open(t, Options{})
	require.NoError(t, db.Receive(t.Context(), noon, []Raw{{ID: 1, Chat: 7, Body: []byte("{}")}}, 2))
	require.NoError(t, db.Spoil(t.Context(), noon, 1, "worse"))
	for _, f := range Examine(t.Context(), noon, db.Path()) {
		if f.What == "put aside" {
			require.Contains(t, f.Found, "1 updates")
		}
	}
}

// A reader keeps the log; that is said, and a later try does it.
func TestWipeWaitsForReaders(t *testing.T) {
	db := open(t, Options{})
	p := tell(t, db, noon, 1, "agree").Person
	_, err := db.stmts.once("PRAGMA busy_timeout(1)")
	require.NoError(t, err)
	tx, err := look(t, db).Begin()
	require.NoError(t, err)
	require.NoError(t, tx.QueryRow("SELECT count(*) FROM entry").Scan(new(int)))
	tell(t, db, noon, 1, "hello")
	require.ErrorContains(t, db.Forget(t.Context(), noon, p), "a reader is in the way")
	require.NoError(t, tx.Rollback())
	require.NoError(t, db.Wipe(t.Context()))
}

func TestPastQuestionsAboutAPersonGo(t *testing.T) {
	db := open(t, Options{Step: func(s dialog.State, in dialog.Input, now time.Time) dialog.Answer {
		s.Talk.Past = []dialog.Past{{Told: 1, Open: dialog.Question{Who: 1}}, {Told: 2}}
		return dialog.Answer{Talk: s.Talk}
	}})
	tell(t, db, noon, 1, "x")
	tell(t, db, noon, 2, "x")
	require.NoError(t, db.Forget(t.Context(), noon, 1))
	s, err := db.StateOf(t.Context(), 2)
	require.NoError(t, err)
	require.Len(t, s.Talk.Past, 1)
}

// A reminder that waits when its round ends never goes.
func TestNoReminderForADeadRound(t *testing.T) {
	db := open(t, Options{})
	tell(t, db, noon, 1, "agree")
	p := tell(t, db, noon, 1, "build").Person
	later := noon.AddDate(0, 0, 4)
	o, err := db.Converse(t.Context(), later, Call{Person: p, In: dialog.Reminder{}})
	require.NoError(t, err)
	require.Equal(t, 1, o[0].Letters)
	require.Contains(t, letters(t, db, later), "time for stick")
	tell(t, db, later, 1, "hello")
	require.Contains(t, letters(t, db, later), "time for stick", "an answer to something else leaves it")
	tell(t, db, later, 1, "build")
	require.NotContains(t, letters(t, db, later), "time for stick")
	require.Equal(t, 1, count(t, db, "SELECT count(*) FROM letter WHERE refused = 'answered before it went'"), "marked, with the reason")
}
