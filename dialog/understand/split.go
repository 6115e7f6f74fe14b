package understand

import "slices"

// longClause bounds a clause without any mark, so that a pasted page stays quick.
// Common practice, no source: spoken clauses have a dozen words.
const longClause = 40

// splitter cuts signs into clauses.
type splitter struct {
	*reader
	out      []clause
	cur      []sign // of the clause begun
	sentence int
}

// split cuts the signs into clauses at marks, joining words and before a question
// word that follows a finished statement.
func (r *reader) split() []clause {
	r.firstThen()
	r.parted = slices.Grow(r.parted[:0], len(r.signs))
	p := splitter{reader: r, out: r.clauses[:0], cur: r.parted} // the clauses lie in it end to end
	for i := range r.signs {
		if len(p.cur) >= longClause {
			p.flush(",")
		}
		if r.anew(p.cur, i) {
			p.flush(",")
		}
		p.take(i)
	}
	p.flush("")
	r.clauses = p.out
	return p.out
}

// keep adds a sign to the clause begun.
func (p *splitter) keep(s sign) { p.cur = append(p.cur, s) }

// flush closes the clause begun; end is the mark or word that closes it.
func (p *splitter) flush(end string) {
	if len(p.cur) > 0 || end == "?" && (len(p.out) == 0 || p.out[len(p.out)-1].end != "?") {
		p.out = append(p.out, clause{signs: p.cur[:len(p.cur):len(p.cur)], end: end, sentence: p.sentence})
	}
	p.cur = p.cur[len(p.cur):]
}

// take adds sign i, closes a clause at it, or both.
func (p *splitter) take(i int) {
	s := p.signs[i]
	switch s.sense {
	case ",", ";", ":", "(", ")", "/", "|", "¿", "-", "+", ".", "!", "\n", "?":
		p.mark(s)
	case "and", "but", "then", "because":
		p.join(i)
	case "correct", "imeant", "isaid":
		p.said(s)
	case "andnow":
		p.andNow(i)
	case "why", "how", "what", "howmany", "whenq", "ask=next", "ask=status", "ask=why", "askif", "canq", "ask=help", "which":
		p.ask(i)
	case "no":
		if k := len(p.cur); p.best == en && k > 0 && quality(p.cur[k-1].sense) && i+1 < len(p.signs) && oneOf(p.word(s.to), "its", "it") {
			p.flush(",")
			s.sense = "correct" // "cold no its hot"
		}
		p.keep(s)
	case "avoid", "normal": // "चूहे आ गए हैं कैसे भगाएँ", "my heap sank a lot is that normal"
		if (s.hindi() || s.sense == "normal" && s.text == "is") && p.finished(p.cur, s) {
			p.flush(",")
		}
		p.keep(s)
	case "while":
		if (!s.hindi() || oneOf(s.text, "jab", "जब", "jb")) && p.deedBefore(p.cur) && !p.asks(i) {
			p.flush(",") // "he turned it while I was away"
		}
		p.keep(s)
	case "if", "whatif":
		if p.finished(p.cur, s) {
			p.flush("if")
		}
		p.keep(s)
	case "maybe":
		if p.deedBefore(p.cur) && i+1 < len(p.signs) && p.factAhead(i+1) {
			p.flush(",")
		}
		p.keep(s)
	case "filler":
		if n := len(p.cur); n > 0 && oneOf(s.text, "par", "पर", "pr") {
			if last := p.cur[n-1].sense; act(last) || verbal(last) || quality(last) || oneOf(last, "is", "was", "done", "isaid") {
				p.flush("but") // Hindi par: "but" after a verb, "on" after a thing
				return
			}
		}
		p.keep(s)
	default:
		if len([]rune(s.sense)) == 1 && s.from < len(p.tokens) && p.tokens[s.from].kind == mark {
			return // brackets, quotes and the like
		}
		if s.sense == "" && s.from < len(p.tokens) && p.tokens[s.from].kind == glyph {
			return
		}
		if s.hindi() && inDim(s.sense, "harm") && p.finished(p.cur, s) {
			p.flush(",") // "चींटियाँ लग गई हैं बहुत खाँसी हो रही है"
		}
		if s.hindi() && p.planAhead(p.cur, i) {
			p.flush(",") // "सूखा है पानी डाल दूँ क्या"
		}
		p.keep(s)
	}
}

// mark: a comma closes a clause, a full stop a sentence too.
func (p *splitter) mark(s sign) {
	switch s.sense {
	case ",", ";", ":", "(", ")", "|", "¿":
		p.flush(",")
	case "/":
		s.sense = "or"
		p.keep(s)
	case "-":
		if !p.tokens[s.from].glued {
			p.flush(",")
		}
	case "+":
		if p.asked == "have" {
			p.keep(s)
			return
		}
		p.flush("and") // "couche mise + deux seaux d'eau dessus"
	case ".", "!", "\n":
		p.flush(".")
		p.sentence++
	case "?":
		p.flush("?")
		p.sentence++
	}
}

// join: "and", "but", "then", "because", or what only looks like one.
func (p *splitter) join(i int) {
	s := p.signs[i]
	if len(p.signs) == 1 && s.text == "luego" {
		s.sense = "later" // alone it is no "and then"
		p.keep(s)
		return
	}
	if last := i+1 == len(p.signs) || p.signs[i+1].sense == "?"; last && i+1 < len(p.signs) && len(p.cur) == 0 && len(p.out) > 0 && s.to > s.from+1 {
		s.sense = "ask=next" // "La couche est posée. Et ensuite ?"
		p.keep(s)
		return
	} else if last && (oneOf(s.sense, "and", "then") && i+1 < len(p.signs) && len(p.cur) == 0 && len(p.out) == 0 || s.sense == "then" || s.text == "ensuite" || s.text == "luego" || s.text == "puis") {
		s.sense = "after" // "il se passe quoi ensuite ?"
		p.keep(s)
		return
	}
	if s.text == "e" && s.tongue == es && i+1 < len(p.signs) && p.signs[i+1].tense&(participle|past) != 0 {
		s.sense = "didaux" // "no les e dado"
		p.keep(s)
		return
	}
	if n := len(p.cur); s.hindi() && n > 0 && i+1 < len(p.signs) && p.cur[n-1].sense == "layer" && act(p.signs[i+1].sense) {
		return // "ek parat aur laga di": one more
	}
	if s.sense == "and" && i+1 < len(p.signs) && quality(p.signs[i+1].sense) && slices.ContainsFunc(p.cur, func(o sign) bool { return o.sense == "between" }) && described(p.cur) {
		s.sense = "or" // "entre le pipi et le vinaigre"
		p.keep(s)
		return
	}
	if s.sense == "and" && p.bodyAhead(i+1) {
		return // "splashed my face and one eye"
	}
	if n := len(p.cur); s.text == "na" && s.tongue == sw && n > 0 && (p.cur[n-1].pass || i+1 < len(p.signs) && oneOf(p.signs[i+1].sense, "stinger", "seen=rodents", "seen=ants", "pointed") && slices.ContainsFunc(p.cur, func(s sign) bool { return s.pass }) || hurts(p.cur[n-1].sense) && i+1 < len(p.signs) && oneOf(p.signs[i+1].sense, "seen=steam", "pointed", "stinger")) {
		return // "ameumwa na nyoka": by
	}
	if n := len(p.out); n > 0 && len(p.cur) == 0 && p.out[n-1].end == "," {
		p.out[n-1].end = s.sense // "oui, et j'ai récolté"
	}
	p.flush(s.sense)
}

// said: what was said, meant or mended begins a clause; Hindi says it last: "garam likha tha",
// "garam likhna tha".
func (p *splitter) said(s sign) {
	last := s.hindi() && (s.sense == "isaid" || s.sense == "imeant" && described(p.cur))
	past := last && described(p.cur)
	if !last {
		p.flush(",")
	}
	p.keep(s)
	if past {
		p.flush(",")
	}
}

// andNow: "y ahora", "et maintenant": a question when nothing follows.
func (p *splitter) andNow(i int) {
	s := p.signs[i]
	last := i+1 >= len(p.signs) || p.tokens[p.signs[i+1].from].kind == mark
	if !last {
		switch p.signs[i+1].sense {
		case "what", "how", "ask=next", "chat=thanks", "must", "ask=help":
			last = true
		}
	}
	if last {
		s.sense = "ask=next"
		if p.finished(p.cur, s) {
			p.flush(",")
		}
		p.keep(s)
		return
	}
	p.flush("and")
	s.sense = "now"
	p.keep(s)
}

// ask: a question word after a finished statement begins a clause.
func (p *splitter) ask(i int) {
	s := p.signs[i]
	switch k := len(p.cur); {
	case s.sense == "askif" && s.tongue == en && k > 0 && (inDim(p.cur[k-1].sense, "seen") || p.cur[k-1].sense == "worm") && !p.asks(i):
		s.sense = "is" // "red ants are in the bed"
	case p.finished(p.cur, s) && !p.tailAsks(i) && !(k == 1 && p.names(&s, meaningWords...)):
		p.flush(",") // but not in "amonia maana yake nini": what the word means
	}
	p.keep(s)
}
