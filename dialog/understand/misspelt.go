package understand

import (
	"slices"
	"strings"
)

// lookNear finds by sound, by consonants and by nearness what no table has, and notes what
// words may be heard for in set phrases.
func (r *reader) lookNear() {
	slips := 0
	for i := range r.tokens {
		if r.tokens[i].kind != word || r.parsed[i].entries != nil || len(r.tokens[i].text) > longestWord {
			continue
		}
		r.hearLike(i)
		switch {
		case r.own(i):
		case r.farOff(i) && r.named(i):
			r.ids[i] = r.ids[i][:0] // "Peter" is no French "péter"
		case r.strayed(i), r.hindiByEar(i), r.spanishForm(i):
		default:
			slips++
			r.guess(i, slips <= mostSlips)
		}
	}
}

// hearLike notes what word i, known or not, may stand for in a set phrase: its other
// forms, and what phones make of small words.
func (r *reader) hearLike(i int) {
	l, t := r.lex, &r.tokens[i]
	if r.rank[sw] == 0 && t.text[0] < 128 {
		if more := l.agreeing.of(l, r.ids[i], t.text, l.concords); len(more) > 0 {
			r.hear(i, more...)
			if len(r.ids[i]) == 0 && !l.senseless(more) {
				r.ids[i] = more
			}
		}
	}
	if r.home(hi) || r.home(hiLatn) {
		r.hear(i, l.formed.of(l, r.ids[i], t.text, l.forms)...)
		if base, has := strings.CutSuffix(t.text, "कर"); has && len(base) > 5 && len(r.ids[i]) == 0 {
			r.ids[i] = l.exact(base, base, nil) // फूटकर: having burst
		}
	}
	for f := range everyone {
		if r.home(f) {
			r.hear(i, l.phone[f][t.text]...)
		}
	}
}

// own says whether word i is known in the text's own language.
func (r *reader) own(i int) bool {
	l, t := r.lex, &r.tokens[i]
	own := false
	for _, id := range r.ids[i] {
		for _, e := range l.senses[id] {
			own = own || r.rank[e.tongue] == 0 || e.tongue == everyone
		}
		own = own || len(l.senses[id]) == 0 && r.rank[hiLatn] > 1
	}
	if own && r.home(hiLatn) && t.text[0] < 128 {
		for _, id := range l.ear[hiLatn]().sound[sound(hiLatn, t.text)] {
			if l.akin(r.ids[i], id) {
				r.hear(i, id)
			}
		}
	}
	return own
}

// hindiByEar looks for word i by its sound in Hindi, and says whether it is known now, in
// whatever language.
func (r *reader) hindiByEar(i int) bool {
	l, w := r.lex, r.tokens[i].text
	if r.home(hiLatn) {
		var more []int32
		heard := w
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
	}
	if len(r.ids[i]) > 0 && l.senseless(r.ids[i]) && r.rank[hiLatn] <= 1 && len(w) <= 4 && bones(w) == w {
		r.ids[i] = append(r.ids[i][:len(r.ids[i]):len(r.ids[i])], l.ear[hiLatn]().bones[w]...)
	}
	return len(r.ids[i]) > 0
}

// spanishForm takes pronouns and endings of size off word i: "volteándolo", "calientito".
func (r *reader) spanishForm(i int) bool {
	v, ok := r.lex.clitic(r.tokens[i].text)
	if !ok && r.home(es) {
		v, ok = r.lex.graded(r.tokens[i].text)
	}
	if ok {
		r.ids[i] = v
	}
	return ok
}

// guess looks for the word that word i was meant to be: one without its vowels, one with
// letters swapped, one that sounds like it, one near it. Searching all words for near ones
// takes time.
func (r *reader) guess(i int, search bool) {
	l, w := r.lex, r.tokens[i].text
	var near []int32
	if search {
		if r.rank[sw] == 0 && r.verb(i, l.swahiliBones, w) {
			return
		}
		ids, parts := r.boned(w)
		r.hear(i, parts...)
		if len(ids) > 0 {
			r.meant(i, ids)
			return
		}
		near = r.closest(w)
	}
	switch {
	case l.swapped(w, near):
		r.meant(i, near)
		return
	case r.sounds(i, 0), r.sounds(i, 2): // but "pattes" is no "pas"
		return
	}
	if r.rank[hiLatn] <= 1 && (r.home(hiLatn) || r.lang == "sw" || r.lang == "en") && len(w) <= 4 && bones(w) == w {
		if ids := l.ear[hiLatn]().bones[w]; len(ids) > 0 {
			r.ids[i], r.near[i] = ids, true
			return
		}
	}
	if r.rank[sw] <= 1 {
		for _, x := range [...]string{"s", "z"} {
			if long := textSwahili(w, x); long != w {
				if r.ids[i] = l.exact(long, long, nil); len(r.ids[i]) > 0 || r.verb(i, l.swahiliVerb, long) {
					return
				}
			}
		}
	}
	if !search {
		return
	}
	part := r.partly(w)
	if len(near) > 0 {
		r.meant(i, near)
		r.hear(i, part...)
		return
	}
	if len(part) > 0 {
		r.meant(i, part)
	}
	if r.rank[sw] <= 1 {
		w = r.tokens[i].text
		if !r.verb(i, l.swahiliVerb, strings.ReplaceAll(w, "r", "l")) && !r.verb(i, l.swahiliSlip, w) {
			r.verb(i, l.planned, w)
		}
	}
}

// verb takes word i for a Swahili verb, if read finds one in w.
func (r *reader) verb(i int, read func(string) (swVerb, bool), w string) bool {
	v, ok := read(w)
	if ok {
		r.parsed[i] = v
	}
	return ok
}

// mostSlips is how many mistyped words are looked for: a reply has few, and a pasted page
// must stay quick.
const mostSlips = 24

// longestWord is how many bytes a word may have that is still looked for: no language here
// has a longer one. Common practice, no source.
const longestWord = 60

// meant takes word i for a mistyped other one.
func (r *reader) meant(i int, ids []int32) {
	r.ids[i], r.near[i] = ids, true
	if len(ids) == 1 {
		r.tokens[i].text = r.lex.spelled[ids[0]]
	}
}

// hear adds words that word i may stand for in set phrases. The list given may be kept.
func (r *reader) hear(i int, ids ...int32) {
	if len(r.heard[i]) == 0 {
		r.heard[i] = ids[:len(ids):len(ids)]
		return
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
			if voweless(w) && bones(r.lex.spelled[id]) != bones(w) {
				continue // "plle" is "paille", and no "plaie"
			}
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

// voweless says whether a word has no vowel but at its ends.
func voweless(w string) bool { return len(w) > 3 && len(bones(w[1:len(w)-1])) == len(w)-2 }

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
	if r.best == sw {
		far = func(e entry) bool { return e.tongue == es || e.tongue == fr }
	}
	if len(t.text) < 4 || t.text[0] > 127 || r.best != es && r.best != fr && r.best != sw || folders[r.best] != r.lang ||
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
