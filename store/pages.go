package store

import (
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

// load reads one person: talk and snapshot in one row, or the diary where there is
// no snapshot. The due rows are not read: they are the plan, written down.
func (db *DB) load(q query, key int64) (*page, error) {
	r, err := db.stmts.first(q, key)
	if r == nil {
		return nil, err
	}
	p, err := unpack(r)
	switch {
	case p == nil:
		return nil, err
	case err != nil: // no snapshot, or of another program; the diary is what counts
		if err := db.foldAnew(p, dialog.PersonID(r.int(0))); err != nil {
			return nil, err
		}
		p.derive()
	}
	return db.shelf.lay(p), nil
}

// unpack makes a page of a person's row: id, chat, talk, snapshot. Without a snapshot
// of use the page has the talk alone, and the error says why.
func unpack(r row) (*page, error) {
	p, err := talking(r)
	if err != nil {
		return nil, err
	}
	s, err := dialog.UnpackState(r.bytes(3))
	if err != nil {
		return p, err
	}
	s.Talk = p.state.Talk
	p.state = s
	p.derive()
	return p, nil
}

// talking makes a page of a person's row with nothing but chat and talk.
func talking(r row) (p *page, err error) {
	p = &page{chat: r.int(1)}
	if p.state.Talk, err = dialog.UnpackTalk(r.bytes(2)); err != nil {
		return nil, fmt.Errorf("talk of person %d: %w", r.int(0), err)
	}
	return p, nil
}

// derive fills what follows from the folded diary.
func (p *page) derive() {
	p.plan = dialog.Plan(p.state)
	p.was = projectedOf(p.state)
}

// atHand finds the page of who speaks, or else their row; neither for a stranger.
func (db *DB) atHand(c Call) (p *page, cold row, err error) {
	q, key, id := personByID, int64(c.Person), c.Person
	if id == 0 {
		q, key, id = personByChat, c.Chat, db.shelf.chats[c.Chat]
	}
	if id != 0 {
		if p := db.shelf.take(id); p != nil {
			return p, nil, nil
		}
	}
	cold, err = db.stmts.first(q, key)
	return nil, cold, err
}

func (db *DB) foldAnew(p *page, id dialog.PersonID) error {
	diary, err := db.diary(id)
	if err != nil {
		return err
	}
	p.refold(id, diary)
	return nil
}

// refold makes the state of a diary; the talk stays.
func (p *page) refold(id dialog.PersonID, diary []dialog.Entry) {
	talk := p.state.Talk
	p.state = dialog.Fold(id, diary)
	p.state.Talk = talk
}

// diary reads a person's lines, oldest first.
func (db *DB) diary(id dialog.PersonID) ([]dialog.Entry, error) {
	var diary []dialog.Entry
	err := db.stmts.rows(entryList, func(r row) error {
		e, err := entryOf(r, id)
		diary = append(diary, e)
		return err
	}, int64(id))
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
