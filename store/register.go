package store

import (
	"database/sql"
	"encoding/json"
	"errors"

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
	diary, err := r.db.diary(id, 0)
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
	err := r.db.stmts.row(crewGet, int64(id)).Scan(&g.Name)
	if errors.Is(err, sql.ErrNoRows) {
		return dialog.Group{}, false
	}
	r.note(err)
	r.note(r.db.stmts.rows(crewStaff, func(rows *sql.Rows) error {
		m := dialog.Membership{Group: id}
		err := rows.Scan(&m.Person, &m.Role)
		g.Staff = append(g.Staff, m)
		return err
	}, int64(id)))
	return g, true
}

func (r *register) Members(id dialog.GroupID) []dialog.Card {
	var cards []dialog.Card
	r.note(r.db.stmts.rows(crewCards, func(rows *sql.Rows) error {
		var body sql.RawBytes
		if err := rows.Scan(&body); err != nil {
			return err
		}
		var c dialog.Card
		err := json.Unmarshal(body, &c)
		cards = append(cards, c)
		return err
	}, int64(id)))
	return cards
}

func (r *register) Invite(code string) (dialog.Invite, bool) {
	i := dialog.Invite{Code: code}
	var expires int64
	err := r.db.stmts.row(inviteGet, code).Scan(&i.Group, &i.Role, &i.By, &expires, &i.Ended)
	if errors.Is(err, sql.ErrNoRows) {
		return dialog.Invite{}, false
	}
	r.note(err)
	i.Expires = at(expires)
	return i, true
}

func (r *register) NewID() int64 {
	r.db.count.person++
	return r.db.count.person
}

func (r *register) Chance(n int) string { return r.db.chance(n) }
