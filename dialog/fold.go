package dialog

// Fold makes the state from a diary, oldest line first. It is total: any order
// of any lines gives a person and heaps. The state's Talk and Register stay
// empty; they are not facts.
func Fold(id PersonID, diary []Entry) State {
	struck := map[int]bool{}
	told := 0
	for _, e := range diary {
		told = max(told, e.Told)
		if s, ok := e.Event.(Struck); ok {
			struck[s.Told] = true
		}
	}
	s := State{Person: Person{ID: id}}
	for _, e := range diary {
		if e.Told != 0 && struck[e.Told] {
			continue
		}
		s = s.After(e)
	}
	s.Person.Told = told
	return s
}

// After is the state with one more line, which must not strike another: after
// a Struck line the diary is folded anew.
func (s State) After(e Entry) State {
	if _, ok := e.Event.(Struck); ok {
		return s
	}
	s.Person = s.Person.after(e)
	if e.Heap <= 0 {
		return s
	}
	heaps := make([]Heap, len(s.Heaps), max(len(s.Heaps), int(e.Heap)))
	copy(heaps, s.Heaps)
	for i := range heaps {
		if heaps[i].ID == e.Heap {
			heaps[i] = heaps[i].After(e)
			s.Heaps = heaps
			return s
		}
	}
	s.Heaps = append(heaps, Heap{ID: e.Heap}.After(e))
	return s
}

// Heap finds one of the person's heaps.
func (s State) Heap(id HeapID) (Heap, bool) {
	for _, h := range s.Heaps {
		if h.ID == id {
			return h, true
		}
	}
	return Heap{}, false
}

// Active lists the heaps that still want something, oldest first.
func (s State) Active() []Heap {
	var active []Heap
	for _, h := range s.Heaps {
		if h.Active() {
			active = append(active, h)
		}
	}
	return active
}
