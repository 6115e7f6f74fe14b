package store

import (
	"encoding/json"
	"slices"

	"warmstick/dialog"
)

// project writes the rows made from a diary: due rows, card, memberships, groups
// and invites; each only where it changed.
func (db *DB) project(p *page) error {
	if err := db.projectDue(p); err != nil {
		return err
	}
	id, person := p.state.Person.ID, p.state.Person
	if len(person.Roles) > 0 {
		card, err := json.Marshal(dialog.CardOf(p.state))
		if err != nil {
			return err
		}
		if _, err := db.stmts.exec(cardSet, int64(id), string(card)); err != nil {
			return err
		}
	}
	now := projectedOf(p.state)
	defer func() { p.was = now }()
	if p.was.card && !now.card {
		if _, err := db.stmts.exec(cardCut, int64(id)); err != nil {
			return err
		}
	}
	if !slices.Equal(p.was.roles, now.roles) {
		if err := db.projectRoles(id, p.was.roles, now.roles); err != nil {
			return err
		}
	}
	if !slices.EqualFunc(p.was.made, now.made, sameGroup) {
		if err := db.projectGroups(id, p.was.made, now.made); err != nil {
			return err
		}
	}
	if !slices.EqualFunc(p.was.invites, now.invites, sameInvite) {
		return db.projectInvites(id, p.was.invites, now.invites)
	}
	return nil
}

func projectedOf(s dialog.State) projected {
	p := s.Person
	return projected{roles: p.Roles, made: p.Made, invites: p.Invites, card: len(p.Roles) > 0}
}

func sameGroup(a, b dialog.Group) bool { return a.ID == b.ID && a.Name == b.Name }

func sameInvite(a, b dialog.Invite) bool {
	return a.Code == b.Code && a.Group == b.Group && a.Role == b.Role && a.Ended == b.Ended && a.Expires.Equal(b.Expires)
}

// projectDue writes the plan down. A row that only moves on, as after each
// reminder, is moved; that is most of them.
func (db *DB) projectDue(p *page) error {
	plan := dialog.Plan(p.state)
	if slices.EqualFunc(p.plan, plan, sameDue) {
		return nil
	}
	old := slices.DeleteFunc(slices.Clone(p.plan), func(d dialog.Due) bool { return containsDue(plan, d) })
	for _, d := range plan {
		if containsDue(p.plan, d) {
			continue
		}
		i := slices.IndexFunc(old, func(o dialog.Due) bool { return o.Heap == d.Heap && o.Task == d.Task })
		if i < 0 {
			if _, err := db.stmts.exec(dueAdd, int64(d.Person), int64(d.Heap), string(d.Task), int64(d.Day), ms(d.At), ms(d.At)); err != nil {
				return err
			}
			continue
		}
		moved, err := db.stmts.exec(dueMove, int64(d.Day), ms(d.At), int64(d.Person), int64(d.Heap), string(d.Task), int64(old[i].Day))
		if err != nil {
			return err
		}
		if moved == 0 { // another program wrote the rows
			return db.mend(p)
		}
		old = slices.Delete(old, i, i+1)
	}
	for _, d := range old {
		if _, err := db.stmts.exec(dueCut, int64(d.Person), int64(d.Heap), string(d.Task), int64(d.Day)); err != nil {
			return err
		}
	}
	p.plan = plan
	return nil
}

func containsDue(plan []dialog.Due, d dialog.Due) bool {
	return slices.ContainsFunc(plan, func(o dialog.Due) bool { return sameDue(o, d) })
}

// mend writes a person's due rows anew. They should be the plan already; after a
// program that planned otherwise they may not be.
func (db *DB) mend(p *page) error {
	if _, err := db.stmts.exec(dueCutAll, int64(p.state.Person.ID)); err != nil {
		return err
	}
	p.plan = nil
	return db.projectDue(p)
}

func sameDue(a, b dialog.Due) bool {
	return a.Heap == b.Heap && a.Task == b.Task && a.Day == b.Day && a.At.Equal(b.At)
}

func (db *DB) projectRoles(id dialog.PersonID, was, now []dialog.Membership) error {
	for _, m := range was {
		if _, err := db.stmts.exec(memberCut, int64(m.Group), int64(id)); err != nil {
			return err
		}
	}
	for _, m := range now {
		if _, err := db.stmts.exec(memberSet, int64(m.Group), int64(id), string(m.Role)); err != nil {
			return err
		}
	}
	return nil
}

func (db *DB) projectGroups(id dialog.PersonID, was, now []dialog.Group) error {
	for _, g := range was {
		if !slices.ContainsFunc(now, func(n dialog.Group) bool { return n.ID == g.ID }) {
			if _, err := db.stmts.exec(crewCut, int64(g.ID)); err != nil {
				return err
			}
		}
	}
	for _, g := range now {
		if _, err := db.stmts.exec(crewSet, int64(g.ID), g.Name, int64(id)); err != nil {
			return err
		}
	}
	return nil
}

func (db *DB) projectInvites(id dialog.PersonID, was, now []dialog.Invite) error {
	for _, i := range was {
		if !slices.ContainsFunc(now, func(n dialog.Invite) bool { return n.Code == i.Code }) {
			if _, err := db.stmts.exec(inviteCut, i.Code); err != nil {
				return err
			}
		}
	}
	for _, i := range now {
		ended := 0
		if i.Ended {
			ended = 1
		}
		if _, err := db.stmts.exec(inviteSet, i.Code, int64(i.Group), string(i.Role), int64(id), ms(i.Expires), ended); err != nil {
			return err
		}
	}
	return nil
}
