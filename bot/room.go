package bot

import (
	"context"
	"fmt"
	"time"

	"warmstick/dialog"
	"warmstick/store"
)

// Tick lets the clock speak at a moment; scheduler.Tick with its diary.
type Tick func(ctx context.Context, now time.Time) (letters int, err error)

// room is where people talk without a network: the same inbox-less path into the
// store as a message from afar, and a clock that only moves when told to.
type room struct {
	db   *store.DB
	tick Tick
	now  time.Time
	hear func(store.Letter) error // each letter, in order
}

// say lets one chat speak and hands out what follows.
func (r *room) say(ctx context.Context, chat int64, in dialog.Input) error {
	outcomes, err := r.db.Converse(ctx, r.now, store.Call{Chat: chat, In: in})
	if err != nil {
		return err
	}
	if err := outcomes[0].Err; err != nil {
		return err
	}
	return r.deliver(ctx)
}

// deliver hands out every letter that may go now.
func (r *room) deliver(ctx context.Context) error {
	for {
		letters, err := r.db.Letters(ctx, r.now, 256, func(int64, int) bool { return true })
		if err != nil || len(letters) == 0 {
			return err
		}
		fates := make([]store.Fate, len(letters))
		for i, l := range letters {
			fates[i] = store.Fate{Letter: l.ID, Person: l.Letter.To}
			if late := !l.Until.IsZero() && !r.now.Before(l.Until); late {
				fates[i].Refused = store.TooLate
				continue
			}
			if err := r.hear(l); err != nil {
				return err
			}
		}
		leave, err := r.db.Settle(ctx, fates)
		if err != nil {
			return err
		}
		for _, p := range leave {
			if err := r.db.Forget(ctx, r.now, p); err != nil {
				return err
			}
		}
	}
}

// wait moves the clock, from one planned moment to the next, so that each
// reminder goes out at its own minute.
func (r *room) wait(ctx context.Context, until time.Time) error {
	for {
		next, err := r.db.NextMoment(ctx, r.now)
		if err != nil {
			return err
		}
		if next.IsZero() || next.After(until) {
			break
		}
		if next.After(r.now) {
			r.now = wholeMinute(next)
			if r.now.After(until) {
				r.now = until
			}
		}
		if _, err := r.tick(ctx, r.now); err != nil {
			return err
		}
		if err := r.deliver(ctx); err != nil {
			return err
		}
		again, err := r.db.NextMoment(ctx, r.now)
		if err != nil {
			return err
		}
		if !again.IsZero() && !again.After(r.now) {
			return fmt.Errorf("the plan does not move on at %s", r.now.Format(time.RFC3339))
		}
	}
	r.now = until
	return ctx.Err()
}

// wholeMinute is the first whole minute not before t: a clock that ticks once a
// minute sees it then.
func wholeMinute(t time.Time) time.Time {
	if m := t.Truncate(time.Minute); !m.Before(t) {
		return m
	}
	return t.Truncate(time.Minute).Add(time.Minute)
}

// untilMinute is the next moment after now at which the clock of a zone shows
// that minute of the day.
func untilMinute(now time.Time, minute int, zone *time.Location) time.Time {
	day := dialog.DayOf(now, zone)
	for {
		if t := day.On(minute, zone); t.After(now) {
			return t
		}
		day++
	}
}
