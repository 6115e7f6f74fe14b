package understand

import "strings"

// swahili takes a Swahili verb apart: nimegeuza = ni + me + geuz + a. The
// prefixes are a table (lexicon/sw/prefixes.tsv), the roots are in verbs.tsv.
type swahili struct {
	subject, negative, object, tense, relative []affix
}

type affix struct {
	text  string
	tense tense
	gloss string // "me" for the speaker, "self" for the reflexive, "person" for somebody
}

// cutAffix takes an affix off the front of a word. Most differ in the first letter.
func cutAffix(w, affix string) (rest string, has bool) {
	if w == "" || w[0] != affix[0] || !strings.HasPrefix(w, affix) {
		return w, false
	}
	return w[len(affix):], true
}

func (s *swahili) prefix(cols []string) {
	for _, p := range strings.Fields(cols[1]) {
		a := affix{text: p}
		if len(cols) > 2 {
			a.tense = tenseNames[cols[2]]
			if a.tense == 0 {
				a.gloss = cols[2]
			}
		}
		switch cols[0] {
		case "subject":
			s.subject = append(s.subject, a)
		case "negative":
			s.negative = append(s.negative, a)
		case "object":
			s.object = append(s.object, a)
		case "tense":
			s.tense = append(s.tense, a)
		case "relative":
			s.relative = append(s.relative, a)
		}
	}
}

// swVerb is a verb form taken apart.
type swVerb struct {
	entries []entry
	tense   tense
	neg     bool
	self    bool // reflexive -ji-
	passive bool
	mine    bool // first person subject or object
	whom    bool // its object is the speaker or somebody: alinisaidia, kikamkata
	when    bool // the when of something else: nilipofungua
}

// with makes a verb form of a stem.
func (s swStem) with(t tense, neg, mine bool) (swVerb, bool) {
	return swVerb{entries: s.entries, tense: t, neg: neg, self: s.object == "self", passive: s.passive,
		mine: mine || s.object == "me", whom: s.object == "me" || s.object == "person"}, true
}

// swStem is what stands behind subject and tense: an object prefix, a root, its extensions.
type swStem struct {
	entries []entry
	object  string // gloss of the object prefix
	passive bool
}

// swahiliVerb parses one word; ok is false when no root of the table is inside.
func (l *lexicon) swahiliVerb(w string) (v swVerb, ok bool) {
	if len(w) < 3 || len(w) > 26 {
		return v, false
	}
	if verb, asks := strings.CutSuffix(w, "je"); asks && len(verb) > 5 && (strings.HasSuffix(verb, "a") || strings.HasSuffix(verb, "e")) {
		if v, good := l.swahiliVerb(verb); good && act(v.entries[0].sense()) { // "nafunikaje": how do I cover
			return swVerb{entries: []entry{meant(sw, "ask=help")}}, true
		}
	}
	// infinitive: ku- or kw- [object] root; after another verb it goes on with its tense
	for _, p := range []string{"kuto", "kuji", "kw", "ku"} {
		if rest, has := strings.CutPrefix(w, p); has {
			if es, pas, good := l.stem(rest); good {
				return swVerb{entries: es, tense: bare, self: p == "kuji", neg: p == "kuto", passive: pas}, true
			}
			if es := l.borrowed(rest); es != nil && p == "ku" { // kucover
				return swVerb{entries: es, tense: bare}, true
			}
			if st, good := l.objectStem(rest); good && p == "ku" && len(rest) > 4 { // kuifungua: to open it
				return st.with(bare, false, false)
			}
		}
	}
	for _, a := range l.sw.negative {
		rest, has := cutAffix(w, a.text)
		if !has {
			continue
		}
		for _, t := range l.sw.tense {
			if t.tense&(past|yet|future|unless) == 0 {
				continue
			}
			if r2, has := cutAffix(rest, t.text); has && t.gloss == "" {
				if t.text == "li" || t.text == "me" || t.text == "mesha" {
					continue
				}
				if st, good := l.objectStem(r2); good {
					return st.with(t.tense, true, a.gloss == "me")
				}
			}
		}
		if r2, has := strings.CutPrefix(rest, "ku"); has { // sikugeuza: did not
			if st, good := l.objectStem(r2); good {
				return st.with(past, true, a.gloss == "me")
			}
		}
		if strings.HasSuffix(rest, "i") { // hainuki, sigeuzi: does not
			if st, good := l.objectStem(rest[:len(rest)-1] + "a"); good {
				if able := strings.TrimSuffix(strings.TrimSuffix(rest, "iki"), "eki"); able != rest && act(st.entries[0].sense()) {
					if _, good := l.objectStem(able + "a"); good { // "haichekecheki": it cannot be sieved
						return swVerb{entries: []entry{meant(sw, "cant")}}, true
					}
				}
				return st.with(present, true, a.gloss == "me")
			}
		}
	}
	for _, a := range l.sw.subject {
		rest, has := cutAffix(w, a.text)
		if !has {
			continue
		}
		for _, t := range l.sw.tense {
			r2, has := cutAffix(rest, t.text)
			if !has {
				continue
			}
			if t.tense == yet || t.text == "li" && strings.HasSuffix(w, "e") {
				continue // "nimemwambia aligeuze": that he should turn it
			}
			for _, r3 := range []string{r2, strings.TrimPrefix(r2, "ku")} { // amekunywa, wamekufa: short roots keep ku-
				if st, good := l.objectStem(r3); good {
					return st.with(t.tense, false, a.gloss == "me")
				}
			}
			if r3, has := strings.CutPrefix(r2, "po"); has && (t.text == "li" || t.text == "na") {
				if st, good := l.objectStem(r3); good && len(r3) > 3 {
					v, ok := st.with(t.tense, false, a.gloss == "me")
					e := st.entries[0].sense()
					v.when = act(e) || e == "hold" || e == "squeeze" || e == "look"
					return v, ok
				}
			}
			for _, o := range l.sw.relative { // aliyeoza, linalotoka: who, which
				if r3, has := cutAffix(r2, o.text); has && len(r3) > 2 && (t.text == "li" || t.text == "na") {
					if st, good := l.objectStem(r3); good {
						return st.with(t.tense, false, a.gloss == "me")
					}
				}
			}
		}
		if strings.HasPrefix(rest, "si") && strings.HasSuffix(rest, "e") { // nisigeuze
			if st, good := l.objectStem(rest[2:]); good {
				return st.with(order, true, false)
			}
		}
		if strings.HasSuffix(rest, "e") || strings.HasSuffix(rest, "eni") { // nigeuze: may I turn
			if st, good := l.objectStem(rest); good {
				return st.with(order, false, false)
			}
		}
	}
	if rest, has := strings.CutPrefix(w, "hu"); has { // hunuka: habitually
		if es, pas, good := l.stem(rest); good {
			return swVerb{entries: es, tense: present, passive: pas}, true
		}
	}
	if rest, has := strings.CutPrefix(w, "ka"); has && len(rest) > 3 { // kanywa: he drank
		if st, good := l.objectStem(rest); good {
			return st.with(past, false, false)
		}
	}
	if rest, has := strings.CutPrefix(w, "na"); has && len(rest) > 3 { // nageuza: I am turning
		if st, good := l.objectStem(rest); good {
			return st.with(ongoing, false, true)
		}
	}
	if es, pas, good := l.stem(w); good { // geuza!
		return swVerb{entries: es, tense: order, passive: pas}, true
	}
	return v, false
}

func (l *lexicon) objectStem(w string) (swStem, bool) {
	if es := l.borrowed(w); es != nil {
		return swStem{entries: es}, true
	}
	if es, passive, ok := l.stem(w); ok {
		return swStem{entries: es, passive: passive}, true
	}
	for _, o := range l.sw.object {
		rest, has := cutAffix(w, o.text)
		if !has {
			continue
		}
		if es, passive, ok := l.stem(rest); ok {
			return swStem{es, o.gloss, passive}, true
		}
		if es := l.borrowed(rest); es != nil {
			return swStem{entries: es, object: o.gloss}, true // nimewafeed
		}
	}
	return swStem{}, false
}

// planned reads the verb of no table that the speaker will do ("nitanusa") or will first
// have done ("nikipona"): when it is, is said, whatever it is.
func (l *lexicon) planned(w string) (swVerb, bool) {
	if len(w) < 7 || w[len(w)-1] != 'a' {
		return swVerb{}, false
	}
	for _, a := range l.sw.subject {
		rest, has := cutAffix(w, a.text)
		if !has || a.gloss != "me" {
			continue
		}
		for _, t := range l.sw.tense {
			if root, has := cutAffix(rest, t.text); !has || len(root) < 3 {
				continue
			}
			switch {
			case t.tense == future:
				return swVerb{entries: []entry{meant(sw, "will")}, tense: future, mine: true}, true
			case t.text == "ki":
				return swVerb{entries: []entry{meant(sw, "later")}, mine: true}, true
			}
		}
	}
	return swVerb{}, false
}

// stem strips the final vowel and the usual extensions and looks the root up.
// Extensions: -w- passive, -i-/-e- for, -ish-/-esh- make, -ik-/-ek- become.
func (l *lexicon) stem(w string) (es []entry, passive, ok bool) {
	w = strings.TrimSuffix(w, "ni")
	if len(w) < 2 {
		return nil, false, false
	}
	if n := len(w) / 2; n >= 4 && len(w)%2 == 0 && w[:n] == w[n:] {
		w = w[:n] // tikisatikisa: again and again
	}
	switch w[len(w)-1] {
	case 'a', 'e', 'i':
	default:
		return nil, false, false
	}
	r := w[:len(w)-1]
	if es, ok = l.roots[r]; ok {
		return es, false, true
	}
	if r2, has := strings.CutSuffix(r, "w"); has {
		for _, c := range []string{r2, strings.TrimSuffix(r2, "i"), strings.TrimSuffix(r2, "e"), strings.TrimSuffix(r2, "li")} {
			if es, ok = l.roots[c]; ok && c != "" {
				return es, true, true
			}
		}
	}
	for _, x := range []string{"i", "e", "li", "le", "an", "ish", "esh", "iz", "ez", "ian", "ik", "ek"} {
		if r2, has := strings.CutSuffix(r, x); has && len(r2) >= 3 {
			if es, ok = l.roots[r2]; ok && (x == "ik" || x == "ek") && spills(es[0].sense()) {
				return []entry{meant(sw, "filler")}, false, true // yamemwagika: it spilled, nobody poured
			}
			if ok {
				return es, false, true
			}
		}
	}
	return nil, false, false
}

// borrowed finds an English verb under Swahili prefixes: nimeturn, ameshake.
func (l *lexicon) borrowed(w string) []entry {
	id, ok := l.id[w]
	if !ok || len(w) < 3 {
		return nil
	}
	for _, e := range l.senses[id] {
		if e.tongue == en && (e.tense&bare != 0 && act(e.sense()) || e.sense() == "bottle=burst" || e.sense() == "bottle=leaking" || e.sense() == "seen=worms_escaping" || hurts(e.sense()) && e.tense != 0) {
			return []entry{e}
		}
	}
	return nil
}

// verbPrefix is the length of the subject and tense a Swahili verb begins with, 0 for
// other words.
func (l *lexicon) verbPrefix(w string) int {
	most := 0
	for _, subjects := range [...][]affix{l.sw.subject, l.sw.negative} {
		for _, a := range subjects {
			rest, has := cutAffix(w, a.text)
			if !has {
				continue
			}
			for _, t := range l.sw.tense {
				if n := len(a.text) + len(t.text); strings.HasPrefix(rest, t.text) && n > most && len(w)-n >= 3 {
					most = n
				}
			}
		}
	}
	return most
}

// rootNear says whether a mistyped verb and a known one differ by slips in what their
// common prefix leaves: "nimepeleka" is not "nimeelewa".
func rootNear(w, known string, prefix int) bool {
	if prefix < 3 || len(known) <= prefix || known[:prefix] != w[:prefix] {
		return prefix < 3 || len(known) <= 6
	}
	limit := 1
	if len(w)-prefix >= 9 {
		limit = 2
	}
	return slips([]rune(w[prefix:]), []rune(known[prefix:]), limit) <= limit
}

func spills(sense string) bool {
	return sense == "did=watered" || sense == "put" || sense == "open" || sense == "give"
}
