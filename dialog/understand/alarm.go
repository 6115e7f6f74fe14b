package understand

import "slices"

// A danger told with a letter wrong: "le tas fune", "un alacrán me pixó". A short word with
// another letter in it is not taken for a word of the tables, since most such words mean
// nothing here. But a danger in doubt counts (labelling rule): a word that was not understood
// is tried as one of those that tell of dangers, and the text is read again with it.

// mostAlarms is how many words of a text are tried so, and longAlarm the longest text, in
// tokens, in which they are: each is a reading, and a pasted page must stay quick.
const (
	mostAlarms = 4
	longAlarm  = 120
)

// alarmed gives the meaning of the text with one word mended that makes it tell of a danger,
// or m where there is none.
func (r *reader) alarmed(m Meaning) Meaning {
	if len(r.tokens) > longAlarm || slices.ContainsFunc(m.Codes, dangerous) {
		return m
	}
	tried := 0
	for i := range r.tokens {
		if tried == mostAlarms {
			break
		}
		if !r.puzzling(i, m.Sure) {
			continue
		}
		ids, verb := r.perilous(i)
		if len(ids) == 0 && verb.entries == nil {
			continue
		}
		tried++
		oldIDs, oldVerb, oldNear := r.ids[i], r.parsed[i], r.near[i]
		r.ids[i], r.parsed[i], r.near[i] = ids, verb, true
		again := r.again()
		if slices.ContainsFunc(again.Codes, dangerous) {
			return again
		}
		r.ids[i], r.parsed[i], r.near[i] = oldIDs, oldVerb, oldNear
	}
	if tried > 0 {
		r.sign()
	}
	return m
}

// puzzling says whether word i was not understood: not found, or found by nearness or in a far
// language only, which does where it makes sense. A word of set phrases is known.
func (r *reader) puzzling(i int, makesSense bool) bool {
	switch {
	case r.tokens[i].kind != word:
		return false
	case r.parsed[i].entries != nil:
		return !r.home(sw) && !makesSense
	case len(r.ids[i]) == 0:
		return true
	}
	return !makesSense && (r.near[i] || r.farOff(i))
}

// again reads the tokens once more.
func (r *reader) again() Meaning {
	r.several, r.correcting, r.worms, r.bottles = false, false, false, false
	r.sign()
	return r.read()
}

// dangerous says whether a code is one for which there is no doubt rule.
func dangerous(code string) bool {
	return inDim(code, "harm") || code == "seen=smoke" || code == "seen=fire" || code == "ask=stop"
}

// perilous finds the words of dangers that word i is one slip away from.
func (r *reader) perilous(i int) (ids []int32, v swVerb) {
	w := fold(string(plain([]rune(r.tokens[i].raw))))
	if len(w) > longestWord || r.named(i) {
		return nil, v
	}
	for t := range everyone {
		if r.home(t) {
			ids = append(ids, r.lex.ear[t]().perils.oneOff(w)...)
		}
	}
	if len(ids) == 0 && r.home(sw) {
		v = r.lex.perilousVerb(w)
	}
	return ids, v
}

// perilousVerb takes a Swahili verb for one that tells of a danger, if one letter beside
// another on the keys makes it so: "limeqaka".
func (l *lexicon) perilousVerb(w string) swVerb {
	if len(w) < 6 || w[0] > 127 {
		return swVerb{}
	}
	try := []byte(w)
	for i := 2; i < len(w); i++ {
		if w[i] < 'a' || w[i] > 'z' {
			continue
		}
		for _, c := range []byte(beside[w[i]-'a']) {
			try[i] = c
			if v, ok := l.swahiliVerb(string(try)); ok && slices.ContainsFunc(v.entries, fearful) {
				return v
			}
		}
		try[i] = w[i]
	}
	return swVerb{}
}

// fearful says whether a word of an entry may tell of a danger, by itself or with others.
func fearful(e entry) bool {
	switch s := e.sense(); s {
	case "burn", "burning", "burnt", "ember", "scalding", "bite", "cut", "drink", "eat", "breathe", "eye", "body", "moto", "stinger", "stop", "message", "write", "seen=ash":
		return true
	default:
		return dangerous(s)
	}
}
