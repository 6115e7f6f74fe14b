package store

import (
	"context"
	"fmt"
	"time"

	"warmstick/dialog"
)

// PersonOf finds who has a chat; 0 when nobody has.
func (db *DB) PersonOf(ctx context.Context, chat int64) (dialog.PersonID, error) {
	db.mu.Lock()
	defer db.mu.Unlock()
	id, err := db.stmts.number(personByChat, chat)
	return dialog.PersonID(id), err
}

// StateOf folds one person's diary, with their talk.
func (db *DB) StateOf(ctx context.Context, id dialog.PersonID) (dialog.State, error) {
	db.mu.Lock()
	defer db.mu.Unlock()
	defer db.shelf.forget()
	p, err := db.page(id)
	if err != nil || p == nil {
		return dialog.State{}, err
	}
	return p.state, nil
}

// DiaryOf reads one person's diary, oldest line first.
func (db *DB) DiaryOf(ctx context.Context, id dialog.PersonID) ([]dialog.Entry, error) {
	db.mu.Lock()
	defer db.mu.Unlock()
	return db.diary(id)
}

// DueOf lists one person's due rows.
func (db *DB) DueOf(ctx context.Context, id dialog.PersonID) ([]dialog.Due, error) {
	db.mu.Lock()
	defer db.mu.Unlock()
	var due []dialog.Due
	err := db.stmts.rows(dueList, func(r row) error {
		due = append(due, dialog.Due{Person: id, Heap: dialog.HeapID(r.int(0)), Task: dialog.Task(r.text(1)), Day: dialog.Day(r.int(2)), At: at(r.int(3))})
		return nil
	}, int64(id))
	return due, err
}

// Newest is the code of a person's newest invite that still holds; "" when there
// is none.
func (db *DB) Newest(ctx context.Context, by dialog.PersonID, now time.Time) (string, error) {
	s, err := db.StateOf(ctx, by)
	if err != nil {
		return "", fmt.Errorf("invites of person %d: %w", by, err)
	}
	for i := len(s.Person.Invites) - 1; i >= 0; i-- {
		if v := s.Person.Invites[i]; !v.Ended && v.Expires.After(now) {
			return v.Code, nil
		}
	}
	return "", nil
}
