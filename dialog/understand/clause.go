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
