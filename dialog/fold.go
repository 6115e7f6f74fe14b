package dialog

import "slices"

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
		s.take(e)
	}
	s.Person.Told = told
	return s
}

// After is the state with one more line, which must not strike another: after
// a Struck line the diary is folded anew. The state it is called on stays as it
// was.
func (s State) After(e Entry) State {
	s.Heaps = slices.Clone(s.Heaps)
	s.Person.Habit.Hours = slices.Clone(s.Person.Habit.Hours)
	if i := s.at(e.Heap); i >= 0 {
		s.Heaps[i] = s.Heaps[i].own()
	}
	s.take(e)
	return s
}

// take folds one line into a state that nobody else holds.
func (s *State) take(e Entry) {
	if _, ok := e.Event.(Struck); ok {
		return
	}
	s.Person.take(e)
	if e.Heap <= 0 {
		return
	}
	i := s.at(e.Heap)
	if i < 0 {
		i = len(s.Heaps)
		s.Heaps = append(s.Heaps, Heap{ID: e.Heap})
	}
	s.Heaps[i].take(e)
	if _, built := e.Event.(Built); built {
		s.Heaps[i].High = s.Person.Highland()
	}
}

// at is the place of a heap in the list, -1 when there is none.
func (s *State) at(id HeapID) int {
	return slices.IndexFunc(s.Heaps, func(h Heap) bool { return h.ID == id })
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
