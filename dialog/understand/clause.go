package understand

import (
	"slices"
	"strings"
)

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
	could    bool // goes on with the "can" of the clause before
	foreign  bool // somebody else's heap
	later    bool // a time to come that is not tomorrow
	tomorrow bool
	will     bool
	want     bool
	cant     bool
	odd      int    // words no table knows
	states   int    // facts found in it
	sieve    uint64 // a sieve for has, once the senses stand; 0 before
}

// has says whether any sign of a clause has one of the senses.
func (c *clause) has(senses ...string) bool {
	for _, s := range senses {
		if c.sieve != 0 && c.sieve&sieveBit(s) == 0 {
			continue
		}
		for i := range c.signs {
			if c.signs[i].sense == s {
				return true
			}
		}
	}
	return false
}

// sift makes the sieve: after it no sense of the clause is changed any more. Asking a
// clause for senses it has not is a fifth of the work on a long text.
func (c *clause) sift() {
	for i := range c.signs {
		c.sieve |= sieveBit(c.signs[i].sense)
	}
}

// sieveBit is one of 64 bits for a sense.
func sieveBit(sense string) uint64 { return 1 << (jumble(sense) & 63) }

// jumble is a number for a sense, the same for few others.
func jumble(sense string) uint {
	n := uint(len(sense))
	if n == 0 {
		return 0
	}
	return n*7 + uint(sense[0])*3 + uint(sense[n/2])*11 + uint(sense[n-1])*5
}

func (c *clause) find(sense string) int {
	if c.sieve != 0 && c.sieve&sieveBit(sense) == 0 {
		return -1
	}
	for i := range c.signs {
		if c.signs[i].sense == sense {
			return i
		}
	}
	return -1
}

// past is the first sign from k on that has none of the senses; the length when all have.
func (c *clause) past(k int, senses ...string) int {
	for k < len(c.signs) && oneOf(c.signs[k].sense, senses...) {
		k++
	}
	return k
}

// back gives the first sign from k backwards whose sense is none of these, -1 when all are.
func (c *clause) back(k int, senses ...string) int {
	for k >= 0 && oneOf(c.signs[k].sense, senses...) {
		k--
	}
	return k
}

// hasQuality says whether a clause describes anything.
func (c *clause) hasQuality() bool {
	for at := range c.signs {
		s := &c.signs[at]
		if quality(s.sense) && s.sense != "good" {
			return true
		}
	}
	return false
}

func dimension(sense string) string {
	return sense[:max(0, strings.IndexByte(sense, '='))]
}

// inDim says whether a sense is a value of a dimension: "stick=hot" of "stick". It is asked far
// more often than the dimension itself.
func inDim(sense, dim string) bool {
	return len(sense) > len(dim) && sense[len(dim)] == '=' && sense[:len(dim)] == dim
}

// quality says whether a sense describes (rather than does, asks or counts).
func quality(sense string) bool {
	switch sense {
	case "heat", "joto", "poa", "moto", "good", "bad", "sharp", "burning", "burnt", "die", "leave", "damp", "alive", "ready":
		return true
	}
	return inDim(sense, "seen") || inDim(sense, "stick") || inDim(sense, "smell") || inDim(sense, "harm") || inDim(sense, "bottle") || inDim(sense, "moisture")
}

// act says whether a sense is something done to heap, bottle or worms.
func act(sense string) bool {
	switch sense {
	case "do", "put", "give", "make", "takeout", "open", "collect", "bring", "stir", "fill", "use":
		return true
	}
	return inDim(sense, "did")
}

// longClause bounds a clause without any mark, so that a pasted page stays quick.
// Common practice, no source: spoken clauses have a dozen words.
const longClause = 40

// split cuts the signs into clauses at marks, joining words and before a question
// word that follows a finished statement.
func (r *reader) split() []clause {
	r.firstThen()
	out := r.clauses[:0]
	r.parted = slices.Grow(r.parted[:0], len(r.signs))
	cur := r.parted // the clauses lie in it end to end
	sentence := 0
	flush := func(end string) {
		if len(cur) > 0 || end == "?" && (len(out) == 0 || out[len(out)-1].end != "?") {
			out = append(out, clause{signs: cur[:len(cur):len(cur)], end: end, sentence: sentence})
		}
		cur = cur[len(cur):]
	}
	for i := 0; i < len(r.signs); i++ {
		s := r.signs[i]
		if len(cur) >= longClause {
			flush(",")
		}
		if r.anew(cur, i) {
			flush(",")
		}
		switch s.sense {
		case ",", ";", ":", "(", ")", "/", "|", "¿":
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
		case "+":
			if r.asked == "have" {
				cur = append(cur, s)
				continue
			}
			flush("and") // "couche mise + deux seaux d'eau dessus"
		case ".", "!", "\n":
			flush(".")
			sentence++
		case "?":
			flush("?")
			sentence++
		case "and", "but", "then", "because":
			if len(r.signs) == 1 && s.text == "luego" {
				s.sense = "later" // alone it is no "and then"
				cur = append(cur, s)
				continue
			}
			if last := i+1 == len(r.signs) || r.signs[i+1].sense == "?"; last && i+1 < len(r.signs) && len(cur) == 0 && len(out) > 0 && s.to > s.from+1 {
				s.sense = "ask=next" // "La couche est posée. Et ensuite ?"
				cur = append(cur, s)
				continue
			} else if last && (oneOf(s.sense, "and", "then") && i+1 < len(r.signs) && len(cur) == 0 && len(out) == 0 || s.sense == "then" || s.text == "ensuite" || s.text == "luego" || s.text == "puis") {
				s.sense = "after" // "il se passe quoi ensuite ?"
				cur = append(cur, s)
				continue
			}
			if s.text == "e" && s.tongue == es && i+1 < len(r.signs) && r.signs[i+1].tense&(participle|past) != 0 {
				s.sense = "didaux" // "no les e dado"
				cur = append(cur, s)
				continue
			}
			if n := len(cur); s.hindi() && n > 0 && i+1 < len(r.signs) && cur[n-1].sense == "layer" && act(r.signs[i+1].sense) {
				continue // "ek parat aur laga di": one more
			}
			if s.sense == "and" && i+1 < len(r.signs) && quality(r.signs[i+1].sense) && slices.ContainsFunc(cur, func(o sign) bool { return o.sense == "between" }) && described(cur) {
				s.sense = "or" // "entre le pipi et le vinaigre"
				cur = append(cur, s)
				continue
			}
			if s.sense == "and" && r.bodyAhead(i+1) {
				continue // "splashed my face and one eye"
			}
			if n := len(cur); s.text == "na" && s.tongue == sw && n > 0 && (cur[n-1].pass || i+1 < len(r.signs) && oneOf(r.signs[i+1].sense, "stinger", "seen=rodents", "seen=ants", "pointed") && slices.ContainsFunc(cur, func(s sign) bool { return s.pass }) || hurts(cur[n-1].sense) && i+1 < len(r.signs) && oneOf(r.signs[i+1].sense, "seen=steam", "pointed", "stinger")) {
				continue // "ameumwa na nyoka": by
			}
			if n := len(out); n > 0 && len(cur) == 0 && out[n-1].end == "," {
				out[n-1].end = s.sense // "oui, et j'ai récolté"
			}
			flush(s.sense)
		case "correct", "imeant", "isaid":
			last := s.hindi() && (s.sense == "isaid" || s.sense == "imeant" && described(cur))
			past := last && described(cur)
			if !last {
				flush(",") // Hindi says it last: "garam likha tha", "garam likhna tha"
			}
			cur = append(cur, s)
			if past {
				flush(",")
			}
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
		case "no":
			if k := len(cur); r.best == en && k > 0 && quality(cur[k-1].sense) && i+1 < len(r.signs) && oneOf(r.word(s.to), "its", "it") {
				flush(",")
				s.sense = "correct" // "cold no its hot"
			}
			cur = append(cur, s)
		case "why", "how", "what", "howmany", "whenq", "ask=next", "ask=status", "ask=why", "askif", "canq", "ask=help", "which":
			switch k := len(cur); {
			case s.sense == "askif" && s.tongue == en && k > 0 && (inDim(cur[k-1].sense, "seen") || cur[k-1].sense == "worm") && !r.asks(i):
				s.sense = "is" // "red ants are in the bed"
			case r.finished(cur, s) && !r.tailAsks(i) && !(k == 1 && r.names(&s, meaningWords...)):
				flush(",") // but not in "amonia maana yake nini": what the word means
			}
			cur = append(cur, s)
		case "avoid", "normal": // "चूहे आ गए हैं कैसे भगाएँ", "my heap sank a lot is that normal"
			if (s.hindi() || s.sense == "normal" && s.text == "is") && r.finished(cur, s) {
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
				if n := len(cur); n > 0 && (act(cur[n-1].sense) || verbal(cur[n-1].sense) || quality(cur[n-1].sense) || cur[n-1].sense == "is" || cur[n-1].sense == "was" || cur[n-1].sense == "done" || cur[n-1].sense == "isaid") {
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
			if s.hindi() && inDim(s.sense, "harm") && r.finished(cur, s) {
				flush(",") // "चींटियाँ लग गई हैं बहुत खाँसी हो रही है"
			}
			if s.hindi() && r.planAhead(cur, i) {
				flush(",") // "सूखा है पानी डाल दूँ क्या"
			}
			cur = append(cur, s)
		}
	}
	flush("")
	r.clauses = out
	return out
}

// firstThen: a Hindi deed put before another that is still to come is to come itself,
// "पलटकर पानी दूँगा".
func (r *reader) firstThen() {
	for i := range r.signs {
		s := &r.signs[i]
		if !s.hindi() || !act(s.sense) || s.tense&past == 0 || !strings.HasSuffix(s.text, "kar") && !strings.HasSuffix(s.text, " ke") && !strings.HasSuffix(s.text, "कर") && !strings.HasSuffix(s.text, " के") {
			continue
		}
		for _, n := range r.toMark(i + 1) {
			if act(n.sense) {
				if n.tense&future != 0 && n.tense&past == 0 {
					s.tense = future
				}
				break
			}
		}
	}
}

// planAhead says whether a Hindi statement ended in its "is" right before sign i, and
// something to be done follows with its own verb.
func (r *reader) planAhead(cur []sign, i int) bool {
	n := len(cur)
	if n == 0 || r.signs[i].sense == "filler" || r.signs[i].sense == "tag" {
		return false
	}
	did := act(cur[n-1].sense) && cur[n-1].tense&past != 0 // "छान ली अब कितना डालूँ"
	if n < 2 && !did || cur[n-1].sense != "is" && cur[n-1].sense != "was" && !did {
		return false
	}
	if next := r.signs[i].sense; did && (act(next) || verbal(next) || oneOf(next, "will", "go", "give", "not", "maybe")) {
		return false // "पलटा करूँगा" is one verb
	}
	for _, e := range [...]string{"kar", "ke", "कर", "के"} {
		if did && strings.HasSuffix(cur[n-1].text, e) {
			return false // "पलटकर पानी दूँगा": first the one, then the other
		}
	}
	fact, again := did, false
	for k := range cur {
		switch cur[k].sense {
		case "if", "whatif", "why", "how", "askif", "canq", "normal", "what", "howmany", "whenq", "which", "isaid", "while", "must", "foreign", "money", "weather", "animal", "not", "no", "nor", "notyet", "maybe":
			return false
		}
		fact = fact || act(cur[k].sense) && cur[k].tense&past != 0 || quality(cur[k].sense) && cur[k].sense != "ready" || inDim(cur[k].sense, "unit")
	}
	if !fact {
		return false
	}
	for k := i; k < len(r.signs) && k < i+8 && r.tokens[r.signs[k].from].kind != mark; k++ {
		s := &r.signs[k]
		switch s.sense {
		case "and", "but", "then", "because", "or", "if", "whatif", "while":
			return false
		case "is":
			again = true
		case "what":
			if again {
				return true // "दो टोकरी है काफ़ी है क्या"
			}
		}
		if (act(s.sense) || s.sense == "look") && s.tense&(future|order) != 0 && s.tense&past == 0 {
			return true
		}
		again = again || act(s.sense) && s.tense&past == 0 // "पलटना पड़ेगा क्या"
	}
	return false
}

// tailAsks: French puts its question word last, "ça doit être chaud comment ?", Hindi
// its mark of a yes-or-no question, "गरम है क्या?".
func (r *reader) tailAsks(i int) bool {
	s := &r.signs[i]
	switch s.sense {
	case "how", "what", "howmany", "whenq":
		if s.hindi() && s.sense == "what" && s.to == s.from+1 {
			for i+1 < len(r.signs) && (r.signs[i+1].sense == "filler" || r.signs[i+1].sense == "me" || r.signs[i+1].sense == "mine" || r.signs[i+1].sense == "person") {
				i++ // "गरम है क्या भाई"
			}
			return i+1 == len(r.signs) || r.signs[i+1].sense == "?"
		}
		return s.tongue == fr && (i+1 == len(r.signs) || r.signs[i+1].sense == "?")
	}
	return false
}

// bodyAhead says whether nothing but a part of the body follows before the next mark.
func (r *reader) bodyAhead(i int) bool {
	body := false
	for ; i < len(r.signs) && r.tokens[r.signs[i].from].kind != mark && r.signs[i].sense != "and"; i++ {
		switch r.signs[i].sense {
		case "body", "eye", "harm=eye":
			body = true
		case "length": // "ma chaussure et mon pied"
			body = body || r.names(&r.signs[i], "foot", "feet", "pied", "pieds", "pie", "pies")
		case "filler", "one", "mine", "me", "num":
		default:
			return false
		}
	}
	return body
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
	return slices.ContainsFunc(r.toMark(i), func(s sign) bool { return quality(s.sense) })
}

// toMark gives the signs from i on before the next mark.
func (r *reader) toMark(i int) []sign {
	rest := r.signs[min(i, len(r.signs)):]
	if k := slices.IndexFunc(rest, func(s sign) bool { return r.tokens[s.from].kind == mark }); k >= 0 {
		return rest[:k]
	}
	return rest
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
		if quality(s.sense) && s.sense != "ready" || act(s.sense) && s.tense&(past|participle) != 0 || q.hindi() && inDim(s.sense, "unit") {
			fact = true
		}
	}
	last := cur[len(cur)-1]
	for k := len(cur) - 1; k > 0 && q.hindi() && (last.sense == "filler" || last.sense == "now" || last.sense == "very"); k-- {
		last = cur[k-1]
	}
	switch q.tongue {
	case hi, hiLatn:
		return fact && (last.sense == "is" || last.sense == "was" || last.sense == "go" || last.sense == "give" || last.tense&past != 0)
	case sw:
		return fact && (q.sense != "why" || q.text == "mbona") && q.sense != "what" && q.sense != "whenq" && q.sense != "howmany" && q.sense != "ask=why"
	}
	return fact
}
