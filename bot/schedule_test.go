package bot

import (
	"context"
	"fmt"
	"path/filepath"
	"sync"
	"sync/atomic"
	"testing"
	"time"

	"golang.org/x/sync/errgroup"

	"warmstick/bot/platform"
	"warmstick/dialog"
	"warmstick/scheduler"
	"warmstick/store"
)

// A schedule of faults: refused polls, lost answers, torn bodies, broken
// connections, waits, a stop and a start in the middle, and a morning of
// reminders. What was acknowledged is in the diary once; every line has its
// answer and every farmer the reminder; the order within a chat holds; and what
// came twice is no more than the answers that were lost.
func TestFaultSchedules(t *testing.T) {
	schedules := 200
	if testing.Short() {
		schedules = 20
	}
	dir := t.TempDir()
	g, ctx := errgroup.WithContext(t.Context())
	g.SetLimit(24) // they mostly wait
	var lost atomic.Int64
	for seed := range schedules {
		g.Go(func() error {
			n, err := schedule(ctx, uint64(seed), filepath.Join(dir, fmt.Sprint(seed, ".db")))
			lost.Add(int64(n))
			if err != nil {
				return fmt.Errorf("schedule %d: %w", seed, err)
			}
			return nil
		})
	}
	if err := g.Wait(); err != nil {
		t.Fatal(err)
	}
	t.Logf("%d schedules, %d answers lost", schedules, lost.Load())
}

const (
	writers = 3 // chats
	lines   = 4 // of each, the first of which builds a heap
)

func schedule(ctx context.Context, seed uint64, file string) (lost int, err error) {
	f := platform.New(1)
	defer f.Close()
	f.Trouble = platform.Schedule(seed, 0.25)
	if seed%8 != 0 { // waiting a whole second each time is for some only
		trouble := f.Trouble
		f.Trouble = func(method string, n int) string {
			if what := trouble(method, n); what != "429" {
				return what
			}
			return "500"
		}
	}
	db, err := store.Open(ctx, file, store.Options{Step: parrot, Loose: true})
	if err != nil {
		return 0, err
	}
	defer db.Close()
	ctx, cancel := context.WithTimeout(ctx, 60*time.Second)
	defer cancel()
	clock := startAt(time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC))
	stop, err := work(ctx, f, db, clock)
	if err != nil {
		return 0, err
	}
	for i := range lines {
		for chat := int64(1); chat <= writers; chat++ {
			f.Say(chat, lineOf(chat, i))
		}
		if i == lines/2 {
			if err := stop(); err != nil {
				return 0, err
			}
			if stop, err = work(ctx, f, db, clock); err != nil {
				return 0, err
			}
		}
	}
	defer stop()
	ends := func(text func(chat int64) string) func() bool {
		return func() bool {
			for chat := int64(1); chat <= writers; chat++ {
				if texts := f.Texts(chat); len(texts) == 0 || texts[len(texts)-1] != text(chat) {
					return false
				}
			}
			return true
		}
	}
	if err := platform.Until(ctx, "all answers", ends(func(chat int64) string { return "heard " + lineOf(chat, lines-1) })); err != nil {
		return 0, err
	}
	clock.jump(5 * 24 * time.Hour)
	for range 2 { // a second tick finds nothing more
		if _, err := scheduler.Tick(ctx, db, clock.now()); err != nil {
			return 0, err
		}
	}
	f.Say(99, "wake up")
	if err := platform.Until(ctx, "all reminders", ends(func(int64) string { return "remember" })); err != nil {
		return 0, err
	}
	if err := stop(); err != nil {
		return 0, err
	}
	return f.Lost(), tally(ctx, f, db)
}

func lineOf(chat int64, i int) string {
	if i == 0 {
		return "build"
	}
	return fmt.Sprintf("%d-%d", chat, i)
}

// tally compares what was sent and written with what should be.
func tally(ctx context.Context, f *platform.API, db *store.DB) error {
	doubles := 0
	for chat := int64(1); chat <= writers; chat++ {
		want := make([]string, 0, lines+1)
		for i := range lines {
			want = append(want, "heard "+lineOf(chat, i))
		}
		want = append(want, "remember")
		i := -1
		for _, text := range f.Texts(chat) {
			switch {
			case i+1 < len(want) && text == want[i+1]:
				i++
			case i >= 0 && text == want[i]:
				doubles++
			default:
				return fmt.Errorf("chat %d out of order: %q", chat, f.Texts(chat))
			}
		}
		id, err := db.PersonOf(ctx, chat)
		if err != nil {
			return err
		}
		diary, err := db.DiaryOf(ctx, id)
		if err != nil {
			return err
		}
		var told []string
		reminded := 0
		for _, e := range diary {
			switch e := e.Event.(type) {
			case dialog.OfficerAsked:
				told = append(told, e.Text)
			case dialog.Reminded:
				reminded++
			}
		}
		for i, text := range told {
			if text != lineOf(chat, i) {
				return fmt.Errorf("chat %d told %q", chat, told)
			}
		}
		if len(told) != lines || reminded != 1 {
			return fmt.Errorf("chat %d told %d lines and was reminded %d times", chat, len(told), reminded)
		}
	}
	if doubles > f.Lost() {
		return fmt.Errorf("%d doubles and %d lost answers", doubles, f.Lost())
	}
	return nil
}

// work starts a bot; what it gives stops it and waits.
func work(ctx context.Context, f *platform.API, db *store.DB, c *jumping) (stop func() error, err error) {
	line, err := NewLine(platform.Token, f.URL)
	if err != nil {
		return nil, err
	}
	ctx, cancel := context.WithCancel(ctx)
	ended := make(chan error, 1)
	b := &Bot{Store: db, Line: line, Now: c.now}
	go func() { ended <- b.Run(ctx) }()
	return sync.OnceValue(func() error {
		cancel()
		select {
		case err := <-ended:
			return err
		case <-time.After(9 * time.Second):
			return fmt.Errorf("did not stop within nine seconds")
		}
	}), nil
}

// jumping is a clock that runs on from some moment and can be set forward.
type jumping struct {
	began, shows time.Time
	ahead        atomic.Int64
}

func startAt(t time.Time) *jumping { return &jumping{began: time.Now(), shows: t} }

func (j *jumping) now() time.Time {
	return j.shows.Add(time.Since(j.began) + time.Duration(j.ahead.Load()))
}

func (j *jumping) jump(d time.Duration) { j.ahead.Add(int64(d)) }

// A reminder that could not go before eight in the evening does not go at night,
// nor the next day: it stays as refused, with the reason.
func TestNoReminderAtNight(t *testing.T) {
	f := platform.New(1)
	defer f.Close()
	db, err := store.Open(t.Context(), filepath.Join(t.TempDir(), "w.db"), store.Options{Step: parrot})
	if err != nil {
		t.Fatal(err)
	}
	defer db.Close()
	clock := startAt(time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC))
	if _, err := db.Converse(t.Context(), clock.now(), store.Call{Chat: 1, In: dialog.Message{Kind: dialog.Text, Text: "build"}}); err != nil {
		t.Fatal(err)
	}
	clock.jump(5*24*time.Hour + 10*time.Hour) // seven in the evening, five days on
	if n, err := scheduler.Tick(t.Context(), db, clock.now()); n != 1 || err != nil {
		t.Fatal(n, err)
	}
	clock.jump(2 * time.Hour)
	stop, err := work(t.Context(), f, db, clock)
	if err != nil {
		t.Fatal(err)
	}
	defer stop()
	f.Say(2, "hello")
	if err := platform.Until(soon(t), "both ends", func() bool { return len(f.Texts(2)) == 1 && len(f.Texts(1)) == 1 }); err != nil {
		t.Fatal(err)
	}
	if err := stop(); err != nil {
		t.Fatal(err)
	}
	if got := f.Texts(1); len(got) != 1 || got[0] != "heard build" {
		t.Fatalf("sent %q", got)
	}
	left, err := db.Letters(t.Context(), clock.now().Add(48*time.Hour), 10, func(int64, int) bool { return true })
	if err != nil || len(left) != 0 {
		t.Fatal(left, err)
	}
}
