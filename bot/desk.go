package bot

import (
	"context"
	"errors"
	"log/slog"
	"sync/atomic"
	"time"

	tgbotapi "github.com/go-telegram-bot-api/telegram-bot-api/v5"

	"warmstick/dialog"
	"warmstick/store"
)

// desk takes updates from the inbox in order of arrival and lets each have its
// answer. As many as wait share a commit; one alone waits for nobody.
type desk struct {
	*Bot
	wake     signal
	posted   func()      // letters may have been written
	catching atomic.Bool // the platform still has more
	felt     chan struct{}
	strikes  map[int64]int // failures of single rows
}

const (
	deskBatch = 128 // rows a commit
	feltSlots = 16  // buttons being answered at the same time
	strikeOut = 3   // failures of one row alone before it is put aside
)

func newDesk(b *Bot) *desk {
	return &desk{Bot: b, wake: newSignal(), posted: func() {}, felt: make(chan struct{}, feltSlots), strikes: map[int64]int{}}
}

func (d *desk) run(ctx context.Context) error {
	d.waitForRest(ctx)
	for ctx.Err() == nil {
		rows, err := d.Store.Waiting(ctx, deskBatch)
		if err == nil && len(rows) > 0 {
			err = d.answer(ctx, rows)
		}
		switch {
		case ctx.Err() != nil:
		case err != nil:
			warn("answers could not be kept; they are tried again", err)
			pause(ctx, time.Second)
		case len(rows) < deskBatch:
			select {
			case <-d.wake:
			case <-ctx.Done():
			}
		}
	}
	return ctx.Err()
}

// waitForRest lets a backlog come in, for a second at most, when the program was
// away for long: then one answer can do for all that a chat has sent.
func (d *desk) waitForRest(ctx context.Context) {
	if d.AwaySince.IsZero() {
		return
	}
	for range 20 {
		pause(ctx, 50*time.Millisecond)
		if !d.catching.Load() {
			return
		}
	}
}

// answer lets some rows have their answers in one commit; when that fails, one
// by one, so that a row that cannot be answered does not hold up the rest.
func (d *desk) answer(ctx context.Context, rows []store.Waiting) error {
	calls, asks := d.callsOf(rows)
	err := d.converse(ctx, calls, asks)
	if err == nil || len(calls) == 1 || ctx.Err() != nil {
		return err
	}
	done := 0
	for i, c := range calls {
		if e := d.converse(ctx, []store.Call{c}, asks[i:i+1]); e == nil {
			done++
			delete(d.strikes, c.Inbox)
		} else {
			d.strikes[c.Inbox]++
			err = e
		}
	}
	if done == 0 {
		return err // it is not the rows
	}
	for seq, n := range d.strikes {
		if n >= strikeOut {
			delete(d.strikes, seq)
			slog.Error("an update was put aside", "row", seq, "cause", err.Error())
			return d.Store.Spoil(ctx, d.Now(), seq, err.Error())
		}
	}
	return err
}

func (d *desk) converse(ctx context.Context, calls []store.Call, asks []string) error {
	outcomes, err := d.Store.Converse(ctx, d.Now(), calls...)
	if err != nil {
		return err
	}
	d.posted()
	for i, o := range outcomes {
		if asks[i] != "" {
			d.feel(ctx, asks[i])
		}
		if o.Err != nil && !errors.Is(o.Err, store.ErrHandled) {
			slog.Error("a conversation broke off and its update was put aside", "row", calls[i].Inbox, "cause", o.Err.Error())
		}
	}
	return nil
}

// callsOf reads rows. What cannot be read, or is not for us, becomes a call
// without an input: it is marked as handled and nothing else.
func (d *desk) callsOf(rows []store.Waiting) ([]store.Call, []string) {
	calls, asks := make([]store.Call, len(rows)), make([]string, len(rows))
	lastOf := map[int64]int{}
	for i, row := range rows {
		h, err := read(row.Body)
		calls[i] = store.Call{Chat: h.chat, In: h.in, Inbox: row.Seq}
		if err != nil {
			slog.Warn("an update was put aside", "row", row.Seq, "cause", err.Error())
			calls[i].Spoilt = err.Error()
			continue
		}
		if m, ok := h.in.(dialog.Message); ok {
			calls[i].Else = dialog.Message{Kind: dialog.Other, Amends: m.Amends}
		}
		asks[i] = h.ask
		if h.in == nil || d.AwaySince.IsZero() {
			continue
		}
		if last, ok := lastOf[h.chat]; ok {
			calls[last].Hushed = true
			delete(lastOf, h.chat)
		}
		if !h.at.IsZero() && h.at.After(d.AwaySince) && h.at.Before(row.Got.Add(-longAgo)) {
			lastOf[h.chat] = i
		}
	}
	return calls, asks
}

// longAgo is how old a line must be to share one answer with a later one.
const longAgo = 15 * time.Minute

// feel tells the platform that a button was felt, so that the phone stops
// showing it as busy. The platform forgets soon; its refusals do not matter.
func (d *desk) feel(ctx context.Context, id string) {
	select {
	case d.felt <- struct{}{}:
	default:
		return // the phone stops by itself after a while
	}
	go func() {
		defer func() { <-d.felt }()
		ctx, cancel := context.WithTimeout(context.WithoutCancel(ctx), 5*time.Second)
		defer cancel()
		d.Line.call(ctx, "answerCallbackQuery", tgbotapi.Params{"callback_query_id": id})
	}()
}
