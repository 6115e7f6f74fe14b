package understand

import "strings"

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
				if s.sense == "canq" && !sentenceAsks(cs, i) && (s.tongue == fr && (s.text == "on" || s.text == "je") || s.tongue != en && k > 1 && s.tongue != hi && s.tongue != hiLatn) {
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
			case "or":
				if (s.text == "कि" || s.text == "ki") && k > 0 && c.has("very") {
					s.sense = "filler" // "इतनी गरम कि": so hot that
				}
			case "bite":
				if s.text == "bit" && k+1 < len(c.signs) && quality(c.signs[k+1].sense) {
					s.sense, s.tense = "bit", 0 // "bit dry"
				}
			case "atall":
				if (s.text == "nada" || s.text == "nadita") && !c.hasQuality() {
					s.sense = "nothing"
				}
			case "not":
				if c.end == "?" && c.core() == 1 && i > 0 {
					s.sense = "tag" // "frío, ¿no?"
				}
				if c.core() == 1 && (s.text == "hakuna" || s.text == "hamna") {
					s.sense = "nothing"
				}
			case "no", "yes", "ok":
				if c.end == "?" && c.core() == 1 && i > 0 {
					s.sense = "tag" // "chaud, non ?"
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
			case "earlier":
				if s.text == "tout" && c.ahead() {
					s.sense, c.later = "later", true // "je regarde tout à l'heure"
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

// sentenceAsks says whether the sentence of clause i ends in a question mark.
func sentenceAsks(cs []clause, i int) bool {
	for k := i; k < len(cs) && cs[k].sentence == cs[i].sentence; k++ {
		if cs[k].end == "?" {
			return true
		}
	}
	return false
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
		case "askif", "canq":
			last := i+1 == len(r.signs) || r.tokens[r.signs[i+1].from].kind == mark && r.signs[i+1].sense != "?"
			if last && !first && s.tongue == en {
				s.sense = "is" // "the heat is there"
			}
			continue
		case "what", "how", "whenq", "who", "which", "if":
		default:
			continue
		}
		if s.sense == "whenq" && first && !r.asks(i) && r.dated(i) {
			s.sense = "while" // "quand c'était sec j'ai retourné"
			continue
		}
		if s.sense == "whenq" && first && r.untilThen(i) {
			s.sense = "while" // "quand ça sera sec je tamise"
			continue
		}
		if i+1 < len(r.signs) && (s.text == "como" || s.text == "kama") {
			if n := r.signs[i+1]; n.sense == "num" || dimension(n.sense) == "unit" || n.sense == "degree" {
				s.sense = "filler" // about so much
				continue
			}
		}
		if s.text == "como" && i+1 < len(r.signs) && !r.asks(i) && r.likened(i+1) {
			s.sense = "filler" // "como a cerveza": like beer
			continue
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

// dated says whether "when" at sign i tells of what has been: a past state and an act
// done follow.
func (r *reader) dated(i int) bool {
	was := false
	for k := i + 1; k < len(r.signs) && r.tokens[r.signs[k].from].kind != mark; k++ {
		s := &r.signs[k]
		was = was || s.sense == "was"
		if was && act(s.sense) && s.tense&(past|participle) != 0 {
			return true
		}
	}
	return false
}

// untilThen says whether "when" at sign i names the time of an act that follows its
// own clause, with no question mark: "when it is dry I sieve".
func (r *reader) untilThen(i int) bool {
	state := false
	for k := i + 1; k < len(r.signs) && !r.asks(i); k++ {
		s := &r.signs[k]
		if r.tokens[s.from].kind == mark && s.sense != "," {
			return false
		}
		if state && dimension(s.sense) == "did" && s.tense&(present|future|bare) != 0 {
			return true
		}
		state = state || quality(s.sense) || s.sense == "weather" || s.sense == "rainword" || s.sense == "finish" || s.sense == "come"
	}
	return false
}

// likened says whether a thing to be compared with follows, past small words.
func (r *reader) likened(i int) bool {
	for ; i < len(r.signs); i++ {
		s := &r.signs[i]
		if s.sense != "filler" && s.sense != "rangeto" && s.sense != "one" {
			return quality(s.sense) || dimension(s.sense) == "material"
		}
	}
	return false
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
	case "can", "could", "may", "shall", "should", "would":
		switch c.signs[1].sense {
		case "me", "mine", "person", "filler", "neighbor", "heap", "worm", "animal", "bottle", "compost":
			return true
		}
		return dimension(c.signs[1].sense) == "animal" || dimension(c.signs[1].sense) == "material"
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
	if act(next) && c.signs[1].tense&ongoing != 0 {
		return true // "is turning necessary"
	}
	if quality(next) {
		return c.has("good", "ok", "normal", "fine", "enough") && next != "good"
	}
	return false
}

// ahead says whether the verbs of a clause look forward and none looks back.
func (c *clause) ahead() bool {
	forward := false
	for _, s := range c.signs {
		if act(s.sense) || s.sense == "look" || s.sense == "come" {
			forward = forward || s.tense&(present|future) != 0
			if s.tense&(past|present|future) == past {
				return false
			}
		}
	}
	return forward || c.will
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

// theirs: "turned his", "volteó el suyo". His at the end of a clause is no "his hand".
func (c *clause) theirs(neighbor bool) bool {
	if len(c.signs) == 0 {
		return false
	}
	switch c.signs[len(c.signs)-1].text {
	case "theirs", "hers", "suyo", "suya", "suyos", "sien", "sienne":
		return c.hasAct()
	case "his":
		return c.hasAct() && (neighbor || c.has("person"))
	}
	return false
}

// foreign says whether a clause is about somebody else's heap: the owner stands
// next to the thing with no verb between ("jirani's heap", "lundo la jirani").
func (r *reader) foreign(c *clause) bool {
	n := c.find("neighbor")
	if c.theirs(n >= 0) {
		return true
	}
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
