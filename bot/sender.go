package bot

import (
	"context"
	"errors"
	"log/slog"
	"time"

	"golang.org/x/time/rate"

	"warmstick/dialog"
	"warmstick/store"
)

// sendSlots is how many letters may be on their way at the same time.
const sendSlots = 48

// sendFor is how long one letter may take; after it, the answer counts as lost.
const sendFor = 20 * time.Second

// sender posts letters: urgent ones first, in order within a chat, at the pace
// that the platform allows. One goroutine decides; the letters travel on others.
type sender struct {
	*Bot
	pace    *rate.Limiter // nil = no limit
	news    signal
	landed  chan landing
	flying  int
	chats   map[int64]*mailbox
	all     time.Time // nothing goes to anybody before
	alarm   time.Time // when to look again, zero = on news only
	tired   int       // failures in a row, over all chats
	stop    context.Context
	unheard []landing // fates that could not be written down yet
}

// mailbox is what the sender remembers of one chat, while there is anything.
type mailbox struct {
	busy  bool      // a letter is on its way
	until time.Time // nothing before
	kept  bool      // the store knows of until
	tries backoff
	room  float64   // letters that may go at once
	seen  time.Time // when room was counted
}

// landing is a letter that has come back.
type landing struct {
	letter store.Letter
	err    error
}

func newSender(ctx context.Context, b *Bot) (*sender, error) {
	s := &sender{Bot: b, news: newSignal(), landed: make(chan landing, sendSlots), chats: map[int64]*mailbox{}}
	if b.Rate > 0 {
		// A burst of one: a larger one is what the platform punishes.
		s.pace = rate.NewLimiter(rate.Limit(b.Rate), 1)
	}
	holds, err := b.Store.Holds(ctx)
	if err != nil {
		return nil, err
	}
	for _, h := range holds {
		if h.Chat == 0 {
			s.all = h.Until
			continue
		}
		m := s.chat(h.Chat)
		m.until, m.kept = h.Until, true
	}
	return s, nil
}

// wake says that there may be letters.
func (s *sender) wake() { s.news.give() }

func (s *sender) run(ctx context.Context) error {
	flight, land := context.WithCancel(context.WithoutCancel(ctx))
	defer land()
	s.stop = flight
	for {
		if ctx.Err() == nil {
			if err := s.dispatch(ctx); err != nil && ctx.Err() == nil {
				warn("letters could not be read; they are tried again", err)
				s.lookAt(s.Now().Add(time.Second))
			}
		} else if s.flying == 0 {
			return ctx.Err()
		} else {
			s.lastCall(land)
		}
		s.await(ctx)
	}
}

// lastCall lets letters in flight land when the program stops, for a while; one
// more second is left to write down what became of them.
func (s *sender) lastCall(land func()) {
	t := time.AfterFunc(patience, land)
	defer t.Stop()
	end := time.After(patience + time.Second)
	for s.flying > 0 {
		select {
		case l := <-s.landed:
			s.settle(s.gather(l))
		case <-end:
			slog.Error("what became of letters could not be kept; they may go twice", "letters", s.flying)
			s.flying = 0
		}
	}
}

// await sleeps until a letter lands, news come, the alarm rings, or the end.
func (s *sender) await(ctx context.Context) {
	var alarm <-chan time.Time
	if !s.alarm.IsZero() {
		t := time.NewTimer(max(0, s.alarm.Sub(s.Now())))
		defer t.Stop()
		alarm = t.C
	}
	done := ctx.Done()
	if s.flying == 0 && ctx.Err() != nil {
		return
	}
	select {
	case l := <-s.landed:
		s.settle(s.gather(l))
	case <-s.news:
	case <-alarm:
	case <-done:
	}
}

// gather takes all letters that have landed by now, so that their fates share
// one commit.
func (s *sender) gather(first landing) []landing {
	landings := append(s.unheard, first)
	s.unheard = nil
	s.flying--
	for {
		select {
		case l := <-s.landed:
			s.flying--
			landings = append(landings, l)
		default:
			return landings
		}
	}
}

// dispatch sends as many letters on their way as may go at this moment.
func (s *sender) dispatch(ctx context.Context) error {
	s.alarm = time.Time{}
	now := s.Now()
	if s.all.After(now) {
		s.lookAt(s.all)
		return nil
	}
	slots := sendSlots - s.flying
	if s.pace != nil {
		if tokens := s.pace.TokensAt(now); tokens < 1 {
			s.lookAt(now.Add(time.Duration((1-tokens)/s.Rate*float64(time.Second)) + time.Millisecond))
			return nil
		}
		slots = min(slots, 1)
	}
	if slots <= 0 {
		return nil // the next landing looks again
	}
	taken := map[int64]bool{}
	letters, err := s.Store.Letters(ctx, now, slots, func(chat int64, class int) bool {
		if taken[chat] || !s.free(now, chat, class) {
			return false
		}
		taken[chat] = true
		return true
	})
	if err != nil {
		return err
	}
	for _, l := range letters {
		if s.pace != nil {
			s.pace.AllowN(now, 1)
		}
		s.send(now, l)
	}
	if len(letters) > 0 && len(letters) == slots {
		s.news.give() // there may be more
	}
	return nil
}

// free says whether a chat can take a letter now; when not yet, the alarm is set.
func (s *sender) free(now time.Time, chat int64, class int) bool {
	m := s.chats[chat]
	switch {
	case m == nil:
		return true
	case m.busy:
		return false
	case m.until.After(now):
		s.lookAt(m.until)
		return false
	case s.pace == nil:
		return true
	}
	need := 1.0
	if class != store.Replies {
		need = burstOf // a chat that was just written to is left in peace
	}
	if room := m.roomAt(now); room < need {
		s.lookAt(now.Add(time.Duration((need - room) * float64(time.Second))))
		return false
	}
	return true
}

// The platform allows about one letter a second and chat, and short bursts
// (seen, telegra.ph/Hitting-limits-bot-FAQ): an answer begins at once, the
// answers to a flood do not.
const burstOf = 3.0

func (m *mailbox) roomAt(now time.Time) float64 {
	return min(burstOf, m.room+max(0, now.Sub(m.seen).Seconds()))
}

func (s *sender) lookAt(t time.Time) {
	if s.alarm.IsZero() || t.Before(s.alarm) {
		s.alarm = t
	}
}

func (s *sender) chat(id int64) *mailbox {
	m := s.chats[id]
	if m == nil {
		m = &mailbox{room: burstOf}
		s.chats[id] = m
	}
	return m
}

// send puts one letter on its way.
func (s *sender) send(now time.Time, l store.Letter) {
	m := s.chat(l.Chat)
	m.room, m.seen = m.roomAt(now)-1, now
	m.busy = true
	s.flying++
	if !l.Until.IsZero() && !now.Before(l.Until) {
		s.landed <- landing{l, errTooLate} // there is room: a slot is free
		return
	}
	go func() {
		ctx, cancel := context.WithTimeout(s.stop, sendFor)
		defer cancel()
		s.landed <- landing{l, s.Line.post(ctx, s.Draw, l)}
	}()
}

var errTooLate = errors.New(store.TooLate)

// settle writes down what became of letters and frees their chats.
func (s *sender) settle(landings []landing) {
	ctx := context.WithoutCancel(s.stop)
	fates := make([]store.Fate, 0, len(landings))
	var barred []int64
	for _, l := range landings {
		if refused, gone := s.fate(ctx, l); gone {
			fates = append(fates, store.Fate{Letter: l.letter.ID, Person: l.letter.Letter.To, Refused: refused})
			if refused == blocked {
				barred = append(barred, l.letter.Chat)
			}
		}
	}
	var leave []dialog.PersonID
	if len(fates) > 0 {
		var err error
		if leave, err = s.Store.Settle(ctx, fates); err != nil {
			s.keepForLater(landings, err)
			return
		}
	}
	for _, l := range landings {
		s.chats[l.letter.Chat].busy = false
	}
	s.tidy()
	s.bar(ctx, barred)
	s.bury(ctx, leave)
}

// keepForLater holds on to fates that could not be written down: their chats
// stay busy, so that nothing goes twice meanwhile.
func (s *sender) keepForLater(landings []landing, err error) {
	warn("what became of letters could not be kept; it is tried again", err)
	s.flying++
	again := landings[0]
	s.unheard = append(s.unheard, landings[1:]...)
	for i := range s.unheard {
		s.unheard[i].err = settled(s.unheard[i].err)
	}
	again.err = settled(again.err)
	time.AfterFunc(time.Second, func() { s.landed <- again })
}

// bar tells the conversation whose phone refuses letters.
func (s *sender) bar(ctx context.Context, chats []int64) {
	for _, chat := range chats {
		if _, err := s.Store.Converse(ctx, s.Now(), store.Call{Chat: chat, In: dialog.Barred{Now: true}}); err != nil {
			warn("a refused chat could not be noted", err)
		}
		s.news.give()
	}
}

// bury deletes people whose last letter has gone.
func (s *sender) bury(ctx context.Context, people []dialog.PersonID) {
	for _, p := range people {
		if err := s.Store.Forget(ctx, s.Now(), p); err != nil {
			slog.Error("a person who asked to be deleted is still there; housekeeping tries again", "person", int64(p), "cause", err.Error())
		}
	}
	if len(people) > 0 && s.Left != nil {
		s.Left(ctx, people)
	}
}
