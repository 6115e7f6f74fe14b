package understand

import (
	"slices"
	"strings"
)

// lookNear finds by sound, by consonants and by nearness what no table has.
func (r *reader) lookNear() {
	l := r.lex
	slow := 0
	for i := range r.tokens {
		t := &r.tokens[i]
		if t.kind != word || r.parsed[i].entries != nil {
			continue
		}
		if r.rank[sw] == 0 && t.text[0] < 128 {
			if more := l.concords(t.text); len(more) > 0 {
				r.hear(i, more...)
				if len(r.ids[i]) == 0 && !l.senseless(more) {
					r.ids[i] = more
				}
			}
		}
		if r.home(hi) || r.home(hiLatn) {
			if more := l.forms(shortVowels(t.text), nil); len(more) > 0 {
				r.hear(i, more...)
			}
			if as, ok := phoneHindi[t.text]; ok {
				if id, ok := l.id[as]; ok {
					r.hear(i, id)
				}
				if as == "men" {
					r.hear(i, l.id["me"]) // as hi-Latn writes it
				}
			}
			if base, has := strings.CutSuffix(t.text, "कर"); has && len(base) > 5 && len(r.ids[i]) == 0 {
				r.ids[i] = l.exact(base, base, nil) // फूटकर: having burst
			}
		}
		if r.home(fr) {
			for _, as := range phoneFrench[t.text] {
				if id, ok := l.id[as]; ok {
					r.hear(i, id)
				}
			}
		}
		own := false // known in the text's own language
		for _, id := range r.ids[i] {
			for _, e := range l.senses[id] {
				own = own || r.rank[e.tongue] == 0 || e.tongue == everyone
			}
			own = own || len(l.senses[id]) == 0 && r.rank[hiLatn] > 1
		}
		if own {
			if r.home(hiLatn) && t.text[0] < 128 {
				for _, id := range l.ear[hiLatn]().sound[sound(hiLatn, t.text)] {
					if l.akin(r.ids[i], id) {
						r.hear(i, id)
					}
				}
			}
			continue
		}
		if r.strayed(i) {
			continue
		}
		found := len(r.ids[i]) > 0
		if r.home(hiLatn) {
			var more []int32
			heard := t.text
			if heard[0] > 127 && l.senseless(r.ids[i]) {
				more = l.ear[hi]().sound[sound(hi, fold(heard))]
			}
			if l.senseless(more) {
				if heard[0] > 127 {
					heard = romanise(fold(heard)) // थंडा for ठंडा: by ear they are one
				}
				more = l.ear[hiLatn]().sound[sound(hiLatn, heard)]
			}
			r.ids[i] = append(r.ids[i][:len(r.ids[i]):len(r.ids[i])], more...)
			found = found || len(more) > 0
		}
		if len(r.ids[i]) > 0 && !l.senseless(r.ids[i]) {
			continue
		}
		if found && r.rank[hiLatn] <= 1 && len(t.text) <= 4 && bones(t.text) == t.text {
			r.ids[i] = append(r.ids[i][:len(r.ids[i]):len(r.ids[i])], l.ear[hiLatn]().bones[t.text]...)
		}
		if found {
			continue
		}
		if v, ok := l.clitic(t.text); ok {
			r.ids[i] = v
			continue
		}
		if v, ok := l.graded(t.text); ok && r.home(es) {
			r.ids[i] = v
			continue
		}
		var near []int32
		if slow++; slow <= mostSlips {
			ids, parts := r.boned(t.text)
			if len(parts) > 0 {
				r.hear(i, parts...)
			}
			if len(ids) > 0 {
				r.meant(i, ids)
				continue
			}
			near = r.closest(t.text)
		}
		if l.swapped(t.text, near) {
			r.meant(i, near)
			continue
		}
		if r.sounds(i, 0) {
			continue
		}
		if r.sounds(i, 2) { // but "pattes" is no "pas"
			continue
		}
		if r.rank[hiLatn] <= 1 && len(t.text) <= 4 && bones(t.text) == t.text {
			if ids := l.ear[hiLatn]().bones[t.text]; len(ids) > 0 {
				r.ids[i], r.near[i] = ids, true
				continue
			}
		}
		if w := textSwahili(t.text); r.rank[sw] <= 1 && w != t.text {
			if r.ids[i] = l.exact(w, w, nil); len(r.ids[i]) > 0 {
				continue
			}
			if v, ok := l.swahiliVerb(w); ok {
				r.parsed[i] = v
				continue
			}
		}
		if slow > mostSlips {
			continue
		}
		part := r.partly(t.text)
		if len(near) > 0 {
			r.meant(i, near)
			r.hear(i, part...)
			continue
		}
		if len(part) > 0 {
			r.meant(i, part)
		}
		if r.rank[sw] <= 1 {
			if v, ok := l.swahiliVerb(strings.ReplaceAll(t.text, "r", "l")); ok {
				r.parsed[i] = v
				continue
			}
			if v, ok := l.swahiliSlip(t.text); ok {
				r.parsed[i] = v
				continue
			}
			if v, ok := l.planned(t.text); ok {
				r.parsed[i] = v
			}
		}
	}
}

// mostSlips is how many mistyped words are looked for: a reply has few, and a pasted page
// must stay quick.
const mostSlips = 24

// meant takes word i for a mistyped other one.
func (r *reader) meant(i int, ids []int32) {
	r.ids[i], r.near[i] = ids, true
	if len(ids) == 1 {
		r.tokens[i].text = r.lex.spelled[ids[0]]
	}
}

// hear adds words that word i may stand for in set phrases.
func (r *reader) hear(i int, ids ...int32) {
	if r.heard == nil {
		r.heard = make([][]int32, len(r.tokens))
	}
	r.heard[i] = append(r.heard[i], ids...)
}

// sounds looks for words that sound like word i and are about as long.
func (r *reader) sounds(i, more int) bool {
	w := r.tokens[i].text
	if w[0] > 127 {
		return false
	}
	for _, t := range r.order[:everyone] {
		if t == hi || t == en || !r.home(t) {
			continue
		}
		for _, id := range r.lex.ear[t]().sound[sound(t, w)] {
			if d := len(r.lex.spelled[id]) - len(w); -more <= d && d <= more {
				r.ids[i], r.near[i] = append(r.ids[i], id), true
			}
		}
		if r.near[i] {
			return true
		}
	}
	return false
}

// swapped says whether near words have the same letters, two of them swapped or one doubled.
func (l *lexicon) swapped(w string, near []int32) bool {
	return len(near) > 0 && len(w) >= 5 && !slices.ContainsFunc(near, func(id int32) bool { return strain([]rune(w), []rune(l.spelled[id])) > 0 })
}

// strayed says whether word i, known only in a language far from the text's own, is rather
// a mistyped one of that: "chad" for "chaud" in French. English is mixed in by all, and
// Swahili and Hindi into English.
func (r *reader) strayed(i int) bool {
	t := &r.tokens[i]
	far := func(e entry) bool { return e.tongue == sw || e.hindi() }
	if len(t.text) < 4 || t.text[0] > 127 || r.best != es && r.best != fr || folders[r.best] != r.lang ||
		!r.lex.may(r.ids[i], far) || r.lex.may(r.ids[i], func(e entry) bool { return !far(e) }) {
		return false
	}
	ids := r.closest(t.text)
	if len(ids) == 0 {
		return false
	}
	r.meant(i, ids)
	return true
}

// home says whether mistyped words are looked for in a tongue: the text's own and
// the chat's. A word of a third language must be typed right to count.
func (r *reader) home(t tongue) bool {
	return r.rank[t] == 0 || folders[t] == r.lang || (t == hi || t == hiLatn) && (r.lang == "hi" || r.lang == "hi-Latn")
}

// akin says whether a word heard for known words may stand for them in a set phrase: a
// word with another sense of its own may not, "banana" is not "bana".
func (l *lexicon) akin(known []int32, heard int32) bool {
	if l.senseless(known) || len(l.senses[heard]) == 0 {
		return true
	}
	for _, id := range known {
		for _, k := range l.senses[id] {
			for _, h := range l.senses[heard] {
				if k.id == h.id && k.tense == h.tense {
					return true
				}
			}
		}
	}
	return false
}
