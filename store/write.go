package store

import (
	"context"
	"database/sql"
	"fmt"

	"warmstick/dialog"
)

// counter is the last numbers given away; a transaction that fails gives its
// numbers back.
type counter struct{ person, entry, letter int64 }

func (c *counter) load(s statements) error {
	return s.row(counterGet).Scan(&c.person, &c.entry, &c.letter)
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
	if db.stmts[begin] == nil {
		return sql.ErrConnDone
	}
	before, held := db.count, false
	if _, err := db.stmts[begin].Exec(); err != nil {
		return err
	}
	defer func() {
		if held {
			db.shelf.keep()
			return
		}
		db.count = before
		db.shelf.forget()
		db.stmts[rollback].Exec() // SQLite may have rolled back already
	}()
	if err := do(); err != nil {
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
	if _, err := db.stmts[commit].Exec(); err != nil {
		return fmt.Errorf("commit: %w", err)
	}
	held = true
	if db.broken != nil {
		return db.broken(what + " after commit")
	}
	return nil
}

func (db *DB) loadLeaving() error {
	return db.stmts.rows(leavingList, func(rows *sql.Rows) error {
		var p int64
		err := rows.Scan(&p)
		db.gone[dialog.PersonID(p)] = true
		return err
	})
}
