package store

import (
	"context"
	"fmt"

	"warmstick/dialog"
)

// counter is the last numbers given away; a transaction that fails gives its
// numbers back.
type counter struct{ person, entry, letter int64 }

func (c *counter) load(s *statements) error {
	r, err := s.first(counterGet)
	if r != nil {
		c.person, c.entry, c.letter = r.int(0), r.int(1), r.int(2)
	}
	return err
}

// write runs one transaction of the writer. It either happened as a whole when
// write returns nil, or not at all.
func (db *DB) write(ctx context.Context, what string, do func() error) error {
	db.mu.Lock()
	defer db.mu.Unlock()
	if err := ctx.Err(); err != nil {
		return err
	}
	return db.writeLocked(what, do)
}

func (db *DB) writeLocked(what string, do func() error) error {
	before, held := db.count, false
	if _, err := db.stmts.exec(begin); err != nil {
		return err
	}
	defer func() {
		if held {
			db.shelf.keep()
			db.pouch.keep()
			return
		}
		db.forgetForeseen()
		db.count = before
		db.putAway()
		db.shelf.forget()
		db.pouch.forget()
		db.stmts.exec(rollback) // SQLite may have rolled back already
	}()
	if err := do(); err != nil {
		return err
	}
	if err := db.save(); err != nil {
		return err
	}
	if db.count != before {
		if _, err := db.stmts.exec(counterSet, db.count.person, db.count.entry, db.count.letter); err != nil {
			return err
		}
	}
	if db.broken != nil {
		if err := db.broken(what + " before commit"); err != nil {
			return err
		}
	}
	if _, err := db.stmts.exec(commit); err != nil {
		return fmt.Errorf("commit: %w", err)
	}
	held = true
	if db.broken != nil {
		return db.broken(what + " after commit")
	}
	return nil
}

func (db *DB) loadLeaving() error {
	return db.stmts.rows(leavingList, func(r row) error {
		db.gone[dialog.PersonID(r.int(0))] = true
		return nil
	})
}
