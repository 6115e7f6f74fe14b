package store

import (
	"encoding/json"
	"fmt"

	"warmstick/dialog"
)

// pageByChat loads a person by chat; nil when nobody has it.
func (db *DB) pageByChat(chat int64) (*page, error) {
	if id, ok := db.shelf.chats[chat]; ok {
		return db.page(id)
	}
	return db.load(personByChat, chat)
}

// page loads a person by number; nil when there is none.
func (db *DB) page(id dialog.PersonID) (*page, error) {
	if p := db.shelf.take(id); p != nil {
		return p, nil
	}
	return db.load(personByID, int64(id))
}

// load reads one person: talk and snapshot in one row, then the lines after the
// snapshot, if there are any. The due rows are not read: they are the plan, written down.
func (db *DB) load(q query, key int64) (*page, error) {
	r, err := db.stmts.first(q, key)
	if r == nil {
		return nil, err
	}
	id := dialog.PersonID(r.int(0))
	p := &page{chat: r.int(1), last: r.int(3), upto: r.int(4)}
	if err := db.fold(p, id, r.bytes(5)); err != nil {
		return nil, err
	}
	if err := json.Unmarshal(r.bytes(2), &p.state.Talk); err != nil {
		return nil, fmt.Errorf("talk of person %d: %w", id, err)
	}
	p.plan = dialog.Plan(p.state)
	p.was = projectedOf(p.state)
	return db.shelf.lay(p), nil
}

// fold makes the state from a snapshot, if any, and the lines after it. A struck
// line folds everything anew.
func (db *DB) fold(p *page, id dialog.PersonID, snapshot []byte) error {
	var s dialog.State
	if len(snapshot) == 0 || json.Unmarshal(snapshot, &s) != nil {
		return db.foldAnew(p, id) // none, or of an older program; the diary is what counts
	}
	p.state = s
	if p.upto == p.last {
		return nil
	}
	rest, err := db.diary(id, p.upto)
	if err != nil {
		return err
	}
	for _, e := range rest {
		if _, struck := e.Event.(dialog.Struck); struck {
			return db.foldAnew(p, id)
		}
		s = s.After(e)
	}
	p.state, p.lines = s, len(rest)
	return nil
}

func (db *DB) foldAnew(p *page, id dialog.PersonID) error {
	diary, err := db.diary(id, 0)
	if err != nil {
		return err
	}
	talk := p.state.Talk
	p.state, p.lines, p.last, p.upto = dialog.Fold(id, diary), len(diary), 0, 0
	p.state.Talk = talk
	if n := len(diary); n > 0 {
		p.last = int64(diary[n-1].ID)
	}
	return nil
}

// diary reads a person's lines after one, oldest first.
func (db *DB) diary(id dialog.PersonID, after int64) ([]dialog.Entry, error) {
	var diary []dialog.Entry
	err := db.stmts.rows(entryList, func(r row) error {
		e, err := entryOf(r, id)
		diary = append(diary, e)
		return err
	}, int64(id), after)
	return diary, err
}

// entryOf reads a row of a diary: id, heap, at, day, noted, by, told, kind, body.
func entryOf(r row, id dialog.PersonID) (dialog.Entry, error) {
	e := dialog.Entry{ID: dialog.EntryID(r.int(0)), Person: id, Heap: dialog.HeapID(r.int(1)), At: at(r.int(2)), Day: dialog.Day(r.int(3)),
		Noted: at(r.int(4)), By: dialog.PersonID(r.int(5)), Told: int(r.int(6))}
	event, err := dialog.Decode(r.text(7), r.bytes(8))
	if err != nil {
		return e, fmt.Errorf("person %d, line %d: %w", id, e.ID, err)
	}
	e.Event = event
	return e, nil
}
