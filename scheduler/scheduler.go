// Package scheduler wakes each minute and lets the clock speak to whoever has
// something due. What fell due while the program was off is still due: nothing
// is kept in memory.
package scheduler

import (
	"context"
	"errors"
	"fmt"
	"log/slog"
	"time"

	"warmstick/dialog"
	"warmstick/store"
)

// Diary is what a tick needs; *store.DB has it.
type Diary interface {
	NextDue(ctx context.Context, now time.Time, limit int) ([]dialog.PersonID, error)
	Converse(ctx context.Context, now time.Time, calls ...store.Call) ([]store.Outcome, error)
}

// batch is how many people share one commit: enough to spread the cost of it, few
// enough that a message waits no more than 10 ms behind them (BenchmarkTick: under 100 µs each).
const batch = 96

// Tick lets the clock speak to everybody who has something due at now, and says
// how many letters that made. It ends early when ctx does; the rest stays due.
func Tick(ctx context.Context, d Diary, now time.Time) (letters int, err error) {
	for {
		people, err := d.NextDue(ctx, now, batch)
		if err != nil {
			return letters, fmt.Errorf("tick: %w", err)
		}
		if len(people) == 0 {
			return letters, nil
		}
		n, err := remind(ctx, d, now, people)
		letters += n
		if err != nil {
			return letters, fmt.Errorf("tick: %w", err)
		}
	}
}

// Run ticks now and at each full minute until ctx ends; wake is called when a
// tick made letters. What a tick could not do, the next one does.
func Run(ctx context.Context, d Diary, now func() time.Time, wake func()) error {
	for {
		letters, err := Tick(ctx, d, now())
		if letters > 0 {
			wake()
		}
		if err != nil && ctx.Err() == nil {
			slog.Error("not everybody who has something due could be spoken to", "cause", err.Error())
		}
		t := now()
		next := time.NewTimer(t.Truncate(time.Minute).Add(time.Minute).Sub(t))
		select {
		case <-next.C:
		case <-ctx.Done():
			next.Stop()
			return ctx.Err()
		}
	}
}

// remind speaks to some people in one commit. When that fails it tries them one
// by one, so that one diary that cannot be read does not silence the others.
func remind(ctx context.Context, d Diary, now time.Time, people []dialog.PersonID) (letters int, err error) {
	calls := make([]store.Call, len(people))
	for i, p := range people {
		calls[i] = store.Call{Person: p, In: dialog.Reminder{}}
	}
	outcomes, err := d.Converse(ctx, now, calls...)
	if err == nil {
		return count(outcomes), nil
	}
	if len(people) == 1 || ctx.Err() != nil {
		return 0, err
	}
	var errs []error
	for _, c := range calls {
		outcomes, err := d.Converse(ctx, now, c)
		letters += count(outcomes)
		if err != nil {
			errs = append(errs, err)
		}
	}
	return letters, errors.Join(errs...)
}

func count(outcomes []store.Outcome) (letters int) {
	for _, o := range outcomes {
		letters += o.Letters
		if o.Err != nil && !errors.Is(o.Err, store.ErrHandled) {
			slog.Error("a reminder broke off and is tried again in an hour", "person", int64(o.Person), "cause", o.Err.Error())
		}
	}
	return letters
}
