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
		if r.undoubled(i); len(r.ids[i]) > 0 || r.parsed[i].entries != nil {
			continue
		}
		if len(t.text) >= 5 && strings.HasSuffix(t.text, "in") {
			r.ids[i] = r.lex.exact(t.text+"g", t.text+"g", nil) // burnin
		}
	}
}

// undoubled looks for word i with letters doubled for feeling or by a sticky key:
// "baridii", "hott", "arroosé". A word of the chat's language goes first.
func (r *reader) undoubled(i int) {
	t, l := &r.tokens[i], r.lex
	take := func(ids []int32) {
		r.ids[i], t.text = ids, l.spelled[ids[0]]
		t.raw = t.text
	}
	other := l.single[single(fold(t.raw))]
	if len(other) == 0 {
		other = l.single[single(t.text)]
	}
	own := func(e entry) bool { return folders[e.tongue] == r.lang }
	if l.may(other, own) && !l.may(l.exact(unstretched(t.text), single(t.text), nil), own) {
		take(other)
		return
	}
	for _, w := range [...]string{unstretched(t.text), single(t.text)} {
		if w == t.text {
			continue
		}
		if ids := l.exact(single(t.raw), w, nil); len(ids) > 0 {
			take(ids)
		}
		if l.senseless(r.ids[i]) {
			if v, ok := l.swahiliVerb(w); ok {
				r.parsed[i], t.text = v, w
			}
		}
		if len(r.ids[i]) > 0 || r.parsed[i].entries != nil {
			return
		}
	}
	if len(other) > 0 {
		take(other)
	}
}

// hindi says whether any of the words is a Hindi one, in either script.
func (l *lexicon) hindi(ids []int32) bool { return l.may(ids, entry.hindi) }

// may says whether any of the words has a sense of a sort.
func (l *lexicon) may(ids []int32, sort func(entry) bool) bool {
	for _, id := range ids {
		for _, e := range l.senses[id] {
			if sort(e) {
				return true
			}
		}
	}
	return false
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
