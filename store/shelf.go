package store

import (
	"container/list"

	"warmstick/dialog"
)

// page is one person as the store has them at hand: the folded diary, the talk,
// and what was written down of both. A page on the shelf is never changed; a
// transaction works on copies.
type page struct {
	chat    int64
	state   dialog.State // with its Talk, without its Register
	plan    []dialog.Due // as the due rows stand
	fresh   bool         // not in the file yet
	told    bool         // written to in the open transaction
	grown   bool         // the diary has new lines
	anew    bool         // a line was struck: fold from the start
	unsaved bool         // settled in the open transaction and to be written down
	longer  bool         // and with it the snapshot of a longer diary
	sheet   *sheet       // as it stands, on its way into the file
	was     projected
}

// projected is what the rows made from a diary were made of.
type projected struct {
	roles   []dialog.Membership
	made    []dialog.Group
	invites []dialog.Invite
	card    bool
}

// shelf keeps the pages of the people who were heard last, so that a message
// need not fold a diary again. Pages of an open transaction lie on the desk.
type shelf struct {
	size  int
	byID  map[dialog.PersonID]*list.Element
	chats map[int64]dialog.PersonID
	order *list.List // of *page, newest first
	desk  map[dialog.PersonID]*page
	blank []*page // that nobody holds any more, to be written on again
	turn  int     // grows with each transaction that changed somebody's page
}

func newShelf(size int) shelf {
	return shelf{size: size, byID: map[dialog.PersonID]*list.Element{}, chats: map[int64]dialog.PersonID{},
		order: list.New(), desk: map[dialog.PersonID]*page{}}
}

// take finds a page and lays a copy on the desk.
func (s *shelf) take(id dialog.PersonID) *page {
	if p := s.desk[id]; p != nil {
		return p
	}
	e := s.byID[id]
	if e == nil {
		return nil
	}
	s.order.MoveToFront(e)
	p := s.copyOf(e.Value.(*page))
	s.desk[id] = p
	return p
}

// copyOf saves, with the blank pages, a kilobyte of garbage a message.
func (s *shelf) copyOf(from *page) *page {
	p := &page{}
	if n := len(s.blank); n > 0 {
		p, s.blank = s.blank[n-1], s.blank[:n-1]
	}
	*p = *from
	return p
}

// lay puts a page that was read from the file on the desk.
func (s *shelf) lay(p *page) *page {
	s.desk[p.state.Person.ID] = p
	if p.chat != 0 {
		s.chats[p.chat] = p.state.Person.ID
	}
	return p
}

// keep puts the pages of a transaction that held back on the shelf.
func (s *shelf) keep() {
	changed := 0
	for id, p := range s.desk {
		if p.fresh || p.told {
			changed = 1
		}
		p.fresh, p.told = false, false
		if e := s.byID[id]; e != nil {
			if old := e.Value.(*page); len(s.blank) < paperKept {
				*old = page{}
				s.blank = append(s.blank, old)
			}
			e.Value = p
			s.order.MoveToFront(e)
			continue
		}
		s.byID[id] = s.order.PushFront(p)
	}
	s.turn += changed
	clear(s.desk)
	for s.order.Len() > s.size {
		s.lose(s.order.Back().Value.(*page).state.Person.ID)
	}
}

// forget clears the desk: the transaction did not hold.
func (s *shelf) forget() {
	for _, p := range s.desk {
		if p.fresh {
			delete(s.chats, p.chat)
		}
	}
	clear(s.desk)
}

// drop takes one person off the shelf, whose page no longer holds.
func (s *shelf) drop(id dialog.PersonID) {
	s.turn++
	s.lose(id)
}

// lose takes one person off the shelf.
func (s *shelf) lose(id dialog.PersonID) {
	delete(s.desk, id)
	e := s.byID[id]
	if e == nil {
		return
	}
	delete(s.chats, e.Value.(*page).chat)
	delete(s.byID, id)
	s.order.Remove(e)
}

// empty takes everybody off.
func (s *shelf) empty() {
	turn := s.turn
	*s = newShelf(s.size)
	s.turn = turn + 1
}
