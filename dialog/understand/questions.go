package understand

import (
	"slices"
	"strings"
)

// aboutIt says whether a question beside a report can only be about what was reported:
// "rats, how do I chase them?", "smoke comes out, should I worry?". The words of it need
// not be known; that it speaks of somebody or something else must not be.
func (r *reader) aboutIt(c *clause, hurt bool) bool {
	if hurt && !c.foreign && (c.ask == askWh || c.ask == askModal || c.ask == askMark) && (c.has("canq", "must", "how") || c.has("what") && c.onlyOf("what", "put", "give", "do", "filler", "me", "on_it", "medicine", "known", "", "use")) && c.odd <= 3 && !c.has("money", "weather", "whenq", "sell") {
		return true // "my eyes burn, do I wash them with milk"
	}
	if hurt && c.ask == askMark && c.odd <= 2 && c.core() <= 4 && !c.foreign && !c.has("money", "weather", "sell", "worm", "heap", "tag") {
		return true // "je rince ?", "doctor ko dikhau?"
	}
	if c.foreign || c.has("foreign", "money", "weather", "person", "neighbor", "animal", "who", "whenq", "chat=hello", "sell") || c.hasDim("animal") || c.hasDim("crop") {
		return false
	}
	switch c.ask {
	case askWh, askModal:
		return c.odd <= 3 && (c.has("how", "canq", "must", "worry", "normal", "avoid") || c.has("what") && c.has("ok", "good", "fine", "bad")) && !c.has("howmany")
	case askMark:
		return c.odd <= 2 && c.has("must", "worry", "normal", "ok", "fine", "good", "bad")
	}
	return false
}

// fears says whether a clause asks whether something will come of what was told: "won't it
// burst?", "मर तो नहीं जाएँगे?"
func (c *clause) fears() bool {
	return (c.hasDim("bottle") || c.has("die", "seen=worms_dead")) && (c.will || c.has("skip", "go", "will") ||
		slices.ContainsFunc(c.signs, func(s sign) bool { return s.tense&future != 0 || s.text == "wont" }))
}

// shallI says whether a clause is Swahili "shall I ...", whatever the verb: "nifunge na mpira?"
func (r *reader) shallI(c *clause) bool {
	if len(c.signs) == 0 {
		return false
	}
	w := r.word(c.signs[0].from)
	return r.rank[sw] <= 1 && len(w) > 4 && (strings.HasPrefix(w, "ni") || strings.HasPrefix(w, "tu")) && strings.HasSuffix(w, "e") && c.odd <= 3
}

// journey reads a question about the way to the compost: which step follows (next),
// how many days remain, how the heap comes along (status).
func (q *inquiry) journey(c *clause) bool {
	r := q.r
	if (c.has("how") || c.has("chat=hello") && c.end == "?") && c.has("heap", "compost") && c.onlyOf("how", "is", "was", "will", "me", "mine", "heap", "compost", "filler", "now", "today", "progress", "chat=hello", "what", "going") {
		q.add("ask=status") // "how is my compost"
		return true
	}
	if c.ask != telling && c.ask != askWhy && c.has("heap", "compost") && c.has("progress") && c.onlyOf("is", "askif", "heap", "compost", "progress", "mine", "me", "ok", "good", "fine", "filler", "now") {
		q.add("ask=status") // "is my heap getting on okay?"
		return true
	}
	if c.ask == askWh && c.has("whenq") && c.has("heap") && c.onlyOf("whenq", "heap", "mine", "me", "is", "filler", "now", "today") {
		q.add("ask=status") // "mera dher kaun se din pe hai"
		return true
	}
	if c.ask != telling && c.ask != askWhy && c.has("heap", "compost") && r.along(c) && c.onlyOf("is", "askif", "what", "how", "heap", "compost", "mine", "me", "ok", "good", "fine", "seen=worms_well", "prog", "filler", "known", "now", "tag") {
		q.add("ask=status") // "kya mera dher sahi chal raha hai", "¿va bien mi montón?"
		return true
	}
	if c.ask != telling && c.ask != askWhy && (c.has("heap", "compost") || c.has("dung") && c.signs[0].tongue == sw) && c.has("done", "finish", "prog") && c.onlyOf("dung", "whenq", "or", "", "is", "was", "mine", "me", "heap", "compost", "done", "finish", "filler", "now", "already", "notyet", "prog", "partly", "soon", "later", "askif", "canq") {
		q.add("ask=status") // "is my heap nearly done?"
		return true
	}
	if c.ask != askWh && c.ask != askMark && !c.has("askif") || c.has("foreign", "money", "weather", "did=turned") {
		return false
	}
	switch {
	case c.end == "?" && (c.has("then", "and", "after") || r.says(c, "phir", "fir", "फिर")) && c.onlyOf("then", "and", "after", "filler", "now"), // "and then?"
		c.has("progress") && c.has("ask=next", "then", "after") && !q.troubled && !c.hasDeed(),
		c.has("step") && c.has("ask=next", "after", "then", "remain"):
		q.addNext()
		return true
	case c.has("howmany") && c.has("dayword", "remain", "length") && (c.has("remain", "ready", "compost", "finish") || len(c.signs) <= 3) && !c.hasDeed() && !c.hasDim("moisture"),
		c.has("how", "what", "which", "howmany") && c.has("progress") && !c.hasDeed() && !c.hasQuality(),
		c.has("askif") && c.has("dayword") && c.has("num", "ordinal") && c.onlyOf("askif", "dayword", "num", "ordinal", "is", "filler", "now", "today", "already", "me"),
		c.has("which", "what") && c.has("step", "dayword") && !c.hasDeed() && !c.hasQuality() && c.odd == 0 && len(c.signs) <= 6:
		q.add("ask=status")
		return true
	}
	return false
}

// isItGood says whether a clause asks nothing but "is it good": after a report, that is asked of
// what was told.
func (c *clause) isItGood() bool {
	return c.ask == askMark && c.has("good", "fine", "ok") && c.onlyOf("good", "fine", "ok", "is", "filler", "now")
}

// along says whether a clause has a verb of how a thing comes along.
func (r *reader) along(c *clause) bool {
	return c.has("prog") || r.says(c, "doing", "doin", "going", "goin", "coming", "va", "anda", "marcha", "avance", "avanza", "sigue") ||
		slices.ContainsFunc(c.signs, func(s sign) bool { return strings.HasSuffix(s.text, "endelea") })
}

// ofElse says whether a clause speaks of cattle, money or what nobody knows here, and of nothing
// that is asked about.
func (c *clause) ofElse() bool {
	if c.odd > 0 && c.ask == telling && c.onlyOf("", "known", "foreign", "filler") {
		return true
	}
	return (c.hasBeast() || c.has("animal", "money") || c.hasDim("animal")) && !c.has("heap", "worm", "bottle", "compost", "bed", "dung", "layer", "starter", "cap", "sheet") && !c.hasDim("material") && !c.hasDim("seen")
}

// helper says whether the help at sign i is what somebody gave: "el peón que ayuda".
func (r *reader) helper(c *clause, i int) bool {
	for k := range c.signs {
		if c.signs[k].sense == "person" || c.signs[k].sense == "neighbor" {
			return k < i && (r.names(&c.signs[i], "coup") || oneOf(r.word(c.signs[i].from-1), "que", "qui", "who", "m", "me", "aliyekuwa", "nous", "nos", "to")) || c.signs[i].hindi() && k != i
		}
	}
	return false
}

// cries says whether a sign is a cry, and no question for help.
func (r *reader) cries(s *sign) bool {
	return r.names(s, "auxilio", "socorro", "ayudenme", "ayudeme", "ayudame", "secours", "bachao", "बचाओ")
}

// rainsOn: a what-if of nothing but rain, which is a question about the heap.
func (c *clause) rainsOn() bool {
	return c.has("weather", "rainword") && c.onlyOf("whatif", "if", "si", "and", "weather", "rainword", "very", "too", "canq", "filler", "is", "what", "tomorrow", "today", "bit", "know", "go", "come")
}

// describes says whether a clause states any quality but warmth.
func (c *clause) describes() bool {
	for at := range c.signs {
		s := &c.signs[at]
		if quality(s.sense) && s.sense != "heat" && s.sense != "joto" {
			return true
		}
	}
	return false
}

// onlyOf says whether every sign of a clause has one of the senses.
func (c *clause) onlyOf(senses ...string) bool {
	for i := range c.signs {
		if !slices.Contains(senses, c.signs[i].sense) {
			return false
		}
	}
	return true
}

func (r *reader) nobody(c *clause) bool {
	for i := range c.signs {
		if r.names(&c.signs[i], "nobody", "noone", "personne", "nadie") || c.signs[i].sense == "not" && r.names(&c.signs[i], "one") {
			return true
		}
	}
	return false
}

// judging: "is ash good for the heap?", "did I do it well?"
func (c *clause) judging() bool {
	if c.has("num") && c.has("very", "too", "enough") && !c.hasQuality() && !c.hasDim("unit") {
		return true // "¿70 es mucho?"
	}
	if !c.has("good", "bad", "ok", "fine", "normal") || c.has("smell", "tag") {
		return false
	}
	thing := c.hasQuality() || c.has("num", "length") || c.has("heap", "worm", "bottle", "compost", "do", "done", "starter")
	for at := range c.signs {
		s := &c.signs[at]
		thing = thing || inDim(s.sense, "material")
	}
	return thing
}

// hasDeed is hasAct without the verbs that mean nothing alone.
func (c *clause) hasDeed() bool {
	for at := range c.signs {
		s := &c.signs[at]
		if act(s.sense) && s.sense != "do" && s.sense != "make" {
			return true
		}
	}
	return false
}

func (c *clause) hasPast() bool {
	for at := range c.signs {
		s := &c.signs[at]
		if s.tense&past != 0 && s.tense&(present|order) == 0 && s.sense != "is" {
			return true
		}
	}
	return false
}

// mayI: a question mark after "nigeuze", "palat dun", "je retourne", "lo volteo".
func (r *reader) mayI(c *clause) bool {
	if c.has("money") || c.has("weather", "foreign") && !c.hasDeed() {
		return false
	}
	for at := range c.signs {
		s := &c.signs[at]
		if s.tongue == fr && act(s.sense) && s.tense&past != 0 && c.has("me") && !c.has("didaux", "have", "already", "past") {
			return true // "je rajoute de l'eau ?", typed or not with its accent
		}
		if act(s.sense) && s.tense&(order|present|bare|future) != 0 && !(s.tense&past != 0 && s.tense&(order|present) == 0) {
			if s.tongue == en && s.tense&bare != 0 && !c.has("me", "now", "heap", "water") {
				continue
			}
			return true
		}
	}
	return c.has("enough") && r.ours(c, false) || c.has("whenq", "normal")
}

// ours says whether a question is about the heap at all, and not about prices,
// football or the neighbour's cow.
func (r *reader) ours(c *clause, why bool) bool {
	if c.has("money") {
		return false
	}
	if c.has("canq") && c.has("plant") && r.says(c, "it", "this", "dentro", "ahi", "dedans", "humo", "ndani", "isme", "ismein", "इसमें") && !c.has("foreign", "weather") {
		return true // "can I plant straight in it"
	}
	if c.has("weather", "foreign") && !c.hasDeed() && !c.hasDim("bottle") && !(r.asked == "have" && c.hasDim("material")) && !c.has("heap", "worm", "bottle", "compost", "stick", "layer", "starter", "cap", "sheet", "bed", "food") {
		return false
	}
	if c.has("foreign") && c.has("whenq") && !c.has("heap", "worm", "bottle", "compost", "stick", "layer", "starter", "bed") {
		return false // when the government brings fertiliser
	}
	if c.cond && c.has("drink", "eat", "bite", "burn", "cut", "breathe") && !c.has("foreign") && !c.hasBeast() {
		return true // "अगर बच्चा पी ले तो क्या होगा"
	}
	if c.has("howmany") && c.hasDim("crop") && c.hasDim("unit") && !c.has("heap", "layer", "starter", "must") && !c.hasDim("material") {
		return false // "cuánto está el quintal de frijol"
	}
	if c.has("sell") && (c.has("plant", "fruit", "veg", "animal") || c.hasDim("crop") || c.hasDim("animal")) && !c.has("compost", "worm", "heap") {
		return false // where tomatoes sell
	}
	if r.asked == "feed" && c.has("canq") && c.has("foreign") && !c.has("person", "money", "weather") && !c.hasBeast() {
		return true // "बासी रोटी डाल सकते हैं क्या"
	}
	if (c.has("medicine") || c.has("foreign", "what") && c.has("give")) && !c.has("heap", "worm", "bottle", "compost", "bed", "layer", "starter") && slices.ContainsFunc(r.signs, func(s sign) bool { return s.beast() }) {
		return false // "bhains ko khansi hai, kaun si dawa de"
	}
	if c.hasBeast() && c.has("medicine", "give", "eat", "food", "did=fed", "known") && !c.has("heap", "worm", "bottle", "compost", "bed", "dung", "layer", "starter", "use") && !c.hasDim("material") && !c.hasDim("seen") {
		return false // "bakri bimar hai kya dawai du"
	}
	known, odd := 0, 0
	for at := range c.signs {
		s := &c.signs[at]
		switch s.sense {
		case "stick", "heap", "inside", "edge", "bottle", "cap", "worm", "bed", "starter", "smell", "gas", "water", "drop", "layer", "compost", "heat", "joto", "damp",
			"size", "sheet", "wrong", "help", "burn", "ready", "dung", "leaf", "straws", "food", "enough", "liquid", "dry_leaf", "stalk", "huskw", "sell", "continue", "stop", "moto", "good", "bad", "nothing", "die", "leave", "goout", "hold", "worry", "bite", "cut", "drink", "eat", "eye", "body":
			known++
		case "animal", "person", "money", "weather", "plant", "medicine":
			odd++
		case "":
			if r.tokens[s.from].kind == word {
				odd++
			}
		case "known", "foreign":
			odd++
		default:
			if s.sense == "open" && !c.has("bottle", "cap") {
				odd++ // the bridge, the market
			} else if quality(s.sense) || act(s.sense) {
				known += 2
			} else if d := dimension(s.sense); d == "crop" && c.has("howmany") {
				odd += 2 // what tomatoes cost
			} else if d == "material" || d == "unit" {
				known++
			}
		}
	}
	if c.has("howmany") && len(c.signs) > 1 && c.signs[0].sense == "howmany" && c.signs[1].sense == "is" && known == 0 {
		return false // "how much is diesel"
	}
	if (why || c.has("how") || c.end == "?" && (c.signs[0].sense == "must" || c.signs[0].sense == "askif" && c.has("cap", "layer", "bed"))) && odd <= 3 && (c.has("worm", "heap", "bottle", "stick") || c.signs[0].sense == "askif" || why && c.has("compost", "dung") || r.asked == "stick" && c.has("heat")) && !c.has("foreign", "person", "animal", "neighbor") {
		return true // "केंचुए गुच्छा बनाकर क्यों बैठते हैं"
	}
	if known == 0 {
		if odd <= 2 && r.asked != "none" && r.asked != "menu" && (why || c.ask == askModal || c.has("how", "howmany", "canq", "what", "which")) && !c.has("who", "foreign", "money", "weather", "person", "animal") && !c.hasDim("animal") {
			return true // asked back under an open question: about it
		}
		return odd == 0 && (why || c.has("canq", "must") || len(c.signs) > 0 && !c.has("who") && !(len(c.signs) > 2 && c.has("whenq", "howmany", "which")))
	}
	return known >= odd || known >= 2 && odd <= 3
}
