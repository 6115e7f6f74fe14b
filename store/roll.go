package store

import (
	"context"
	"fmt"

	"warmstick/dialog"
)

// Member is one person as the file has them.
type Member struct {
	Person dialog.PersonID
	Chat   int64 // 0 for a farmer without a phone
	Diary  []dialog.Entry
}

// Roll reads everybody's diary, in or out of use, one person after the other, as
// they stood at one moment. It changes nothing.
func Roll(ctx context.Context, path string, each func(Member) error) error {
	conn, done, err := readOnly(ctx, path)
	if err != nil {
		return fmt.Errorf("read the diaries: %w", err)
	}
	defer done()
	tx, err := conn.BeginTx(ctx, nil) // one moment for all
	if err != nil {
		return fmt.Errorf("read the diaries: %w", plain(err))
	}
	defer tx.Rollback()
	people, err := tx.QueryContext(ctx, `SELECT id, coalesce(chat, 0) FROM person WHERE id NOT IN (SELECT person FROM leaving) ORDER BY id`)
	if err != nil {
		return fmt.Errorf("read the diaries: %w", plain(err))
	}
	var all []Member
	for people.Next() {
		var m Member
		if err := people.Scan(&m.Person, &m.Chat); err != nil {
			people.Close()
			return err
		}
		all = append(all, m)
	}
	if err := people.Close(); err != nil {
		return err
	}
	for _, m := range all {
		rows, err := tx.QueryContext(ctx, `SELECT id, heap, at, day, noted, by, told, kind, body FROM entry WHERE person = ? ORDER BY id`, int64(m.Person))
		if err != nil {
			return fmt.Errorf("diary of person %d: %w", m.Person, plain(err))
		}
		for rows.Next() {
			e := dialog.Entry{Person: m.Person}
			var happened, noted int64
			var kind, body string
			if err := rows.Scan(&e.ID, &e.Heap, &happened, &e.Day, &noted, &e.By, &e.Told, &kind, &body); err != nil {
				rows.Close()
				return err
			}
			e.At, e.Noted = at(happened), at(noted)
			if e.Event, err = dialog.Decode(kind, []byte(body)); err != nil {
				rows.Close()
				return fmt.Errorf("person %d, line %d: %w", m.Person, e.ID, err)
			}
			m.Diary = append(m.Diary, e)
		}
		if err := rows.Close(); err != nil {
			return err
		}
		if err := each(m); err != nil {
			return err
		}
	}
	return nil
}

// GroupCards gives a group and the cards of its farmers, for a paper that is
// drawn when it is posted.
func (db *DB) GroupCards(ctx context.Context, id dialog.GroupID) (dialog.Group, []dialog.Card, error) {
	db.mu.Lock()
	defer db.mu.Unlock()
	defer db.shelf.forget()
	r := &register{db: db}
	g, ok := r.Group(id)
	if !ok && r.err == nil {
		r.err = fmt.Errorf("group %d is not there any more", id)
	}
	cards := r.Members(id)
	return g, cards, r.err
}
