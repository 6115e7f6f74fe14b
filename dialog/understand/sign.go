package understand

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
	whom   bool // its object is a person (Swahili)
	real   bool // negation is inside the verb form
	typed  bool // written in digits
	unsure bool // read by sound or by nearness
	grade  grade
	value  float64
	high   float64 // of a range; else equal to value
	from   int     // token
	to     int     // token after the last
	text   string
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
	text   string // as it came
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
	// correcting says that an earlier answer is taken back: what is stated answers
	// that question, whichever is open now
	correcting bool
	worms      bool // the message or the open question is about worms
	bottles    bool // likewise, the bottle
	desk
}

// newReader has a text cut, looked up and signed. It is to be closed when it has been
// read: nothing that is kept may lie on its desk.
func newReader(text, lang, asked string) *reader {
	r := desks.Get().(*reader)
	*r = reader{lex: tables(), text: text, asked: asked, lang: lang, tokens: r.tokens[:0], ids: r.ids, near: r.near, parsed: r.parsed, signs: r.signs, desk: r.desk}
	r.skips = r.skips[:0]
	r.spelt = spell(r.spelt[:0], text)
	r.tokens = cut(r.tokens, r.spelt, &r.words)
	r.rejoin()
	r.rejoinTense()
	r.unjoin()
	r.unelided()
	r.look()
	if r.part() {
		r.look()
	}
	r.sign()
	return r
}

// look finds the words of the tables that the tokens are.
func (r *reader) look() {
	r.heard = sized(r.heard, len(r.tokens))
	r.lookUp()
	r.weigh()
	r.lookNear()
}

// sign turns tokens into signs, the longest phrase first.
func (r *reader) sign() {
	r.signs = r.signs[:0]
	r.topics()
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
		s := r.yielding(i, r.one(i))
		if s.sense == "crop=maize" && t.raw == "mais" && s.tongue == fr {
			if i == 0 || r.tokens[i-1].text != "de" && r.tokens[i-1].text != "du" && r.tokens[i-1].text != "le" {
				s.sense = "but" // maïs without its dots is the same word as "but"
			}
		}
		if s.sense == "plushalf" && s.to == i+2 && (t.text == "y" || t.text == "et") && r.countedAt(i+2) && !r.afterUnit() {
			s.sense, s.to = "and", i+1 // "2 baldes de estiércol y medio saco de ceniza"
		}
		if s.sense == "maybe" && r.reflexive(s) {
			s.sense, s.to = "not", i+1
		}
		r.signs = append(r.signs, s)
		i = s.to
	}
	r.twoOrGive()
	r.numbers()
	r.spans()
}

// countedAt says whether the word at token i is a unit.
func (r *reader) countedAt(i int) bool {
	return i < len(r.tokens) && r.lex.may(r.ids[i], func(e entry) bool { return inDim(e.sense(), "unit") })
}

// afterUnit says whether the last sign is a unit or a figure, to which a half belongs.
func (r *reader) afterUnit() bool {
	n := len(r.signs)
	return n > 0 && (inDim(r.signs[n-1].sense, "unit") || r.signs[n-1].sense == "num" || r.signs[n-1].sense == "one")
}

// leftIn says whether "in" at a sign is of how long something was left: "left it in 10
// minutes" is no time to come.
func (r *reader) leftIn(s *sign) bool {
	return s.text == "in" && s.from > 0 && oneOf(r.tokens[max(0, s.from-2)].text, "left", "kept", "leave", "stood")
}

// spans reads "in two days", "after 3 hours", "dans deux jours" as a time to come.
func (r *reader) spans() {
	out := r.signs[:0]
	for i := 0; i < len(r.signs); i++ {
		s := r.signs[i]
		if n := len(out); n > 0 && s.sense == "num" && i+1 < len(r.signs) && !r.leftIn(&out[n-1]) {
			switch r.signs[i+1].sense {
			case "dayword", "hour", "minute":
				switch out[n-1].text {
				case "after", "in", "within", "dans", "en", "dentro", "baada",
					"give", "wait", "deme", "dame", "denme", "espere", "espereme", "moi", "donnez", "donne", "attendez", "need":
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
		if s.sense == "unit=tin" && oneOf(s.text, "tin", "teen") && r.home(hiLatn) && i+1 < len(r.signs) && (inDim(r.signs[i+1].sense, "unit") || r.signs[i+1].sense == "num" || r.signs[i+1].sense == "drop") {
			s.sense, s.value, s.high = "num", 3, 3 // "tin bori": three sacks
			continue
		}
		if s.text == "do" && s.tongue == en && i+1 < len(r.signs) && inDim(r.signs[i+1].sense, "unit") && r.signs[i+1].hindi() {
			s.sense, s.value, s.high, s.tense = "num", 2, 2, 0 // "do tokri gobar" in an English chat
			continue
		}
		if s.sense != "give" && s.sense != "do" || s.text != "do" && s.text != "दो" || s.tongue == en && (r.rank[hiLatn] > 1 || r.rank[en] == 0) {
			continue
		}
		if i > 0 && !(i+1 < len(r.signs) && inDim(r.signs[i+1].sense, "unit")) { // "neem ki do tokri"
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
			if rank > bestRank {
				continue
			}
			if t.text[0] >= 0xe0 && e.tongue != hi && e.tongue != hiLatn && e.tongue != everyone {
				continue // a Devanagari word that sounds like a Spanish one is Hindi
			}
			if denying(e.sense()) && e.tongue != en && e.tongue != everyone && !r.home(e.tongue) {
				continue // French "pa" in a Hindi line denies nothing
			}
			if k > 0 && rank == bestRank && s.sense == e.sense() && t.raw == t.text && r.lex.spelled[id] == t.text {
				s.tense |= e.tense
			}
			counted := len(r.signs) > 0 && (r.signs[len(r.signs)-1].sense == "num" || r.signs[len(r.signs)-1].sense == "half" || r.signs[len(r.signs)-1].sense == "one")
			noun := inDim(e.sense(), "unit") && !inDim(s.sense, "unit") && (counted || r.halfAhead(i+1)) // "un saco" is no verb
			if rank < bestRank || rank == bestRank && (idle(s.sense) && !idle(e.sense()) || noun || r.suits(&e, s.sense)) {
				bestRank = rank
				s.sense, s.tense, s.tongue, s.own, s.value, s.high = e.sense(), e.tense, e.tongue, e.own, e.value, e.value
			}
		}
	}
	if t.raw == "si" && s.tongue == es && s.sense == "yes" {
		s.sense = "si" // yes or if: the clause decides
	}
	if v := r.parsed[i]; v.entries != nil {
		e := v.entries[0]
		if r.asked != "" && len(v.entries) > 1 {
			for _, x := range v.entries {
				if x.sense() == actOf(r.asked) {
					e = x
				}
			}
		}
		s.sense, s.tense, s.tongue, s.own = e.sense(), v.tense, sw, e.own
		if v.when && !oneOf(r.word(i-1), "tangu", "toka", "tokea") {
			s.sense = "filler" // but "tangu nilipochekecha": since I sieved
		}
		if s.sense == "known" && v.mine && !v.neg && v.tense == future {
			s.sense = "will" // "nitaendelea": something will be done
		}
		s.neg, s.real, s.self, s.pass, s.mine, s.whom = v.neg, v.neg, v.self, v.passive, v.mine, v.whom
		bestRank = r.rank[sw]
	}
	ahead, sieve := r.ahead(i + 1)
	for _, ids := range [...][]int32{r.ids[i], r.hears(i)} {
		for _, id := range ids {
			for _, o := range r.openings(id, ahead) {
				if o.second != gap && (sieve>>(o.second&63)&1 == 0 || !r.follows(i+1, o.second)) {
					continue
				}
				p := &r.lex.said[o.at]
				if p.fixed < bestLen {
					continue
				}
				rank := r.rank[p.entry.tongue]
				if bestLen == 1 && bestRank == 0 && rank > 1 && !idle(s.sense) && p.entry.tongue != en && p.entry.tongue != everyone && !r.home(p.entry.tongue) {
					continue // "humo humo" is Spanish for smoke before it is Swahili for in there
				}
				if p.fixed == bestLen && (bestLen == 1 || rank > bestRank || rank == bestRank && !r.suits(&p.entry, s.sense)) || r.beside(&p.entry) {
					continue
				}
				end, ok := r.match(i+1, r.lex.of(p)[1:])
				if !ok {
					continue
				}
				bestLen, bestRank = p.fixed, rank
				e := p.entry
				s = sign{sense: e.sense(), tense: e.tense, tongue: e.tongue, own: e.own, value: e.value, high: e.value, from: i, to: end, text: t.text, unsure: r.near[i]}
			}
		}
	}
	return s
}

// halfAhead: "saco y medio" is a sack and a half, "saco el palo" is a verb.
func (r *reader) halfAhead(i int) bool {
	return i+1 < len(r.tokens) && r.tokens[i].text == "y" && (r.tokens[i+1].text == "medio" || r.tokens[i+1].text == "media")
}

func denying(sense string) bool { return sense == "not" || sense == "no" || sense == "nor" }

// idle senses give way to any other sense the same word has.
func idle(sense string) bool {
	switch sense {
	case "known", "filler", "foreign", "material=weeds", "material=worms", "material=ash", "material=compost":
		return true
	}
	return false
}
