package store

import (
	"context"
	"encoding/json"
	"fmt"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"warmstick/dialog"
)

// lines of an officer and of farmers who join a group, report dangers, ask for
// the officer and undo: some speak to others, some look others up.
var officerLines = []string{"hello", "1", "yes", "Tarik", "Nairobi", "invite", "board", "announce meeting tomorrow", "heap Amina", "groups", "undo", "menu"}

var farmerLines = []string{"hello", "1", "yes", "Amina", "Nairobi", "abcdef0000", "hot heap", "20 baskets cow dung", "built today", "stick cold", "stick hot",
	"I burnt my hand", "officer please come", "undo", "2", "stop", "share", "smoke from the heap", "delete me"}

// What is thought ahead on other cores gives what is thought in its turn: the
// same rows, numbers and letters, whoever speaks in a batch and to whom.
func TestThinkingAheadChangesNothing(t *testing.T) {
	dir, n := t.TempDir(), 0
	rapid.Check(t, func(rt *rapid.T) {
		n++
		var dbs [2]*DB
		for i := range dbs {
			codes := 0
			chance := func(n int) string { codes++; return (fmt.Sprintf("abcdef%04d", codes-1) + "zzzzzzzzzzzzzzzzzzzz")[:n] }
			db, err := Open(t.Context(), filepath.Join(dir, fmt.Sprintf("%d-%d.db", n, i)), Options{Chance: chance, Pages: 3, Loose: true})
			require.NoError(rt, err)
			defer db.Close()
			dbs[i] = db
		}
		now := noon
		for range rapid.IntRange(1, 12).Draw(rt, "batches") {
			now = now.Add(time.Duration(rapid.IntRange(1, 30).Draw(rt, "hours")) * time.Hour)
			calls := make([]Call, rapid.IntRange(2, 9).Draw(rt, "calls"))
			for i := range calls {
				chat := int64(rapid.IntRange(1, 5).Draw(rt, "chat"))
				lines := farmerLines
				if chat == 1 {
					lines = officerLines
				}
				calls[i] = Call{Chat: chat, In: dialog.Message{Kind: dialog.Text, Text: rapid.SampledFrom(lines).Draw(rt, "line")}}
				switch rapid.IntRange(0, 12).Draw(rt, "sort") {
				case 0:
					calls[i].In = dialog.OfficerMade{}
				case 1:
					calls[i] = Call{Person: dialog.PersonID(chat), In: dialog.Reminder{}}
				case 2:
					calls[i].In = dialog.Barred{Now: true}
				}
			}
			require.Equal(rt, inTurn(rt, dbs[1], now, calls), together(rt, dbs[0], now, calls))
			// The clock speaks in batches, and somebody may put in a word between two.
			for range rapid.IntRange(0, 4).Draw(rt, "ticks") {
				people, err := dbs[0].NextDue(t.Context(), now, 2)
				require.NoError(rt, err)
				calls = calls[:0]
				for _, id := range people {
					calls = append(calls, Call{Person: id, In: dialog.Reminder{}})
				}
				if rapid.IntRange(0, 5).Draw(rt, "word between") == 0 {
					chat := int64(rapid.IntRange(2, 5).Draw(rt, "chat"))
					calls = []Call{{Chat: chat, In: dialog.Message{Kind: dialog.Text, Text: rapid.SampledFrom(farmerLines).Draw(rt, "line")}}}
				}
				require.Equal(rt, inTurn(rt, dbs[1], now, calls), together(rt, dbs[0], now, calls))
			}
		}
		require.Equal(rt, everything(t, rt, dbs[1], now), everything(t, rt, dbs[0], now))
	})
}

func together(rt *rapid.T, db *DB, now time.Time, calls []Call) []Outcome {
	outcomes, err := db.Converse(context.Background(), now, calls...)
	require.NoError(rt, err)
	return outcomes
}

func inTurn(rt *rapid.T, db *DB, now time.Time, calls []Call) []Outcome {
	turns := []Outcome{}
	for _, c := range calls {
		turns = append(turns, together(rt, db, now, []Call{c})...)
	}
	return turns
}

// everything is what a file holds, as text.
func everything(t *testing.T, rt *rapid.T, db *DB, now time.Time) (all []string) {
	letters, err := db.Letters(t.Context(), now.AddDate(0, 0, 2), 10_000, anybody)
	require.NoError(rt, err)
	for _, l := range letters {
		body, err := json.Marshal(l)
		require.NoError(rt, err)
		all = append(all, string(body))
	}
	for id := dialog.PersonID(1); id <= dialog.PersonID(db.count.person); id++ {
		s, err := db.StateOf(t.Context(), id)
		require.NoError(rt, err)
		all = append(all, text(rt, s))
		diary, err := db.DiaryOf(t.Context(), id)
		require.NoError(rt, err)
		due, err := db.DueOf(t.Context(), id)
		require.NoError(rt, err)
		all = append(all, fmt.Sprint(diary), fmt.Sprint(due))
	}
	return all
}

// Somebody who is written to in a batch answers knowing it, later in the batch.
func TestAThoughtThatCameTooEarlyDoesNotCount(t *testing.T) {
	db := open(t, Options{Step: func(s dialog.State, in dialog.Input, now time.Time) dialog.Answer {
		a := dialog.Answer{Talk: s.Talk, Letters: []dialog.Letter{{To: s.Person.ID, Kind: dialog.Reply, Text: s.Person.Name + "/" + s.Talk.Open.ID}}}
		if in.(dialog.Message).Text == "name the other" {
			other := 3 - s.Person.ID
			a.Entries = []dialog.Entry{{Person: other, At: now, Noted: now, By: s.Person.ID, Event: dialog.Named{Name: "Baraka"}}}
			a.Letters = append(a.Letters, dialog.Letter{To: other, Kind: dialog.Relay, Text: "asked", Opens: &dialog.Question{ID: "text"}})
		}
		return a
	}})
	call := func(chat int64, text string) Call { return Call{Chat: chat, In: dialog.Message{Text: text}} }
	_, err := db.Converse(t.Context(), noon, call(1, "hello"), call(2, "hello"))
	require.NoError(t, err)
	settleAll(t, db, noon)
	for range 20 { // whoever comes first
		_, err = db.Converse(t.Context(), noon, call(1, "name the other"), call(2, "who am I"))
		require.NoError(t, err)
		require.Contains(t, letters(t, db, noon), "Baraka/text")
		settleAll(t, db, noon)
		_, err := db.stmts.once("DELETE FROM entry")
		require.NoError(t, err)
		_, err = db.stmts.once("UPDATE person SET fold = NULL, talk = x''")
		require.NoError(t, err)
		db.shelf.empty()
	}
}
