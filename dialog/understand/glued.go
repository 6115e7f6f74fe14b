package understand

import "slices"

// part cuts words in two that were typed without their space ("stickcold",
// "nimegeuzalundo") and says whether there were any. Only what no table knows is cut, a
// shorter word only when it is no slip of another either, and only into two words of the
// text's own language.
func (r *reader) part() bool {
	cut := false
	for i := 0; i < len(r.tokens) && i < mostSlips; i++ {
		t := r.tokens[i]
		if t.kind != word || len(t.raw) < 6 || len(t.raw) > longestWord || t.raw[0] > 127 || (len(r.ids[i]) > 0 || r.parsed[i].entries != nil) && !(len(t.raw) >= 11 && r.near[i]) {
			continue
		}
		typed := string(plain([]rune(t.raw)))
		k := r.seam(typed)
		if k == 0 {
			continue
		}
		first, second := t, t
		first.raw, first.text, first.to = typed[:k], typed[:k], min(t.from+k, t.to)
		second.raw, second.text, second.from, second.glued = typed[k:], typed[k:], first.to, false
		r.tokens = slices.Replace(r.tokens, i, i+1, first, second)
		r.ids = slices.Insert(r.ids, i, nil)
		r.parsed = slices.Insert(r.parsed, i, swVerb{})
		r.near = slices.Insert(r.near, i, false)
		i++
		cut = true
	}
	return cut
}

// seam finds where two words were run together, the longest first word first; 0 is
// nowhere.
func (r *reader) seam(w string) int {
	for k := len(w) - 2; k >= 2; k-- {
		if r.ownWord(w[:k]) && r.ownWord(w[k:]) && (k > 2 && k < len(w)-2 || len(w) > 6) {
			return k
		}
	}
	return 0
}

// ownWord says whether a word is one of the text's own language.
func (r *reader) ownWord(w string) bool {
	if len(w) < 3 {
		return oneOf(w, "it", "is", "no", "ni", "na", "ya", "le", "la", "el", "un")
	}
	id, ok := r.lex.id[w]
	if ok && r.lex.ear[r.best]().used[id] && (len(w) > 3 || slices.ContainsFunc(r.lex.senses[id], func(e entry) bool { return e.tongue == r.best })) {
		return true
	}
	if r.best != sw || len(w) < 5 {
		return false
	}
	_, ok = r.lex.swahiliVerb(w)
	return ok
}
