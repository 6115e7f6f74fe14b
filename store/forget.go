package store

import (
	"context"
	"fmt"
	"slices"
	"time"

	"warmstick/dialog"
)

// TooLate is why a letter is refused whose evening has come.
const TooLate = "its day was over before it could go"

// Forget deletes a person: rows, letters, raw updates, and from the file itself
// what they said. A tombstone with nothing but the number stays, so that an older
// backup cannot bring them back.
func (db *DB) Forget(ctx context.Context, now time.Time, id dialog.PersonID) error {
	err := db.write(ctx, "forget", func() error {
		return db.erase(now, id)
	})
	if err != nil {
		return fmt.Errorf("delete person %d: %w", id, plain(err))
	}
	return db.Wipe(ctx)
}

func (db *DB) erase(now time.Time, id dialog.PersonID) error {
	for _, q := range []string{
		`DELETE FROM inbox WHERE chat = (SELECT chat FROM person WHERE id = ?1 AND chat <> 0)`,
		`DELETE FROM hold WHERE chat = (SELECT chat FROM person WHERE id = ?1)`,
		`DELETE FROM letter WHERE person = ?1 OR about = ?1`,
		`UPDATE entry SET body = '{"Text":""}' WHERE by = ?1 AND kind = 'OfficerWrote'`, // an officer's words to others
		`DELETE FROM due WHERE person = ?1`,
		`DELETE FROM card WHERE person = ?1`,
		`DELETE FROM membership WHERE person = ?1`,
		`DELETE FROM invite WHERE by = ?1`,
		`DELETE FROM entry WHERE person = ?1`,
		`DELETE FROM leaving WHERE person = ?1`,
		`DELETE FROM person WHERE id = ?1`,
	} {
		if _, err := db.stmts.once(q, int64(id)); err != nil {
			return err
		}
	}
	if _, err := db.stmts.once(`INSERT INTO tombstone VALUES (?, ?) ON CONFLICT DO NOTHING`, int64(id), ms(now)); err != nil {
		return err
	}
	db.shelf.drop(id)
	db.pouch.empty()
	delete(db.gone, id)
	return db.dropQuestions(id)
}

// dropQuestions closes what others had open about a person who is gone.
func (db *DB) dropQuestions(id dialog.PersonID) error {
	about, err := dialog.AskedAbout(id)
	if err != nil {
		return err
	}
	var others []dialog.PersonID
	err = db.stmts.rowsOnce(`SELECT id FROM person WHERE instr(talk, ?) > 0`, func(r row) error {
		others = append(others, dialog.PersonID(r.int(0)))
		return nil
	}, about)
	if err != nil {
		return err
	}
	for _, other := range others {
		p, err := db.page(other)
		if err != nil {
			return err
		}
		talk := &p.state.Talk
		talk.Past = slices.DeleteFunc(slices.Clone(talk.Past), func(past dialog.Past) bool { return past.Open.Who == id })
		if talk.Open.Who == id {
			talk.Open = dialog.Question{}
		}
		if err := db.settle(p); err != nil {
			return err
		}
	}
	return nil
}

// Wipe empties the write-ahead log, where deleted words would live on. It waits
// for readers; when one does not end it says so and the next Wipe tries again.
func (db *DB) Wipe(ctx context.Context) error {
	db.mu.Lock()
	defer db.mu.Unlock()
	var busy int64
	err := db.stmts.rowsOnce(`PRAGMA wal_checkpoint(TRUNCATE)`, func(r row) error {
		busy = r.int(0)
		return nil
	})
	if err != nil {
		return fmt.Errorf("empty the log: %w", plain(err))
	}
	if busy != 0 {
		return fmt.Errorf("empty the log: a reader is in the way")
	}
	return nil
}
