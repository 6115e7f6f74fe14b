package bot

import (
	"context"
	"errors"
	"log/slog"
	"time"

	"warmstick/store"
)

// blocked is why a letter is refused whose reader refuses us.
const blocked = "the phone refuses our letters"

// done is an error whose consequences were drawn already.
type done struct{ refused string }

func (d done) Error() string { return d.refused }

// settled marks a landing whose fate is known and only not written down.
func settled(err error) error {
	if _, ok := errors.AsType[done](err); ok {
		return err
	}
	switch r, refused := errors.AsType[*Refusal](err); {
	case err == nil:
		return done{}
	case errors.Is(err, errTooLate):
		return done{store.TooLate}
	case refused && r.Code == 403:
		return done{blocked}
	case refused && parked(r.Code):
		return done{err.Error()}
	}
	return err
}

func parked(code int) bool {
	return code >= 400 && code < 500 && code != 401 && code != 404 && code != 409 && code != 429
}

// fate decides what becomes of a letter that has come back: gone, for the reason
// given ("" = it arrived), or kept and tried again.
func (s *sender) fate(ctx context.Context, l landing) (refused string, gone bool) {
	m := s.chat(l.letter.Chat)
	err := settled(l.err)
	if d, ok := errors.AsType[done](err); ok {
		s.tired = 0
		m.tries.reset()
		if m.kept {
			m.kept, m.until = false, time.Time{}
			s.hold(ctx, store.Hold{Chat: l.letter.Chat})
		}
		if d.refused != "" && d.refused != blocked {
			slog.Warn("a letter was put aside", "letter", l.letter.ID, "cause", d.refused)
		}
		return d.refused, true
	}
	now := s.Now()
	if r, ok := errors.AsType[*Refusal](err); ok && r.Code == 429 {
		s.slowDown(ctx, now, l.letter.Chat, m, max(r.RetryAfter, time.Second))
		return "", false
	}
	m.until = now.Add(m.tries.next())
	s.tired++
	if s.tired >= badPatch {
		b := backoff(s.tired - badPatch)
		s.all = now.Add(b.next())
	}
	if s.tired <= badPatch || s.tired%100 == 0 {
		slog.Warn("a letter did not arrive and is tried again", "letter", l.letter.ID, "cause", err.Error(), "failures_in_a_row", s.tired)
	}
	return "", false
}

// badPatch is how many failures in a row mean that the line is down, not a chat.
const badPatch = 2 * sendSlots

// slowDown keeps a chat waiting as long as the platform asks. Two chats told to
// wait at the same time mean that it is all of us who are too quick.
func (s *sender) slowDown(ctx context.Context, now time.Time, chat int64, m *mailbox, wait time.Duration) {
	others := 0
	for id, o := range s.chats {
		if id != chat && o.kept && o.until.After(now) {
			others++
		}
	}
	m.until, m.kept = now.Add(wait), true
	s.hold(ctx, store.Hold{Chat: chat, Until: m.until})
	slog.Warn("the platform asks to wait", "seconds", wait.Seconds(), "chats_waiting", others+1)
	if others > 0 && m.until.After(s.all) {
		s.all = m.until
		s.hold(ctx, store.Hold{Chat: 0, Until: s.all})
	}
}

// hold writes a wait down, so that a restart does not forget it.
func (s *sender) hold(ctx context.Context, h store.Hold) {
	if err := s.Store.KeepHold(ctx, h); err != nil {
		warn("a wait could not be kept", err)
	}
}

// manyChats is when the sender begins to forget chats that have nothing special.
const manyChats = 4096

// tidy forgets chats of which there is nothing to remember.
func (s *sender) tidy() {
	if len(s.chats) < manyChats {
		return
	}
	now := s.Now()
	for id, m := range s.chats {
		if !m.busy && !m.kept && !m.until.After(now) && m.roomAt(now) >= burstOf {
			delete(s.chats, id)
		}
	}
}
