package store

import (
	"encoding/json"

	"warmstick/dialog"
)

// register answers the conversation's questions inside its transaction. The
// conversation knows no errors: the first one is kept and undoes the call.
type register struct {
	db  *DB
	err error
}

var _ dialog.Register = (*register)(nil)

func (r *register) note(err error) {
	if r.err == nil {
		r.err = err
	}
}

func (r *register) Diary(id dialog.PersonID) []dialog.Entry {
	diary, err := r.db.diary(id)
	r.note(err)
	return diary
}

func (r *register) State(id dialog.PersonID) (dialog.State, bool) {
	p, err := r.db.page(id)
	r.note(err)
	if p == nil {
		return dialog.State{}, false
	}
	return p.state, true
}

func (r *register) Group(id dialog.GroupID) (dialog.Group, bool) {
	g := dialog.Group{ID: id}
	crew, err := r.db.stmts.first(crewGet, int64(id))
	r.note(err)
	if crew == nil {
		return dialog.Group{}, false
	}
	g.Name = crew.text(0)
	r.note(r.db.stmts.rows(crewStaff, func(m row) error {
		g.Staff = append(g.Staff, dialog.Membership{Group: id, Person: dialog.PersonID(m.int(0)), Role: dialog.Role(m.text(1))})
		return nil
	}, int64(id)))
	return g, true
}

func (r *register) Members(id dialog.GroupID) []dialog.Card {
	var cards []dialog.Card
	r.note(r.db.stmts.rows(crewCards, func(m row) error {
		var c dialog.Card
		err := json.Unmarshal(m.bytes(0), &c)
		cards = append(cards, c)
		return err
	}, int64(id)))
	return cards
}

func (r *register) Invite(code string) (dialog.Invite, bool) {
	i, err := r.db.stmts.first(inviteGet, code)
	r.note(err)
	if i == nil {
		return dialog.Invite{}, false
	}
	return dialog.Invite{Code: code, Group: dialog.GroupID(i.int(0)), Role: dialog.Role(i.text(1)), By: dialog.PersonID(i.int(2)),
		Expires: at(i.int(3)), Ended: i.int(4) != 0}, true
}

func (r *register) Sending(batch string) (waiting, refused int) {
	n, err := r.db.stmts.first(letterBatch, batch)
	r.note(err)
	if n == nil {
		return 0, 0
	}
	return int(n.int(0)), int(n.int(1))
}

func (r *register) NewID() int64 {
	r.db.count.person++
	return r.db.count.person
}

func (r *register) Chance(n int) string { return r.db.chance(n) }
