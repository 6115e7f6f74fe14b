package understand

import "strings"

type asking uint8

const (
	telling asking = iota
	askWhy
	askWh    // how, what, how much ...
	askModal // can, should, if: nothing in it has happened
	askMark  // only a question mark
	askTag   // "cold, right?"
)

// clause is a stretch of signs with one mood. Its flags say how far what it
// states may be believed.
type clause struct {
	signs    []sign
	end      string // the mark or word that closed it
	sentence int
	ask      asking
	cond     bool // if, what if
	doubt    bool
	foreign  bool // somebody else's heap
	later    bool // a time to come that is not tomorrow
	tomorrow bool
	will     bool
	want     bool
	cant     bool
	odd      int // words no table knows
	states   int // facts found in it
}

func (c *clause) has(senses ...string) bool {
	for i := range c.signs {
		for _, s := range senses {
			if c.signs[i].sense == s {
				return true
			}
		}
	}
	return false
}

func (c *clause) find(sense string) int {
	for i := range c.signs {
		if c.signs[i].sense == sense {
			return i
		}
	}
	return -1
}

// hasQuality says whether a clause describes anything.
func (c *clause) hasQuality() bool {
	for _, s := range c.signs {
		if quality(s.sense) && s.sense != "good" {
			return true
		}
	}
	return false
}

func dimension(sense string) string {
	d, _, ok := strings.Cut(sense, "=")
	if !ok {
		return ""
	}
	return d
}

// quality says whether a sense describes (rather than does, asks or counts).
func quality(sense string) bool {
	switch dimension(sense) {
	case "stick", "moisture", "smell", "seen", "bottle", "harm":
		return true
	}
	switch sense {
	case "heat", "joto", "poa", "moto", "good", "bad", "burning", "burnt", "die", "leave", "damp", "alive", "ready":
		return true
	}
	return false
}

// act says whether a sense is something done to heap, bottle or worms.
func act(sense string) bool {
	switch sense {
	case "do", "put", "give", "make", "takeout", "open", "collect", "bring", "stir", "fill":
		return true
	}
	return dimension(sense) == "did"
}

// longClause bounds a clause without any mark, so that a pasted page stays quick.
// Common practice, no source: spoken clauses have a dozen words.
const longClause = 40

// split cuts the signs into clauses at marks, joining words and before a question
// word that follows a finished statement.
func (r *reader) split() []clause {
	var out []clause
	var cur []sign
	sentence := 0
	flush := func(end string) {
		if len(cur) > 0 || end == "?" {
			out = append(out, clause{signs: cur, end: end, sentence: sentence})
		}
		cur = nil
	}
	for i := 0; i < len(r.signs); i++ {
		s := r.signs[i]
		if len(cur) >= longClause {
			flush(",")
		}
		switch s.sense {
		case ",", ";", ":", "(", ")", "/", "|":
			if s.sense == "/" {
				s.sense = "or"
				cur = append(cur, s)
				continue
			}
			flush(",")
		case "-":
			if r.tokens[s.from].glued {
				continue
			}
			flush(",")
		case ".", "!", "\n":
			flush(".")
			sentence++
		case "?":
			flush("?")
			sentence++
		case "and", "but", "then", "because":
			flush(s.sense)
		case "correct", "imeant", "isaid":
			if s.sense != "isaid" || s.tongue != hi && s.tongue != hiLatn {
				flush(",") // Hindi says it last: "garam likha tha"
			}
			cur = append(cur, s)
		case "andnow":
			// "y ahora", "et maintenant": a question when nothing follows
			last := i+1 >= len(r.signs) || r.tokens[r.signs[i+1].from].kind == mark
			if !last {
				switch r.signs[i+1].sense {
				case "what", "how", "ask=next", "chat=thanks", "must", "ask=help":
					last = true
				}
			}
			if last {
				s.sense = "ask=next"
				if r.finished(cur, s) {
					flush(",")
				}
				cur = append(cur, s)
				continue
			}
			flush("and")
			s.sense = "now"
			cur = append(cur, s)
		case "why", "how", "what", "howmany", "whenq", "ask=next", "ask=status", "ask=why", "canq", "askif", "ask=help", "which":
			if r.finished(cur, s) {
				flush(",")
			}
			cur = append(cur, s)
		case "while":
			if s.tongue != hi && s.tongue != hiLatn || s.text == "jab" || s.text == "जब" || s.text == "jb" {
				if r.deedBefore(cur) && !r.asks(i) {
					flush(",") // "he turned it while I was away"
				}
			}
			cur = append(cur, s)
		case "if", "whatif":
			if r.finished(cur, s) {
				flush("if")
			}
			cur = append(cur, s)
		case "maybe":
			if r.deedBefore(cur) && i+1 < len(r.signs) && r.factAhead(i+1) {
				flush(",")
			}
			cur = append(cur, s)
		case "filler":
			if s.text == "par" || s.text == "पर" || s.text == "pr" {
				if n := len(cur); n > 0 && (act(cur[n-1].sense) || verbal(cur[n-1].sense) || quality(cur[n-1].sense) || cur[n-1].sense == "is" || cur[n-1].sense == "was" || cur[n-1].sense == "done") {
					flush("but") // Hindi par: "but" after a verb, "on" after a thing
					continue
				}
			}
			cur = append(cur, s)
		default:
			if len([]rune(s.sense)) == 1 && s.from < len(r.tokens) && r.tokens[s.from].kind == mark {
				continue // brackets, quotes and the like
			}
			if s.sense == "" && s.from < len(r.tokens) && r.tokens[s.from].kind == glyph {
				continue
			}
			cur = append(cur, s)
		}
	}
	flush("")
	return out
}

func (r *reader) deedBefore(cur []sign) bool {
	for _, s := range cur {
		if act(s.sense) && s.tense&(past|participle) != 0 {
			return true
		}
	}
	return false
}

func (r *reader) factAhead(i int) bool {
	for ; i < len(r.signs) && r.tokens[r.signs[i].from].kind != mark; i++ {
		if quality(r.signs[i].sense) {
			return true
		}
	}
	return false
}

// finished says whether what stands before a question word is a statement of its
// own: "stick is cold why", but not "why is it cold", nor Hindi "dher thanda kyon
// hai", where the question word comes before the verb.
func (r *reader) finished(cur []sign, q sign) bool {
	if len(cur) == 0 {
		return false
	}
	fact := false
	for _, s := range cur {
		switch s.sense {
		case "if", "whatif", "why", "how", "askif", "canq", "normal", "what", "howmany", "whenq", "isaid":
			return false
		}
		if quality(s.sense) && s.sense != "ready" || act(s.sense) && s.tense&(past|participle) != 0 {
			fact = true
		}
	}
	last := cur[len(cur)-1]
	switch q.tongue {
	case hi, hiLatn:
		return fact && (last.sense == "is" || last.sense == "was" || last.sense == "go" || last.sense == "give" || last.tense&past != 0)
	case sw:
		return fact && (q.sense != "why" || q.text == "mbona") && q.sense != "what" && q.sense != "whenq" && q.sense != "howmany" && q.sense != "ask=why"
	}
	return fact
}

// frame sets the flags of every clause.
func (r *reader) frame(cs []clause) {
	for i := range cs {
		c := &cs[i]
		r.bind(c)
		for k := range c.signs {
			s := &c.signs[k]
			switch s.sense {
			case "why", "ask=why":
				c.ask = askWhy
			case "how", "what", "howmany", "whenq", "which", "who", "normal":
				if c.ask == telling {
					c.ask = askWh
				}
			case "canq", "askif", "avoid":
				if s.sense == "canq" && c.end != "?" && (s.tongue == fr && (s.text == "on" || s.text == "je") || s.tongue != en && k > 1 && s.tongue != hi && s.tongue != hiLatn) {
					continue // "on ne peut pas garder la main": told, not asked
				}
				if c.ask == telling || s.sense == "avoid" {
					c.ask = askModal
				}
			case "if", "whatif":
				// "not sure if it is smoke", "naona kama moto": no condition
				like := (s.text == "kama" || strings.HasSuffix(s.text, "kiwa")) && k > 0 && c.ask == telling
				if s.tongue == fr && s.text == "si" && k+1 < len(c.signs) && quality(c.signs[k+1].sense) {
					s.sense, like = "very", true // si chaud que
				}
				c.cond = c.cond || !c.doubt && !like && !c.has("normal")
			case "si":
				c.cond = c.cond || r.spanishIf(cs, i, k)
			case "maybe":
				c.doubt = true
			case "rainword":
				s.sense = "weather"
				if r.asked == "smell" || c.has("smell") {
					s.sense = "smell=earthy"
				}
			case "fine":
				s.sense = "ok"
				switch r.asked {
				case "moisture", "worms", "smell":
					s.sense = "good"
				}
				if c.has("smell", "worm", "damp") {
					s.sense = "good"
				}
			case "material=curd":
				if r.asked == "smell" || c.has("smell") {
					s.sense = "smell=sour"
				}
			case "medium":
				s.sense = "stick=warm"
				if r.asked == "moisture" {
					s.sense = "moisture=right"
				}
			case "very":
				if s.text == "bien" && !c.hasQuality() {
					s.sense = "good"
				}
			case "atall":
				if s.text == "nada" && !c.hasQuality() {
					s.sense = "nothing"
				}
			case "not":
				if c.core() == 1 && (s.text == "hakuna" || s.text == "hamna") {
					s.sense = "nothing"
				}
			case "moisture=right":
				if s.text == "right" && c.end == "?" && len(c.signs) == 1 {
					s.sense = "tag"
				}
				if s.text == "right" && s.to == s.from+1 && s.from > 0 && r.tokens[s.from-1].text == "the" {
					s.sense = "edge"
				}
			case "worry":
				if c.ask == telling && (c.end == "?" || c.has("what", "canq", "askif")) {
					c.ask = askWh
				}
			case "tomorrow":
				c.tomorrow = true
			case "later", "night", "dayword":
				c.later = c.later || s.sense == "later"
			case "will":
				c.will = true
			case "want", "must":
				c.want = true
			case "cant":
				c.cant = true
			case "":
				c.odd++
			}
			if s.tense&unless != 0 && s.tongue == sw {
				c.cond = true // -ki-: if I turn, when it burns
			}
			if dimension(s.sense) == "day" || dimension(s.sense) == "part" && s.sense != "part=morning" {
				c.later = c.later || true
			}
		}
		if c.ask == telling && c.inverted() {
			c.ask = askModal
		}
		if c.end == "?" && c.ask == telling {
			if c.has("tag") {
				c.ask = askTag
			} else {
				c.ask = askMark
			}
		}
		c.foreign = r.foreign(c)
	}
	r.kals(cs)
	for i := range cs {
		c := &cs[i]
		if c.foreign && i+1 < len(cs) && !cs[i+1].has("mine", "me") && !cs[i+1].has("heap") {
			next := &cs[i+1]
			own := false
			for _, s := range next.signs {
				own = own || act(s.sense) || s.mine
			}
			next.foreign = next.foreign || !own
		}
		if c.ask == askTag || len(c.signs) == 1 && c.signs[0].sense == "tag" && i > 0 {
			if c.end == "?" || r.asked != "" {
				c.doubt = true
				if i > 0 && len(c.signs) == 1 {
					cs[i-1].doubt = cs[i-1].doubt || c.end == "?"
				}
			}
		}
		// "cold, not sure": the doubt is about its neighbour
		if c.doubt && c.ask != askTag && !anyFact(c) {
			switch {
			case i > 0 && anyFact(&cs[i-1]):
				cs[i-1].doubt = true
			case i+1 < len(cs):
				cs[i+1].doubt = true
			}
		}
		if len(c.signs) == 0 && c.end == "?" && i > 0 && cs[i-1].ask == telling {
			cs[i-1].ask = askMark
		}
	}
}

// kals reads Hindi kal and parson by the verb: behind with a past, ahead with a
// future; without a verb they stay open.
func (r *reader) kals(cs []clause) {
	for i := range cs {
		c := &cs[i]
		k := c.find("kal")
		p := c.find("parson")
		if k < 0 && p < 0 {
			continue
		}
		var t tense
		for _, s := range c.signs {
			if act(s.sense) || verbal(s.sense) || s.sense == "give" || s.sense == "go" || s.sense == "take" {
				t |= s.tense
			}
			if s.sense == "was" || s.sense == "done" {
				t |= past
			}
		}
		for j := i + 1; t == 0 && j < len(cs) && cs[j-1].end != "." && cs[j-1].end != "?"; j++ {
			for _, s := range cs[j].signs {
				if act(s.sense) {
					t |= s.tense
				}
			}
		}
		at, sense := k, "tomorrow"
		if k < 0 {
			at, sense = p, "later"
		}
		switch {
		case t&future != 0 || c.cant:
			c.signs[at].sense = sense
			c.tomorrow = c.tomorrow || sense == "tomorrow"
			c.later = c.later || sense == "later"
		case t&past != 0:
			c.signs[at].sense = "past"
		}
	}
}

// relatives tells a joining word from a question word: Spanish "que" typed without
// its accent, "who" in "my neighbour who helped", "kama kilo 15". Such a word asks
// at the head of a clause or before a question mark.
func (r *reader) relatives() {
	head := true
	for i := range r.signs {
		s := &r.signs[i]
		first := head
		head = r.tokens[s.from].kind == mark || s.sense == "and" || s.sense == "but" || s.sense == "chat=hello"
		switch s.sense {
		case "what", "how", "whenq", "who", "which", "if":
		default:
			continue
		}
		if i+1 < len(r.signs) && (s.text == "como" || s.text == "kama") {
			if n := r.signs[i+1]; n.sense == "num" || dimension(n.sense) == "unit" || n.sense == "degree" {
				s.sense = "filler" // about so much
				continue
			}
		}
		if first || s.sense == "if" || r.asks(i) {
			continue
		}
		switch s.text {
		case "que", "q", "ke", "como", "komo", "who", "which", "where", "quien", "donde", "ou":
			s.sense = "filler"
		case "cuando", "quand", "when":
			s.sense = "while"
		}
	}
}

// asks says whether the next full stop after sign i is a question mark.
func (r *reader) asks(i int) bool {
	for ; i < len(r.signs); i++ {
		switch r.signs[i].sense {
		case "?":
			return true
		case ".", "!", "\n":
			return false
		}
	}
	return false
}

// inverted says whether an English clause begins like a question: "is ash good",
// "do worms need light".
func (c *clause) inverted() bool {
	if len(c.signs) < 3 || c.signs[0].tongue != en {
		return false
	}
	switch c.signs[0].text {
	case "is", "are", "does", "do", "did", "was", "were":
	default:
		return false
	}
	next := c.signs[1].sense
	switch next {
	case "heap", "stick", "worm", "bottle", "water", "compost", "starter", "dung", "leaf", "layer", "seen=ash", "animal", "straws", "cap":
		return true
	}
	if d := dimension(next); d == "material" || d == "crop" || d == "animal" {
		return true
	}
	if quality(next) {
		return c.has("good", "ok", "normal", "fine", "enough") && next != "good"
	}
	return false
}

func anyFact(c *clause) bool {
	for _, s := range c.signs {
		if quality(s.sense) || act(s.sense) || s.sense == "num" {
			return true
		}
	}
	return false
}

// spanishIf tells "si" (if) from "sí" (yes) typed without its accent: it is "if"
// before more words, when a question or an order follows in the message.
func (r *reader) spanishIf(cs []clause, i, k int) bool {
	c := &cs[i]
	if k+1 >= len(c.signs) {
		return false
	}
	if c.signs[k+1].sense == "already" {
		return false
	}
	for j := i; j < len(cs); j++ {
		if cs[j].end == "?" || cs[j].has("what", "how", "why", "canq", "ask=next", "ask=help") {
			return true
		}
	}
	for _, s := range c.signs[k+1:] {
		if act(s.sense) && s.tense&(past|participle) != 0 {
			return false
		}
	}
	return len(c.signs) > k+2 && i+1 < len(cs)
}

// foreign says whether a clause is about somebody else's heap: the owner stands
// next to the thing with no verb between ("jirani's heap", "lundo la jirani").
func (r *reader) foreign(c *clause) bool {
	n := c.find("neighbor")
	if n < 0 {
		return false
	}
	for i, s := range c.signs {
		if s.sense == "mine" && i+1 != n && i+2 != n && i != n+1 && i != n+2 {
			return false
		}
	}
	acts := false
	for _, s := range c.signs {
		acts = acts || act(s.sense) && s.tense&(past|participle) != 0 || s.sense == "didaux"
	}
	for i, s := range c.signs {
		switch s.sense {
		case "heap", "stick", "bottle", "worm", "compost", "inside":
		default:
			continue
		}
		lo, hi := min(i, n), max(i, n)
		clear := true
		for _, m := range c.signs[lo+1 : hi] {
			if act(m.sense) || quality(m.sense) || m.sense == "is" {
				clear = false
			}
		}
		if clear && hi-lo <= 4 {
			return true
		}
	}
	return !acts && !c.has("heap")
}

// bind ties every "not" and every word of degree to what it is about.
func (r *reader) bind(c *clause) {
	target := func(s *sign) bool {
		return quality(s.sense) || act(s.sense) || s.sense == "gas" || s.sense == "smell" || s.sense == "drop" ||
			s.sense == "burn" || s.sense == "cut" || s.sense == "bite" || s.sense == "drink" || s.sense == "breathe" ||
			s.sense == "ready" || s.sense == "wrong" || s.sense == "want" || s.sense == "water" || s.sense == "nothing" || s.sense == "goout" ||
			s.sense == "enough" || s.sense == "will" || s.sense == "did" || s.sense == "moving" || s.sense == "worry" || s.sense == "continue" || s.sense == "weather" || s.sense == "rainword"
	}
	for i := range c.signs {
		s := &c.signs[i]
		switch s.sense {
		case "not", "nor", "no", "neither":
		default:
			continue
		}
		if s.sense == "no" && len(c.signs) == 1 {
			continue
		}
		t := -1
		if s.tongue == hi || s.tongue == hiLatn {
			if s.sense != "nor" {
				for k := i - 1; k >= 0; k-- {
					if target(&c.signs[k]) {
						t = k
						break
					}
					if x := c.signs[k].sense; x != "filler" && x != "is" && x != "very" && x != "atall" && x != "bit" && x != "too" && x != "enough" && x != "was" && x != "now" {
						break
					}
				}
				// "pani nahi dala": the verb is denied, not the water
				if t >= 0 && (c.signs[t].sense == "water" || c.signs[t].sense == "gas") {
					for k := i + 1; k < len(c.signs); k++ {
						if act(c.signs[k].sense) {
							t = k
							break
						}
					}
				}
			}
		}
		if s.tongue == fr && t < 0 && s.text != "ne" && s.text != "n" {
			// ne ... pas: one denial, of what stands between
			for j := i - 1; j >= 0 && j >= i-4 && t < 0; j-- {
				if c.signs[j].sense == "not" && (c.signs[j].text == "ne" || c.signs[j].text == "n") {
					for k := j + 1; k < i; k++ {
						if target(&c.signs[k]) && c.signs[k].tense&participle == 0 {
							t = k
						}
					}
				}
			}
			if t >= 0 && !act(c.signs[t].sense) && c.signs[t].sense != "weather" && c.signs[t].sense != "rainword" {
				t = -1 // "ne sent pas mauvais": the second word denies what follows
			}
		}
		if t < 0 {
			for k := i + 1; k < len(c.signs); k++ {
				if target(&c.signs[k]) {
					t = k
					break
				}
				if c.signs[k].sense == "nor" || c.signs[k].sense == "not" && c.signs[k].tongue != fr {
					break
				}
			}
		}
		if t < 0 && s.sense != "no" {
			for k := i - 1; k >= 0; k-- {
				if target(&c.signs[k]) {
					t = k
					break
				}
			}
		}
		if t >= 0 {
			c.signs[t].neg = true
			// "not hot or cold": what "or" joins shares the not
			for k := t + 1; k+1 < len(c.signs); k++ {
				if c.signs[k].sense == "or" && quality(c.signs[k+1].sense) {
					c.signs[k+1].neg = true
				}
			}
		}
	}
	for i := range c.signs {
		s := &c.signs[i]
		var g grade
		switch s.sense {
		case "very", "too":
			g = strongly
		case "bit":
			g = slightly
		case "atall":
			g = notAtAll
		default:
			continue
		}
		t := -1
		after := s.tongue != sw
		for pass := 0; pass < 2 && t < 0; pass++ {
			if after {
				for k := i + 1; k < len(c.signs) && k <= i+4; k++ {
					if quality(c.signs[k].sense) {
						t = k
						break
					}
					if c.signs[k].sense == "inside" || c.signs[k].sense == "edge" {
						break
					}
				}
			} else {
				for k := i - 1; k >= 0 && k >= i-4; k-- {
					if quality(c.signs[k].sense) {
						t = k
						break
					}
				}
			}
			after = !after
		}
		if t >= 0 && (c.signs[t].grade == plainly || g == notAtAll) {
			c.signs[t].grade = g
		}
	}
}

// hindiVerbs gives a bare stem the tense of the verb that carries it: palat diya,
// palat dunga, turn kar diya, palat raha hun; and "hice el volteo".
func (r *reader) hindiVerbs() {
	out := r.signs[:0]
	for i := range r.signs {
		s := r.signs[i]
		if n := len(out); n > 0 {
			k := n - 1
			for k > 0 && k > n-3 && (out[k].sense == "filler" || out[k].sense == "not" || out[k].sense == "no" || out[k].sense == "very" || out[k].sense == "now") {
				k--
			}
			p := &out[k]
			hindi := s.tongue == hi || s.tongue == hiLatn
			verb := act(p.sense) || verbal(p.sense) || quality(p.sense) && p.tense != 0
			carried := p.tense&(bare|order|participle|past|present) != 0 && verb
			if hindi && (s.text == "ke" || s.text == "k" || s.text == "के" || s.text == "कर" || s.text == "kar" || s.text == "kr") && p.tense&bare != 0 && act(p.sense) && p.sense != "do" && r.verbAhead(i+1) {
				p.tense = past // "pani dal ke dhak diya": having put, covered
				p.to = s.to
				continue
			}
			if hindi && carried {
				switch s.sense {
				case "put":
					if p.tense&bare == 0 || !act(p.sense) && !verbal(p.sense) {
						break
					}
					p.tense, p.neg, p.to = s.tense, p.neg || s.neg, s.to
					continue
				case "give", "take", "go", "stay", "do":
					if p.tense&past != 0 && p.tense&bare == 0 && s.tense&past != 0 && s.sense != "go" {
						break
					}
					if p.sense == "do" && s.sense == "do" {
						break
					}
					if s.sense == "do" && p.tongue != en && dimension(p.sense) != "did" && p.sense != "collect" && p.sense != "make" && p.sense != "stir" && p.sense != "open" && !verbal(p.sense) {
						break
					}
					p.tense = s.tense
					if s.sense == "go" && s.tense&past != 0 {
						p.pass = true
					}
					p.neg = p.neg || s.neg
					p.to = s.to
					continue
				}
			}
			if hindi && s.sense == "prog" && verb {
				p.tense = ongoing
				p.to = s.to
				continue
			}
		}
		out = append(out, s)
	}
	r.signs = out
	for i := range r.signs { // "school ki fees": of, not did
		if s := &r.signs[i]; s.sense == "do" && (s.text == "ki" || s.text == "की") && s.to == s.from+1 {
			s.sense, s.tense = "filler", 0
		}
	}
	for i := range r.signs { // "I did the turning"
		s := &r.signs[i]
		if s.sense != "do" || s.tense&(past|participle|future) == 0 || s.tongue == hi || s.tongue == hiLatn {
			continue
		}
		for k := i + 1; k < len(r.signs) && k <= i+3; k++ {
			n := &r.signs[k]
			if dimension(n.sense) == "did" && n.tense&(bare|ongoing) != 0 || n.sense == "collect" && n.tense&bare != 0 {
				n.tense, n.neg = s.tense, n.neg || s.neg
				s.sense = "filler"
				break
			}
			if n.sense != "filler" && n.sense != "not" {
				break
			}
		}
	}
}

// verbAhead says whether a finished act follows before the next mark.
func (r *reader) verbAhead(i int) bool {
	for ; i < len(r.signs) && r.tokens[r.signs[i].from].kind != mark; i++ {
		if act(r.signs[i].sense) && r.signs[i].sense != "do" {
			return true
		}
	}
	return false
}

func verbal(sense string) bool {
	switch sense {
	case "look", "burn", "cut", "bite", "drink", "eat", "die", "leave", "goout", "come", "hold", "breathe", "use", "sell", "give", "finish", "start":
		return true
	}
	return false
}
