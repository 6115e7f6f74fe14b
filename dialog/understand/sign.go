package understand

import (
	"slices"
	"strings"
)

// sign is a word, phrase or figure with its sense: the text as it is understood,
// language left behind but for the order of words.
type sign struct {
	sense  string
	tense  tense
	tongue tongue
	own    bool // names its own thing
	neg    bool // denied, by its own form (Swahili) or by a "not" bound to it
	self   bool // reflexive: cut myself
	mine   bool // the verb's person is the speaker
	pass   bool // passive: was bitten
	real   bool // negation is inside the verb form
	value  float64
	high   float64 // of a range; else equal to value
	typed  bool    // written in digits
	from   int     // token
	to     int     // token after the last
	text   string
	unsure bool // read by sound or by nearness
	grade  grade
}

type grade uint8

const (
	plainly grade = iota
	slightly
	strongly
	notAtAll
)

// reader holds one text on its way through.
type reader struct {
	lex    *lexicon
	asked  string
	lang   string
	tokens []token
	ids    [][]int32
	near   []bool // ids found by sound or nearness
	parsed []swVerb
	rank   [tongues]int // 0 is the text's own language
	order  [tongues]tongue
	signs  []sign
	best   tongue
	// several says that the message has more clauses than one: a report, not an order
	several bool
}

func newReader(text, lang, asked string) *reader {
	r := &reader{lex: tables(), asked: asked, lang: lang, tokens: tokens(text)}
	r.lookUp()
	r.weigh()
	r.lookNear()
	r.sign()
	return r
}

// lookUp finds exact words, and Swahili verbs.
func (r *reader) lookUp() {
	r.ids = make([][]int32, len(r.tokens))
	r.near = make([]bool, len(r.tokens))
	r.parsed = make([]swVerb, len(r.tokens))
	for i := range r.tokens {
		t := &r.tokens[i]
		if t.kind == number || t.kind == mark {
			continue
		}
		r.ids[i] = r.lex.exact(t.raw, t.text, nil)
		if w := unstretched(t.text); w != t.text && len(t.text) >= 5 && len(r.ids[i]) > 0 {
			r.ids[i] = r.lex.exact(w, w, r.ids[i]) // "motoo" is also the "moto" of a phrase
		}
		if t.kind != word || !r.lex.senseless(r.ids[i]) {
			continue
		}
		if unstretched(t.text) == t.text { // no Swahili verb ends in two like vowels
			if v, ok := r.lex.swahiliVerb(t.text); ok {
				r.parsed[i] = v
				continue
			}
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
		if len(r.ids[i]) == 0 && r.parsed[i].entries == nil {
			if ids := r.lex.single[single(t.text)]; len(ids) > 0 {
				r.ids[i], t.text = ids, r.lex.spelled[ids[0]]
				t.raw = t.text
			}
		}
	}
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
		if id, ok := l.id[fold(raw)]; ok {
			ids = append(ids, id)
		}
	}
	if id, ok := l.id[fold(text)]; ok && !slices.Contains(ids, id) {
		ids = append(ids, id)
	}
	return ids
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
		own := false // known in the text's own language
		for _, id := range r.ids[i] {
			for _, e := range l.senses[id] {
				own = own || r.rank[e.tongue] == 0 || e.tongue == everyone
			}
			own = own || len(l.senses[id]) == 0 && r.rank[hiLatn] > 1
		}
		if own {
			continue
		}
		found := len(r.ids[i]) > 0
		if r.rank[hiLatn] <= 1 {
			heard := t.text
			if heard[0] > 127 {
				heard = romanise(fold(heard)) // थंडा for ठंडा: by ear they are one
			}
			more := l.sound[hiLatn][sound(hiLatn, heard)]
			r.ids[i] = append(r.ids[i][:len(r.ids[i]):len(r.ids[i])], more...)
			found = found || len(more) > 0
		}
		if len(r.ids[i]) > 0 && !l.senseless(r.ids[i]) {
			continue
		}
		if found && r.rank[hiLatn] <= 1 && len(t.text) <= 4 && bones(t.text) == t.text {
			r.ids[i] = append(r.ids[i][:len(r.ids[i]):len(r.ids[i])], l.bones[t.text]...)
		}
		if found {
			continue
		}
		if v, ok := l.clitic(t.text); ok {
			r.ids[i] = v
			continue
		}
		for _, lang := range r.order[:everyone] {
			if lang == hi || lang == en || t.text[0] > 127 || !r.home(lang) {
				continue
			}
			if ids := l.sound[lang][sound(lang, t.text)]; len(ids) > 0 {
				r.ids[i] = append(r.ids[i], ids...)
				r.near[i] = true
			}
			if len(r.ids[i]) > 0 {
				break
			}
		}
		if len(r.ids[i]) > 0 {
			continue
		}
		if r.rank[hiLatn] <= 1 && len(t.text) <= 4 && bones(t.text) == t.text {
			if ids := l.bones[t.text]; len(ids) > 0 {
				r.ids[i], r.near[i] = ids, true
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
			}
		}
	}
}

// home says whether mistyped words are looked for in a tongue: the text's own and
// the chat's. A word of a third language must be typed right to count.
func (r *reader) home(t tongue) bool {
	return r.rank[t] == 0 || folders[t] == r.lang || (t == hi || t == hiLatn) && (r.lang == "hi" || r.lang == "hi-Latn")
}

// closest keeps a near word only when every equally near word of the same
// language says the same.
func (r *reader) closest(w string) []int32 {
	l := r.lex
	var buf [16]int32
	ids := l.near.find(w, buf[:0], func(id int32) bool {
		if len(l.senses[id]) == 0 {
			return false
		}
		for _, e := range l.senses[id] {
			if r.home(e.tongue) {
				return true
			}
		}
		return false
	})
	if len(ids) == 0 {
		return nil
	}
	rank := int(tongues)
	for _, id := range ids {
		for _, e := range l.senses[id] {
			rank = min(rank, r.rank[e.tongue])
		}
	}
	said := map[string][]int32{}
	for _, id := range ids {
		for _, e := range l.senses[id] {
			if r.rank[e.tongue] == rank && e.sense != "filler" {
				said[e.sense] = append(said[e.sense], id)
			}
		}
	}
	if len(said) == 1 {
		for _, out := range said {
			return out
		}
	}
	// several senses: the one that answers the question, if its opposite is not
	// among them
	var best []int32
	n := 0
	for sense, out := range said {
		if dimension(sense) != "" && (dimension(sense) == r.asked || sense == actOf(r.asked)) {
			best = out
			n++
		}
	}
	if n == 1 {
		return best
	}
	return nil
}

// clitic takes the pronoun off a Spanish verb: voltearlo, echándole.
func (l *lexicon) clitic(w string) ([]int32, bool) {
	for n := 0; n < 2; n++ {
		cut := ""
		for _, c := range []string{"los", "las", "les", "nos", "lo", "la", "le", "me", "te", "se"} {
			if r, ok := strings.CutSuffix(w, c); ok && len(r) >= 4 {
				cut = r
				break
			}
		}
		if cut == "" {
			return nil, false
		}
		w = cut
		if id, ok := l.id[w]; ok {
			for _, e := range l.senses[id] {
				if e.tongue == es && e.tense&(bare|ongoing|order) != 0 {
					return []int32{id}, true
				}
			}
		}
	}
	return nil, false
}

// swahiliSlip allows one letter wrong in a longer Swahili verb.
func (l *lexicon) swahiliSlip(w string) (swVerb, bool) {
	if len(w) < 7 {
		return swVerb{}, false
	}
	try := make([]byte, 0, len(w)+1)
	for i := 2; i < len(w); i++ { // a letter too many
		try = append(append(try[:0], w[:i]...), w[i+1:]...)
		if v, ok := l.swahiliVerb(string(try)); ok {
			return v, true
		}
	}
	for i := 2; i < len(w)-1; i++ { // two swapped
		try = append(try[:0], w...)
		try[i], try[i+1] = try[i+1], try[i]
		if v, ok := l.swahiliVerb(string(try)); ok {
			return v, true
		}
	}
	return swVerb{}, false
}

// sign turns tokens into signs, the longest phrase first.
func (r *reader) sign() {
	r.signs = make([]sign, 0, len(r.tokens))
	for i := 0; i < len(r.tokens); {
		t := &r.tokens[i]
		switch t.kind {
		case number:
			r.signs = append(r.signs, sign{sense: "num", value: t.value, high: t.value, typed: true, from: i, to: i + 1, text: t.text, tongue: r.best})
			i++
			continue
		case mark:
			r.signs = append(r.signs, sign{sense: t.text, from: i, to: i + 1, text: t.text, tongue: r.best})
			i++
			continue
		}
		s := r.one(i)
		if s.sense == "crop=maize" && t.raw == "mais" && s.tongue == fr {
			if i == 0 || r.tokens[i-1].text != "de" && r.tokens[i-1].text != "du" && r.tokens[i-1].text != "le" {
				s.sense = "but" // maïs without its dots is the same word as "but"
			}
		}
		r.signs = append(r.signs, s)
		i = s.to
	}
	r.twoOrGive()
	r.numbers()
	r.spans()
}

// spans reads "in two days", "after 3 hours", "dans deux jours" as a time to come.
func (r *reader) spans() {
	out := r.signs[:0]
	for i := 0; i < len(r.signs); i++ {
		s := r.signs[i]
		if n := len(out); n > 0 && s.sense == "num" && i+1 < len(r.signs) {
			switch r.signs[i+1].sense {
			case "dayword", "hour", "minute":
				switch out[n-1].text {
				case "after", "in", "within", "dans", "en", "dentro", "baada":
					out[n-1].sense, out[n-1].to = "later", r.signs[i+1].to
					i++
					continue
				}
			}
		}
		out = append(out, s)
	}
	r.signs = out
}

// twoOrGive: Hindi "do" is two, or "give" after a verb ("palat do").
func (r *reader) twoOrGive() {
	for i := range r.signs {
		s := &r.signs[i]
		if s.sense != "give" && s.sense != "do" || s.text != "do" && s.text != "दो" || s.tongue == en && (r.rank[hiLatn] > 1 || r.rank[en] == 0) {
			continue
		}
		if i > 0 {
			p := r.signs[i-1]
			if act(p.sense) || verbal(p.sense) || p.sense == "stop" || p.sense == "water" || quality(p.sense) && p.tense != 0 {
				continue
			}
		}
		if i+1 < len(r.signs) {
			s.sense, s.value, s.high, s.tense = "num", 2, 2, 0
		}
	}
}

// one reads the sign that begins at token i.
func (r *reader) one(i int) sign {
	t := &r.tokens[i]
	s := sign{sense: "", from: i, to: i + 1, text: t.text, tongue: r.best, unsure: r.near[i]}
	bestRank, bestLen := int(tongues)+1, 1
	for k, id := range r.ids[i] {
		for _, e := range r.lex.senses[id] {
			rank := r.rank[e.tongue]
			if e.tongue == everyone {
				rank = 0
			}
			if k > 0 && rank == bestRank && s.sense == e.sense && t.raw == t.text && r.lex.spelled[id] == t.text {
				s.tense |= e.tense
			}
			counted := len(r.signs) > 0 && (r.signs[len(r.signs)-1].sense == "num" || r.signs[len(r.signs)-1].sense == "one")
			noun := counted && dimension(e.sense) == "unit" && dimension(s.sense) != "unit" // "un saco" is no verb
			if rank < bestRank || rank == bestRank && (idle(s.sense) && !idle(e.sense) || noun) {
				bestRank = rank
				s.sense, s.tense, s.tongue, s.own, s.value, s.high = e.sense, e.tense, e.tongue, e.own, e.value, e.value
			}
		}
	}
	if v := r.parsed[i]; v.entries != nil {
		e := v.entries[0]
		if r.asked != "" && len(v.entries) > 1 {
			for _, x := range v.entries {
				if x.sense == actOf(r.asked) {
					e = x
				}
			}
		}
		s.sense, s.tense, s.tongue, s.own = e.sense, v.tense, sw, e.own
		s.neg, s.real, s.self, s.pass, s.mine = v.neg, v.neg, v.self, v.passive, v.mine
		bestRank = r.rank[sw]
	}
	for _, id := range r.ids[i] {
		for _, p := range r.lex.phrases[id] {
			if p.fixed < bestLen {
				continue
			}
			rank := r.rank[p.entry.tongue]
			if p.fixed == bestLen && (bestLen == 1 || rank >= bestRank) {
				continue
			}
			end, ok := r.match(i+1, p.words[1:])
			if !ok {
				continue
			}
			bestLen, bestRank = p.fixed, rank
			e := p.entry
			s = sign{sense: e.sense, tense: e.tense, tongue: e.tongue, own: e.own, value: e.value, high: e.value, from: i, to: end, text: t.text, unsure: r.near[i]}
		}
	}
	return s
}

// idle senses give way to any other sense the same word has.
func idle(sense string) bool {
	switch sense {
	case "known", "filler", "foreign", "material=weeds", "material=worms", "material=ash", "material=compost":
		return true
	}
	return false
}

// match follows the words of a phrase from token j. One filler ("the", "very") may
// stand between two words of a phrase.
func (r *reader) match(j int, words []int32) (end int, ok bool) {
	if len(words) == 0 {
		return j, true
	}
	if words[0] == gap {
		for skip := 0; skip <= 3 && j+skip < len(r.tokens); skip++ {
			if e, ok := r.match(j+skip, words[1:]); ok {
				return e, true
			}
			if r.tokens[j+skip].kind == mark {
				return 0, false
			}
		}
		return 0, false
	}
	if j >= len(r.tokens) || r.tokens[j].kind == mark && r.tokens[j].text != "'" && r.tokens[j].text != "-" {
		return 0, false
	}
	for _, id := range r.ids[j] {
		if id == words[0] {
			return r.match(j+1, words[1:])
		}
	}
	if r.tokens[j].kind == mark || r.skippable(j) {
		if j+1 < len(r.tokens) {
			for _, id := range r.ids[j+1] {
				if id == words[0] {
					return r.match(j+2, words[1:])
				}
			}
		}
	}
	return 0, false
}

func (r *reader) skippable(j int) bool {
	for _, id := range r.ids[j] {
		for _, e := range r.lex.senses[id] {
			if e.sense == "filler" && (r.rank[e.tongue] == 0 || r.home(e.tongue)) {
				return true
			}
		}
	}
	return false
}
