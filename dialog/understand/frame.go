package understand

import (
	"slices"
	"strings"
)

// frame sets the flags of every clause.
func (r *reader) frame(cs []clause) {
	for i := range cs {
		c := &cs[i]
		r.yaNow(c)
		r.bind(c)
		for k := range c.signs {
			s := &c.signs[k]
			r.recast(c, i, k)
			switch s.sense {
			case "why", "ask=why":
				c.ask = askWhy
			case "how", "what", "howmany", "whenq", "which", "who", "normal":
				if s.text == "quand" && c.hasPast() && !sentenceAsks(cs, i) {
					s.sense = "while" // "quand j'ai pressé une poignée"
					continue
				}
				if s.sense == "whenq" && s.text == "quand" && k == 0 && actOf(r.asked) != "" && !sentenceAsks(cs, i) && (r.says(c, "sera", "seront", "serai", "fera", "aura", "aurai") || c.othersTurn()) {
					s.sense, c.cond = "while", !c.hasDeed() // "quand ce sera sec": an answer
					continue
				}
				if (s.hindi() || s.tongue == sw) && (c.has("maybe") || i > 0 && cs[i-1].has("maybe") && r.runsOn(c)) && !sentenceAsks(cs, i) {
					continue // "पता नहीं क्या है": told, not asked
				}
				if s.sense == "howmany" && c.doubt && !sentenceAsks(cs, i) {
					continue // "I don't know how much"
				}
				if c.ask == telling {
					c.ask = askWh
				}
			case "canq", "askif", "avoid":
				if s.sense == "canq" && s.hindi() && c.has("notyet") && !sentenceAsks(cs, i) {
					c.cant = true // "परत नहीं बिछा सकता"
					continue
				}
				if s.sense == "canq" && s.hindi() && c.has("not", "maybe") && !c.has("what") && !r.says(c, "bina", "बिना") && !sentenceAsks(cs, i) {
					continue // "कह नहीं सकता"
				}
				if s.sense == "canq" && s.tongue != en && !sentenceAsks(cs, i) && c.deniedModal(k) {
					c.cant = true // "no c puede", "on peut pas"
					continue
				}
				if s.sense == "canq" && !sentenceAsks(cs, i) && (s.tongue == fr && (s.text == "on" || s.text == "je") || s.tongue != en && k > 1 && s.tongue != hi && s.tongue != hiLatn) {
					continue // "on ne peut pas garder la main": told, not asked
				}
				if s.tongue == fr && s.text == "vaut" && !sentenceAsks(cs, i) {
					continue // "vaut mieux ne plus m'envoyer de messages"
				}
				if c.ask == telling || s.sense == "avoid" {
					c.ask = askModal
				}
			case "if", "whatif":
				// "not sure if it is smoke", "naona kama moto": no condition
				like := s.text == "kama" && k == 0 && k+1 < len(c.signs) && oneOf(c.signs[k+1].sense, "seen=smoke", "seen=fire") && !sentenceAsks(cs, i) || (s.text == "kama" || strings.HasSuffix(s.text, "kiwa")) && (k > 0 || i > 0 && cs[i-1].doubt || c.seems(k)) && c.ask == telling && !(k+1 < len(c.signs) && c.signs[k+1].sense == "have" && c.later)
				if s.tongue == fr && s.text == "si" && k+1 < len(c.signs) && quality(c.signs[k+1].sense) && !inDim(c.signs[k+1].sense, "seen") && !sentenceAsks(cs, i) {
					s.sense, like = "very", true // si chaud que
				}
				c.cond = c.cond || !c.doubt && !like && (k == 0 && s.tongue == fr || !c.has("normal") || r.says(c, "dangereux", "grave", "peligroso", "dangerous", "hatari", "khatarnak", "खतरनाक"))
			case "si":
				c.cond = c.cond || r.spanishIf(cs, i, k)
			case "maybe":
				c.doubt = true
			case "worry":
				if c.ask == telling && (c.end == "?" || c.has("what", "canq", "askif")) {
					c.ask = askWh
				}
			case "tomorrow":
				c.tomorrow = true
			case "later":
				c.later = true
			case "will":
				c.will = true
			case "want", "must":
				c.want = true
			case "cant":
				c.cant = true
			case "":
				c.odd++
			}
			if s.sense == "num" && r.clocked(c, k) {
				c.later = true // "a las seis lo hago"
			}
			if s.tense&unless != 0 && s.tongue == sw && !r.whileDoing(c, k) {
				c.cond = true // -ki-: if I turn, when it burns
			}
			if inDim(s.sense, "day") || inDim(s.sense, "part") && s.sense != "part=morning" {
				c.later = true
			}
		}
		c.vanish()
		c.sift()
		if c.ask == telling && (c.inverted() || c.eitherAct() || len(c.signs) > 0 && c.signs[0].sense == "must" && c.has("or")) {
			c.ask = askModal
		}
		if c.end == "if" && c.ask == telling && sentenceAsks(cs, i) {
			c.ask = askMark // "je retourne s'il pleut ?"
		}
		if i > 0 && c.ask == telling && cs[i-1].ask == askModal && (cs[i-1].end == "and" || cs[i-1].end == "or") && c.onlyBare() {
			c.ask, c.could = askModal, true // "peut éclater et blesser"
		}
		if c.end == "?" && c.ask == telling {
			if c.has("tag") {
				c.ask = askTag
			} else {
				c.ask = askMark
			}
		}
		c.foreign = r.foreign(c)
		c.sieve = 0
	}
	r.unremembered(cs)
	r.kals(cs)
	r.retold(cs)
	for i := range cs {
		cs[i].sift()
	}
	told := false // of somebody else's heap, in the clauses up to here
	for i := range cs {
		c := &cs[i]
		told = c.foreign && (told || c.ofHeap())
		if c.foreign && i+1 < len(cs) {
			next := &cs[i+1]
			next.foreign = next.foreign || next.ownerless() && (r.ofTheirs(next) || told && !next.has("heap"))
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
		if c.doubt && c.ask != askTag && !c.has("stinger", "body", "eye", "bite", "burn", "cut", "drink", "eat") && (!anyFact(c) || c.onlyOf("maybe", "filler", "damp", "me", "not", "is")) {
			switch {
			case i+1 < len(cs) && c.has("damp", "smell", "heat") && cs[i+1].hasQuality():
				cs[i+1].doubt = true // "not sure of the smell, sour or sharp"
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

// ownerless says whether nothing in a clause is the farmer's own: no act, no "my", no
// "I have nothing". What was said of somebody else's heap then goes on.
func (c *clause) ownerless() bool {
	return !c.has("mine", "me") && !(c.has("have") && c.has("nothing")) &&
		!slices.ContainsFunc(c.signs, func(s sign) bool { return act(s.sense) || s.mine })
}

// othersTurn says whether a clause tells what somebody or something else will do.
func (c *clause) othersTurn() bool {
	return !c.hasDim("did") && !c.has("me", "officer", "ask=officer", "worm", "compost", "heap") &&
		slices.ContainsFunc(c.signs, func(s sign) bool { return s.tense&future != 0 })
}

// seems says whether the word at sign k is followed by "I see", "I smell": Swahili
// "kama naona moshi", it is as if I saw smoke.
func (c *clause) seems(k int) bool {
	return k+1 < len(c.signs) && oneOf(c.signs[k+1].text, "naona", "ninaona", "nahisi", "ninahisi", "nasikia", "ninasikia", "naskia", "nimeona", "niliona")
}

// retold marks "put hot but it was warm": what an earlier answer said, and now says not.
func (r *reader) retold(cs []clause) {
	for i := 0; i+1 < len(cs); i++ {
		if cs[i].end != "but" && !cs[i+1].has("imeant") || cs[i].ask != telling {
			continue
		}
		for k := range cs[i].signs {
			s := &cs[i].signs[k]
			if s.sense != "" && s.sense != "filler" && s.sense != "known" && s.sense != "put" && s.sense != "say" && s.sense != "yes" && s.sense != "ok" {
				continue
			}
			switch s.text {
			case "said", "put", "wrote", "typed", "answered", "pressed", "sent", "told", "marked", "chose", "replied",
				"puse", "dije", "escribi", "marque", "conteste", "respondi", "mande", "anote", "mis", "dit", "ecrit", "repondu", "note", "envoye", "tape":
				for _, d := range [...]string{"stick", "moisture", "smell", "bottle"} {
					if cs[i].hasDim(d) && cs[i+1].hasDim(d) {
						s.sense, s.tense = "isaid", 0
					}
				}
			}
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

// inverted says whether an English clause begins like a question: "is ash good",
// "do worms need light".
func (c *clause) inverted() bool {
	if len(c.signs) < 3 || c.signs[0].tongue != en || quality(c.signs[0].sense) || c.signs[0].sense == "maybe" {
		return false
	}
	switch c.signs[0].text {
	case "will":
		if inDim(c.signs[1].sense, "seen") || c.signs[1].text == "i" {
			return true // "will smoke come out", "will I lose worms"
		}
	case "can", "could", "may", "shall", "should", "would":
		switch c.signs[1].sense {
		case "num", "one", "me", "mine", "person", "filler", "neighbor", "heap", "worm", "animal", "bottle", "compost":
			return true
		}
		return inDim(c.signs[1].sense, "animal") || inDim(c.signs[1].sense, "material")
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
	switch next {
	case "foreign", "weather", "money", "person":
		return true // "is football on tonight"
	case "num":
		return c.has("good", "ok", "enough", "fine", "moisture=right", "too", "very")
	}
	if act(next) && c.signs[1].tense&ongoing != 0 {
		return true // "is turning necessary"
	}
	if quality(next) {
		return c.has("good", "ok", "normal", "fine", "enough", "worry") && next != "good"
	}
	return false
}

// deniedModal says whether a "can" at sign k is denied: Spanish before it, French after.
func (c *clause) deniedModal(k int) bool {
	switch c.signs[k].tongue {
	case es:
		return k > 0 && c.signs[k-1].sense == "not" || k > 1 && c.signs[k-2].sense == "not"
	case fr:
		return k+1 < len(c.signs) && c.signs[k+1].sense == "not"
	}
	return false
}

// onlyBare says whether a clause begins with a verb without tense or person.
func (c *clause) onlyBare() bool {
	for at := range c.signs {
		s := &c.signs[at]
		if s.sense != "filler" {
			return s.tense&bare != 0 || s.unsure || s.tense == 0 && inDim(s.sense, "harm")
		}
	}
	return false
}

// clocked says whether a number is an hour of the day in a clause that tells of
// nothing past.
func (r *reader) clocked(c *clause, k int) bool {
	s := &c.signs[k]
	if k+1 < len(c.signs) {
		if n := c.signs[k+1].sense; inDim(n, "unit") || oneOf(n, "layer", "degree", "celsius", "fahrenheit", "percent", "dayword") {
			return false // "we are at 4 layers"
		}
	}
	hour := false
	switch r.word(s.from - 1) {
	case "las", "at":
		hour = true
	}
	switch r.word(s.to) {
	case "h":
		hour = hour || r.lang != "hi" && r.lang != "hi-Latn" // there it is "hai"
	case "am", "pm", "heures", "heure":
		hour = true
	}
	return hour && s.value <= 24 && !c.has("was", "past", "didaux", "already", "have") && !c.hasPast()
}

// ofTheirs says whether the heap of a clause is that of the one just spoken of: "his heap".
func (r *reader) ofTheirs(c *clause) bool {
	for i := range c.signs {
		if s := &c.signs[i]; s.sense == "heap" {
			return oneOf(r.word(s.from-1), "his", "her", "their", "su", "sus", "son", "leur", "uska", "uske", "unka", "unke", "उसका", "उसके", "उनका", "उनके") ||
				oneOf(r.word(s.to), "lake", "lao")
		}
	}
	return false
}

// ofHeap says whether a clause tells anything of heap, bottle or worms, so that what it says
// of its owner may go on in the next one.
func (c *clause) ofHeap() bool {
	return c.has("heap", "stick", "bottle", "worm", "bed", "compost", "inside", "layer", "starter") || c.hasDeed() || c.hasQuality()
}

// ahead says whether the verbs of a clause look forward and none looks back.
func (c *clause) ahead() bool {
	forward := false
	for at := range c.signs {
		s := &c.signs[at]
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
	for at := range c.signs {
		s := &c.signs[at]
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

// yaNow takes the Spanish "ya" and the Swahili "tayari" for now where the deed is going on:
// "ya lo estoy volteando", "tayari ninageuza".
func (r *reader) yaNow(c *clause) {
	for i := range c.signs {
		s := &c.signs[i]
		if s.sense != "done" || s.text != "ya" && s.text != "tayari" {
			continue
		}
		for _, d := range c.signs[i+1:] {
			if d.sense == "busy" || act(d.sense) && d.tense&ongoing != 0 && (d.tongue == sw || r.says(c, "estoy", "estamos", "esta", "estan", "ando", "andamos", "anda", "andan", "sigo", "seguimos")) {
				s.sense = "now"
				break
			}
		}
	}
}

// unremembered turns "did I shake it, I do not remember" into a doubt: Hindi says "forgot" with the
// same words.
func (r *reader) unremembered(cs []clause) {
	for k := 1; k < len(cs); k++ {
		c := &cs[k]
		if c.ask != telling || !c.onlyOf("forgot", "filler", "is") || !r.says(c, "yaad", "yad", "याद") {
			continue
		}
		asks := &cs[k-1]
		if asks.onlyOf("what") && k > 1 {
			asks.ask, asks = telling, &cs[k-2]
		}
		if asks.hasAct() && (cs[k-1].has("what") || asks.end == "?") {
			asks.ask, asks.doubt, c.doubt = telling, true, true
			c.signs[0].sense = "maybe"
			for i := range c.signs {
				if c.signs[i].sense == "forgot" {
					c.signs[i].sense = "filler"
				}
			}
		}
	}
}
