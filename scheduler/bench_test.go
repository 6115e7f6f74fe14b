package scheduler

import (
	"context"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"warmstick/dialog"
	"warmstick/store"
)

// The same thousand reminders fall due among ten thousand heaps and among a
// million: the cost must follow what is due. Heaps due on one morning were mostly
// begun together, by people who joined together; so the thousand are the same
// neighbours in both files. The third case spreads them over the whole file, each
// on pages of their own, which is the worst a morning can be. Nobody is at hand
// when they fall due, as after a restart. Between two ticks the thousand put it
// off until tomorrow.
func BenchmarkTick(b *testing.B) {
	for _, c := range []struct {
		name        string
		heaps, each int // every each-th farmer is due
	}{{"heaps=10000", 10_000, 1}, {"heaps=1000000", 1_000_000, 1}, {"heaps=1000000,spread", 1_000_000, 1000}} {
		b.Run(c.name, func(b *testing.B) {
			const due = 1000
			path := filepath.Join(b.TempDir(), "w.db")
			people := season(b, path, c.heaps, due, c.each)
			now := monday.Add(3*24*time.Hour + 30*time.Minute)
			db := village(b, path, store.Options{Pages: 1})
			warm := village(b, filepath.Join(b.TempDir(), "warm.db"), store.Options{})
			_, err := warm.Converse(b.Context(), monday, store.Call{Chat: 1, In: dialog.Message{Text: "begin"}})
			require.NoError(b, err)
			_, err = Tick(b.Context(), warm, now) // reads the embedded tables
			require.NoError(b, err)
			var took time.Duration
			for b.Loop() {
				began := time.Now()
				n, err := Tick(b.Context(), db, now)
				took += time.Since(began)
				require.NoError(b, err)
				require.Equal(b, due, n)
				b.StopTimer()
				tomorrow(b, db, now.Add(time.Hour), people)
				now = now.AddDate(0, 0, 1)
				b.StartTimer()
			}
			b.ReportMetric(float64(took.Nanoseconds())/float64(b.N)/due, "ns/due")
		})
	}
}

// village opens a file whose people tell facts one after the other; the clock
// speaks through the real conversation.
func village(b *testing.B, path string, o store.Options) *store.DB {
	b.Helper()
	o.Step = func(s dialog.State, in dialog.Input, now time.Time) dialog.Answer {
		m, ok := in.(dialog.Message)
		if !ok {
			return dialog.Step(s, in, now)
		}
		facts := []dialog.Event{dialog.Snoozed{Task: dialog.TaskStick, Day: dialog.DayOf(now, s.Person.Zone()) + 1}}
		if m.Text == "begin" {
			facts = []dialog.Event{dialog.Consented{Version: "1"}, dialog.LanguageSet{Lang: "en"}, dialog.Placed{Zone: "Africa/Nairobi"},
				dialog.Begun{Path: dialog.HotHeap}, dialog.Built{}}
		}
		a := dialog.Answer{Talk: s.Talk}
		for _, e := range facts {
			a.Entries = append(a.Entries, dialog.Entry{Heap: heapOf(e), At: now, Noted: now, Day: dialog.DayOf(now, s.Person.Zone()), By: s.Person.ID, Told: 1, Event: e})
		}
		return a
	}
	db, err := store.Open(context.Background(), path, o)
	require.NoError(b, err)
	b.Cleanup(func() { db.Close() })
	return db
}

// season makes a file of many farmers with one heap each, of whom some have the
// stick due three days after monday and the rest a year later, and gives those
// who have it due: every each-th farmer until there are enough.
func season(b *testing.B, path string, heaps, due, each int) []int64 {
	b.Helper()
	db := village(b, path, store.Options{Loose: true, Pages: 1})
	var early []int64
	var calls []store.Call
	tell := func(now time.Time) {
		_, err := db.Converse(b.Context(), now, calls...)
		require.NoError(b, err)
		calls = calls[:0]
	}
	for chat := int64(1); chat <= int64(heaps); chat++ {
		call := store.Call{Chat: chat, In: dialog.Message{Text: "begin"}}
		if len(early) < due && chat%int64(each) == 0 {
			early = append(early, chat)
			_, err := db.Converse(b.Context(), monday, call)
			require.NoError(b, err)
			continue
		}
		if calls = append(calls, call); len(calls) == 1000 {
			tell(monday.AddDate(1, 0, 0))
		}
	}
	tell(monday.AddDate(1, 0, 0))
	require.NoError(b, db.Close())
	return early
}

// tomorrow lets people put off what they were reminded of, and takes the letters
// away.
func tomorrow(b *testing.B, db *store.DB, now time.Time, people []int64) {
	b.Helper()
	var calls []store.Call
	for _, chat := range people {
		calls = append(calls, store.Call{Chat: chat, In: dialog.Message{Text: "tomorrow"}})
	}
	_, err := db.Converse(b.Context(), now, calls...)
	require.NoError(b, err)
	letters, err := db.Letters(b.Context(), now, 2*len(people), func(int64, int) bool { return true })
	require.NoError(b, err)
	var fates []store.Fate
	for _, l := range letters {
		fates = append(fates, store.Fate{Letter: l.ID, Person: l.Letter.To})
	}
	_, err = db.Settle(b.Context(), fates)
	require.NoError(b, err)
}
