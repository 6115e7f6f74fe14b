package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"fmt"

	"warmstick/dialog"
)

// packTalks is the step from version 1, in which talks and snapshots were JSON.
// The snapshots are let go: they are made anew from the diaries as people are
// heard. The talks cannot be made anew and are packed.
func packTalks(ctx context.Context, tx *sql.Tx) error {
	const anew = `CREATE TABLE packed (
		id   INTEGER PRIMARY KEY,
		chat INTEGER UNIQUE,           -- none for a farmer without a phone
		talk BLOB NOT NULL,            -- packed; empty = nothing said yet
		fold BLOB                      -- the folded diary, packed; without it the diary is read
	) STRICT`
	if _, err := tx.ExecContext(ctx, anew); err != nil {
		return err
	}
	add, err := tx.PrepareContext(ctx, `INSERT INTO packed SELECT id, chat, ?, NULL FROM person WHERE id = ?`)
	if err != nil {
		return err
	}
	defer add.Close()
	err = eachTalk(ctx, tx, func(id int64, talk []byte) error {
		_, err := add.ExecContext(ctx, talk, id)
		return err
	})
	if err != nil {
		return err
	}
	for _, q := range []string{`DROP TABLE person`, `ALTER TABLE packed RENAME TO person`} {
		if _, err := tx.ExecContext(ctx, q); err != nil {
			return err
		}
	}
	return nil
}

// eachTalk packs the talks of version 1, a thousand people at a time.
func eachTalk(ctx context.Context, tx *sql.Tx, do func(id int64, talk []byte) error) error {
	type old struct {
		id   int64
		talk []byte
	}
	for last := int64(0); ; {
		var some []old
		err := scanned(ctx, tx, `SELECT id, talk FROM person WHERE id > ? ORDER BY id LIMIT 1000`, 2, func(r row) error {
			var talk dialog.Talk
			if err := json.Unmarshal(r.bytes(1), &talk); err != nil {
				return fmt.Errorf("talk of person %d: %w", r.int(0), err)
			}
			packed, err := dialog.PackTalk(talk)
			some = append(some, old{r.int(0), packed})
			return err
		}, last)
		if err != nil || len(some) == 0 {
			return err
		}
		for _, o := range some {
			if err := do(o.id, o.talk); err != nil {
				return err
			}
			last = o.id
		}
	}
}
