package store

import (
	"time"

	"warmstick/dialog"
)

// writing is one answer being written down.
type writing struct {
	db      *DB
	now     time.Time
	speaker *page
	hushed  bool
	letters int
	touched []*page // whose diary or talk changed, in order
}

// keep writes one answer: entries, talk, letters, then the rows made from them.
func (w *writing) keep(a script) error {
	if a.err != nil {
		return a.err
	}
	before := rounds(w.speaker.state)
	for i, e := range a.Entries {
		if err := w.append(e, a.lines[i]); err != nil {
			return err
		}
	}
	w.speaker.state.Talk = a.Talk
	w.touch(w.speaker)
	for _, t := range a.Talks {
		p, err := w.db.page(t.Person)
		if err != nil {
			return err
		}
		if p != nil {
			p.state.Talk = t.Talk
			w.touch(p)
		}
	}
	for _, p := range w.touched {
		if err := w.db.unstrike(p); err != nil {
			return err
		}
	}
	if err := w.dropStale(before); err != nil {
		return err
	}
	for _, batch := range a.Halt {
		if _, err := w.db.stmts.exec(letterHalt, batch); err != nil {
			return err
		}
	}
	for i, l := range a.Letters {
		if err := w.post(l, a.bodies[i]); err != nil {
			return err
		}
	}
	for _, p := range w.touched {
		if err := w.db.settle(p); err != nil {
			return err
		}
	}
	for _, id := range a.Forget {
		if _, err := w.db.stmts.exec(leavingAdd, int64(id)); err != nil {
			return err
		}
		w.db.gone[id] = true
	}
	return nil
}

// append writes one line into its person's diary and folds it in.
func (w *writing) append(e dialog.Entry, l line) error {
	if e.Person == 0 {
		e.Person = w.speaker.state.Person.ID
	}
	p, err := w.db.page(e.Person)
	if err != nil {
		return err
	}
	if p == nil { // a farmer without a phone, entered by a lead farmer
		if p, err = w.db.newPage(e.Person, 0); err != nil {
			return err
		}
	}
	w.db.count.entry++
	e.ID = dialog.EntryID(w.db.count.entry)
	e.At, e.Noted = at(ms(e.At)), at(ms(e.Noted))
	_, err = w.db.stmts.exec(entryAdd, int64(e.Person), int64(e.ID), int64(e.Heap), ms(e.At), int64(e.Day), ms(e.Noted),
		int64(e.By), int64(e.Told), l.kind, l.body)
	if err != nil {
		return err
	}
	talk := p.state.Talk
	p.state = p.state.After(e)
	p.state.Talk = talk
	if _, struck := e.Event.(dialog.Struck); struck {
		p.anew = true
	}
	p.grown = true
	w.touch(p)
	return nil
}

func (w *writing) touch(p *page) {
	p.told = true
	for _, t := range w.touched {
		if t == p {
			return
		}
	}
	w.touched = append(w.touched, p)
}

// round is how far a heap has come; a reminder is of use while it stands.
type round struct {
	round int
	stage dialog.Stage
}

func rounds(s dialog.State) map[dialog.HeapID]round {
	if len(s.Heaps) == 0 {
		return nil
	}
	m := make(map[dialog.HeapID]round, len(s.Heaps))
	for _, h := range s.Heaps {
		m[h.ID] = round{h.Round, h.Stage}
	}
	return m
}

// dropStale withdraws letters that wait and have lost their sense: reminders of
// a heap that has moved on, and everything unasked for to a person who said stop
// or cannot be reached.
func (w *writing) dropStale(before map[dialog.HeapID]round) error {
	p := w.speaker.state
	if p.Person.Stopped || p.Person.Barred {
		_, err := w.db.stmts.exec(letterDrop, "stopped", int64(p.Person.ID))
		return err
	}
	for _, h := range p.Heaps {
		was, known := before[h.ID]
		if known && was != (round{h.Round, h.Stage}) {
			if _, err := w.db.stmts.exec(letterStale, "answered before it went", int64(p.Person.ID), int64(h.ID)); err != nil {
				return err
			}
		}
	}
	return nil
}

// unstrike folds a diary anew in which a line was struck.
func (db *DB) unstrike(p *page) error {
	if !p.anew {
		return nil
	}
	if err := db.foldAnew(p, p.state.Person.ID); err != nil {
		return err
	}
	p.anew = false
	return nil
}

// settle writes the rows made from a diary that grew; the page itself is written
// before the commit, whatever else it goes through until then.
func (db *DB) settle(p *page) error {
	if !p.unsaved {
		p.unsaved = true
		db.unsaved = append(db.unsaved, p)
	}
	p.sheet = nil
	if !p.grown {
		return nil
	}
	p.grown, p.longer = false, true
	return db.project(p)
}
