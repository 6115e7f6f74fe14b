package store

import (
	"cmp"
	"context"
	"database/sql"
	"encoding/json"
	"fmt"
	"time"

	"warmstick/dialog"
)

// The classes of letters: what a person waits for goes before what the clock
// wants to say, and that before what is said to everybody.
const (
	Replies = iota
	Reminders
	Announcements
	classes
)

func classOf(k dialog.LetterKind) int {
	switch k {
	case dialog.Remind, dialog.Digest:
		return Reminders
	case dialog.Broadcast:
		return Announcements
	}
	return Replies
}

// Letter is one letter of the outbox.
type Letter struct {
	ID     int64
	Chat   int64
	Class  int
	Until  time.Time // of no use after that; zero = always of use
	Letter dialog.Letter
}

// The hours of the day between which nothing goes out unasked for (the
// contract's promise 5).
const (
	quietFrom  = 20 * 60
	quietUntil = 6 * 60
)

// post puts one letter into the outbox. Nothing goes to people without a chat.
func (w *writing) post(l dialog.Letter, body string) error {
	p, err := w.db.page(l.To)
	if err != nil {
		return err
	}
	if p == nil || p.chat == 0 {
		return nil
	}
	if l.Opens != nil {
		p.state.Talk = dialog.WithQuestion(p.state.Talk, *l.Opens)
		w.touch(p)
		l.Opens = nil
	}
	class := classOf(l.Kind)
	if w.hushed && l.Kind == dialog.Reply && p == w.speaker && !careful(l.Advice) {
		return nil
	}
	after := l.After
	if class != Replies && w.now.After(after) {
		after = w.now // a clock that jumps back must not let it out at night
	}
	about := w.speaker.state.Person.ID
	if about == l.To || l.Kind == dialog.Broadcast {
		about = 0
	}
	w.db.count.letter++
	w.letters++
	until := w.until(p, l, class)
	_, err = w.db.stmts.exec(letterAdd, w.db.count.letter, int64(l.To), p.chat, class, ms(after), ms(until),
		ms(w.now), int64(l.Heap), int64(about), l.Batch, body)
	w.db.pouch.lay(Letter{ID: w.db.count.letter, Chat: p.chat, Class: class, Until: at(ms(until)), Letter: l})
	return err
}

// until is the evening after which an unasked letter has lost its sense: better
// none than one at night.
func (w *writing) until(p *page, l dialog.Letter, class int) time.Time {
	if class == Replies {
		return time.Time{}
	}
	from := w.now
	if l.After.After(from) {
		from = l.After
	}
	zone := p.state.Person.Zone()
	return dialog.DayOf(from, zone).On(quietFrom, zone)
}

// careful says whether a letter holds words of care, which are never held back.
func careful(advice []string) bool {
	for _, a := range advice {
		switch a {
		case "burn_care", "breath_care", "poison_care", "cut_care", "bite_care", "eye_care",
			"pressure_warning", "smoke_emergency", "stopped":
			return true
		}
	}
	return false
}

// Letters lists up to limit letters that may go now, the most urgent first. free
// is asked for each of them in turn whether its chat can take a letter of that
// class; those that it declines stay where they are.
func (db *DB) Letters(ctx context.Context, now time.Time, limit int, free func(chat int64, class int) bool) ([]Letter, error) {
	db.mu.Lock()
	defer db.mu.Unlock()
	type pick struct{ id, chat int64 }
	var picks []pick
	for class := range classes {
		err := db.stmts.rows(letterQueue, func(r row) error {
			if p := (pick{r.int(0), r.int(1)}); free(p.chat, class) {
				picks = append(picks, p)
			}
			if len(picks) == limit {
				return errEnough
			}
			return nil
		}, class, ms(now))
		if err != nil {
			return nil, fmt.Errorf("list letters: %w", err)
		}
		if len(picks) == limit {
			break
		}
	}
	list := make([]Letter, 0, len(picks))
	for _, p := range picks {
		l, err := db.letter(p.id)
		if err != nil {
			return nil, fmt.Errorf("letter %d: %w", p.id, err)
		}
		list = append(list, l)
	}
	return list, nil
}

func (db *DB) letter(id int64) (Letter, error) {
	if l, ok := db.pouch.take(id); ok {
		return l, nil
	}
	r, err := db.stmts.first(letterOne, id)
	if r == nil {
		return Letter{}, cmp.Or(err, sql.ErrNoRows)
	}
	l := Letter{ID: id, Chat: r.int(1), Class: int(r.int(2)), Until: at(r.int(3))}
	return l, json.Unmarshal(r.bytes(4), &l.Letter)
}

// Fate is what became of a letter.
type Fate struct {
	Letter int64
	Person dialog.PersonID
	// Refused says why it will never go; "" = it went.
	Refused string
}

// Settle writes down what became of letters, in one commit. It answers with the
// people who were waiting to be deleted and now can be.
func (db *DB) Settle(ctx context.Context, fates []Fate) ([]dialog.PersonID, error) {
	var leave []dialog.PersonID
	err := db.write(ctx, "settle", func() error {
		for _, f := range fates {
			var err error
			if f.Refused == "" {
				_, err = db.stmts.exec(letterCut, f.Letter)
			} else {
				_, err = db.stmts.exec(letterRefuse, f.Refused, f.Letter)
			}
			if err != nil {
				return fmt.Errorf("letter %d: %w", f.Letter, err)
			}
			if !db.gone[f.Person] {
				continue
			}
			left, err := db.stmts.number(letterLeft, int64(f.Person))
			if err != nil {
				return err
			}
			if left == 0 {
				leave = append(leave, f.Person)
			}
		}
		return nil
	})
	if err != nil {
		return nil, fmt.Errorf("settle %d letters: %w", len(fates), plain(err))
	}
	return leave, nil
}

// Hold is a chat to which nothing may go before Until; chat 0 stands for all.
type Hold struct {
	Chat  int64
	Until time.Time
	Tries int
}

// Keep writes a hold down, so that it outlives a restart; a hold without Until
// ends it.
func (db *DB) KeepHold(ctx context.Context, h Hold) error {
	return db.write(ctx, "hold", func() error {
		if h.Until.IsZero() {
			_, err := db.stmts.exec(holdCut, h.Chat)
			return err
		}
		_, err := db.stmts.exec(holdSet, h.Chat, ms(h.Until), h.Tries)
		return err
	})
}

// Holds lists the holds that were kept.
func (db *DB) Holds(ctx context.Context) ([]Hold, error) {
	db.mu.Lock()
	defer db.mu.Unlock()
	var list []Hold
	err := db.stmts.rows(holdList, func(r row) error {
		list = append(list, Hold{Chat: r.int(0), Until: at(r.int(1)), Tries: int(r.int(2))})
		return nil
	})
	return list, err
}

// NextLetter is the next moment after now at which a letter held back may go.
func (db *DB) nextLetter(now time.Time) (time.Time, error) {
	var next int64
	for class := range classes {
		n, err := db.stmts.number(letterAfter, class, ms(now))
		if err != nil {
			return time.Time{}, err
		}
		if n != 0 && (next == 0 || n < next) {
			next = n
		}
	}
	return at(next), nil
}

// NextMoment is the next moment at which something falls due or a letter held
// back may go; zero when nothing is planned.
func (db *DB) NextMoment(ctx context.Context, now time.Time) (time.Time, error) {
	db.mu.Lock()
	defer db.mu.Unlock()
	next, err := db.nextLetter(now)
	if err != nil {
		return time.Time{}, fmt.Errorf("next letter: %w", err)
	}
	due, err := db.stmts.number(dueMin)
	if err != nil {
		return time.Time{}, fmt.Errorf("next due: %w", err)
	}
	if due != 0 && (next.IsZero() || at(due).Before(next)) {
		next = at(due)
	}
	return next, nil
}

// NextDue lists people with something due, the longest due first.
func (db *DB) NextDue(ctx context.Context, now time.Time, limit int) ([]dialog.PersonID, error) {
	db.mu.Lock()
	defer db.mu.Unlock()
	if people := db.dueForeseen(now, limit); people != nil {
		return people, nil
	}
	people, err := db.nextDue(now, limit)
	if err != nil {
		return nil, fmt.Errorf("list due: %w", err)
	}
	return people, nil
}

func (db *DB) nextDue(now time.Time, limit int) (people []dialog.PersonID, err error) {
	seen := make(map[dialog.PersonID]bool, limit)
	err = db.stmts.rows(dueNext, func(r row) error {
		if p := dialog.PersonID(r.int(0)); !seen[p] {
			seen[p] = true
			people = append(people, p)
		}
		return nil
	}, ms(now), limit)
	return people, err
}
