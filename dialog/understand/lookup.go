package understand

import (
	"slices"
	"strings"
)

// lookUp finds exact words, and Swahili verbs.
func (r *reader) lookUp() {
	r.ids = sized(r.ids, len(r.tokens))
	r.near = sized(r.near, len(r.tokens))
	r.parsed = sized(r.parsed, len(r.tokens))
	for i := range r.tokens {
		t := &r.tokens[i]
		if t.kind == number || t.kind == mark {
			continue
		}
		r.ids[i] = r.lex.exact(t.raw, t.text, nil)
		if w := unstretched(t.text); w != t.text && len(t.text) >= 5 && len(r.ids[i]) > 0 {
			r.ids[i] = r.lex.exact(w, w, r.ids[i]) // "motoo" is also the "moto" of a phrase
		}
		if t.kind == word && (r.lang == "hi" || r.lang == "hi-Latn") && !r.lex.hindi(r.ids[i]) {
			if w := shortVowels(t.text); w != t.text { // "kisee", "puraa": a long vowel
				if ids := r.lex.exact(w, w, nil); len(ids) > 0 && (len(r.ids[i]) == 0 || r.lex.hindi(ids)) {
					r.ids[i] = append(ids[:len(ids):len(ids)], r.ids[i]...)
					t.text, t.raw = w, w
				}
			}
		}
		if t.kind != word || !r.lex.senseless(r.ids[i]) {
			continue
		}
		if v, ok := r.lex.swahiliVerb(t.text); ok {
			r.parsed[i] = v
			continue
		}
		if base, has := strings.CutSuffix(t.text, "ni"); has && len(base) >= 4 {
			r.ids[i] = append(r.ids[i], r.lex.place(base)...) // "lundoni": in the heap
		}
		if len(r.ids[i]) > 0 {
			continue
		}
		// "baridii", "hott": letters doubled for feeling or by a sticky key
		for _, w := range [...]string{unstretched(t.text), single(t.text)} {
			if w == t.text {
				continue
			}
			if r.ids[i] = r.lex.exact(w, w, nil); len(r.ids[i]) > 0 {
				t.text, t.raw = w, w
			}
			if r.lex.senseless(r.ids[i]) {
				if v, ok := r.lex.swahiliVerb(w); ok {
					r.parsed[i], t.text = v, w
				}
			}
			if len(r.ids[i]) > 0 || r.parsed[i].entries != nil {
				break
			}
		}
		if len(r.ids[i]) == 0 && r.parsed[i].entries == nil && len(t.text) >= 5 && strings.HasSuffix(t.text, "in") {
			r.ids[i] = r.lex.exact(t.text+"g", t.text+"g", nil) // burnin
		}
		if len(r.ids[i]) == 0 && r.parsed[i].entries == nil {
			if ids := r.lex.single[single(t.text)]; len(ids) > 0 {
				r.ids[i], t.text = ids, r.lex.spelled[ids[0]]
				t.raw = t.text
			}
		}
	}
}

// hindi says whether any of the words is a Hindi one, in either script.
func (l *lexicon) hindi(ids []int32) bool { return l.may(ids, entry.hindi) }

// may says whether any of the words has a sense of a sort.
func (l *lexicon) may(ids []int32, sort func(entry) bool) bool {
	return slices.ContainsFunc(ids, func(id int32) bool { return slices.ContainsFunc(l.senses[id], sort) })
}

// longVowels are Hindi vowels as phones spell them when they are held long.
var longVowels = strings.NewReplacer("ee", "i", "oo", "u", "aa", "a")

// shortVowels writes the held vowels of a word in Latin letters short.
func shortVowels(w string) string {
	for i := 1; i < len(w) && w[0] < 0x80; i++ {
		if c := w[i]; c == w[i-1] && (c == 'e' || c == 'o' || c == 'a') {
			return longVowels.Replace(w)
		}
	}
	return w
}

// senseless says whether words occur only inside phrases.
func (l *lexicon) senseless(ids []int32) bool {
	for _, id := range ids {
		if len(l.senses[id]) > 0 {
			return false
		}
	}
	return true
}

// unstretched takes one of two equal letters off the end of a word.
func unstretched(w string) string {
	if n := len(w); n >= 3 && w[n-1] == w[n-2] && w[n-1] < 128 {
		return w[:n-1]
	}
	return w
}

func (l *lexicon) exact(raw, text string, ids []int32) []int32 {
	if raw != text {
		ids = l.also(raw, ids)
	}
	return l.also(text, ids)
}

// also adds a word, if it is one, to others.
func (l *lexicon) also(w string, ids []int32) []int32 {
	id, ok := l.id[fold(w)]
	switch {
	case !ok || slices.Contains(ids, id):
		return ids
	case len(ids) == 0:
		return l.self[id : id+1 : id+1]
	}
	return append(ids, id)
}

// weigh decides in which language the text is written: the words each language
// knows, shared words counting less, and a start for the language of the chat.
func (r *reader) weigh() {
	var score [tongues]float64
	switch r.lang {
	case "en":
		score[en] = 0.9
	case "sw":
		score[sw] = 0.9
	case "hi", "hi-Latn":
		score[hi], score[hiLatn] = 0.9, 0.9
	case "es":
		score[es] = 0.9
	case "fr":
		score[fr] = 0.9
	}
	for i, ids := range r.ids {
		if r.parsed[i].entries != nil {
			score[sw]++
			continue
		}
		var in [tongues]bool
		n := 0
		for _, id := range ids {
			for _, e := range r.lex.senses[id] {
				if !in[e.tongue] && e.tongue != everyone {
					in[e.tongue] = true
					n++
				}
			}
		}
		for t := range in {
			if in[t] {
				score[t] += 1 / float64(n)
			}
		}
	}
	for t := range r.order {
		r.order[t] = tongue(t)
	}
	for i := 1; i < int(everyone); i++ { // six items: insertion sort, stable
		for j := i; j > 0 && score[r.order[j]] > score[r.order[j-1]]; j-- {
			r.order[j], r.order[j-1] = r.order[j-1], r.order[j]
		}
	}
	for k, t := range r.order {
		r.rank[t] = k
	}
	if r.lang == "hi" || r.lang == "hi-Latn" { // one language, two scripts
		if r.rank[hi] == 0 || r.rank[hiLatn] == 0 {
			other := hi
			if r.rank[hi] == 0 {
				other = hiLatn
			}
			for t := range r.rank {
				if tongue(t) != other && r.rank[t] > 0 && r.rank[t] < r.rank[other] {
					r.rank[t]++
				}
			}
			r.rank[other] = 1
		}
	}
	r.best = r.order[0]
}

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
				if r.heard == nil {
					r.heard = make([][]int32, len(r.tokens))
				}
				r.heard[i] = more
				if len(r.ids[i]) == 0 && !l.senseless(more) {
					r.ids[i] = more
				}
			}
		}
		if r.home(hi) || r.home(hiLatn) {
			if more := l.forms(shortVowels(t.text), nil); len(more) > 0 {
				if r.heard == nil {
					r.heard = make([][]int32, len(r.tokens))
				}
				r.heard[i] = more
			}
			if as, ok := phoneHindi[t.text]; ok {
				if id, ok := l.id[as]; ok {
					if r.heard == nil {
						r.heard = make([][]int32, len(r.tokens))
					}
					r.heard[i] = append(r.heard[i], id)
				}
				if as == "men" {
					r.heard[i] = append(r.heard[i], l.id["me"]) // as hi-Latn writes it
				}
			}
			if base, has := strings.CutSuffix(t.text, "कर"); has && len(base) > 5 && len(r.ids[i]) == 0 {
				r.ids[i] = l.exact(base, base, nil) // फूटकर: having burst
			}
		}
		if r.home(fr) {
			for _, as := range phoneFrench[t.text] {
				if id, ok := l.id[as]; ok {
					if r.heard == nil {
						r.heard = make([][]int32, len(r.tokens))
					}
					r.heard[i] = append(r.heard[i], id)
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
				if r.heard == nil {
					r.heard = make([][]int32, len(r.tokens))
				}
				for _, id := range l.ear[hiLatn]().sound[sound(hiLatn, t.text)] {
					if l.akin(r.ids[i], id) {
						r.heard[i] = append(r.heard[i], id)
					}
				}
			}
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
		for _, lang := range r.order[:everyone] {
			if lang == hi || lang == en || t.text[0] > 127 || !r.home(lang) {
				continue
			}
			for _, id := range l.ear[lang]().sound[sound(lang, t.text)] {
				if d := len(l.spelled[id]) - len(t.text); d >= -2 && d <= 2 { // "pattes" is no "pas"
					r.ids[i] = append(r.ids[i], id)
					r.near[i] = true
				}
			}
			if len(r.ids[i]) > 0 {
				break
			}
		}
		if len(r.ids[i]) > 0 {
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
		if slow++; slow > 24 {
			continue // a reply has few mistyped words; a pasted page must stay quick
		}
		if ids := r.closest(t.text); len(ids) > 0 {
			r.ids[i], r.near[i] = ids, true
			continue
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
