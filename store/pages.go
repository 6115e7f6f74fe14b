package store

import (
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"

	"warmstick/dialog"
)

// pageByChat loads a person by chat; nil when nobody has it.
func (db *DB) pageByChat(chat int64) (*page, error) {
	if id, ok := db.shelf.chats[chat]; ok {
		return db.page(id)
	}
	var id int64
	var talk string
	err := db.stmts.row(personByChat, chat).Scan(&id, &talk)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	return db.load(dialog.PersonID(id), chat, talk)
}

// page loads a person by number; nil when there is none.
func (db *DB) page(id dialog.PersonID) (*page, error) {
	if p := db.shelf.take(id); p != nil {
		return p, nil
	}
	var chat int64
	var talk string
	err := db.stmts.row(personByID, int64(id)).Scan(&chat, &talk)
	if errors.Is(err, sql.ErrNoRows) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	return db.load(id, chat, talk)
}

func (db *DB) load(id dialog.PersonID, chat int64, talk string) (*page, error) {
	p := &page{chat: chat}
	if err := db.fold(p, id); err != nil {
		return nil, err
	}
	if err := json.Unmarshal([]byte(talk), &p.state.Talk); err != nil {
		return nil, fmt.Errorf("talk of person %d: %w", id, err)
	}
	if err := db.loadDue(p); err != nil {
		return nil, err
	}
	p.was = projectedOf(p.state)
	return db.shelf.lay(p), nil
}

// fold makes the state from the snapshot, if any, and the lines after it. A
// struck line folds everything anew.
func (db *DB) fold(p *page, id dialog.PersonID) error {
	var upto int64
	var body string
	err := db.stmts.row(snapshotGet, int64(id)).Scan(&upto, &p.lines, &body)
	switch {
	case errors.Is(err, sql.ErrNoRows):
		return db.foldAnew(p, id)
	case err != nil:
		return err
	}
	var s dialog.State
	if err := json.Unmarshal([]byte(body), &s); err != nil {
		return db.foldAnew(p, id) // of an older program; the diary is what counts
	}
	rest, err := db.diary(id, upto)
	if err != nil {
		return err
	}
	for _, e := range rest {
		if _, struck := e.Event.(dialog.Struck); struck {
			return db.foldAnew(p, id)
		}
		s = s.After(e)
	}
	p.state, p.last, p.lines = s, upto, len(rest)
	if n := len(rest); n > 0 {
		p.last = int64(rest[n-1].ID)
	}
	return nil
}

func (db *DB) foldAnew(p *page, id dialog.PersonID) error {
	diary, err := db.diary(id, 0)
	if err != nil {
		return err
	}
	p.state, p.lines, p.last = dialog.Fold(id, diary), len(diary), 0
	if n := len(diary); n > 0 {
		p.last = int64(diary[n-1].ID)
	}
	return nil
}

// diary reads a person's lines after one, oldest first.
func (db *DB) diary(id dialog.PersonID, after int64) ([]dialog.Entry, error) {
	var diary []dialog.Entry
	err := db.stmts.rows(entryList, func(rows *sql.Rows) error {
		e, err := scanEntry(rows, id)
		diary = append(diary, e)
		return err
	}, int64(id), after)
	return diary, err
}

type scanner interface{ Scan(into ...any) error }

func scanEntry(rows scanner, id dialog.PersonID) (dialog.Entry, error) {
	e := dialog.Entry{Person: id}
	var happened, noted int64
	var kind string
	var body sql.RawBytes
	if err := rows.Scan(&e.ID, &e.Heap, &happened, &e.Day, &noted, &e.By, &e.Told, &kind, &body); err != nil {
		return e, err
	}
	e.At, e.Noted = at(happened), at(noted)
	event, err := dialog.Decode(kind, body)
	if err != nil {
		return e, fmt.Errorf("person %d, line %d: %w", id, e.ID, err)
	}
	e.Event = event
	return e, nil
}

func (db *DB) loadDue(p *page) error {
	id := p.state.Person.ID
	return db.stmts.rows(dueList, func(rows *sql.Rows) error {
		d := dialog.Due{Person: id}
		var moment, look int64
		err := rows.Scan(&d.Heap, &d.Task, &d.Day, &moment, &look)
		d.At = at(moment)
		if look != moment {
			p.look = max(p.look, look)
		}
		p.plan = append(p.plan, d)
		return err
	}, int64(id))
}
