package store

import (
	"fmt"
	"sync"

	"warmstick/dialog"
)

// sheet is a settled page as it is packed for the file: the talk, and of a diary that
// grew the snapshot. A snapshot with each line costs less than reading the lines after
// an older one, when nobody is at hand (BenchmarkTick), and is simpler.
type sheet struct {
	state      dialog.State
	longer     bool
	once       sync.Once
	talk, fold []byte
	err        error
}

func (s *sheet) pack() {
	s.once.Do(func() {
		if s.talk, s.err = dialog.PackTalk(s.state.Talk); s.err == nil && s.longer {
			s.fold, s.err = dialog.PackState(s.state)
		}
	})
}

// quire is how many sheets are worth waking another core for.
const quire = 16

// packSome lets another core pack what has been settled, when there is enough of it.
func (db *DB) packSome() {
	if len(db.unsaved)-db.packing < quire {
		return
	}
	sheets := sheetsOf(db.unsaved[db.packing:])
	db.packing = len(db.unsaved)
	go func() {
		for _, s := range sheets {
			s.pack()
		}
	}()
}

// sheetsOf gives the sheets of pages, new ones where a page changed since.
func sheetsOf(pages []*page) []*sheet {
	sheets := make([]*sheet, len(pages))
	for i, p := range pages {
		if p.sheet == nil {
			p.sheet = &sheet{state: p.state, longer: p.longer}
		}
		sheets[i] = p.sheet
	}
	return sheets
}

// save writes settled pages down, packed on all cores.
func (db *DB) save() error {
	sheets := sheetsOf(db.unsaved)
	onAllCores(len(sheets), func(i int) { sheets[i].pack() })
	for i, p := range db.unsaved {
		id, s := int64(p.state.Person.ID), sheets[i]
		err := s.err
		switch {
		case err != nil:
		case s.longer:
			_, err = db.stmts.exec(personFold, s.talk, s.fold, id)
		default:
			_, err = db.stmts.exec(personTalk, s.talk, id)
		}
		if err != nil {
			return fmt.Errorf("person %d: %w", id, err)
		}
		p.unsaved, p.longer, p.sheet = false, false, nil
	}
	db.putAway()
	return nil
}

// putAway forgets what was settled.
func (db *DB) putAway() {
	clear(db.unsaved)
	db.unsaved, db.packing = db.unsaved[:0], 0
}
