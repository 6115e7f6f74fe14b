package scheduler

import (
	"context"
	"errors"
	"path/filepath"
	"testing"
	"testing/synctest"
	"time"
	_ "time/tzdata"

	"github.com/stretchr/testify/require"

	"warmstick/dialog"
	"warmstick/store"
)

var monday = time.Date(2026, 3, 2, 3, 0, 0, 0, time.UTC) // six in the morning in Nairobi

// begin makes a file in which one farmer's heap stands since monday.
func begin(t testing.TB, step store.Step) *store.DB {
	t.Helper()
	tell := func(s dialog.State, in dialog.Input, now time.Time) dialog.Answer {
		if _, ok := in.(dialog.Reminder); ok {
			return step(s, in, now)
		}
		var entries []dialog.Entry
		for _, e := range []dialog.Event{dialog.Consented{Version: "1"}, dialog.Placed{Zone: "Africa/Nairobi"}, dialog.Begun{Path: dialog.HotHeap}, dialog.Built{}} {
			entries = append(entries, dialog.Entry{Heap: heapOf(e), At: now, Noted: now, Day: dialog.DayOf(now, time.UTC), By: s.Person.ID, Told: 1, Event: e})
		}
		return dialog.Answer{Entries: entries}
	}
	db, err := store.Open(context.Background(), filepath.Join(t.TempDir(), "w.db"), store.Options{Step: tell})
	require.NoError(t, err)
	t.Cleanup(func() { db.Close() })
	_, err = db.Converse(context.Background(), monday, store.Call{Chat: 1, In: dialog.Message{Text: "x"}})
	require.NoError(t, err)
	return db
}

func heapOf(e dialog.Event) dialog.HeapID {
	switch e.(type) {
	case dialog.Begun, dialog.Built, dialog.Snoozed:
		return 1
	}
	return 0
}

func remindOnce(s dialog.State, in dialog.Input, now time.Time) dialog.Answer {
	r := in.(dialog.Reminder)
	a := dialog.Answer{Talk: s.Talk, Letters: []dialog.Letter{{To: s.Person.ID, Kind: dialog.Remind, Text: string(r.Due[0].Task)}}}
	for _, d := range r.Due {
		a.Entries = append(a.Entries, dialog.Entry{Heap: d.Heap, At: now, Noted: now, Day: dialog.DayOf(now, s.Person.Zone()),
			Event: dialog.Reminded{Task: d.Task, Day: dialog.DayOf(now, s.Person.Zone())}})
	}
	return a
}

// Whatever was missed while the program was off for a minute, a day or a week is
// spoken of when it comes back, once.
func TestTickAfterATimeOff(t *testing.T) {
	for _, off := range []time.Duration{0, time.Minute, 24 * time.Hour, 7 * 24 * time.Hour} {
		db := begin(t, remindOnce)
		due, err := db.DueOf(t.Context(), 1)
		require.NoError(t, err)
		at := due[0].At
		n, err := Tick(t.Context(), db, at.Add(-time.Second))
		require.NoError(t, err)
		require.Zero(t, n)
		n, err = Tick(t.Context(), db, at.Add(off))
		require.NoError(t, err)
		require.Equal(t, 1, n, "off for %s", off)
		n, err = Tick(t.Context(), db, at.Add(off))
		require.NoError(t, err)
		require.Zero(t, n, "once")
		n, err = Tick(t.Context(), db, at.Add(-24*time.Hour))
		require.NoError(t, err)
		require.Zero(t, n, "a clock that jumps back repeats nothing")
	}
}

func TestTickSurvivesAConversationThatBreaks(t *testing.T) {
	broken := true
	db := begin(t, func(s dialog.State, in dialog.Input, now time.Time) dialog.Answer {
		if broken {
			panic("now")
		}
		return remindOnce(s, in, now)
	})
	due, err := db.DueOf(t.Context(), 1)
	require.NoError(t, err)
	n, err := Tick(t.Context(), db, due[0].At)
	require.NoError(t, err)
	require.Zero(t, n)
	broken = false
	n, err = Tick(t.Context(), db, due[0].At.Add(time.Hour))
	require.NoError(t, err)
	require.Equal(t, 1, n, "tried again in an hour")
}

// sick is a diary whose first batch cannot be kept, and of which one person's
// line cannot be read.
type sick struct {
	people []dialog.PersonID
	bad    dialog.PersonID
	heard  map[dialog.PersonID]int
	all    error
}

var errSick = errors.New("cannot be read")

func (s *sick) NextDue(context.Context, time.Time, int) ([]dialog.PersonID, error) {
	var left []dialog.PersonID
	for _, p := range s.people {
		if s.heard[p] == 0 {
			left = append(left, p)
		}
	}
	return left, s.all
}

func (s *sick) Converse(_ context.Context, _ time.Time, calls ...store.Call) ([]store.Outcome, error) {
	var outcomes []store.Outcome
	for _, c := range calls {
		if c.Person == s.bad {
			return nil, errSick
		}
	}
	for _, c := range calls {
		s.heard[c.Person]++
		outcomes = append(outcomes, store.Outcome{Person: c.Person, Letters: 1})
	}
	return outcomes, nil
}

func TestOneSickDiaryDoesNotSilenceTheOthers(t *testing.T) {
	s := &sick{people: []dialog.PersonID{1, 2, 3}, bad: 2, heard: map[dialog.PersonID]int{}}
	n, err := Tick(t.Context(), s, monday)
	require.ErrorIs(t, err, errSick)
	require.Equal(t, 2, n)
	require.Equal(t, map[dialog.PersonID]int{1: 1, 3: 1}, s.heard)
	s.all = errSick
	_, err = Tick(t.Context(), s, monday)
	require.ErrorIs(t, err, errSick)
}

func TestRunTicksAtFullMinutes(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		var ticks []time.Time
		woken := 0
		ctx, cancel := context.WithCancel(t.Context())
		d := ticking(func(now time.Time) ([]dialog.PersonID, error) {
			ticks = append(ticks, now)
			switch len(ticks) {
			case 2:
				return nil, errSick
			case 4:
				cancel()
			}
			if len(ticks) == 1 {
				return []dialog.PersonID{1}, nil
			}
			return nil, nil
		})
		time.Sleep(17 * time.Second)
		err := Run(ctx, d, time.Now, func() { woken++ })
		require.ErrorIs(t, err, context.Canceled)
		require.Equal(t, 1, woken)
		require.Len(t, ticks, 4)
		for _, at := range ticks[2:] {
			require.Zero(t, at.Second())
		}
	})
}

// ticking is a diary that only says who is due.
type ticking func(now time.Time) ([]dialog.PersonID, error)

func (f ticking) NextDue(_ context.Context, now time.Time, _ int) ([]dialog.PersonID, error) {
	return f(now)
}

func (f ticking) Converse(context.Context, time.Time, ...store.Call) ([]store.Outcome, error) {
	return []store.Outcome{{Letters: 1}}, nil
}

// A job that panics or fails runs again the next time; robfig/cron with its
// wrappers in the other order would not run it again.
func TestHousekeepingGoesOn(t *testing.T) {
	synctest.Test(t, func(t *testing.T) {
		ctx, cancel := context.WithCancel(t.Context())
		runs := 0
		go func() { time.Sleep(3*time.Minute + time.Second); cancel() }()
		err := Housekeeping(ctx, Job{Name: "sweep", When: "* * * * *", Do: func(context.Context) error {
			switch runs++; runs {
			case 1:
				panic("dust")
			case 2:
				return errSick
			}
			return nil
		}})
		require.ErrorIs(t, err, context.Canceled)
		require.Equal(t, 3, runs)
		require.Error(t, Housekeeping(ctx, Job{Name: "sweep", When: "never"}))
	})
}

// A reminder after which the same is still due is spoken of again in an hour, not at
// once and for ever.
func TestTickEndsWhenNothingMoves(t *testing.T) {
	db := begin(t, func(s dialog.State, in dialog.Input, now time.Time) dialog.Answer {
		a := remindOnce(s, in, now)
		if _, ok := in.(dialog.Reminder); ok {
			a.Entries = []dialog.Entry{{At: now, Noted: now, Event: dialog.PicturesSet{}}} // moves no plan
		}
		return a
	})
	due, err := db.DueOf(t.Context(), 1)
	require.NoError(t, err)
	at := due[0].At
	n, err := Tick(t.Context(), db, at)
	require.NoError(t, err)
	require.LessOrEqual(t, n, 1)
	diary, err := db.DiaryOf(t.Context(), 1)
	require.NoError(t, err)
	_, err = Tick(t.Context(), db, at.Add(59*time.Minute))
	require.NoError(t, err)
	later, err := db.DiaryOf(t.Context(), 1)
	require.NoError(t, err)
	require.Len(t, later, len(diary))
	_, err = Tick(t.Context(), db, at.Add(time.Hour))
	require.NoError(t, err)
	later, err = db.DiaryOf(t.Context(), 1)
	require.NoError(t, err)
	require.Len(t, later, len(diary)+1)
}
