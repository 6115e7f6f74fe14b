package store

import (
	"context"
	"fmt"
	"strconv"
	"time"
)

// Raw is one update as the platform sent it.
type Raw struct {
	ID   int64 // the platform's number for it
	Chat int64 // whose, 0 when that could not be read
	Body []byte
}

// Waiting is an update without its answer yet. Seq is the order of arrival.
type Waiting struct {
	Seq  int64
	Chat int64
	Got  time.Time
	Body []byte
}

// keptByPlatform is how long an update may be delivered again: the platform
// keeps it 24 hours. An equal number later than that is another update, as the
// numbers start anew at random after a quiet week.
const keptByPlatform = 36 * time.Hour

// Receive keeps raw updates and the offset to poll with next, in one commit. An
// update that came before is not kept twice. A negative offset leaves the kept
// one alone (the webhook has none).
func (db *DB) Receive(ctx context.Context, now time.Time, in []Raw, offset int64) error {
	err := db.write(ctx, "receive", func() error {
		for _, r := range in {
			if err := db.receiveOne(now, r); err != nil {
				return fmt.Errorf("update %d: %w", r.ID, err)
			}
		}
		if offset < 0 {
			return nil
		}
		if _, err := db.stmts.exec(settingSet, "offset", strconv.FormatInt(offset, 10)); err != nil {
			return err
		}
		_, err := db.stmts.exec(settingSet, "received", strconv.FormatInt(ms(now), 10))
		return err
	})
	if err != nil {
		return fmt.Errorf("keep %d updates: %w", len(in), plain(err))
	}
	return nil
}

func (db *DB) receiveOne(now time.Time, r Raw) error {
	added, err := db.stmts.exec(inboxAdd, r.ID, r.Chat, ms(now), r.Body)
	if err != nil || added == 1 {
		return err
	}
	cut, err := db.stmts.exec(inboxStale, r.ID, ms(now.Add(-keptByPlatform)))
	if err != nil || cut == 0 {
		return err
	}
	_, err = db.stmts.exec(inboxAdd, r.ID, r.Chat, ms(now), r.Body)
	return err
}

// restartAfter is when the platform's numbers may have started anew: a week,
// less a day.
const restartAfter = 6 * 24 * time.Hour

// Offset is the number to poll from; 0 asks for all that the platform still has.
func (db *DB) Offset(ctx context.Context, now time.Time) (int64, error) {
	offset, err := db.number(ctx, "offset")
	if err != nil {
		return 0, err
	}
	received, err := db.number(ctx, "received")
	if err != nil || now.Sub(at(received)) > restartAfter {
		return 0, err
	}
	return offset, nil
}

func (db *DB) number(ctx context.Context, name string) (int64, error) {
	text, err := db.Setting(ctx, name)
	if err != nil || text == "" {
		return 0, err
	}
	return strconv.ParseInt(text, 10, 64)
}

// Setting reads one kept word of the machinery; "" when there is none.
func (db *DB) Setting(ctx context.Context, name string) (string, error) {
	db.mu.Lock()
	defer db.mu.Unlock()
	r, err := db.stmts.first(settingGet, name)
	if r == nil {
		return "", err
	}
	return r.text(0), err
}

// Set keeps one word of the machinery.
func (db *DB) Set(ctx context.Context, name, value string) error {
	return db.write(ctx, "set", func() error {
		_, err := db.stmts.exec(settingSet, name, value)
		return err
	})
}

// Waiting lists updates without an answer, in order of arrival.
func (db *DB) Waiting(ctx context.Context, limit int) ([]Waiting, error) {
	db.mu.Lock()
	defer db.mu.Unlock()
	var list []Waiting
	err := db.stmts.rows(inboxList, func(r row) error {
		list = append(list, Waiting{Seq: r.int(0), Chat: r.int(1), Got: at(r.int(2)), Body: r.bytes(3)})
		return nil
	}, limit)
	if err != nil {
		return nil, fmt.Errorf("list waiting updates: %w", err)
	}
	return list, nil
}

// Spoil puts an update aside for good: it cannot be read, or it broke the
// conversation. The rest go on.
func (db *DB) Spoil(ctx context.Context, now time.Time, seq int64, why string) error {
	return db.write(ctx, "spoil", func() error {
		_, err := db.stmts.exec(inboxSpoil, ms(now), why, seq)
		return err
	})
}
