package dialog

import (
	"iter"
	"slices"
)

// Fold makes the state from a diary, oldest line first. It is total: any order
// of any lines gives a person and heaps. The state's Talk and Register stay
// empty; they are not facts.
func Fold(id PersonID, diary []Entry) State {
	s := State{Person: Person{ID: id}}
	for e := range standing(diary) {
		s.take(&e)
	}
	for _, e := range diary {
		s.Person.Told = max(s.Person.Told, e.Told)
	}
	return s
}

// standing are the lines of a diary that were not taken back.
func standing(diary []Entry) iter.Seq[Entry] {
	struck := struckIn(diary)
	return func(yield func(Entry) bool) {
		for _, e := range diary {
			if !struck[e.Told] && !yield(e) {
				return
			}
		}
	}
}

// struckIn are the numbers of the told messages that were taken back; 0, the
// number of lines that undo does not reach, is never one of them.
func struckIn(diary []Entry) map[int]bool {
	struck := map[int]bool{}
	for _, e := range diary {
		if s, ok := e.Event.(Struck); ok && s.Told != 0 {
			struck[s.Told] = true
		}
	}
	return struck
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
	s.take(&e)
	return s
}

// take folds one line into a state that nobody else holds.
func (s *State) take(e *Entry) {
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
	for i := range s.Heaps { // a heap is too large to hand it to a function each time
		if s.Heaps[i].ID == id {
			return i
		}
	}
	return -1
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
