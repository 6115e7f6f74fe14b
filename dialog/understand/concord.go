package understand

import "slices"

// Swahili words of the tables carry the class of one noun: "limejaa" goes with lundo,
// "kimejaa" with kitanda. The classes of things stand for each other.
//
// concords are the words of the tables that differ from w by the class of their
// subject alone; persons stand for each other only where the sense is theirs (hurt,
// done, forgotten).
func (l *lexicon) concords(w string) (out []int32) {
	if len(w) < 5 {
		return nil
	}
	thingSubjects := [...]string{"li", "ki", "vi", "ya", "zi", "ku", "pa", "i", "u"}
	thingDenials := [...]string{"hali", "haki", "havi", "haya", "hazi", "haku", "hapa", "hai", "hau"}
	selfSubjects := [...]string{"nime", "tume", "wame", "ame", "nili", "tuli", "wali", "ali", "nina", "tuna", "wana", "ana", "na"}
	var room [48]byte
	try := func(subjects []string, tensed, persons bool) {
		for _, p := range subjects {
			if len(w) <= len(p)+2 || w[:len(p)] != p || tensed && !tensedRest(w[len(p):]) {
				continue
			}
			for _, q := range subjects {
				if q == p || len(q)+len(w) > len(room) {
					continue
				}
				b := append(append(room[:0], q...), w[len(p):]...)
				if id, ok := l.id[string(b)]; ok && !slices.Contains(out, id) && (!persons || l.personal(id)) {
					out = append(out, id)
				}
			}
			return
		}
	}
	try(thingDenials[:], false, false)
	if len(out) == 0 {
		try(thingSubjects[:], true, false)
	}
	if len(out) == 0 {
		try(selfSubjects[:], false, true)
	}
	return out
}

// tensedRest says whether what follows a subject begins with a tense.
func tensedRest(w string) bool {
	if len(w) < 4 {
		return false
	}
	switch w[:2] {
	case "na", "me", "li", "ta", "ka":
		return true
	}
	return false
}

// personal says whether a word tells of people: hurt, done, forgotten, busy.
func (l *lexicon) personal(id int32) bool {
	for _, e := range l.senses[id] {
		switch e.sense() {
		case "done", "finish", "forgot", "busy", "cant", "start", "prog":
			return e.tongue == sw
		}
		if inDim(e.sense(), "harm") && e.tongue == sw {
			return true
		}
	}
	return false
}

// place finds the Swahili thing that a locative in -ni is made of.
func (l *lexicon) place(base string) []int32 {
	id, ok := l.id[base]
	if !ok {
		return nil
	}
	for _, e := range l.senses[id] {
		if e.tongue == sw {
			switch e.sense() {
			case "heap", "bed", "bottle", "layer", "stick", "cap", "starter", "compost":
				return []int32{id}
			}
		}
	}
	return nil
}
