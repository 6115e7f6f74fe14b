package store

import (
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"warmstick/dialog"
)

var errPower = errors.New("the power is gone")

// The power goes at every commit there is, before and after it. What was told
// and acknowledged is there once, whatever is done again is not done twice.
func TestPowerGoesAtEveryCommit(t *testing.T) {
	life := func(db *DB) error {
		ctx := context.Background()
		for i, text := range []string{"agree", "heap", "build"} {
			if err := db.Receive(ctx, noon, []Raw{{ID: int64(i), Chat: 1, Body: []byte(text)}}, int64(i+1)); err != nil {
				return err
			}
			w, err := db.Waiting(ctx, 10)
			if err != nil {
				return err
			}
			for _, row := range w {
				if _, err := db.Converse(ctx, noon, Call{Chat: row.Chat, Inbox: row.Seq, In: dialog.Message{Text: string(row.Body)}}); err != nil {
					return err
				}
			}
			list, err := db.Letters(ctx, noon, 10, anybody)
			if err != nil {
				return err
			}
			for _, l := range list {
				if _, err := db.Settle(ctx, []Fate{{Letter: l.ID, Person: l.Letter.To}}); err != nil {
					return err
				}
			}
		}
		due, err := db.NextDue(ctx, noon.Add(5*24*time.Hour), 10)
		if err != nil {
			return err
		}
		for _, p := range due {
			if _, err := db.Converse(ctx, noon.Add(5*24*time.Hour), Call{Person: p, In: dialog.Reminder{}}); err != nil {
				return err
			}
		}
		return nil
	}
	points := 0
	whole := open(t, Options{})
	whole.broken = func(string) error { points++; return nil }
	require.NoError(t, life(whole))
	want, err := whole.DiaryOf(t.Context(), 1)
	require.NoError(t, err)
	for point := 1; point <= points; point++ {
		path := filepath.Join(t.TempDir(), "w.db")
		db, err := Open(t.Context(), path, Options{Step: echo})
		require.NoError(t, err)
		n := 0
		db.broken = func(string) error {
			if n++; n >= point {
				return errPower
			}
			return nil
		}
		require.ErrorIs(t, life(db), errPower)
		// Not closed: a second one opens the file as after a crash.
		again, err := Open(t.Context(), path, Options{Step: echo})
		require.NoError(t, err)
		require.NoError(t, life(again))
		got, err := again.DiaryOf(t.Context(), 1)
		require.NoError(t, err)
		require.Equal(t, len(want), len(got), "point %d", point)
		for i := range want {
			require.Equal(t, want[i].Event, got[i].Event, "point %d", point)
		}
		drifts, err := Compare(t.Context(), path)
		require.NoError(t, err)
		require.Empty(t, drifts)
		again.Close()
		db.Close()
	}
	require.Greater(t, points, 15)
}

func TestBackupWhileInUseAndRestore(t *testing.T) {
	db := open(t, Options{})
	tell(t, db, noon, 1, "agree")
	tell(t, db, noon, 2, "agree")
	gone := tell(t, db, noon, 2, "zanzibarine").Person
	out := filepath.Join(t.TempDir(), "copy.db")
	require.NoError(t, Backup(t.Context(), db.Path(), out))
	require.NoError(t, Backup(t.Context(), db.Path(), out), "over an older one")
	tell(t, db, noon, 1, "later")
	require.NoError(t, db.Forget(t.Context(), noon, gone))
	require.NoError(t, db.Close())

	require.NoError(t, Restore(t.Context(), noon, out, db.Path()))
	back, err := Open(t.Context(), db.Path(), Options{Step: echo})
	require.NoError(t, err)
	defer back.Close()
	diary, err := back.DiaryOf(t.Context(), 1)
	require.NoError(t, err)
	require.Len(t, diary, 2, "the line told after the backup is not in it")
	id, err := back.PersonOf(t.Context(), 2)
	require.NoError(t, err)
	require.Zero(t, id, "who was deleted since stays deleted")
	require.NoError(t, Verify(t.Context(), db.Path()+".before-restore"))
	left, err := filepath.Glob(filepath.Join(filepath.Dir(out), "*"))
	require.NoError(t, err)
	require.Equal(t, []string{out}, left, "no half copies stay")
}

func TestRestoreVerifiesFirst(t *testing.T) {
	db := open(t, Options{})
	for i := range 200 {
		tell(t, db, noon, int64(i), "agree")
	}
	good := filepath.Join(t.TempDir(), "good.db")
	require.NoError(t, Backup(t.Context(), db.Path(), good))
	data, err := os.ReadFile(good)
	require.NoError(t, err)
	for i := len(data) / 2; i < len(data)/2+8192; i++ {
		data[i] ^= 0x5a
	}
	bad := filepath.Join(t.TempDir(), "bad.db")
	require.NoError(t, os.WriteFile(bad, data, 0o600))
	require.Error(t, Restore(t.Context(), noon, good, filepath.Join(db.Path(), "nowhere")))
	require.NoError(t, db.Close())
	before := fileText(t, db.Path())
	for _, from := range []string{bad, filepath.Join(t.TempDir(), "missing.db"), os.Args[0]} {
		err := Restore(t.Context(), noon, from, db.Path())
		require.Error(t, err, from)
		require.NotContains(t, err.Error(), "\n")
	}
	require.Equal(t, before, fileText(t, db.Path()), "nothing was changed")

	unlock, err := Lock(t.Context(), db.Path())
	require.NoError(t, err)
	require.ErrorIs(t, Restore(t.Context(), noon, good, db.Path()), ErrTaken)
	unlock()

	require.NoError(t, os.WriteFile(db.Path(), data, 0o600), "a damaged file is what restore is for")
	require.NoError(t, Restore(t.Context(), noon, good, db.Path()))
	require.NoError(t, Verify(t.Context(), db.Path()))
	fresh := filepath.Join(t.TempDir(), "fresh.db")
	require.NoError(t, Restore(t.Context(), noon, good, fresh))
	require.NoError(t, Verify(t.Context(), fresh))
}

func TestNightlyBackupsRotateAndForget(t *testing.T) {
	db := open(t, Options{})
	p := tell(t, db, noon, 1, "agree").Person
	tell(t, db, noon, 1, "zanzibarine")
	folder := filepath.Join(t.TempDir(), "nights")
	require.NoError(t, ScrubBackups(t.Context(), noon, folder, []dialog.PersonID{p}), "none yet")
	for night := range 5 {
		require.NoError(t, Nightly(t.Context(), noon.AddDate(0, 0, night), db.Path(), folder, 3))
	}
	require.NoError(t, os.WriteFile(filepath.Join(folder, "notes.txt"), []byte("mine"), 0o600))
	names, err := backups(folder)
	require.NoError(t, err)
	require.Len(t, names, 3)
	require.Equal(t, "warmstick-2026-03-04.db", filepath.Base(names[0]))
	require.NoError(t, ScrubBackups(t.Context(), noon, folder, []dialog.PersonID{p}))
	for _, name := range names {
		require.NotContains(t, fileText(t, name), "zanzibarine")
		require.NoError(t, Verify(t.Context(), name))
	}
	require.FileExists(t, filepath.Join(folder, "notes.txt"))
}

func TestPurgeKeepsAWeek(t *testing.T) {
	db := open(t, Options{})
	for i := range 2500 {
		require.NoError(t, db.Receive(t.Context(), noon.Add(time.Duration(i)*time.Second), []Raw{{ID: int64(i), Chat: 1, Body: []byte("{}")}}, 1))
	}
	w, err := db.Waiting(t.Context(), 2499)
	require.NoError(t, err)
	calls := make([]Call, len(w))
	for i := range w {
		calls[i] = Call{Chat: 1, Inbox: w[i].Seq, In: dialog.Message{Text: "agree"}}
	}
	_, err = db.Converse(t.Context(), noon, calls...)
	require.NoError(t, err)
	n, err := db.Purge(t.Context(), noon.Add(keepRaw))
	require.NoError(t, err)
	require.Zero(t, n)
	n, err = db.Purge(t.Context(), noon.Add(keepRaw+2400*time.Second))
	require.NoError(t, err)
	require.EqualValues(t, 2400, n)
	n, err = db.Purge(t.Context(), noon.Add(2*keepRaw))
	require.NoError(t, err)
	require.EqualValues(t, 99, n, "what was never answered stays")
}

func TestExamine(t *testing.T) {
	db := open(t, Options{})
	tell(t, db, noon, 1, "agree")
	tell(t, db, noon, 1, "build")
	find := func(list []Finding, what string) Finding {
		for _, f := range list {
			if f.What == what {
				return f
			}
		}
		t.Fatalf("nothing on %s", what)
		return Finding{}
	}
	for _, f := range Examine(t.Context(), noon, db.Path()) {
		require.True(t, f.Well(), "%s: %s", f.What, f.Found)
	}
	require.NoError(t, db.Receive(t.Context(), noon, []Raw{{ID: 1, Chat: 1, Body: []byte("{}")}}, 2))
	list := Examine(t.Context(), noon.AddDate(0, 0, 20), db.Path())
	for _, what := range []string{"oldest due", "oldest unsent", "oldest unanswered"} {
		require.False(t, find(list, what).Well(), what)
	}
	_, err := db.stmts.once("DELETE FROM due")
	require.NoError(t, err)
	require.Contains(t, find(Examine(t.Context(), noon, db.Path()), "plan").Found, "missing")
	require.False(t, Examine(t.Context(), noon, db.Path()+"x")[0].Well())
	text := filepath.Join(t.TempDir(), "text")
	require.NoError(t, os.WriteFile(text, []byte("once upon a time"), 0o600))
	require.False(t, Examine(t.Context(), noon, text)[0].Well())
	last, err := LastNoted(t.Context(), db.Path())
	require.NoError(t, err)
	require.Equal(t, noon, last)
	f := peak(func(string, ...any) int64 { return 300_000 })
	require.False(t, f.Well())
	require.Contains(t, f.Do, "3 bots")
}

// The plans of the queries that run for each message, tick and letter: each by
// an index, none by reading a table through, none by sorting.
func TestQueryPlans(t *testing.T) {
	db := open(t, Options{})
	for q, want := range map[query]string{
		inboxList:    "USING INDEX inbox_waiting",
		inboxDone:    "INTEGER PRIMARY KEY",
		personByChat: "USING INDEX sqlite_autoindex_person_1",
		personByID:   "INTEGER PRIMARY KEY",
		entryList:    "USING PRIMARY KEY (person=?)",
		dueList:      "USING PRIMARY KEY (person=?)",
		dueNext:      "COVERING INDEX due_look (look<?)",
		dueMin:       "COVERING INDEX due_look",
		duePush:      "USING PRIMARY KEY (person=?)",
		letterQueue:  "COVERING INDEX letter_waiting (class=? AND after<?)",
		letterAfter:  "INDEX letter_waiting (class=? AND after>?)",
		letterLeft:   "COVERING INDEX letter_person (person=?)",
		letterStale:  "INDEX letter_person (person=? AND class=?)",
		letterDrop:   "INDEX letter_person (person=? AND class>?)",
		letterBatch:  "COVERING INDEX letter_batch (batch=?)",
		letterHalt:   "INDEX letter_batch (batch=?",
		letterOne:    "INTEGER PRIMARY KEY",
		crewCards:    "USING PRIMARY KEY (crew=?)",
		inviteGet:    "USING PRIMARY KEY (code=?)",
	} {
		args := make([]any, strings.Count(sqlOf[q], "?"))
		for i := range args {
			args[i] = 1
		}
		rows, err := look(t, db).QueryContext(t.Context(), "EXPLAIN QUERY PLAN "+sqlOf[q], args...)
		require.NoError(t, err, sqlOf[q])
		var plan []string
		for rows.Next() {
			var id, parent, unused int
			var detail string
			require.NoError(t, rows.Scan(&id, &parent, &unused, &detail))
			plan = append(plan, detail)
		}
		require.NoError(t, rows.Close())
		text := fmt.Sprint(plan)
		require.Contains(t, text, want, sqlOf[q])
		require.NotContains(t, text, "TEMP B-TREE", sqlOf[q])
		if q != inboxList && q != dueMin {
			require.NotContains(t, text, "SCAN", sqlOf[q])
		}
	}
}

func TestNewestCallers(t *testing.T) {
	db := open(t, Options{})
	none, err := NewestCallers(t.Context(), db.Path(), 10)
	require.NoError(t, err)
	require.Empty(t, none)
	for i, chat := range []int64{7, 8, 7, 0, -100} { // one that could not be read, and a group
		require.NoError(t, db.Receive(t.Context(), noon.Add(time.Duration(i)*time.Minute), []Raw{{ID: int64(i), Chat: chat, Body: []byte("{}")}}, int64(i+1)))
	}
	list, err := NewestCallers(t.Context(), db.Path(), 10)
	require.NoError(t, err)
	require.Equal(t, []int64{7, 8}, []int64{list[0].Chat, list[1].Chat})
	require.True(t, noon.Add(2*time.Minute).Equal(list[0].Last))
	one, err := NewestCallers(t.Context(), db.Path(), 1)
	require.NoError(t, err)
	require.Len(t, one, 1)
	_, err = NewestCallers(t.Context(), db.Path()+"x", 1)
	require.Error(t, err)
}
