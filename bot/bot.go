// Package bot carries messages between people's phones and the inbox and outbox:
// over the chat HTTP Bot API, at a terminal, and from a rehearsal script. It
// understands none of them.
package bot

import (
	"context"
	"errors"
	"log/slog"
	"time"

	"golang.org/x/sync/errgroup"

	"warmstick/dialog"
	"warmstick/store"
)

// Store is what the bot needs kept; *store.DB has it.
type Store interface {
	Receive(ctx context.Context, now time.Time, in []store.Raw, offset int64) error
	Offset(ctx context.Context, now time.Time) (int64, error)
	Waiting(ctx context.Context, limit int) ([]store.Waiting, error)
	Converse(ctx context.Context, now time.Time, calls ...store.Call) ([]store.Outcome, error)
	Spoil(ctx context.Context, now time.Time, seq int64, why string) error
	Letters(ctx context.Context, now time.Time, limit int, free func(chat int64, class int) bool) ([]store.Letter, error)
	Settle(ctx context.Context, fates []store.Fate) ([]dialog.PersonID, error)
	KeepHold(ctx context.Context, h store.Hold) error
	Holds(ctx context.Context) ([]store.Hold, error)
	Forget(ctx context.Context, now time.Time, id dialog.PersonID) error
}

// Bot is one bot on the chat HTTP Bot API. It does not read the clock itself.
type Bot struct {
	Store Store
	Line  *Line
	Now   func() time.Time
	Draw  Draw
	Rate  float64 // letters a second over all chats; 0 = no limit
	// Hook, when set, is where updates arrive instead of by asking for them.
	Hook *Hook
	// Commands are the words of the platform's menu, by language; "" is the
	// language of everybody else.
	Commands []Commands
	Officers []int64 // chats that are officers from the start
	// AwaySince is when the program last ran, if it was away for long; lines sent
	// meanwhile get one answer a chat. Zero = not away.
	AwaySince time.Time
	// Started, when set, is given what wakes the sender, for whoever else writes
	// letters.
	Started func(wake func())
	// Left is told who was deleted, so that backups can be cleared of them too.
	Left func(ctx context.Context, people []dialog.PersonID)
}

// patience is how long a stopping bot waits for letters in flight.
const patience = 7 * time.Second

// Run works until ctx ends, then finishes what is in hand. Its error is one that
// no waiting mends: a token nobody knows, a file that cannot be written.
func (b *Bot) Run(ctx context.Context) error {
	if err := b.appoint(ctx); err != nil {
		return err
	}
	d := newDesk(b)
	s, err := newSender(ctx, b)
	if err != nil {
		return err
	}
	d.posted = s.wake
	if b.Started != nil {
		b.Started(s.wake)
	}
	g, working := errgroup.WithContext(ctx)
	way := d.poll
	if b.Hook != nil {
		way = d.listen
	}
	g.Go(func() error { return way(working) })
	g.Go(func() error { return d.run(working) })
	g.Go(func() error { return s.run(working) })
	g.Go(func() error { b.tellCommands(working); return nil })
	if err := g.Wait(); err != nil && !errors.Is(err, context.Canceled) {
		return err
	}
	return nil
}

// appoint makes officers of the operator's list; telling it again changes
// nothing.
func (b *Bot) appoint(ctx context.Context) error {
	for _, chat := range b.Officers {
		if _, err := b.Store.Converse(ctx, b.Now(), store.Call{Chat: chat, In: dialog.OfficerMade{}}); err != nil {
			return err
		}
	}
	return nil
}

// signal wakes one loop; many signals before it looks are one.
type signal chan struct{}

func newSignal() signal { return make(signal, 1) }

func (s signal) give() {
	select {
	case s <- struct{}{}:
	default:
	}
}

// pause waits, or less when ctx ends.
func pause(ctx context.Context, d time.Duration) {
	t := time.NewTimer(d)
	defer t.Stop()
	select {
	case <-t.C:
	case <-ctx.Done():
	}
}

// Commands is the platform's menu in one language.
type Commands struct {
	Lang string // two letters, "" for everybody else
	List []MenuWord
}

// MenuWord is one word of the menu and what it does.
type MenuWord struct {
	Command     string `json:"command"`
	Description string `json:"description"`
}

func warn(what string, err error) { slog.Warn(what, "cause", err.Error()) }
