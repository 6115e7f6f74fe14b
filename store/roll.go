package store

import (
	"context"
	"database/sql"
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
	var all []Member
	err = scanned(ctx, tx, `SELECT id, coalesce(chat, 0) FROM person WHERE id NOT IN (SELECT person FROM leaving) ORDER BY id`, 2, func(r row) error {
		all = append(all, Member{Person: dialog.PersonID(r.int(0)), Chat: r.int(1)})
		return nil
	})
	if err != nil {
		return fmt.Errorf("read the diaries: %w", plain(err))
	}
	for _, m := range all {
		if m.Diary, err = diaryIn(ctx, tx, m.Person); err != nil {
			return fmt.Errorf("read the diaries: %w", plain(err))
		}
		if err := each(m); err != nil {
			return err
		}
	}
	return nil
}

func diaryIn(ctx context.Context, tx querier, id dialog.PersonID) (diary []dialog.Entry, err error) {
	err = scanned(ctx, tx, sqlOf[entryList], 9, func(r row) error {
		e, err := entryOf(r, id)
		diary = append(diary, e)
		return err
	}, int64(id))
	return diary, err
}

// querier is what reads: a connection or a transaction of database/sql.
type querier interface {
	QueryContext(ctx context.Context, query string, args ...any) (*sql.Rows, error)
}

// scanned calls each for every row of an answer with so many columns.
func scanned(ctx context.Context, q querier, text string, columns int, each func(row) error, args ...any) error {
	rows, err := q.QueryContext(ctx, text, args...)
	if err != nil {
		return err
	}
	defer rows.Close()
	r, into := make(row, columns), make([]any, columns)
	for i := range r {
		into[i] = &r[i]
	}
	for rows.Next() {
		if err := rows.Scan(into...); err != nil {
			return err
		}
		if err := each(r); err != nil {
			return err
		}
	}
	return rows.Err()
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
